"""Which of the things spoken of does a statement mean? A learned ranking beside the rules.

The rules settle what a statement is about (``subjects``). Where it names nothing, or names only a part or something in
passing, other things spoken of lately may be meant instead. Each of them is weighed by features of the statement and of
the thing (a conditional logit: McFadden, Conditional logit analysis of qualitative choice behavior, 1974; recalled); the
rules' own choice stands unless another one is clearly likelier. The weights stand in ``referents.json``, made by
``tools/train_referents``. No feature names a kind, so that what was learned holds for the kinds of an overlay too.
"""

from __future__ import annotations

import json
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from functools import lru_cache
from importlib.resources import files

from witnessmark.listening.focus import Thing, with_part
from witnessmark.listening.grammar import GRAMMAR
from witnessmark.listening.statement import Statement
from witnessmark.listening.terms import members
from witnessmark.listening.words import root

__all__ = ["Candidate", "Discourse", "Weighed", "best", "read_weights", "stored_weights", "weighed"]

#: How many things spoken of before are weighed.
_LOOK_BACK = 7
#: By how much another thing has to outweigh the rules' choice.
_MARGIN = 0.8
#: A word that the packs use of no more kinds than this says which is meant.
_RARE, _FEW = 3, 12


@dataclass(frozen=True, slots=True)
class Candidate:
    """A thing that may be meant; ``source`` tells where it comes from, ``rank`` how many others were spoken of since."""

    thing: Thing
    source: str
    rank: int = 0


@dataclass(slots=True)
class Discourse:
    """What was spoken of, for weighing: how often and when last each component was, and how it came to be named."""

    times: dict[tuple[str | None, str | None], int] = field(default_factory=dict)
    last: dict[tuple[str | None, str | None], float] = field(default_factory=dict)
    drafted: dict[tuple[str | None, str | None], int] = field(default_factory=dict)
    named: dict[tuple[str | None, str | None], tuple[str, ...]] = field(default_factory=dict)
    before: Thing | None = None
    act: str = "-"

    def note(self, st: Statement, acts: Sequence[str]) -> None:
        """Remember what a statement was about, and that it gave drafts of these acts."""
        self.act = acts[0] if acts else "-"
        thing = st.thing
        if thing is None:
            return
        self.before = thing
        tags = tuple(_naming(st)) if st.named else ()
        for key in {_key(thing), (thing.kind or thing.kind_key, None)}:
            self.times[key] = self.times.get(key, 0) + 1
            self.drafted[key] = self.drafted.get(key, 0) + len(acts)
            self.last[key] = st.start
            if tags:
                self.named[key] = tags


def _naming(st: Statement) -> Iterator[str]:
    """How a statement names what it is about."""
    yield f"n{min(len(st.norms), 9) // 3}"
    if st.subject is None:
        yield "strange"
        return
    meaning = next((m for n, m in st.mentions if n is st.subject), None)
    if meaning is not None:
        yield "heard" if meaning.heard else "short" if meaning.short else "part" if meaning.part else "kind"
        row = st.scene.lexicon.packs.kinds[meaning.kind]
        if not (row.parts or row.operated or row.expected or set(row.describe) - {"location"}):
            yield "sign"
        yield "of-place" if st.scene.place.sort in row.sorts else "place-not" if row.sorts else "any-place"
    yield f"long{min(st.subject.end - st.subject.start, 3)}"
    yield "opens" if st.subject.start <= st.opening() + 1 else "later"
    before = st.norms[st.subject.start - 1] if st.subject.start else ""
    if before in members("clauses", "prepositions"):
        yield "bound"
    first, last = st.tokens[st.subject.start], st.tokens[st.subject.end - 1]
    raw = " ".join(w.text.lower() for w in st.words[first.first : last.last + 1])
    if raw != " ".join(st.norms[st.subject.start : st.subject.end]):
        yield "repaired"


def _key(thing: Thing) -> tuple[str | None, str | None]:
    return (thing.kind or thing.kind_key, thing.part or (thing.label if thing.of else None))


