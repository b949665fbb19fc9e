"""What a law wants the report to hold: statements, what was observed, departures with notice, summary, claims of code.

Each is a pure function of the scene under its rulebook, as rows that point at entries. They compute; the report prints.
"""

from __future__ import annotations

import re
from dataclasses import dataclass

from witnessmark.journal.acts import Arrived, Found, Identified, Ran, Read, Saw, Settled, Skipped
from witnessmark.judging.scene import Scene
from witnessmark.judging.when import holds
from witnessmark.packs.law import ConditionWord, Duty
from witnessmark.packs.terms import SYSTEMS

__all__ = [
    "CodeClaim", "Departed", "ItemState", "Observed", "Statement", "Summarised", "code_claims", "departures", "item_states",
    "observed", "statements", "summary",
]  # fmt: skip


@dataclass(frozen=True, slots=True)
class Statement:
    """A text that the law wants in the report: in substance or word for word, in what size of type, and why now."""

    duty: Duty
    text: str
    verbatim: bool
    min_pt: int | None
    why: str


@dataclass(frozen=True, slots=True)
class Observed:
    """What was observed of one system: the names of its kinds, and the entries that show it."""

    system: str
    words: str
    kinds: tuple[str, ...]
    entries: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Departed:
    """Something left out: the entry, what, why, whether the reason is on the law's closed list, and the notice owed."""

    entry: str
    what: str
    reason: str
    listed: bool
    noticed: bool
    words: str


@dataclass(frozen=True, slots=True)
class ItemState:
    """A component under a law's own words: what its state means, the law's word (and code) for it, on which entries."""

    component: str
    kind: str
    label: str
    means: str
    word: ConditionWord | None
    entries: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Summarised:
    """What a summary takes in: entries of findings, whether it must be there, and the statement it opens with."""

    required: bool
    entries: tuple[str, ...]
    statement: str
    words: str


@dataclass(frozen=True, slots=True)
class CodeClaim:
    """A finding that cites a code, and what is still missing of what the law wants beside such a claim."""

    entry: str
    cited: str
    missing: tuple[str, ...]


def statements(scene: Scene) -> tuple[Statement, ...]:
    """The texts the rulebook wants in the report of this visit, in its order."""
    if scene.rulebook is None:
        return ()
    found = []
    for duty in scene.rulebook.duties:
        if not duty.mandatory_text:
            continue
        asked, why = holds(scene, duty.text_when or duty.when)
        if asked:
            found.append(Statement(duty, duty.mandatory_text, duty.verbatim, duty.min_pt, why))
    return tuple(found)


def observed(scene: Scene) -> tuple[Observed, ...]:
    """What was observed, system by system: every kind that was seen, run, read or described. Systems in their order."""
    kinds: dict[str, dict[str, list[str]]] = {}
    for fact in scene.record.facts:
        if not isinstance(fact.body, Saw | Ran | Read | Identified | Found):
            continue
        row = scene.packs.kinds.get(scene.house.kind_of(fact))
        if row is not None:
            kinds.setdefault(row.system, {}).setdefault(row.id, []).append(fact.id)
    return tuple(
        Observed(system, words, tuple(kinds[system]), tuple(e for ids in kinds[system].values() for e in ids))
        for system, words in SYSTEMS.items()
        if system in kinds
    )


def departures(scene: Scene) -> tuple[Departed, ...]:
    """Everything skipped, held against the rulebook's closed list of reasons and the notice it asks for."""
    rule = scene.rulebook.departure if scene.rulebook else None
    told = {
        entry for f in scene.record.facts if isinstance(f.body, Settled) and f.body.with_whom for entry in f.body.of
    }
    arrived = min((f.at for f in scene.record.facts if isinstance(f.body, Arrived)), default="")
    found = []
    for fact in scene.record.facts:
        body = fact.body
        if not isinstance(body, Skipped):
            continue
        reason = scene.packs.reasons.get(body.reason)
        words = body.words or (reason.words if reason else body.reason)
        listed = rule is None or not rule.reasons or body.reason in rule.reasons
        noticed = fact.id in told or bool(arrived and fact.at < arrived)
        owed = "" if rule is None or noticed else rule.notice
        found.append(Departed(fact.id, body.what or scene.where(fact), words, listed, noticed, owed))
    return tuple(found)


