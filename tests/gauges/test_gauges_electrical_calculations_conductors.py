"""Conductors, devices and voltage drop: properties, every branch of the rules, and physics from outside the tables."""

import math
from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from witnessmark.gauges import Answer, evaluate
from witnessmark.gauges.electrical.calculating.ampacity_tables import (
    COLUMNS,
    STANDARD_RATINGS,
    ambient_factor,
    bundling_factor,
    next_standard,
    standard_at_most,
    table_ampacity,
)
from witnessmark.gauges.electrical.calculating.resistance import OHM_PER_1000_FT, K, ohms_per_foot
from witnessmark.gauges.electrical.calculating.service_conductor import EARLIER, least_size
from witnessmark.gauges.electrical.calculating.sizes import (
    CIRCULAR_MILS,
    awg_circular_mils,
    printed_size,
    read_size,
)
from witnessmark.problems import Refusal

METALS = ("copper", "aluminum")
#: Resistivity at 20 °C in ohm circular mil per foot and temperature coefficient: copper of 100 % IACS (IEC 60028,
#: 1.7241e-8 ohm m = 10.371) and aluminum of 61 % IACS (ASTM B231: 17.002); coefficients .00393 and .00403 (memory).
PHYSICS = {"copper": (10.371, 0.00393), "aluminum": (17.002, 0.00403)}


def ask(**given: str) -> Answer:
    return evaluate("conductor-protection", {"wiring": "NM cable", "edition": "2020", "material": "copper", **given})


def refusal(name: str, given: dict[str, str]) -> str:
    with pytest.raises(Refusal) as caught:
        evaluate(name, given)
    return str(caught.value)


@pytest.mark.parametrize("edition", [1984, 2008, 2011, 2023])
@pytest.mark.parametrize("metal", METALS)
def test_ampacity_grows_with_size_and_with_temperature_of_the_insulation(metal: str, edition: int) -> None:
    sizes = list(CIRCULAR_MILS)[0 if metal == "copper" else 1 :]
    for column in COLUMNS:
        values = [table_ampacity(size, metal, column, edition) for size in sizes]
        assert values == sorted(values)
    for size in sizes:
        row = [table_ampacity(size, metal, column, edition) for column in COLUMNS]
        assert row == sorted(row)
        assert edition < 2011 or len(set(row)) == 3


@pytest.mark.parametrize("size", list(CIRCULAR_MILS)[1:])
def test_copper_carries_more_than_aluminum(size: str) -> None:
    for column in COLUMNS:
        assert table_ampacity(size, "copper", column, 2020) > table_ampacity(size, "aluminum", column, 2020)
        assert table_ampacity(size, "copper-clad aluminum", column, 2020) == table_ampacity(
            size, "aluminum", column, 2020
        )


@pytest.mark.parametrize("column", COLUMNS)
def test_ambient_factors_follow_the_law_they_come_from(column: int) -> None:
    # NEC 310.15(B), equation for ambients other than those of the table: sqrt((Tc - Ta') / (Tc - Ta)), at the top of
    # each band; the table prints two places (memory of the equation).
    for top in (10, 15, 20, 25, 30, 35, 40, 45, 50, 55):
        law = math.sqrt(max(column - top, 0) / (column - 30))
        assert float(ambient_factor(top, column)) == pytest.approx(law, abs=0.0051)


@given(st.floats(-40, 55), st.floats(-40, 55))
def test_warmer_air_never_allows_more(one: float, other: float) -> None:
    cold, warm = sorted((one, other))
    for column in COLUMNS:
        assert ambient_factor(cold, column) >= ambient_factor(warm, column)
        assert ambient_factor(cold, column, 2008) >= ambient_factor(warm, column, 2008)


def test_air_hotter_than_the_insulation_bears_is_refused() -> None:
    for celsius, column in ((56, 60), (71, 75), (71, 90)):
        with pytest.raises(Refusal, match="WM057"):
            ambient_factor(celsius, column)


def test_more_wires_together_never_allow_more() -> None:
    factors = [bundling_factor(n) for n in range(1, 60)]
    assert factors == sorted(factors, reverse=True)
    assert factors[-1] == Decimal("0.35")


