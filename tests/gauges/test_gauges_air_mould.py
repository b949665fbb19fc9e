"""The mould index: how it rises, rests and falls; what a series must be; the mistakes it must not make."""

import datetime as dt
import itertools
import math
from decimal import Decimal

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from witnessmark.gauges import evaluate
from witnessmark.gauges.air import CLASSES, Growth, course, critical_humidity, days_to, highest_index, index_after
from witnessmark.gauges.air.mould import first_growth_days
from witnessmark.problems import Refusal

MODERATE = settings(max_examples=40, deadline=None)
NAMES = st.sampled_from(sorted(CLASSES))
PHASES = st.lists(st.tuples(st.floats(0.25, 80), st.floats(-10, 55), st.floats(20, 100)), min_size=1, max_size=12)


@MODERATE
@given(PHASES, NAMES, st.floats(0, 1))
def test_the_index_stays_between_nothing_and_the_highest(
    phases: list[tuple[float, float, float]], name: str, decline: float
) -> None:
    for growth in course(phases, CLASSES[name], decline):
        assert 0 <= growth.index <= 6.001


@MODERATE
@given(PHASES, NAMES)
def test_the_decline_factor_never_touches_growth(phases: list[tuple[float, float, float]], name: str) -> None:
    """A slower decline never gives a lower index, and wet hours from nought are the same whatever the factor."""
    assert index_after(phases, name, 0.1) >= index_after(phases, name, 1) - 1e-12
    wet = [(50, 20, 95)]
    assert index_after(wet, name, 0.1) == index_after(wet, name, 1)


@MODERATE
@given(st.floats(1, 49), st.floats(80, 99), NAMES)
def test_wetter_air_never_grows_less(celsius: float, humidity: float, name: str) -> None:
    assert index_after([(200, celsius, humidity + 1)], name) >= index_after([(200, celsius, humidity)], name)


def test_a_day_in_one_phase_and_in_hours_is_the_same() -> None:
    assert index_after([(24, 20, 95)], "sensitive") == index_after([(1, 20, 95)], "sensitive", repeat=24)


def test_it_falls_for_six_hours_rests_and_falls_again_and_wet_hours_start_the_count_anew() -> None:
    of, start = CLASSES["sensitive"], Growth(2.0)
    rates = []
    growth = start
    for _ in range(30):
        following = growth.after(1, 20, 50, of)
        rates.append(growth.index - following.index)
        growth = following
    assert rates[:6] == pytest.approx([0.032 / 24] * 6)
    assert rates[6:24] == pytest.approx([0] * 18, abs=1e-15)
    assert rates[24:] == pytest.approx([0.016 / 24] * 6)
    wet = growth.after(1, 20, 97, of)
    assert wet.dry == 0
    assert wet.index - wet.after(1, 20, 50, of).index == pytest.approx(0.032 / 24)


def test_k1_changes_at_index_one() -> None:
    of = CLASSES["very sensitive"]
    below, above = (Growth(m).after(1, 20, 97, of).index - m for m in (0.999999, 1.0))
    assert above / below == pytest.approx(2, rel=1e-4)


@pytest.mark.parametrize(("celsius", "humidity"), [(0, 100), (-3, 100), (50, 99), (20, 79)])
def test_no_growth_in_frost_heat_and_dry_air(celsius: float, humidity: float) -> None:
    assert index_after([(500, celsius, humidity)], "very sensitive") == 0
    assert days_to(1, celsius, humidity, "very sensitive") is None


def test_critical_humidity_falls_with_warmth_and_keeps_the_floor_of_the_material() -> None:
    values = [critical_humidity(t, 80) for t in range(21)]
    assert all(a >= b - 0.05 for a, b in itertools.pairwise(values))
    assert min(critical_humidity(t / 2, 85) for t in range(100)) == 85
    assert critical_humidity(-0.1, 80) == 100


