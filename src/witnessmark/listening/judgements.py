"""Is what was seen as it should be? Conditions of the packs, things missing, and general words for good and bad."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal
from typing import Any

from witnessmark.listening.absences import absent
from witnessmark.listening.counts import counted
from witnessmark.listening.denial import Denial
from witnessmark.listening.drafts import Draft
from witnessmark.listening.focus import Thing
from witnessmark.listening.modes import is_requirement
from witnessmark.listening.named_conditions import adverse_condition
from witnessmark.listening.naming import Named
from witnessmark.listening.polarity import Sense, senses
from witnessmark.listening.statement import Statement
from witnessmark.listening.terms import cues, listed
from witnessmark.listening.unsaid import with_unit
from witnessmark.listening.zones import zones
from witnessmark.packs.model import Condition

__all__ = ["judged", "measured_in"]

_WHAT_WORDS = 14


def measured_in(st: Statement) -> dict[str, Any]:
    """Value and unit of the first measured quantity in the statement, or of a count, for a draft about a condition."""
    for told in st.quantities:
        quantity = with_unit(st, told)
        if quantity.form == "quantity" and quantity.unit not in {"min", "h", "s", "d", "a", "wk", "mo"}:
            return {"value": quantity.value, "unit": quantity.unit}
    count = counted(st)
    if count:
        return {"value": Decimal(count.adverse or count.checked), "unit": "1"}
    year = next((q for q in st.quantities if q.form == "year" or (q.unit == "a" and q.form == "quantity")), None)
    return {} if year is None else {"value": year.value, "unit": "a"}  # "expired in twenty nineteen"


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


def _adverse(st: Statement, thing: Thing | None, why: str, condition: Condition | None, **more: object) -> Draft:
    fields: dict[str, object] = {"condition": "adverse", **measured_in(st), "count": counted(st), **more}
    if condition is not None:
        fields["condition_id"] = condition.id
        row = st.scene.lexicon.kind(thing.kind) if thing is not None else None
        parts = {p.id for p in row.parts} if row is not None else set()
        if thing is not None and condition.part in parts and thing.kind in condition.kinds:
            thing = replace(thing, part=condition.part)
    return st.draft("saw", condition.name if condition else _what(st, thing), why, thing, **fields)


def _is_not(st: Statement) -> Named | None:
    """A component that what is spoken of is said not to be ("the one by the stove isn't GFCI")."""
    for named, _ in st.mentions:
        at = named.start - 1
        if at >= 0 and st.norms[at] in {"a", "an"}:
            at -= 1
        if at >= 1 and st.norms[at] == "not" and st.norms[at - 1] in {"is", "are"} and named.start > 2:  # noqa: PLR2004 - "this is not one"
            return named
    return None


def _is_quality(st: Statement, at: int) -> bool:
    """Whether "needs to be" asks for a quality ("metal"), not for something to be done."""
    word = st.norms[at] if at < len(st.norms) else ""
    return not word.endswith(("ed", "en", "ne", "lt")) and word not in {
        "redone",
        "rebuilt",
        "looked",
        "cut",
        "hung",
        "put",
        "tied",
    }


def _short_of(st: Statement, found: list[Sense]) -> str | None:
    """Words for some that do as they should where others do not: "only two of the four work", "half of them work"."""
    good = [s for s in found if not s.adverse]
    if not good or any(s.adverse for s in found):
        return None
    for quantity in st.quantities:
        if quantity.form == "count" and quantity.second is not None and quantity.value < quantity.second:
            return f"'{quantity.value} of {quantity.second}'"
    for start, _, words in cues("conditions", "some_of").find(st.norms):
        if start < good[0].start:
            return f"'{words}'"
    return None


def judged(st: Statement) -> list[Draft]:
    """What the statement says is wrong, missing or as it should be: at most one draft of each thing it judges."""
    found, denials = senses(st)
    parts = zones(st, found, denials.triggers)
    if len(parts) > 1:
        return [draft for part in parts for draft in _judged(part, *senses(part))]
    return _judged(st, found, denials)


def _judged(st: Statement, found: list[Sense], denials: Denial) -> list[Draft]:

    def named(thing: Thing | None) -> Condition | None:
        return adverse_condition(st, thing, denials)

    def wrong(thing: Thing | None, why: str, of: Thing | None) -> Draft:
        return _adverse(st, thing, why, named(of))

    lost = absent(st, found, denials, wrong, named)
    if lost is not None:
        return [replace(d, count=counted(st), **measured_in(st)) if d.act == "absent" else d for d in lost]
    thing = st.thing
    none_of_it = st.cue("conditions", "none_of_it")
    if (
        none_of_it
        and thing is not None
        and (denials.denied & set(range(none_of_it[0], none_of_it[1])) or none_of_it[2].startswith("none"))
    ):
        return [st.draft("saw", _what(st, thing), f"'{none_of_it[2]}'", thing, condition="sound")]
    bad = [s for s in found if s.adverse]
    good = [s for s in found if not s.adverse]
    faults = [s for s in bad if s.wrong]
    condition = named(thing)
    praised = any(s.end - s.start > 1 and not s.wrong for s in good)
    fitted = listed("conditions", "fitted")
    told = any(s.end == len(st.norms) and not s.wrong and s.text not in fitted for s in good)
    if condition is not None and not faults and not bad and (st.operated or praised or told):
        condition = None
    like = next((s for s in good if s.text.startswith(("like", "as it", "as they", "the way"))), None)
    if like is not None:
        faults = [s for s in faults if s.start > like.start]  # "sounds hollow like it ought to"
        bad = [s for s in bad if s.start > like.start]
    if condition is not None and not like and (faults or not any(s.wrong for s in good)):
        return [_adverse(st, thing, f"condition {condition.id}", condition)]
    if faults:
        return [_adverse(st, thing, faults[0].why, None)]
    if _is_not(st):
        return [_adverse(st, thing, "said not to be one", None)]
    wanted = st.cue("scopes", "wanted")
    if wanted and wanted[0] not in denials.denied and not (wanted[2].endswith("to be") and _is_quality(st, wanted[1])):
        return [_adverse(st, thing, f"'{wanted[2]}'", None)]
    if bad:
        return [_adverse(st, thing, bad[0].why, None)]
    some = _short_of(st, found)
    if some:
        return [_adverse(st, thing, some, None)]
    if thing is None or is_requirement(st) or not good:
        return []
    best = next((s for s in good if s.wrong), good[0])
    return [st.draft("saw", _what(st, thing), best.why, thing, condition="sound", count=counted(st, adverse=False))]
