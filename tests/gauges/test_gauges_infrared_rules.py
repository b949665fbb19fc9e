"""Infrared: every condition of every source at its limit, classes of insulation, spots, and what is refused by number."""

from __future__ import annotations

from decimal import Decimal

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from witnessmark.gauges import Answer, evaluate
from witnessmark.gauges.infrared.contrast import surface_contrast
from witnessmark.gauges.infrared.materials import MATERIALS, range_of
from witnessmark.gauges.infrared.scan_rules import band, difference_needed
from witnessmark.gauges.infrared.wall import BTU_R, class_of, u_by_film, u_spread
from witnessmark.problems import Refusal

FEW = settings(max_examples=40, deadline=None, database=None)

#: A survey that every source would accept, each condition exactly at its limit where one source sets it.
GOOD = {
    "inside_temperature": "70F", "outside_temperature": "52F", "hours_held": "24h", "hours_since_sun": "12h",
    "wind": "5m/s", "dry_hours": "12h", "wall": "light frame", "heated": "yes", "u_value": "0.3W/(m2.K)",
    "outside_change_day": "18F", "outside_change_during": "9F", "inside_change_during": "3.6F",
}  # fmt: skip
SOURCES = ("ashrae_101", "astm_c1060", "en_13187_practice", "iso_6781")


def number(answer: Answer, name: str) -> float:
    found = answer[name]
    assert isinstance(found, Decimal)
    return float(found)


def test_a_survey_at_every_limit_is_met_by_every_source() -> None:
    answer = evaluate("infrared-scan-conditions", GOOD)
    assert [answer[source] for source in SOURCES] == ["met"] * 4


@pytest.mark.parametrize(
    ("changed", "not_met"),
    [
        ({"outside_temperature": "52.01F"}, {"ashrae_101", "astm_c1060", "en_13187_practice", "iso_6781"}),
        ({"hours_held": "23.9h"}, {"en_13187_practice", "iso_6781"}),
        ({"hours_held": "3.9h"}, {"astm_c1060", "en_13187_practice", "iso_6781"}),
        ({"hours_held": "2.9h"}, set(SOURCES)),
        ({"heated": "no"}, {"en_13187_practice"}),
        ({"heated": "no", "hours_held": "72h"}, set()),
        ({"hours_since_sun": "11.9h"}, {"iso_6781"}),
        ({"hours_since_sun": "2.9h"}, {"astm_c1060", "iso_6781"}),
        ({"hours_since_sun": "1.9h"}, {"astm_c1060", "en_13187_practice", "iso_6781"}),
        ({"wind": "5.01m/s"}, {"en_13187_practice"}),
        ({"wind": "15mph"}, {"en_13187_practice"}),
        ({"wind": "15.01mph"}, {"astm_c1060", "en_13187_practice"}),
        ({"dry_hours": "11.9h"}, {"en_13187_practice"}),
        ({"wall": "masonry veneer"}, {"en_13187_practice"}),
        ({"wall": "masonry veneer", "dry_hours": "24h"}, set()),
        ({"wall": "masonry veneer", "dry_hours": "24h", "hours_since_sun": "7.9h"}, {"astm_c1060", "iso_6781"}),
        ({"u_value": "0.299W/(m2.K)"}, {"iso_6781"}),
        ({"outside_change_day": "18.1F"}, {"iso_6781"}),
        ({"outside_change_during": "9.1F"}, {"iso_6781"}),
        ({"inside_change_during": "3.7F"}, {"iso_6781"}),
        ({"inside_temperature": "52F", "outside_temperature": "70F"}, set()),
    ],
)
def test_each_condition_counts_for_the_sources_that_ask_it_and_for_no_other(
    changed: dict[str, str], not_met: set[str]
) -> None:
    """M-C01 to M-C05 at their limits: ASHRAE 101-1981, ASTM C1060, practice sheet to BS EN 13187, ISO 6781."""
    answer = evaluate("infrared-scan-conditions", {**GOOD, **changed})
    assert {source for source in SOURCES if answer[source] == "not met"} == not_met
    assert {answer[source] for source in SOURCES} <= {"met", "not met"}


