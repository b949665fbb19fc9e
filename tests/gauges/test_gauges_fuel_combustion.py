"""Combustion air, vents, carbon monoxide and draft: the rules hold at their edges, and physics goes the right way."""

from decimal import Decimal
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from witnessmark.gauges import Answer, evaluate
from witnessmark.gauges.fuel import (
    SCALES,
    air_free_by_oxygen,
    alarm_minutes,
    draft_floor,
    height_above_roof,
    infiltration_volume,
    opening_area,
    standard_volume,
)
from witnessmark.problems import Refusal

_FEW = settings(max_examples=40, deadline=None, database=None)
_INPUT = st.decimals(1000, 400_000, places=0)


def refused(name: str, **given: Any) -> str:
    with pytest.raises(Refusal) as raised:
        evaluate(name, given)
    return raised.value.problems[0].number


def outcome(answer: Answer) -> str:
    assert answer.verdict is not None
    return answer.verdict.outcome


@_FEW
@given(_INPUT, _INPUT, st.decimals("0.1", "5", places=2), st.decimals("0.1", "5", places=2))
def test_more_input_or_tighter_needs_more_room(first: Decimal, second: Decimal, one: Decimal, two: Decimal) -> None:
    low, high = sorted((one, two))
    assert infiltration_volume(first, second, low) >= infiltration_volume(first, second, high)
    assert infiltration_volume(first + second, Decimal(0), low) > infiltration_volume(first, second, low)
    assert standard_volume(first + second) == standard_volume(first) + standard_volume(second)


def test_the_methods_meet_where_the_standard_method_was_made() -> None:
    assert infiltration_volume(Decimal(1000), Decimal(0), Decimal("0.42")) == standard_volume(Decimal(1000))


@pytest.mark.parametrize(("volume", "expected"), [("2500 cu ft", "within"), ("2499 cu ft", "beyond")])
def test_a_room_is_held_against_the_need(volume: str, expected: str) -> None:
    answer = evaluate("combustion-air-indoors", {"appliances": "50000 Btu/h, other", "volume": volume})
    assert outcome(answer) == expected


def test_combustion_air_refusals() -> None:
    base = {"appliances": "50000 Btu/h, other"}
    assert refused("combustion-air-indoors", **base, method="known infiltration") == "WM046"
    assert refused("combustion-air-indoors", appliances=()) == "WM003"
    answer = evaluate("combustion-air-indoors", {**base, "air_changes": "0.40 ach", "method": "standard"})
    assert answer.value == 2500


@_FEW
@given(_INPUT)
def test_horizontal_ducts_take_twice_what_vertical_ones_do(btu: Decimal) -> None:
    assert opening_area(btu, "outdoors horizontal ducts") == 2 * opening_area(btu, "outdoors vertical ducts")
    assert opening_area(btu, "rooms on one storey") >= 100


def test_a_louver_counts_by_its_free_area_and_one_opening_by_the_connectors() -> None:
    given = {"input": "120000 Btu/h", "way": "rooms on one storey", "face": "130 sq in"}
    assert outcome(evaluate("combustion-air-openings", given)) == "within"
    assert outcome(evaluate("combustion-air-openings", {**given, "covering": "metal louver"})) == "beyond"
    one = {"input": "30000 Btu/h", "way": "outdoors one opening", "connectors": "28 sq in"}
    assert evaluate("combustion-air-openings", one).value == 28


def test_connector_rise_is_exact_at_the_edge() -> None:
    edge = {"length": "6ft", "rise": "1 1/2in"}
    assert outcome(evaluate("vent-connector", edge)) == "within"
    assert outcome(evaluate("vent-connector", {**edge, "rise": "1 7/16in"})) == "beyond"
    assert outcome(evaluate("vent-connector", {**edge, "rise": "-1in"})) == "beyond"
    long = {"length": "10ft", "vent_height": "12ft"}
    assert outcome(evaluate("vent-connector", long)) == "beyond"
    assert outcome(evaluate("vent-connector", {**long, "wall": "Type B"})) == "within"


def test_roof_slope_between_two_rows_takes_the_steeper() -> None:
    assert height_above_roof(Decimal("6.01")) == Decimal("1.25")
    assert height_above_roof(Decimal("21.01")) is None
    slopes = [Decimal(at) / 4 for at in range(85)]
    heights = [height for slope in slopes if (height := height_above_roof(slope)) is not None]
    assert heights == sorted(heights)


def test_near_a_wall_or_beyond_the_table_the_height_says_so() -> None:
    near = evaluate("gas-vent-height", {"slope": "6 in 12", "wall_distance": "7ft 11in"})
    assert near.value == 2
    assert near["by_table"] is False
    edge = evaluate("gas-vent-height", {"slope": "6 in 12", "wall_distance": "8ft", "vent_size": "12in"})
    assert edge["by_table"] is True
    steep = evaluate("gas-vent-height", {"slope": "24 in 12"})
    assert steep.value is None
    assert steep.outside_range


