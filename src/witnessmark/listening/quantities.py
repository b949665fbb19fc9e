"""Which quantities stand in these words? Numbers with units, ranges, pairs (two by six), counts (two of the six)."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from decimal import Decimal
from functools import lru_cache

from witnessmark.listening.numerals import Numeral, numeral
from witnessmark.listening.phrases import Phrases
from witnessmark.listening.words import phrase
from witnessmark.units.names import NAMES

__all__ = ["Quantity", "quantities"]

_ABOUT = frozenset({"about", "around", "roughly", "approximately", "maybe", "like", "almost", "nearly", "some", "say"})
_TIMES = frozenset({"s", "ms", "min", "h", "d", "wk", "mo"})
_RETRACTIONS = (("no",), ("wait", "no"), ("no", "wait"), ("sorry",), ("i", "mean"), ("make", "that"), ("correction",))
#: Names of units that are common words, read as units only when written, never when spoken.
_NOT_SPOKEN = frozenset({"in", "m", "a", "s", "d", "h", "f", "c", "v", "w", "n", "l", "g", "k", "ins", "deg", "thou",
                         "bar", "sec", "secs", "second", "seconds", "each", "ea", "fourth", "pa", "lb/h", "ton"})  # fmt: skip
#: "sixteen on center" is a spacing in inches; common practice, no source.
_EXTRA = {
    "degrees": "[degF]", "degree": "[degF]", "square feet": "[sft_i]", "square foot": "[sft_i]", "tons": "12000.[Btu_IT]/h",
    "ton": "12000.[Btu_IT]/h", "btu": "[Btu_IT]/h", "btus": "[Btu_IT]/h", "gallon": "[gal_us]", "pounds of pressure": "[psi]",
    "pounds per square inch": "[psi]", "volt": "V", "amps": "A", "amp": "A",
    "degrees celsius": "Cel", "degrees f": "[degF]", "f": "[degF]", "kva": "kV.A",
}  # fmt: skip


@dataclass(frozen=True, slots=True)
class Quantity:
    """A quantity in words *start* to *end*.

    Attributes:
        start, end: positions, end exclusive; retracted numbers before it are inside.
        value: the number.
        unit: UCUM code; None when none was said.
        form: ``quantity``, ``year``, ``pair``, ``count`` or ``bare``.
        high: upper end of a range.
        second: second number of a pair; the whole of a count.
        about: said to be approximate.
        retracted: positions of a number that was taken back, (start, end).
    """

    start: int
    end: int
    value: Decimal
    unit: str | None
    form: str
    high: Decimal | None = None
    second: Decimal | None = None
    about: bool = False
    retracted: tuple[int, int] | None = None


#: Sizes of lumber are said with numbers below this.
_LUMBER_TO = 100


@lru_cache(maxsize=1)
def _names() -> Phrases[str]:
    rows = [(phrase(text), code) for text, code in _EXTRA.items() if code and len(text) > 1]
    for code, names in NAMES.items():
        for name in names:
            words = phrase(name)
            spoken = name.replace(" ", "").replace("/", "").isalpha() and name.lower() not in _NOT_SPOKEN
            if words and spoken and len(name) > 1 and "." not in name:
                rows.append((words, code))
    return Phrases(rows)


def _unit(words: Sequence[str], index: int, numeral_: Numeral) -> tuple[int, str] | None:
    at = index
    if numeral_.form == "fraction" and at < len(words) and words[at] in {"of", "a", "an"}:
        at += 1  # "an eighth of an inch", "half an inch"
        if at < len(words) and words[at] in {"a", "an"}:
            at += 1
    if at >= len(words):
        return None
    found = _names().at(words, at)
    if found is None and words[at] in {"f", "a", "v"} and numeral_.form == "digits":
        return at + 1, {"f": "[degF]", "a": "A", "v": "V"}[words[at]]
    return found


def _one(words: Sequence[str], index: int) -> Quantity | None:
    pitch = _pitch(words, index)
    if pitch:
        return pitch
    read = numeral(words, index)
    if read is None:
        return None
    unit = _unit(words, read.end, read)
    if unit:
        made = Quantity(index, unit[0], read.value, unit[1], "quantity")
        return _feet_and_inches(words, made)
    if tuple(words[read.end : read.end + 2]) == ("on", "center"):
        return Quantity(index, read.end + 2, read.value, "[in_i]", "quantity")
    return Quantity(index, read.end, read.value, None, "year" if read.form == "year" else "bare")


#: Rises in twelve that roofs have; "six twelve" is one of them, not six hundred and twelve.
_STEEPEST = 18


def _pitch(words: Sequence[str], index: int) -> Quantity | None:
    """A roof slope: "six twelve", "six in twelve", "6/12". Inches of rise in a foot."""
    if words[index].endswith("/12") and words[index][:-3].isdecimal() and 0 < int(words[index][:-3]) <= _STEEPEST:
        return Quantity(index, index + 1, Decimal(words[index][:-3]), "[in_i]/[ft_i]", "quantity")
    rise = numeral([words[index]], 0)
    if rise is None or not 0 < rise.value <= _STEEPEST or rise.value != int(rise.value):
        return None
    at = index + 2 if words[index + 1 : index + 2] in (["in"], ["and"], ["over"]) else index + 1
    if words[at : at + 1] not in (["twelve"], ["12"]) or words[at + 1 : at + 2] in (
        ["inch"],
        ["inches"],
        ["feet"],
        ["by"],
        ["hundred"],
    ):
        return None
    return Quantity(index, at + 1, rise.value, "[in_i]/[ft_i]", "quantity")


def _feet_and_inches(words: Sequence[str], feet: Quantity) -> Quantity:
    if feet.unit != "[ft_i]" or feet.end >= len(words):
        return feet
    at = feet.end + 1 if words[feet.end] == "and" and feet.end + 1 < len(words) else feet.end
    inches = numeral(words, at)
    if inches is None or inches.value >= 12 or inches.form == "year":  # noqa: PLR2004 - inches in a foot
        return feet
    unit = _unit(words, inches.end, inches)
    whole = inches.form in {"cardinal", "digits"} and inches.value == int(inches.value)
    if unit is None and at == feet.end and whole and words[inches.end : inches.end + 1] not in (["by"], ["of"]):
        return Quantity(feet.start, inches.end, feet.value * 12 + inches.value, "[in_i]", "quantity")  # "six foot ten"
    if unit and unit[1] == "[in_i]":
        return Quantity(feet.start, unit[0], feet.value * 12 + inches.value, "[in_i]", "quantity")
    return feet


def _extended(words: Sequence[str], first: Quantity) -> Quantity:
    """*first* with what makes it a range, a pair or a count."""
    end = first.end
    if end + 1 >= len(words):
        return first
    joint, after = words[end], words[end + 1]
    if joint == "of" and first.form in {"bare", "quantity"} and first.unit is None:
        at = end + 2 if after in {"the", "these", "those", "them", "my"} and end + 2 < len(words) else end + 1
        whole = _one(words, at) if at < len(words) else None
        if whole and whole.form == "bare" and whole.value >= first.value and first.value == int(first.value):
            return replace(first, end=whole.end, form="count", second=whole.value)
        if after in {"the", "them", "these", "those", "my", "our"} and first.value == int(first.value):
            return replace(first, end=end + 1, form="count")
    if joint in {"by", "x"}:
        other = _one(words, end + 1)
        if other and other.value >= _LUMBER_TO:
            # "two by six sixteen on center": the second number is the first word alone
            other = _one([*words[: end + 2]], end + 1)
        if other and other.form in {"bare", "quantity"}:
            return replace(first, end=other.end, form="pair", second=other.value, unit=other.unit or first.unit)
    if joint in {"to", "or"}:
        other = _one(words, end + 1)
        if other and other.value > first.value and other.form == "quantity":
            if first.unit in {None, other.unit}:
                return replace(first, end=other.end, unit=other.unit, form="quantity", high=other.value)
        elif other and other.form == "bare" and first.form == "bare" and other.value > first.value and joint == "to":
            return replace(first, end=other.end, high=other.value)
    return first


def _corrected(words: Sequence[str], first: Quantity) -> Quantity:
    """The number that replaces *first*, when it is taken back at once (``two, no, three``)."""
    for taken_back in _RETRACTIONS:
        at = first.end + len(taken_back)
        if tuple(words[first.end : at]) != taken_back or at >= len(words):
            continue
        skip = at + 1 if words[at] in {"it", "about", "like"} and at + 1 < len(words) else at
        other = _one(words, skip)
        if other:
            other = _extended(words, other)
            unit = other.unit or first.unit
            form = "quantity" if other.form == "bare" and unit else other.form
            return replace(other, start=first.start, unit=unit, form=form, retracted=(first.start, first.end))
    return first


def quantities(words: Sequence[str], start: int = 0, end: int | None = None) -> list[Quantity]:
    """Every quantity in the words from *start* to *end*, in order, none overlapping another."""
    run = list(words[: len(words) if end is None else end])
    found: list[Quantity] = []
    index = start
    while index < len(run):
        one = _one(run, index)
        if one is None:
            index += 1
            continue
        one = _corrected(run, _extended(run, one))
        about = index > start and run[index - 1] in _ABOUT
        if not _is_word(run, one):
            found.append(replace(one, about=about))
        index = max(one.end, index + 1)
    return found


def _is_word(words: Sequence[str], one: Quantity) -> bool:
    """Whether the number is only a word of the sentence: ``this one``, ``one of these``, ``half missing``."""
    if one.form != "bare":
        return one.form == "quantity" and one.unit in _TIMES and words[one.start] == "a"
    if words[one.start] == "one" and one.end == one.start + 1:
        before = words[one.start - 1] if one.start else ""
        after = words[one.end] if one.end < len(words) else ""
        if numeral(words, one.end) if after else False:
            return True  # "one 30 amp breaker"
        return before in {"this", "that", "other", "the", "an", "another", "which", "every", "each", "no", "any", "last",
                          "first", "next", "old", "new", "top", "bottom", "lower", "upper", "left", "right"} or after in {
                              "is", "has", "does", "was", "of", "that", ""}  # fmt: skip
    return words[one.start] in {"half", "quarter"} and one.end == one.start + 1
