"""What now holds: entries folded into facts, whatever the order they arrived in."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from datetime import timedelta

from witnessmark.journal import messages
from witnessmark.journal.acts import Amended, Body, Dropped
from witnessmark.journal.codec import problems_of_unread
from witnessmark.journal.effects import NAMING, effects_of
from witnessmark.journal.entry import Entry, Source, Unread
from witnessmark.journal.moment import since_epoch
from witnessmark.problems import Problem

__all__ = ["Conflict", "Dismissal", "Fact", "Record", "fold", "problems_of"]


@dataclass(frozen=True, slots=True)
class Fact:
    """An entry as it now holds, after its amendments.

    Attributes:
        id: id of the entry that first recorded it; stays the same through every amendment.
        act, v, body, place, component, at, media: as they now hold (the last amendment's where amended).
        entry: the entry as first recorded.
        amended_by: ids of the amendments, oldest first; the last one holds.
        accepted_by: id of the acceptance, when it began as a draft.
    """

    id: str
    act: str
    v: int
    body: Body
    place: str | None
    component: str | None
    at: str
    media: tuple[str, ...]
    entry: Entry
    amended_by: tuple[str, ...] = ()
    accepted_by: str | None = None

    @property
    def source(self) -> Source:
        """How the entry came about."""
        return self.entry.source


@dataclass(frozen=True, slots=True)
class Dismissal:
    """A fact that no longer counts, by which entry, and why."""

    fact: Fact
    by: str
    why: str


@dataclass(frozen=True, slots=True)
class Conflict:
    """Two or more amendments of one entry written without knowledge of each other; the last in order holds."""

    of: str
    amendments: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Record:
    """The whole record as it now holds. The same for the same set of entries, in whatever order they came.

    Attributes:
        facts: what counts, ordered by (instant of ``at``, id).
        drafts: proposals that no person has accepted yet, same order; also drafted removals and amendments.
        dismissed: what was dropped, drafts included.
        waiting: entries that take no effect, or not all of it: their base has not arrived (amended, dropped, accepted
            of an unknown id), or ``problems_of`` says what else is wrong.
        unread: entries of acts or versions this release does not know. One that a known act amends counts as a
            fact too; an amendment that is itself unread changes nothing yet.
        conflicts: amendments made in ignorance of each other.
        entries: every entry by id.
    """

    facts: tuple[Fact, ...]
    drafts: tuple[Fact, ...]
    dismissed: tuple[Dismissal, ...]
    waiting: tuple[Entry, ...]
    unread: tuple[Entry, ...]
    conflicts: tuple[Conflict, ...]
    entries: Mapping[str, Entry]


def fold(entries: Iterable[Entry]) -> Record:
    """Fold entries into what now holds; the same for the same entries in whatever order, once or repeated.

    A draft counts once an acceptance that a person wrote names it. An amendment replaces what its entry said, as
    a whole; the last one holds, in the order of (logged instant, id) but never before one that it knows of. A
    removal takes an entry out of what counts: of a fact to ``dismissed``, of an amendment so that the one before it
    holds again, of a removal so that the entry counts again. The record loses nothing by any of these.

    Two entries of one id cannot both be folded; the one with the lower hash is, and ``merge`` tells of both.
    """
    by_id = _by_id(entries)
    effects = effects_of(by_id)
    accepted, dropped, amendments = effects.accepted, effects.dropped, effects.amendments
    facts: list[Fact] = []
    drafts: list[Fact] = []
    dismissed: list[Fact] = []
    unread: list[Entry] = []
    for id_, entry in by_id.items():
        kind = type(entry.body)
        if kind is Unread:
            unread.append(entry)
            if id_ not in amendments:
                continue
        elif kind in NAMING and not entry.draft:
            continue
        fact = _fact(entry, amendments.get(id_), accepted.get(id_) if entry.draft else None, by_id)
        if id_ in dropped:
            dismissed.append(fact)
        elif entry.draft and id_ not in accepted:
            drafts.append(fact)
        elif kind not in NAMING:
            facts.append(fact)
    return Record(
        facts=_sorted(facts),
        drafts=_sorted(drafts),
        dismissed=tuple(_dismissal(fact, dropped[fact.id]) for fact in _sorted(dismissed)),
        waiting=tuple(sorted((by_id[id_] for id_ in effects.waiting), key=lambda e: (since_epoch(e.logged), e.id))),
        unread=tuple(unread),
        conflicts=tuple(Conflict(of, effects.conflicts[of]) for of in sorted(effects.conflicts)),
        entries=by_id,
    )


def problems_of(record: Record) -> list[Problem]:
    """What of the record takes no effect or is contradictory: WM207 and WM231 to WM235."""
    effects = effects_of(record.entries)
    found = [
        effects.waiting[entry.id].at(f"entry {entry.id}", f"{entry.act} by {entry.by}", entries=(entry.id,))
        for entry in record.waiting
    ]
    found += [
        messages.AMENDED_TWICE.at(
            f"entry {conflict.of}",
            f"amended by {', '.join(conflict.amendments)}; the last holds",
            entries=(conflict.of, *conflict.amendments),
        )
        for conflict in record.conflicts
    ]
    return found + problems_of_unread(record.unread)


def _by_id(entries: Iterable[Entry]) -> dict[str, Entry]:
    """The entries by id, in the order of their ids."""
    by_id: dict[str, Entry] = {}
    for entry in entries:
        held = by_id.setdefault(entry.id, entry)
        # Which of two is kept is arbitrary, but must not depend on the order; equal hashes of unequal entries are forged.
        if held is not entry and held != entry and (entry.hash, repr(entry)) < (held.hash, repr(held)):
            by_id[entry.id] = entry
    return {id_: by_id[id_] for id_ in sorted(by_id)}


def _fact(entry: Entry, amendments: list[Entry] | None, acceptance: Entry | None, entries: Mapping[str, Entry]) -> Fact:
    accepted_by = None if acceptance is None else acceptance.id
    if amendments is None:
        if isinstance(entry.body, Unread):
            raise TypeError("an unread entry is a fact only once it is amended")
        return Fact(
            entry.id, entry.act, entry.v, entry.body, entry.place, entry.component, entry.at, entry.media, entry, (),
            accepted_by,
        )  # fmt: skip
    last = amendments[-1]
    says = last.body
    if not isinstance(says, Amended) or says.body is None:
        raise TypeError("only amendments that say something take effect")
    in_effect = tuple(amendment.id for amendment in amendments)
    at = _amended_at(says, set(in_effect), entries) or entry.at
    return Fact(
        entry.id, says.act, says.v, says.body, says.place, says.component, at, last.media, entry, in_effect,
        accepted_by,
    )  # fmt: skip


def _amended_at(says: Amended, in_effect: set[str], entries: Mapping[str, Entry]) -> str | None:
    """When it happened, as the amendment says, or the one it amends, and so on; None when none says it."""
    while says.at is None:
        base = entries[says.of]
        if not isinstance(base.body, Amended):
            return None
        says = base.body
        if says.at is not None and base.id not in in_effect:
            says = replace(says, at=None)
    return says.at


def _sorted(facts: list[Fact]) -> tuple[Fact, ...]:
    return tuple(sorted(facts, key=_when))


def _when(fact: Fact) -> tuple[timedelta, str]:
    return since_epoch(fact.at), fact.id


def _dismissal(fact: Fact, removal: Entry) -> Dismissal:
    why = removal.body.why if isinstance(removal.body, Dropped) else ""
    return Dismissal(fact, removal.id, why)
