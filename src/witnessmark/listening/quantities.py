"""Which quantities stand in these words? Numbers with units, ranges, pairs (two by six), counts (two of the six)."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from decimal import Decimal

from witnessmark.listening.numerals import may_begin, numeral
from witnessmark.listening.said_units import unit_after
from witnessmark.listening.spoken_forms import (
    RATINGS,
    Quantity,
    and_seconds,
    feet_and_inches,
    halved,
    own_form,
    per_time,
    rated,
)

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
    ("make", "it"), ("no", "make", "it"), ("no", "hang", "on"), ("no", "hold", "on"), ("hang", "on"), ("hold", "on"), ("wait", "a", "minute"),
)  # fmt: skip


#: Sizes of lumber are said with numbers below this.
_LUMBER_TO = 100
#: Words of a plain size with its unit.
_PLAIN = 2
#: Lumber by its second number alone: "two by sixes".
_LUMBER = {"fours": 4, "sixes": 6, "eights": 8, "tens": 10, "twelves": 12}


def _one(words: Sequence[str], index: int) -> Quantity | None:
    whole = own_form(words, index)
    if whole:
        return whole
    read = numeral(words, index)
    if read is None:
        return None
    rate = per_time(words, read)
    if rate:
        return Quantity(index, rate[0], read.value, rate[1], "quantity")
    unit = unit_after(words, read.end, form=read.form)
    if unit and unit[1] == "min":
        timed = and_seconds(words, index, read.value, unit[0])
        if timed is not None:
            return timed
    counted = rated(words, index, read, unit)
    if counted is not None:
        return counted
    if unit:
        made = Quantity(index, unit[0], read.value, unit[1], "quantity", about=read.form == "lot")
        return halved(words, feet_and_inches(words, made))
    if tuple(words[read.end : read.end + 2]) in {("on", "center"), ("on", "centers"), ("o", "c"), ("on", "centre")}:
        return Quantity(index, read.end + 2, read.value, "[in_i]", "quantity")
    return Quantity(
        index, read.end, read.value, None, "year" if read.form == "year" else "bare", about=read.form == "lot"
    )


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
        # "in a minute"; "a minute and a half" is a time
        return (
            one.form == "quantity" and one.unit in _TIMES and words[one.start] == "a" and one.end <= one.start + _PLAIN
        )
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
