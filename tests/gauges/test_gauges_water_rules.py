"""Water rules by law and edition: every branch, both sides of every limit, undecided where a fact was not given."""

from decimal import Decimal

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from witnessmark.gauges import Answer, evaluate, find, gauges
from witnessmark.gauges.water.editions import EDITIONS, against_built
from witnessmark.gauges.water.pressure_laws import HIGH, Asked80, Facts, irc, texas, upc
from witnessmark.gauges.water.sources import of_edition
from witnessmark.problems import Refusal

FEW = settings(max_examples=60, deadline=None, database=None)
MAYBE = st.sampled_from([None, True, False])
FACTS = st.builds(Facts, MAYBE, MAYBE, MAYBE, MAYBE, MAYBE)
PRESSURES = st.decimals(0, 200, places=1)


def outcome(answer: Answer) -> str:
    assert answer.verdict
    return answer.verdict.outcome


def outcomes(rows: tuple[Asked80, ...]) -> dict[str, str]:
    return {row.key: row.outcome for row in rows}


@FEW
@given(PRESSURES, FACTS, st.sampled_from(EDITIONS))
def test_eighty_is_the_limit_of_every_law_and_eighty_itself_is_within(
    pressure: Decimal, facts: Facts, year: int
) -> None:
    for rows in (texas(pressure, facts, 2022), upc(pressure, facts, year), irc(pressure, facts, year)):
        assert outcomes(rows)["pressure"] == ("beyond" if pressure > HIGH else "within")
    assert outcomes(upc(HIGH, facts, year))["pressure"] == "within"


@FEW
@given(PRESSURES, FACTS, st.sampled_from(EDITIONS))
def test_nothing_is_found_missing_that_was_not_said_to_be_missing(pressure: Decimal, facts: Facts, year: int) -> None:
    for rows in (texas(pressure, facts, 2022), upc(pressure, facts, year), irc(pressure, facts, year)):
        found = outcomes(rows)
        assert found["regulator"] != "beyond" or facts.regulator is False
        assert found["expansion"] != "beyond" or facts.expansion_tank is False
        if facts.expansion_tank:
            assert found["expansion"] == "within"


@FEW
@given(PRESSURES, FACTS, st.sampled_from(EDITIONS))
def test_a_fact_given_never_turns_a_decided_row_round_to_undecided(pressure: Decimal, facts: Facts, year: int) -> None:
    known = Facts(
        regulator=bool(facts.regulator),
        closing_device=bool(facts.closing_device),
        expansion_tank=bool(facts.expansion_tank),
        storage_heater=bool(facts.storage_heater),
        relief_valve_100=bool(facts.relief_valve_100),
    )
    for rule in (upc, irc):
        before, after = outcomes(rule(pressure, facts, year)), outcomes(rule(pressure, known, year))
        for key in ("regulator", "expansion"):
            assert after[key] != "undecided"
            assert before[key] in {"undecided", after[key]}


@pytest.mark.parametrize(
    ("facts", "law", "expected"),
    [
        (Facts(regulator=True, expansion_tank=False), "texas", "beyond"),
        (Facts(regulator=False, closing_device=True, expansion_tank=False), "texas", "beyond"),
        (Facts(regulator=False, closing_device=False), "texas", "within"),
        (Facts(regulator=False), "texas", "undecided"),
        (Facts(regulator=True), "texas", "undecided"),
        (Facts(regulator=True, expansion_tank=False), "upc", "undecided"),
        (Facts(regulator=True, expansion_tank=False, relief_valve_100=False), "upc", "beyond"),
        (Facts(regulator=True, expansion_tank=False, relief_valve_100=True), "upc", "within"),
        (Facts(regulator=True, expansion_tank=False), "irc", "beyond"),
        (Facts(regulator=False, closing_device=True, expansion_tank=False), "irc", "undecided"),
        (Facts(regulator=False, closing_device=True, expansion_tank=False, storage_heater=True), "irc", "beyond"),
        (Facts(regulator=False, closing_device=True, expansion_tank=False, storage_heater=False), "irc", "within"),
    ],
)
def test_when_a_closed_system_calls_for_an_expansion_tank(facts: Facts, law: str, expected: str) -> None:
    rule = {"texas": texas, "upc": upc, "irc": irc}[law]
    year = 2022 if law == "texas" else 2018
    assert outcomes(rule(Decimal(70), facts, year))["expansion"] == expected


