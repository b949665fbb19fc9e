"""What protection against trapping a person a garage door opener of a given year must have."""

from __future__ import annotations

from decimal import Decimal
from typing import Annotated, Literal

from witnessmark.gauges.answer import Also, Answer, Source
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.building.asking import inches
from witnessmark.gauges.building.checks import said
from witnessmark.gauges.gauge import gauge
from witnessmark.units import Quantity

__all__ = ["garage_door_opener"]

_FIRST, _SECOND = 1991, 1993
_BEAM = Decimal(6)
_SECONDARY = Source("16 CFR 1211", "2007", "1211.8, secondary entrapment protection", "seen")
_DATES = Source("16 CFR 1211 and Public Law 101-608", "1990", "section 203; made on or after 1 January 1993", "memory")


@gauge(
    name="garage-door-opener",
    family="building",
    title="Garage door opener: entrapment protection by the year it was made",
    gives="which protection an opener of that year must have",
    sources=(_SECONDARY, _DATES),
    error="none in the dates; the year is that of the opener, not of the house or the door",
    never="that the door cannot hurt a person, or that the reversal works under every load",
    cautions=(
        "Stand clear of the door and keep everyone away while it moves; do not test a door that is damaged or out of balance.",
        "Try the reversal as the maker's instructions say, or not at all: a failed test can break the door.",
    ),
    example={"made": "1998", "reverses": "yes", "beam": "works", "beam_height": "5 in"},
)
def garage_door_opener(
    made: Annotated[
        int,
        Asked(
            "year the opener was made",
            lowest="1950",
            highest="2100",
            least="1900",
            most="2100",
            how="from its plate",
            example="1998",
        ),
    ],
    reverses: Annotated[
        bool | None, Asked("whether the closing door reversed on touching an obstruction 1 1/2 in high", example="yes")
    ] = None,
    beam: Annotated[
        Literal["works", "fails", "edge sensor", "none", "not tried"],
        Asked(
            "photoelectric sensor across the opening, or an edge sensor",
            how="wave a stick through the beam, not an arm",
        ),
    ] = "not tried",
    beam_height: Annotated[
        Quantity | None, inches("height of the beam above the floor", most="240", example="5 in")
    ] = None,
) -> Answer:
    """Which entrapment protection a garage door opener must have by its year, and what of it was found.

    Rule:
        made before 1991: no federal rule, reversal on touch by its listing at most; 1991 and 1992: reversal on touch;
        from 1 January 1993: besides that a second, independent device (photoelectric sensor, edge sensor or its equal).
        Makers place the beam at most 6 in above the floor.

    >>> garage_door_opener(1992)["secondary_required"], garage_door_opener(1993)["secondary_required"]
    (False, True)
    """
    first, second = made >= _FIRST, made >= _SECOND
    if second:
        parts = [f"Made {made}: reversal on touch and a second device (beam or edge sensor) were required"]
    elif first:
        parts = [f"Made {made}: reversal on touch was required; a second device not yet, recommended today"]
    else:
        parts = [
            f"Made {made}: not yet required by federal law; an opener without beam and reversal is best replaced today"
        ]
    short = []
    if reverses is False:
        short.append("it did not reverse on touch")
    if beam in {"fails", "none"}:
        short.append({"fails": "the beam did not stop it", "none": "there is no second device"}[beam])
    if beam_height is not None and beam_height.value > _BEAM:
        short.append(f"the beam is {said(beam_height.value, '[in_i]')} above the floor, 6 in at most is usual")
    if short:
        parts.append("; ".join(short))
    elif reverses and beam in {"works", "edge sensor"}:
        parts.append("both answered when tried")
    lacks = (first and reverses is False) or (second and beam in {"fails", "none"})
    return Answer(
        words="; found: ".join(parts) + ".",
        also=(
            Also("reversal_required", "reversal on touch required when made", first),
            Also("secondary_required", "second device required when made", second),
            Also("required_today", "second device required of openers made today", value=True),
            Also("required_when", "second device required when", "openers made on or after 1 January 1993"),
            Also("short_of_its_year", "something required when made was found missing", lacks),
        ),
    )
