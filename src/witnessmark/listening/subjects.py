"""What is a statement about, and where is that?"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from functools import cache

from witnessmark.listening.focus import Thing, with_part
from witnessmark.listening.grammar import GRAMMAR
from witnessmark.listening.lexicon import Meaning
from witnessmark.listening.naming import Named, is_verb_here
from witnessmark.listening.nouns import noun_phrase, stands_for_known
from witnessmark.listening.numerals import number_words
from witnessmark.listening.places import Place, named_place, places_in
from witnessmark.listening.sense import is_wrong
from witnessmark.listening.statement import Statement
from witnessmark.listening.terms import cues, members
from witnessmark.listening.words import root

__all__ = ["about"]

_PRONOUNS = frozenset({"it", "they", "them", "this", "that", "these", "those", "both", "one", "ones", "all", "neither"})
#: A part that weighs less than this belongs to something else than what its name suggests here.
_STRAY = -1.2
#: Letters from which a strange word can be the name of a thing; words within which "is a Stanwick sixty amp …" ends.
_NAME_FROM, _NAMED_WITHIN = 5, 6
#: A word that the packs use of so many kinds tells which of those spoken of lately is meant.
_OF_FEW = 6
#: A part that so many kinds have says by itself nothing of which of them.
_OF_MANY = 3
#: Things spoken of so lately that a word for a part may be theirs.
_RECENT = 3
#: Things spoken of before the focus whose parts a general word can still mean.
_PARTS_OF = 1
#: What stands after these is near by: it says where, and is not what is spoken of.
_NEAR_BY = frozenset({"by", "near", "beside", "behind", "past", "toward", "towards", "from", "next", "along", "across", "against",
                      "around", "between", "before", "above", "below", "under", "underneath", "over"})  # fmt: skip
_LOOKING = frozenset({"there", "got", "see", "smell", "hear", "feel", "seeing", "saw", "found", "have", "had"})


def _after_preposition(st: Statement, named: Named) -> bool:
    return bool(_preposition(st, named))


def _preposition(st: Statement, named: Named) -> str:
    """The preposition that a name stands after; empty when it stands after none."""
    at = named.start - 1
    inner = members("clauses", "determiners") | members("clauses", "adjectives")
    starts = {c.end: c.start for c in st.components}
    values = {v.end: v.start for v in st.values}
    while at >= 0:
        if st.norms[at] in inner and at not in st.masked:
            at -= 1
        elif at + 1 in values:
            at = values[at + 1] - 1
        elif at + 1 in starts and at + 1 == named.start:
            return _preposition(st, next(c for c in st.components if c.end == at + 1))
        else:
            break
    word = st.norms[at] if at >= 0 else ""
    if word == "of" and any(q.end == at for q in st.quantities):
        return ""  # "eight inches of insulation"
    if word == "of" and at and st.norms[at - 1] in {"left", "right"}:
        return "beside"  # "left of the sink"
    if word == "of" and at and (
        st.norms[at - 1] in members("clauses", "quantifiers") | members("clauses", "sides")
    ):  # fmt: skip
        return ""
    particles = {"up", "down", "on", "off", "out"}
    if word in particles and at and st.norms[at - 1] in {"turn", "turned", "turning", "shut", "switch", "switched", "took",
                                                         "opened", "filling", "fired", "start", "put", "pulled"}:  # fmt: skip
        return ""
    return word if word in members("clauses", "prepositions") else ""


def _chosen(
    st: Statement, free: list[tuple[Named, Meaning]], bound: list[tuple[Named, Meaning]], *, pronoun: bool
) -> tuple[Named, Meaning] | None:
    """The component a statement is about: of those outside place phrases (*free*) and inside them (*bound*)."""
    focus = st.scene.focus
    if free and not (pronoun and _is_object(st, free[0][0])):
        chosen = free[0]
        while follows := next((f for f in free if f[0].start == chosen[0].end), None):
            chosen = follows  # "freezer outlet": the last word says what it is
        if focus is not None and focus.kind is not None and chosen[1].kind != focus.kind:
            close = next((b for b in bound if b[1].kind == focus.kind and b[1].part), None)
            if close and close[0].start > chosen[0].start and _of(st, close[0]):
                return close
        real = next((b for b in bound if b[0].start >= chosen[0].end and not _is_sign(st, b[1])), None)
        return real if real is not None and _is_sign(st, chosen[1]) else chosen
    if bound and not pronoun and (_LOOKING & set(st.norms) or st.quantities or "no" in st.norms or _no_subject(st)):
        near = focus is not None and (_preposition(st, bound[0][0]) in _NEAR_BY or _elided(st, bound[0][0]))
        return None if near else bound[0]  # "one spot by the window", of the floor
    if pronoun and focus is not None:
        return next((b for b in bound if b[1].kind == focus.kind and b[1].part), None)
    return None


def _counts(st: Statement) -> bool:
    """Whether a number or "the second", "the other", "north one" opens the statement as its subject."""
    at, words = st.opening(), st.norms
    while at < len(words) and words[at] in members("clauses", "determiners") - {"other", "both", "all", "another"}:
        at += 1
    if at >= len(words) or at in st.masked:
        return False
    which = members("names", "ordinals") | number_words() | {"other", "another", "one", "ones", "and", "through"}
    first = at
    while at < len(words) and words[at] in which and at not in st.masked:
        at += 1
    if at == first or at in st.masked:
        return False
    if at == len(words):
        return True
    after = words[at]
    return after in GRAMMAR.aux | GRAMMAR.verbs | GRAMMAR.plural | {"never"} or is_wrong(after) or (
        after.endswith("s") and words[at + 1 : at + 2] in (["the"], ["a"])
    )  # fmt: skip


def _elided(st: Statement, named: Named) -> bool:
    """Whether the statement begins with what was done to, or is so of, what is spoken of ("painted to the wall")."""
    at = st.opening()
    while at < named.start and st.norms[at] in GRAMMAR.adverbs | {"not"}:
        at += 1
    word = st.norms[at] if at < named.start else ""
    if word in GRAMMAR.verbs - GRAMMAR.aux:
        return True  # "drips at the flange"
    return word.endswith(("ed", "ing")) and (is_wrong(word) or word not in GRAMMAR.doing | GRAMMAR.taking)


def _is_sign(st: Statement, meaning: Meaning) -> bool:
    """Whether a kind is only something seen on other things (mold, mud tubes, a water mark), by all its pack says of it."""
    row = st.scene.lexicon.packs.kinds[meaning.kind]
    return not (row.parts or row.operated or row.expected or set(row.describe) - {"location"})


def about(st: Statement) -> None:
    """Settle what the statement is about, and where; the scene is not changed.

    The first component that stands in no place phrase is it. Else, after "there is", "got" or "see", and for
    readings, the first one in a place phrase. Else, the focus. A part keeps the component it belongs to; where the
    name in a place phrase belongs to the focus and the name before it does not, the place phrase holds.
    """
    scene = st.scene
    place = scene.place
    loose: list[Named] = []
    components = _with_parts_spoken_of(st)
    for index, named in enumerate(components):
        where = _where(st, named) or place
        beside = {m.kind for other in components[index + 1 : index + 3] for m in other.meanings}
        beside |= {m.kind for n, m in st.mentions if n.end == named.start}
        owner = next((o for o in components[index + 1 : index + 2] if _belonging(st.norms[named.end : o.start])), None)
        owners = frozenset(m.kind for m in owner.meanings if m.part is None) if owner is not None else frozenset()
        said = " ".join(st.stems[named.start : named.end])
        meaning, weight = scene.meaning(named.meanings, where, said, frozenset(beside), owners)
        if _loose(st, named, meaning, beside):
            loose.append(named)
        elif weight > _STRAY or not meaning.part:
            st.mentions.append((named, meaning))
    st.masked = frozenset(i for c, _ in st.mentions for i in range(c.start, c.end))
    free = [(n, m) for n, m in st.mentions if not _after_preposition(st, n) and not _purpose(st, n)]
    bound = [(n, m) for n, m in st.mentions if (n, m) not in free]
    begins = st.norms[st.opening()] if st.norms else ""
    pronoun = (begins in _PRONOUNS or _counts(st)) and not any(n.start <= st.opening() + 1 for n, _ in free)
    chosen = _chosen(st, free, bound, pronoun=pronoun)
    if chosen is None:
        st.thing = scene.focus
        st.place = place
        whole = scene.whole()
        member = _one_elsewhere(st, whole)
        if member is not None:
            st.thing, st.place, st.named = member, member.place, True
            return
        if loose and whole is not None and not _after_preposition(st, loose[0]):
            st.thing = with_part(whole, st.norms[loose[0].start : loose[0].end])
            return
        unknown = _unknown_subject(st) if not pronoun else None
        if unknown is not None:
            st.thing, st.named = unknown, True
        return
    named, meaning = chosen
    told = _where(st, named)
    where = told or place
    if told is None:
        seen = next((t for t in [scene.focus, *reversed(scene.recent)] if t and t.kind == meaning.kind), None)
        near = seen is not None and (seen.place.sort == scene.place.sort or meaning.part is not None)
        where = seen.place if seen is not None and near else place
    st.subject, st.named, st.place = named, True, where
    chain = _chain(st, named)
    whole = scene.whole()
    if pronoun and whole is not None and meaning.part is None and meaning.kind == whole.kind:
        st.thing = whole  # "it's a frost free": still the faucet
    else:
        thing = scene.thing(meaning, where)
        if chain is not None:  # "bath fan flex duct": both names say what it is
            st.thing = replace(thing, label=f"{' '.join(st.norms[chain : named.end])} ({thing.label})")
        else:
            st.thing = _called(st, named, meaning, thing)


def _belonging(between: Sequence[str]) -> bool:
    """Whether words between two names say that the first is of the second ("guard on the deck")."""
    return (
        between[:1] in (["of"], ["on"], ["from"], ["for"], ["in"], ["at"], ["to"])
        and len(between) <= 2  # noqa: PLR2004 - "on the"
        and set(between[1:]) <= members("clauses", "determiners")
    )


def _with_parts_spoken_of(st: Statement) -> list[Named]:
    """The components named, and the parts of what is spoken of that are named by a general word ("fan", "door")."""
    scene, found = st.scene, list(st.scene.lexicon.within.find(st.stems))
    if not found:
        return st.components
    near = {m.kind for named in st.components for m in named.meanings if m.part is None and not m.short}
    near |= {t.kind for t in scene.recent[-_PARTS_OF:] if t.kind and t.place == scene.place}
    near |= {t.kind for t in (scene.focus, scene.focus.host) if t is not None and t.kind} if scene.focus else set()
    spans, ends = {(named.start, named.end): named for named in st.components}, {c.end for c in st.components}
    others = [*spans, *((v.start, v.end) for v in st.values), *((p.start, p.end) for p in st.plates), *st.instruments]
    others += [(q.start, q.end) for q in st.quantities]
    held = {i for a, b in others for i in range(a, b)}
    # "under one screw" judges as a whole and names no screw
    held |= {
        i
        for sort in ("adverse", "sound")
        for a, b, _ in cues("conditions", sort).find(st.norms)
        if b > a + 1
        for i in range(a, b)
    }
    for start, end, meanings in found:
        own = tuple(m for m in meanings if m.kind in near)
        known = spans.get((start, end))
        verb = start in ends and st.norms[start] in GRAMMAR.verbs | GRAMMAR.plural  # "both basins drain well"
        if not own or verb or is_verb_here(st.norms, start, end):
            continue
        if known is not None:
            spans[start, end] = replace(known, meanings=(*known.meanings, *(m for m in own if m not in known.meanings)))
        elif held.isdisjoint(range(start, end)):
            spans[start, end] = Named(start, end, own)
    return sorted(spans.values(), key=lambda named: named.start)


def _one_elsewhere(st: Statement, whole: Thing | None) -> Thing | None:
    """The same kind of thing in the place with which the statement opens ("kitchen six tested", "the hall's is loose")."""
    if whole is None or whole.kind is None or st.mentions:
        return None
    at = st.opening()
    while at < len(st.norms) and st.norms[at] in members("clauses", "determiners"):
        at += 1
    row = next((row for row in places_in(st.norms, st.stems, st.scene.lexicon) if row[0] == at), None)
    kind = st.scene.lexicon.kind(whole.kind)
    if row is None or kind is None or row[1] == len(st.norms):
        return None
    after = st.norms[row[1]]
    told = is_wrong(after) or after in number_words() | {"one", "ones", "'s", "is"} or any(
        a == row[1] for name in ("adverse", "sound") for a, _, _ in cues("conditions", name).find(st.norms)
    )  # fmt: skip
    several = row[2].sort in kind.sorts
    return replace(whole, place=row[2]) if told and several and row[2] != whole.place else None


def _chain(st: Statement, named: Named) -> int | None:
    """Where a run of names that ends in this one begins ("bath fan | flex duct"); None when no other name leads to it."""
    starts = {n.end: n.start for n, _ in st.mentions if n != named}
    at = named.start
    while at in starts:
        at = starts[at]
    return at if at < named.start else None


def _loose(st: Statement, named: Named, meaning: Meaning, beside: set[str]) -> bool:
    """Whether a general word ("hinge", "cover") only looks like a part of something that nobody spoke of.

    It is then taken for a part of what is spoken of.
    """
    scene = st.scene
    words = st.norms[named.start : named.end]
    if meaning.part is None or scene.focus is None:
        return False
    if not {root(w) for w in words} <= _general() and sum(m.part is not None for m in named.meanings) < _OF_MANY:
        return False
    spoken = {
        scene.focus.kind,
        *(thing.kind for thing in scene.recent[-_RECENT:]),
        *beside,
        *(m.kind for _, m in st.mentions),
    }
    return meaning.kind not in spoken


@cache
def _general() -> frozenset[str]:
    """Roots of the words for parts that many things have."""
    return frozenset(root(word) for word in members("names", "general"))


def _called(st: Statement, named: Named, meaning: Meaning, thing: Thing) -> Thing:
    """The thing with the speaker's own word for it, where that is no word of its label: "outlet (receptacle)"."""
    spoken = st.norms[named.start : named.end]
    label = thing.label.replace("(", "").replace(")", "")
    row = st.scene.lexicon.packs.kinds[meaning.kind]
    if meaning.part is None and not meaning.heard:
        own, roots = [root(w) for w in row.name.split()], [root(w) for w in spoken]
        if set(own).issuperset(roots) or set(roots).issuperset(own) or own[-1] in {roots[-1], "".join(roots)}:
            st.scene.called.pop(meaning.kind, None)
        else:
            st.scene.called[meaning.kind] = " ".join(spoken)
        return st.scene.thing(meaning, thing.place, thing.host)
    if meaning.heard or {root(w) for w in spoken} & {root(w) for w in label.split()}:
        return thing
    return replace(thing, label=f"{' '.join(spoken)} ({thing.label})")


