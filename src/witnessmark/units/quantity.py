"""A number with its unit, and the only place that changes one unit into another."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Context, Decimal
from fractions import Fraction

from witnessmark.problems import Refusal
from witnessmark.units.messages import NO_SUCH_UNIT, NOT_THE_SAME_DIMENSION
from witnessmark.units.ucum import DIFFERENCE, Unit, unit

__all__ = ["Quantity", "as_difference", "convert", "dimension", "exact", "known"]

#: Digits kept of a value that no finite decimal holds (62 psi in kPa is exact, 1 ft in yd is not).
_DIGITS = Context(prec=34)

_NAMES = {
    (0, 0, 0, 0, 0, 0, 0, 0, 0): "ratio",
    (1, 0, 0, 0, 0, 0, 0, 0, 0): "length",
    (2, 0, 0, 0, 0, 0, 0, 0, 0): "area",
    (3, 0, 0, 0, 0, 0, 0, 0, 0): "volume",
    (0, 1, 0, 0, 0, 0, 0, 0, 0): "mass",
    (0, 0, 1, 0, 0, 0, 0, 0, 0): "time",
    (0, 0, 0, 1, 0, 0, 0, 0, 0): "electric current",
    (0, 0, 0, 0, 1, 0, 0, 0, 0): "temperature",
    (0, 0, 0, 0, 0, 1, 0, 0, 0): "plane angle",
    (0, 0, 0, 0, 0, 0, 1, 0, 0): "luminous intensity",
    (0, 0, 0, 0, 0, 0, 0, 1, 0): "level",
    (0, 0, 0, 0, 0, 0, 0, 0, 1): "temperature difference",
    (3, 0, -1, 0, 0, 0, 0, 0, 0): "volume flow",
    (1, 0, -1, 0, 0, 0, 0, 0, 0): "speed",
    (1, 1, -2, 0, 0, 0, 0, 0, 0): "force",
    (-1, 1, -2, 0, 0, 0, 0, 0, 0): "pressure",
    (2, 1, -2, 0, 0, 0, 0, 0, 0): "energy",
    (2, 1, -3, 0, 0, 0, 0, 0, 0): "power",
    (2, 1, -3, -1, 0, 0, 0, 0, 0): "voltage",
    (2, 1, -3, -2, 0, 0, 0, 0, 0): "resistance",
    (0, 0, -1, 0, 0, 0, 0, 0, 0): "rate",
    (-3, 0, -1, 0, 0, 0, 0, 0, 0): "activity concentration",
    (-3, 1, 0, 0, 0, 0, 0, 0, 0): "density",
    (-2, 0, 0, 0, 0, 0, 1, 0, 0): "illuminance",
    (0, -1, 3, 0, 1, 0, 0, 0, 0): "thermal resistance",
    (0, 1, -3, 0, -1, 0, 0, 0, 0): "thermal transmittance",
    (0, 1, -3, 0, 0, 0, 0, 0, 0): "power per area",
    (0, 1, -2, 0, 0, 0, 0, 0, 0): "force per length",
}
_BASES = ("m", "kg", "s", "A", "K", "deg", "cd", "B", "K" + DIFFERENCE)


@dataclass(frozen=True, slots=True)
class Quantity:
    """A number with its unit: ``value`` a finite decimal, ``unit`` a UCUM code."""

    value: Decimal
    unit: str


def _understood(code: str) -> Unit:
    meaning = unit(code)
    if meaning is None:
        raise Refusal(NO_SUCH_UNIT.at(repr(code)))
    return meaning


def known(code: str) -> bool:
    """Whether the UCUM *code* is one that can be converted.

    >>> known("[psi]"), known("furlong")
    (True, False)
    """
    return unit(code) is not None


def dimension(code: str) -> str:
    """What a unit measures, in words; base units with exponents where no word is used. Refuses unknown units (WM103).

    >>> dimension("[gal_us]/min"), dimension("Cel"), dimension("Cel{difference}")
    ('volume flow', 'temperature', 'temperature difference')
    """
    vector = _understood(code).vector
    named = _NAMES.get(vector)
    return named or ".".join(f"{base}{power}" for base, power in zip(_BASES, vector, strict=True) if power)


def as_difference(code: str) -> str:
    """The unit of a difference of temperatures for a temperature unit; any other unit as it is.

    >>> as_difference("[degF]"), as_difference("[psi]")
    ('[degF]{difference}', '[psi]')
    """
    return code + DIFFERENCE if code in {"Cel", "[degF]", "K", "[degR]"} else code


def exact(quantity: Quantity, code: str) -> Fraction:
    """The number of *code* units that *quantity* is, as an exact fraction.

    Refuses units that are not known (WM103) and units of another dimension (WM104). Factors: NIST SP 811 (2008)
    Appendix B; ``ucum`` names the definitions.

    >>> exact(Quantity(Decimal("1"), "[in_i]"), "cm")
    Fraction(127, 50)
    """
    have, want = _understood(quantity.unit), _understood(code)
    if have.vector != want.vector:
        what = f"{dimension(quantity.unit)} is not {dimension(code)}"
        raise Refusal(NOT_THE_SAME_DIMENSION.at(f"{quantity.unit} to {code}", what))
    value = Fraction(quantity.value)
    if have.factor == want.factor and have.zero == want.zero:
        return value
    return (value * have.factor + have.zero - want.zero) / want.factor


def _decimal(value: Fraction) -> Decimal:
    return _DIGITS.divide(Decimal(value.numerator), Decimal(value.denominator))


def convert(quantity: Quantity, code: str) -> Quantity:
    """*quantity* in *code* units: exact where a decimal of 34 digits can hold it, else rounded there.

    Temperatures move their zero as well; differences of temperature (``[degF]{difference}``) do not. Refuses units
    that are not known (WM103) and units of another dimension (WM104). Factors: NIST SP 811 (2008) Appendix B.

    >>> convert(Quantity(Decimal("2"), "[in_i]"), "cm")
    Quantity(value=Decimal('5.08'), unit='cm')
    >>> convert(Quantity(Decimal("212"), "[degF]"), "Cel").value
    Decimal('100')
    """
    if quantity.unit == code:
        _understood(code)
        return quantity
    return Quantity(_decimal(exact(quantity, code)), code)
