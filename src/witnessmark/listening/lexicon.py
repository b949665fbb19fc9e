"""What the packs call things, made ready for listening: one table for each sort of thing that can be named."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from types import MappingProxyType

from witnessmark.listening.numerals import number_words
from witnessmark.listening.phrases import Phrases
from witnessmark.listening.sounds import sound
from witnessmark.listening.terms import members, own_words
from witnessmark.listening.words import phrase, root, stem
from witnessmark.packs.model import Condition, Kind, Packs, Procedure

__all__ = ["Lexicon", "Meaning", "Said", "lexicon", "stems"]

#: Words that say nothing by themselves in the name of a condition or of a procedure.
_EMPTY = frozenset({
    "the", "a", "an", "is", "are", "was", "it", "its", "of", "to", "in", "on", "at", "and", "or", "with", "by", "from",
    "that", "this", "there", "has", "have", "had", "be", "been", "some", "i", "any", "up", "for", "one", "very", "just",
    "'s", "does", "do", "s",
})  # fmt: skip
#: Small words that tell something where only one other word is said.
_TELLING = frozenset({"s", "up", "in", "on", "off", "by"})
#: Word classes whose members are never taken for a misheard word.
_PLAIN = ("openers", "subjects", "auxiliaries", "verbs", "plural_verbs", "determiners", "adjectives", "prepositions",
          "adverbs", "quantifiers", "conjunctions", "subordinators")  # fmt: skip
#: Last words too general to call a thing by.
_WEAK_HEADS = frozenset({"unit", "system", "device", "line", "work", "area", "side", "base", "head", "space", "run", "box",
                         "top", "end", "equipment", "water", "house", "wood", "mark", "sign", "board", "material", "growth",
                         "air", "ground", "power", "plate", "stop", "set", "pest", "insect", "service", "room",
                         "heat", "control", "crack", "damage", "leak", "stain", "stains", "hole", "movement", "gas", "oil",
                         "iron", "steel", "concrete", "surface", "type", "access", "supply", "return", "entry", "kit",
                         "body", "assembly", "point", "walk", "covering", "outside", "inside", "main", "animal", "animals",
                         "tie", "block", "boot", "cloth", "felt", "paper", "test", "bottom", "exterior", "interior"})  # fmt: skip
#: Last words of parts' names that say nothing of them.
_NO_HEADS = frozenset({"wall", "top", "bottom", "end", "edge", "side", "area", "base", "air", "drain", "hole", "temperature", "mark", "pipe",
                       "breaker", "unit", "floor", "roof", "cut", "notch", "opening", "clip"})  # fmt: skip
_NEVER = ("auxiliaries", "subjects", "conjunctions", "prepositions", "determiners", "subordinators")
_NEGATIVE = frozenset({"no", "not", "missing", "without", "gone", "never", "lack", "nothing", "none", "bare"})


@dataclass(frozen=True, slots=True)
class Meaning:
    """A component that a phrase may mean: a kind, or a part of it.

    ``heard``: only by what a recogniser makes of it. ``short``: only by the last word of its name ("the fan").
    ``far``: only by the last word of what it is also called ("panel" for the "entry panel" of an intercom).
    ``within``: a part by a general word, of a kind that is spoken of.
    """

    kind: str
    part: str | None = None
    heard: bool = False
    short: bool = False
    far: bool = False
    within: bool = False


@dataclass(frozen=True, slots=True)
class Said:
    """A spoken form of a condition or procedure: roots of its words, and whether it denies."""

    roots: frozenset[str]
    negative: bool
    text: str


@dataclass(frozen=True, slots=True)
class Lexicon:
    """Everything nameable.

    ``components`` to ``reasons`` are tables over stems; ``within`` are words for parts of what is spoken of. ``conditions`` and ``procedures`` are by kind.
    ``told`` are the kinds of whose faults and parts a word is said, by its root.
    ``acronyms`` are words made of spoken letters. ``known`` are stems that need no repair; ``by_sound`` gives the
    long words of the packs by how they sound, ``near`` the words a phrase lets stand beside another word.
    """

    packs: Packs
    components: Phrases[tuple[Meaning, ...]]
    within: Phrases[tuple[Meaning, ...]]
    values: Phrases[tuple[tuple[str, str], ...]]
    attributes: Phrases[tuple[str, ...]]
    measures: Phrases[tuple[str, ...]]
    sorts: Phrases[tuple[str, ...]]
    reasons: Phrases[str]
    conditions: MappingProxyType[str, tuple[tuple[Condition, tuple[Said, ...]], ...]]
    procedures: MappingProxyType[str, tuple[tuple[Procedure, tuple[Said, ...]], ...]]
    told: MappingProxyType[str, frozenset[str]]
    acronyms: frozenset[str]
    known: frozenset[str]
    by_sound: MappingProxyType[str, tuple[str, ...]]
    near: MappingProxyType[tuple[int, str], tuple[tuple[str, ...], ...]]

    def kind(self, id_: str | None) -> Kind | None:
        """The kind of this id."""
        return self.packs.kinds.get(id_) if id_ else None


def letters_joined(words: Iterable[str]) -> tuple[str, ...]:
    """Spoken letters side by side as one word: ``p v c pipe`` becomes ``pvc pipe``."""
    made: list[str] = []
    run: list[str] = []
    for word in [*words, ""]:
        if len(word) == 1 and word.isalpha():
            run.append(word)
            continue
        if len(run) > 1:
            made.append("".join(run))
        else:
            made += run
        run = []
        if word:
            made.append(word)
    return tuple(made)


def stems(text: str) -> tuple[str, ...]:
    """A phrase of the packs as it is compared: letters joined, plurals cut."""
    words = letters_joined(phrase(text))
    return tuple(stem(word) for word in (words[:-1] if words[1:] and words[-1] == "'s" else words))


def said(text: str) -> Said:
    """A spoken form of a condition or procedure as it is compared."""
    words = letters_joined(phrase(text))
    roots = frozenset(root(w) for w in words if w not in _EMPTY)
    if len(roots) == 1:  # "s trap" is not every trap, "backs up" not all that is at the back
        roots |= frozenset(w for w in words if w in _TELLING)
    return Said(roots, any(w in _NEGATIVE for w in words), text)


def _components(packs: Packs) -> Iterator[tuple[tuple[str, ...], Meaning]]:
    bare = {w for name in _NEVER for w in members("clauses", name)}
    for kind in packs.kinds.values():
        for text in (kind.name, kind.plural, *kind.spoken):
            words = stems(text)
            if not (len(words) == 1 and words[0] in bare):  # "cans" would be heard in every "can"
                yield words, Meaning(kind.id)
        for part in kind.parts:
            for text in (part.name, *part.spoken):
                words = stems(text)
                if text in part.within:
                    continue
                if not (len(words) == 1 and words[0] in bare):
                    yield words, Meaning(kind.id, part.id)
    plain = {stem(w) for name in _PLAIN for w in members("clauses", name)}
    yield from _heads(packs, bare | plain)
    for kind in packs.kinds.values():
        for text in kind.heard:
            words = stems(text)
            if not plain.issuperset(words):  # "which is" for a switch would be heard everywhere
                yield words, Meaning(kind.id, heard=True)


def _within(packs: Packs) -> Iterator[tuple[tuple[str, ...], Meaning]]:
    """Words for parts that mean them only once their kind is spoken of."""
    for kind in packs.kinds.values():
        for part in kind.parts:
            for text in part.within:
                yield stems(text), Meaning(kind.id, part.id, within=True)
            words = stems(part.name)
            if len(words) > 1 and words[-1] not in _NO_HEADS:
                yield words[-1:], Meaning(kind.id, part.id, within=True)  # "the insulation" of a refrigerant line


def _heads(packs: Packs, never: set[str]) -> Iterator[tuple[tuple[str, ...], Meaning]]:
    """The last word of each kind's names, by which it is called once it is clear which one is meant."""
    heads = {words[-1] for kind in packs.kinds.values() if len(words := stems(kind.name)) > 1}
    for kind in packs.kinds.values():
        named = {
            *stems(kind.name),
            *(stems(text)[-1] for part in kind.parts for text in {part.name, *part.spoken} - set(part.within)),
        }
        for text in (kind.name, *kind.spoken):
            words = stems(text)
            own = text == kind.name or len(words) == 2  # noqa: PLR2004 - "crawl hatch", but not "caulk around the tub"
            general = words[-1] in never | _WEAK_HEADS or len(words[-1]) <= 2 or "of" in words  # noqa: PLR2004 - acronyms
            if own and len(words) > 1 and words[-1] in heads and not general:
                yield words[-1:], Meaning(kind.id, short=True, far=words[-1] not in named)


