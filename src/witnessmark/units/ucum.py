"""What a unit code means: its factor to base units, its dimension, its zero.

Codes follow UCUM, the Unified Code for Units of Measure (version 2.2, section 2 and tables 1 to 8), case sensitive:
atoms with metric prefixes, ``.`` and ``/``, integer exponents, parentheses, annotations in braces. Only the atoms
that the trade meets are known. Factors are exact fractions taken from the definitions in NIST Special Publication
811 (2008 edition), Appendix B: 1 in = 2.54 cm, 1 lb = 0.453 592 37 kg, standard gravity 9.806 65 m/s2,
1 US gal = 231 in3, 1 Btu(IT) = 1055.055 852 62 J, 1 Ci = 3.7E10 Bq, mercury and water columns conventional.

Departures from UCUM, each on purpose: plane angles count in degrees, so that they stay exact; ``m[Hg]`` is the
conventional column of NIST SP 811 (133 322.387 415 Pa for a metre) where UCUM rounds; in a compound ``Cel`` and
``[degF]`` are the sizes of their degrees; and the annotation ``{difference}`` on a temperature unit makes it a
difference of temperatures, a dimension of its own.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from fractions import Fraction
from functools import lru_cache

__all__ = ["DIFFERENCE", "Unit", "unit"]

#: The annotation that makes a temperature unit a unit of temperature difference.
DIFFERENCE = "{difference}"

#: Exponents of length, mass, time, current, temperature, plane angle, luminous intensity, level, temperature difference.
_Vector = tuple[int, int, int, int, int, int, int, int, int]
_NONE: _Vector = (0, 0, 0, 0, 0, 0, 0, 0, 0)


@dataclass(frozen=True, slots=True)
class Unit:
    """A unit code as understood.

    Attributes:
        code: the code as given.
        factor: how many base units (m, kg, s, A, K, degree of angle, cd, bel) one of it is.
        vector: exponents of the base dimensions.
        zero: its zero in base units; not 0 only for temperatures (273.15 K for ``Cel``).
    """

    code: str
    factor: Fraction
    vector: _Vector
    zero: Fraction = Fraction(0)


def _vector(**exponents: int) -> _Vector:
    length, mass, time = exponents.get("m", 0), exponents.get("kg", 0), exponents.get("s", 0)
    return (length, mass, time, exponents.get("A", 0), exponents.get("K", 0), exponents.get("deg", 0),
            exponents.get("cd", 0), exponents.get("B", 0), 0)  # fmt: skip


_LENGTH, _AREA, _VOLUME = _vector(m=1), _vector(m=2), _vector(m=3)
_MASS, _TIME, _FORCE = _vector(kg=1), _vector(s=1), _vector(m=1, kg=1, s=-2)
_PRESSURE, _ENERGY, _POWER = _vector(m=-1, kg=1, s=-2), _vector(m=2, kg=1, s=-2), _vector(m=2, kg=1, s=-3)
_TEMPERATURE = _vector(K=1)

_INCH = Fraction("0.0254")
_POUND = Fraction("0.45359237")
_GRAVITY = Fraction("9.80665")
_GALLON = 231 * _INCH**3
_BTU = Fraction("1055.05585262")
#: To thirty places; a degree is the base here, for slopes are told in degrees.
_PI = Fraction("3.141592653589793238462643383280")

#: Atoms that take metric prefixes.
_METRIC: dict[str, tuple[Fraction, _Vector]] = {
    "m": (Fraction(1), _LENGTH),
    "g": (Fraction(1, 1000), _MASS),
    "s": (Fraction(1), _TIME),
    "A": (Fraction(1), _vector(A=1)),
    "K": (Fraction(1), _TEMPERATURE),
    "cd": (Fraction(1), _vector(cd=1)),
    "Hz": (Fraction(1), _vector(s=-1)),
    "N": (Fraction(1), _FORCE),
    "Pa": (Fraction(1), _PRESSURE),
    "bar": (Fraction(100_000), _PRESSURE),
    "m[H2O]": (1000 * _GRAVITY, _PRESSURE),
    "m[Hg]": (Fraction("13595.1") * _GRAVITY, _PRESSURE),
    "J": (Fraction(1), _ENERGY),
    "W": (Fraction(1), _POWER),
    "V": (Fraction(1), _vector(m=2, kg=1, s=-3, A=-1)),
    "Ohm": (Fraction(1), _vector(m=2, kg=1, s=-3, A=-2)),
    "L": (Fraction(1, 1000), _VOLUME),
    "l": (Fraction(1, 1000), _VOLUME),
    "Bq": (Fraction(1), _vector(s=-1)),
    "Ci": (Fraction(37_000_000_000), _vector(s=-1)),
    "lm": (Fraction(1), _vector(cd=1)),
    "lx": (Fraction(1), _vector(cd=1, m=-2)),
    "B": (Fraction(1), _vector(B=1)),
    "rad": (180 / _PI, _vector(deg=1)),
    "Cel": (Fraction(1), _TEMPERATURE),
}
#: Atoms that take none.
_PLAIN: dict[str, tuple[Fraction, _Vector]] = {
    "min": (Fraction(60), _TIME),
    "h": (Fraction(3600), _TIME),
    "d": (Fraction(86_400), _TIME),
    "wk": (Fraction(7 * 86_400), _TIME),
    "mo": (Fraction(86_400) * Fraction("30.4375"), _TIME),
    "a": (Fraction(86_400) * Fraction("365.25"), _TIME),
    "deg": (Fraction(1), _vector(deg=1)),
    "%": (Fraction(1, 100), _NONE),
    "[ppth]": (Fraction(1, 1000), _NONE),
    "[ppm]": (Fraction(1, 10**6), _NONE),
    "[ppb]": (Fraction(1, 10**9), _NONE),
    "[mil_i]": (_INCH / 1000, _LENGTH),
    "[in_i]": (_INCH, _LENGTH),
    "[ft_i]": (12 * _INCH, _LENGTH),
    "[yd_i]": (36 * _INCH, _LENGTH),
    "[mi_i]": (63_360 * _INCH, _LENGTH),
    "[sin_i]": (_INCH**2, _AREA),
    "[sft_i]": ((12 * _INCH) ** 2, _AREA),
    "[syd_i]": ((36 * _INCH) ** 2, _AREA),
    "[cin_i]": (_INCH**3, _VOLUME),
    "[cft_i]": ((12 * _INCH) ** 3, _VOLUME),
    "[cyd_i]": ((36 * _INCH) ** 3, _VOLUME),
    "[gal_us]": (_GALLON, _VOLUME),
    "[qt_us]": (_GALLON / 4, _VOLUME),
    "[pt_us]": (_GALLON / 8, _VOLUME),
    "[foz_us]": (_GALLON / 128, _VOLUME),
    "[gr]": (_POUND / 7000, _MASS),
    "[oz_av]": (_POUND / 16, _MASS),
    "[lb_av]": (_POUND, _MASS),
    "[ston_av]": (2000 * _POUND, _MASS),
    "[lbf_av]": (_POUND * _GRAVITY, _FORCE),
    "[psi]": (_POUND * _GRAVITY / _INCH**2, _PRESSURE),
    "atm": (Fraction(101_325), _PRESSURE),
    "[in_i'H2O]": (1000 * _GRAVITY * _INCH, _PRESSURE),
    "[in_i'Hg]": (Fraction("13595.1") * _GRAVITY * _INCH, _PRESSURE),
    "[Btu_IT]": (_BTU, _ENERGY),
    "[HP]": (550 * 12 * _INCH * _POUND * _GRAVITY, _POWER),
    "[degR]": (Fraction(5, 9), _TEMPERATURE),
    "[degF]": (Fraction(5, 9), _TEMPERATURE),
}
#: Where the scales of temperature begin, in kelvin (NIST SP 811, B.8 "temperature"; Table 3 note on °C).
_ZEROS = {"Cel": Fraction("273.15"), "[degF]": Fraction("459.67") * Fraction(5, 9)}
_PREFIXES = {
    "G": Fraction(10**9), "M": Fraction(10**6), "k": Fraction(1000), "h": Fraction(100), "da": Fraction(10),
    "d": Fraction(1, 10), "c": Fraction(1, 100), "m": Fraction(1, 1000), "u": Fraction(1, 10**6),
    "n": Fraction(1, 10**9), "p": Fraction(1, 10**12),
}  # fmt: skip
_TEMPERATURES = frozenset({"Cel", "[degF]", "K", "[degR]"})
_TOKEN = re.compile(
    r"([./()])|(\{[ -z|~]*\})|([0-9]+)(?![A-Za-z\[%])|((?:[A-Za-z%]|\[[A-Za-z0-9_'.]+\])+)([+-]?[0-9]{1,2})?"
)
_LONGEST = 60


def _atom(code: str) -> tuple[Fraction, _Vector] | None:
    found = _PLAIN.get(code) or _METRIC.get(code)
    if found is not None:
        return found
    for size in (1, 2):
        prefix, rest = _PREFIXES.get(code[:size]), _METRIC.get(code[size:])
        if prefix is not None and rest is not None:
            return prefix * rest[0], rest[1]
    return None


def _times(left: Unit, right: Unit, power: int) -> Unit:
    vector = tuple(a + power * b for a, b in zip(left.vector, right.vector, strict=True))
    return Unit("", left.factor * right.factor**power, vector)  # type: ignore[arg-type]  # nine exponents in, nine out


class _Unknown(Exception):  # noqa: N818 - internal signal: this is no code we know
    """The code cannot be read."""


def _term(tokens: list[re.Match[str]], at: int, *, inside: bool) -> tuple[Unit, int]:
    whole = Unit("", Fraction(1), _NONE)
    power, expects = 1, True
    while at < len(tokens):
        sign, note, number, atom, exponent = tokens[at].groups()
        if sign == ")":
            if not inside or expects:
                raise _Unknown
            return whole, at
        if sign in {".", "/"}:
            if expects and not (sign == "/" and at == 0):
                raise _Unknown
            power, expects = (-1 if sign == "/" else 1), True
        elif note is not None:
            expects = False
        elif not expects:
            raise _Unknown
        else:
            if sign == "(":
                part, at = _term(tokens, at + 1, inside=True)
                if at >= len(tokens):
                    raise _Unknown
            elif number is not None:
                part = Unit("", Fraction(int(number)), _NONE)
            else:
                found = _atom(atom)
                if found is None:
                    raise _Unknown
                part = _times(Unit("", Fraction(1), _NONE), Unit("", *found), int(exponent or 1))
            if part.factor == 0:
                raise _Unknown
            whole, expects = _times(whole, part, power), False
        at += 1
    if expects or inside:
        raise _Unknown
    return whole, at


@lru_cache(maxsize=2048)
def unit(code: str) -> Unit | None:
    """What the UCUM *code* means, or None when it is not known.

    >>> unit("[in_i]").factor == Fraction("0.0254")
    True
    """
    plain = code.removesuffix(DIFFERENCE)
    if plain in _TEMPERATURES:
        factor, vector = _PLAIN.get(plain) or _METRIC[plain]
        if plain != code:
            return Unit(code, factor, (*_NONE[:8], 1))
        return Unit(code, factor, vector, _ZEROS.get(plain, Fraction(0)))
    if not code or len(code) > _LONGEST:
        return None
    tokens, at = [], 0
    while at < len(code):
        token = _TOKEN.match(code, at)
        if token is None:
            return None
        tokens.append(token)
        at = token.end()
    try:
        read, _ = _term(tokens, 0, inside=False)
    except _Unknown:
        return None
    return Unit(code, read.factor, read.vector)
