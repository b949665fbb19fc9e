"""How a temperature goes into kelvin for the formula and comes out in degrees for the person."""

from __future__ import annotations

from decimal import Decimal

from witnessmark.gauges.answer import rounded
from witnessmark.units import Quantity

__all__ = ["difference", "fahrenheit", "kelvin", "said", "said_difference"]

_ZERO = 273.15


def kelvin(temperature: Quantity) -> float:
    """A temperature in ``Cel`` as kelvin.

    >>> kelvin(Quantity(Decimal(20), "Cel"))
    293.15
    """
    return float(temperature.value) + _ZERO


def fahrenheit(kelvins: float) -> Decimal:
    """Kelvin as degrees Fahrenheit, twelve figures.

    >>> fahrenheit(293.15)
    Decimal('68')
    """
    return rounded((kelvins - _ZERO) * 1.8 + 32)


def difference(kelvins: float) -> Decimal:
    """A difference in kelvin as a difference in degrees Fahrenheit.

    >>> difference(10)
    Decimal('18')
    """
    return rounded(kelvins * 1.8)


def said(kelvins: float) -> str:
    """A temperature as people read it, in both scales.

    >>> said(293.15)
    '68.0 °F (20.0 °C)'
    """
    celsius = kelvins - _ZERO
    return f"{celsius * 1.8 + 32:.1f} °F ({celsius:.1f} °C)".replace("-0.0 ", "0.0 ")


def said_difference(kelvins: float) -> str:
    """A difference as people read it, in both scales; two figures where it is small.

    >>> said_difference(0.195), said_difference(5)
    ('0.35 °F (0.20 K)', '9.0 °F (5.0 K)')
    """
    places = 1 if abs(kelvins) >= 1 else 2
    return f"{kelvins * 1.8:.{places}f} °F ({kelvins:.{places}f} K)"
