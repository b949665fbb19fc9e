"""Small records for tests of views and judging: one act after another on an invented visit."""

from __future__ import annotations

from datetime import datetime, timedelta, timezone

from witnessmark.journal.acts import BODIES, Body
from witnessmark.journal.entry import NO_PREVIOUS, Entry, Source
from witnessmark.journal.fold import Record, fold

__all__ = ["START", "Visit", "after"]

START = datetime(2026, 2, 3, 9, 0, tzinfo=timezone(timedelta(hours=-8)))
_ACTS = {cls: key for key, cls in BODIES.items()}


def after(minutes: float) -> datetime:
    """The instant so many minutes into the visit."""
    return START + timedelta(minutes=minutes)


class Visit:
    """Collects entries; ids count up from ``e001`` so that tests can name them."""

    def __init__(self) -> None:
        self.entries: list[Entry] = []

    def add(
        self,
        body: Body,
        minutes: float | None = None,
        *,
        place: str | None = None,
        component: str | None = None,
        media: tuple[str, ...] = (),
        source: Source | None = None,
        draft: bool = False,
        name: str = "",
    ) -> str:
        """Add an entry so many minutes into the visit (else one minute after the one before); returns its id."""
        n = len(self.entries) + 1
        at = after(n if minutes is None else minutes).isoformat()
        act, v = _ACTS[type(body)]
        entry = Entry(
            id=name or f"e{n:03}", job="job", by="A. Example", device="phone", n=n, prev=NO_PREVIOUS, at=at, logged=at, act=act,
            v=v, body=body, place=place, component=component, media=media, source=source or Source(), draft=draft,
            hash=f"{n:064x}",
        )  # fmt: skip
        self.entries.append(entry)
        return entry.id

    def record(self) -> Record:
        """What now holds."""
        return fold(self.entries)
