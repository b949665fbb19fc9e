"""How temperatures, differences and pressures of the air are told: in the unit used in the field, the other beside it."""

from __future__ import annotations

import math
from collections.abc import Callable
from decimal import Decimal

from witnessmark.gauges.answer import Uncertainty, rounded

__all__ = ["both", "fahrenheit", "from_hygrometer", "kelvins"]

#: What a decent thermo-hygrometer is off by, one way or the other: 0.5 K and 3 % relative humidity; common practice.
KELVINS_OFF, HUMIDITY_OFF = 0.5, 0.03


def fahrenheit(celsius: float) -> Decimal:
    """A temperature in °C as the decimal number of °F.

    >>> fahrenheit(20)
    Decimal('68')
    """
    return rounded(celsius * 1.8 + 32)


def both(celsius: float) -> str:
    """A temperature in °C as it is spoken of: °F first, °C beside it.

    >>> both(12.8)
    '55.0 °F (12.8 °C)'
    """
    return f"{fahrenheit(celsius):.1f} °F ({celsius + 0:.1f} °C)"


def kelvins(difference: float) -> str:
    """A difference of temperatures in K as it is spoken of: °F first, K beside it.

    >>> kelvins(5)
    '9.0 °F (5.0 K)'
    """
    return f"{difference * 1.8:.1f} °F ({difference:.1f} K)"


def from_hygrometer(
    function: Callable[[float, float], float], celsius: float, humidity: float, scale: float, unit: str
) -> Uncertainty | None:
    """How far *function* of temperature (°C) and humidity (0 to 1) is off when the instrument is off by its usual error.

    The two errors are independent and join as the root of the sum of squares; *scale* brings them to the unit told.

    >>> from_hygrometer(lambda celsius, humidity: celsius, 20, 0.5, 1.8, "°F").plus_minus
    Decimal('0.9')
    """
    here = function(celsius, humidity)
    warmer = function(celsius + KELVINS_OFF, humidity)
    other = humidity - HUMIDITY_OFF if humidity > 2 * HUMIDITY_OFF else humidity + HUMIDITY_OFF
    moister = function(celsius, other)
    off = scale * math.hypot(warmer - here, moister - here)
    if not math.isfinite(off):
        return None
    return Uncertainty(
        f"about {off:.1f} {unit} either way, for a hygrometer good to 0.5 K and 3 % relative humidity", rounded(off)
    )