def test_solid_masonry_lies_outside_the_practice_for_frames() -> None:
    answer = evaluate("infrared-scan-conditions", {**GOOD, "wall": "masonry", "dry_hours": "24h"})
    assert answer["astm_c1060"] == "not covered"
    assert answer["en_13187_practice"] == "met"


@pytest.mark.parametrize(
    ("left_out", "open_"),
    [
        ("hours_held", set(SOURCES)),
        ("hours_since_sun", {"astm_c1060", "en_13187_practice", "iso_6781"}),
        ("wind", {"astm_c1060", "en_13187_practice"}),
        ("dry_hours", {"en_13187_practice"}),
        ("u_value", {"iso_6781"}),
        ("outside_change_day", {"iso_6781"}),
        ("outside_change_during", {"iso_6781"}),
        ("inside_change_during", {"iso_6781"}),
    ],
)
def test_what_was_not_noted_leaves_a_source_undecided(left_out: str, open_: set[str]) -> None:
    answer = evaluate("infrared-scan-conditions", {key: value for key, value in GOOD.items() if key != left_out})
    assert {source for source in SOURCES if answer[source] == "not decided"} == open_
    assert answer.verdict is None, "no verdict over all sources together"
    assert answer.table is not None
    assert len(answer.table.rows) == len(SOURCES) + 1


def test_the_difference_that_iso_6781_asks_of_a_wall() -> None:
    """M-C05 (from memory): U 0.30 asks 10 K, 0.20 asks 15 K, 0.75 and above the floor of 5 K."""
    assert [difference_needed(Decimal(u)) for u in ("0.30", "0.20", "0.75", "2")] == [10, 15, 5, 5]


def test_bands_of_the_guide_at_their_edges() -> None:
    """M-C06: below 5 K, to 10, to 15, above; 5 K is 9 °F."""
    edges = ("8.99", "9", "17.99", "18", "27", "27.01")
    assert [band(Decimal(d)) for d in edges] == ["inadequate", "marginal", "marginal", "good", "good", "ideal"]


def test_every_material_has_a_range_with_its_lists_and_metal_is_told_apart() -> None:
    for name, material in MATERIALS.items():
        low, high, _ = range_of(name)
        assert 0 < low < high < 1, f"{name}: one number, though lists differ by 0.05 to 0.1"
        assert material.rows
        assert evaluate("infrared-material", {"material": name})["reliable"] is (high > Decimal("0.5"))


@FEW
@given(st.sampled_from([name for name, one in MATERIALS.items() if not one.metal]), st.integers(0, 60))
def test_the_spread_of_a_material_vanishes_where_nothing_differs(name: str, celsius: int) -> None:
    even = evaluate(
        "infrared-material", {"material": name, "reading": f"{celsius}C", "reflected_temperature": f"{celsius}C"}
    )
    apart = evaluate("infrared-material", {"material": name, "reading": f"{celsius}C", "reflected_temperature": "80C"})
    assert even.value is not None
    assert apart.value is not None
    assert abs(even.value) < Decimal("1e-6")
    assert apart.value > even.value


@FEW
@given(
    st.integers(-10, 60), st.decimals("0.5", "1", places=2), st.integers(-20, 60),
    st.sampled_from(["graybody", "7.5-14 um", "8-14 um"]),
)  # fmt: skip
def test_a_reading_recorrected_to_its_own_settings_stays_and_from_1_is_corrected_once(
    shown: int, e: Decimal, reflected: int, band_: str
) -> None:
    at = {"reading": f"{shown}C", "emissivity": f"{e}", "reflected_temperature": f"{reflected}C", "band": band_}
    try:
        once = evaluate("infrared-correction", at)
    except Refusal as refusal:
        assert refusal.problems[0].number == "WM020"  # noqa: PT017 - which refusal is the point
        return
    same = evaluate("infrared-recorrection", {**at, "emissivity_set": f"{e}", "reflected_set": f"{reflected}C"})
    from_1 = evaluate("infrared-recorrection", {**at, "emissivity_set": "1", "reflected_set": "0C"})
    assert same.value is not None
    assert once.value is not None
    assert float(same.value) == pytest.approx(shown * 1.8 + 32, abs=1e-6)
    assert from_1.value is not None
    assert float(from_1.value) == pytest.approx(float(once.value), abs=1e-6)


