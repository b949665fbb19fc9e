"""What a continuous radon monitor's hourly readings come to, and whether they make a valid test."""

from __future__ import annotations

import datetime as dt
from dataclasses import dataclass
from decimal import Decimal
from itertools import pairwise
from typing import Annotated, Literal

from witnessmark.gauges.answer import Also, Answer, Step, Table, Uncertainty, rounded
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.gauge import gauge
from witnessmark.gauges.radon.action import EPA_WORDS
from witnessmark.gauges.radon.conditions import FOUR_DAYS, SHORTEST_TEST, counting
from witnessmark.gauges.radon.messages import HOURS_OUT_OF_ORDER, MIXED_CLOCKS, ONE_SERIES
from witnessmark.gauges.radon.reported import epa_band, half_up, mean_of
from witnessmark.gauges.radon.sources import (
    DEVICE_PROTOCOL,
    MAH_CLOSED,
    MAH_MITIGATED,
    MAH_MONITORS,
    MAH_REPORTS,
    MAH_WEATHER,
    NOT_ONE_READING,
)  # fmt: skip
from witnessmark.problems import Refusal
from witnessmark.units import Quantity

__all__ = ["Hour", "gaps", "radon_monitor"]

#: Clocks of monitors wander by a minute or two; an hour that is off by more is a gap.
_HOUR, _SLACK = dt.timedelta(hours=1), dt.timedelta(minutes=5)

_RADON = Asked("radon in this hour", "pCi/L", lowest="0", highest="1000", least="0", most="1000000",
               how="as the monitor recorded it", example="3.8pCi/L")  # fmt: skip


@dataclass(frozen=True, slots=True)
class Hour:
    """One hour of a monitor's record, as it was written."""

    radon: Annotated[Quantity, _RADON]
    at: Annotated[dt.datetime | None, Asked("end of the hour by the monitor's clock", example="2026-03-02T14:00")] = (
        None
    )


def gaps(times: tuple[dt.datetime, ...]) -> tuple[int, ...]:
    """Numbers (from 1) of the hours before which a gap lies. Refuses mixed clocks (WM087) and disorder (WM086).

    >>> day = dt.datetime(2026, 3, 2)
    >>> gaps((day, day + _HOUR, day + 3 * _HOUR))
    (3,)
    """
    if len({time.utcoffset() is None for time in times}) > 1:
        raise Refusal(MIXED_CLOCKS.at("hours"))
    for at, (before, after) in enumerate(pairwise(times), 2):
        if after <= before:
            raise Refusal(HOURS_OUT_OF_ORDER.at(f"hours[{at}]", f"{after} after {before}"))
    return tuple(
        at for at, (before, after) in enumerate(pairwise(times), 2) if abs(after - before - _HOUR) > _SLACK
    )  # fmt: skip


