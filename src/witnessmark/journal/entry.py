"""One entry of the journal: who recorded which act, when it happened and when it was written, on what grounds.

An entry is a frozen record. It is stored as one line of canonical JSON with its own ``hash`` beside its fields,
so that any line can be checked alone; ``prev`` chains the entries of one device.
"""

from __future__ import annotations

from dataclasses import dataclass, field

from witnessmark.journal.acts import Body

__all__ = ["NO_PREVIOUS", "SOURCES", "Entry", "Source", "Unread"]

#: ``prev`` of the first entry of a device.
NO_PREVIOUS = "0" * 64

#: How an entry came about.
SOURCES = ("tap", "speech", "photo", "import", "program")


@dataclass(frozen=True, slots=True)
class Source:
    """Where an entry comes from.

    Attributes:
        sort: one of ``SOURCES``.
        file: name of the narration, photo or file, where there is one.
        start: seconds into the recording where the words begin, as a decimal string.
        end: seconds where they end, as a decimal string.
        words: the words the entry rests on, as they were recognised.
        rule: which rule or program proposed it.
    """

    sort: str = "tap"
    file: str | None = None
    start: str | None = None
    end: str | None = None
    words: str | None = None
    rule: str | None = None


@dataclass(frozen=True, slots=True)
class Unread:
    """The body of an act or version that this release does not know. Kept to the byte, shown, never interpreted."""

    json: str


@dataclass(frozen=True, slots=True)
class Entry:
    """One line of the journal.

    Attributes:
        id: UUIDv7 as text.
        job: UUID of the job.
        by: the person (or program) who records.
        device: stable name of the device.
        n: count of entries on that device, from 1.
        prev: hash of that device's previous entry, ``NO_PREVIOUS`` for the first.
        at: RFC 3339 with offset, when it happened.
        logged: RFC 3339 with offset, when it was written.
        act: one of ``ACTS``, or the name of an act that a newer release writes.
        v: version of the act's body, from 1.
        body: what the act says.
        place: id of the place, where it has one.
        component: id of the component, where it has one.
        media: SHA-256 (hex) of each file it rests on.
        source: how it came about.
        draft: proposed by a program; counts only once a person's ``accepted`` names it.
        hash: SHA-256 (hex) over the canonical JSON of all fields above; computed when written.
    """

    id: str
    job: str
    by: str
    device: str
    n: int
    prev: str
    at: str
    logged: str
    act: str
    v: int
    body: Body | Unread
    place: str | None = None
    component: str | None = None
    media: tuple[str, ...] = ()
    source: Source = field(default_factory=Source)
    draft: bool = False
    hash: str = ""
