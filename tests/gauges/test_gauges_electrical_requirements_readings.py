"""Trip time of ground-fault interrupters and lamps of receptacle testers, held against their own models."""

import itertools
from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from witnessmark.gauges import evaluate
from witnessmark.gauges.electrical import longest_trip_seconds
from witnessmark.gauges.electrical.protection.wiring_states import PRINTED, STATES, WiringState, pattern_of, states_for
from witnessmark.problems import Refusal


@given(st.floats(6, 5000), st.floats(6, 5000))
def test_more_current_never_gets_more_time_and_25_ms_is_the_floor(one: float, other: float) -> None:
    low, high = sorted((one, other))
    assert 0.025 <= longest_trip_seconds(high) <= longest_trip_seconds(low) <= 5.595


def test_the_formula_meets_the_floor_where_the_standard_ends_it() -> None:
    # UL 943: the formula runs to 264 mA; there it gives 24.97 ms, so that the floor of 25 ms joins without a step.
    assert pytest.approx(0.025, rel=2e-3) == (20 / 264) ** 1.43


@pytest.mark.parametrize(
    ("current", "facts", "outcome"),
    [
        ("3.9mA", {"tripped": "no"}, "within"),
        ("3.9mA", {"tripped": "yes", "rising": "yes"}, "beyond"),
        ("4mA", {"tripped": "yes", "rising": "yes"}, "within"),
        ("6mA", {"tripped": "yes", "rising": "yes"}, "within"),
        ("6.1mA", {"tripped": "yes", "rising": "yes"}, "beyond"),
        ("5mA", {"tripped": "yes"}, "undecided"),
        ("20mA", {"tripped": "yes", "time": "1s"}, "within"),
        ("20mA", {"tripped": "yes", "time": "1001ms"}, "beyond"),
        ("20mA", {"tripped": "yes"}, "undecided"),
        ("20mA", {"tripped": "no", "time": "900ms"}, "undecided"),
        ("20mA", {"tripped": "no", "time": "2s"}, "beyond"),
        ("20mA", {"tripped": "no"}, "undecided"),
        ("20mA", {"tripped": "no", "time": "9s", "by": "plug-in tester", "equipment_ground": "not known"}, "undecided"),
        ("20mA", {"tripped": "no", "time": "9s", "by": "plug-in tester", "equipment_ground": "yes"}, "beyond"),
        ("20mA", {"tripped": "yes", "by": "own test button"}, "undecided"),
        ("20mA", {"tripped": "no", "by": "own test button"}, "beyond"),
        ("265mA", {"tripped": "yes", "time": "25ms"}, "within"),
    ],
)
def test_what_a_trip_test_shows(current: str, facts: dict[str, str], outcome: str) -> None:
    verdict = evaluate("gfci-trip", {"current": current, **facts}).verdict
    assert verdict
    assert verdict.outcome == outcome


def test_no_verdict_without_an_outcome_and_no_rising_test_without_one() -> None:
    assert evaluate("gfci-trip", {"current": "20mA"}).verdict is None
    with pytest.raises(Refusal) as refused:
        evaluate("gfci-trip", {"current": "20mA", "rising": "yes"})
    assert refused.value.problems[0].number == "WM054"


def test_every_pattern_has_a_meaning_and_a_wiring_state() -> None:
    for one, two, three in itertools.product((False, True), repeat=3):
        pattern = (one, two, three)
        assert PRINTED[pattern]
        assert states_for(pattern), pattern


@pytest.mark.parametrize("threshold", [40, 65, 90])
def test_the_patterns_hold_whatever_lights_the_lamp(threshold: float) -> None:
    for state in STATES:
        assert pattern_of(state, threshold) == pattern_of(state)


def test_correct_is_never_proof_of_a_ground() -> None:
    answer = evaluate("receptacle-tester", {"neutral_ground": "no", "hot_neutral": "yes", "hot_ground": "yes"})
    assert answer["printed"] == "correct"
    assert answer["shows_ground"] is False
    false_ones = [state for state in states_for((False, True, True)) if not state.real_ground]
    assert len(false_ones) == 3
    assert all(state.words in answer.words for state in false_ones)


def test_no_lamp_lit_is_no_proof_that_the_slots_are_dead() -> None:
    answer = evaluate("receptacle-tester", {"neutral_ground": "no", "hot_neutral": "no", "hot_ground": "no"})
    assert any("line voltage though no lamp is lit" in caution for caution in answer.cautions)


@given(st.sampled_from(STATES), st.floats(0.95, 1.05))
def test_voltages_of_a_wiring_state_are_read_back_as_that_state(state: WiringState, level: float) -> None:
    """Whole circle: the voltages of each state without a floating slot name that state among those that fit."""
    if state.hot is None or state.neutral is None or state.ground is None:
        return
    volts = {
        "volts_neutral_ground": abs(state.neutral - state.ground),
        "volts_hot_neutral": abs(state.hot - state.neutral),
        "volts_hot_ground": abs(state.hot - state.ground),
    }
    answer = evaluate("receptacle-tester", {name: f"{value * level:.1f}V" for name, value in volts.items()})
    assert answer.table
    assert state.words in [row[0] for row in answer.table.rows]


def test_voltages_near_what_lights_a_lamp_give_both_patterns() -> None:
    given_volts = {"volts_neutral_ground": "60V", "volts_hot_neutral": "120V", "volts_hot_ground": "60V"}
    answer = evaluate("receptacle-tester", given_volts)
    assert answer["printed"] == "open ground or not a listed pattern"
    assert answer["first_suspect"] == "ground open"
    assert "between 40 and 90 V" in answer.cautions[0]


def test_voltages_that_do_not_add_up_are_told() -> None:
    ghost = {"volts_neutral_ground": "0V", "volts_hot_neutral": "120V", "volts_hot_ground": "95V"}
    assert any("do not add up" in one for one in evaluate("receptacle-tester", ghost).cautions)


def test_a_lamp_that_disagrees_with_its_voltage_is_told() -> None:
    volts = {"volts_neutral_ground": "0V", "volts_hot_neutral": "120V", "volts_hot_ground": "120V"}
    assert not any("disagree" in one for one in evaluate("receptacle-tester", {**volts, "hot_ground": "yes"}).cautions)
    dark = evaluate("receptacle-tester", {**volts, "hot_ground": "no"})
    assert dark["printed"] == "correct"
    assert any("hot to ground is dark at 120 V" in one for one in dark.cautions)


def test_one_voltage_beside_the_lamps_rules_wirings_out() -> None:
    lamps = {"neutral_ground": "yes", "hot_neutral": "yes", "hot_ground": "yes"}
    assert evaluate("receptacle-tester", lamps)["can_be"] == 2
    assert evaluate("receptacle-tester", {**lamps, "volts_neutral_ground": "50V"})["can_be"] == 1


@pytest.mark.parametrize(
    "given_reading", [{}, {"hot_neutral": "yes"}, {"hot_neutral": "yes", "volts_hot_ground": "120V"}]
)
def test_half_a_reading_is_refused(given_reading: dict[str, str]) -> None:
    with pytest.raises(Refusal) as refused:
        evaluate("receptacle-tester", given_reading)
    assert refused.value.problems[0].number == "WM052"


def test_trip_limit_is_a_plain_decimal() -> None:
    assert evaluate("gfci-trip", {"current": "20mA"}).value == Decimal(1)