@gauge(
    name="radon-monitor",
    family="radon",
    title="Reported result of a continuous radon monitor, and whether the test is valid",
    unit="pCi/L",
    gives="mean of the hours that count, to one decimal as it is reported; none where the test is invalid",
    sources=(MAH_MONITORS, MAH_REPORTS, MAH_CLOSED, MAH_MITIGATED, DEVICE_PROTOCOL, MAH_WEATHER),
    error="a calibrated monitor is held to about 10 % over two days near 4 pCi/L (common practice, no source)",
    never="the yearly average of the house, or that a house below the action level harms no one",
    cautions=(
        "Hourly readings go into the report or are given on request, and the date of calibration stands in it.",
        "No hour inside the series may be taken out, for weather or any other reason: that makes the test invalid.",
        *NOT_ONE_READING,
    ),
    example={
        "values": "1.0pCi/L,2.0pCi/L,3.0pCi/L,3.6pCi/L," + ",".join(["4.0pCi/L"] * 24 + ["3.8pCi/L"] * 20)
                  + ",4.2pCi/L,4.2pCi/L",
        "closed_before": "12h",
        "closed_during": "yes",
    },
)  # fmt: skip
def radon_monitor(
    *,
    values: Annotated[
        tuple[Quantity, ...] | None,
        Asked(
            "hourly readings in order, without their times",
            "pCi/L",
            lowest="0",
            highest="1000",
            least="0",
            most="1000000",
            example="3.8pCi/L",
        ),
    ] = None,
    hours: Annotated[
        tuple[Hour, ...] | None, Asked("hourly readings in order with their times, one row each: radon, at")
    ] = None,
    closed_before: Annotated[
        Quantity,
        Asked(
            "how long windows and outside doors had been closed on all levels before the test began",
            "h",
            lowest="0",
            highest="8760",
            least="0",
            most="100000",
            how="ask the occupant, and look for a signed notice",
            example="12h",
        ),
    ],
    closed_during: Annotated[bool, Asked("closed-house conditions held through the test, as far as could be seen")],
    start: Annotated[
        Literal["first 4 hours discarded", "system correction"],
        Asked("how the monitor's slow start is dealt with; the correction only where its maker states one"),
    ] = "first 4 hours discarded",
    fan_running: Annotated[
        Quantity | None,
        Asked(
            "how long the fan of a mitigation system had run before the test began, where there is one",
            "h",
            lowest="0",
            highest="8760",
            least="0",
            most="1000000",
            how="ask, and look at the gauge on the pipe",
            example="24h",
        ),
    ] = None,
    moved: Annotated[bool, Asked("the monitor was moved, unplugged or tampered with")] = False,
    hours_removed: Annotated[int, Asked("hours inside the series that were taken out", least="0", most="10000")] = 0,
    calibration_due: Annotated[
        dt.date | None, Asked("day until which the calibration of the monitor is good", example="2026-09-30")
    ] = None,
    ended_on: Annotated[dt.date | None, Asked("day on which the test ended", example="2026-03-04")] = None,
    duplicate_beyond_control: Annotated[
        bool, Asked("a device set beside it disagreed beyond the control limit, and nobody knows why")
    ] = False,
    severe_weather: Annotated[bool, Asked("a storm or very high wind fell into the test")] = False,
) -> Answer:
    """Result of a continuous monitor from its hourly readings, with everything that would make the test invalid.

    Rule:
        discard the first 4 hours (or correct for them), what is missing of 12 h closed before, of 24 h fan running;
        no other hour. Left must be 44 hours in a row of 48 or more (46 where closing or fan was waited for, 48 with
        system correction). Mean in exact decimals, rounded once, halves up, to 0.1; 3.95 is reported 4.0.

    Invalid: moved or unplugged, a gap in the hours, closed-house conditions broken, too few hours, hours removed,
    calibration expired, an unexplained duplicate beyond its control limit. Traps: the first 4 hours averaged in; binary floats.

    >>> from witnessmark.gauges import evaluate
    >>> given = {"values": ",".join(["9pCi/L"] * 4 + ["3.9pCi/L"] * 22 + ["4pCi/L"] * 22),
    ...          "closed_before": "12h", "closed_during": "yes"}
    >>> evaluate("radon-monitor", given).value
    Decimal('4.0')
    """  # fmt: skip
    if (values is None) == (hours is None) or not (values or hours):
        raise Refusal(ONE_SERIES.at("values, hours"))
    series = [one.value for one in values] if values is not None else [one.radon.value for one in hours or ()]
    times = tuple(one.at for one in hours or () if one.at is not None)
    timed = values is None and len(times) == len(series)
    broken = gaps(times) if timed else ()
    rule = counting(
        closed_before.value, None if fan_running is None else fan_running.value, corrected=start == "system correction"
    )
    kept = series[rule.discarded :]
    ended = ended_on or (times[-1].date() if times else None)
    faults = [
        what
        for fault, what in (
            (moved, "the monitor was moved, unplugged or tampered with"),
            (bool(broken), f"there is a gap before hour {broken[0] if broken else 0}"),
            (not closed_during, "closed-house conditions did not hold through the test"),
            (len(series) < SHORTEST_TEST, f"it ran {len(series)} hours, less than {SHORTEST_TEST}"),
            (len(kept) < rule.needed, f"{len(kept)} hours are left, less than {rule.needed}"),
            (hours_removed > 0, f"{hours_removed} hours were taken out"),
            (
                calibration_due is not None and ended is not None and ended > calibration_due,
                f"the calibration was good until {calibration_due}",
            ),
            (duplicate_beyond_control, "a duplicate lies beyond its control limit, unexplained"),
        )
        if fault
    ]
    cautions = []
    if not timed:
        cautions.append("Not every hour has its time, so that they follow one another without a gap is not shown.")
    if calibration_due is None or ended is None:
        cautions.append("Whether the calibration was in date was not checked: give its last day and the test's.")
    if severe_weather and len(series) < FOUR_DAYS:
        cautions.append("Severe weather in a test of less than 4 days: testing again may be called for.")
    also = [
        Also("valid", "nothing was found that makes the test invalid", not faults),
        Also("faults", "what makes the test invalid", "; ".join(faults) or "none found"),
        Also("hours", "hours recorded", Decimal(len(series)), "1"),
        Also("discarded", "hours discarded at the start", Decimal(min(rule.discarded, len(series))), "1"),
        Also("kept", "hours that count", Decimal(len(kept)), "1"),
        Also("mean_of_all", "mean of all hours; never reported", half_up(mean_of(series), 2), "pCi/L"),
    ]
    steps = [Step(f"hours that count: {rule.why}", Decimal(len(kept)), "1")]
    figure = None
    if kept:
        mean = mean_of(kept)
        figure = half_up(mean)
        also += [
            Also("mean", "mean of the hours that count, before rounding", rounded(float(mean)), "pCi/L"),
            Also("becquerels", "the mean in Bq/m3", half_up(mean * 37, 0), "Bq/m3"),
            Also("highest", "highest hour that counts", max(kept), "pCi/L"),
            Also("lowest", "lowest hour that counts", min(kept), "pCi/L"),
        ]
        steps += [
            Step("sum of these hours", sum(kept, Decimal(0)), "pCi/L"),
            Step("mean", rounded(float(mean)), "pCi/L"),
            Step("rounded once, halves up", figure, "pCi/L"),
        ]
    if faults:
        shown = (
            f" The hours average {figure} pCi/L, which is no result and must not be reported as one." if kept else ""
        )
        words = f"Not a valid test: {'; '.join(faults)}.{shown}"
    else:
        band = epa_band(figure or Decimal(0))
        also.append(Also("action", "what EPA says of it", band))
        words = f"Reported result {figure} pCi/L, the mean of {len(kept)} hours; {rule.why}. {EPA_WORDS[band]}"
    return Answer(
        value=None if faults else figure,
        words=words,
        uncertainty=Uncertainty("about 10 % for a calibrated monitor over two days (common practice, no source)",
                                None if faults or figure is None else rounded(float(figure) * 0.1)),
        cautions=tuple(cautions),
        also=tuple(also),
        steps=tuple(steps),
        table=Table(
            (("hour", "1"), ("at", ""), ("radon", "pCi/L"), ("", "")),
            tuple(
                (Decimal(at), _when(hours, at), value, "discarded" if at <= rule.discarded else "counts")
                for at, value in enumerate(series, 1)
            ),
        ),
    )  # fmt: skip


def _when(hours: tuple[Hour, ...] | None, at: int) -> str:
    time = hours[at - 1].at if hours else None
    return time.isoformat(sep=" ", timespec="minutes") if time else ""
