"""What was seen, missed or photographed that a client must be told, and which findings or dismissals deal with it.

Adverse by statement are: a ``saw`` whose state is adverse, or that names an adverse condition without calling it
sound or unclear, or whose count says that some fell short; an ``absent`` that should have been there; and a ``took``
of damage. Readings are judged elsewhere. A photo of damage that is evidence for an adverse fact (it says so in
``speaks_of``, or that fact names its hash) is carried by that fact and not counted again.

A fact is dealt with by a ``found`` that rests on it, or by a ``settled`` about it that gives a reason.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from witnessmark.journal.acts import Absent, Found, Saw, Took
from witnessmark.journal.fold import Fact, Record
from witnessmark.views.decisions import Decisions, decisions

__all__ = ["Adverse", "adverse", "findings_on", "reasoned_dismissal"]


@dataclass(frozen=True, slots=True)
class Adverse:
    """One adverse fact.

    Attributes:
        fact: the ``saw``, ``absent`` or ``took``.
        words: what it says.
        evidence: ids of the photos of damage that it carries.
        carried_by: for a photo, id of the adverse fact it is evidence for.
        dealt_with_by: the ``found`` or ``settled`` that deals with it.
    """

    fact: Fact
    words: str
    evidence: tuple[str, ...] = ()
    carried_by: str | None = None
    dealt_with_by: Fact | None = None


def stated_adverse(fact: Fact) -> str | None:
    """The words of a fact that is adverse by statement (photos apart), else None."""
    body = fact.body
    if isinstance(body, Saw):
        bad = body.state == "adverse" or (
            body.state != "unclear"
            and ((body.count is not None and body.count.adverse > 0) or (body.state is None and bool(body.condition)))
        )
        return body.what if bad else None
    if isinstance(body, Absent) and body.adverse:
        return body.what or "not there"
    return None


def findings_on(record: Record) -> Mapping[str, Fact]:
    """The first ``found`` that rests on each entry, by the entry's id."""
    first: dict[str, Fact] = {}
    for fact in record.facts:
        if isinstance(fact.body, Found):
            for name in fact.body.rests_on:
                first.setdefault(name, fact)
    return first


def reasoned_dismissal(settled: Decisions, entry: str) -> Fact | None:
    """The first decision that dismisses an adverse entry and says why."""
    for fact, body in settled.about(entry, "write up"):
        if body.how.strip():
            return fact
    return None


def adverse(
    record: Record, settled: Decisions | None = None, found: Mapping[str, Fact] | None = None
) -> tuple[Adverse, ...]:
    """Every adverse fact of *record*, in order. Linear in the facts.

    *settled* and *found* are ``decisions`` and ``findings_on`` of the same record, where the caller has them.
    """
    settled = settled or decisions(record)
    found = findings_on(record) if found is None else found
    stated: list[tuple[Fact, str]] = []
    photos: list[tuple[Fact, Took]] = []
    by_hash: dict[str, str] = {}
    ids: set[str] = set()
    for fact in record.facts:
        body = fact.body
        if isinstance(body, Took):
            if body.damage:
                photos.append((fact, body))
                stated.append((fact, body.shows or "damage"))
            continue
        words = stated_adverse(fact)
        if words is not None:
            stated.append((fact, words))
            ids.add(fact.id)
            for sha256 in fact.media:
                by_hash.setdefault(sha256, fact.id)
    carried: dict[str, str] = {}
    evidence: dict[str, list[str]] = {}
    for fact, body in photos:
        carrier = next((n for n in body.speaks_of if n in ids), None)
        carrier = carrier or next((by_hash[h] for h in fact.media if h in by_hash), None)
        if carrier is not None:
            carried[fact.id] = carrier
            evidence.setdefault(carrier, []).append(fact.id)
    return tuple(
        Adverse(
            fact,
            words,
            tuple(evidence.get(fact.id, ())),
            carried.get(fact.id),
            found.get(fact.id) or reasoned_dismissal(settled, fact.id),
        )
        for fact, words in stated
    )
