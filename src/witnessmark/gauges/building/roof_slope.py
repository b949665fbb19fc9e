"""What a roof slope is as pitch, angle and percent."""

from __future__ import annotations

import math
from typing import Annotated

from witnessmark.gauges.answer import Also, Answer, Uncertainty, rounded
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.building.messages import EITHER_OR
from witnessmark.gauges.building.sources import SLOPE
from witnessmark.gauges.gauge import gauge
from witnessmark.problems import Refusal
from witnessmark.units import Quantity

__all__ = ["degrees_of", "pitch_of", "roof_slope"]


def degrees_of(pitch: float) -> float:
    """Angle in degrees of a *pitch* in inches of rise to 12 of run (any finite number). Source: definition of the tangent.

    >>> round(degrees_of(4), 2), round(degrees_of(2), 2)
    (18.43, 9.46)
    """
    return math.degrees(math.atan(pitch / 12))


def pitch_of(degrees: float) -> float:
    """Pitch in inches to 12 of an angle in *degrees*, -89 to 89.

    >>> round(pitch_of(45), 6)
    12.0
    """
    return 12 * math.tan(math.radians(degrees))


@gauge(
    name="roof-slope",
    family="building",
    title="Roof slope: pitch, angle and percent",
    unit="[in_i]/[ft_i]",
    gives="rise in inches for 12 in of run",
    sources=(SLOPE,),
    error="a phone or digital level reads to half a degree at best: 0.1 in 12 on a low roof, 0.2 at 12:12",
    never="that a roof can be walked on",
    cautions=("Take the angle from the ground, a window or the rafters in the attic rather than from the roof.",),
    example={"slope": "4:12"},
)
def roof_slope(
    slope: Annotated[
        Quantity | None,
        Asked(
            "slope as a pitch or in %",
            "[in_i]/[ft_i]",
            lowest="0",
            highest="48",
            least="0",
            how="12 in on a level, tape down to the roof",
            example="4:12",
        ),
    ] = None,
    angle: Annotated[
        Quantity | None,
        Asked(
            "slope as an angle",
            "deg",
            lowest="0",
            highest="75",
            least="0",
            most="89",
            how="digital level on a rafter",
            example="18.4 deg",
        ),
    ] = None,
) -> Answer:
    """The slope of a roof in all three ways of saying it, and how much larger the roof is than its plan.

    Formula:
        angle = arctan(rise/run), percent = 100 rise/run, roof area / plan area = sqrt(1 + (rise/run)^2)

    >>> from witnessmark.units import parse_quantity as q
    >>> round(roof_slope(q("4:12"))["angle"], 2)
    Decimal('18.43')
    """
    if (slope is None) == (angle is None):
        raise Refusal(EITHER_OR.at("roof-slope", "slope or angle"))
    if slope is not None:
        value, degrees = slope.value, rounded(degrees_of(float(slope.value)))
    else:
        degrees = angle.value if angle is not None else rounded(0.0)
        value = rounded(pitch_of(float(degrees)))
    pitch = float(value)
    factor = rounded(math.hypot(1, pitch / 12))
    percent = rounded(100 * pitch / 12)
    return Answer(
        value=value,
        words=f"{pitch:.3g}:12 is {degrees:.2f}° or {percent:.1f} %; the roof is {factor:.3f} times its plan.",
        uncertainty=Uncertainty("half a degree", rounded(12 * math.radians(0.5) * (1 + (pitch / 12) ** 2))),
        also=(
            Also("angle", "angle", degrees, "deg"),
            Also("percent", "percent", percent, "%"),
            Also("area_factor", "roof area for one of plan", factor, "1"),
        ),
    )