def _gathered(rows: Iterable[tuple[tuple[str, ...], Meaning]]) -> list[tuple[tuple[str, ...], tuple[Meaning, ...]]]:
    table: dict[tuple[str, ...], dict[tuple[str, str | None], Meaning]] = {}
    for words, meaning in rows:
        table.setdefault(words, {}).setdefault((meaning.kind, meaning.part), meaning)
    return [(words, tuple(found.values())) for words, found in table.items()]


def _several(rows: Iterable[tuple[str, str]]) -> Phrases[tuple[str, ...]]:
    table: dict[tuple[str, ...], dict[str, None]] = {}
    for text, id_ in rows:
        table.setdefault(stems(text), {})[id_] = None
    return Phrases((words, tuple(ids)) for words, ids in table.items())


def _values(packs: Packs) -> Phrases[tuple[tuple[str, str], ...]]:
    table: dict[tuple[str, ...], dict[tuple[str, str], None]] = {}
    for attribute in packs.attributes.values():
        for value in attribute.values:
            for text in (value.id, *value.spoken):
                table.setdefault(stems(text), {})[(attribute.id, value.id)] = None
    return Phrases((words, tuple(ids)) for words, ids in table.items())


def _by_kind(packs: Packs) -> tuple[dict[str, list[tuple[Condition, tuple[Said, ...]]]],
                                    dict[str, list[tuple[Procedure, tuple[Said, ...]]]]]:  # fmt: skip
    conditions: dict[str, list[tuple[Condition, tuple[Said, ...]]]] = {}
    for condition in packs.conditions.values():
        forms = tuple(f for f in map(said, (condition.name, *condition.spoken)) if f.roots)
        for kind in condition.kinds:
            conditions.setdefault(kind, []).append((condition, forms))
    procedures: dict[str, list[tuple[Procedure, tuple[Said, ...]]]] = {}
    for procedure in packs.procedures.values():
        forms = tuple(f for f in map(said, (procedure.name, *procedure.said)) if f.roots)
        procedures.setdefault(procedure.kind, []).append((procedure, forms))
    return conditions, procedures


