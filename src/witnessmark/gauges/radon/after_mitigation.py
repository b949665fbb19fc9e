"""When a house may be tested after a radon mitigation system was switched on, and when again."""

from __future__ import annotations

import datetime as dt
from typing import Annotated

from witnessmark.gauges.answer import Also, Answer, Source, Step, rounded
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.gauge import gauge
from witnessmark.gauges.radon.conditions import FAN_HOURS
from witnessmark.gauges.radon.messages import MIXED_CLOCKS, STARTED_BEFORE
from witnessmark.gauges.radon.sources import MAH_MITIGATED, NOT_ONE_READING
from witnessmark.problems import Refusal

__all__ = ["radon_after_mitigation"]

_WITHIN_DAYS = 30
_THIRTY = Source("EPA, Radon Mitigation Standards, EPA 402-R-93-078", "1994", "test within 30 days, again in 2 years",
                 "memory")  # fmt: skip


@gauge(
    name="radon-after-mitigation",
    family="radon",
    title="Whether a test after radon mitigation began at the right time",
    unit="h",
    gives="hours the fan had run when the test began",
    sources=(MAH_MITIGATED, _THIRTY),
    error="as the two times were noted",
    never="that the system works: only the result of the test says that, and only for those days",
    cautions=(
        "The house is kept closed for 12 hours before the test and through it.",
        "Better not tested by whoever put the system in.",
        *NOT_ONE_READING,
    ),
    example={"fan_started": "2026-03-01T15:00", "test_started": "2026-03-03T09:00"},
)
def radon_after_mitigation(
    fan_started: Annotated[dt.datetime, Asked("when the fan was switched on", example="2026-03-01T15:00")],
    test_started: Annotated[dt.datetime, Asked("when the test began", example="2026-03-03T09:00")],
) -> Answer:
    """Timing of a test after mitigation.

    Rule:
        not sooner than 24 hours after the fan was switched on (MAH-2019 7.3.2); within 30 days, and again within
        2 years (EPA, recalled). A continuous monitor begun sooner goes on until 46 hours in a row count.

    >>> from witnessmark.gauges import evaluate
    >>> given = {"fan_started": "2026-03-01T15:00", "test_started": "2026-03-02T14:00"}
    >>> evaluate("radon-after-mitigation", given)["too_soon"]
    True
    """
    if (fan_started.utcoffset() is None) != (test_started.utcoffset() is None):
        raise Refusal(MIXED_CLOCKS.at("fan_started, test_started"))
    ran = test_started - fan_started
    if ran < dt.timedelta(0):
        raise Refusal(STARTED_BEFORE.at("test_started", f"{test_started} before {fan_started}"))
    soon, late = ran < dt.timedelta(hours=FAN_HOURS), ran > dt.timedelta(days=_WITHIN_DAYS)
    value = rounded(ran.total_seconds() / 3600)
    if soon:
        words = f"The fan had run {float(value):.1f} hours, less than 24: the hours before that do not count."
    elif late:
        words = f"The test began {ran.days} days after the fan was switched on; within 30 days is asked for."
    else:
        words = f"The fan had run {float(value):.1f} hours when the test began, 24 or more as asked, within 30 days."
    return Answer(
        value=value,
        words=f"{words} Test again within 2 years.",
        also=(
            Also("too_soon", "less than 24 hours after the fan was switched on", soon),
            Also("late", "more than 30 days after it", late),
            Also("earliest", "earliest beginning", _moment(fan_started, hours=FAN_HOURS)),
            Also("latest", "end of the 30 days", _moment(fan_started, hours=24 * _WITHIN_DAYS)),
        ),
        steps=(Step("hours from fan to test", value, "h"),),
    )


def _moment(start: dt.datetime, *, hours: int) -> str:
    try:
        return (start + dt.timedelta(hours=hours)).isoformat(sep=" ", timespec="minutes")
    except OverflowError:  # the last days of the calendar
        return "beyond the calendar"
