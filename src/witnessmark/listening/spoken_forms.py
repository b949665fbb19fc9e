"""Which quantities are said in a form of their own? Slopes, heights, R-values, "an inch and a quarter", counting aloud."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass, replace
from decimal import Decimal

from witnessmark.gauges.electrical.calculating.ampacity_tables import STANDARD_RATINGS
from witnessmark.listening.numerals import Numeral, numeral
from witnessmark.listening.said_units import ONE_OF, unit_after

__all__ = ["RATINGS", "Quantity", "and_seconds", "feet_and_inches", "halved", "own_form", "per_time", "rated"]


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


#: "2x6", "16x25x1", as written.
_PAIR = re.compile(r"^(\d{1,3})x(\d{1,3})(?:x(\d{1,2}))?$")
#: Standard ratings of breakers and fuses in a house, A.
RATINGS = frozenset(rating for rating in STANDARD_RATINGS if rating <= 400)  # noqa: PLR2004 - larger ones stand in no house
#: A thermal resistance said after its letter: "r thirteen".
_R_VALUE = "[sft_i].[degF].h/[Btu_IT]"
_R_TO = 100
_TO_R = frozenset(
    {"of", "is", "was", "about", "around", "at", "a", "an", "on", "it", "them", "these", "says", "'s", "maybe", "r"}
)


def own_form(words: Sequence[str], index: int) -> Quantity | None:
    """The quantity in a form of its own that begins at *index*, or None."""
    return (
        _aloud(words, index)
        or _written_pair(words, index)
        or _pitch(words, index)
        or _thermal(words, index)
        or _single(words, index)
        or _dated(words, index)
        or _height(words, index)
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


def per_time(words: Sequence[str], read: Numeral) -> tuple[int, str] | None:
    """Gallons, where only the minute is said: "seven and a half a minute"."""
    after = tuple(words[read.end : read.end + 2])
    return (read.end + 2, "[gal_us]/min") if read.value >= 1 and after in {("a", "minute"), ("per", "minute")} else None


#: Ratings of service equipment above those of breakers in a house: no count is meant.
_LARGE = frozenset({450, 500, 600, 700, 800, 1000, 1200})
#: Years; older houses are told by the year they were built.
_OLDEST = 200


def rated(words: Sequence[str], index: int, read: Numeral, unit: tuple[int, str] | None) -> Quantity | None:
    """The count before a rating: "two twenty amp breakers" are two, "one thirty amp" is one; no breaker has 220 A."""
    if unit is not None and unit[1] == "a" and read.value >= _OLDEST and read.end - index > 1:
        count = numeral([words[index]], 0)  # "two | fifteen years": nothing in a house is 215 years old
        return None if count is None else Quantity(index, index + 1, count.value, None, "bare")
    if unit is None or unit[1] != "A" or read.end - index < 2 or read.value in RATINGS or read.value in _LARGE:  # noqa: PLR2004 - as the table goes
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


def and_seconds(words: Sequence[str], start: int, minutes: Decimal, at: int) -> Quantity | None:
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
        return and_seconds(words, index, Decimal(1), index + 2)
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
    more = halved(words, made)
    if more is not made:
        return more
    if at == index or words[at + 1 : at + 2] in (["and"], ["per"], ["by"], ["path"]):
        return None
    if words[at + 1 : at + 3] in (["of"], ["of", "the"], ["of", "my"], ["of", "it"], ["of", "each"]):
        return None
    if index and words[index - 1] in {"per", "half", "quarter", "of", "minute", "second"}:
        return None
    return made


def halved(words: Sequence[str], made: Quantity) -> Quantity:
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
    joint_word = joint in (["in"], ["and"], ["over"], ["on"])
    at = index + 2 if joint_word else index + 1
    if words[at : at + 1] not in (["twelve"], ["12"]) or words[at + 1 : at + 2] in (["by"], ["hundred"], ["thousand"]):
        return None
    if (
        rise.value == 1
        and not joint_word
        and not {"pitch", "slope", "roof"} & {*words[max(0, index - 3) : index], *words[at + 1 : at + 2]}
    ):
        return None  # "supply one twelve"
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


def feet_and_inches(words: Sequence[str], feet: Quantity) -> Quantity:
    """*feet* with the inches that follow, in inches: "six foot four inches", "six foot ten", "six feet one under the beam"."""
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
