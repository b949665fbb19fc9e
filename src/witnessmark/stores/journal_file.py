"""What a job folder's journal holds at one moment, read without writing anything.

Readers hold the lock together for the moment in which they note how long the journal is; as it only grows, they then
read up to there while others write. A batch that a crash left in ``journal.pending`` is read from there.
"""

from __future__ import annotations

import io
from collections.abc import Iterator
from pathlib import Path
from typing import Final, NamedTuple

from witnessmark.problems import Refusal
from witnessmark.stores import messages
from witnessmark.stores.lines import Reading, read_lines
from witnessmark.stores.locking import PATIENCE, locked
from witnessmark.stores.pending import parse_pending
from witnessmark.stores.refusing import reading

__all__ = [
    "JOURNAL", "LOCK", "PENDING", "TORN_FILES", "View", "content_of", "pieces_of", "read_from", "read_journal", "require_folder",
    "size_of", "start_of_unfinished", "view_of",
]  # fmt: skip

JOURNAL: Final = "journal.jsonl"
PENDING: Final = "journal.pending"
LOCK: Final = "journal.lock"
#: What ``mending`` moved out of the journal.
TORN_FILES: Final = "journal.torn-*.jsonl"
#: Bytes read at a time.
PIECE: Final = 1 << 20


class View(NamedTuple):
    """The journal at one moment: so many bytes of the file, and lines that a crash kept from getting there."""

    size: int
    more: bytes
    there: bool = True


def read_journal(folder: Path, *, wait: float = PATIENCE) -> Reading | None:
    """Read the journal of a job folder; None when it holds no journal yet.

    Raises:
        Refusal: the folder is not there (WM301), the journal cannot be read (WM302, WM303), or a writer does not come
            to an end within *wait* seconds (WM307).
    """
    require_folder(folder)
    view = view_of(folder, wait)
    journal = folder / JOURNAL
    # Whether there was a journal is part of the view: the first writer may have begun one since.
    return read_from(journal, 0, view) if view.more or view.there else None


def read_from(journal: Path, start: int, view: View) -> Reading:
    """Read what the view shows from byte *start* on, where a line begins."""
    with reading(journal):
        if view.size == start == 0 and not journal.exists():
            # Only a batch that a crash left behind.
            return read_lines(io.BytesIO(), str(journal), 0, view.more)
        with journal.open("rb", buffering=PIECE) as file:
            file.seek(start)
            return read_lines(file, str(journal), view.size - start, view.more)


def view_of(folder: Path, wait: float) -> View:
    """What the journal holds now. Waits for a writer to finish; waits for nobody where there never was a writer."""
    lock = folder / LOCK
    with reading(folder / JOURNAL):
        for _ in range(2):
            try:
                with locked(lock, alone=False, wait=wait):
                    return _view(folder)
            except TimeoutError:
                raise
            except FileNotFoundError:
                view = _view(folder)
                if not lock.exists():
                    return view
                # The first writer came meanwhile: look again, with the lock.
            except OSError:
                break  # the lock file may not be opened here, or the drive has no locks
        return _view(folder)


def _view(folder: Path) -> View:
    journal = folder / JOURNAL
    content = content_of(folder / PENDING)  # before the size: a batch that is being written is then seen whole
    there = journal.exists()  # before the size as well, so that no size is taken of what a view calls missing
    size = size_of(journal) if there else 0
    pending = parse_pending(content) if content else None
    if pending is None or not pending.fits(size) or pending.has_arrived(journal):
        return View(size, b"", there)
    return View(pending.at, pending.batch)


def require_folder(folder: Path) -> None:
    """Refuse (WM301) what is no folder."""
    if not folder.is_dir():
        raise Refusal(messages.NO_FOLDER.at(str(folder), "it is a file" if folder.exists() else "nothing is there"))


def size_of(path: Path) -> int:
    """How many bytes the file has; 0 when it is not there. Raises ``IsADirectoryError`` for a folder."""
    try:
        status = path.stat()
    except FileNotFoundError:
        return 0
    if path.is_dir():
        raise IsADirectoryError(f"{path} is a folder")
    return status.st_size


def content_of(path: Path) -> bytes | None:
    """All bytes of a small file, None when it is not there."""
    try:
        return path.read_bytes()
    except FileNotFoundError:
        return None


def start_of_unfinished(path: Path) -> int:
    """Where the part after the last newline begins; the size of the file when it ends with one."""
    end = size_of(path)
    if end == 0:
        return 0
    with path.open("rb") as file:
        while end > 0:
            start = max(0, end - PIECE)
            file.seek(start)
            at = file.read(end - start).rfind(b"\n")
            if at >= 0:
                return start + at + 1
            end = start
    return 0


def pieces_of(path: Path, start: int) -> Iterator[bytes]:
    """The bytes from *start* on, a piece at a time."""
    with path.open("rb") as file:
        file.seek(start)
        while piece := file.read(PIECE):
            yield piece
