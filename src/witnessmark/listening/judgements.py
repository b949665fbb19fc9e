"""Is what was seen as it should be? Conditions of the packs, things missing, and general words for good and bad."""

from __future__ import annotations

from dataclasses import dataclass, replace
from decimal import Decimal

from witnessmark.journal.acts import Count
from witnessmark.listening.drafts import Draft
from witnessmark.listening.focus import Thing
from witnessmark.listening.lexicon import Said
from witnessmark.listening.modes import is_requirement
from witnessmark.listening.naming import Named
from witnessmark.listening.phrases import Phrases
from witnessmark.listening.places import HOUSE, places_in
from witnessmark.listening.statement import Statement
from witnessmark.listening.terms import cues, members
from witnessmark.listening.words import root
from witnessmark.packs.model import Condition

__all__ = ["adverse_condition", "counted", "judged", "measured_in"]

#: How far before a word its negation stands.
_SCOPE = 4
_ENDS_SCOPE = frozenset({"but", "just", "only", "except", "and", "though"})
_WHAT_WORDS = 14


def negated(st: Statement, index: int) -> bool:
    """Whether the word at *index* is denied in this statement."""
    masked = {i for a, b, _ in cues("scopes", "not_negations").find(st.norms) for i in range(a, b)}
    for at in range(index - 1, max(-1, index - 1 - _SCOPE), -1):
        word = st.norms[at]
        if word in _ENDS_SCOPE or (word == "that" and at < index - 1):
            return False
        if word in members("scopes", "negations") and at not in masked:
            return True
    return False


def measured_in(st: Statement) -> dict[str, object]:
    """Value and unit of the first measured quantity in the statement, or of a count, for a draft about a condition."""
    for quantity in st.quantities:
        if quantity.form == "quantity" and quantity.unit not in {"min", "h", "s", "d", "a", "wk", "mo"}:
            return {"value": quantity.value, "unit": quantity.unit}
    count = counted(st)
    if count:
        return {"value": Decimal(count.adverse or count.checked), "unit": "1"}
    return {}


def counted(st: Statement, *, adverse: bool = True) -> Count | None:
    """How many of how many the statement speaks of: "two of the six", "two knockouts"."""
    for quantity in st.quantities:
        if quantity.value != quantity.value.to_integral_value() or not 0 < quantity.value < 1000:  # noqa: PLR2004 - things counted in a house
            continue
        number = int(quantity.value)
        whole = int(quantity.second) if quantity.second is not None and quantity.form == "count" else None
        if quantity.form == "count":
            return Count(whole if adverse and whole else number, whole, number if adverse else 0)
        if quantity.form == "bare" and st.subject and quantity.end <= st.subject.start <= quantity.end + 2:
            return Count(number, None, number if adverse else 0)
    return None


@dataclass(frozen=True, slots=True)
class _Match:
    condition: Condition
    said: Said
    weight: float


def adverse_condition(st: Statement, thing: Thing | None) -> Condition | None:
    """The condition of the packs that the statement names, of what it is about or of what else it names."""
    kinds = [thing.kind] if thing and thing.kind else []
    kinds += [m.kind for _, m in st.mentions if m.kind not in kinds]
    heard = {i for c in st.components if all(m.heard for m in c.meanings) for i in range(c.start, c.end)}
    heard |= {i for a, b, _ in cues("conditions", "not_adverse").find(st.norms) for i in range(a, b)}
    own = frozenset(r for i, r in enumerate(st.roots) if i not in heard)
    best: _Match | None = None
    for rank, kind in enumerate(kinds):
        row = st.scene.lexicon.kind(kind)
        names = {root(w) for w in row.name.split()} if row else set()
        if row is not None and thing is not None and thing.kind == kind and thing.part:
            names |= {root(w) for p in row.parts if p.id == thing.part for w in p.name.split()}
        for condition, forms in st.scene.lexicon.conditions.get(kind, ()):
            for said in forms:
                whole = said.roots <= own and len(said.roots) > 1
                helped = not rank and said.roots <= own | names and bool(said.roots & (own - names))
                if not (whole or helped):
                    continue
                negative = any(
                    w in members("scopes", "negations") or w in members("conditions", "missing") for w in st.norms
                )
                if said.negative and not negative:
                    continue
                if not said.negative and _denied(st, said, names):
                    continue
                weight = len(said.roots & own) + 0.5 * len(said.roots) - 1.5 * rank
                if thing is not None and condition.part is not None:
                    weight += 1.0 if condition.part == thing.part else -0.5
                if best is None or weight > best.weight:
                    best = _Match(condition, said, weight)
    return best.condition if best else None


