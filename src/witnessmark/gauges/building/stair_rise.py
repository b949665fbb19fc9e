"""How high a flight of stairs may climb before there is a landing."""

from __future__ import annotations

from decimal import Decimal
from typing import Annotated

from witnessmark.gauges.answer import Answer
from witnessmark.gauges.building.asking import inches
from witnessmark.gauges.building.checks import Check, held_against
from witnessmark.gauges.building.editions import Built, Edition, held_to, irc
from witnessmark.gauges.gauge import gauge
from witnessmark.units import Quantity

__all__ = ["highest_rise", "stair_rise"]

#: Highest rise in inches, newest first, with the edition since which it stands.
_RISES = ((2018, Decimal(151)), (2012, Decimal(147)), (2000, Decimal(144)))


def highest_rise(edition: int) -> Decimal:
    """Highest rise in inches between floors or landings by an IRC edition: 12 ft, then 147 in, then 151 in.

    >>> highest_rise(2009), highest_rise(2015), highest_rise(2018)
    (Decimal('144'), Decimal('147'), Decimal('151'))
    """
    return next(rise for since, rise in _RISES if edition >= since)


def _since(edition: int) -> int:
    return next(since for since, _ in _RISES if edition >= since)


@gauge(
    name="stair-rise",
    family="building",
    title="Rise of a flight between floors or landings",
    unit="[in_i]",
    gives="vertical rise between landings",
    sources=(irc("R311.7.3 (147 in)", "seen in a copy", "2012, 2015"), irc("R311.7.3 (12 ft; 151 in)", "memory")),
    error="a tape reads to 1/16 in; a rise worked out from one riser gathers its error once per step",
    never="that the stair needs no landing under the local code",
    example={"rise": "108 in", "edition": "2018"},
)
def stair_rise(
    rise: Annotated[
        Quantity,
        inches(
            "vertical rise from one floor or landing to the next",
            how="add the measured risers, or a laser from floor to floor",
            example="108 in",
        ),
    ],
    edition: Edition = None,
    built: Built = None,
) -> Answer:
    """Whether a flight climbs no higher than an edition allows without a landing.

    Rule:
        at most 12 ft (144 in) through IRC 2009, 147 in by IRC 2012 and 2015, 151 in from IRC 2018

    >>> from witnessmark.units import parse_quantity as q
    >>> stair_rise(q("150 in"), edition=2015)["within"], stair_rise(q("150 in"), edition=2018)["within"]
    (False, True)
    """
    return held_against(
        held_to(edition, built),
        lambda one: (
            Check(
                "rise",
                "rise between landings",
                rise.value,
                "[in_i]",
                "R311.7.3",
                highest=highest_rise(one),
                since=_since(one),
            ),
        ),
        value=rise.value,
    )
