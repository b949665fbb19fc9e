"""Moisture and heat of air from its dry and wet bulb, in the units of a duct."""

from __future__ import annotations

import math

__all__ = ["SEA_LEVEL", "enthalpy", "humidity_ratio", "pressure_at", "saturation_psi"]

#: Pressure of the atmosphere at sea level, psia.
SEA_LEVEL = 14.696
_RANKINE = 459.67
_TRIPLE = 32.018


def pressure_at(altitude: float) -> float:
    """Pressure of the standard atmosphere in psia at *altitude* ft, -1000 to 30 000.

    ASHRAE Fundamentals chapter 1, equation 3.

    >>> round(pressure_at(5000), 2)
    12.23
    """
    return float(SEA_LEVEL * (1 - 6.8754e-6 * altitude) ** 5.2559)


def saturation_psi(fahrenheit: float) -> float:
    """Pressure of saturated vapour in psia, -148 to 392 °F, over ice below the triple point.

    ASHRAE Fundamentals chapter 1, equations 5 and 6 (Hyland and Wexler).

    >>> round(saturation_psi(60), 4)
    0.2563
    """
    t = fahrenheit + _RANKINE
    if fahrenheit <= _TRIPLE:
        ice = (-1.0214165e4 / t - 4.8932428 - 5.3765794e-3 * t + 1.9202377e-7 * t**2 + 3.5575832e-10 * t**3
               - 9.0344688e-14 * t**4 + 4.1635019 * math.log(t))  # fmt: skip
        return math.exp(ice)
    water = (-1.0440397e4 / t - 1.1294650e1 - 2.7022355e-2 * t + 1.2890360e-5 * t**2 - 2.4780681e-9 * t**3
             + 6.5459673 * math.log(t))  # fmt: skip
    return math.exp(water)


def humidity_ratio(dry: float, wet: float, pressure: float = SEA_LEVEL) -> float:
    """Pounds of moisture in a pound of dry air from dry and wet bulb in °F at *pressure* psia.

    ASHRAE Fundamentals chapter 1, equations 22, 33 and 35. Negative where the two cannot occur together.

    >>> round(humidity_ratio(80, 67), 4)
    0.0112
    """
    vapour = saturation_psi(wet)
    saturated = 0.621945 * vapour / (pressure - vapour)
    if wet > 32:  # noqa: PLR2004 - freezing point, °F
        return ((1093 - 0.556 * wet) * saturated - 0.240 * (dry - wet)) / (1093 + 0.444 * dry - wet)
    return ((1220 - 0.04 * wet) * saturated - 0.240 * (dry - wet)) / (1220 + 0.444 * dry - 0.48 * wet)


def enthalpy(dry: float, ratio: float) -> float:
    """Heat in Btu of a pound of dry air with its moisture, above 0 °F; *dry* °F, *ratio* lb/lb.

    ASHRAE Fundamentals chapter 1, equation 30.

    >>> round(enthalpy(80, humidity_ratio(80, 67)), 2)
    31.45
    """
    return 0.240 * dry + ratio * (1061 + 0.444 * dry)