def _denied(st: Statement, said: Said, names: set[str]) -> bool:
    places = [i for i, r in enumerate(st.roots) if r in said.roots and r not in names]
    return bool(places) and negated(st, places[0])


def _what(st: Statement, thing: Thing | None) -> str:
    """The statement in plain words, the name of its subject and small words at its ends left out."""
    start = st.opening()
    if st.subject is not None and st.subject.start <= start + 3 and st.subject.end < len(st.norms):
        start = st.subject.end if thing is not None and thing.kind else start
    words = st.norms[start:]
    while words and words[0] in {
        "is",
        "are",
        "it",
        "there",
        "that",
        "was",
        "has",
        "have",
        "got",
        "'s",
        "a",
        "the",
        "they",
    }:
        words = words[1:]
    return " ".join(words[:_WHAT_WORDS]) or st.said()


def _free(st: Statement, table: Phrases[str], blocked: frozenset[int]) -> list[tuple[int, int, str]]:
    return [(a, b, t) for a, b, t in table.find(st.norms) if not blocked.intersection(range(a, b))]


def _adverse(st: Statement, thing: Thing | None, why: str, condition: Condition | None, **more: object) -> Draft:
    fields: dict[str, object] = {"condition": "adverse", **measured_in(st), "count": counted(st), **more}
    if condition is not None:
        fields["condition_id"] = condition.id
        row = st.scene.lexicon.kind(thing.kind) if thing is not None else None
        parts = {p.id for p in row.parts} if row is not None else set()
        if thing is not None and condition.part in parts and thing.kind in condition.kinds:
            thing = replace(thing, part=condition.part)
    return st.draft("saw", condition.name if condition else _what(st, thing), why, thing, **fields)


def _belongs(st: Statement, thing: Thing) -> bool:
    """Whether the packs say that such a thing belongs here, so that its absence matters."""
    lexicon = st.scene.lexicon
    row = lexicon.kind(thing.kind)
    if row is None:
        return False
    if thing.part:
        part = next((p for p in row.parts if p.id == thing.part), None)
        if part is not None and part.expected:
            return True
    elif (
        "house" in row.expected or (thing.place.sort in row.expected) or (row.expected and thing.place.sort == "house")
    ):
        return True
    return any(c.absence and c.part == thing.part for c, _ in lexicon.conditions.get(row.id, ()))


def _absence_condition(st: Statement, thing: Thing) -> str | None:
    if thing.kind is None:
        return None
    rows = st.scene.lexicon.conditions.get(thing.kind, ())
    return next((c.id for c, _ in rows if c.absence and c.part == thing.part), None)


def _absent(st: Statement, thing: Thing, why: str, *, adverse: bool) -> Draft:
    return st.draft(
        "absent",
        f"no {thing.label}" if not thing.part else f"{thing.label} missing",
        why,
        thing,
        condition="adverse" if adverse else None,
        condition_id=_absence_condition(st, thing) if adverse else None,
        count=counted(st),
        **measured_in(st),
    )


def _blocked(st: Statement) -> frozenset[int]:
    """Positions that judge nothing: inside names, in harmless phrases, and in the name of what is measured."""
    harmless = {i for a, b, _ in cues("conditions", "not_adverse").find(st.norms) for i in range(a, b)}
    measured = (
        {i for a, b, _ in st.scene.lexicon.measures.find(st.stems) for i in range(a, b)} if st.quantities else set()
    )
    done = set(st.operated)
    table = cues("conditions", "adverse")
    names_a_fault = {
        i for n, _ in st.mentions for i in range(n.start, n.end) if (f := table.at(st.norms, n.start)) and f[0] == n.end
    }  # fmt: skip
    return (st.masked - frozenset(names_a_fault)) | harmless | measured | done


_STRONG = ("has no", "have no", "does not have", "do not have", "did not have", "has not got", "have not got", "lacks",
           "lacking", "without", "never put", "they did not put", "not a single", "neither has")  # fmt: skip


def _missing(st: Statement) -> list[Draft] | None:
    """Something said not to be there. None when the statement is about no absence."""
    table = members("conditions", "missing")
    for at, word in enumerate(st.norms):
        if word not in table or at in st.masked or negated(st, at):
            continue
        if (
            word == "gone"
            and st.norms[at - 1 : at]
            and st.norms[at - 1] not in {"is", "are", "'s", "was", "were", "all", "completely"}
        ):
            continue
        after = next((n for n, _ in st.mentions if at < n.start <= at + 3), None)
        target = st.thing
        if after is not None and (st.subject is None or st.subject.start > at):
            target = st.scene.thing(dict(st.mentions)[after], st.place or st.scene.place)
        if target is None:
            continue
        if st.named and st.subject is not None:
            draft = _absent(st, target, f"'{word}'", adverse=True)
            condition = adverse_condition(st, target)
            return [replace(draft, condition_id=condition.id, what=condition.name) if condition else draft]
        return [_adverse(st, target, f"'{word}'", adverse_condition(st, target))]
    return _lacking(st)


