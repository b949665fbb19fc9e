"""Whether a ceiling is high enough for the room under it."""

from __future__ import annotations

from decimal import Decimal
from typing import Annotated, Literal

from witnessmark.gauges.answer import Answer
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.building.asking import area, inches
from witnessmark.gauges.building.checks import Check, held_against, plain
from witnessmark.gauges.building.editions import Built, Edition, held_to, irc
from witnessmark.gauges.gauge import gauge
from witnessmark.units import Quantity

__all__ = ["ceiling_height", "sloped_ceiling"]

_LEAST = {
    "habitable room or hall": Decimal(84),
    "bathroom, toilet or laundry": Decimal(80),
    "basement, not habitable": Decimal(80),
    "beam, duct or girder in a basement": Decimal(76),
}
_HALF = Decimal("0.5")
Room = Literal[
    "habitable room or hall",
    "bathroom, toilet or laundry",
    "basement, not habitable",
    "beam, duct or girder in a basement",
]


@gauge(
    name="ceiling-height",
    family="building",
    title="Ceiling height",
    unit="[in_i]",
    gives="lowest ceiling height measured",
    sources=(irc("R305.1", "memory"),),
    error="a laser reads to 1/8 in; finished floors and ceilings vary more over a room",
    never="that a room may be called or sold as a bedroom or as living space",
    cautions=(
        "Codes before 2000 asked up to 7 ft 6 in of habitable rooms; what this house had to meet is a local matter.",
    ),
    example={"height": "7 ft 0 in", "room": "habitable room or hall", "edition": "2018"},
)
def ceiling_height(
    height: Annotated[
        Quantity,
        inches(
            "lowest clear height in the room",
            how="laser or tape from finished floor to finished ceiling",
            example="84 in",
        ),
    ],
    room: Annotated[Room, Asked("what the ceiling is over")] = "habitable room or hall",
    edition: Edition = None,
    built: Built = None,
) -> Answer:
    """Whether a ceiling keeps the least height of an edition.

    Rule:
        7 ft in habitable rooms, halls and habitable basements; 6 ft 8 in in bathrooms, toilets and laundries and in
        basements that are not habitable; 6 ft 4 in under beams, ducts and girders there (IRC R305)

    >>> from witnessmark.units import parse_quantity as q
    >>> ceiling_height(q("83 in"), edition=2018)["within"]
    False
    """
    return held_against(
        held_to(edition, built),
        lambda _: (Check("height", f"height ({room})", height.value, "[in_i]", "R305.1", lowest=_LEAST[room]),),
        value=height.value,
    )


@gauge(
    name="sloped-ceiling",
    family="building",
    title="Room under a sloped ceiling",
    unit="%",
    gives="share of the required floor area that has 7 ft of height",
    sources=(irc("R305.1, exception for sloped ceilings", "memory"),),
    error="an inch in the height moves the 5 ft and 7 ft lines by one to two inches of floor at usual slopes",
    never="that a room may be called or sold as a bedroom or as living space",
    example={"area_at_seven_feet": "40 sq ft", "area_at_five_feet": "90 sq ft", "edition": "2018"},
)
def sloped_ceiling(
    area_at_seven_feet: Annotated[
        Quantity,
        area("floor area with a ceiling of 7 ft or more", how="mark the 7 ft line on the floor", example="40 sq ft"),
    ],
    area_at_five_feet: Annotated[
        Quantity,
        area("floor area with a ceiling of 5 ft or more", how="mark the 5 ft line on the floor", example="90 sq ft"),
    ],
    required_area: Annotated[
        Quantity | None,
        Asked(
            "floor area the room must have; 70 sq ft unless told",
            "[sft_i]",
            lowest="1",
            highest="2000",
            least="1",
            how="from the code in force there",
            example="70 sq ft",
        ),
    ] = None,
    edition: Edition = None,
    built: Built = None,
) -> Answer:
    """Whether a room under a sloped ceiling has the height where it must.

    Rule:
        at least half of the required floor area has 7 ft of height; floor with less than 5 ft does not count at all,
        so the floor with 5 ft or more is at least the required area (70 sq ft for a habitable room)

    >>> from witnessmark.units import parse_quantity as q
    >>> sloped_ceiling(q("35 sq ft"), q("70 sq ft"), edition=2018)["within"]
    True
    """
    need = Decimal(70) if required_area is None else required_area.value
    seven, five = area_at_seven_feet.value, area_at_five_feet.value
    foot = "[sft_i]"
    return held_against(
        held_to(edition, built),
        lambda _: (
            Check("seven_feet", "floor with 7 ft", seven, foot, "R305.1", lowest=need * _HALF),
            Check("five_feet", "floor with 5 ft", five, foot, "R305.1", lowest=need),
        ),
        value=plain(100 * seven / need),
        unit="%",
    )
