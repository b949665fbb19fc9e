"""Radon: the figure that is reported, valid and invalid tests, two tests, limits of quality, placement, refusals."""

from __future__ import annotations

import datetime as dt
import statistics
from decimal import ROUND_HALF_UP, Decimal
from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from witnessmark.gauges import Answer, evaluate
from witnessmark.gauges.radon import (
    Hour,
    becquerels,
    counting,
    half_up,
    mean_of,
    picocuries,
    precision,
    radon_monitor,
    radon_two_tests,
    relative_percent_error,
    reported,
)
from witnessmark.problems import Refusal
from witnessmark.units import Quantity

READING = st.decimals(0, 60, places=1)
RESULT = st.decimals(0, 60, places=3)
GENTLE = settings(max_examples=60, deadline=None, database=None)
HELD = {"closed_before": "12h", "closed_during": "yes"}


def pci(value: Decimal | str) -> Quantity:
    return Quantity(Decimal(value), "pCi/L")


def monitor(values: list[Decimal] | list[str], **given: str) -> Answer:
    return evaluate("radon-monitor", {**HELD, "values": ",".join(f"{value}pCi/L" for value in values), **given})


@GENTLE
@given(st.lists(READING, min_size=1, max_size=60))
def test_the_reported_figure_is_the_exact_mean_of_the_standard_library_rounded_half_up(values: list[Decimal]) -> None:
    """statistics.mean over fractions is exact; decimal rounds halves up."""
    mean = statistics.mean(Fraction(value) for value in values)
    assert mean_of(values) == mean
    tenths = Decimal(int(mean * 10 + Fraction(1, 2))) / 10
    assert reported(values) == tenths


@GENTLE
@given(st.integers(0, 600), st.integers(0, 600))
def test_of_two_readings_in_tenths_a_half_always_goes_up(a: int, b: int) -> None:
    """Every pair of tenths, also those whose mean binary floats put below the half."""
    want = (Decimal(a + b) / 20).quantize(Decimal("0.1"), ROUND_HALF_UP)
    assert reported([Decimal(a) / 10, Decimal(b) / 10]) == want


def test_binary_floats_would_get_pairs_wrong_that_decimals_get_right() -> None:
    """The trap itself: round() of a float mean gives 3.9 where 4.0 acts."""
    pairs = [(3.8, 4.1), (3.3, 4.6), (2.8, 5.1), (2.3, 5.6)]
    assert [round((a + b) / 2, 1) for a, b in pairs] == [3.9] * 4
    assert [reported([Decimal(str(a)), Decimal(str(b))]) for a, b in pairs] == [Decimal("4.0")] * 4


@GENTLE
@given(st.integers(0, 4000), st.integers(0, 4000))
def test_becquerels_give_the_figure_of_their_exact_mean(a: int, b: int) -> None:
    """A concentration in Bq/m3 is divided by 37, which no decimal holds; the half must not be lost by that."""
    converted = [Decimal(one) / 37 for one in (a, b)]
    mean = Fraction(a + b, 74)
    assert reported(converted) == Decimal(int(mean * 10 + Fraction(1, 2))) / 10


def test_a_mean_of_exactly_3_95_in_becquerels_acts() -> None:
    answer = evaluate("radon-two-tests", {"first": "146.1Bq/m3", "second": "146.2Bq/m3", "apart": "4in"})
    assert answer.value == Decimal("4.0")


@GENTLE
@given(RESULT)
def test_units_there_and_back(value: Decimal) -> None:
    assert abs(picocuries(becquerels(value)) - value) <= abs(value) * Decimal("1e-11")


