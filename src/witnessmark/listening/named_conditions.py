"""Which condition of the packs does a statement name?"""

from __future__ import annotations

from collections.abc import Set as AbstractSet
from dataclasses import dataclass
from functools import lru_cache
from types import MappingProxyType

from witnessmark.listening.denial import Denial
from witnessmark.listening.focus import Thing
from witnessmark.listening.lexicon import Lexicon, Said, letters_joined
from witnessmark.listening.statement import Statement
from witnessmark.listening.terms import cues, members
from witnessmark.listening.words import phrase, root
from witnessmark.packs.model import Condition

__all__ = ["adverse_condition"]


@dataclass(frozen=True, slots=True)
class _Match:
    condition: Condition
    weight: float


@dataclass(frozen=True, slots=True)
class _Form:
    """A spoken form: the roots of its words, and which of them it denies or says to be missing."""

    roots: frozenset[str]
    denied: frozenset[str]


_EMPTY = frozenset({
    "the", "a", "an", "is", "are", "was", "it", "its", "of", "to", "in", "on", "at", "and", "or", "with", "by", "from",
    "that", "this", "there", "has", "have", "had", "be", "been", "some", "i", "any", "up", "for", "one", "very", "just",
    "'s", "does", "do", "s", "did", "will", "would", "can", "could",
})  # fmt: skip
_NO = frozenset({"no", "not", "never", "without", "nothing", "none", "lack", "lacks"})
_MISSING = frozenset({"missing", "gone"})


@lru_cache(maxsize=20_000)
def _form(text: str) -> _Form:
    words = letters_joined(phrase(text))
    roots = [root(w) for w in words if w not in _EMPTY | _NO | _MISSING]
    denied: set[str] = set()
    for at, word in enumerate(words):
        if word in _NO:
            for follows in words[at + 1 :]:
                if follows in members("clauses", "prepositions") - {"of", "up", "on", "off"} and denied:
                    break
                if follows not in _EMPTY:
                    denied.add(root(follows))
        elif word in _MISSING:
            denied |= {root(w) for w in words[:at] if w not in _EMPTY}
            denied |= {root(w) for w in words[at + 1 : at + 3] if not at and w not in _EMPTY}
    return _Form(frozenset(roots), frozenset(denied))


def _lost(st: Statement, found: Denial) -> frozenset[int]:
    """Positions that are denied or said to be missing."""
    lost = set(found.denied)
    for at, word in enumerate(st.norms):
        if word in members("conditions", "missing") and at not in found.denied:
            lost |= set(range(at)) | set(range(at + 1, min(at + 4, len(st.norms))))
    return frozenset(lost)


def _agrees(form: _Form, st: Statement, lost: AbstractSet[int], names: AbstractSet[str]) -> bool:
    """Whether what the form denies is denied in the statement, and nothing else of it is."""
    at = {r: [i for i, x in enumerate(st.roots) if x == r] for r in form.roots - names}
    for r, places in at.items():
        if not places:
            continue
        gone = all(i in lost for i in places)
        if (r in form.denied) != gone:
            return False
    if form.denied and not (form.denied - names):
        said = [i for i, r in enumerate(st.roots) if r in form.denied]
        if not said:  # called by another name, or "it"
            said = [i for n, _ in st.mentions for i in range(n.start, n.end)] or [0]
        return any(i in lost for i in said)
    return True


#: Indexes already made, each with the lexicon it belongs to.
_indexes: dict[str, tuple[Lexicon, _Index]] = {}


@dataclass(frozen=True, slots=True)
class _Index:
    """The forms of one kind by each root of their words, in the order of the packs."""

    rows: tuple[tuple[Condition, _Form], ...]
    by_root: MappingProxyType[str, tuple[int, ...]]


def _index(rows: tuple[tuple[Condition, tuple[Said, ...]], ...]) -> _Index:
    made = [
        (condition, _form(said.text)) for condition, forms in rows for said in forms
        if _form(said.text).roots and not (said.negative and not _form(said.text).denied)
    ]  # fmt: skip
    by_root: dict[str, list[int]] = {}
    for at, (_, form) in enumerate(made):
        for one in form.roots:
            by_root.setdefault(one, []).append(at)
    return _Index(tuple(made), MappingProxyType({k: tuple(v) for k, v in by_root.items()}))


def _candidates(
    lexicon: Lexicon, kind: str, own: AbstractSet[str], names: AbstractSet[str]
) -> list[tuple[Condition, _Form]]:
    """The forms of a kind that share a word with what is said (*own*), or deny what is called *names* and no more."""
    if _indexes and next(iter(_indexes.values()))[0] is not lexicon:
        _indexes.clear()  # other packs: only one lexicon is kept
    index = _indexes.get(kind)
    if index is None:
        index = _indexes[kind] = (lexicon, _index(lexicon.conditions.get(kind, ())))
    rows, by_root = index[1].rows, index[1].by_root
    found = {at for one in own for at in by_root.get(one, ())}
    found |= {at for one in names for at in by_root.get(one, ()) if rows[at][1].denied and rows[at][1].roots <= names}
    return [rows[at] for at in sorted(found)]


def adverse_condition(st: Statement, thing: Thing | None, found: Denial) -> Condition | None:
    """The condition of the packs that the statement names, of what it is about or of what else it names."""
    kinds = [thing.kind] if thing and thing.kind else []
    kinds += [m.kind for _, m in st.mentions if m.kind not in kinds]
    heard = {i for c in st.components if all(m.heard for m in c.meanings) for i in range(c.start, c.end)}
    heard |= {i for a, b, _ in cues("conditions", "not_adverse").find(st.norms) for i in range(a, b)}
    own = frozenset(r for i, r in enumerate(st.roots) if i not in heard and i not in found.sought)
    lost = _lost(st, found)
    best: _Match | None = None
    for rank, kind in enumerate(kinds):
        row = st.scene.lexicon.kind(kind)
        names = {root(w) for w in row.name.split()} if row else set()
        if row is not None and thing is not None and thing.kind == kind and thing.part:
            names |= {root(w) for p in row.parts if p.id == thing.part for w in p.name.split()}
        for condition, form in _candidates(st.scene.lexicon, kind, own, names):
            match = _match(form, own, names, helped=not rank)
            if match is None or not _agrees(form, st, lost, names):
                continue
            weight = match - 1.5 * rank
            if thing is not None and condition.part is not None:
                weight += 1.0 if condition.part == thing.part else -0.5
            if best is None or weight > best.weight:
                best = _Match(condition, weight)
    return best.condition if best else None


def _match(form: _Form, own: frozenset[str], names: AbstractSet[str], *, helped: bool) -> float | None:
    """How well a form fits the words, or None. Its negation is looked at apart."""
    whole = form.roots <= own and len(form.roots) + bool(form.denied) > 1
    rest = form.roots - names
    completed = helped and rest <= own and bool(rest & own)
    denies_name = helped and not rest and bool(form.denied)
    if not (whole or completed or denies_name):
        return None
    size = len(form.roots) + bool(form.denied)
    return len(form.roots & own) + bool(form.denied) + 0.5 * size
