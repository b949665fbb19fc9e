"""How dense water is at a temperature."""

from __future__ import annotations

__all__ = ["celsius", "water_density"]

_FREEZING_F = 32.0
_DEGREES = 1.8


def celsius(fahrenheit: float) -> float:
    """Temperature in degrees Celsius from degrees *fahrenheit*.

    >>> celsius(212)
    100.0
    """
    return (fahrenheit - _FREEZING_F) / _DEGREES


def water_density(temperature: float) -> float:
    """Density of air-free water in kg/m3 at *temperature* °C and one atmosphere, 0 to 150 °C.

    Kell, Journal of Chemical and Engineering Data 20:97 (1975), coefficients recalled and checked against CoolProp:
    within 15 parts in a million from 0 to 100 °C. A form with 16.897850e-3 in the divisor, two digits exchanged, is in
    circulation and is 0.5 kg/m3 low at hot-tank temperatures.

    >>> round(water_density(20), 2)
    998.2
    """
    t = temperature
    top = (
        999.83952
        + 16.945176 * t
        - 7.9870401e-3 * t**2
        - 46.170461e-6 * t**3
        + 105.56302e-9 * t**4
        - 280.54253e-12 * t**5
    )
    return top / (1 + 16.879850e-3 * t)
