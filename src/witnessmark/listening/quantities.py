"""Which quantities stand in these words? Numbers with units, ranges, pairs (two by six), counts (two of the six)."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass, replace
from decimal import Decimal

from witnessmark.listening.numerals import Numeral, may_begin, numeral
from witnessmark.listening.said_units import ONE_OF, unit_after

__all__ = ["RATINGS", "Quantity", "quantities"]

_ABOUT = frozenset({"about", "around", "roughly", "approximately", "maybe", "like", "almost", "nearly", "some", "say",
                    "pushing", "approaching", "barely", "probably", "call", "circa", "close", "under", "over", "near",
                    "upwards", "above", "below", "right", "another"})  # fmt: skip
#: Words between one that makes a number rough and the number: "call it four", "close to ninety", "right at a hundred".
_THEN = frozenset({"it", "to", "at", "of", "around"})
_ABOUT_AFTER = (
    ("or", "so"),
    ("give", "or", "take"),
    ("ish",),
    ("maybe",),
    ("or", "thereabouts"),
    ("roughly",),
    ("tops",),
)
_TIMES = frozenset({"s", "ms", "min", "h", "d", "wk", "mo"})
_RETRACTIONS = (
    ("no",), ("wait", "no"), ("no", "wait"), ("sorry",), ("i", "mean"), ("make", "that"), ("correction",), ("actually",),
    ("no", "sorry"), ("no", "make", "that"), ("scratch", "that"), ("or", "rather"), ("rather",), ("no", "actually"),
    ("i", "am", "sorry"), ("excuse", "me"), ("no", "it", "is"), ("wait",), ("well", "no"), ("no", "i", "mean"), ("or", "actually"),
    ("not", "quite"), ("let", "us", "call", "it"), ("no", "call", "it"), ("no", "that", "is"),
)  # fmt: skip


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
        third: third number of a pair (a filter of "sixteen by twenty five by one").
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
    third: Decimal | None = None


#: Sizes of lumber are said with numbers below this.
_LUMBER_TO = 100
#: "2x6", "16x25x1", as written.
_PAIR = re.compile(r"^(\d{1,3})x(\d{1,3})(?:x(\d{1,2}))?$")
#: Words of a plain size with its unit.
_PLAIN = 2
#: Lumber by its second number alone: "two by sixes".
_LUMBER = {"fours": 4, "sixes": 6, "eights": 8, "tens": 10, "twelves": 12}
#: Standard ratings of breakers and fuses, A: National Electrical Code, table 240.6(A), to 400 A (from memory).
RATINGS = frozenset(
    {15, 20, 25, 30, 35, 40, 45, 50, 60, 70, 80, 90, 100, 110, 125, 150, 175, 200, 225, 250, 300, 350, 400}
)
#: A thermal resistance said after its letter: "r thirteen".
_R_VALUE = "[sft_i].[degF].h/[Btu_IT]"
_R_TO = 100
_TO_R = frozenset(
    {"of", "is", "was", "about", "around", "at", "a", "an", "on", "it", "them", "these", "says", "'s", "maybe", "r"}
)


def _one(words: Sequence[str], index: int) -> Quantity | None:
    whole = (
        _aloud(words, index)
        or _written_pair(words, index)
        or _pitch(words, index)
        or _thermal(words, index)
        or _single(words, index)
        or _dated(words, index)
        or _height(words, index)
    )
    if whole:
        return whole
    read = numeral(words, index)
    if read is None:
        return None
    rate = _per_time(words, read)
    if rate:
        return Quantity(index, rate[0], read.value, rate[1], "quantity")
    unit = unit_after(words, read.end, form=read.form)
    if unit and unit[1] == "min":
        timed = _and_seconds(words, index, read.value, unit[0])
        if timed is not None:
            return timed
    rated = _rated(words, index, read, unit)
    if rated is not None:
        return rated
    if unit:
        made = Quantity(index, unit[0], read.value, unit[1], "quantity", about=read.form == "lot")
        return _halved(words, _feet_and_inches(words, made))
    if tuple(words[read.end : read.end + 2]) in {("on", "center"), ("on", "centers"), ("o", "c"), ("on", "centre")}:
        return Quantity(index, read.end + 2, read.value, "[in_i]", "quantity")
    return Quantity(
        index, read.end, read.value, None, "year" if read.form == "year" else "bare", about=read.form == "lot"
    )


#: Numbers as one counts aloud, and how many make a count.
_ALOUD = (
    ("one", "1"), ("two", "2"), ("three", "3"), ("four", "4"), ("five", "5"), ("six", "6"), ("seven", "7"), ("eight", "8"),
    ("nine", "9"), ("ten", "10"), ("eleven", "11"), ("twelve", "12"),
)  # fmt: skip
_LEAST_ALOUD = 3


def _aloud(words: Sequence[str], index: int) -> Quantity | None:
    """What is counted aloud: "one two three four in this row" are four."""
    if words[index] not in _ALOUD[0] or (index and words[index - 1] in {"number", "dash", "zero", "oh"}):
        return None
    said = 0
    while said < len(_ALOUD) and index + said < len(words) and words[index + said] in _ALOUD[said]:
        said += 1
    return Quantity(index, index + said, Decimal(said), None, "count") if said >= _LEAST_ALOUD else None


def _written_pair(words: Sequence[str], index: int) -> Quantity | None:
    found = _PAIR.match(words[index])
    if found is None:
        return None
    first, second, third = (None if size is None else Decimal(size) for size in found.groups())
    return None if first is None else Quantity(index, index + 1, first, None, "pair", second=second, third=third)


def _per_time(words: Sequence[str], read: Numeral) -> tuple[int, str] | None:
    """Gallons, where only the minute is said: "seven and a half a minute"."""
    after = tuple(words[read.end : read.end + 2])
    return (read.end + 2, "[gal_us]/min") if read.value >= 1 and after in {("a", "minute"), ("per", "minute")} else None


def _rated(words: Sequence[str], index: int, read: Numeral, unit: tuple[int, str] | None) -> Quantity | None:
    """The count before a rating: "two twenty amp breakers" are two, "one thirty amp" is one; no breaker has 220 A."""
    if unit is None or unit[1] != "A" or read.end - index < 2 or read.value in RATINGS or read.value > 400:  # noqa: PLR2004 - as the table goes
        return None
    first = numeral([words[index]], 0)
    rest = numeral(words, index + 1)
    if first is None or rest is None or rest.end != read.end or rest.value not in RATINGS:
        return None
    return Quantity(index, index + 1, first.value, None, "bare")


def _thermal(words: Sequence[str], index: int) -> Quantity | None:
    """A thermal resistance: "r thirteen", "R-38", "r value of nineteen", "r value is about eleven"."""
    if words[index] != "r" or index + 1 >= len(words):
        return None
    at = index + 1
    if words[at] in {"value", "factor", "rating"}:
        at += 1
        while at < len(words) and words[at] in _TO_R:
            at += 1
    read = numeral(words, at) if at < len(words) else None
    if read is None or not 1 <= read.value <= _R_TO or read.form in {"fraction", "lot"}:
        return None
    return Quantity(index, read.end, read.value, _R_VALUE, "quantity")


#: Seconds.
_MINUTE = 60


def _and_seconds(words: Sequence[str], start: int, minutes: Decimal, at: int) -> Quantity | None:
    """Minutes and seconds: "two minutes and ten seconds", in seconds; a half said after its unit in minutes."""
    skip = at + 1 if words[at : at + 1] == ["and"] else at
    if skip >= len(words):
        return None
    if skip > at and words[skip : skip + 2] == ["a", "half"]:
        return Quantity(start, skip + 2, minutes + Decimal("0.5"), "min", "quantity")
    more = numeral(words, skip)
    if (
        more is None
        or not 0 < more.value < _MINUTE
        or words[more.end : more.end + 1] not in (["seconds"], ["second"], ["secs"])
    ):
        return None
    return Quantity(start, more.end + 1, minutes * 60 + more.value, "s", "quantity")


def _single(words: Sequence[str], index: int) -> Quantity | None:
    """One of a unit: "an inch", "a foot long", "an inch and a quarter", "a foot and a half", "inch and a half"."""
    if words[index : index + 2] == ["a", "minute"] and index + 2 < len(words):
        return _and_seconds(words, index, Decimal(1), index + 2)
    at = index + 1 if words[index] in {"a", "an"} else index
    if at >= len(words) or words[at] not in ONE_OF or (at == index and words[at] not in {"inch", "foot"}):
        return None
    if (
        at == index
        and index
        and (numeral(words, index - 1) or words[index - 1] in {"a", "an", "square", "cubic", "per", "the", "each"})
    ):
        return None
    made = Quantity(index, at + 1, Decimal(1), ONE_OF[words[at]], "quantity")
    more = _halved(words, made)
    if more is not made:
        return more
    if at == index or words[at + 1 : at + 2] in (["and"], ["per"], ["by"], ["path"]):
        return None
    if words[at + 1 : at + 3] in (["of"], ["of", "the"], ["of", "my"], ["of", "it"], ["of", "each"]):
        return None
    if index and words[index - 1] in {"per", "half", "quarter", "of", "minute", "second"}:
        return None
    return made


def _halved(words: Sequence[str], made: Quantity) -> Quantity:
    """*made* with a part said after its unit: "an inch and a quarter", "two feet and a half"."""
    if words[made.end : made.end + 1] != ["and"] or made.end + 1 >= len(words) or made.unit is None:
        return made
    part = numeral(words, made.end + 1)
    if (
        part is None
        or part.form != "fraction"
        or part.end == made.end + 2
        or unit_after(words, part.end, form="fraction")
    ):
        return made
    return replace(made, end=part.end, value=made.value + part.value)


#: Words before a height that is said as two numbers.
_TALL = frozenset({"at", "is", "only", "about", "headroom", "height", "was", "barely", "around", "'s", "just"})


def _height(words: Sequence[str], index: int) -> Quantity | None:
    """Feet and inches without their names at the end of a statement: "beam at six four"."""
    if not index or words[index - 1] not in _TALL or index + 2 != len(words):
        return None
    feet, inches = numeral([words[index]], 0), numeral([words[index + 1]], 0)
    if feet is None or inches is None or not 4 <= feet.value <= 9 or not 0 < inches.value < 12:  # noqa: PLR2004 - a room
        return None
    if inches.form == "fraction" or feet.form == "fraction":
        return None
    return Quantity(index, index + 2, feet.value * 12 + inches.value, "[in_i]", "quantity")


def _dated(words: Sequence[str], index: int) -> Quantity | None:
    """A year after its month in numbers: "oh eight twenty fifteen", "march of oh six" is left to what asks for it."""
    if words[index] not in {"oh", "o", "zero"} or index + 2 >= len(words):
        return None
    month = numeral([words[index + 1]], 0)
    year = numeral(words, index + 2)
    if month is None or not 1 <= month.value <= 9 or year is None or year.form != "year":  # noqa: PLR2004 - months with a nought
        return None
    return Quantity(index, year.end, year.value, None, "year")


#: Rises in twelve that roofs have; "six twelve" is one of them, not six hundred and twelve.
_STEEPEST = 18
_ROOFS = frozenset({"pitch", "slope", "roof", "a", "pitched", "about", "is"})


def _pitch(words: Sequence[str], index: int) -> Quantity | None:
    """A roof slope: "six twelve", "six in twelve", "6/12". Inches of rise in a foot."""
    if words[index].endswith("/12") and words[index][:-3].isdecimal() and 0 < int(words[index][:-3]) <= _STEEPEST:
        return Quantity(index, index + 1, Decimal(words[index][:-3]), "[in_i]/[ft_i]", "quantity")
    rise = numeral([words[index]], 0)
    if rise is None or not 0 < rise.value <= _STEEPEST or rise.value != int(rise.value):
        return None
    joint = words[index + 1 : index + 2]
    at = index + 2 if joint in (["in"], ["and"], ["over"], ["on"]) else index + 1
    if words[at : at + 1] not in (["twelve"], ["12"]) or words[at + 1 : at + 2] in (["by"], ["hundred"], ["thousand"]):
        return None
    if joint in (["and"], ["on"]) and not _ROOFS & {*words[max(0, index - 2) : index], *words[at + 1 : at + 2]}:
        return None  # "number six and twelve are doubled"
    if joint not in (["in"], ["over"]) and at + 1 < len(words) and unit_after(words, at + 1, form="cardinal"):
        return None
    if index and words[index - 1] in {"by", "x", "the", "number"} and joint != ["in"]:
        return None
    return Quantity(index, at + 1, rise.value, "[in_i]/[ft_i]", "quantity")


#: What may follow feet and inches of which only the feet are named: "six foot ten clear", "six feet one under the beam".
_AFTER_HEIGHT = frozenset({"and", "high", "tall", "wide", "long", "deep", "clear", "under", "at", "to", "from", "above", "below", "off",
                           "here", "there", "so", "over", "across", "between", "up", "where", "right"})  # fmt: skip


def _feet_and_inches(words: Sequence[str], feet: Quantity) -> Quantity:
    if feet.unit != "[ft_i]" or feet.end >= len(words):
        return feet
    at = feet.end + 1 if words[feet.end] == "and" and feet.end + 1 < len(words) else feet.end
    inches = numeral(words, at)
    if inches is None or not 0 <= inches.value < 12 or inches.form in {"year", "lot"}:  # noqa: PLR2004 - inches in a foot
        return feet
    unit = unit_after(words, inches.end, form=inches.form)
    whole = inches.form in {"cardinal", "digits"} and inches.value == int(inches.value)
    if unit is None and at == feet.end and whole and (inches.end == len(words) or words[inches.end] in _AFTER_HEIGHT):
        return Quantity(feet.start, inches.end, feet.value * 12 + inches.value, "[in_i]", "quantity")  # "six foot ten"
    if unit and unit[1] == "[in_i]":
        return Quantity(feet.start, unit[0], feet.value * 12 + inches.value, "[in_i]", "quantity")
    return feet


def _other_of_pair(words: Sequence[str], at: int) -> Quantity | None:
    if at < len(words) and words[at] in _LUMBER:
        return Quantity(at, at + 1, Decimal(_LUMBER[words[at]]), None, "bare")
    if at >= len(words):
        return None
    other = _one(words, at)
    if other and (
        other.value >= _LUMBER_TO or other.unit == "[in_i]/[ft_i]" or (other.unit and other.end > other.start + _PLAIN)
    ):
        # "two by six sixteen on center": the second number is the first word alone
        alone = _one([*words[: at + 1]], at)
        centred = words[other.end - 2 : other.end] == ["on", "center"] and other.end - other.start > 3  # noqa: PLR2004
        return alone if other.value >= _LUMBER_TO or other.unit == "[in_i]/[ft_i]" or centred else other
    return other


def _out_of(words: Sequence[str], first: Quantity) -> Quantity | None:
    """So many out of so many: "two out of six", "one tube out of six"."""
    if first.form != "bare" or first.value != int(first.value):
        return None
    for at in (first.end, first.end + 1):
        if words[at : at + 2] == ["out", "of"] and at + 2 < len(words):
            skip = at + 3 if words[at + 2] in {"the", "all"} else at + 2
            whole = _one(words, skip) if skip < len(words) else None
            if whole is not None and whole.form == "bare" and whole.value >= first.value:
                end = whole.end if at == first.end else first.end
                return replace(first, end=end, form="count", second=whole.value)
    return None


def _extended(words: Sequence[str], first: Quantity) -> Quantity:
    """*first* with what makes it a range, a pair or a count."""
    end = first.end
    if end + 1 >= len(words):
        return first
    joint, after = words[end], words[end + 1]
    whole = _out_of(words, first)
    if whole is not None:
        return whole
    if joint == "of" and first.form in {"bare", "quantity"} and first.unit is None:
        at = end + 2 if after in {"the", "these", "those", "them", "my"} and end + 2 < len(words) else end + 1
        whole = _one(words, at) if at < len(words) else None
        if whole and whole.form == "bare" and whole.value >= first.value and first.value == int(first.value):
            return replace(first, end=whole.end, form="count", second=whole.value)
        if after in {"the", "them", "these", "those", "my", "our", "em", "us"} and first.value == int(first.value):
            return replace(first, end=end + 1, form="count")
    if joint in {"by", "x"} and first.form in {"bare", "quantity"}:
        other = _other_of_pair(words, end + 1)
        if other and other.form in {"bare", "quantity"}:
            made = replace(first, end=other.end, form="pair", second=other.value, unit=other.unit or first.unit)
            third = _other_of_pair(words, made.end + 1) if words[made.end : made.end + 1] in (["by"], ["x"]) else None
            if third and third.form in {"bare", "quantity"}:
                made = replace(made, end=third.end, third=third.value, unit=third.unit or made.unit)
            return made
    return _ranged(words, first)


def _ranged(words: Sequence[str], first: Quantity) -> Quantity:
    end = first.end
    joint = words[end]
    between = joint == "and" and first.start > 0 and words[first.start - 1] == "between"
    if joint not in {"to", "or"} and not between:
        return first
    other = _one(words, end + 1)
    if other is None or other.value <= first.value or other.form not in {"quantity", "bare"}:
        return first
    if other.form == "quantity":
        same = first.unit in {None, other.unit}
        return replace(first, end=other.end, unit=other.unit, form="quantity", high=other.value) if same else first
    if first.form != "bare" and first.unit is not None and joint == "or":
        return first
    if joint == "or" and other.value > first.value + max(Decimal(2), first.value / 4):
        return first
    return replace(first, end=other.end, high=other.value)


def _corrected(words: Sequence[str], first: Quantity) -> Quantity:
    """The number that replaces *first*, when it is taken back at once (``two, no, three``)."""
    for taken_back in _RETRACTIONS:
        at = first.end + len(taken_back)
        if tuple(words[first.end : at]) != taken_back or at >= len(words):
            continue
        skip = at
        while skip + 1 < len(words) and words[skip] in {"it", "is", "about", "like", "make", "that"}:
            skip += 1
        other = _one(words, skip)
        if other:
            other = _corrected(words, _extended(words, other))
            if (
                other.unit
                and first.unit
                and other.unit != first.unit
                and taken_back in {("no",), ("wait",), ("sorry",)}
            ):
                return first
            unit = other.unit or first.unit
            form = "quantity" if other.form == "bare" and unit else other.form
            return replace(other, start=first.start, unit=unit, form=form, retracted=(first.start, first.end))
    return first


def _about(words: Sequence[str], one: Quantity) -> bool:
    at = one.start - 1
    if at >= 0 and words[at] in _THEN and at:
        at -= 1
    rough = (
        at >= 0
        and words[at] in _ABOUT
        and not (
            words[at] in {"right", "under", "over", "above", "below", "some"}
            and at != one.start - 1
            and words[at] != "right"
        )
    )
    return one.about or rough or any(tuple(words[one.end : one.end + len(s)]) == s for s in _ABOUT_AFTER)


def quantities(words: Sequence[str], start: int = 0, end: int | None = None) -> list[Quantity]:
    """Every quantity in the words from *start* to *end*, in order, none overlapping another."""
    run = list(words[: len(words) if end is None else end])
    found: list[Quantity] = []
    index = start
    while index < len(run):
        one = _one(run, index) if may_begin(run[index]) else None
        if one is None:
            index += 1
            continue
        one = _corrected(run, _extended(run, one))
        if not _is_word(run, one):
            found.append(replace(one, about=_about(run, one)))
        index = max(one.end, index + 1)
    return found


def _is_word(words: Sequence[str], one: Quantity) -> bool:
    """Whether the number is only a word of the sentence: ``this one``, ``one of these``, ``half missing``."""
    if one.form != "bare":
        return one.form == "quantity" and one.unit in _TIMES and words[one.start] == "a"
    if one.end == one.start + 1 and words[one.start] in {"couple", "pair", "dozen"}:
        return True  # a bare word without its number
    if words[one.start] == "one" and one.end == one.start + 1:
        before = words[one.start - 1] if one.start else ""
        after = words[one.end] if one.end < len(words) else ""
        if numeral(words, one.end) if after else False:
            return True  # "one 30 amp breaker"
        return before in {"this", "that", "other", "the", "an", "another", "which", "every", "each", "no", "any", "last",
                          "first", "next", "old", "new", "top", "bottom", "lower", "upper", "left", "right"} or after in {
                              "is", "has", "does", "was", "of", "that", ""}  # fmt: skip
    return words[one.start] in {"half", "quarter", "hundred"} and one.end == one.start + 1