def _lacking(st: Statement) -> list[Draft] | None:
    none = st.cue("conditions", "there_is_none")
    if none and not st.named and st.thing is not None and st.thing.kind is not None:
        spots = [p for _, _, p in places_in(st.norms, st.stems, st.scene.lexicon) if p.sort != HOUSE.sort]
        thing = replace(st.thing, place=spots[0]) if spots else st.thing
        return [_absent(st, thing, f"'{none[2]}'", adverse=_belongs(st, thing))]
    for start, end, words in cues("conditions", "lacking").find(st.norms):
        if cues("scopes", "not_negations").at(st.norms, start) or (
            start and st.norms[start - 1] in {"i", "we"} and "have" in words
        ):
            continue
        at = end
        while at < len(st.norms) and st.norms[at] in {"any", "a", "an", "the", "more", "real", "much", "proper", "other",
                                                      "visible", "actual", "single", "kind", "of", "sort", "type"}:  # fmt: skip
            at += 1
        if at >= len(st.norms) or (st.norms[at] == "one" and at + 1 >= len(st.norms)):
            if st.thing is not None and words.endswith(("see", "find")) and _belongs(st, st.thing):
                return [_absent(st, st.thing, f"'{words}'", adverse=True)]  # "ground rod, I don't see one"
            continue
        noun = st.norms[at]
        strong = words in _STRONG or any(words.startswith(s) for s in _STRONG)
        target = next(((n, m) for n, m in st.mentions if at <= n.start <= at + 1), None)
        if target is None:
            bad = cues("conditions", "adverse").at(st.norms, at) or (
                at + 1 < len(st.norms) and cues("conditions", "adverse").at(st.norms, at + 1))  # fmt: skip
            if noun in members("conditions", "negligible") or bad or any(v.start <= at < v.end for v in st.values):
                if strong and not bad and noun not in members("conditions", "negligible"):
                    return [_adverse(st, st.thing, f"'{words}'", adverse_condition(st, st.thing))]
                continue
            condition = adverse_condition(st, st.thing)
            if (strong and noun not in members("conditions", "sound")) or (condition is not None):
                return [_adverse(st, st.thing, f"'{words} {noun}'", condition)]
            continue
        named, meaning = target
        if cues("conditions", "adverse").at(st.norms, named.end) if named.end < len(st.norms) else False:
            continue  # "no pipe leaks": the leak is denied, not the pipe
        owner = st.thing if st.subject is not named else st.scene.focus
        place = st.place or (owner.place if owner is not None else st.scene.place)
        if owner is not None and owner.kind is not None:
            parts = sorted((m for m in named.meanings if m.kind == owner.kind), key=lambda m: m.part is None)
            own = parts[0] if parts else None
            if own is None and strong and st.subject is not named and st.named:
                # "the outlet has no cover": a part of it that the packs do not name
                return [_adverse(st, owner, f"'{words} {noun}'", adverse_condition(st, owner))]
            meaning = own or meaning
        thing = st.scene.thing(meaning, place)
        following = st.norms[named.end] if named.end < len(st.norms) else ""
        if _wrong_word_before(st, at, named) or following in members("conditions", "negligible"):
            continue  # "no loose wires", "no guard problem"
        belongs = strong or _belongs(st, thing)
        return [_absent(st, thing, f"'{words}'", adverse=belongs)]
    return None


def _wrong_word_before(st: Statement, at: int, named: Named) -> bool:
    return any(st.norms[i] in members("conditions", "adverse") for i in range(at, named.start))


def _sound_phrase(st: Statement, blocked: frozenset[int]) -> bool:
    """Whether a phrase of two words or more says that it is as it should be, undenied."""
    return any(b - a > 1 and not negated(st, a) for a, b, _ in _free(st, cues("conditions", "sound"), blocked))


_NOT_FAILING = frozenset({"matter", "mean", "look", "seem", "have", "need", "bother", "count", "appear", "show", "say", "know",
                          "want", "hurt", "see", "be", "think", "get", "surprise", "inspect", "like", "care", "affect", "to", "a",
                          "move", "apply", "include", "make", "take", "expect", "go", "last", "come", "even", "really", "cover"})  # fmt: skip


