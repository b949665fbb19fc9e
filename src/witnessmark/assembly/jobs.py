"""A job as the doors use it: its facts, its record and its media, read and added to through the stores."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from datetime import datetime
from pathlib import Path

from witnessmark.journal.entry import Entry
from witnessmark.journal.fold import Record, fold
from witnessmark.journal.job import Job
from witnessmark.journal.moment import instant
from witnessmark.journal.pen import Pen
from witnessmark.judging import standing
from witnessmark.judging.model import Standing
from witnessmark.packs.model import Packs
from witnessmark.problems import Problem
from witnessmark.stores.folder import FolderJournal
from witnessmark.stores.job_file import new_job_folder, read_job
from witnessmark.stores.media import LocalMedia

__all__ = ["OpenJob", "new_job", "open_job"]


def _now() -> datetime:
    return datetime.now().astimezone()


@dataclass(slots=True)
class OpenJob:
    """One job folder, opened.

    Attributes:
        folder: where it lies.
        job: its facts.
        journal, media: its stores.
        now: the clock for what is written; demonstrations and tests set it.
    """

    folder: Path
    job: Job
    journal: FolderJournal
    media: LocalMedia
    now: Callable[[], datetime] = _now

    def entries(self) -> tuple[list[Entry], list[Problem]]:
        """Every entry that can be read, and the problems met."""
        return self.journal.read()

    def record(self) -> Record:
        """What now holds."""
        return fold(self.entries()[0])

    def pen(self, by: str | None = None, device: str = "desk") -> Pen:
        """A pen for the next entries of a device, in the inspector's name unless another is given."""
        return self.pen_at(*self.journal.head(device), by, device)

    def pen_at(self, n: int, prev: str, by: str | None = None, device: str = "desk") -> Pen:
        """A pen that goes on after the given place in the device's chain."""
        return Pen(self.job.id, by or self.job.inspector or "inspector", device, n, prev, now=self.now)

    def keep(self, entries: Sequence[Entry]) -> int:
        """Append entries, all or none; returns how many were new."""
        return self.journal.append(entries)

    def standing(self, packs: Packs, at: datetime | None = None) -> Standing:
        """Where the visit stands by the whole record; *at* is the clock that says what is late, now unless given."""
        return standing(self.record(), packs, self.job, at or self.now())

    def record_at(self, at: datetime) -> Record:
        """What had happened by a moment in the past, by what is known of it now (also if it was accepted later)."""
        whole = self.record()
        facts = tuple(fact for fact in whole.facts if instant(fact.at) <= at)
        drafts = tuple(fact for fact in whole.drafts if instant(fact.at) <= at)
        return replace(whole, facts=facts, drafts=drafts)


def open_job(folder: Path, now: Callable[[], datetime] = _now) -> OpenJob:
    """Open a job folder.

    Raises:
        Refusal: there is no job there, or its facts cannot be read (numbers of the stores).
    """
    return OpenJob(folder, read_job(folder), FolderJournal(folder), LocalMedia(folder / "media"), now)


def new_job(folder: Path, job: Job, now: Callable[[], datetime] = _now) -> OpenJob:
    """Make a job folder with these facts.

    Raises:
        Refusal: the folder holds something already, or cannot be written (numbers of the stores).
    """
    new_job_folder(folder, job)
    return open_job(folder, now)