@given(st.decimals("0.1", 800, places=2))
def test_standard_ratings_enclose_every_current(amperes: Decimal) -> None:
    up, down = next_standard(amperes), standard_at_most(amperes)
    assert up in STANDARD_RATINGS
    assert up >= amperes >= down
    assert (up == down) == (amperes in STANDARD_RATINGS)


def test_beyond_800_amperes_no_next_size_up() -> None:
    assert next_standard(Decimal(801)) is None


@pytest.mark.parametrize("size", [s for s in CIRCULAR_MILS if not s.isdigit() or int(s) < 250])
def test_circular_mils_are_those_of_the_wire_gauge_law(size: str) -> None:
    # ASTM B258: each gauge is 92^(1/39) thinner than the one before it. The code prints rounded figures.
    number = 1 - int(size[0]) if "/" in size else int(size)
    assert CIRCULAR_MILS[size] == pytest.approx(awg_circular_mils(number), rel=0.001)


@pytest.mark.parametrize("metal", METALS)
def test_table_resistance_is_that_of_the_metal_at_75_degrees(metal: str) -> None:
    # Stranded wire is up to 2 % longer than its lay; Table 8 takes small sizes solid.
    resistivity, rise = PHYSICS[metal]
    for size, ohms in OHM_PER_1000_FT[metal].items():
        at_75 = resistivity * (1 + rise * 55) / CIRCULAR_MILS[size] * 1000
        assert float(ohms) == pytest.approx(at_75, rel=0.025)


def test_the_two_forms_agree_within_what_is_said_of_them() -> None:
    for metal, table in OHM_PER_1000_FT.items():
        for size in table:
            k, eight = ohms_per_foot(size, metal, "K"), ohms_per_foot(size, metal, "Table 8")
            assert abs(k - eight) / eight < Decimal("0.04")
    assert K["copper"] < K["aluminum"]


@pytest.mark.parametrize(
    ("written", "size"),
    [
        ("12", "12"), ("#12", "12"), ("12 AWG", "12"), ("12awg", "12"), ("No. 12", "12"), ("0", "1/0"), ("0000", "4/0"),
        ("2/0 AWG", "2/0"), ("250", "250"), ("250 kcmil", "250"), ("250MCM", "250"), ("600 kcmil", "600"),
    ],
)  # fmt: skip
def test_sizes_are_read_as_people_write_them(written: str, size: str) -> None:
    assert read_size(written) == size
    assert read_size(printed_size(size)) == size


@pytest.mark.parametrize(
    ("written", "advice"),
    [
        ("12 kcmil", "did you mean 12 AWG"), ("6.53 kcmil", "cross-section of 12 AWG"), ("250 AWG", "250 kcmil"),
        ("2/0 kcmil", "2/0 AWG"), ("4 mm2", "square millimetres"), ("13", "14 AWG, 12 AWG"), ("700 kcmil", "600 kcmil"),
        ("", "one of"), ("twelve", "one of"), ("12 foo", "write AWG or kcmil"), ("0 kcmil", "one of"),
    ],
)  # fmt: skip
def test_a_size_on_the_wrong_scale_is_refused_with_what_was_meant(written: str, advice: str) -> None:
    with pytest.raises(Refusal, match="WM055") as caught:
        read_size(written)
    assert advice in str(caught.value)


@given(st.text(max_size=12))
def test_any_text_is_a_size_or_refused(text: str) -> None:
    try:
        assert read_size(text) in CIRCULAR_MILS
    except Refusal as refused:
        assert refused.problems[0].number == "WM055"  # noqa: PT017 - any text may be refused, and only so


def test_the_lowest_of_insulation_cable_and_terminals_ends_it() -> None:
    base = {"size": "8", "material": "copper", "edition": "2020", "wiring": "wires in a raceway"}
    for insulation, terminals, amperes in (("60", "75", 40), ("75", "75", 50), ("90", "75", 50), ("90", "90", 55)):
        answer = evaluate("conductor-ampacity", {**base, "insulation": insulation, "terminals": terminals})
        assert answer.value == amperes
    assert evaluate("conductor-ampacity", {**base, "insulation": "90"}).value == 40
    assert evaluate("conductor-ampacity", {**base, "size": "1/0", "insulation": "90"}).value == 150
    assert (
        evaluate("conductor-ampacity", {**base, "wiring": "UF cable", "insulation": "90", "terminals": "75"}).value
        == 40
    )