def _fails(st: Statement) -> str | None:
    """What a thing does not do ("won't reset", "doesn't turn"): a failure, unless what it does not do is a fault."""
    for start, end, words in cues("conditions", "failing").find(st.norms):
        before = st.norms[:start]
        if end >= len(st.norms) or any(w in {"i", "we", "you", "they"} for w in before[-3:]):
            continue
        verb = st.norms[end]
        fault = cues("conditions", "adverse").at(st.norms, end)
        if verb in _NOT_FAILING or fault or not verb.isalpha():
            continue
        return f"{words} {verb}"
    return None


def _is_not(st: Statement) -> Named | None:
    """A component that what is spoken of is said not to be ("the one by the stove isn't GFCI")."""
    for named, _ in st.mentions:
        at = named.start - 1
        if at >= 0 and st.norms[at] in {"a", "an"}:
            at -= 1
        if at >= 1 and st.norms[at] == "not" and st.norms[at - 1] in {"is", "are"} and named.start > 2:  # noqa: PLR2004 - "this is not one"
            return named
    return None


def judged(st: Statement) -> list[Draft]:
    """What the statement says is wrong, missing or as it should be: at most one draft of each."""
    absent = _missing(st)
    if absent is not None:
        return absent
    thing = st.thing
    none_of_it = st.cue("conditions", "none_of_it")
    if none_of_it and thing is not None and (negated(st, none_of_it[0]) or none_of_it[2].startswith("none")):
        return [st.draft("saw", _what(st, thing), f"'{none_of_it[2]}'", thing, condition="sound")]
    blocked = _blocked(st)
    found = _free(st, cues("conditions", "adverse"), blocked)
    found = [(a, b, t) for a, b, t in found if not (a and st.norms[a - 1] in {"i", "we"})]
    bad = [(a, b, t) for a, b, t in found if not negated(st, a)]
    denied = [(a, b, t) for a, b, t in found if negated(st, a)]
    condition = adverse_condition(st, thing)
    if condition is not None and not bad and (st.operated or _sound_phrase(st, blocked)):
        condition = None
    like = any(t.startswith(("like", "as it", "the way")) for _, _, t in cues("conditions", "sound").find(st.norms))
    if condition is not None and not (denied and not bad) and not like:
        return [_adverse(st, thing, f"condition {condition.id}", condition)]
    if bad:
        return [_adverse(st, thing, f"'{bad[0][2]}'", None)]
    failing = _fails(st)
    if failing:
        return [_adverse(st, thing, f"'{failing}'", None)]
    if _is_not(st):
        return [_adverse(st, thing, "said not to be one", None)]
    wanted = st.cue("scopes", "wanted")
    if wanted and not negated(st, wanted[0]):
        return [_adverse(st, thing, f"'{wanted[2]}'", None)]
    blocked |= frozenset(i for a, b, _ in cues("conditions", "not_sound").find(st.norms) for i in range(a, b))
    unfit = [(a, b, t) for a, b, t in _free(st, cues("conditions", "fitted"), st.masked) if negated(st, a)]
    sound = _free(st, cues("conditions", "sound"), blocked)
    unsound = [(a, b, t) for a, b, t in sound if negated(st, a) and not t.startswith("no ")]
    if unfit or unsound:
        return [_adverse(st, thing, f"not '{(unfit or unsound)[0][2]}'", None)]
    if thing is None or is_requirement(st):
        return []
    fit = [(a, b, t) for a, b, t in _free(st, cues("conditions", "fitted"), st.masked)]
    good = [(a, b, t) for a, b, t in sound if a > 0 or len(st.norms) == b or b - a > 1]
    good = [row for row in good if not (row[2] in {"okay", "ok"} and row[0] == 0)]
    good = [row for row in good if not (row[0] and st.norms[row[0] - 1] == "the" and row[1] < len(st.norms))]
    good = [row for row in good if not (row[0] and st.norms[row[0] - 1] in {"i", "we"})]
    good = [row for row in good if st.named or row[2] not in {"is running", "are running"}]
    if denied or good:
        row = (denied or good)[0]
        why = f"no '{row[2]}'" if denied else f"'{row[2]}'"
        return [st.draft("saw", _what(st, thing), why, thing, condition="sound", count=counted(st, adverse=False))]
    if fit and any(w in {"is", "are", "'s"} for w in st.norms[: fit[0][0]]):
        return [st.draft("saw", _what(st, thing), f"'{fit[0][2]}'", thing, condition="sound")]
    return []
