"""Whether a stair is wide enough, above the handrail and at it."""

from __future__ import annotations

from decimal import Decimal
from typing import Annotated, Literal

from witnessmark.gauges.answer import Answer
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.building.asking import inches
from witnessmark.gauges.building.checks import Check, held_against
from witnessmark.gauges.building.editions import Built, Edition, held_to, irc
from witnessmark.gauges.gauge import gauge
from witnessmark.units import Quantity

__all__ = ["stair_width"]

_PLACE = "R311.7.1"
_ABOVE = Decimal(36)
_AT_RAIL = {"none": Decimal(36), "one side": Decimal("31.5"), "both sides": Decimal(27)}


@gauge(
    name="stair-width",
    family="building",
    title="Clear width of a stair",
    unit="[in_i]",
    gives="clear width above the handrail",
    sources=(irc(_PLACE, "seen in a copy"),),
    error="a tape reads to 1/16 in; walls out of plumb differ more over their height",
    never="that furniture or a stretcher can pass",
    example={"width": "36 1/2 in", "handrails": "one side", "width_at_rail": "33 in", "edition": "2018"},
)
def stair_width(
    width: Annotated[
        Quantity,
        inches("clear width above the handrail height, wall to wall or wall to guard", example="36 1/2 in"),
    ],
    width_at_rail: Annotated[
        Quantity | None,
        inches("clear width at and below the handrail, tread and landing included", example="33 in"),
    ] = None,
    handrails: Annotated[
        Literal["none", "one side", "both sides"], Asked("on how many sides there is a handrail", example="one side")
    ] = "one side",
    edition: Edition = None,
    built: Built = None,
) -> Answer:
    """Whether a stair keeps its least clear width.

    Rule:
        at least 36 in clear above the handrail; at and below it at least 31 1/2 in with a handrail on one side and
        27 in with one on both sides (IRC 2000 and later; spiral stairs have a rule of their own)

    >>> from witnessmark.units import parse_quantity as q
    >>> stair_width(q("35.5in"), edition=2018)["above_rail_within"]
    False
    """

    def checks(_: int) -> tuple[Check, ...]:
        found = [Check("above_rail", "clear width above the handrail", width.value, "[in_i]", _PLACE, lowest=_ABOVE)]
        if width_at_rail is not None:
            least = _AT_RAIL[handrails]
            found.append(
                Check("at_rail", "clear width at the handrail", width_at_rail.value, "[in_i]", _PLACE, lowest=least)
            )
        return tuple(found)

    return held_against(held_to(edition, built), checks, basis="seen in a copy", value=width.value)
