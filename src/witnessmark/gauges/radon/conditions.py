"""Which hours of a radon test count, and what makes a test invalid."""

from __future__ import annotations

import math
from dataclasses import dataclass
from decimal import Decimal

__all__ = ["CLOSED_HOURS", "FAN_HOURS", "FOUR_DAYS", "SHORTEST_TEST", "Hours", "counting"]

CLOSED_HOURS, FAN_HOURS, SHORTEST_TEST, FOUR_DAYS = 12, 24, 48, 96
_FIRST, _KEPT, _KEPT_AFTER_WAIT = 4, 44, 46


@dataclass(frozen=True, slots=True)
class Hours:
    """How many hours at the start are discarded, how many must be left in a row, and why."""

    discarded: int
    needed: int
    why: str


def counting(closed_before: Decimal, fan_running: Decimal | None, *, corrected: bool) -> Hours:
    """Hours to discard at the start of a continuous monitor's series, and hours that must be left.

    Rule:
        the first 4 hours, unless the monitor corrects for them (MAH-2019 8.5.3 c); what is missing of 12 h closed
        before (6.1.2 c) and of 24 h with the mitigation fan on (7.3.2 b). 44 h left after the first 4 of 48
        (EPA 402-R-92-004, recalled), 48 with system correction, 46 where closing or fan was waited for.

    >>> counting(Decimal(12), None, corrected=False)
    Hours(discarded=4, needed=44, why='the first 4 hours are discarded')
    >>> counting(Decimal(0), None, corrected=False).discarded, counting(Decimal(12), Decimal(4), corrected=True).needed
    (12, 46)
    """
    discarded, needed = (0, SHORTEST_TEST) if corrected else (_FIRST, _KEPT)
    why = (
        "none are discarded, as the monitor corrects for its start" if corrected else "the first 4 hours are discarded"
    )
    waits = [(CLOSED_HOURS - closed_before, "closed for 12 hours")]
    if fan_running is not None:
        waits.append((FAN_HOURS - fan_running, "run with its fan for 24 hours"))
    missing = [(math.ceil(hours), what) for hours, what in waits if hours > 0]
    if missing:
        needed = _KEPT_AFTER_WAIT
        hours, what = max(missing)
        if hours > discarded:
            discarded, why = hours, f"the first {hours} hours are discarded, until the house had been {what}"
    return Hours(discarded, needed, why)