def candidates(st: Statement) -> list[Candidate]:
    """What a statement may be about, the rules' choice first; each label once."""
    scene = st.scene
    made: list[Candidate] = []
    seen: set[tuple[str, str]] = set()

    def add(thing: Thing | None, source: str, rank: int = 0) -> None:
        if thing is not None and (thing.label, thing.kind_key) not in seen:
            seen.add((thing.label, thing.kind_key))
            made.append(Candidate(thing, source, rank))

    add(st.thing, "rule")
    if st.thing is not None:
        add(scene.whole_of(st.thing), "rule-whole")
    for named, meaning in st.mentions:
        if named is not st.subject:
            add(scene.thing(meaning, scene.place), "mention")
    told = st.norms[st.subject.start : st.subject.end] if st.subject is not None else ()
    before = [t for t in (scene.focus, *reversed(scene.recent[-_LOOK_BACK:])) if t is not None]
    for rank, thing in enumerate(before):
        whole = scene.whole_of(thing)
        if not st.named:
            add(thing, "before", rank)
            add(whole, "before-whole", rank)
        elif told and (st.thing is None or st.thing.part is not None or st.thing.kind is None):
            add(with_part(whole, told), "part-of", rank)
        else:
            add(whole, "before-whole", rank)
    return made


_OPENERS = frozenset({"it", "they", "them", "this", "that", "these", "those", "there", "both", "one", "all", "the", "no", "i", "we",
                      "and", "but", "so", "which", "still", "not", "looks", "a", "another", "other"})  # fmt: skip


def _opening(st: Statement) -> str:
    word = st.norms[st.opening()] if st.norms else ""
    if word in _OPENERS:
        return word
    if word in GRAMMAR.aux:
        return "aux"
    if word in GRAMMAR.verbs:
        return "verb"
    if word in members("clauses", "prepositions"):
        return "prep"
    return (
        "ed" if word.endswith("ed") else "ing" if word.endswith("ing") else "C" if st.masked and 0 in st.masked else "w"
    )


def _of_statement(st: Statement) -> tuple[str, ...]:
    opening = _opening(st)
    verb = next((w for w in st.norms if w in GRAMMAR.aux or w in GRAMMAR.verbs), "-")
    made = [opening, f"n{min(len(st.norms), 9) // 2}", f"verb:{root(verb)}", "named" if st.named else "unnamed"]
    if st.fresh:
        made.append("fresh")
    if st.quantities:
        made.append("Q")
    if st.instruments:
        made.append("I")
    if {"i", "we"} & set(st.norms):
        made.append("I-do")
    return tuple(made)


def _bucket(value: float, edges: Sequence[float]) -> int:
    return sum(value > e for e in edges)


def _fit(st: Statement, thing: Thing) -> Iterator[str]:
    """How well the words of the statement go with the kind."""
    lexicon = st.scene.lexicon
    row = lexicon.kind(thing.kind)
    if row is None:
        yield "strange"
        return
    rare = few = some = 0
    for word in set(st.roots):
        kinds = lexicon.told.get(word)
        if kinds is not None and row.id in kinds:
            rare += len(kinds) <= _RARE
            few += _RARE < len(kinds) <= _FEW
            some += len(kinds) > _FEW
    yield f"rare{min(rare, 2)}"
    yield f"few{min(few, 2)}"
    yield f"some{min(some, 3)}"
    if st.values:
        asked = any(a in row.describe for v in st.values for a, _ in v.meanings)
        yield "describes" if asked else "describes-not"
    ids = {i for _, _, found in lexicon.measures.find(st.stems) for i in found}
    if ids:
        yield "measures" if ids & set(row.measures) else "measures-not"
    units = {q.unit for q in st.quantities if q.unit}
    if units:
        own = {lexicon.packs.measures[m].unit for m in row.measures if m in lexicon.packs.measures}
        yield "unit" if units & own else "unit-not"
    if st.plates:
        yield "plate" if {"model", "serial", "make"} & set(row.describe) else "plate-not"
    yield "runs" if row.operated else "stands"