@FEW
@given(st.floats(16, 26), st.floats(-25, 5), st.floats(0.15, 2.5), st.floats(0.1, 2))
def test_the_range_of_u_holds_its_middle_and_grows_with_the_error(
    inside: float, outside: float, u: float, off: float
) -> None:
    surface = inside - u * 0.13 * (inside - outside)
    one = u_spread(inside, surface, outside, 0.13, surface_off=off, air_off=0.5)
    two = u_spread(inside, surface, outside, 0.13, surface_off=off + 0.5, air_off=0.5)
    assert one.low <= one.middle <= one.high
    assert one.middle == pytest.approx(u, rel=1e-9)
    assert two.high - two.low > one.high - one.low
    # The stated part of the surface is the shift that such an error makes (linear, so exact).
    assert u_by_film(inside, surface - off, outside, 0.13) - u == pytest.approx(one.by_surface, rel=1e-6)


def test_a_class_is_a_range_and_never_a_value() -> None:
    """M-U06, M 9.9: half a kelvin is 64 % of a U of 0.30; field error 0 to 30 % (Gasi and others 2019) is in the range."""
    at = {"inside_temperature": "20C", "surface_temperature": "19.22C", "outside_temperature": "0C"}
    answer = evaluate("infrared-u-class", at)
    assert answer.value is None
    assert answer["decided"] is False
    assert number(answer, "lowest_u") < 0.3 * 0.7
    assert number(answer, "highest_u") > 0.492
    assert answer.uncertainty is not None
    assert "64%" in answer.uncertainty.words
    bare = evaluate("infrared-u-class", {**at, "surface_temperature": "8C", "outside_temperature": "-18C"})
    assert bare["class"] == "little or no insulation"
    assert bare["decided"] is True
    # A contrast of 1.1 K read with a camera of 2 K decides nothing; with one probe for both it may.
    slight = {"inside_temperature": "70F", "surface_temperature": "68F", "outside_temperature": "20F"}
    assert evaluate("infrared-u-class", slight)["decided"] is False
    assert evaluate("infrared-u-class", {**slight, "surface_error": "0.5K"})["decided"] is True


def test_resistance_films_follow_the_direction_of_heat() -> None:
    """ISO 6946: 0.13 horizontal, 0.10 up, 0.17 down; the same reading fits a worse ceiling and a better floor."""
    at = {"inside_temperature": "20C", "surface_temperature": "17C", "outside_temperature": "-5C"}
    up, across, down = (
        number(evaluate("infrared-u-class", {**at, "heat_flow": way}), "highest_u")
        for way in ("up", "horizontal", "down")
    )
    assert up > across > down
    assert [surface_contrast(1, 0, rsi, 10) for rsi in (0.10, 0.13, 0.17)] == pytest.approx([1.0, 1.3, 1.7])


def test_less_than_ten_kelvin_is_outside_the_range_and_decides_nothing() -> None:
    answer = evaluate(
        "infrared-u-class",
        {"inside_temperature": "20C", "surface_temperature": "15C", "outside_temperature": "11C"},
    )
    assert answer["decided"] is False
    assert answer.outside_range


@FEW
@given(st.floats(0.06, 5), st.floats(0.06, 5))
def test_classes_are_ordered(one: float, other: float) -> None:
    assume(one < other)
    order = ("insulated", "some insulation", "little or no insulation")
    assert order.index(class_of(one)) <= order.index(class_of(other))
    assert class_of(BTU_R / 10) == "insulated"


