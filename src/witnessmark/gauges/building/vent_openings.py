"""Whether the openings of attic vents keep vermin out, and air can pass over the insulation."""

from __future__ import annotations

from decimal import Decimal
from typing import Annotated

from witnessmark.gauges.answer import Answer
from witnessmark.gauges.building.asking import inches
from witnessmark.gauges.building.checks import Check, held_against
from witnessmark.gauges.building.editions import Built, Edition, held_to, irc
from witnessmark.gauges.building.messages import NEEDED_HERE
from witnessmark.gauges.gauge import gauge
from witnessmark.problems import Refusal
from witnessmark.units import Quantity

__all__ = ["attic_vent_openings"]

_LEAST, _MOST, _SPACE = Decimal("0.0625"), Decimal("0.25"), Decimal(1)
_IN = "[in_i]"


@gauge(
    name="attic-vent-openings",
    family="building",
    title="Openings of attic vents and the air space over insulation",
    unit="[in_i]",
    gives="least dimension of the openings, else the air space",
    sources=(irc("R806.1, R806.3", "seen in a copy"),),
    error="mesh is read against a ruler to 1/32 in",
    never="that air moves through the attic",
    example={"openings": "1/8 in", "air_space": "1 in", "edition": "2018"},
)
def attic_vent_openings(
    openings: Annotated[
        Quantity | None, inches("least dimension of the openings in the mesh or louvre", most="24", example="1/8 in")
    ] = None,
    air_space: Annotated[
        Quantity | None,
        inches(
            "space between insulation and roof deck at the eave vent",
            most="120",
            how="from the attic, by torch",
            example="1 in",
        ),
    ] = None,
    edition: Edition = None,
    built: Built = None,
) -> Answer:
    """Whether the openings of attic vents are 1/16 to 1/4 in and 1 in of air space is left over the insulation.

    Rule:
        least dimension of openings 1/16 to 1/4 in; at least 1 in between insulation and roof sheathing at the vent

    >>> from witnessmark.units import parse_quantity as q
    >>> attic_vent_openings(q("1/2 in"), edition=2018)["openings_within"]
    False
    """
    given = [one.value for one in (openings, air_space) if one is not None]
    if not given:
        raise Refusal(NEEDED_HERE.at("attic-vent-openings", "openings or air_space"))

    def checks(_: int) -> tuple[Check, ...]:
        found = []
        if openings is not None:
            found.append(Check("openings", "openings", openings.value, _IN, "R806.1", lowest=_LEAST, highest=_MOST))
        if air_space is not None:
            found.append(Check("air_space", "air space", air_space.value, _IN, "R806.3", lowest=_SPACE))
        return tuple(found)

    return held_against(held_to(edition, built), checks, basis="seen in a copy", value=given[0])