@pytest.mark.parametrize(
    ("year", "expected"), [(2012, "beyond"), (2015, "undecided"), (2018, "within"), (2024, "within")]
)
def test_the_forty_psi_of_the_irc_goes_by_its_edition(year: int, expected: str) -> None:
    assert outcomes(irc(Decimal(35), Facts(), year))["low"] == expected


def test_the_low_limit_of_texas_goes_by_its_text() -> None:
    assert "low" not in outcomes(texas(Decimal(35), Facts(), 2022))
    assert outcomes(texas(Decimal(35), Facts(), 2009))["low"] == "beyond"
    assert outcomes(texas(Decimal(40), Facts(), 2009))["low"] == "within"


def test_every_law_has_its_own_rows_and_no_verdict_stands_for_all() -> None:
    answer = evaluate("static-pressure", {"pressure": "92psi"})
    assert answer.verdict is None
    assert answer.table
    assert {row[0] for row in answer.table.rows} == {
        "22 TAC 535.231 (2022)", "Uniform Plumbing Code (2024)", "International Residential Code (2024)",
    }  # fmt: skip
    assert "report the figure itself" in answer.words


def test_a_reading_nearer_to_the_limit_than_the_gauge_is_sure_is_close() -> None:
    facts = {"law": "22 TAC 535.231", "regulator": "yes", "expansion_tank": "yes", "reading_error": "2psi"}
    assert [outcome(evaluate("static-pressure", facts | {"pressure": p})) for p in ("77psi", "79psi", "81psi", "83psi")] == [
        "within", "close", "close", "beyond",
    ]  # fmt: skip


def test_a_pressure_in_other_units_is_printed_short() -> None:
    assert "79.7708 psi" in evaluate("static-pressure", {"pressure": "550kPa"}).words


@pytest.mark.parametrize(
    ("name", "given_", "number", "said"),
    [
        ("static-pressure", {"pressure": "75psi", "edition": "2018"}, "WM035", "law="),
        ("static-pressure", {"pressure": "75psi", "law": "22 TAC 535.231", "edition": "2018"}, "WM030", "2009, 2022"),
        ("static-pressure", {"pressure": "75psi", "law": "Uniform Plumbing Code", "edition": "2009"}, "", ""),
        ("static-pressure", {"pressure": "75psi", "law": "Uniform Plumbing Code", "edition": "2022"}, "WM030", "2021, 2024"),
        ("static-pressure", {"pressure": "75psi", "law": "Uniform Plumbing Code", "edition": "2017"}, "WM005", "2018"),
        ("static-pressure", {"pressure": "75psi", "residual": "80psi"}, "WM032", "at rest"),
        ("drain-slope", {"diameter": "2in", "edition": "2017"}, "WM005", "2018"),
        ("drain-slope", {"diameter": "2in", "slope": "2%", "fall": "1in", "run": "4ft"}, "WM035", "not both"),
        ("pipe-friction", {"flow": "4gpm", "inside_diameter": "0.5in", "length": "9ft"}, "WM031", "C"),
        ("pipe-friction", {"flow": "4gpm", "inside_diameter": "0.5in", "length": "9ft", "roughness": "100",
                           "surface": "new plastic"}, "WM035", "not both"),
        ("water-hammer", {"inside_diameter": "0.5in", "wall": "0.05in", "velocity": "4fps"}, "WM031", "material"),
        ("fixture-flow-limit", {"fitting": "water closet"}, "WM031", "volume"),
        ("fixture-flow-limit", {"fitting": "sink", "flow": "2gpm"}, "WM031", "pressure"),
        ("first-hour-test", {"draws": "45gal,110F,122F", "last_at_hour": "no"}, "WM034", "above the mean"),
        ("first-hour-test", {"draws": "45gal,122F,110F", "last_at_hour": "yes"}, "WM034", "before it"),
        ("first-hour-test", {"draws": "9gal,120F,120F; 9gal,112F,110F", "last_at_hour": "yes"}, "WM034", "divides"),
        ("first-hour-test", {"draws": "", "last_at_hour": "no"}, "WM034", "no draw"),
        ("expansion-tank", {"volume": "50gal", "cold": "140F", "hot": "50F", "static": "60psi"}, "WM033", "below cold"),
        ("expansion-tank", {"volume": "50gal", "cold": "50F", "hot": "140F", "static": "140psi"}, "WM032", "static"),
        ("expansion-tank", {"volume": "50gal", "cold": "50F", "hot": "140F", "static": "60psi", "precharge": "135psi"},
         "WM032", "charge"),
        ("residual-pressure", {"static": "60psi", "residual": "50psi", "at_flow": "9gpm"}, "WM031", "flow"),
        ("hot-water-share", {"hot": "120F", "cold": "50F", "mixed": "125F"}, "WM033", "mixed"),
        ("water-demand", {}, "WM031", "units"),
    ],
)  # fmt: skip
def test_what_contradicts_itself_or_lacks_a_fact_is_refused(
    name: str, given_: dict[str, str], number: str, said: str
) -> None:
    if not number:
        assert evaluate(name, given_).words
        return
    with pytest.raises(Refusal) as refused:
        evaluate(name, given_)
    assert refused.value.problems[0].number == number
    assert said in str(refused.value.problems[0])


