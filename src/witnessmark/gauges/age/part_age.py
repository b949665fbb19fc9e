"""How old a part is by the date on its plate."""

from __future__ import annotations

import datetime as dt
from decimal import Decimal
from typing import Annotated

from witnessmark.gauges.age.calendar_age import made_between, months_between, years_between
from witnessmark.gauges.age.messages import NOT_YET_MADE
from witnessmark.gauges.answer import Also, Answer, Source, Uncertainty, rounded
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.gauge import gauge
from witnessmark.problems import Refusal

__all__ = ["part_age"]


@gauge(
    name="part-age",
    family="age",
    title="Age of a part from its date of making",
    unit="a",
    gives="age in years; the middle of the span where only a year, month or week is known",
    sources=(
        Source("ISO 8601-1", "2019", "weeks of the year", "memory"),
        Source("Calendar arithmetic", "", "", "calculated"),
    ),
    error="none for a date; half a year for a year alone, and whatever was misread in a serial number",
    never="how long the part has been in use, or how long it will last",
    cautions=(
        "Parts lie in store before they are installed: the time in use is shorter than this age.",
        "Serial numbers are coded differently by each maker and time; an age from one says by which rule it was read.",
    ),
    example={"year": "2009", "week": "17", "today": "2024-06-03"},
)
def part_age(
    today: Annotated[
        dt.date,
        Asked("the day of the inspection", how="given, never taken from the clock", example="2024-06-03"),
    ],
    made: Annotated[
        dt.date | None, Asked("date of making, where the plate shows a full one", example="2009-04-17")
    ] = None,
    year: Annotated[
        int | None,
        Asked(
            "year of making",
            lowest="1900",
            highest="2100",
            least="1600",
            most="9000",
            how="from the plate, a casting or the sticker",
            example="2009",
        ),
    ] = None,
    month: Annotated[
        int | None,
        Asked("month of making, with the year", lowest="1", highest="12", least="1", most="12", example="4"),
    ] = None,
    week: Annotated[
        int | None,
        Asked("week of making, with the year", lowest="1", highest="53", least="1", most="53", example="17"),
    ] = None,
) -> Answer:
    """Age in years and months from the date of making and the day of the inspection.

    Formula:
        whole years and months from date to date; with a year, month or week alone the age lies between that from its
        last and that from its first day, and the value is the middle

    >>> part_age(dt.date(2024, 6, 3), year=2009, week=17).words
    'Made in week 17 of 2009: 15 years 1 month old.'
    """
    span = made_between(made, year, month, week)
    if span.first > today:
        raise Refusal(NOT_YET_MADE.at(span.words, f"looked at on {today.isoformat()}"))
    last = min(span.last, today)
    young, old = months_between(last, today), months_between(span.first, today)
    least, most = years_between(last, today), years_between(span.first, today)
    said = _said(old) if young == old else f"between {_said(young)} and {_said(old)}"
    spread = rounded(float((most - least) / 2))
    return Answer(
        value=rounded(float((least + most) / 2)),
        words=f"Made {'on' if made else 'in'} {span.words}: {said} old.",
        uncertainty=Uncertainty("nothing finer than that is marked" if spread else "exact to the day", spread),
        also=(
            Also("least_months", "whole months, at least", Decimal(young), "mo"),
            Also("most_months", "whole months, at most", Decimal(old), "mo"),
            Also("years", "whole years, at least", Decimal(young // 12), "a"),
        ),
    )


def _said(months: int) -> str:
    years, rest = divmod(months, 12)
    parts = [f"{n} {word}{'' if n == 1 else 's'}" for n, word in ((years, "year"), (rest, "month")) if n]
    return " ".join(parts) or "less than a month"