def _unknown_subject(st: Statement) -> Thing | None:
    """What a noun phrase means for which the packs have no name ("dehumidifier is running", "granules are gone").

    A word that the packs use of the faults of what is spoken of belongs to it, and so does a general word for a part;
    a word that they use of few kinds belongs to the one of them spoken of lately, or to the only one.
    """
    phrase = noun_phrase(st)
    if phrase is None:
        return None
    words = st.norms[phrase.start : phrase.end]
    strange = len(words[-1]) >= _NAME_FROM and not stands_for_known(st, phrase.end - 1)
    if phrase.bare and not strange and len(words) == 1:
        return None
    scene = st.scene
    whole, kinds = scene.whole(), scene.lexicon.told.get(root(words[-1]), frozenset())
    if whole is not None and (whole.kind in kinds or (set(words[-1:]) <= members("names", "general"))):
        return with_part(whole, words)
    lately = next((t for t in reversed(scene.recent[-_RECENT:]) if t.kind in kinds), None)
    if lately is not None and len(kinds) <= _OF_FEW:
        row = scene.lexicon.packs.kinds[lately.kind or ""]
        return with_part(replace(lately, part=None, label=row.name, of=""), words)
    if len(kinds) == 1:
        return with_part(scene.thing(Meaning(next(iter(kinds))), scene.place), words)
    if whole is not None and whole.kind is not None and len(words) == 1 and not strange:
        return with_part(whole, words)
    return scene.unknown(words)


