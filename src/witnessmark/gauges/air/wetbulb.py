"""What a wet bulb shows in this air, and which humidity a wet and a dry bulb stand for."""

from __future__ import annotations

import math

from witnessmark.gauges.air.saturation import saturation_pressure, vapour_pressure

__all__ = ["humidity_from_bulbs", "water_to_dry_air", "wet_bulb_celsius"]

#: Mass of a water molecule to that of air.
_MASSES = 0.621945


def water_to_dry_air(celsius: float, humidity: float, pressure: float) -> float:
    """Kilograms of water vapour per kilogram of dry air; humidity 0 to 1, pressure in Pa above that of the vapour.

    Ideal gases. Air is not quite one: a real-gas library gives 0.45 % more at sea level.

    >>> round(water_to_dry_air(20, 0.5, 101325) * 1000, 3)
    7.262
    """
    vapour = vapour_pressure(celsius, humidity)
    return _MASSES * vapour / (pressure - vapour)


def _ratio_over(celsius: float, bulb: float, pressure: float, *, ice: bool) -> float:
    """Humidity ratio of air at *celsius* whose wet (or iced) bulb stands at *bulb* °C; ASHRAE chapter 1, 33 and 35."""
    vapour = saturation_pressure(bulb)
    if vapour >= pressure:
        return math.inf
    full = _MASSES * vapour / (pressure - vapour)
    if ice:
        return ((2830 - 0.24 * bulb) * full - 1.006 * (celsius - bulb)) / (2830 + 1.86 * celsius - 2.1 * bulb)
    return ((2501 - 2.326 * bulb) * full - 1.006 * (celsius - bulb)) / (2501 + 1.86 * celsius - 4.186 * bulb)


def wet_bulb_celsius(celsius: float, humidity: float, pressure: float) -> float:
    """Thermodynamic wet bulb in °C; humidity 0 to 1, pressure in Pa above that of the vapour.

    From 0 °C up the bulb is wet, below it carries ice. In a narrow band around 0 °C both can stand; the wet one is
    given, as a freshly wetted wick shows it.

    >>> round(wet_bulb_celsius(20, 0.5, 101325), 2), round(wet_bulb_celsius(25, 0.5, 83523), 2)
    (13.78, 17.43)
    """
    ratio = water_to_dry_air(celsius, humidity, pressure)
    ice = celsius < 0 or ratio < _ratio_over(celsius, 0, pressure, ice=False)
    low, high = (-120.0, min(celsius, 0.0)) if ice else (0.0, celsius)
    for _ in range(60):
        middle = (low + high) / 2
        if _ratio_over(celsius, middle, pressure, ice=ice) < ratio:
            low = middle
        else:
            high = middle
    return (low + high) / 2


def humidity_from_bulbs(celsius: float, bulb: float, pressure: float) -> float:
    """Relative humidity (fraction) of air at *celsius* whose wet bulb stands at *bulb* °C; iced below 0 °C.

    Negative where no air is dry enough to cool a bulb that far.

    >>> round(humidity_from_bulbs(20, 13.783, 101325), 3)
    0.5
    """
    ratio = _ratio_over(celsius, bulb, pressure, ice=bulb < 0)
    return ratio / (_MASSES + ratio) * pressure / saturation_pressure(celsius)
