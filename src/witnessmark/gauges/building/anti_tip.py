"""Whether a range of a given year came with a bracket against tipping."""

from __future__ import annotations

from decimal import Decimal
from typing import Annotated, Literal

from witnessmark.gauges.answer import Also, Answer, Source
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.gauge import gauge
from witnessmark.units import Quantity, say

__all__ = ["range_anti_tip"]

_SINCE = 1991
_LOAD = Decimal(250)


@gauge(
    name="range-anti-tip",
    family="building",
    title="Bracket against tipping of a range, by the year it was made",
    gives="whether the product standard of that year asks for stability that needs a bracket",
    sources=(
        Source(
            "UL 858 (electric ranges)", "1991 and later", "stability with 250 lb on the open door", "seen in a copy"
        ),
        Source("ANSI Z21.1 (gas ranges)", "1991 and later", "stability with 250 lb on the open door", "seen in a copy"),
        Source("IRC", "2000 to 2024", "M1307.1, R102.4: installed as listed and as the maker says", "memory"),
    ),
    error="the year is that of the range, not of the house",
    never="that the range cannot tip: a bracket must be engaged, and only seeing it shows that",
    cautions=(
        "Do not load the door to try it: look for the bracket behind the kick drawer or behind the foot.",
        "No federal regulation asks for the bracket: the product standard and the listing do.",
    ),
    example={"made": "1992", "bracket": "none"},
)
def range_anti_tip(
    made: Annotated[
        int,
        Asked(
            "year the range was made",
            lowest="1930",
            highest="2100",
            least="1900",
            most="2100",
            how="from its plate",
            example="1992",
        ),
    ],
    bracket: Annotated[
        Literal["engaged", "not engaged", "none", "not seen"], Asked("what was found of the bracket", example="none")
    ] = "not seen",
    held_load: Annotated[
        Quantity | None,
        Asked(
            "load on the open door up to which the range is known to have stood (from a label or a test report)",
            "[lb_av]",
            lowest="0",
            highest="1000",
            least="0",
            how="never by trying it on site",
            example="250 lb",
        ),
    ] = None,
) -> Answer:
    """Whether a range of this year is expected to have an anti-tip bracket, and what was found.

    Rule:
        from 1991 UL 858 and ANSI Z21.1 ask that a range stays up with 250 lb on its open door: makers supply a bracket
        for it, and installation as listed asks that it is used. Earlier ranges were not required to have one;
        recommended today.

    >>> range_anti_tip(1990)["required"], range_anti_tip(1992)["required"]
    (False, True)
    """
    expected = made >= _SINCE
    short = held_load is not None and held_load.value < _LOAD
    begin = (
        f"Made {made}: the product standard asks that it stands with 250 lb on the open door, so a bracket is expected"
        if expected
        else f"Made {made}: not yet required by the product standards (from 1991); recommended today"
    )
    found = {
        "engaged": "a bracket is engaged",
        "not engaged": "the bracket does not hold the range",
        "none": "there is none",
        "not seen": "whether there is one was not seen",
    }[bracket]
    load = f"; it is known to stand only {say(held_load)}, less than 250 lb" if short and held_load is not None else ""
    missing = bracket in {"none", "not engaged"} or short
    return Answer(
        words=f"{begin}; {found}{load}.",
        also=(
            Also("required", "expected of a range of that year", expected),
            Also("required_today", "expected of a range made today", value=True),
            Also("required_when", "required when", "ranges made from 1991 on, by UL 858 and ANSI Z21.1"),
            Also("short_of_its_year", "expected of its year and missing", expected and missing),
        ),
    )
