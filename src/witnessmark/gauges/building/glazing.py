"""Whether glass stands where it must be safety glass: one rule for each place, each on its own."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal
from typing import Annotated, Literal

from witnessmark.gauges.answer import Also, Answer
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.building.asking import inches
from witnessmark.gauges.building.checks import Rule, by_rule
from witnessmark.gauges.building.editions import Built, Edition, held_to, irc
from witnessmark.gauges.building.messages import NEEDED_HERE
from witnessmark.gauges.gauge import gauge
from witnessmark.problems import Refusal
from witnessmark.units import Quantity

__all__ = ["Pane", "Where", "glazing_asked", "safety_glazing"]

Where = Literal[
    "in a door", "beside a door", "large pane", "at a tub or shower", "beside stairs", "at the bottom of stairs",
    "in a guard or railing",
]  # fmt: skip
_PLACES = {
    "in a door": "R308.4.1", "beside a door": "R308.4.2", "large pane": "R308.4.3", "at a tub or shower": "R308.4.5",
    "beside stairs": "R308.4.6", "at the bottom of stairs": "R308.4.7", "in a guard or railing": "R308.4.4",
}  # fmt: skip
_BALL = Decimal(3)
_ARC, _SIXTY, _THIRTY_SIX = Decimal(24), Decimal(60), Decimal(36)
_LARGE, _LOW, _HIGH = Decimal(9 * 144), Decimal(18), Decimal(36)
_WATER_SINCE, _STAIR_SINCE = 2009, 2012


@dataclass(frozen=True, slots=True)
class Pane:
    """What was measured of one pane, in inches; None where it was not measured."""

    width: Decimal | None = None
    height: Decimal | None = None
    bottom: Decimal | None = None
    top: Decimal | None = None
    away: Decimal | None = None
    opening: Decimal | None = None

    @property
    def area(self) -> Decimal | None:
        """Square inches."""
        return None if self.width is None or self.height is None else self.width * self.height


def _all(conditions: dict[str, bool | None]) -> bool:
    """Whether every condition holds; one that fails settles it, one not measured is refused (WM070) only if it matters."""
    if False in conditions.values():
        return False
    missing = [name for name, holds in conditions.items() if holds is None]
    if missing:
        raise Refusal(NEEDED_HERE.at(missing[0], f"to settle it: {', '.join(missing)}"))
    return True


def _less(value: Decimal | None, limit: Decimal) -> bool | None:
    return None if value is None else value < limit


def _most(value: Decimal | None, limit: Decimal) -> bool | None:
    return None if value is None else value <= limit


def _more(value: Decimal | None, limit: Decimal) -> bool | None:
    return None if value is None else value > limit


def glazing_asked(where: str, edition: int, pane: Pane) -> bool:
    """Whether an IRC edition takes glass at this place for hazardous, from the measures in inches.

    Refuses (WM070) where a measure that would settle it is missing.

    >>> low = Pane(width=Decimal(36), height=Decimal(37), bottom=Decimal(12), top=Decimal(49), away=Decimal(20))
    >>> glazing_asked("large pane", 2018, low)
    True
    """
    if where == "in a door":
        return pane.opening is None or pane.opening >= _BALL
    if where == "in a guard or railing":
        return True
    if where == "beside a door":
        return _all({"away": _most(pane.away, _ARC), "bottom": _less(pane.bottom, _SIXTY)})
    if where == "large pane":
        return _all(
            {
                "width and height": _more(pane.area, _LARGE),
                "bottom": _less(pane.bottom, _LOW),
                "top": _more(pane.top, _HIGH),
                "away": _most(pane.away, _THIRTY_SIX),
            }
        )
    if where == "at a tub or shower":
        near = True if edition < _WATER_SINCE or pane.away is None else pane.away <= _SIXTY
        return _all({"bottom": _less(pane.bottom, _SIXTY), "away": near})
    low = _less(pane.bottom, _THIRTY_SIX if edition >= _STAIR_SINCE else _SIXTY)
    if where == "at the bottom of stairs":
        return _all({"away": _most(pane.away, _SIXTY), "bottom": low})
    near_stair = _less(pane.away, _THIRTY_SIX) if edition >= _STAIR_SINCE else _most(pane.away, _THIRTY_SIX)
    return _all({"away": near_stair, "bottom": low})


@gauge(
    name="safety-glazing",
    family="building",
    title="Whether glass here must be safety glass",
    gives="yes or no for this place, and by which edition first",
    sources=(
        irc("R308.4 (doors, beside doors, tubs, stairs, guards)", "seen in a copy", 2006),
        irc("R308.4.7", "seen in a copy", 2012),
        irc("R308.4.3 and the changes from 2009 and 2012", "memory"),
    ),
    error="a tape reads to 1/16 in; a mark etched in a corner of the glass is the only proof of what the glass is",
    never="that the glass is or is not safety glass: look for the permanent mark in a corner",
    cautions=(
        "Each place has a rule of its own; a pane can be free under one and caught by another: ask for each.",
        "Exceptions (a bar in front of a large pane, a wall between door and glass, decorative glass) are for the building department.",
    ),
    example={
        "place": "large pane", "width": "36 in", "height": "37 in", "bottom": "12 in", "top": "49 in", "away": "20 in",
        "edition": "2018",
    },
)  # fmt: skip
def safety_glazing(
    place: Annotated[Where, Asked("where the glass is", example="large pane")],
    width: Annotated[Quantity | None, inches("exposed width of the single pane", example="36 in")] = None,
    height: Annotated[Quantity | None, inches("exposed height of the single pane", example="37 in")] = None,
    bottom: Annotated[
        Quantity | None,
        inches(
            "bottom edge of the glass above the floor, the standing surface of the tub, or the walking surface of the stair",
            example="12 in",
        ),
    ] = None,
    top: Annotated[Quantity | None, inches("top edge of the glass above the floor", example="49 in")] = None,
    *,
    away: Annotated[
        Quantity | None,
        inches(
            "how far the glass is: from the nearest edge of the closed door, the walking surface, the water's edge, or the bottom tread",
            how="level, in a straight line",
            example="20 in",
        ),
    ] = None,
    opening: Annotated[
        Quantity | None,
        inches("for glass in a door: the ball that fits the glazed opening (under 3 in it is exempt)", example="2 in"),
    ] = None,
    edition: Edition = None,
    built: Built = None,
) -> Answer:
    """Whether glass at a place is taken for hazardous by an edition, and so must be safety glass.

    Rule:
        in a door: always, unless a 3 in ball cannot pass the opening. Beside a door: edge within 24 in of the closed door
        AND bottom under 60 in. Large pane: more than 9 sq ft AND bottom under 18 in AND top over 36 in AND a walking
        surface within 36 in: ALL FOUR. Tub, shower, spa: bottom under 60 in above the standing surface, and from IRC
        2009 within 60 in of the water. Beside stairs: within 36 in and bottom under 60 in, from IRC 2012 under 36 in.
        Bottom of stairs: within 60 in of the last tread and bottom under 60 in, from IRC 2012 under 36 in. Guards: always.

    >>> from witnessmark.units import parse_quantity as q
    >>> safety_glazing("beside a door", away=q("25 in"), edition=2018)["required"]
    False
    """
    given = (width, height, bottom, top, away, opening)
    pane = Pane(*(None if one is None else one.value for one in given))
    cautions: tuple[str, ...] = ()
    if place == "at a tub or shower" and away is None:
        cautions = ("The distance to the water was not given: taken for within 60 in.",)
    return by_rule(
        held_to(edition, built),
        Rule(f"safety glass ({place})", _PLACES[place], lambda one: glazing_asked(place, one, pane)),
        also=(Also("place", "place", place),),
        cautions=cautions,
        before="Glass products for doors and bath enclosures made since 6 July 1977 fall under 16 CFR 1201."
        if place in {"in a door", "at a tub or shower"}
        else "",
    )
