"""What an inspector wrote as a quantity: ``118F``, ``5 3/4"``, ``6'8"``, ``2 1/2 gal/min``."""

from __future__ import annotations

import difflib
import re
import unicodedata
from decimal import Context, Decimal

from witnessmark.problems import Refusal
from witnessmark.units.messages import NO_NUMBER, NO_SUCH_UNIT, NO_UNIT
from witnessmark.units.names import NAMES, codes
from witnessmark.units.quantity import Quantity, known

__all__ = ["parse_quantity"]

_LONGEST = 80
_DIGITS = Context(prec=34)
_FRACTION = r"[0-9]{1,6}\s*/\s*[0-9]{1,6}"
_PLAIN = r"(?:[0-9]{1,3}(?:,[0-9]{3})+(?:\.[0-9]+)?|[0-9]+(?:\.[0-9]+)?|\.[0-9]+)"
_NUMBER = rf"(?:{_FRACTION}|{_PLAIN}(?:(?:\s+|-|\s*-\s*){_FRACTION})?)"
_ONE = re.compile(rf"([+-]?)\s*({_NUMBER})\s*(.*)", re.DOTALL)
_FEET_INCHES = re.compile(
    rf"([+-]?)\s*({_PLAIN})\s*(?:ft|feet|foot|')\.?\s*(?:and\s+|-\s*|,\s*)?({_NUMBER})\s*(?:in|ins|inch|inches|\"|'')?\.?",
    re.IGNORECASE,
)
_HOURS_MINUTES = re.compile(
    rf"({_PLAIN})\s*(?:h|hr|hrs|hour|hours)\s*(?:and\s+)?({_PLAIN})\s*(?:min|mins|minute|minutes|m)", re.IGNORECASE
)
_PITCH = re.compile(rf"({_PLAIN})\s*/\s*12\s+(?:pitch|slope)", re.IGNORECASE)
_MARKS = str.maketrans({"−": "-", "–": "-", "′": "'", "’": "'", "‘": "'", "″": '"', "”": '"', "“": '"', "\xa0": " "})
_VULGAR = re.compile("[¼½¾⅐-⅞]")


def _number(text: str) -> Decimal | None:
    """The decimal a number stands for, None when it divides by nought."""
    whole, _, fraction = text.replace(",", "").rpartition(" " if "/" in text else "\0")
    if "/" not in text:
        return Decimal(fraction)
    top, bottom = (Decimal(part) for part in fraction.split("/"))
    if bottom == 0:
        return None
    return _DIGITS.add(Decimal(whole or 0), _DIGITS.divide(top, bottom))


def _read(text: str) -> Decimal | None:
    tidy = re.sub(r"\s*/\s*", "/", text)
    return _number(re.sub(r"(?<=[0-9])(?:\s*-\s*|\s+)(?=[0-9]+/)", " ", tidy))


def _unit(text: str, where: str) -> str:
    name = re.sub(r"\s+", " ", text.strip())
    name = name if codes(name) else name.rstrip(".")
    if not name:
        raise Refusal(NO_UNIT.at(where))
    code = codes(name) or (name if known(name) else None)
    if code is None:
        spellings = {spelling.lower(): spelling for names in NAMES.values() for spelling in names}
        near = difflib.get_close_matches(name.lower(), spellings, n=2, cutoff=0.6)
        meant = f"{name!r}; did you mean {' or '.join(spellings[n] for n in near)}?" if near else repr(name)
        raise Refusal(NO_SUCH_UNIT.at(where, meant))
    return code


def parse_quantity(text: str) -> Quantity:
    r"""The quantity that *text* states: a number, whole, decimal or with a fraction, and its unit.

    Units are read as people write them (``F``, ``°F``, ``psi``, ``in``, ``"``, ``gal/min``) or as UCUM codes. Feet
    with inches become inches, hours with minutes become minutes. Refuses text without a number (WM101), without a
    unit (WM102) or with a unit that is not known (WM103).

    >>> parse_quantity("118F")
    Quantity(value=Decimal('118'), unit='[degF]')
    >>> parse_quantity("6'8\"")
    Quantity(value=Decimal('80'), unit='[in_i]')
    >>> parse_quantity("2 1/2 gal/min").value
    Decimal('2.5')
    """
    where = repr(text if len(text) <= _LONGEST else text[:_LONGEST] + "…")
    if len(text) > _LONGEST:
        raise Refusal(NO_NUMBER.at(where, f"longer than {_LONGEST} characters"))
    plain = _VULGAR.sub(lambda found: " " + unicodedata.normalize("NFKC", found[0]), text.translate(_MARKS))
    plain = plain.replace("⁄", "/").strip()
    if found := _FEET_INCHES.fullmatch(plain):
        feet, inches = _read(found[2]), _read(found[3])
        if feet is not None and inches is not None:
            value = _DIGITS.add(_DIGITS.multiply(feet, Decimal(12)), inches)
            return Quantity(-value if found[1] == "-" else value, "[in_i]")
    if found := _HOURS_MINUTES.fullmatch(plain):
        hours, minutes = _read(found[1]), _read(found[2])
        if hours is not None and minutes is not None:
            return Quantity(_DIGITS.add(_DIGITS.multiply(hours, Decimal(60)), minutes), "min")
    if found := _PITCH.fullmatch(plain):
        return Quantity(Decimal(found[1].replace(",", "")), "[in_i]/[ft_i]")
    one = _ONE.fullmatch(plain)
    value_read = None if one is None else _read(one[2])
    if one is None or value_read is None:
        raise Refusal(NO_NUMBER.at(where))
    return Quantity(-value_read if one[1] == "-" else value_read, _unit(one[3], where))
