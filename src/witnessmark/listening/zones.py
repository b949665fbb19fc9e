"""Does one statement judge two things? Where nobody parted them, each is judged by its own words."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from itertools import pairwise
from typing import TypeVar

from witnessmark.listening.grammar import GRAMMAR
from witnessmark.listening.naming import Named, Plate, Value
from witnessmark.listening.polarity import Sense
from witnessmark.listening.quantities import Quantity
from witnessmark.listening.statement import Statement
from witnessmark.listening.subjects import about
from witnessmark.listening.terms import cues, members

__all__ = ["sliced", "zones"]

#: Words from a name to what is said of it.
_NEAR = 6
_SEEN = (
    ["that", "i", "can", "see"],
    ["as", "i", "can", "see"],
    ["that", "i", "could", "see"],
    ["that", "we", "can", "see"],
)

Row = TypeVar("Row", Named, Value, Plate, Quantity)


def zones(st: Statement, found: Sequence[Sense], triggers: Sequence[tuple[int, int, bool]] = ()) -> list[Statement]:
    """The statement, or the parts of it that judge different things, in order. *triggers* are its denials."""
    cuts = [at for at in (_cut(st, named, found) for named, _ in st.mentions) if at is not None]
    cuts += [
        i for i, w in enumerate(st.norms) if w == "but" and len({s.adverse for s in found}) > 1
        and any(s.end <= i for s in found) and any(s.start > i for s in found)
    ]  # fmt: skip
    cuts += _turns(st, found, triggers)
    if not cuts:
        return [st]
    edges = [0, *sorted(set(cuts)), len(st.norms)]
    parts = [sliced(st, a, b) for a, b in pairwise(edges)]
    for part in parts:
        about(part)
    for part in parts[1:]:
        if not part.named and st.subject is not None:
            part.thing = st.thing
    parts[0].thing, parts[0].place = st.thing if st.subject and st.subject.end <= edges[1] else parts[0].thing, st.place
    return parts


#: What may stand between what is granted and what is not.
_JOINED = frozenset({"and", "but", "with", "except", "though", "just", "only", "otherwise", "then", "also"})
_PREDICATING = frozenset(
    {
        "is",
        "are",
        "'s",
        "looks",
        "look",
        "seems",
        "feels",
        "felt",
        "looked",
        "all",
        "pretty",
        "real",
        "really",
        "still",
        "very",
    }
)


def _turns(st: Statement, found: Sequence[Sense], triggers: Sequence[tuple[int, int, bool]]) -> list[int]:
    """Where a statement turns from what is right to what is wrong, or back: "paint's good | a couple of nail pops".

    The first must be said of something ("is good", "runs fine"), not belong to the noun after it ("a good crack").
    """
    cuts: list[int] = []
    for one, other in pairwise(found):
        if (
            one.adverse == other.adverse
            or other.start < one.end
            or other.text.startswith(("like", "as it", "as they", "the way"))
        ):
            continue  # "sounds hollow like it ought to"
        begin = other.start
        for start, end, _ in triggers:
            if one.end <= start < begin and other.denied and begin - end <= _NEAR:
                begin = start
        inner = (
            members("clauses", "determiners")
            | members("clauses", "adjectives")
            | members("clauses", "quantifiers")
            | {"of", "few"}
        )
        while begin > one.end and st.norms[begin - 1] in inner:
            begin -= 1
        between = st.norms[one.end : begin]
        before = st.norms[one.start - 1] if one.start else ""
        said = before in _PREDICATING or one.start in {n.end for n, _ in st.mentions} or one.end - one.start > 1
        attached = (
            begin == other.start == one.end
            and other.end - other.start == 1
            and not st.norms[begin].endswith(("s", "ed", "ing"))
        )
        if said and not attached and set(between) <= _JOINED:
            cuts.append(begin)
    return cuts


def _cut(st: Statement, named: Named, found: Sequence[Sense]) -> int | None:
    """Where what is said of *named* begins, when it is a subject of its own after something else."""
    left = named.start
    inner = members("clauses", "determiners") | members("clauses", "adjectives")
    while left > 0 and st.norms[left - 1] in inner and left - 1 not in st.masked:
        left -= 1
    counts = next((q for q in st.quantities if q.end == left and q.unit is None and q.form == "bare"), None)
    left = counts.start if counts is not None else left  # "and two tiles are hollow"
    if left <= st.opening() + 1 or (left == named.start and left - 1 in st.masked):
        return None
    before = st.norms[left - 1]
    if st.norms[left - 4 : left] not in _SEEN and (
        before in members("clauses", "prepositions") - GRAMMAR.particles
        or before
        in GRAMMAR.subordinators | GRAMMAR.conditionals | GRAMMAR.taking | GRAMMAR.copulas | GRAMMAR.determiners
        or before
        in GRAMMAR.particles | GRAMMAR.knowing | {"not", "to", "no", "than", "or", "reason", "way", "any", "i"}
    ):
        return None
    said = next((s for s in found if named.end <= s.start <= named.end + _NEAR), None)
    if said is None or not _predicated(st, named, said):
        return None
    earlier = any(s.end <= left for s in found) or any(n.end <= left for n, _ in st.mentions)
    return (left - 1 if before in {"and", "but"} else left) if earlier else None


def _predicated(st: Statement, named: Named, said: Sense) -> bool:
    """Whether what is said follows a verb of the name's, or is one."""
    between = st.norms[named.end : said.start]
    if set(between) & GRAMMAR.aux or cues("clauses", "conjunctions").first(between):
        return bool(set(between) & GRAMMAR.aux)
    word = st.norms[said.start]
    return (
        word in GRAMMAR.aux
        or (not between and word.endswith(("ed", "ing")))
        or word in members("clauses", "verbs") | _THIRD
    )


_THIRD = frozenset({"sticks", "rubs", "binds", "drags", "wobbles", "rattles", "chirps", "sags", "leans", "leaks", "drips", "squeaks",
                    "flickers", "buzzes", "hums", "rocks", "bows", "gurgles", "smells", "bounces", "latches", "works"})  # fmt: skip


def _moved(rows: Sequence[Row], start: int, end: int) -> list[Row]:
    return [replace(r, start=r.start - start, end=r.end - start) for r in rows if start <= r.start and r.end <= end]


def sliced(st: Statement, start: int, end: int) -> Statement:
    """The statement from one position to another; what it is about is not settled."""
    return Statement(
        tokens=st.tokens[start:end],
        words=st.words,
        scene=st.scene,
        components=_moved(st.components, start, end),
        values=_moved(st.values, start, end),
        plates=_moved(st.plates, start, end),
        quantities=_moved(st.quantities, start, end),
        instruments=[(a - start, b - start) for a, b in st.instruments if start <= a and b <= end],
        operated=tuple(i - start for i in st.operated if start <= i < end),
        fresh=st.fresh if start == 0 else False,
    )
