"""Whether winding treads are deep enough where one walks and at their narrow end."""

from __future__ import annotations

from decimal import Decimal
from typing import Annotated

from witnessmark.gauges.answer import Answer
from witnessmark.gauges.building.asking import inches, numbers
from witnessmark.gauges.building.checks import Check, held_against
from witnessmark.gauges.building.editions import Built, Edition, held_to, irc
from witnessmark.gauges.building.stair_flight import spread
from witnessmark.gauges.gauge import gauge
from witnessmark.units import Quantity

__all__ = ["winder_treads"]

_PLACE = "R311.7.5.2.1"
_WALK, _NARROW, _SPREAD = Decimal(10), Decimal(6), Decimal("0.375")


@gauge(
    name="winder-treads",
    family="building",
    title="Winding treads: depth at the walk line and at the narrow end",
    unit="[in_i]",
    gives="shallowest tread at the walk line",
    sources=(irc(_PLACE, "memory"),),
    error="a quarter of an inch: the walk line is found by measuring 12 in from the narrow side on every tread",
    never="that the stair is easy to walk",
    example={"at_walk_line": "10 in, 10 1/4 in, 10 1/8 in", "narrow_ends": "6 in, 6 1/8 in, 6 in", "edition": "2018"},
)
def winder_treads(
    at_walk_line: Annotated[
        tuple[Quantity, ...],
        inches(
            "depth of every winding tread 12 in from its narrow side",
            most="60",
            how="mark each tread 12 in from the inner edge of the clear width, measure nosing to nosing",
            example="10 in, 10 1/4 in",
        ),
    ],
    narrow_ends: Annotated[
        tuple[Quantity, ...],
        inches(
            "depth of every winding tread at its narrowest within the clear width", most="60", example="6 in, 6 1/8 in"
        ),
    ] = (),
    edition: Edition = None,
    built: Built = None,
) -> Answer:
    """Whether winding treads keep 10 in at the walk line and 6 in at the narrow end, and are even.

    Rule:
        at least 10 in deep 12 in from the narrow side, at least 6 in anywhere; at the walk line the deepest is at most
        3/8 in more than the shallowest (IRC 2000 and later)

    >>> from witnessmark.units import parse_quantity as q
    >>> winder_treads((q("10in"), q("10.5in")), edition=2018)["walk_line_spread_within"]
    False
    """
    walk, narrow = numbers(at_walk_line, "at_walk_line"), [one.value for one in narrow_ends]

    def checks(_: int) -> tuple[Check, ...]:
        found = [
            Check("walk_line", "shallowest at the walk line", min(walk), "[in_i]", _PLACE, lowest=_WALK),
            Check("walk_line_spread", "deepest less shallowest there", spread(walk), "[in_i]", _PLACE, highest=_SPREAD),
        ]
        if narrow:
            found.append(Check("narrow_end", "narrowest end", min(narrow), "[in_i]", _PLACE, lowest=_NARROW))
        return tuple(found)

    return held_against(held_to(edition, built), checks, value=min(walk))