def _where(st: Statement, named: Named) -> Place | None:
    """The place that stands with a component; "this bathroom" is the one the speaker is in."""
    kinds = st.scene.lexicon.packs.kinds
    sorts = frozenset(sort for m in named.meanings for sort in kinds[m.kind].sorts)
    place = named_place(st.norms, st.stems, st.scene.lexicon, named.start, named.end, sorts=sorts, masked=st.masked)
    if place is not None and place.sort == st.scene.place.sort and "-" not in place.key:
        return st.scene.place
    return place


def _purpose(st: Statement, named: Named) -> bool:
    """Whether a name stands in what something is done for ("to get the burner going")."""
    before = st.norms[: named.start]
    at = next((i for i in range(len(before) - 1, 0, -1) if before[i] == "to"), None)
    return at is not None and at > 1 and named.start - at <= 4 and before[at + 1 : at + 2] in (  # noqa: PLR2004 - "to get the hot"
        ["get"], ["check"], ["see"], ["make"], ["let"], ["test"], ["keep"])  # fmt: skip


def _of(st: Statement, named: Named) -> bool:
    """Whether the place phrase of *named* belongs to the noun before it ("insulation on the suction line")."""
    verb = next((i for i, w in enumerate(st.norms) if w in members("clauses", "auxiliaries")), len(st.norms))
    return named.end <= verb


def _no_subject(st: Statement) -> bool:
    """Whether the statement has neither pronoun nor name before its place phrase ("white stuff on the wall")."""
    return not any(word in _PRONOUNS | {"i", "we", "you", "he", "she"} for word in st.norms)


def _is_object(st: Statement, named: Named) -> bool:
    """Whether a name after "it ..." is not what "it" is: "it drips on the floor", but "it's a gas water heater"."""
    before = st.norms[: named.start]
    at = next((i for i in range(len(before) - 1, -1, -1) if before[i] in {"is", "are", "was", "'s", "were"}), None)
    copula = at is not None
    if (
        at is not None
        and before[at + 1 : at + 2] in (["a"], ["an"])
        and len(before) - at <= _NAMED_WITHIN
        and not (set(before[at + 2 :]) & members("clauses", "prepositions"))
    ):
        return False
    return not (copula and before and before[-1] in {"a", "an", "the", "is", "are", "just", "was", *[
        st.norms[v.end - 1] for v in st.values if v.end == named.start]})  # fmt: skip
