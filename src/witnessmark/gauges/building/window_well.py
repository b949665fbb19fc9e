"""Whether the well outside an escape window leaves room to get out."""

from __future__ import annotations

from decimal import Decimal
from typing import Annotated

from witnessmark.gauges.answer import Answer
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.building.asking import inches
from witnessmark.gauges.building.checks import Check, held_against, plain
from witnessmark.gauges.building.editions import Built, Edition, held_to, irc
from witnessmark.gauges.building.egress import clear_area
from witnessmark.gauges.gauge import gauge
from witnessmark.units import Quantity

__all__ = ["window_well"]

_AREA, _SIDE, _DEEP = Decimal(9), Decimal(36), Decimal(44)
_IN = "[in_i]"
_PLACE, _LADDER = "R310.2.3", "R310.2.3.1"


@gauge(
    name="window-well",
    family="building",
    title="Window well of an escape opening",
    unit="[sft_i]",
    gives="horizontal area of the well",
    sources=(irc("R310.2, R310.2.1", "seen in a copy", "2000 to 2012"), irc("R310.2.3", "memory", "2015 and later")),
    error="wells are bent: measure the least projection and width",
    never="that a person can get out of the well",
    cautions=(
        "Look whether the window opens fully inside the well and whether a cover lifts from inside without tools.",
    ),
    example={"width": "48 in", "projection": "36 in", "depth": "50 in", "ladder": "yes", "edition": "2018"},
)
def window_well(
    width: Annotated[Quantity, inches("clear width along the wall", example="48 in")],
    projection: Annotated[Quantity, inches("clear measure out from the wall", example="36 in")],
    depth: Annotated[Quantity | None, inches("depth from the grade to the floor of the well", example="50 in")] = None,
    ladder: Annotated[bool | None, Asked("whether a ladder or steps are fixed in the well", example="yes")] = None,
    *,
    edition: Edition = None,
    built: Built = None,
) -> Answer:
    """Whether a window well keeps area, width and projection, and whether it needs a ladder.

    Rule:
        horizontal area at least 9 sq ft AND width and projection at least 36 in each; deeper than 44 in it has a fixed
        ladder or steps (IRC 2000 and later)

    >>> from witnessmark.units import parse_quantity as q
    >>> window_well(q("36 in"), q("35 in"), edition=2018)["area_within"]
    False
    """
    size = clear_area(width.value, projection.value)

    def checks(_: int) -> tuple[Check, ...]:
        found = [
            Check("area", "horizontal area", size, "[sft_i]", _PLACE, lowest=_AREA),
            Check("width", "width", width.value, _IN, _PLACE, lowest=_SIDE),
            Check("projection", "projection", projection.value, _IN, _PLACE, lowest=_SIDE),
        ]
        if depth is not None and ladder is False:
            found.append(Check("ladder", "depth without a ladder", depth.value, _IN, _LADDER, highest=_DEEP))
        return tuple(found)

    cautions: tuple[str, ...] = ()
    if depth is not None and depth.value > _DEEP and ladder is None:
        cautions = ("Deeper than 44 in: whether a ladder or steps are fixed there was not given.",)
    return held_against(
        held_to(edition, built), checks, basis="seen in a copy", value=plain(size), unit="[sft_i]", cautions=cautions
    )