@GENTLE
@given(st.lists(READING, min_size=4, max_size=4), st.lists(READING, min_size=44, max_size=70))
def test_the_first_four_hours_never_touch_the_result(first: list[Decimal], rest: list[Decimal]) -> None:
    """Commonly wrong: averaging with the first 4 hours."""
    with_zeros = radon_monitor(values=tuple(map(pci, [Decimal(0)] * 4 + rest)), closed_before=Quantity(Decimal(12), "h"),
                               closed_during=True)  # fmt: skip
    with_any = radon_monitor(values=tuple(map(pci, first + rest)), closed_before=Quantity(Decimal(12), "h"),
                             closed_during=True)  # fmt: skip
    assert with_zeros.value == with_any.value == reported(rest)


@pytest.mark.parametrize(
    ("closed", "fan", "corrected", "discarded", "needed"),
    [
        ("12", None, False, 4, 44),
        ("20", None, False, 4, 44),
        ("9", None, False, 4, 46),
        ("8", None, False, 4, 46),
        ("7.5", None, False, 5, 46),
        ("0", None, False, 12, 46),
        ("0", None, True, 12, 46),
        ("12", None, True, 0, 48),
        ("12", "24", False, 4, 44),
        ("12", "23.5", False, 4, 46),
        ("12", "0", False, 24, 46),
        ("0", "20", False, 12, 46),
        ("12", "10", True, 14, 46),
    ],
)
def test_which_hours_count(closed: str, fan: str | None, corrected: bool, discarded: int, needed: int) -> None:
    """ANSI/AARST MAH-2019 6.1.2 c, 7.3.2 b, 8.5.3 c; 44 hours recalled from EPA 402-R-92-004."""
    rule = counting(Decimal(closed), None if fan is None else Decimal(fan), corrected=corrected)
    assert (rule.discarded, rule.needed) == (discarded, needed)


def times(count: int, *, gap_before: int = 0, start: str = "2026-03-02T00:00") -> list[str]:
    begin = dt.datetime.fromisoformat(start)
    shift = [dt.timedelta(hours=at + (1 if gap_before and at + 1 >= gap_before else 0)) for at in range(count)]
    return [(begin + one).isoformat() for one in shift]


def timed(stamps: list[str], **given: str) -> Answer:
    return evaluate("radon-monitor", {**HELD, "hours": "\n".join(f"3.0pCi/L,{stamp}" for stamp in stamps), **given})


def test_a_series_with_its_times_is_valid_and_a_gap_in_it_is_not() -> None:
    whole = timed(times(48))
    assert whole.value == Decimal("3.0")
    assert not any("Not every hour" in caution for caution in whole.cautions)
    broken = timed(times(60, gap_before=20))
    assert broken.value is None
    assert "gap before hour 20" in broken.words
    assert "must not be reported" in broken.words


def test_the_clock_of_the_monitor_may_wander_by_minutes() -> None:
    stamps = times(48)
    stamps[10] = "2026-03-02T10:03"
    assert timed(stamps).value == Decimal("3.0")
    stamps[10] = "2026-03-02T10:20"
    assert timed(stamps).value is None


def test_hours_over_the_change_of_clocks_follow_one_another_by_their_offset() -> None:
    begin = dt.datetime(2026, 10, 31, 12, tzinfo=dt.UTC)
    stamps = []
    for at in range(48):
        moment = begin + dt.timedelta(hours=at)
        offset = -4 if moment < dt.datetime(2026, 11, 1, 6, tzinfo=dt.UTC) else -5
        stamps.append(moment.astimezone(dt.timezone(dt.timedelta(hours=offset))).isoformat())
    assert timed(stamps).value == Decimal("3.0")


def test_hours_out_of_order_or_of_two_clocks_are_refused() -> None:
    stamps = times(48)
    with pytest.raises(Refusal, match="WM086"):
        timed([stamps[0], stamps[2], stamps[1], *stamps[3:]])
    with pytest.raises(Refusal, match="WM087"):
        timed([stamps[0] + "-05:00", *stamps[1:]])
    with pytest.raises(Refusal, match="WM085"):
        evaluate("radon-monitor", HELD)
    with pytest.raises(Refusal, match="WM085"):
        evaluate("radon-monitor", {**HELD, "values": ""})
    with pytest.raises(Refusal, match="WM085"):
        radon_monitor(values=(pci("3"),), hours=(Hour(pci("3")),), closed_before=Quantity(Decimal(12), "h"),
                      closed_during=True)  # fmt: skip