@pytest.mark.parametrize("name", [one.name for one in gauges().values() if "edition" in {each.name for each in one.inputs}
                                  and one.family == "water"])  # fmt: skip
def test_a_house_older_than_the_edition_is_told_what_was_no_must(name: str) -> None:
    one = find(name)
    law = {"law": "Uniform Plumbing Code"} if name == "static-pressure" else {}
    if "built" not in {each.name for each in one.inputs}:
        return
    old, new = (evaluate(name, {**one.example, **law, "edition": "2018", "built": year}) for year in ("1978", "2019"))
    assert old["edition_before_building"] is False
    assert new["edition_before_building"] is True
    assert any("recommended today" in caution for caution in old.cautions)
    assert not any("recommended today" in caution for caution in new.cautions)


def test_an_edition_that_was_not_read_is_marked_as_recalled() -> None:
    assert of_edition("UPC", 2015, "608.2", 2015).basis == "seen in a copy"
    assert of_edition("UPC", 2024, "608.2", 2015).basis == "memory"
    assert against_built(None, 2018) == ((), ())


@pytest.mark.parametrize(
    ("slope", "diameter", "law", "expected"),
    [
        ("0.25in/ft", "2in", "IPC", "within"),
        ("2.0833%", "2in", "IPC", "close"),
        ("2%", "2in", "IRC", "close"),
        ("1.99%", "2in", "IRC", "beyond"),
        ("0.125in/ft", "3in", "IRC", "within"),
        ("0.125in/ft", "3in", "UPC", "beyond"),
        ("0.0625in/ft", "8in", "IPC", "within"),
        ("0.0625in/ft", "8in", "IRC", "beyond"),
    ],
)
def test_the_fall_of_a_drain_by_code(slope: str, diameter: str, law: str, expected: str) -> None:
    assert outcome(evaluate("drain-slope", {"diameter": diameter, "law": law, "slope": slope})) == expected


