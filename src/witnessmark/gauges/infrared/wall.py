"""What a surface temperature says of how much heat a wall lets through."""

from __future__ import annotations

import math
from dataclasses import dataclass

__all__ = ["BTU_R", "CLASSES", "class_of", "surface_temperature", "u_by_film", "u_by_radiation", "u_spread"]

#: One m2K/W in h ft2 °F/Btu.
BTU_R = 5.678263337
_SIGMA = 5.670374419e-8
_ZERO = 273.15

#: Whole-wall classes by resistance in h ft2 °F/Btu: lowest R of the class, and what it is called.
CLASSES = ((10.0, "insulated"), (5.0, "some insulation"), (0.0, "little or no insulation"))


def u_by_film(inside: float, surface: float, outside: float, rsi: float) -> float:
    """U in W/(m2K) from air inside, surface and air outside in °C and surface resistance *rsi* in m2K/W (ISO 6946).

    U = (Ti - Tsi) / (Rsi (Ti - Te)).

    >>> round(u_by_film(20, 18, 0, 0.13), 4)
    0.7692
    """
    return (inside - surface) / (rsi * (inside - outside))


def u_by_radiation(
    inside: float, surface: float, outside: float, *, emissivity: float, reflected: float, convection: float = 2.5
) -> float:
    """U in W/(m2K) from radiation and convection at the inside surface, temperatures in °C (ISO 9869-2 style).

    q = 4 e sigma Tm^3 (Tref - Tsi) + hc (Ti - Tsi), Tm the mean of surface and reflected in K; U = q / (Ti - Te).

    >>> round(u_by_radiation(20, 18, 0, emissivity=0.9, reflected=20), 3)
    0.759
    """
    mean = (surface + reflected) / 2 + _ZERO
    heat = 4 * emissivity * _SIGMA * mean**3 * (reflected - surface) + convection * (inside - surface)
    return heat / (inside - outside)


def surface_temperature(inside: float, outside: float, u_value: float, rsi: float) -> float:
    """Temperature in °C of the inside surface of a wall of *u_value* W/(m2K): Ti - U Rsi (Ti - Te).

    >>> round(surface_temperature(20, -10, 0.3, 0.13), 2)
    18.83
    """
    return inside - u_value * rsi * (inside - outside)


@dataclass(frozen=True, slots=True)
class Spread:
    """A U-value with what it may be at least and at most, W/(m2K), and the parts of the error."""

    middle: float
    low: float
    high: float
    by_surface: float
    by_air: float
    by_method: float


def u_spread(
    inside: float,
    surface: float,
    outside: float,
    rsi: float,
    *,
    surface_off: float,
    air_off: float,
    method: float = 0.3,
) -> Spread:
    """U by film with its spread: surface off by *surface_off* K, each air by *air_off* K, the method by a share.

    The parts join as the root of their squares; *method* is the share by which field studies were off (0 to 30 %).

    >>> round(u_spread(20, 19.22, 0, 0.13, surface_off=0.5, air_off=0.5).high, 2)
    0.58
    """
    apart = inside - outside
    middle = u_by_film(inside, surface, outside, rsi)
    by_surface = abs(surface_off / (rsi * apart))
    by_air = abs(air_off / (rsi * apart**2)) * math.hypot(surface - outside, inside - surface)
    by_method = abs(middle) * method
    off = math.sqrt(by_surface**2 + by_air**2 + by_method**2)
    return Spread(middle, max(0.0, middle - off), middle + off, by_surface, by_air, by_method)


def class_of(u_value: float) -> str:
    """The class of a whole wall of *u_value* W/(m2K).

    >>> class_of(0.3), class_of(1.5)
    ('insulated', 'little or no insulation')
    """
    resistance = BTU_R / u_value if u_value > 0 else math.inf
    return next(name for least, name in CLASSES if resistance >= least)