def features(st: Statement, one: Candidate, told: tuple[str, ...], discourse: Discourse) -> list[str]:
    """The names of what is so of a statement and one candidate; *told* are the statement's own."""
    scene, thing = st.scene, one.thing
    source = one.source if one.source in {"rule", "rule-whole", "mention"} else f"{one.source}{min(one.rank, 4)}"
    made = [source]
    made += [f"{source} {name}" for name in told]
    part = "part" if thing.part or thing.of else "whole"
    known = "known" if thing.kind else "strange"
    made += [f"{part} {told[0]}", f"{source} {part}", f"{source} {known}"]
    fits = list(_fit(st, thing))
    made += fits
    made += [f"{one.source} {f}" for f in fits]
    key = _key(thing)
    times = discourse.times.get(key, 0)
    since = st.start - discourse.last[key] if key in discourse.last else None
    introduced = discourse.named.get(key, ("never",))
    made += [f"{one.source} by:{tag}" for tag in introduced]
    made.append(f"{one.source} drafted{min(discourse.drafted.get(key, 0), 3)}")
    if introduced[-1] != "never" and times == 1:
        made += [f"once by:{tag}" for tag in introduced]
    made.append(f"times{_bucket(times, (0, 1, 2, 4, 8))}")
    made.append(f"{one.source} since{'-' if since is None else _bucket(since, (3, 8, 15, 30, 60))}")
    made.append(f"{one.source} {discourse.act} {part}")
    same = discourse.before is not None and (discourse.before.kind, discourse.before.kind_key) == (
        thing.kind,
        thing.kind_key,
    )
    made.append(f"{'same' if same else 'other'} {told[0]}")
    made.append(f"{'same' if same else 'other'} {told[-1]}")
    made.append("here" if thing.place == scene.place else "elsewhere")
    row = scene.lexicon.kind(thing.kind)
    if row is not None:
        made.append("of-place" if scene.place.sort in row.sorts else "place-not" if row.sorts else "any-place")
        focus = scene.lexicon.kind(scene.focus.kind if scene.focus else None)
        if focus is not None:
            made.append("system" if focus.system == row.system else "system-not")
        if not (row.parts or row.operated or row.expected or set(row.describe) - {"location"}):
            made.append(f"{one.source} sign")
    if one.source == "rule" and st.named:
        made += [f"now by:{tag}" for tag in _naming(st)]
    if one.source in {"rule", "mention"} and st.named:
        made += _of_mention(st, one, thing)
    return made


def _of_mention(st: Statement, one: Candidate, thing: Thing) -> Iterator[str]:
    """How a thing that the statement names stands in it."""
    named = next((n for n, m in st.mentions if (m.kind, m.part) == (thing.kind, thing.part)), st.subject)
    if named is None:
        return
    before = st.norms[named.start - 1] if named.start else "|"
    after = st.norms[named.end] if named.end < len(st.norms) else "|"
    yield f"{one.source} at{min(named.start, 5)}"
    yield f"{one.source} long{min(named.end - named.start, 3)}"
    yield f"{one.source} <{before if before in GRAMMAR.aux or before in members('clauses', 'prepositions') or before in _OPENERS | {'|'} else 'w'}"
    yield f"{one.source} >{after if after in GRAMMAR.aux or after in members('clauses', 'prepositions') or after == '|' else 'w'}"
    meaning = next((m for n, m in st.mentions if n is named), None)
    if meaning is not None and (meaning.heard or meaning.short):
        yield f"{one.source} {'heard' if meaning.heard else 'short'}"
    if len(named.meanings) > 1:
        yield f"{one.source} several"


def read_weights(text: str) -> dict[str, float]:
    """Weights from their JSON form."""
    stored = json.loads(text)
    scale = float(stored["scale"])
    return {name: step * scale for name, step in stored["features"].items()}


@lru_cache(maxsize=1)
def stored_weights() -> Mapping[str, float]:
    """The weights that come with the listener."""
    return read_weights(files("witnessmark.listening").joinpath("referents.json").read_text(encoding="utf-8"))


def best(features_: Sequence[Sequence[str]], weights: Mapping[str, float]) -> int:
    """Which candidate is meant, by the features of each: the first (the rules' choice) unless one is clearly likelier."""
    sums = [sum(weights.get(name, 0.0) for name in row) for row in features_]
    most = max(range(len(sums)), key=sums.__getitem__)
    return most if sums[most] > sums[0] + _MARGIN else 0


@dataclass(frozen=True, slots=True)
class Weighed:
    """A statement with what it may be about and the features of each."""

    statement: Statement
    candidates: Sequence[Candidate]
    features: Sequence[Sequence[str]]


def weighed(st: Statement, discourse: Discourse) -> Weighed | None:
    """What a statement may be about, with features; None where there is nothing to choose between."""
    found = candidates(st)
    if len(found) < 2 or found[0].source != "rule":  # noqa: PLR2004 - nothing to choose between
        return None
    told = _of_statement(st)
    return Weighed(st, found, [features(st, one, told, discourse) for one in found])
