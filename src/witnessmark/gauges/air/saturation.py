"""How much water vapour saturated air holds, over liquid water and over ice, and at which temperature air is saturated.

All pressures in Pa, temperatures in °C. Below the triple point saturation is over ice: so do the handbook equations,
ISO 13788 and the humidity that building physics computes with. Many electronic sensors are calibrated over
(supercooled) water instead; `vapour_pressure` takes either.
"""

from __future__ import annotations

import math
from typing import Literal

from witnessmark.gauges.air.sources import Coefficients

__all__ = [
    "ICE", "KELVIN", "LOG_LOWEST", "LOG_TRIPLE", "MAGNUS_ICE", "MAGNUS_WATER", "NEWTON_STEPS", "TRIPLE_POINT", "WATER", "dew_point_celsius",
    "dew_point_magnus", "saturation_iso_13788", "saturation_pressure", "vapour_pressure",
]  # fmt: skip

KELVIN = 273.15
#: Where ice, water and vapour meet, °C.
TRIPLE_POINT = 0.01
#: Hyland and Wexler (1983) as ASHRAE Fundamentals chapter 1 prints it: c0/T + c1 + c2 T + ... + c5 T^4 + c6 ln T.
WATER: Coefficients = (-5.8002206e3, 1.3914993, -4.8640239e-2, 4.1764768e-5, -1.4452093e-8, 0.0, 6.5459673)
ICE: Coefficients = (-5.6745359e3, 6.3925247, -9.677843e-3, 6.2215701e-7, 2.0747825e-9, -9.484024e-13, 4.1635019)
#: Magnus forms (a, b °C, pressure at 0 °C in Pa): p = p0 exp(a t / (b + t)); WMO guide No. 8 gives both.
MAGNUS_WATER = (17.62, 243.12, 611.2)
MAGNUS_ICE = (22.46, 272.62, 611.2)
#: From the Magnus form as the first guess, three Newton steps reach the last digits of a float from -100 to 200 °C.
NEWTON_STEPS = 3
#: Lowest dew point that the equation over ice is published for, °C.
LOWEST_DEW_POINT = -100.0


def _log_pressure(kelvin: float, c: Coefficients) -> float:
    return (
        c[0] / kelvin
        + c[1]
        + kelvin * (c[2] + kelvin * (c[3] + kelvin * (c[4] + kelvin * c[5])))
        + c[6] * math.log(kelvin)
    )


def _slope(kelvin: float, c: Coefficients) -> float:
    return -c[0] / kelvin**2 + c[2] + kelvin * (2 * c[3] + kelvin * (3 * c[4] + kelvin * 4 * c[5])) + c[6] / kelvin


def saturation_pressure(celsius: float, over: Literal["either", "water"] = "either") -> float:
    """Saturation pressure of water vapour in Pa at *celsius* (-100 to 200 °C).

    Over ice up to 0.01 °C and over water above it; with *over* "water" over water at any temperature (below freezing
    by the Magnus form of WMO guide No. 8, published down to -45 °C; the handbook equation stops at 0 °C).

    >>> round(saturation_pressure(20), 1), round(saturation_pressure(-5), 2), round(saturation_pressure(-5, "water"), 1)
    (2338.8, 401.76, 422.2)
    """
    if celsius > TRIPLE_POINT:
        return math.exp(_log_pressure(celsius + KELVIN, WATER))
    if over == "water":
        a, b, p0 = MAGNUS_WATER
        return p0 * math.exp(a * celsius / (b + celsius))
    return math.exp(_log_pressure(celsius + KELVIN, ICE))


def saturation_iso_13788(celsius: float) -> float:
    """Saturation pressure in Pa by the short form of ISO 13788 annex E; over ice below 0 °C.

    >>> round(saturation_iso_13788(20), 2), round(saturation_iso_13788(-5), 2)
    (2336.95, 401.18)
    """
    a, b = (17.269, 237.3) if celsius >= 0 else (21.875, 265.5)
    return 610.5 * math.exp(a * celsius / (b + celsius))


def vapour_pressure(celsius: float, humidity: float, over: Literal["either", "water"] = "either") -> float:
    """Partial pressure of water vapour in Pa in air at *celsius* °C and relative *humidity* 0 to 1 (a fraction).

    *over* says against which saturation the humidity is meant, see `saturation_pressure`.

    >>> round(vapour_pressure(20, 0.5), 1)
    1169.4
    """
    return humidity * saturation_pressure(celsius, over)


def _at(log_pressure: float, c: Coefficients, magnus: tuple[float, float, float]) -> float:
    """Temperature in °C at which saturation has this logarithm of pressure, by Newton's method."""
    a, b, p0 = magnus
    off = log_pressure - math.log(p0)
    kelvin = b * off / (a - off) + KELVIN
    for _ in range(NEWTON_STEPS):
        kelvin -= (_log_pressure(kelvin, c) - log_pressure) / _slope(kelvin, c)
    return kelvin - KELVIN


#: Logarithms of the pressures between which the equations are published: over ice at -100 °C, and at the triple point.
LOG_LOWEST = _log_pressure(LOWEST_DEW_POINT + KELVIN, ICE)
LOG_TRIPLE = _log_pressure(TRIPLE_POINT + KELVIN, ICE)


def dew_point_celsius(celsius: float, humidity: float) -> float:
    """Dew point in °C of air at *celsius* °C (-100 to 200) and relative *humidity* 0 to 1 (a fraction).

    Below 0.01 °C it is the frost point, over ice. Not a number (NaN) where there is none: perfectly dry air, or vapour
    so thin that it would lie below -100 °C. Hyland-Wexler equations, ASHRAE Fundamentals chapter 1.

    >>> round(dew_point_celsius(20, 0.5), 3), round(dew_point_celsius(0, 0.8), 3)
    (9.272, -2.683)
    """
    if not humidity > 0:
        return math.nan
    log_pressure = math.log(humidity) + _log_pressure(celsius + KELVIN, WATER if celsius > TRIPLE_POINT else ICE)
    if log_pressure < LOG_LOWEST:
        return math.nan
    if log_pressure < LOG_TRIPLE:
        return _at(log_pressure, ICE, MAGNUS_ICE)
    return _at(log_pressure, WATER, MAGNUS_WATER)


def dew_point_magnus(celsius: float, humidity: float) -> float:
    """Dew point in °C by the Magnus form over water (17.62, 243.12 °C), also below freezing; humidity 0 to 1, above 0.

    Named beside the handbook value because many meters compute with it: from -45 to 60 °C it stays within 0.05 K over
    water, but below freezing it is the dew point over supercooled water and not the frost point.

    >>> round(dew_point_magnus(20, 0.5), 3), round(dew_point_magnus(0, 0.8), 2)
    (9.255, -3.04)
    """
    a, b, _ = MAGNUS_WATER
    off = math.log(humidity) + a * celsius / (b + celsius)
    return b * off / (a - off)
