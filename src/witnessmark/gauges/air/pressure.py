"""What the air pressure is at a height above sea level."""

from __future__ import annotations

import math
from typing import Annotated

from witnessmark.gauges.air.sources import STANDARD_AIR
from witnessmark.gauges.answer import Also, Answer, Uncertainty, rounded
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.gauge import gauge
from witnessmark.units import Quantity, convert

__all__ = ["STANDARD_PRESSURE", "altitude_pressure", "pressure_at"]

#: Pressure of the standard atmosphere at sea level, Pa.
STANDARD_PRESSURE = 101_325.0


def pressure_at(metres: float) -> float:
    """Pressure in Pa of the standard atmosphere at *metres* above sea level (-5000 to 11000).

    >>> round(pressure_at(1600))
    83523
    """
    return STANDARD_PRESSURE * math.pow(1 - 2.25577e-5 * metres, 5.2559)


@gauge(
    name="altitude-pressure",
    family="air",
    title="Air pressure at a height above sea level",
    unit="[in_i'Hg]",
    gives="pressure of the standard atmosphere at that height, not reduced to sea level",
    sources=(STANDARD_AIR,),
    error="weather moves the pressure by about 3 % either way",
    never="what a barometer at the place shows today",
    cautions=("A weather report gives the pressure reduced to sea level, which is not the pressure at the house.",),
    example={"altitude": "5280 ft"},
)
def altitude_pressure(
    altitude: Annotated[
        Quantity,
        Asked(
            "height above sea level",
            "m",
            lowest="-500",
            highest="11000",
            least="-1000",
            most="11000",
            how="from a map",
            example="5280 ft",
        ),
    ],
) -> Answer:
    """Air pressure of the standard atmosphere at a height.

    Formula:
        p = 101325 Pa (1 - 2.25577e-5 Z)^5.2559,   Z in metres

    >>> from witnessmark.units import parse_quantity as q
    >>> round(altitude_pressure(q("1600 m"))["pascals"])
    83523
    """  # fmt: skip
    pascals = rounded(pressure_at(float(altitude.value)))
    mercury = convert(Quantity(pascals, "Pa"), "[in_i'Hg]").value
    psi = convert(Quantity(pascals, "Pa"), "[psi]").value
    share = rounded(float(pascals) / STANDARD_PRESSURE * 100)
    return Answer(
        value=rounded(float(mercury)),
        words=f"At this height the air presses with about {mercury:.2f} in Hg ({psi:.2f} psi), {share:.1f} % of sea level.",
        uncertainty=Uncertainty("weather moves it by about 3 %", rounded(float(mercury) * 0.03)),
        also=(
            Also("pascals", "the same in Pa", pascals, "Pa"),
            Also("psi", "the same in psi, absolute", rounded(float(psi)), "[psi]"),
            Also("share_of_sea_level", "share of the sea-level pressure", share, "%"),
        ),
    )
