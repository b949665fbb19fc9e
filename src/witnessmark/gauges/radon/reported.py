"""How radon readings become the figure that is reported, and what that figure calls for."""

from __future__ import annotations

from collections.abc import Sequence
from decimal import ROUND_HALF_UP, Context, Decimal
from fractions import Fraction

__all__ = ["becquerels", "epa_band", "half_up", "mean_of", "picocuries", "reported"]

#: A reading converted from Bq/m3 is held to 34 digits; at 20 places what the conversion cut off is gone again.
_EXACT_ENOUGH = Decimal(1).scaleb(-20)
_WIDE = Context(prec=60)
_ACT, _CONSIDER = Decimal("4.0"), Decimal("2.0")


def half_up(value: Fraction, places: int = 1) -> Decimal:
    """*value* rounded once, halves up, to *places* decimals.

    >>> half_up(Fraction(395, 100)), half_up(Fraction(3949, 1000)), half_up(Fraction(425, 100))
    (Decimal('4.0'), Decimal('3.9'), Decimal('4.3'))
    """
    plain = _WIDE.divide(Decimal(value.numerator), Decimal(value.denominator)).quantize(_EXACT_ENOUGH, context=_WIDE)
    return plain.quantize(Decimal(1).scaleb(-places), rounding=ROUND_HALF_UP)


def mean_of(values: Sequence[Decimal]) -> Fraction:
    """The mean, exact. Needs one value at least.

    >>> mean_of([Decimal("3.8"), Decimal("4.1")])
    Fraction(79, 20)
    """
    return sum((Fraction(value) for value in values), Fraction(0)) / len(values)


def reported(values: Sequence[Decimal]) -> Decimal:
    """What is reported of readings in pCi/L: their exact mean, rounded once, halves up, to one decimal.

    ANSI/AARST MAH-2019 8.5.2: an average of 3.95 or more is reported as 4.0. In binary floats (3.8 + 4.1) / 2 comes
    out below 3.95 and would be reported as 3.9.

    >>> reported([Decimal("3.8"), Decimal("4.1")])
    Decimal('4.0')
    """
    return half_up(mean_of(values))


def becquerels(picocuries_a_litre: Decimal) -> Decimal:
    """Bq/m3 of a concentration in pCi/L: 37 times, exact.

    >>> becquerels(Decimal(4)), becquerels(Decimal("2.7"))
    (Decimal('148'), Decimal('99.9'))
    """
    return _WIDE.multiply(picocuries_a_litre, Decimal(37))


def picocuries(becquerels_a_cubic_metre: Decimal) -> Decimal:
    """pCi/L of a concentration in Bq/m3: a 37th, to 12 figures.

    >>> picocuries(Decimal(148)), picocuries(Decimal(100))
    (Decimal('4'), Decimal('2.70270270270'))
    """
    return Context(prec=12).divide(becquerels_a_cubic_metre, Decimal(37))


def epa_band(figure: Decimal) -> str:
    """What EPA says of a reported figure in pCi/L: ``act`` from 4.0, ``consider`` from 2.0, else ``below``.

    >>> epa_band(Decimal("4.0")), epa_band(Decimal("3.9")), epa_band(Decimal("1.9"))
    ('act', 'consider', 'below')
    """
    return "act" if figure >= _ACT else "consider" if figure >= _CONSIDER else "below"
