"""How old something is: whole years and months between two dates, and the days that a year, month or week spans."""

from __future__ import annotations

import datetime as dt
from dataclasses import dataclass
from decimal import Decimal

from witnessmark.gauges.age.messages import NO_DATE, NO_SUCH_WEEK
from witnessmark.problems import Refusal

__all__ = ["Span", "made_between", "months_between", "years_between"]

_LONG_YEAR = 53


@dataclass(frozen=True, slots=True)
class Span:
    """First and last day on which something may have been made, and how that was told."""

    first: dt.date
    last: dt.date
    words: str


def months_between(then: dt.date, now: dt.date) -> int:
    """Whole months from one date to a later one.

    A month is full on the same day of the month, or where that does not exist, on the first of the next (31 January to
    1 March is one month; 29 February to 28 February eleven).

    >>> months_between(dt.date(2009, 4, 17), dt.date(2024, 4, 16)), months_between(dt.date(2009, 4, 17), dt.date(2024, 4, 17))
    (179, 180)
    """
    months = (now.year - then.year) * 12 + now.month - then.month
    return months - (now.day < then.day)


def _anniversary(then: dt.date, year: int) -> dt.date:
    try:
        return then.replace(year=year)
    except ValueError:
        return dt.date(year, 3, 1)


def years_between(then: dt.date, now: dt.date) -> Decimal:
    """Years from one date to a later one: whole years, and days since the anniversary over the days of that year.

    >>> years_between(dt.date(2009, 4, 17), dt.date(2024, 4, 17))
    Decimal('15')
    """
    whole = now.year - then.year - (now < _anniversary(then, now.year))
    last, coming = _anniversary(then, then.year + whole), _anniversary(then, then.year + whole + 1)
    return Decimal(whole) + Decimal((now - last).days) / Decimal((coming - last).days)


def made_between(made: dt.date | None, year: int | None, month: int | None = None, week: int | None = None) -> Span:
    """The days on which something may have been made: a date, or a *year* (1 to 9998), alone or with month or week.

    Weeks are those of ISO 8601 (Monday to Sunday; week 1 holds the first Thursday). Refuses none or two of the ways
    (WM062) and weeks that the year has not (WM061).

    >>> made_between(None, 2009, week=17).words
    'week 17 of 2009'
    """
    if (made is None) == (year is None) or (month is not None and week is not None):
        told = "made and year both given" if made and year else "month and week both given" if made or year else ""
        raise Refusal(NO_DATE.at("made, year, month, week", told))
    if made is not None or year is None:
        if made is None or month is not None or week is not None:
            raise Refusal(NO_DATE.at("made, month, week", "made is a full date already"))
        return Span(made, made, made.isoformat())
    if week is not None:
        try:
            first = dt.date.fromisocalendar(year, week, 1)
        except ValueError:
            raise Refusal(NO_SUCH_WEEK.at(f"week={week}", f"year {year}")) from None
        return Span(first, first + dt.timedelta(days=6), f"week {week} of {year}")
    if month is not None:
        begins = dt.date(year, month, 1)
        after = dt.date(year + month // 12, month % 12 + 1, 1)
        return Span(begins, after - dt.timedelta(days=1), f"{begins:%B} {year}")
    return Span(dt.date(year, 1, 1), dt.date(year, 12, 31), str(year))
