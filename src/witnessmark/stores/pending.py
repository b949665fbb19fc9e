"""A batch on its way into the journal: written down whole first, so that a crash leaves all of it or none.

``journal.pending`` holds one line of JSON (where in the journal the batch begins, its size and its SHA-256) and then
the batch itself. It is on the disk before the journal is touched and is removed after the journal is on the disk.
Whoever finds one holds the lock and can tell from it what happened:

- the file is not whole: the journal was not touched yet, none of the batch is kept;
- the journal holds the batch there already: only the removal was lost, all of it is kept;
- else the batch is written at that place again, over what part of it had arrived.
"""

from __future__ import annotations

import json
from dataclasses import dataclass
from hashlib import sha256
from pathlib import Path
from typing import Final

__all__ = ["Pending", "parse_pending"]

_LONGEST_HEAD: Final = 300


@dataclass(frozen=True, slots=True)
class Pending:
    """A batch of whole lines, and the size of the journal before it."""

    at: int
    batch: bytes

    def encode(self) -> bytes:
        """The content of ``journal.pending``."""
        head = {"at": self.at, "size": len(self.batch), "sha256": sha256(self.batch).hexdigest()}
        return json.dumps(head).encode() + b"\n" + self.batch

    def has_arrived(self, journal: Path) -> bool:
        """Whether the journal holds the batch at its place."""
        return _part(journal, self.at, len(self.batch)) == self.batch

    def fits(self, size: int) -> bool:
        """Whether a journal of that size can be one in which this batch was being written."""
        return self.at <= size <= self.at + len(self.batch)

    def strange_part(self, journal: Path) -> bytes:
        """What stands in the journal after ``at`` if it is not a beginning of the batch, else nothing."""
        tail = _part(journal, self.at, len(self.batch))
        return b"" if self.batch.startswith(tail) else tail


def parse_pending(content: bytes) -> Pending | None:
    """The batch, or None when the content is not whole."""
    head, newline, batch = content.partition(b"\n")
    if not newline or len(head) > _LONGEST_HEAD:
        return None
    try:
        fields = json.loads(head)
        at, size, digest = fields["at"], fields["size"], fields["sha256"]
    except (ValueError, KeyError, TypeError, RecursionError):
        return None
    if type(at) is not int or at < 0 or size != len(batch) or digest != sha256(batch).hexdigest():
        return None
    return Pending(at, batch) if batch.endswith(b"\n") else None


def _part(path: Path, at: int, size: int) -> bytes:
    try:
        with path.open("rb") as file:
            file.seek(at)
            return file.read(size)
    except FileNotFoundError:
        return b""
