"""How a quantity is printed."""

from __future__ import annotations

from decimal import Context, Decimal

from witnessmark.units.names import printed
from witnessmark.units.quantity import Quantity

__all__ = ["say"]

#: A value with more digits than any instrument shows was computed; it is printed to six figures.
_MOST_DIGITS = 12
_SIX = Context(prec=6)
_COMMAS_FROM = 10_000
_SIXTEENTHS = 16
#: Units that touch their number.
_CLOSE = frozenset({"deg"})


def _inches(value: Decimal) -> str | None:
    """Inches as a whole and a fraction in sixteenths, None when sixteenths do not hold the value exactly."""
    if abs(value) >= _COMMAS_FROM:
        return None
    top, bottom = value.as_integer_ratio()
    if bottom == 1 or _SIXTEENTHS % bottom:
        return None
    whole, part = divmod(abs(top), bottom)
    return ("-" if top < 0 else "") + (f"{whole} " if whole else "") + f"{part}/{bottom}"


def say(quantity: Quantity) -> str:
    """The quantity as it is printed in a report.

    Digits stand as they were read; only a computed value with more than twelve digits is rounded, to six figures.
    Inches that whole sixteenths hold exactly are printed as a fraction.

    >>> say(Quantity(Decimal("118"), "[degF]")), say(Quantity(Decimal("5.75"), "[in_i]"))
    ('118 °F', '5 3/4 in')
    """
    value, unit = quantity.value, quantity.unit
    number = _inches(value) if unit == "[in_i]" else None
    if number is None:
        digits = len(value.as_tuple().digits)
        if digits > _MOST_DIGITS:
            value = _SIX.plus(value).normalize()
        number = format(value, ",f" if abs(value) >= _COMMAS_FROM else "f")
    name = "" if unit == "1" else printed(unit)
    return f"{number}{name}" if unit in _CLOSE else f"{number} {name}".rstrip()