@pytest.mark.parametrize(
    ("given", "said"),
    [
        ({"moved": "yes"}, "moved, unplugged"),
        ({"closed_during": "no"}, "closed-house conditions did not hold"),
        ({"hours_removed": "1"}, "taken out"),
        ({"calibration_due": "2026-01-01", "ended_on": "2026-01-02"}, "calibration was good until"),
        ({"duplicate_beyond_control": "yes"}, "duplicate"),
        ({"start": "system correction", "closed_before": "6h", "fan_running": "1h"}, "hours are left, less than 46"),
    ],
)
def test_each_thing_that_makes_a_test_invalid_leaves_no_result(given: dict[str, str], said: str) -> None:
    answer = monitor(["3.0"] * 60, **given)
    assert answer.value is None
    assert answer["valid"] is False
    assert said in answer.words
    assert "no result" in answer.words


def test_what_could_not_be_checked_is_said() -> None:
    said = " ".join(monitor(["3.0"] * 48).cautions)
    assert "Not every hour has its time" in said
    assert "Whether the calibration was in date was not checked" in said
    dated = monitor(["3.0"] * 48, calibration_due="2026-09-30", ended_on="2026-03-04")
    assert not any("calibration was in date" in caution for caution in dated.cautions)


def test_severe_weather_takes_no_hour_out_but_is_said() -> None:
    """Commonly wrong: hours of bad weather taken out."""
    answer = monitor(["3.0"] * 30 + ["9.0"] * 18, severe_weather="yes")
    assert answer["kept"] == 44
    assert answer.value == reported([Decimal(3)] * 26 + [Decimal(9)] * 18)
    assert any("Severe weather" in caution for caution in answer.cautions)


@GENTLE
@given(RESULT, RESULT)
def test_a_pair_stands_the_same_either_way_round(a: Decimal, b: Decimal) -> None:
    one, other = precision(a, b), precision(b, a)
    assert (one.rpd, one.outcome) == (other.rpd, other.outcome)
    assert one.rpd is None or 0 <= one.rpd <= 200


@GENTLE
@given(st.decimals(4, 50, places=2), st.decimals(0, 40, places=1), st.decimals(0, 40, places=1))
def test_pairs_farther_apart_never_stand_better(mean: Decimal, less: Decimal, more: Decimal) -> None:
    order = ("in control", "warning limit reached", "control limit reached")
    less, more = sorted((less, more))

    def stands(share: Decimal) -> int:
        return order.index(precision(mean * (1 - share / 200), mean * (1 + share / 200)).outcome)

    assert stands(less) <= stands(more)


@GENTLE
@given(RESULT, st.decimals("0.5", 60, places=2))
def test_the_error_of_a_spike_keeps_its_sign(measured: Decimal, known: Decimal) -> None:
    off = relative_percent_error(measured, known)
    assert (off > 0) == (measured > known)
    assert known * (1 + Decimal(off.numerator) / Decimal(off.denominator) / 100) == pytest.approx(measured)


def test_a_mean_of_nought_has_no_percentage_and_the_difference_counts() -> None:
    answer = evaluate("radon-duplicates", {"first": "0pCi/L", "second": "0pCi/L"})
    assert answer.value is None
    assert answer["standing"] == "in control"


@GENTLE
@given(RESULT, RESULT, st.decimals(0, 24, places=1))
def test_two_tests_are_averaged_only_where_they_may_be(a: Decimal, b: Decimal, apart: Decimal) -> None:
    answer = radon_two_tests(pci(a), pci(b), Quantity(apart, "[in_i]"))
    low, high = sorted((a, b))
    if apart > 8:
        assert answer["decision"] == "keep apart"
    elif (half_up(Fraction(low)) < 4 <= half_up(Fraction(high))) and high > 2 * low:
        assert answer["decision"] == "repeat"
    else:
        assert answer.value == reported([a, b])
    assert (answer.value is None) == (answer["decision"] != "average")