@pytest.mark.parametrize(
    ("given_", "expected"),
    [
        ({"size": "1-1/2", "length": "42in", "fall": "0.875in", "law": "UPC"}, "within"),
        ({"size": "1-1/2", "length": "42.1in", "fall": "1in", "law": "UPC"}, "beyond"),
        ({"size": "1-1/2", "length": "3in", "fall": "0.1in", "law": "UPC"}, "within"),
        ({"size": "1-1/2", "length": "2.9in", "fall": "0.1in", "law": "UPC"}, "beyond"),
        ({"size": "2", "length": "96in", "fall": "2in", "law": "IRC"}, "within"),
        ({"size": "2", "length": "96in", "fall": "2 1/16in", "law": "IRC"}, "beyond"),
        ({"size": "2", "length": "96in", "fall": "1 15/16in", "law": "IRC"}, "beyond"),
        ({"size": "3", "length": "12ft", "fall": "1.5in", "law": "IRC"}, "within"),
        ({"size": "2", "length": "60in", "law": "IRC"}, "undecided"),
        ({"size": "2", "length": "60in", "fall": "1.5in", "law": "IRC", "edition": "2000"}, "undecided"),
        ({"size": "3", "length": "30ft", "law": "IRC", "water_closet": "yes"}, "within"),
        ({"size": "3", "length": "73in", "law": "UPC", "water_closet": "yes"}, "beyond"),
    ],
)
def test_a_trap_arm_is_held_exactly_at_its_limits(given_: dict[str, str], expected: str) -> None:
    assert outcome(evaluate("trap-arm", given_)) == expected


def test_a_trap_whose_level_distance_was_not_given_is_undecided_by_the_irc_only() -> None:
    assert outcome(evaluate("trap-outlet", {"down": "20in"})) == "undecided"
    assert outcome(evaluate("trap-outlet", {"down": "20in", "law": "UPC"})) == "within"


@pytest.mark.parametrize("law", ["Texas", "North Carolina", "Wisconsin"])
def test_flow_and_drainage_are_observations_with_a_count(law: str) -> None:
    poor = {"running": "2", "seen": "falls so far that use is hindered", "law": law}
    assert outcome(evaluate("functional-flow", poor)) == "beyond"
    assert outcome(evaluate("functional-flow", poor | {"seen": "steady"})) == "within"
    together = {"together": "2", "emptied": "yes", "overflowed": "no", "law": law}
    assert outcome(evaluate("functional-drainage", together)) == "within"
    assert outcome(evaluate("functional-drainage", together | {"overflowed": "yes"})) == "beyond"
    assert outcome(evaluate("functional-drainage", together | {"emptied": "no", "together": "1"})) == "beyond"
    assert outcome(evaluate("functional-drainage", together | {"together": "1"})) == "undecided"


def test_no_law_named_gives_no_verdict_on_flow_or_drainage() -> None:
    assert evaluate("functional-flow", {"running": "1", "seen": "stops"}).verdict is None
    assert evaluate("functional-drainage", {"together": "1", "emptied": "no", "overflowed": "yes"}).verdict is None
    assert evaluate("drain-time", {"volume": "30gal", "time": "9min", "backed_up": "yes"}).verdict is None
    assert "to report" in evaluate("drain-time", {"volume": "30gal", "time": "9min", "backed_up": "yes"}).words


@pytest.mark.parametrize("name", ["water-expansion", "expansion-tank", "heater-recovery", "static-pressure"])
def test_stored_pressure_brings_the_caution_never_to_operate_a_relief_valve(name: str) -> None:
    one = find(name)
    assert any("never operate one" in caution for caution in evaluate(name, one.example).cautions)


def test_rust_in_a_pipe_is_a_range_and_never_the_c_of_new_pipe() -> None:
    pipe = {"flow": "6gpm", "inside_diameter": "0.824in", "length": "60ft"}
    old = evaluate("pipe-friction", pipe | {"surface": "galvanised steel, rusted inside"})
    new = evaluate("pipe-friction", pipe | {"roughness": "150"})
    assert old.value is not None
    assert new.value is not None
    assert isinstance(old["least"], Decimal)
    assert new.value < old["least"] < old.value
    assert old.value / new.value > 5, "C 60 against 150: the loss is over five times as great"


def test_fast_water_lies_outside_the_range_of_the_friction_law() -> None:
    fast = evaluate(
        "pipe-friction", {"flow": "12gpm", "inside_diameter": "0.545in", "length": "9ft", "roughness": "150"}
    )
    assert [one.what for one in fast.outside_range] == ["velocity"]


