"""What is said not to be there, and does it matter?

Something missing is wrong where the words say that it belongs there ("missing", "has no", "they never put"), and where
the packs do: a part or a kind that is ``expected``, or whose absence is a condition that cannot wait. Where the packs
only know the absence as something to plan for, the statement has to say of what it is missing. Any other absence is
told and judges nothing.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

from witnessmark.listening.denial import Denial
from witnessmark.listening.drafts import Draft
from witnessmark.listening.focus import Thing
from witnessmark.listening.lexicon import Meaning
from witnessmark.listening.naming import Named
from witnessmark.listening.places import HOUSE, places_in
from witnessmark.listening.polarity import Sense, is_wrong
from witnessmark.listening.statement import Statement
from witnessmark.listening.terms import cues, members
from witnessmark.packs.model import Condition

__all__ = ["absent", "absent_condition", "answered_no"]

#: How urgent an absence has to be in the packs to matter wherever it is told.
_PRESSING = frozenset({"now", "before use", "soon"})
#: What is drafted about a thing: (thing, why, the condition it names).
Wrong = Callable[[Thing | None, str, Thing | None], Draft]


def absent_condition(st: Statement, thing: Thing) -> Condition | None:
    """The condition of the packs that this is not there."""
    rows = st.scene.lexicon.conditions.get(thing.kind, ()) if thing.kind else ()
    return next((c for c, _ in rows if c.absence and c.part == thing.part), None)


def _belongs(st: Statement, thing: Thing, *, told_where: bool) -> bool:
    """Whether the packs say that such a thing belongs here, so that its absence matters."""
    row = st.scene.lexicon.kind(thing.kind)
    if row is None:
        return False
    if thing.part:
        part = next((p for p in row.parts if p.id == thing.part), None)
        if part is not None and part.expected:
            return True
    elif "house" in row.expected or thing.place.sort in row.expected or (row.expected and thing.place.sort == "house"):
        return True
    condition = absent_condition(st, thing)
    return condition is not None and (condition.urgency in _PRESSING or told_where)


def _absence(st: Statement, thing: Thing, why: str, *, adverse: bool, condition: Condition | None = None) -> Draft:
    row = (condition or absent_condition(st, thing)) if adverse else None
    return st.draft(
        "absent",
        row.name if condition and row else f"no {thing.label}" if not thing.part else f"{thing.label} missing",
        why,
        thing,
        condition="adverse" if adverse else None,
        condition_id=row.id if row else None,
    )


def absent(
    st: Statement, senses: list[Sense], found: Denial, wrong: Wrong, named: Callable[[Thing], Condition | None]
) -> list[Draft] | None:
    """Drafts of something said not to be there; None when the statement is about no absence.

    *wrong* drafts something adverse; *named* gives the condition that the statement names of a thing.
    """
    gone = _gone(st, found, wrong, named)
    if gone is not None:
        return gone
    last = st.norms.index("none") if "none" in st.norms else 0
    if (
        st.subject is not None
        and st.subject.end == last
        and st.norms[last + 1 : last + 2] != ["of"]
        and not any(s.start in {last, last + 1} for s in senses)
        and st.thing is not None
    ):
        return [
            _absence(st, st.thing, "'none'", adverse=_belongs(st, st.thing, told_where=True))
        ]  # "drip edge, none at the rakes"
    none = st.cue("conditions", "there_is_none")
    if none and not st.named and st.thing is not None and st.thing.kind is not None:
        spots = [p for _, _, p in places_in(st.norms, st.stems, st.scene.lexicon) if p.sort != HOUSE.sort]
        thing = replace(st.thing, place=spots[0]) if spots else st.thing
        return [_absence(st, thing, f"'{none[2]}'", adverse=_belongs(st, thing, told_where=True))]
    if _answers_no(st) and st.named and st.thing is not None and not any(s.wrong for s in senses):
        return [
            _absence(st, st.thing, "'no'", adverse=_belongs(st, st.thing, told_where=True))
        ]  # "drip leg on the heater, no"
    judging = {i for s in senses if s.end - s.start > 1 for i in range(s.start, s.end)}
    pseudo = {i for a, b, _ in cues("denial", "pseudo").find(st.norms) for i in range(a, b)}
    for start, end, words in cues("absence", "of").find(st.norms):
        if (start in judging and words in {"no", "zero"}) or start in pseudo or start in found.sought:
            continue
        if (
            start
            and st.norms[start - 1] in {"i", "we"}
            and words
            in {
                "do not have",
                "did not have",
                "have no",
                "have not got",
                "did not run",
                "did not install",
                "left off",
                "left out",
                "without",
                "forgot",
            }
        ):
            continue
        drafts = _lacking(st, (start, end, words), senses, wrong, named)
        if drafts is not None:
            return drafts
    return None


_FEWEST = 3
_NO_ANSWER = frozenset({"is", "are", "has", "have", "or", "oh", "well"})


def _answers_no(st: Statement) -> bool:
    """Whether the statement ends in a "no" that answers what it names."""
    return len(st.norms) >= _FEWEST and st.norms[-1] in {"no", "nope", "nah"} and st.norms[-2] not in _NO_ANSWER


def answered_no(asked: Statement, st: Statement) -> list[Draft]:
    """Drafts of a bare "no" after a statement, or a question, that only names a thing: it is not there."""
    if not set(st.norms) <= {"no", "nope", "nah"} or not asked.named or asked.thing is None or asked.thing.kind is None:
        return []
    adverse = _belongs(asked, asked.thing, told_where=True)
    return [_absence(asked, asked.thing, "'no'", adverse=adverse)]


def _gone(st: Statement, found: Denial, wrong: Wrong, named: Callable[[Thing], Condition | None]) -> list[Draft] | None:
    """What is "missing", "gone", "not there"."""
    norms = st.norms
    for at, end, word in cues("conditions", "missing").find(norms):
        if at in st.masked or at in found.denied or at in found.sought:
            continue
        before = norms[at - 1] if at else ""
        copula = before in {
            "is",
            "are",
            "'s",
            "was",
            "were",
            "all",
            "completely",
            "long",
            "has",
            "have",
            "half",
            "been",
            "totally",
        }
        bare = not set(norms) & members("clauses", "auxiliaries") and any(n.end == at for n, _ in st.mentions)
        if norms[end : end + 1] and is_wrong(norms[end]) and word == "gone":
            continue  # "have gone rusty"
        if word == "gone" and not copula and not bare:
            continue
        after = next((n for n, _ in st.mentions if end <= n.start <= at + 3), None)
        target = st.thing
        if after is not None and (st.subject is None or st.subject.start > at):
            target = st.scene.thing(dict(st.mentions)[after], st.place or st.scene.place)
        if target is None:
            continue
        condition = named(target)
        if st.named and st.subject is not None:
            return [_absence(st, target, f"'{word}'", adverse=True, condition=condition)]
        return [wrong(target, f"'{word}'", target)]
    return None


def _noun(st: Statement, at: int) -> int:
    before = members("absence", "before")
    while at < len(st.norms) and st.norms[at] in before and at not in st.masked:
        at += 1
    return at


def _lacking(
    st: Statement,
    cue: tuple[int, int, str],
    senses: list[Sense],
    wrong: Wrong,
    named: Callable[[Thing], Condition | None],
) -> list[Draft] | None:
    """Drafts for "no X", "has no X", "I don't see a X"."""
    norms, (start, end, words) = st.norms, cue
    strong, scant = (
        words.startswith(tuple(members("absence", "strong") | {w for _, w in cues("absence", "strong")})),
        words in _scant(),
    )
    at = _noun(st, end)
    if at >= len(norms) or (norms[at] == "one" and at + 1 >= len(norms)):
        told = words.endswith(("see", "find")) or (at < len(norms) and words.startswith(("there", "do", "did", "have")))
        if st.thing is not None and told and _belongs(st, st.thing, told_where=True):
            return [_absence(st, st.thing, f"'{words}'", adverse=True)]  # "ground rod, I don't see one"
        return None
    if words.startswith("without") and norms[at].endswith("ing") and at not in st.masked:
        return None  # "without taking it apart"
    if words == "no" and end != at and norms[end] in {"more", "other"}:
        return None
    noun = norms[at]
    target = next(((n, m) for n, m in st.mentions if at <= n.start <= at + 1), None)
    judged = next((s for s in senses if at <= s.start <= at + 1), None)
    if judged is not None and judged.wrong:
        return None  # "no rust", "no loose wires"
    following = norms[at + 1] if at + 1 < len(norms) else ""
    if target is None:
        needed = cues("absence", "needed").at(norms, at) or (
            cues("absence", "needed").at(norms, at + 1) if following else None
        )
        if noun in members("absence", "negligible") or (any(v.start <= at < v.end for v in st.values) and not needed):
            return None
        if scant and needed:
            return [wrong(st.thing, f"'{words} {noun}'", st.thing)]
        if needed or (strong and judged is None) or (st.thing is not None and named(st.thing) is not None):
            return [wrong(st.thing, f"'{words} {noun}'", st.thing)]
        return None
    return _lacks_part(st, (start, end, words), target, wrong, named, strong=strong, scant=scant)


def _system(st: Statement, thing: Thing) -> str | None:
    row = st.scene.lexicon.kind(thing.kind)
    return row.system if row else None


def _scant() -> frozenset[str]:
    return frozenset(text for _, text in cues("absence", "scant"))


#: "Cooling in this room": a name that says where by itself.
_LONG_NAME = 2
_HOUSES = frozenset({"house", "home", "place", "property", "building", "condo", "unit", "apartment"})
_LOOKED = frozenset({"see", "anywhere", "find", "visible", "found", "whatsoever", "either"})


def _lacks_part(
    st: Statement,
    cue: tuple[int, int, str],
    target: tuple[Named, Meaning],
    wrong: Wrong,
    named_of: Callable[[Thing], Condition | None],
    *,
    strong: bool,
    scant: bool,
) -> list[Draft] | None:
    """Drafts when a component or a part of one is what is not there."""
    norms, (start, _, words) = st.norms, cue
    named, meaning = target
    following = norms[named.end] if named.end < len(norms) else ""
    if following and (is_wrong(following) or following in members("absence", "negligible")):
        return None  # "no pipe leaks", "no guard problem"
    owner = st.thing if st.subject is not named else st.scene.focus
    place = st.place or (owner.place if owner is not None else st.scene.place)
    if owner is not None and owner.kind is not None:
        parts = sorted((m for m in named.meanings if m.kind == owner.kind), key=lambda m: m.part is None)
        own = parts[0] if parts else None
        if own is None and strong and st.subject is not named and st.named:
            row = st.scene.lexicon.kind(meaning.kind)
            if meaning.part is None and row is not None and row.operated and named_of(owner) is None:
                return [
                    _absence(st, st.scene.thing(meaning, place), f"'{words}'", adverse=False)
                ]  # "the tub has no shower"
            return [wrong(owner, f"'{words} {norms[named.start]}'", owner)]  # "the outlet has no cover"
        meaning = own or meaning
    thing = st.scene.thing(meaning, place)
    if scant:
        return [wrong(thing, f"'{words}'", thing)]
    elsewhere = any(n is not named for n, _ in st.mentions) or bool(
        set(norms[named.end :]) & members("clauses", "prepositions")
    )
    if strong and thing.part is None and set(norms[:start]) & _HOUSES:
        strong = False  # "the house has no attic"
    looked = bool(set(norms[named.end :]) & _LOOKED)
    told_where = (
        looked
        or named.end - named.start > _LONG_NAME
        or elsewhere
        or words.startswith(("there", "i do", "do not see", "did", "could", "can", "is not", "are not"))
        or (st.scene.focus is not None and st.scene.focus.kind == thing.kind and thing.part is not None)
        or start > st.opening() + 1
        or (st.place is not None and st.place != st.scene.place)
    )
    of_owner = named_of(owner) if owner is not None and owner.kind != thing.kind else None
    if of_owner is not None and of_owner.absence and owner is not None:
        row = st.scene.lexicon.kind(owner.kind)
        part = of_owner.part if row is not None and of_owner.part in {p.id for p in row.parts} else None
        return [_absence(st, replace(owner, part=part), f"'{words}'", adverse=True, condition=of_owner)]
    if (told_where or st.scene.focus is not None) and cues("absence", "needed").at(norms, named.start):
        return [_absence(st, thing, f"'{words}'", adverse=True)]  # "no caulk at the tub"
    condition = named_of(thing)
    if condition is not None and condition.absence and (strong or told_where or condition.urgency in _PRESSING):
        return [_absence(st, thing, f"'{words}'", adverse=True, condition=condition)]
    if condition is not None and strong and thing.part is not None:
        return [
            wrong(thing, f"'{words} {norms[named.start]}'", thing)
        ]  # "the bolts have no nuts": a fault by its words
    return [
        _absence(
            st,
            thing,
            f"'{words}'",
            adverse=strong or (thing.part is not None and told_where) or _belongs(st, thing, told_where=told_where),
        )
    ]
