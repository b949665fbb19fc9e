"""Whether a smoke or carbon monoxide alarm is past the years it is made for."""

from __future__ import annotations

import datetime as dt
from decimal import Decimal
from typing import Annotated, Literal

from witnessmark.gauges.answer import Also, Answer, Source, Verdict
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.building.messages import EITHER_OR, NOT_BOTH_ORDERS
from witnessmark.gauges.gauge import gauge
from witnessmark.problems import Refusal

__all__ = ["alarm_age", "whole_years"]

_SMOKE_LIFE = 10
_SMOKE = Source(
    "NFPA 72",
    "1999 and later",
    "household alarms: replace ten years from the date made (UL 217 marks it)",
    "seen in a copy",
)
_CO = Source("UL 2034", "2009 and later", "end of life as the maker marks it, mostly five to ten years", "memory")


def whole_years(made: dt.date, on: dt.date) -> int:
    """Full years from one day to another; a day of 29 February counts as passed on 1 March.

    >>> whole_years(dt.date(2013, 6, 2), dt.date(2024, 6, 1))
    10
    """
    return on.year - made.year - ((on.month, on.day) < (made.month, made.day))


@gauge(
    name="alarm-age",
    family="building",
    title="Age of a smoke or carbon monoxide alarm",
    unit="a",
    gives="age in full years from the day it was made (from a year alone: difference of the years)",
    sources=(_SMOKE, _CO),
    error="a year alone leaves the age open by one year",
    never="that a younger alarm works",
    cautions=(
        "The date made is on the back; the day of installation does not count. The test button tries the horn, not smoke.",
    ),
    example={"inspected": "2024-06-01", "made_year": "2013"},
)
def alarm_age(
    inspected: Annotated[dt.date, Asked("day of the inspection", example="2024-06-01")],
    made_on: Annotated[dt.date | None, Asked("day it was made, from its back", example="2013-03-15")] = None,
    made_year: Annotated[
        int | None,
        Asked(
            "year it was made, where only that can be read",
            lowest="1970",
            highest="2100",
            least="1950",
            most="2100",
            example="2013",
        ),
    ] = None,
    kind: Annotated[Literal["smoke", "carbon monoxide", "both in one"], Asked("what it senses")] = "smoke",
    marked_life: Annotated[
        int | None, Asked("life in years marked on it", lowest="1", highest="20", least="1", most="50", example="10")
    ] = None,
) -> Answer:
    """Whether an alarm is past its years on the day of the inspection.

    Rule:
        a smoke alarm is replaced ten years from the date made; a CO alarm at the life marked on it; both in one at the
        earlier of the two. Reaching the day counts as past.

    >>> alarm_age(dt.date(2024, 6, 1), made_year=2013)["past"]
    'yes'
    """
    if (made_on is None) == (made_year is None):
        raise Refusal(EITHER_OR.at("alarm-age", "made_on or made_year"))
    if made_on is not None:
        if made_on > inspected:
            raise Refusal(NOT_BOTH_ORDERS.at("made_on", f"made {made_on}, inspected {inspected}"))
        least = most = whole_years(made_on, inspected)
        told = f"Made {made_on}"
    else:
        year = made_year if made_year is not None else inspected.year
        if year > inspected.year:
            raise Refusal(NOT_BOTH_ORDERS.at("made_year", f"made {year}, inspected {inspected}"))
        most = inspected.year - year
        least = max(0, most - 1)
        told = f"Made in {year}"
    life = marked_life if kind == "carbon monoxide" else min(_SMOKE_LIFE, marked_life or _SMOKE_LIFE)
    past: Literal["yes", "no", "undecided"]
    if life is None:
        past, words = "undecided", "read the life marked on it (mostly five to ten years)"
    elif least >= life:
        past, words = "yes", f"past the {life} years it is made for: replacement is due"
    elif most < life:
        past, words = "no", f"{life - most} years or less of its {life} are left"
    else:
        past, words = "undecided", f"it reaches {life} years during {inspected.year}: read the full date"
    source = _CO if kind == "carbon monoxide" else _SMOKE
    outcome: Literal["within", "beyond", "undecided"]
    outcome = "beyond" if past == "yes" else "within" if past == "no" else "undecided"
    return Answer(
        value=Decimal(most),
        words=f"{told}, {most} years old on {inspected}: {words}.",
        verdict=Verdict(outcome, words, source),
        sources=(_SMOKE, _CO) if kind == "both in one" else (source,),
        also=(
            Also("past", "past its years", past),
            Also("life", "years it is made for", "not known" if life is None else str(life)),
            Also("required_when", "replacement at ten years asked since", "NFPA 72-1999 (smoke)"),
        ),
    )