def test_derating_begins_in_the_column_of_the_insulation() -> None:
    # 334.80: NM-B derates from 90 °C; 30 A * .91 * .70 = 19.11 A, below the 20 A of the 60 °C column.
    given = {"size": "12", "material": "copper", "wiring": "NM cable", "edition": "2020", "ambient": "40Cel"}
    assert evaluate("conductor-ampacity", {**given, "conductors": "9"}).value == Decimal("19.11")
    assert evaluate("conductor-ampacity", given).value == 20


def test_what_was_not_read_is_assumed_low_and_said() -> None:
    answer = evaluate(
        "conductor-ampacity", {"size": "8", "material": "copper", "wiring": "wires in a raceway", "edition": "2020"}
    )
    assert answer.value == 40
    assert any("insulation was not read" in caution for caution in answer.cautions)
    assert any("terminals were not read" in caution for caution in answer.cautions)


def test_an_old_table_is_never_read_for_a_new_edition() -> None:
    raceway = {"wiring": "wires in a raceway", "insulation": "60", "terminals": "60", "material": "aluminum"}
    old = evaluate("conductor-ampacity", {**raceway, "size": "8", "edition": "2008"})
    new = evaluate("conductor-ampacity", {**raceway, "size": "8", "edition": "2011"})
    assert old.value == 30
    assert new.value == 35
    assert "WM056" in refusal("conductor-ampacity", {**raceway, "size": "8", "edition": "1978"})
    assert "1975, 1978" in refusal("conductor-ampacity", {**raceway, "size": "8", "edition": "1977"})


def test_several_receptacles_take_the_next_size_up_away() -> None:
    assert ask(size="6", device="60A").value == 60
    several = ask(size="6", device="60A", several_receptacles="yes")
    assert several.value == 50
    assert several.verdict
    assert several.verdict.outcome == "beyond"


def test_an_air_conditioner_is_judged_by_its_plate() -> None:
    plate = {"serves": "air conditioner", "minimum_circuit_ampacity": "18.6A", "maximum_device": "30A"}
    right = ask(size="12", device="30A", **plate)
    assert right.verdict
    assert right.verdict.outcome == "within"
    assert any("For a general load" in caution for caution in right.cautions)
    for change in ({"device": "35A"}, {"size": "14"}):
        wrong = ask(**{"size": "12", "device": "30A", **plate, **change})
        assert wrong.verdict
        assert wrong.verdict.outcome == "beyond"
    unread = ask(size="12", device="30A", serves="air conditioner")
    assert unread.value is None
    assert unread.verdict
    assert unread.verdict.outcome == "undecided"
    assert "plate" in unread.words


def test_a_motor_has_a_device_larger_than_its_conductor() -> None:
    # 430.52: 250 % of 8 A is 20 A; of 9 A 22.5, next standard size 25 A. Time-delay fuse 175 % of 8 A: 14, next 15 A.
    assert ask(size="14", device="20A", serves="motor", motor_current="8A").value == 20
    assert ask(size="14", device="25A", serves="motor", motor_current="9A").value == 25
    assert ask(size="14", device="15A", serves="motor", motor_current="8A", fuse="yes").value == 15
    thin = ask(size="14", device="20A", serves="motor", motor_current="13A")
    assert thin.verdict
    assert thin.verdict.outcome == "beyond"
    assert "smaller" in thin.verdict.words
    unread = ask(size="14", device="20A", serves="motor")
    assert unread.verdict
    assert unread.verdict.outcome == "undecided"


def test_a_welder_and_a_whole_dwelling_have_rules_of_their_own() -> None:
    assert ask(size="10", device="60A", serves="welder").value == 60
    house = {"wiring": "SE cable", "insulation": "75", "terminals": "75", "material": "aluminum", "size": "4/0"}
    assert ask(**house, device="200A", serves="whole dwelling").value == 200
    plain = ask(**house, device="225A")
    assert plain.value == 200  # 180 A, next standard size up
    assert ask(**{**house, "size": "2"}, device="100A").value == 90
    assert ask(**{**house, "size": "2"}, device="100A", serves="whole dwelling").value == 100


def test_the_device_is_over_600_kcmil_or_too_small_a_wire() -> None:
    assert ask(size="14", device="15A", ambient="45Cel", conductors="12").value == 15  # 25 * .87 * .5, next up 15
    assert ask(size="14", device="15A", ambient="45Cel", conductors="12", several_receptacles="yes").value == 0