@pytest.mark.parametrize(
    ("difference", "stands"), [("2K", "below the noise"), ("5K", "near the noise"), ("20K", "clear of it")]
)
def test_contrast_against_noise(difference: str, stands: str) -> None:
    """M-C: 0.6 against 0.3 gives 0.195 K at 5 K; against a noise of 0.1 K that is 1.95 times."""
    poor = {"u_without": "0.6W/(m2.K)", "u_with": "0.3W/(m2.K)", "noise": "0.1K"}
    answer = evaluate("insulation-contrast", {**poor, "temperature_difference": difference})
    assert answer["against_noise"] == stands
    needed = number(answer, "difference_needed") / 1.8
    enough = evaluate("insulation-contrast", {**poor, "temperature_difference": f"{needed:.6f}K"})
    assert number(enough, "times_noise") == pytest.approx(5, abs=1e-3)


def test_a_thing_is_measured_from_where_it_fills_the_spot() -> None:
    at = {"distance": "10ft", "field_of_view": "45deg", "pixels": "160", "target": "1.5in"}
    far = evaluate("infrared-spot", at)
    assert far["fills"] is False
    near = evaluate("infrared-spot", {**at, "distance": f"{number(far, 'farthest') - 0.001:.4f}ft"})
    assert near["fills"] is True


def test_a_wide_window_of_time_or_a_window_in_the_way_changes_the_counts() -> None:
    """Two halves of air (the published form, 18.173 °C) and the whole path at once are both shown; a window warms."""
    at = {
        "counts": "17000", "emissivity": "0.90", "reflected_temperature": "10C", "air_temperature": "20C",
        "humidity": "40%", "distance": "2m", "planck_r1": "21106.77", "planck_r2": "0.012545258", "planck_b": "1501",
        "planck_f": "1", "planck_o": "-7340",
    }  # fmt: skip
    plain = evaluate("infrared-counts", at)
    assert plain.value is not None
    assert number(plain, "by_whole_path") - float(plain.value) == pytest.approx(0.0094 * 1.8, abs=0.0005)
    clear = evaluate("infrared-counts", {**at, "window_transmission": "100%"})
    assert clear.value == plain.value


@pytest.mark.parametrize(
    ("name", "given_", "refused"),
    [
        ("infrared-correction", {"reading": "0C", "emissivity": "0.5", "reflected_temperature": "120C"}, "WM020"),
        ("emissivity-by-tape", {"tape_reading": "120F", "reading": "60F", "reflected_temperature": "70F"}, "WM020"),
        ("emissivity-by-tape", {"tape_reading": "70F", "reading": "70F", "reflected_temperature": "70F"}, "WM020"),
        (
            "infrared-u-class",
            {"inside_temperature": "70F", "surface_temperature": "71F", "outside_temperature": "20F"},
            "WM022",
        ),
        (
            "infrared-u-class",
            {"inside_temperature": "70F", "surface_temperature": "10F", "outside_temperature": "20F"},
            "WM022",
        ),
        (
            "infrared-u-class",
            {"inside_temperature": "70F", "surface_temperature": "69F", "outside_temperature": "70F"},
            "WM022",
        ),
        ("r-and-u", {}, "WM023"),
        ("r-and-u", {"resistance": "13 r-value", "transmittance": "0.4 W/(m2.K)"}, "WM023"),
    ],
)
def test_contradictions_are_refused_by_number(name: str, given_: dict[str, str], refused: str) -> None:
    with pytest.raises(Refusal) as caught:
        evaluate(name, given_)
    assert caught.value.problems[0].number == refused


def test_counts_off_the_curve_are_refused_by_number() -> None:
    with pytest.raises(Refusal) as caught:
        evaluate("infrared-counts", {
            "counts": "100", "emissivity": "0.95", "reflected_temperature": "20C", "air_temperature": "20C",
            "humidity": "50%", "distance": "1m", "planck_r1": "21106.77", "planck_r2": "0.012545258",
            "planck_b": "1501", "planck_f": "1", "planck_o": "-7340",
        })  # fmt: skip
    assert caught.value.problems[0].number == "WM021"


def test_an_emissivity_above_one_is_told_and_not_clipped_in_silence() -> None:
    answer = evaluate(
        "emissivity-by-tape", {"tape_reading": "120F", "reading": "122.5F", "reflected_temperature": "70F"}
    )
    assert answer.value == 1
    assert "above 1" in answer.words
