"""What do the words name? Components, values, instruments, spelled plates, over the whole narration at once."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

from witnessmark.listening.clauses import Mark
from witnessmark.listening.grammar import GRAMMAR
from witnessmark.listening.lexicon import Lexicon, Meaning
from witnessmark.listening.numerals import may_begin, numeral
from witnessmark.listening.places import places_in
from witnessmark.listening.plates import spelled
from witnessmark.listening.quantities import quantities
from witnessmark.listening.terms import cues, members
from witnessmark.listening.words import Token

__all__ = ["Named", "Names", "Plate", "Value", "is_verb_here", "names"]


@dataclass(frozen=True, slots=True)
class Named:
    """A component named in tokens *start* to *end*, with all it may mean."""

    start: int
    end: int
    meanings: tuple[Meaning, ...]


@dataclass(frozen=True, slots=True)
class Value:
    """A value of an attribute named in tokens *start* to *end*: (attribute id, value id) pairs it may mean."""

    start: int
    end: int
    meanings: tuple[tuple[str, str], ...]


@dataclass(frozen=True, slots=True)
class Plate:
    """A model or serial number: the cue begins at *start*, the number ends at *end*."""

    start: int
    end: int
    attribute: str
    text: str


@dataclass(frozen=True, slots=True)
class Names:
    """Everything named, each list in the order of the words. ``marks`` are what the clause rules look at."""

    components: tuple[Named, ...]
    values: tuple[Value, ...]
    plates: tuple[Plate, ...]
    instruments: tuple[tuple[int, int], ...]
    marks: tuple[Mark, ...]


def _plates(norms: Sequence[str], hard: Sequence[bool]) -> list[Plate]:
    found: list[Plate] = []
    taken = 0
    cue_rows = sorted(
        (a, b, attribute)
        for attribute in ("model", "serial")
        for a, b, _ in cues("identities", attribute).find(norms)
    )  # fmt: skip
    for start, end, attribute in cue_rows:
        if start < taken:
            continue
        number = spelled(norms, end, hard)
        if number:
            found.append(Plate(start, number[1], attribute, number[2]))
            taken = number[1]
    return found


def is_verb_here(norms: Sequence[str], start: int, end: int) -> bool:
    """Whether a one-word name is what something does here ("it vents outside", "will not reset")."""
    if end - start > 1:
        return False
    word, before = norms[start], norms[start - 1] if start else ""
    if norms[end : end + 1] in (["it"], ["them"]) and word in GRAMMAR.taking:
        return True  # "reset it"
    if not start:
        return False
    if before in {"i", "we", "you"}:
        return True
    if before in {"it", "they", "not", "to", "will", "would", "could", "can", "just", "which"}:
        return word in GRAMMAR.verbs | GRAMMAR.plural | GRAMMAR.taking or before == "not"
    if before in {"is", "are", "'s", "was"} and word in GRAMMAR.taking:
        return True  # "the GFCI is reset"
    joined = before == "and" and start > 1 and norms[start - 2] in GRAMMAR.verbs
    return joined and word in GRAMMAR.verbs


#: Words with which the names of measures begin that say their unit.
_OF_UNITS = frozenset(
    {"degree", "degrees", "percent", "gallon", "gallons", "amp", "amps", "volt", "volts", "btu", "ton", "tons"}
)


#: Units of length, and no unit; words that say which length it is: "thirty four high" holds together.
_LENGTHS = frozenset({None, "[in_i]", "[ft_i]"})
_HOW = frozenset({"high", "wide", "deep", "tall", "thick", "long", "apart", "across"})
#: Words within which the number of an instrument stands.
_SHOWN_WITHIN = 6


def _measures(norms: Sequence[str], start: int, end: int) -> bool:
    """Whether a name such as "meter" is what a reading is taken with here."""
    after = norms[end] if end < len(norms) else ""
    before = norms[max(0, start - 3) : start]
    if after and after in {
        "pegs",
        "pegged",
        "jumps",
        "jumped",
        "at",
        "is",
        "'s",
        "was",
        "got",
        "goes",
        "went",
        "gives",
        "to",
        "still",
    }:
        number_word = next(
            (
                w
                for w in norms[end + 1 : end + 4]
                if w not in {"at", "to", "right", "all", "the", "way", "about", "still", "only"}
            ),
            "",
        )
        return may_begin(number_word) and number_word not in {"a", "an"}
    number = numeral(norms, end) if after else None
    if number is not None and may_begin(after) and after not in {"a", "an", "one"}:
        return not norms[number.end : number.end + 1] or not norms[number.end].endswith(
            "s"
        )  # "meter thirty", not "meter two feet …"
    shown = "percent" in norms[end : end + _SHOWN_WITHIN]
    return (
        after in {"says", "reads", "said", "shows", "showed", "read", "on"}
        or bool({"with", "put", "my"} & set(before))
        or shown
    )


#: Longest first, then by rank: minus its length, rank, start, sort, end, meanings.
_Row = tuple[int, int, int, str, int, tuple[Any, ...]]


def _rows(run: Sequence[Token], norms: list[str], lexicon: Lexicon) -> list[_Row]:
    """Everything that could be named in one run of words."""
    stems = [t.stem for t in run]
    rows: list[_Row] = []
    rows += [(-(b - a), 1, a, "component", b, m) for a, b, m in lexicon.components.find(stems)]
    rows += [
        (-(b - a), 0 if _measures(norms, a, b) else 2, a, "instrument", b, ())
        for a, b, _ in cues("clauses", "instruments").find(norms)
    ]  # fmt: skip
    rows += [
        (-(b - a), 0 if norms[b : b + 1] in (["next"], ["now"]) else 3, a, "place", b, ())
        for a, b, _ in places_in(norms, stems, lexicon)
    ]  # fmt: skip
    judging = {a: b for t in ("sound", "adverse") for a, b, _ in cues("conditions", t).find(norms)}
    good = members("conditions", "sound")
    rows += [
        (-(b - a), 2, a, "value", b, m)
        for a, b, m in lexicon.values.find(stems)
        if judging.get(a) != b and norms[b - 1] not in good
    ]  # fmt: skip
    for table, rank in (("adverse", -1), ("sound", -1), ("not_adverse", 4)):
        rows += [
            (-(b - a), rank, a, "condition", b, ()) for a, b, _ in cues("conditions", table).find(norms) if b - a > 1
        ]
    for table in ("manners",):  # "six inch single wall" names no wall
        rows += [(-(b - a), 4, a, "condition", b, ()) for a, b, _ in cues("identities", table).find(norms) if b - a > 1]
    # "a fifty degree rise" names no stair riser
    rows += [
        (-(b - a), -1, a, "condition", b, ())
        for a, b, _ in lexicon.measures.find(stems)
        if b - a > 1 and norms[a] in _OF_UNITS
    ]
    return rows


def names(tokens: Sequence[Token], lexicon: Lexicon, plates: Sequence[Plate] = ()) -> Names:
    """What the tokens name. Where names overlap the longer holds, and a component before a value.

    A phrase for what is wrong or right, of two words or more, holds against a shorter name inside it: in "open ground"
    nothing is called ground.
    """
    rows: list[_Row] = []
    number_rows: list[tuple[int, int]] = []
    begin = 0
    for index, token in enumerate(tokens):
        if not token.hard and index + 1 < len(tokens):
            continue
        run = tokens[begin : index + 1]  # nothing is named across a full stop
        norms = [t.norm for t in run]
        rows += [
            (size, rank, a + begin, sort, b + begin, m) for size, rank, a, sort, b, m in _rows(run, norms, lexicon)
        ]
        number_rows += [
            (q.start + begin, q.end + begin + how)
            for q in quantities(norms)
            for how in [int(q.unit in _LENGTHS and norms[q.end : q.end + 1] != [] and norms[q.end] in _HOW)]
            if q.form in {"quantity", "pair"} or q.end - q.start > 1 or how
        ]
        begin = index + 1
    norms = [t.norm for t in tokens]
    taken = {i for p in plates for i in range(p.start, p.end)}
    components: list[Named] = []
    values: list[Value] = []
    instruments: list[tuple[int, int]] = []
    others: list[Mark] = []
    for _, _, start, sort, end, meanings in sorted(rows, key=lambda row: row[:3]):
        span = range(start, end)
        if not taken.isdisjoint(span) or (sort == "component" and is_verb_here(norms, start, end)):
            continue
        taken.update(span)
        if sort == "component":
            components.append(Named(start, end, meanings))
        elif sort == "value":
            values.append(Value(start, end, meanings))
        elif sort == "instrument":
            instruments.append((start, end))
        else:
            others.append(Mark(start, end, sort))
    components.sort(key=lambda row: row.start)
    values.sort(key=lambda row: row.start)
    marks = [
        Mark(c.start, c.end, "component", weak=all(m.part is not None or m.short for m in c.meanings)) for c in components
    ] + others  # fmt: skip
    marks += [Mark(v.start, v.end, "value") for v in values]
    marks += [Mark(a, b, "component") for a, b in instruments]
    marks += [Mark(p.start, p.end, "plate") for p in plates]
    used = {i for m in marks for i in range(m.start, m.end)}
    # a number whose unit is part of a name ("two hundred amp main") still holds together
    marks += [Mark(a, b, "quantity") for a, b in number_rows if a not in used]
    return Names(
        tuple(components), tuple(values), tuple(plates), tuple(sorted(instruments)),
        tuple(sorted(marks, key=lambda m: m.start)),
    )  # fmt: skip


def plates(tokens: Sequence[Token]) -> list[Plate]:
    """The model and serial numbers that are spelled out. Looked for before anything is repaired."""
    return _plates([t.norm for t in tokens], [t.hard for t in tokens])
