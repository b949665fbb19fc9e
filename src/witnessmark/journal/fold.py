"""What now holds: entries folded into facts, whatever the order they arrived in.

Stub of the contract; see the module's functions.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from witnessmark.journal.acts import Body
from witnessmark.journal.entry import Entry, Source

__all__ = ["Conflict", "Dismissal", "Fact", "Record", "fold"]


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
        drafts: proposals that no person has accepted yet, same order.
        dismissed: what was dropped, drafts included.
        waiting: entries whose base has not arrived (amended, dropped, accepted of an unknown id).
        unread: entries of acts or versions this release does not know.
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
    """Fold entries into what now holds."""
    raise NotImplementedError
