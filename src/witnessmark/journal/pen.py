"""Writing the next entries of one device's chain."""

from __future__ import annotations

from collections.abc import Callable
from datetime import datetime, timedelta
from typing import Final

from witnessmark.journal import messages
from witnessmark.journal.acts import BODIES, Body
from witnessmark.journal.codec import from_line, to_line
from witnessmark.journal.entry import NO_PREVIOUS, Entry, Source
from witnessmark.journal.identity import Ids
from witnessmark.journal.moment import EPOCH, text_of
from witnessmark.journal.vocabulary import misused_words
from witnessmark.problems import Problem, Refusal

__all__ = ["Pen"]

_NAMES: Final = {cls: key for key, cls in sorted(BODIES.items(), key=lambda item: item[0][1])}
_TAP: Final = Source()
_MILLISECOND: Final = timedelta(milliseconds=1)


def _now() -> datetime:
    return datetime.now().astimezone()


class Pen:
    """Writes entries after the last one of a device; keeps nothing but its place in the chain.

    When what it wrote could not be stored, throw the pen away and make a new one from the store's head: this one
    has moved on.

    Args:
        job: UUID of the job.
        by: who records.
        device: stable name of the device; no two devices may share one.
        n: how many entries the device has written, 0 for none (``JournalStore.head``).
        prev: hash of the last of them, ``NO_PREVIOUS`` for none.
        now: the clock, with offset.
        ids: makes the ids; a seeded maker gives the same ids again.
    """

    def __init__(
        self,
        job: str,
        by: str,
        device: str,
        n: int = 0,
        prev: str = NO_PREVIOUS,
        *,
        now: Callable[[], datetime] = _now,
        ids: Ids | None = None,
    ) -> None:
        self.job = job
        self.by = by
        self.device = device
        self.n = n
        self.prev = prev
        self._now = now
        self._ids = Ids() if ids is None else ids

    def write(
        self,
        body: Body,
        *,
        at: datetime | str | None = None,
        place: str | None = None,
        component: str | None = None,
        media: tuple[str, ...] = (),
        source: Source = _TAP,
        draft: bool = False,
    ) -> Entry:
        """The next entry of the chain. ``at`` is when it happened; without it, now.

        Raises:
            Refusal: WM210 when the entry could not be read back as it is meant, with the field and what it allows;
                the pen then stands where it stood.
        """
        if type(body) not in _NAMES:
            allowed = ", ".join(cls.__name__ for cls in _NAMES)
            raise Refusal(messages.NOT_WRITABLE.at("body", f"a {type(body).__name__} is no act; allowed are {allowed}"))
        act, v = _NAMES[type(body)]
        logged = self._now()
        logged_text = text_of(logged)
        happened = logged_text if at is None else at if isinstance(at, str) else text_of(at)
        unsigned = Entry(
            id=self._ids.new((logged - EPOCH) // _MILLISECOND),
            job=self.job,
            by=self.by,
            device=self.device,
            n=self.n + 1,
            prev=self.prev,
            at=happened,
            logged=logged_text,
            act=act,
            v=v,
            body=body,
            place=place,
            component=component,
            media=media,
            source=source,
            draft=draft,
        )
        line = to_line(unsigned)
        where = f"{act} on {self.device}"
        if misused := misused_words(act, body):
            raise Refusal(*(messages.NOT_WRITABLE.at(where, words) for words in misused))
        # What the journal keeps is the line: hand out what the line says, so that nothing differs when it is read.
        entry = from_line(line, where)
        if isinstance(entry, Problem):
            raise Refusal(entry)
        self.n, self.prev = entry.n, entry.hash
        return entry
