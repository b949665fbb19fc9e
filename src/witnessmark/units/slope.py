"""What slope an angle is: the one change of unit that is a function and not a factor."""

from __future__ import annotations

import math
from decimal import Decimal

from witnessmark.units.quantity import Quantity, convert

__all__ = ["as_slope"]

_STEEPEST = 89
_DIGITS = 12


def as_slope(angle: Quantity) -> Quantity | None:
    """The slope of an *angle* above level in ``[in_i]/[ft_i]`` (rise in inches to a foot of run), None beyond 89°.

    Definition: slope is the tangent of the angle (45° is 12 in 12). Refuses what is no angle (WM104).

    >>> as_slope(Quantity(Decimal(45), "deg"))
    Quantity(value=Decimal('12.000000000000'), unit='[in_i]/[ft_i]')
    """
    degrees = convert(angle, "deg").value
    if abs(degrees) > _STEEPEST:
        return None
    rise = 12 * math.tan(math.radians(float(degrees)))
    return Quantity(Decimal(f"{rise:.{_DIGITS}f}"), "[in_i]/[ft_i]")