@MODERATE
@given(st.floats(5, 40), st.floats(88, 100))
def test_first_growth_follows_the_published_closed_form(celsius: float, humidity: float) -> None:
    """tm = exp(-0.68 ln T - 13.9 ln RH + 66.02) weeks; the index nears its highest slowly, so it comes a little later."""
    of = CLASSES["very sensitive"]
    days = days_to(1, celsius, humidity, "very sensitive")
    closed = 7 * math.exp(-0.68 * math.log(celsius) - 13.9 * math.log(humidity) + 66.02)
    assert first_growth_days(celsius, humidity, of) == pytest.approx(closed)
    if highest_index(celsius, humidity, of) > 2.5:
        assert days is not None
        assert closed <= days + 1 / 24
        assert days < 1.1 * closed + 0.1


def series(rows: list[tuple[int, float, str]]) -> str:
    start = dt.datetime(2026, 1, 5)  # noqa: DTZ001 - a logger's own clock
    lines = [f"20 Cel,{rh},{(start + dt.timedelta(minutes=minutes)).isoformat()}" for minutes, _, rh in rows]
    return "temperature,humidity,at\n" + "\n".join(lines)


def test_quarter_hours_and_hours_agree() -> None:
    hours = "\n".join(["20 Cel,97%"] * 48)
    quarters = series([(15 * n, 0, "97%") for n in range(192)])
    one, other = (evaluate("mould-index", {"series": s, "sensitivity": "sensitive"}) for s in (hours, quarters))
    assert one.value is not None
    assert other.value == pytest.approx(one.value, rel=Decimal("0.001"))
    assert one["hours"] == other["hours"] == 48


def test_a_gap_is_neither_growth_nor_decline_and_is_told() -> None:
    answer = evaluate(
        "mould-index", {"series": series([(0, 0, "97%"), (60, 0, "97%"), (1500, 0, "97%")]), "sensitivity": "sensitive"}
    )
    assert answer["gap_hours"] == 24
    assert [one.what for one in answer.outside_range] == ["gaps"]
    assert answer["growing_hours"] == 7


def test_a_year_of_hours_answers_with_a_row_a_day() -> None:
    wet_then_dry = "\n".join(["20 Cel,97%"] * 24 * 28 + ["20 Cel,50%"] * 24 * 7)
    answer = evaluate("mould-index", {"series": wet_then_dry, "sensitivity": "sensitive"})
    assert answer.value == pytest.approx(Decimal("1.2694"), abs=Decimal("0.0002"))
    assert answer["highest"] == pytest.approx(Decimal("1.3734"), abs=Decimal("0.002"))
    assert answer.table is not None
    assert len(answer.table.rows) == 35
    assert "highest on the way" in answer.words
    slow = evaluate("mould-index", {"series": wet_then_dry, "sensitivity": "sensitive", "decline": "0.1"})
    assert slow.value == answer["with_slowest_decline"]


@pytest.mark.parametrize(
    "rows",
    [
        "temperature,humidity,at;20 Cel,90%,2026-01-01T01:00;20 Cel,90%,2026-01-01T00:00",
        "temperature,humidity,at;20 Cel,90%,2026-01-01T01:00;20 Cel,90%,2026-01-01T01:00",
        "temperature,humidity,at;20 Cel,90%,2026-01-01T01:00;20 Cel,90%",
        "temperature,humidity,at;20 Cel,90%,2026-01-01T01:00;20 Cel,90%,2026-01-01T02:00+00:00",
        "",
    ],
)
def test_a_series_out_of_order_is_refused(rows: str) -> None:
    with pytest.raises(Refusal) as refused:
        evaluate("mould-index", {"series": rows, "sensitivity": "sensitive"})
    assert refused.value.problems[0].number == "WM016"


def test_days_are_told_where_growth_shows_and_where_it_does_not() -> None:
    def ask(humidity: str, kind: str) -> str:
        return evaluate("mould-days", {"temperature": "68F", "humidity": humidity, "sensitivity": kind}).words

    assert "eye can see after" in ask("97%", "very sensitive")
    assert "does not grow" in ask("60%", "sensitive")
    assert "none that the eye can see" in ask("97%", "resistant") or "more than two years" in ask("97%", "resistant")
    assert "does not even begin" in ask("81%", "sensitive")
