"""The statements of a narration, each with what it names: from lines to what the rules look at."""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import TypeVar

from witnessmark.listening.boundaries import Around, model_cuts
from witnessmark.listening.clauses import Clause, clauses, with_cuts
from witnessmark.listening.focus import Scene
from witnessmark.listening.holding import held
from witnessmark.listening.lexicon import Lexicon
from witnessmark.listening.naming import Named, Plate, Value, names, plates
from witnessmark.listening.narration import Line
from witnessmark.listening.quantities import quantities
from witnessmark.listening.repair import repaired
from witnessmark.listening.statement import Statement
from witnessmark.listening.syntax import Mark
from witnessmark.listening.unparted import unparted
from witnessmark.listening.words import Token, Word, pace, tokens, words

__all__ = ["Spoken", "rule_cuts", "spoken", "statement"]

Row = TypeVar("Row", Named, Value, Plate)


@dataclass(frozen=True, slots=True)
class Spoken:
    """A narration as words: as recognised, as compared after repair, what they name, and its statements."""

    words: Sequence[Word]
    tokens: Sequence[Token]
    components: tuple[Named, ...]
    values: tuple[Value, ...]
    plates: tuple[Plate, ...]
    instruments: tuple[tuple[int, int], ...]
    clauses: Sequence[Clause]


def _repaired(raw: list[Token], lexicon: Lexicon) -> tuple[list[Token], list[Plate]]:
    """The tokens repaired, what is spelled out left as it is."""
    made: list[Token] = []
    kept: list[Plate] = []
    at = 0
    for plate in plates(raw):
        made += repaired(raw[at : plate.start], lexicon)
        kept.append(replace(plate, start=len(made), end=len(made) + plate.end - plate.start))
        made += raw[plate.start : plate.end]
        at = plate.end
    made += repaired(raw[at:], lexicon)
    return made, kept


def spoken(lines: Sequence[Line], lexicon: Lexicon) -> Spoken:
    """The words of the lines with everything found in them."""
    said = words(lines)
    made, numbers = _repaired(tokens(said), lexicon)
    named = names(made, lexicon, numbers)
    ruled = clauses(made, named.marks)
    cut = unparted(with_cuts(ruled, model_cuts(_around(lines, said, made, named.marks, ruled))), made)
    return Spoken(
        said, made, named.components, named.values, named.plates, named.instruments,
        held(cut, made, named.marks, _operable(named.components, lexicon)),
    )  # fmt: skip


def _operable(components: Sequence[Named], lexicon: Lexicon) -> frozenset[int]:
    """Where names of things that are operated begin."""
    kinds = lexicon.packs.kinds
    return frozenset(named.start for named in components if any(kinds[m.kind].operated for m in named.meanings))


def _around(
    lines: Sequence[Line], said: Sequence[Word], made: Sequence[Token], marks: Sequence[Mark], ruled: Sequence[Clause]
) -> Around:
    rules = {clause.start for clause in ruled}
    return Around(made, marks, rules, [said[token.first].line for token in made], pace(lines))


def rule_cuts(lines: Sequence[Line], lexicon: Lexicon) -> Around:
    """The lines as the model of boundaries looks at them, with the cuts of the rules."""
    said = words(lines)
    made, numbers = _repaired(tokens(said), lexicon)
    marks = names(made, lexicon, numbers).marks
    return _around(lines, said, made, marks, clauses(made, marks))


def _within(rows: tuple[Row, ...], start: int, end: int) -> list[Row]:
    """The rows from *start* to *end*, counted from *start*."""
    first = bisect_left(rows, start, key=lambda row: row.start)
    last = bisect_left(rows, end, key=lambda row: row.start)
    return [replace(r, start=r.start - start, end=r.end - start) for r in rows[first:last] if r.end <= end]


def statement(said: Spoken, clause: Clause, scene: Scene) -> Statement:
    """One statement of a narration."""
    start, end = clause.start, clause.end
    run = said.tokens[start:end]
    numbers = _within(said.plates, start, end)
    taken = {i for p in numbers for i in range(p.start, p.end)}
    first = bisect_left(said.instruments, (start, start))
    last = bisect_left(said.instruments, (end, end))
    return Statement(
        tokens=run,
        words=said.words,
        scene=scene,
        components=_within(said.components, start, end),
        values=_within(said.values, start, end),
        plates=numbers,
        quantities=quantities(["" if i in taken else t.norm for i, t in enumerate(run)]),
        instruments=[(a - start, b - start) for a, b in said.instruments[first:last] if b <= end],
        fresh=start > 0 and said.tokens[start - 1].hard,
    )
