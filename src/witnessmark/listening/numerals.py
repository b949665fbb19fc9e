"""Which number do these words say? Cardinals, years, decimals, fractions, digits, and numbers put right in passing."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal

__all__ = ["Numeral", "number_words", "numeral"]

_UNITS = {w: i for i, w in enumerate(
    ("zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve",
     "thirteen", "fourteen", "fifteen", "sixteen", "seventeen", "eighteen", "nineteen"))}  # fmt: skip
_TENS = {w: 10 * (i + 2) for i, w in enumerate(
    ("twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety"))}  # fmt: skip
_TENS["fourty"] = 40
_PARTS = {"half": 2, "halves": 2, "third": 3, "thirds": 3, "quarter": 4, "quarters": 4, "fourth": 4, "fourths": 4,
          "eighth": 8, "eighths": 8, "eights": 8, "sixteenth": 16, "sixteenths": 16, "thirty-second": 32}  # fmt: skip
_DIGITS = re.compile(r"^\d+(?:\.\d+)?$")
_FRACTION = re.compile(r"^(\d+)/(\d+)$")
_YEARS = (1800, 2099)
_LONGEST_FRACTION = 12
#: Finest step kept of a fraction that is no finite decimal; 1/64 in has six places.
_FINEST = Decimal("0.000001")


@dataclass(frozen=True, slots=True)
class Numeral:
    """A number between two positions: its value and form (``cardinal``, ``year``, ``fraction``, ``digits``)."""

    end: int
    value: Decimal
    form: str


def _small(words: Sequence[str], index: int) -> tuple[int, int] | None:
    """A number below a hundred in words or digits: end and value."""
    if index >= len(words):
        return None
    word = words[index]
    if word in _TENS:
        if index + 1 < len(words) and 0 < _UNITS.get(words[index + 1], 0) < 10:  # noqa: PLR2004 - twenty and a digit
            return index + 2, _TENS[word] + _UNITS[words[index + 1]]
        return index + 1, _TENS[word]
    if word in _UNITS:
        return index + 1, _UNITS[word]
    return None


def _hundreds(words: Sequence[str], index: int) -> tuple[int, int, str] | None:
    """A whole number without thousands: ``a hundred and eighteen``, ``one thirty six``, ``twenty twelve``, ``two oh eight``."""
    if words[index] == "a" and index + 1 < len(words) and words[index + 1] == "hundred":
        return _after_hundred(words, index + 2, 100)
    first = _small(words, index)
    if first is None:
        return None
    end, value = first
    if end < len(words) and words[end] == "hundred":
        return _after_hundred(words, end + 1, value * 100)
    if end < len(words) and words[end] in {"oh", "o"} and value > 0:
        digit = _UNITS.get(words[end + 1], 0) if end + 1 < len(words) else 0
        if 0 < digit < 10:  # noqa: PLR2004 - two oh eight, nineteen oh five
            whole = value * 100 + digit
            return end + 2, whole, "year" if _YEARS[0] <= whole <= _YEARS[1] else "cardinal"
    second = _small(words, end)
    if second and second[1] >= 10 and 0 < value < 100:  # noqa: PLR2004 - one thirty six; nineteen sixty eight
        whole = value * 100 + second[1]
        if _YEARS[0] <= whole <= _YEARS[1]:
            return second[0], whole, "year"
        if value < 10:  # noqa: PLR2004 - one thirty six
            return second[0], whole, "cardinal"
    return end, value, "cardinal"


def _after_hundred(words: Sequence[str], end: int, value: int) -> tuple[int, int, str]:
    skip = end + 1 if end < len(words) and words[end] == "and" else end
    rest = _small(words, skip)
    return (rest[0], value + rest[1], "cardinal") if rest else (end, value, "cardinal")


def _whole(words: Sequence[str], index: int) -> tuple[int, int, str] | None:
    if words[index] in {"a", "one"} and index + 1 < len(words) and words[index + 1] == "thousand":
        found: tuple[int, int, str] | None = (index + 1, 1, "cardinal")
    else:
        found = _hundreds(words, index)
    if found and found[0] < len(words) and words[found[0]] == "thousand":
        end, value = found[0] + 1, found[1] * 1000
        skip = end + 1 if end < len(words) and words[end] == "and" else end
        rest = _hundreds(words, skip) if skip < len(words) else None
        if rest and rest[1] < 1000:  # noqa: PLR2004 - two thousand eight
            end, value = rest[0], value + rest[1]
        return end, value, "year" if _YEARS[0] <= value <= _YEARS[1] else "cardinal"
    return found


def _ratio(above: int, below: int) -> Decimal:
    return (Decimal(above) / Decimal(below)).quantize(_FINEST).normalize()


def _part(words: Sequence[str], index: int) -> tuple[int, Decimal] | None:
    """A fraction of one: ``a half``, ``three quarters``, ``an eighth``, ``half``, ``1/8``."""
    if index >= len(words):
        return None
    found = _FRACTION.match(words[index])
    if found and len(words[index]) < _LONGEST_FRACTION and int(found.group(2)):
        return index + 1, _ratio(int(found.group(1)), int(found.group(2)))
    count, at = 1, index
    if words[at] in {"a", "an"}:
        at += 1
    else:
        small = _small(words, at)
        if small:
            at, count = small
        elif words[at].isdecimal() and len(words[at]) < 3:  # noqa: PLR2004 - 3 quarters
            at, count = at + 1, int(words[at])
    if at < len(words) and words[at] in _PARTS and count < _PARTS[words[at]]:
        bare = at == index
        if bare and words[at] not in {"half", "quarter"}:
            return None
        if words[at] in {"third", "fourth", "second"} and count == 1 and words[index] not in {"a", "one"}:
            return None  # "the third window"
        return at + 1, _ratio(count, _PARTS[words[at]])
    return None


def _decimals(words: Sequence[str], index: int) -> tuple[int, str]:
    digits, at = "", index
    while at < len(words):
        word = words[at]
        if word in {"oh", "o"}:
            digits += "0"
        elif word in _UNITS and _UNITS[word] < 10:  # noqa: PLR2004 - digit by digit
            digits += str(_UNITS[word])
        elif word.isdecimal() and len(word) < 5:  # noqa: PLR2004 - 5 point 25
            digits += word
        elif not digits and (small := _small(words, at)):
            return small[0], str(small[1])
        else:
            break
        at += 1
    return at, digits


def numeral(words: Sequence[str], index: int) -> Numeral | None:
    """The number that begins at *index*, the longest reading of it, or None.

    >>> numeral("a hundred and eighteen degrees".split(), 0).value
    Decimal('118')
    >>> numeral("five and three quarters inches".split(), 0).value
    Decimal('5.75')
    >>> numeral("nineteen sixty eight".split(), 0)
    Numeral(end=3, value=Decimal('1968'), form='year')
    """
    word = words[index]
    part = _part(words, index)
    if part:
        return Numeral(part[0], part[1], "fraction")
    if _DIGITS.match(word):
        if len(word) > 9:  # noqa: PLR2004 - a serial number, not a quantity
            return None
        end, value, form = index + 1, Decimal(word), "digits"
        if _is_ten(word) and end < len(words) and words[end].isdecimal() and len(words[end]) == 1 and words[end] != "0":
            end, value = end + 1, value + int(words[end])  # "50 8": fifty-eight, written as two
        elif "." not in word and _YEARS[0] <= value <= _YEARS[1]:
            form = "year"
    else:
        whole = _whole(words, index)
        if whole is None:
            return None
        end, value, form = whole[0], Decimal(whole[1]), whole[2]
    if end < len(words) and words[end] == "point":
        at, digits = _decimals(words, end + 1)
        if digits:
            return Numeral(at, Decimal(f"{value}.{digits}"), "cardinal")
    if end < len(words):
        written = _FRACTION.match(words[end])
        joint = end + 1 if words[end] == "and" else end
        part = _part(words, joint) if words[end] == "and" or written else None
        if part and (written or joint + 1 < part[0]):
            return Numeral(part[0], value + part[1], "fraction")
        if words[end] == "million":
            return Numeral(end + 1, value * 1_000_000, "cardinal")
    return Numeral(end, value, form)


def _is_ten(word: str) -> bool:
    return len(word) == 2 and word[1] == "0" and word[0] not in "01"  # noqa: PLR2004 - 20 to 90


def number_words() -> frozenset[str]:
    """The words that numbers are made of, names of units included as far as they are common."""
    return frozenset({*_UNITS, *_TENS, *_PARTS, "hundred", "thousand", "million", "point", "inch", "inches", "feet",
                      "foot", "percent", "degrees", "degree", "amp", "amps", "volts", "gallon", "gallons"})  # fmt: skip