@pytest.mark.parametrize("metal", METALS)
def test_the_table_before_2014_is_what_83_percent_gives(metal: str) -> None:
    for rating, size in EARLIER[metal].items():
        assert least_size(Decimal(rating), metal, Decimal("0.83")) == size


def test_service_conductor_found_is_held_against_the_least() -> None:
    given = {"rating": "200A", "material": "aluminum", "edition": "2020", "whole_dwelling": "yes"}
    for size, outcome in (("3/0", "beyond"), ("4/0", "within"), ("250 kcmil", "within")):
        verdict = evaluate("service-conductor", {**given, "size": size}).verdict
        assert verdict
        assert verdict.outcome == outcome
    beyond = evaluate("service-conductor", {**given, "rating": "600A"})
    assert beyond.outside_range
    assert beyond["size"] == "none listed"
    assert "WM056" in refusal("service-conductor", {**given, "edition": "1971"})


def test_drop_is_proportional_to_current_and_length_and_falls_with_size() -> None:
    given = {"current": "10A", "length": "50ft", "size": "12", "material": "copper", "voltage": "120V"}
    one = evaluate("voltage-drop-by-size", given).value
    double = evaluate("voltage-drop-by-size", {**given, "current": "20A", "length": "100ft"}).value
    assert one
    assert double == pytest.approx(4 * one, rel=Decimal("1e-10"))
    drops = [evaluate("voltage-drop-by-size", {**given, "size": size}).value or 0 for size in CIRCULAR_MILS]
    assert drops == sorted(drops, reverse=True)
    three = evaluate("voltage-drop-by-size", {**given, "phases": "3"}).value
    assert three
    assert float(three / one) == pytest.approx(math.sqrt(3) / 2)


@given(st.floats(20, 200), st.sampled_from(list(CIRCULAR_MILS)[1:]), st.floats(1, 10), st.sampled_from(METALS))
def test_the_longest_run_has_just_that_drop(amperes: float, size: str, percent: float, metal: str) -> None:
    given = {"current": f"{amperes:.3f}A", "size": size, "material": metal, "voltage": "240V"}
    run = evaluate("longest-run", {**given, "percent": f"{percent:.3f}%"}).value
    back = evaluate("voltage-drop-by-size", {**given, "length": f"{run:f}ft"}).value
    assert back
    assert float(back) == pytest.approx(round(percent, 3), rel=1e-9)


def test_a_drop_of_more_than_all_is_said_to_be_impossible() -> None:
    answer = evaluate(
        "voltage-drop-by-size",
        {"current": "400A", "length": "1000ft", "size": "14", "material": "copper", "voltage": "120V"},
    )
    assert [one.what for one in answer.outside_range] == ["drop"]


def test_measured_drop_gives_back_the_resistance_that_made_it() -> None:
    # 100 ft of 12 AWG copper by Table 8, 12 A: 2 * 12 * .193 = 4.632 V.
    answer = evaluate(
        "voltage-drop-measured",
        {"no_load_voltage": "120V", "loaded_voltage": "115.368V", "load_current": "12A", "at_current": "16A"},
    )
    assert answer["resistance"] == Decimal("0.386")
    assert answer.value == Decimal("3.86")
    assert float(Decimal(str(answer["percent_at_current"]))) == pytest.approx(5.1467, abs=1e-4)


def test_a_rise_under_load_is_pointed_out() -> None:
    answer = evaluate(
        "voltage-drop-measured", {"no_load_voltage": "120V", "loaded_voltage": "126V", "load_current": "10A"}
    )
    assert answer.value == -5
    assert "neutral" in answer.cautions[0]


def test_every_answer_on_capacity_or_drop_says_that_law_may_not_ask_for_it() -> None:
    drop = evaluate(
        "voltage-drop-by-size",
        {"current": "20A", "length": "100ft", "size": "12", "material": "copper", "voltage": "120V"},
    )
    load = evaluate("dwelling-load-standard", {"area": "1500sq ft", "loads": "range, range, 12kW"})
    for answer in (drop, load):
        assert any(caution.startswith("Informational only") for caution in answer.cautions)
    assert drop.verdict is None