def test_twice_is_compared_unrounded_and_exactly_twice_is_not_more() -> None:
    """Commonly wrong: rounding before comparing."""
    exactly = evaluate("radon-two-tests", {"first": "2.02pCi/L", "second": "4.04pCi/L", "apart": "4in"})
    above = evaluate("radon-two-tests", {"first": "2.02pCi/L", "second": "4.05pCi/L", "apart": "4in"})
    assert (exactly["decision"], above["decision"]) == ("average", "repeat")


def test_one_after_the_other_is_averaged_and_illinois_is_told() -> None:
    given = {"first": "1.5pCi/L", "second": "4.5pCi/L", "apart": "0in", "manner": "sequential"}
    assert evaluate("radon-two-tests", given)["decision"] == "average"
    illinois = evaluate("radon-two-tests", {**given, "place": "Illinois"})
    assert any("Illinois lists" in caution for caution in illinois.cautions)


def test_devices_that_disagree_beyond_control_are_not_averaged_in_silence() -> None:
    answer = evaluate("radon-two-tests", {"first": "4.0pCi/L", "second": "6.5pCi/L", "apart": "4in"})
    assert answer["precision"] == "control limit reached"
    assert any("beyond the control limit" in caution for caution in answer.cautions)


def test_a_distance_that_was_not_measured_is_never_met() -> None:
    answer = evaluate("radon-placement", {"place": "Illinois", "floor": "30in"})
    assert answer["opening"] == "not measured"
    assert answer["all_measured"] is False
    assert "Not measured: exterior doors" in answer.words


@pytest.mark.parametrize("where", ["damp_room", "closet_or_crawl_space", "in_air_stream"])
def test_a_place_that_stands_for_no_room_is_misplaced(where: str) -> None:
    assert evaluate("radon-placement", {"place": "Ohio", where: "yes"})["misplaced"] is True


def test_a_test_before_the_fan_is_refused_and_a_late_one_told() -> None:
    with pytest.raises(Refusal, match="WM088"):
        evaluate("radon-after-mitigation", {"fan_started": "2026-03-02T00:00", "test_started": "2026-03-01T00:00"})
    with pytest.raises(Refusal, match="WM087"):
        evaluate("radon-after-mitigation", {"fan_started": "2026-03-02T00:00Z", "test_started": "2026-03-03T00:00"})
    late = evaluate("radon-after-mitigation", {"fan_started": "2026-03-01T00:00", "test_started": "2026-04-15T00:00"})
    assert late["late"] is True


def test_more_blanks_than_devices_are_refused() -> None:
    with pytest.raises(Refusal, match="WM089"):
        evaluate("radon-blanks", {"results": "0pCi/L,0pCi/L", "detects": "0.4pCi/L", "deployed": "1"})


@GENTLE
@given(st.decimals("0.1", 100, places=2), st.decimals("0.1", "0.9", places=2))
def test_working_levels_there_and_back(radon: Decimal, ratio: Decimal) -> None:
    there = evaluate("working-level", {"radon": f"{radon}pCi/L", "equilibrium_ratio": str(ratio)}).value
    assert there is not None
    back = evaluate("radon-from-working-level", {"working_levels": str(there), "equilibrium_ratio": str(ratio)}).value
    assert back is not None
    assert abs(back - radon) <= radon * Decimal("1e-9")


def test_no_answer_calls_a_level_harmless() -> None:
    for level in ("0pCi/L", "1.9pCi/L", "3.9pCi/L"):
        answer = evaluate("radon-action", {"radon": level})
        assert "harmless" not in answer.words.lower()
        assert any("short test" in caution for caution in answer.cautions)
