"""What judging says: loose ends, coverage of duties, readings against criteria, and whether a report may be issued.

Plain frozen rows, each pointing at the entries it rests on.
"""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime

from witnessmark.packs.model import Criterion, Duty

__all__ = [
    "BLOCKING", "ENDS", "DraftFinding", "DutyCoverage", "JudgedReading", "LooseEnd", "Running", "Standing",
    "SubjectCoverage",
]  # fmt: skip

#: The sorts of loose end, in the order they are shown.
ENDS = ("still on", "look again", "put back", "make sure", "write up", "picture it", "name it", "say why")
#: Those that keep a report from being issued.
BLOCKING = frozenset({"still on", "say why", "write up", "make sure"})


@dataclass(frozen=True, slots=True)
class LooseEnd:
    """Something an entry opened and nothing has closed.

    Attributes:
        sort: one of ``ENDS``.
        key: stable name, the sort and the id of what opened it (``still on 0193…``, ``say why WA-014/1``).
        words: what is open, in plain words.
        entries: ids of the entries it rests on.
        place, component: where, when known.
        opened: instant it was opened, where an entry opened it.
        earliest, latest: the window of a second look, or the time by which something must be stopped.
        late: the window has passed.
        next: what closes it, in plain words.
        cautions: caution ids that apply before doing it.
        duty: duty id for ``say why``.
        tag: provenance tag of the duty, shown to the reader.
    """

    sort: str
    key: str
    words: str
    entries: tuple[str, ...]
    place: str | None = None
    component: str | None = None
    opened: datetime | None = None
    earliest: datetime | None = None
    latest: datetime | None = None
    late: bool = False
    next: str = ""
    cautions: tuple[str, ...] = ()
    duty: str | None = None
    tag: str | None = None


@dataclass(frozen=True, slots=True)
class Running:
    """Something now running, open, filled, unlatched, tripped or changed, since when and from which entry."""

    entry: str
    words: str
    left: str
    since: datetime
    place: str | None = None
    component: str | None = None


@dataclass(frozen=True, slots=True)
class SubjectCoverage:
    """One subject of a duty: ``met``, ``excused``, ``open`` or ``not asked``, and by which entries."""

    words: str
    status: str
    entries: tuple[str, ...]
    why: str = ""


@dataclass(frozen=True, slots=True)
class DutyCoverage:
    """One duty: ``met``, ``excused``, ``open`` or ``not asked`` (its condition does not hold), and by what."""

    duty: Duty
    status: str
    subjects: tuple[SubjectCoverage, ...]
    why: str = ""

    @property
    def entries(self) -> tuple[str, ...]:
        """Every entry that meets or excuses any subject."""
        return tuple(dict.fromkeys(e for s in self.subjects for e in s.entries))


@dataclass(frozen=True, slots=True)
class JudgedReading:
    """A reading held against one criterion.

    ``verdict`` is ``within``, ``beyond``, ``no criterion`` or ``cannot compare``; ``words`` says so in a sentence
    with the limit, document, edition and section. ``must`` tells a requirement in force from a recommendation;
    ``force`` says that in a sentence.
    """

    entry: str
    verdict: str
    words: str
    criterion: Criterion | None = None
    must: bool = False
    force: str = ""


@dataclass(frozen=True, slots=True)
class DraftFinding:
    """A finding the engine proposes for an adverse fact; the inspector decides. Fields as in the ``found`` act."""

    rests_on: tuple[str, ...]
    title: str
    seen: str
    why: str
    if_left: str
    do: str
    by: str
    direct: str
    stake: str
    urgency: str
    kind: str | None = None
    condition: str | None = None
    place: str | None = None
    component: str | None = None


@dataclass(frozen=True, slots=True)
class Standing:
    """Where a visit stands at a moment."""

    at: datetime
    running: tuple[Running, ...]
    loose_ends: tuple[LooseEnd, ...]
    duties: tuple[DutyCoverage, ...]
    readings: tuple[JudgedReading, ...]

    @property
    def blocking(self) -> tuple[LooseEnd, ...]:
        """The loose ends that keep a report from being issued."""
        return tuple(end for end in self.loose_ends if end.sort in BLOCKING)
