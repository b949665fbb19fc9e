"""Whether there is height enough above a stair."""

from __future__ import annotations

from decimal import Decimal
from typing import Annotated

from witnessmark.gauges.answer import Answer
from witnessmark.gauges.building.asking import inches, numbers
from witnessmark.gauges.building.checks import Check, held_against
from witnessmark.gauges.building.editions import Built, Edition, held_to, irc
from witnessmark.gauges.gauge import gauge
from witnessmark.units import Quantity

__all__ = ["stair_headroom"]

_LEAST = Decimal(80)


@gauge(
    name="stair-headroom",
    family="building",
    title="Headroom above a stair",
    unit="[in_i]",
    gives="lowest headroom measured",
    sources=(irc("R311.7.2", "seen in a copy"),),
    error="half an inch if the rod is not plumb or stands off the nosing line",
    never="that nobody can strike their head",
    cautions=("The low point is mostly under the edge of the floor above or under a beam or duct: measure there.",),
    example={"heights": "6'8 1/2\", 6'9\"", "edition": "2018"},
)
def stair_headroom(
    heights: Annotated[
        tuple[Quantity, ...],
        inches(
            "height above the line that joins the nosings, at every low place",
            most="300",
            how="plumb from a straight edge laid on the nosings up to what hangs lowest",
            example="6'8 1/2\"",
        ),
    ],
    edition: Edition = None,
    built: Built = None,
) -> Answer:
    """Whether the headroom of a stair is 6 ft 8 in everywhere.

    Rule:
        at least 6 ft 8 in (80 in), plumb from the sloped line that joins the nosings (IRC 2000 and later)

    >>> from witnessmark.units import parse_quantity as q
    >>> stair_headroom((q("79.9375in"), q("82in")), edition=2018)["within"]
    False
    """
    low = min(numbers(heights, "heights"))
    return held_against(
        held_to(edition, built),
        lambda _: (Check("headroom", "lowest headroom", low, "[in_i]", "R311.7.2", lowest=_LEAST),),
        basis="seen in a copy",
        value=low,
    )
