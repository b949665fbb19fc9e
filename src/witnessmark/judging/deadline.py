"""By when the report is due, counted from the anchors a law names.

The last day is due until its end. Business days are Monday to Friday without the federal holidays of the United
States (5 U.S.C. 6103), a state's own holidays not counted; which days a law means is the law's affair, and the row says
what was assumed.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date, timedelta

from witnessmark.packs.law import Delivery, Rulebook

__all__ = ["Anchors", "Deadline", "deadlines", "federal_holidays"]

_SATURDAY, _SUNDAY = 5, 6


@dataclass(frozen=True, slots=True)
class Anchors:
    """The days that times of delivery are counted from; None while one is not known.

    ``agreed`` is the date of delivery that the agreement names. ``waived``: the client agreed to another time in
    writing, which is then ``agreed``.
    """

    completion: date | None = None
    payment: date | None = None
    agreed: date | None = None
    waived: bool = False


@dataclass(frozen=True, slots=True)
class Deadline:
    """The day a report is due, the rule it follows from, and how it was counted. ``due`` None: an anchor is missing."""

    due: date | None
    rule: Delivery | None
    words: str


def federal_holidays(year: int) -> frozenset[date]:
    """The federal holidays of *year* as observed (5 U.S.C. 6103): on Friday for a Saturday, on Monday for a Sunday.

    >>> date(2026, 11, 26) in federal_holidays(2026)
    True
    """
    fixed = [date(year, 1, 1), date(year, 6, 19), date(year, 7, 4), date(year, 11, 11), date(year, 12, 25)]
    fixed.append(date(year + 1, 1, 1))
    moved = {_SATURDAY: -1, _SUNDAY: 1}
    observed = {day + timedelta(moved.get(day.weekday(), 0)) for day in fixed}
    nth = ((1, 0, 3), (2, 0, 3), (9, 0, 1), (10, 0, 2), (11, 3, 4))
    floating = {_nth(year, month, weekday, count) for month, weekday, count in nth}
    last_of_may = max(date(year, 5, day) for day in range(25, 32) if date(year, 5, day).weekday() == 0)
    return frozenset(day for day in observed | floating | {last_of_may} if day.year == year)


def _nth(year: int, month: int, weekday: int, count: int) -> date:
    first = date(year, month, 1)
    return first + timedelta((weekday - first.weekday()) % 7 + 7 * (count - 1))


def _business(start: date, count: int) -> date:
    day = start
    while count > 0:
        day += timedelta(1)
        if day.weekday() < _SATURDAY and day not in federal_holidays(day.year):
            count -= 1
    return day


def _from(rule: Delivery, anchors: Anchors) -> date | None:
    both = (anchors.payment, anchors.completion)
    later = max(d for d in both if d) if all(both) else None
    return {
        "completion": anchors.completion,
        "payment": anchors.payment,
        "later of payment and completion": later,
        "agreed date": anchors.agreed,
    }[rule.anchor]


_MISSING: Mapping[str, str] = {
    "completion": "the day the inspection was completed",
    "payment": "the day it was paid in full",
    "later of payment and completion": "the day it was paid in full and the day it was completed",
    "agreed date": "the date in the agreement",
}


def deadlines(rulebook: Rulebook, anchors: Anchors) -> Deadline:
    """The day the report is due under *rulebook*: by its first rule whose anchor is known, or by a waiver in writing.

    A rulebook without a rule gives none, and says so.
    """
    if not rulebook.deliveries:
        return Deadline(None, None, f"no time of delivery is known in {rulebook.citation}; keep to the agreement")
    if anchors.waived and anchors.agreed and any(rule.waivable for rule in rulebook.deliveries):
        rule = next(rule for rule in rulebook.deliveries if rule.waivable)
        return Deadline(anchors.agreed, rule, f"as the client agreed in writing ({rule.section})")
    for rule in rulebook.deliveries:
        start = _from(rule, anchors)
        if start is None:
            continue
        due = start + timedelta(rule.count) if rule.days == "calendar" else _business(start, rule.count)
        how = f"{rule.count} {rule.days} day{'s' if rule.count != 1 else ''} after {start.isoformat()}"
        return Deadline(due, rule, f"{rule.words} ({rule.section})" + (f": {how}" if rule.count else ""))
    wanted = "; or ".join(dict.fromkeys(_MISSING[rule.anchor] for rule in rulebook.deliveries))
    return Deadline(None, rulebook.deliveries[0], f"to be counted, once known, from {wanted}")