def item_states(scene: Scene) -> tuple[ItemState, ...]:
    """Every listed component with its state in the law's own words: deficient, inspected, not inspected, not present.

    ``deficient`` where a finding or an adverse look stands on it, else ``not inspected`` where it was skipped and
    nothing else recorded, else ``inspected``. Absent kinds are ``not present``.
    """
    words = {word.means: word for word in scene.rulebook.condition_words} if scene.rulebook else {}
    rows: dict[str, dict[str, list[str]]] = {}
    for fact in scene.record.facts:
        if fact.component is None:
            continue
        body, sorts = fact.body, rows.setdefault(fact.component, {})
        bad = isinstance(body, Found) or (isinstance(body, Saw) and body.state == "adverse")
        if bad:
            unsure = isinstance(body, Saw) and not body.sure
            sorts.setdefault("seems deficient" if unsure else "deficient", []).append(fact.id)
        elif isinstance(body, Skipped):
            sorts.setdefault("not inspected", []).append(fact.id)
        elif isinstance(body, Saw | Ran | Read | Identified):
            sorts.setdefault("inspected", []).append(fact.id)
    order = ("deficient", "seems deficient", "inspected", "not inspected")
    found = []
    for component in scene.house.components.values():
        sorts = rows.get(component.id, {})
        means = next((state for state in order if state in sorts), "not inspected")
        known = words.get(means) or (words.get("deficient") if means == "seems deficient" else None)
        found.append(
            ItemState(component.id, component.kind, component.label, means, known, tuple(sorts.get(means, ())))
        )
    return tuple(found)


def summary(scene: Scene) -> Summarised | None:
    """What belongs in the summary the rulebook asks for; None where it asks for none.

    Findings go in when the state of what they stand on is one the law lists, and no other finding does.
    """
    rule = scene.rulebook.summary if scene.rulebook else None
    if rule is None:
        return None
    states = {state.component: state.means for state in item_states(scene)}
    entries = tuple(
        fact.id
        for fact in scene.record.facts
        if isinstance(fact.body, Found)
        and (not rule.means or states.get(fact.component or "", "deficient") in rule.means)
    )
    systems = len(observed(scene))
    required = rule.from_systems is None or systems >= rule.from_systems
    return Summarised(required, entries, rule.statement, rule.words)


#: Names of codes as findings cite them. A plain "to code" claims one as well.
_CODES = re.compile(
    r"\b(?:building code|electrical code|plumbing code|mechanical code|fire code|code violation|(?:not |up )?to code|"
    r"NEC|IRC|IBC|UPC|IPC|IMC|IFGC|NFPA\s?\d+)\b",
    re.IGNORECASE,
)
_SECTION = re.compile(
    r"\b(?:section\s+|§\s*)?[A-Z]{0,2}\d{2,4}(?:\.\d+)+(?:\([A-Za-z0-9]+\))*|\b(?:section|§)\s*[A-Z]?\d+", re.IGNORECASE
)


def code_claims(scene: Scene) -> tuple[CodeClaim, ...]:
    """Findings that cite a code, where the rulebook asks for the date of construction and the section beside them."""
    if scene.rulebook is None or not scene.rulebook.code_claims:
        return ()
    found = []
    for fact in scene.record.facts:
        body = fact.body
        if not isinstance(body, Found):
            continue
        text = f"{body.title} {body.seen} {body.why} {body.if_left} {body.do}"
        named = _CODES.search(text)
        if named is None:
            continue
        missing = [] if scene.job.year_built or scene.job.altered else ["the date of construction or alteration"]
        missing += [] if _SECTION.search(text) else ["the section of the code"]
        found.append(CodeClaim(fact.id, named[0], tuple(missing)))
    return tuple(found)
