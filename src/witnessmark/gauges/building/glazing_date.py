"""Whether glass in a door or bath enclosure was made under the federal safety standard."""

from __future__ import annotations

import datetime as dt
from typing import Annotated, Literal

from witnessmark.gauges.answer import Also, Answer, Source
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.gauge import gauge

__all__ = ["IN_FORCE", "safety_glazing_date"]

#: Day from which architectural glazing products fall under 16 CFR 1201.
IN_FORCE = dt.date(1977, 7, 6)


@gauge(
    name="safety-glazing-date",
    family="building",
    title="Glass of doors and bath enclosures: before or after the federal standard",
    gives="whether a product made on that day falls under 16 CFR 1201",
    sources=(Source("16 CFR 1201", "in force 6 July 1977", "architectural glazing materials", "memory"),),
    error="none in the date; glass can be older or newer than the house",
    never="that a pane is or is not safety glass: that is for the mark",
    example={"made": "1985-05-01", "mark": "none found"},
)
def safety_glazing_date(
    made: Annotated[
        dt.date, Asked("when the door, enclosure or glass was made, or the house was built", example="1985-05-01")
    ],
    mark: Annotated[
        Literal["found", "none found", "not looked at"],
        Asked(
            "permanent mark etched or fired into a corner of the glass",
            how="look at every corner with a torch held flat along the glass",
        ),
    ] = "not looked at",
) -> Answer:
    """Whether the federal standard for glazing products stood when a door or bath enclosure was made.

    Rule:
        16 CFR 1201 covers storm doors, doors, sliding glass doors, shower and tub doors and enclosures made from 6 July
        1977 on; older glass was not yet required to be safety glass, which is recommended today.

    >>> safety_glazing_date(dt.date(1977, 7, 5))["required"], safety_glazing_date(dt.date(1977, 7, 6))["required"]
    (False, True)
    """
    stood = made >= IN_FORCE
    begin = (
        "The federal standard stood when this was made"
        if stood
        else "Not yet required when this was made (the federal standard begins on 6 July 1977); recommended today"
    )
    marked = {
        "found": "a mark was found: read what it says",
        "none found": "no mark was found" + (", so the glass cannot be taken for safety glass" if stood else ""),
        "not looked at": "look for the mark",
    }[mark]
    return Answer(
        words=f"{begin}; {marked}.",
        also=(
            Also("required", "under 16 CFR 1201 when made", stood),
            Also("required_today", "under 16 CFR 1201 today", value=True),
            Also("required_when", "required when", "products made on or after 6 July 1977"),
        ),
    )