@_FEW
@given(st.decimals(0, 5000, places=2), st.decimals(0, 5000, places=2))
def test_no_scale_goes_down_as_the_level_goes_up(one: Decimal, two: Decimal) -> None:
    low, high = sorted((one, two))
    for scale in SCALES:
        order = [band[2] for band in scale.bands]
        assert order.index(scale.band(low)[0]) <= order.index(scale.band(high)[0])


def test_every_source_keeps_its_own_row_and_the_caution_follows_the_stricter() -> None:
    answer = evaluate("carbon-monoxide-level", {"level": "85ppm"})
    assert answer.table is not None
    assert len({row[2] for row in answer.table.rows}) == len(SCALES) == len(answer.table.rows)
    assert answer["field"] != answer["trade"]
    assert "differ" in answer.words
    assert answer.words.startswith("Get everybody out")
    assert answer.cautions[0].startswith("Get everybody out")
    assert evaluate("carbon-monoxide-level", {"level": "69ppm"}).cautions[0].startswith("Stop testing")
    assert evaluate("carbon-monoxide-level", {"level": "9ppm"}).cautions[0].startswith("Tell the occupants")


def test_a_silent_alarm_proves_nothing_and_every_answer_says_so() -> None:
    for level in ("5ppm", "69ppm", "150ppm", "500ppm"):
        answer = evaluate("carbon-monoxide-alarm", {"level": level})
        assert any("proves nothing" in caution for caution in answer.cautions)
    assert alarm_minutes(Decimal(149)) == (60, 240)
    assert alarm_minutes(Decimal("69.9")) is None


@_FEW
@given(st.floats(1, 10_000), st.floats(0, 15))
def test_air_free_is_never_less_than_measured_and_undoes_itself(ppm: float, oxygen: float) -> None:
    free = air_free_by_oxygen(ppm, oxygen)
    assert free >= ppm
    assert free * (20.9 - oxygen) / 20.9 == pytest.approx(ppm)


def test_oxygen_and_dioxide_of_one_flame_agree() -> None:
    """Dilution thins both alike: at half air, oxygen is half of 20.9 and carbon dioxide half of the ultimate."""
    by_oxygen = evaluate("carbon-monoxide-air-free", {"measured": "80ppm", "oxygen": "10.45%"})
    by_dioxide = evaluate("carbon-monoxide-air-free", {"measured": "80ppm", "dioxide": "6.1%"})
    assert by_oxygen.value == by_dioxide.value == 160


def test_air_free_near_fresh_air_is_flagged_then_refused() -> None:
    assert evaluate("carbon-monoxide-air-free", {"measured": "5ppm", "oxygen": "15%"}).outside_range == ()
    flagged = evaluate("carbon-monoxide-air-free", {"measured": "5ppm", "oxygen": "15.1%"})
    assert flagged.outside_range
    assert "mostly air" in flagged.words
    assert refused("carbon-monoxide-air-free", measured="5ppm", oxygen="20%") == "WM042"
    assert refused("carbon-monoxide-air-free", measured="5ppm", dioxide="0.4%") == "WM042"
    assert refused("carbon-monoxide-air-free", measured="5ppm") == "WM046"
    odd = evaluate("carbon-monoxide-air-free", {"measured": "5ppm", "dioxide": "14%"})
    assert odd.outside_range


def test_an_air_free_limit_is_never_held_against_a_figure_as_measured() -> None:
    answer = evaluate("carbon-monoxide-in-flue", {"appliance": "oven", "measured": "300ppm"})
    assert answer["field_oven"] == "beyond"
    assert answer["oven_standard"] == "not given"
    bare = evaluate("carbon-monoxide-in-flue", {"appliance": "boiler"})
    assert all(also.value == "not given" for also in bare.also)


@_FEW
@given(st.decimals(-40, 120, places=1), st.decimals(-40, 120, places=1))
def test_colder_asks_for_more_draft_and_the_pieces_join(one: Decimal, two: Decimal) -> None:
    low, high = sorted((one, two))
    assert draft_floor(low) <= draft_floor(high)
    assert draft_floor(Decimal(10)) == Decimal("-2.5")
    assert draft_floor(Decimal(90)) == Decimal("-0.5")


@pytest.mark.parametrize(
    ("draft", "expected"), [("-3Pa", "within"), ("-1.4Pa", "close"), ("-1Pa", "beyond"), ("2Pa", "beyond")]
)
def test_draft_is_negative_and_back_draft_is_said(draft: str, expected: str) -> None:
    answer = evaluate("vent-draft", {"outdoors": "50F", "draft": draft})
    assert outcome(answer) == expected
    assert ("into the room" in answer.words) == (draft == "2Pa")
