"""Which number do these words say? Cardinals, years, decimals, fractions, digits, and numbers put right in passing."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal

__all__ = ["Numeral", "may_begin", "number_words", "numeral", "short_year"]

_UNITS = {w: i for i, w in enumerate(
    ("zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve",
     "thirteen", "fourteen", "fifteen", "sixteen", "seventeen", "eighteen", "nineteen"))}  # fmt: skip
_TENS = {w: 10 * (i + 2) for i, w in enumerate(
    ("twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety"))}  # fmt: skip
_TENS["fourty"] = 40
_SIGNS = frozenset({"minus", "negative"})
#: Amounts said as nouns: "a dozen", "half a dozen", "a couple". A couple is two, more or less.
_LOTS = {"dozen": 12, "couple": 2, "pair": 2}
#: Parts of one that are said without "a" when what they are parts of follows: "eighth inch", "third horse".
_PARTS_OF = frozenset({"inch", "horse", "horsepower", "turn", "ton", "gallon"})
_PARTS = {"half": 2, "halves": 2, "third": 3, "thirds": 3, "quarter": 4, "quarters": 4, "fourth": 4, "fourths": 4,
          "eighth": 8, "eighths": 8, "eights": 8, "sixteenth": 16, "sixteenths": 16, "thirty-second": 32}  # fmt: skip
_DECADES = {"tens": 10, "teens": 10, "twenties": 20, "thirties": 30, "forties": 40, "fifties": 50, "sixties": 60, "seventies": 70,
            "eighties": 80, "nineties": 90, "hundreds": 0}  # fmt: skip
#: Digits as they are misheard between tens and a unit: "ninety for degrees".
_MISHEARD = {"for": 4, "to": 2, "too": 2, "ate": 8, "won": 1, "sex": 6}
_UNIT_WORDS = frozenset(
    {"degrees", "degree", "percent", "inches", "psi", "volts", "gallon", "gallons", "pounds", "ppm"}
)
_DIGITS = re.compile(r"^\d+(?:\.\d+)?$")
_FRACTION = re.compile(r"^(\d+)/(\d+)$")
_YEARS = (1800, 2099)
_LONGEST_FRACTION = 12
#: Units before which "1 20" is one number.
_JOINED_BEFORE = frozenset({"volt", "volts", "v", "degree", "degrees", "psi", "pounds", "ppm", "cfm", "gallons"})
#: Finest step kept of a fraction that is no finite decimal; 1/64 in has six places.
_FINEST = Decimal("0.000001")


@dataclass(frozen=True, slots=True)
class Numeral:
    """A number between two positions: its value and form (``cardinal``, ``year``, ``fraction``, ``digits``, ``lot``)."""

    end: int
    value: Decimal
    form: str


def _small(words: Sequence[str], index: int) -> tuple[int, int] | None:
    """A number below a hundred in words or digits: end and value."""
    if index >= len(words):
        return None
    word = words[index]
    if word in _TENS and index + 2 < len(words) and words[index + 1] in _MISHEARD and words[index + 2] in _UNIT_WORDS:
        return index + 2, _TENS[word] + _MISHEARD[words[index + 1]]
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
    if words[index : index + 2] == ["a", "buck"] and _small(words, index + 2):
        return _after_hundred(words, index + 2, 100)  # "a buck twenty"
    if words[index] == "hundred":
        return _after_hundred(words, index + 1, 100)  # "a good hundred degrees", "hundred amp panel"
    first = _small(words, index)
    if first is None:
        return None
    end, value = first
    if value in {18, 19} and end < len(words) and words[end] in _DECADES:
        return end + 1, value * 100 + _DECADES[words[end]], "year"  # "the nineteen eighties"
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
        # one thirty six; twelve fifty; but "sixteen twenty six" are two numbers
        if value < 10 or (value < 20 and second[1] >= 20 and second[1] % 5 == 0):  # noqa: PLR2004
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
        if rest and rest[1] >= 100 and "hundred" not in words[skip : rest[0]]:  # noqa: PLR2004 - "two thousand seven | ten years"
            small = _small(words, skip)
            rest = None if small is None else (*small, "cardinal")
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
    if (
        at > index
        and list(words[at : at + 2]) in (["thirty", "seconds"], ["thirty", "second"])
        and words[at + 2 : at + 3] in (["of"], ["inch"])
    ):
        return at + 2, _ratio(count, 32)  # "seven thirty seconds of an inch"
    if at < len(words) and words[at] in _PARTS and count < _PARTS[words[at]]:
        bare = at == index
        if bare and words[at] not in {"half", "quarter"}:
            of = words[at + 1 : at + 2]
            return (at + 1, _ratio(1, _PARTS[words[at]])) if of and of[0] in _PARTS_OF else None
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
    if word in _SIGNS and index + 1 < len(words):
        size = numeral(words, index + 1) if words[index + 1] not in _SIGNS else None
        return (
            None if size is None else Numeral(size.end, -size.value, "cardinal" if size.form == "year" else size.form)
        )
    lot = _lot(words, index)
    if lot:
        return lot
    part = _part(words, index)
    if part:
        return Numeral(part[0], part[1], "fraction")
    if word == "point" or (word in {"oh", "o"} and words[index + 1 : index + 2] == ["point"]):
        at, digits = _decimals(words, index + (1 if word == "point" else 2))
        return Numeral(at, Decimal(f"0.{digits}"), "cardinal") if digits else None
    if _DIGITS.match(word):
        if len(word) > 9:  # noqa: PLR2004 - a serial number, not a quantity
            return None
        end, value, form = index + 1, Decimal(word), "digits"
        if _is_ten(word) and end < len(words) and words[end].isdecimal() and len(words[end]) == 1 and words[end] != "0":
            end, value = end + 1, value + int(words[end])  # "50 8": fifty-eight, written as two
        elif word in {"19", "20"} and _is_year_end(words, end):
            end, value, form = end + 1, value * 100 + int(words[end]), "year"  # "20 13"
        elif _joins(words, index):
            end, value = end + 1, value * 100 + int(words[end])  # "1 20 volts", "2 40": written as they are said
        elif word.isdecimal() and words[end : end + 1] in (["hundred"], ["thousand"]):
            end, value = end + 1, value * (100 if words[end] == "hundred" else 1000)  # "2 hundred", "40 thousand"
            form = "year" if _YEARS[0] <= value <= _YEARS[1] else "cardinal"
            if end < len(words) and words[end].isdecimal() and int(words[end]) < 100:  # noqa: PLR2004 - "2 thousand 8"
                end, value = end + 1, value + int(words[end])
        elif "." not in word and _YEARS[0] <= value <= _YEARS[1]:
            form = "year"
    else:
        whole = _whole(words, index)
        if whole is None:
            return None
        end, value, form = whole[0], Decimal(whole[1]), whole[2]
    if end < len(words) and words[end] == "point" and value == int(value):
        at, digits = _decimals(words, end + 1)
        if digits:
            return Numeral(at, Decimal(f"{value}.{digits}"), "cardinal")
    if end < len(words):
        written = _FRACTION.match(words[end])
        joint = end + 1 if words[end] == "and" else end
        part = _part(words, joint) if words[end] == "and" or written else None
        if part and (written or joint + 1 < part[0] or _FRACTION.match(words[joint])):
            return Numeral(part[0], value + part[1], "fraction")
        if words[end] == "million":
            return Numeral(end + 1, value * 1_000_000, "cardinal")
    return Numeral(end, value, form)


#: Words after which "20 20" is a count and a size.
_SIZED = frozenset(
    {
        "amp",
        "amps",
        "a",
        "foot",
        "feet",
        "inch",
        "inches",
        "gallon",
        "gallons",
        "by",
        "x",
        "volt",
        "volts",
        "percent",
        "degrees",
    }
)


def _is_year_end(words: Sequence[str], at: int) -> bool:
    """Whether two more digits make a year of "19" or "20", as recognisers write one ("20 13")."""
    if at >= len(words) or len(words[at]) != 2 or not words[at].isdecimal():  # noqa: PLR2004 - the last two digits
        return False
    return words[at + 1 : at + 2] == [] or words[at + 1] not in _SIZED


def _joins(words: Sequence[str], index: int) -> bool:
    """Whether one digit and two are a number of three, as recognisers write them ("1 20 volts"), not "2 20 amp"."""
    if len(words[index]) != 1 or words[index] == "0" or index + 2 >= len(words):
        return False
    tens = words[index + 1]
    return tens.isdecimal() and len(tens) == 2 and tens[0] != "0" and words[index + 2] in _JOINED_BEFORE  # noqa: PLR2004


def _lot(words: Sequence[str], index: int) -> Numeral | None:
    """``a dozen``, ``half a dozen``, ``two dozen``, ``a couple of hundred``."""
    at, times = index, Decimal(1)
    if words[at] == "half" and words[at + 1 : at + 2] in (["a"], ["dozen"]):
        at, times = at + 1, Decimal("0.5")
    if at < len(words) and words[at] == "a":
        at += 1
    elif at == index and words[at] not in _LOTS:
        small = _small(words, at)
        if small is None or small[1] >= 20:  # noqa: PLR2004 - two dozen, not twenty dozen
            return None
        at, times = small[0], Decimal(small[1])
    if at >= len(words) or words[at] not in _LOTS or (times != 1 and words[at] != "dozen"):
        return None
    value, end = _LOTS[words[at]] * times, at + 1
    skip = end + 1 if words[end : end + 1] == ["of"] else end
    for word, size in (("hundred", 100), ("thousand", 1000)):
        if words[skip : skip + 1] == [word]:
            return Numeral(skip + 1, value * size, "cardinal")
    return Numeral(end, value.normalize(), "lot")


def short_year(words: Sequence[str], index: int) -> tuple[int, int] | None:
    """A year said by its last two digits from *index* on: ``oh nine``, ``eighty six``, ``'94``; end and year.

    Up to the thirties they are of this century. Only for words after "made in" and the like.

    >>> short_year("oh nine".split(), 0), short_year("eighty six".split(), 0)
    ((2, 2009), (2, 1986))
    """
    if index >= len(words):
        return None
    if words[index] in {"oh", "o", "zero", "0"} and index + 1 < len(words):
        digit = _UNITS.get(words[index + 1], int(words[index + 1]) if words[index + 1].isdecimal() else 10)
        return (index + 2, 2000 + digit) if digit < 10 else None  # noqa: PLR2004 - oh nine
    if words[index].isdecimal() and len(words[index]) == 2:  # noqa: PLR2004 - '94
        end, value = index + 1, int(words[index])
    else:
        small = _small(words, index)
        if small is None or small[1] < 10:  # noqa: PLR2004 - "in five places"
            return None
        end, value = small
    return end, value + (2000 if value < 40 else 1900)  # noqa: PLR2004 - this century's so far, and some years more


def _is_ten(word: str) -> bool:
    return len(word) == 2 and word[1] == "0" and word[0] not in "01"  # noqa: PLR2004 - 20 to 90


#: Words with which a number, or one of a unit, may begin.
_BEGINS = frozenset(
    {
        *_UNITS,
        *_TENS,
        *_PARTS,
        *_LOTS,
        *_SIGNS,
        "a",
        "an",
        "half",
        "hundred",
        "thousand",
        "point",
        "oh",
        "o",
        "r",
        "inch",
        "foot",
    }
)


def may_begin(word: str) -> bool:
    """Whether a number, or one of a unit ("an inch"), may begin with this word."""
    return word in _BEGINS or word[:1].isdecimal()


def number_words() -> frozenset[str]:
    """The words that numbers are made of, names of units included as far as they are common."""
    return frozenset({*_UNITS, *_TENS, *_PARTS, "hundred", "thousand", "million", "point", "inch", "inches", "feet",
                      "foot", "percent", "degrees", "degree", "amp", "amps", "volts", "gallon", "gallons"})  # fmt: skip