def _all_texts(packs: Packs) -> Iterator[str]:
    for kind in packs.kinds.values():
        yield from (kind.name, kind.plural, *kind.spoken)
        for part in kind.parts:
            yield from (part.name, *part.spoken, *part.within)
    for condition in packs.conditions.values():
        yield from condition.spoken
    for attribute in packs.attributes.values():
        yield from attribute.spoken
        for value in attribute.values:
            yield from (value.id, *value.spoken)
    for table in (packs.measures, packs.sorts, packs.reasons):
        for row in table.values():
            yield from row.spoken
    for procedure in packs.procedures.values():
        yield from procedure.said


def _told(
    packs: Packs, conditions: Mapping[str, Sequence[tuple[Condition, tuple[Said, ...]]]]
) -> dict[str, frozenset[str]]:
    table: dict[str, set[str]] = {}
    for kind, rows in conditions.items():
        for word in {word for _, forms in rows for form in forms for word in form.roots}:
            table.setdefault(word, set()).add(kind)
    for kind_ in packs.kinds.values():
        for part in kind_.parts:
            for text in {part.name, *part.spoken} - set(part.within):
                table.setdefault(root(stems(text)[-1]), set()).add(kind_.id)
    return {word: frozenset(kinds) for word, kinds in table.items()}


_SOUND_FROM = 6


def _build(packs: Packs) -> Lexicon:
    components = _gathered(_components(packs))
    texts = [stems(text) for text in _all_texts(packs)]
    own = {w for name in ("adverse", "sound") for w in members("conditions", name)}
    named = {word for text in texts for word in text}  # what misheard words may stand for; general words are too many
    known = named | {stem(w) for w in own} | {stem(w) for w in own_words()} | {stem(w) for w in number_words()}
    by_sound: dict[str, list[str]] = {}
    for word in sorted(named):
        if len(word) >= _SOUND_FROM and word.isalpha():
            by_sound.setdefault(sound(word), []).append(word)
    near: dict[tuple[int, str], set[tuple[str, ...]]] = {}
    for words, meanings in components:
        if len(words) == 2 and not all(m.heard for m in meanings):  # noqa: PLR2004 - pairs, in which either word can have been misheard
            near.setdefault((0, words[0]), set()).add(words)
            near.setdefault((1, words[1]), set()).add(words)
    conditions, procedures = _by_kind(packs)
    acronyms = {w for text in texts for w in text if 2 <= len(w) <= 5 and w.isalpha()}  # noqa: PLR2004 - "ac" to "csst"
    return Lexicon(
        packs=packs,
        components=Phrases(components),
        within=Phrases(_gathered(_within(packs))),
        values=_values(packs),
        attributes=_several((t, a.id) for a in packs.attributes.values() for t in (a.name, *a.spoken)),
        measures=_several((t, m.id) for m in packs.measures.values() for t in (m.name, *m.spoken)),
        sorts=_several((t, s.id) for s in packs.sorts.values() for t in (s.name, *s.spoken)),
        reasons=Phrases((stems(t), r.id) for r in packs.reasons.values() for t in r.spoken),
        conditions=MappingProxyType({k: tuple(v) for k, v in conditions.items()}),
        procedures=MappingProxyType({k: tuple(v) for k, v in procedures.items()}),
        told=MappingProxyType(_told(packs, conditions)),
        acronyms=frozenset(acronyms),
        known=frozenset(known),
        by_sound=MappingProxyType({k: tuple(v) for k, v in by_sound.items()}),
        near=MappingProxyType({k: tuple(sorted(v)) for k, v in near.items()}),
    )


#: The packs last listened with and their lexicon; one narration after another is heard with the same packs.
_kept: list[Lexicon] = []


def lexicon(packs: Packs) -> Lexicon:
    """The lexicon of these packs; built once for the same packs."""
    if not _kept or _kept[0].packs is not packs:
        _kept[:] = [_build(packs)]
    return _kept[0]
