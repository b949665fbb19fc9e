"""Whether a ball of the size in the code could pass an opening in a guard."""

from __future__ import annotations

import math
from decimal import Decimal
from typing import Annotated, Literal

from witnessmark.gauges.answer import Also, Answer, rounded
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.building.asking import inches
from witnessmark.gauges.building.checks import Check, held_against, said
from witnessmark.gauges.building.editions import Built, Edition, held_to, irc
from witnessmark.gauges.building.messages import NEEDED_HERE
from witnessmark.gauges.gauge import gauge
from witnessmark.problems import Refusal
from witnessmark.units import Quantity

__all__ = ["guard_openings", "sphere_for", "triangle_sphere"]

_BALL, _STAIR_BALL, _TRIANGLE_BALL = Decimal(4), Decimal("4.375"), Decimal(6)
#: Edition since which the side of a stair is held to 4 3/8 in instead of 4 in.
_STAIR_SINCE = 2003
#: Wider balls of earlier years, as recalled: sold and built until about then.
_EARLIER = ((1980, "9 in was usual before about 1980"), (1992, "6 in was usual from about 1980 to about 1992"))
_IN = "[in_i]"
Where = Literal["guard", "side of a stair", "triangle under the rail"]


def triangle_sphere(riser: float, tread: float, gap: float = 0.0) -> float:
    """Diameter of the largest ball that fits the triangle of riser, tread and bottom rail, in the unit of the three.

    The triangle has legs *riser* and *tread* (both above 0); a rail that stands *gap* (0 or more) off the line of the
    nosings, measured square to it, makes a larger triangle of the same shape. The ball touches all three sides: its
    diameter is the sum of the legs less the long side. Source: geometry of the right triangle.

    >>> round(triangle_sphere(7.75, 10), 2), round(triangle_sphere(7.75, 10, 1), 2)
    (5.1, 5.93)
    """
    long = math.hypot(riser, tread)
    return (riser + tread - long) * (1 + gap * long / (riser * tread))


def sphere_for(where: str, edition: int) -> Decimal:
    """Diameter in inches of the ball that must not pass, by place and IRC edition.

    >>> sphere_for("side of a stair", 2018), sphere_for("guard", 2018)
    (Decimal('4.375'), Decimal('4'))
    """
    if where == "triangle under the rail":
        return _TRIANGLE_BALL
    return _STAIR_BALL if where == "side of a stair" and edition >= _STAIR_SINCE else _BALL


@gauge(
    name="guard-openings",
    family="building",
    title="Openings in a guard",
    unit="[in_i]",
    gives="largest opening, as the ball that just fits it",
    sources=(
        irc("R312.1.3 (4 3/8 in beside treads)", "seen in a copy"),
        irc("R312.1.3 (4 in; 6 in in the triangle)", "memory"),
    ),
    error="pickets spring: a ball pushed by hand finds 1/8 to 1/4 in more than a tape",
    never="that a child cannot climb the guard or get through it",
    cautions=("A ball of exactly the size passes an opening of exactly that size: the opening must be less.",),
    example={"opening": "3 7/8 in", "place": "guard", "edition": "2018"},
)
def guard_openings(
    opening: Annotated[
        Quantity | None,
        inches(
            "largest opening between pickets, under the rail, or between rails",
            most="120",
            how="with a ball, or a tape square across the widest place",
            example="3 7/8 in",
        ),
    ] = None,
    riser: Annotated[
        Quantity | None, inches("for the triangle: height of the riser", most="36", example="7 3/4 in")
    ] = None,
    tread: Annotated[
        Quantity | None, inches("for the triangle: depth of the tread", most="60", example="10 in")
    ] = None,
    rail_gap: Annotated[
        Quantity | None,
        inches("for the triangle: bottom rail above the line of the nosings, square to it", most="60", example="1 in"),
    ] = None,
    *,
    place: Annotated[Where, Asked("where the opening is")] = "guard",
    edition: Edition = None,
    built: Built = None,
) -> Answer:
    """Whether openings in a guard stay smaller than the ball of an edition.

    Rule:
        a 4 in ball must not pass (the opening is less than 4 in); beside the treads of a stair 4 3/8 in (from IRC 2003);
        in the triangle of tread, riser and bottom rail 6 in.
    Formula:
        ball in the triangle = (a + b - c)(1 + g c / (a b)), a riser, b tread, c = sqrt(a^2 + b^2), g gap of the rail

    Earlier years as recalled (look up the local code): 9 in until about 1980, 6 in until about 1992.

    >>> from witnessmark.units import parse_quantity as q
    >>> guard_openings(q("4 in"), edition=2018)["within"]
    False
    """
    if opening is not None:
        size = opening.value
    elif riser is not None and tread is not None and riser.value > 0 and tread.value > 0:
        gap = 0.0 if rail_gap is None else float(rail_gap.value)
        size = rounded(triangle_sphere(float(riser.value), float(tread.value), gap))
    else:
        raise Refusal(NEEDED_HERE.at("opening", "the opening itself, or riser and tread of the triangle"))
    held = held_to(edition, built)
    earlier = next((told for until, told in _EARLIER if built is not None and edition is None and built < until), None)
    return held_against(
        held,
        lambda one: (
            Check(
                "opening",
                f"ball that fits ({place})",
                size,
                _IN,
                "R312.1.3",
                below=sphere_for(place, one),
                since=_STAIR_SINCE if place == "side of a stair" and one >= _STAIR_SINCE else 2000,
                basis="seen in a copy" if place == "side of a stair" else None,
            ),
        ),
        value=size,
        cautions=(f"As recalled, {earlier}: not yet asked for when built is not the same as not a hazard today.",)
        if earlier
        else (),
        also=(
            Also("ball", f"ball that must not pass by {held.name}", said(sphere_for(place, held.edition or 2024), _IN)),
        ),
    )