def test_a_last_draw_before_the_hour_counts_whole_and_a_hotter_one_is_told() -> None:
    draws = "45gal,122F,110F; 12gal,122F,110F; 9gal,{},110F"
    whole = evaluate("first-hour-test", {"draws": draws.format("112F"), "last_at_hour": "no"})
    assert whole.value == Decimal(66)
    hotter = evaluate("first-hour-test", {"draws": draws.format("130F"), "last_at_hour": "yes"})
    assert hotter.value
    assert hotter.value > 66
    assert any("hotter" in caution for caution in hotter.cautions)
    colder = evaluate("first-hour-test", {"draws": draws.format("110F"), "last_at_hour": "yes"})
    assert colder.value == Decimal(57)


def test_a_charge_above_the_static_pressure_takes_less_water_too() -> None:
    tank = {"volume": "50gal", "cold": "50F", "hot": "140F", "static": "60psi"}
    right, high = (evaluate("expansion-tank", tank | {"precharge": p}).value for p in ("60psi", "100psi"))
    assert right
    assert high
    assert high > right
    thin = evaluate("expansion-tank", tank | {"atmosphere": "12.2psi"}).value
    assert thin
    assert thin != right
    near = evaluate("expansion-tank", tank | {"most": "150psi"})
    assert any("150 psi" in caution for caution in near.cautions)


def test_the_supply_curve_answers_both_ways_and_says_when_it_is_a_guess() -> None:
    read = {"static": "60psi", "residual": "48psi", "flow": "6gpm"}
    there = evaluate("residual-pressure", read | {"at_flow": "10gpm"})
    assert isinstance(there["pressure_there"], Decimal)
    assert Decimal(25) < there["pressure_there"] < Decimal(35)
    far = evaluate("residual-pressure", read | {"at_flow": "30gpm"})
    assert far.outside_range
    assert "does not give" in far.words
    level = evaluate("residual-pressure", read | {"residual": "60psi"})
    assert level.value == 0
    assert "no curve" in level.words


def test_a_fitting_is_brought_to_the_pressure_of_its_limit() -> None:
    """2 gpm at 20 psi through a plain opening is 4 gpm at 80 psi: four times the pressure, twice the flow."""
    assert evaluate("fixture-flow-limit", {"fitting": "shower", "flow": "2gpm", "pressure": "20psi"}).value == Decimal(
        4
    )
    read = {"fixture": "shower", "edition": "2018", "flow": "2.5gpm"}
    assert outcome(evaluate("fixture-pressure", read | {"pressure": "20psi"})) == "within"
    assert outcome(evaluate("fixture-pressure", read | {"pressure": "19.9psi"})) == "beyond"
    assert outcome(evaluate("fixture-pressure", read | {"pressure": "19.9psi", "edition": "2006"})) == "undecided"


def test_height_takes_pressure_and_says_where_water_does_not_stand() -> None:
    up, down = (evaluate("static-head", {"pressure": "60psi", "rise": rise}).value for rise in ("20ft", "-20ft"))
    assert up is not None
    assert down is not None
    assert up + down == Decimal(120)
    assert "does not stand" in evaluate("static-head", {"pressure": "4psi", "rise": "20ft"}).words


def test_a_bucket_tells_when_to_come_back_to_the_tub() -> None:
    answer = evaluate("flow-by-bucket", {"volume": "1gal", "time": "30s", "to_fill": "40gal"})
    assert answer["fill_time"] == Decimal(20)
    assert "come back" in answer.words


def test_a_missing_regulator_brings_the_tank_that_will_be_needed_with_it() -> None:
    given_ = {"pressure": "92psi", "check_or_backflow": "no"}
    assert "once fitted" in evaluate("static-pressure", given_ | {"regulator": "no"}).words
    assert "once fitted" not in evaluate("static-pressure", given_ | {"regulator": "yes"}).words
