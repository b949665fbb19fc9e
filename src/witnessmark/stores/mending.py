"""What the next writer does with what a crash, or another program, left in a job folder."""

from __future__ import annotations

import time
from collections.abc import Iterable
from pathlib import Path

from witnessmark.journal.codec import from_line
from witnessmark.problems import Problem
from witnessmark.stores import messages
from witnessmark.stores.filesystem import FileSystem
from witnessmark.stores.journal_file import JOURNAL, PENDING, content_of, pieces_of, size_of, start_of_unfinished
from witnessmark.stores.lines import LONGEST_LINE
from witnessmark.stores.pending import Pending, parse_pending

__all__ = ["mend"]


def mend(folder: Path, files: FileSystem) -> list[Problem]:
    """Finish or discard a pending batch and give the journal a clean end; the caller holds the lock.

    Returns WM311 for everything that was moved to ``journal.torn-<time>.jsonl``; nothing is deleted.

    Raises:
        OSError: the drive refused; the next call begins again.
    """
    aside: list[Problem] = []
    _mend_pending(folder, files, aside)
    _mend_end(folder, files, aside)
    return aside


def _mend_pending(folder: Path, files: FileSystem, aside: list[Problem]) -> None:
    content = content_of(folder / PENDING)
    if content is None:
        return
    pending = parse_pending(content)
    if pending is not None:
        _finish(pending, folder, files, aside)
    elif content:
        _keep_aside(folder, [content], files, aside)
    files.remove(folder / PENDING)


def _finish(pending: Pending, folder: Path, files: FileSystem, aside: list[Problem]) -> None:
    journal = folder / JOURNAL
    if not pending.has_arrived(journal):
        size = size_of(journal)
        if not pending.fits(size):
            _keep_aside(folder, [pending.batch], files, aside)  # something else changed the journal since
            return
        if strange := pending.strange_part(journal):
            _keep_aside(folder, [strange], files, aside)
        if size > pending.at:
            files.truncate(journal, pending.at)
        files.append(journal, pending.batch)
    files.sync(journal)
    files.sync_folder(folder)


def _mend_end(folder: Path, files: FileSystem, aside: list[Problem]) -> None:
    """Complete, or move away, a last line that has no newline."""
    journal = folder / JOURNAL
    start, size = start_of_unfinished(journal), size_of(journal)
    if start == size:
        return
    if size - start <= LONGEST_LINE:
        line = b"".join(pieces_of(journal, start))
        if not isinstance(from_line(line, JOURNAL), Problem):
            files.append(journal, b"\n")
            files.sync(journal)
            return
    _keep_aside(folder, pieces_of(journal, start), files, aside)
    files.truncate(journal, start)
    files.sync(journal)


def _keep_aside(folder: Path, pieces: Iterable[bytes], files: FileSystem, aside: list[Problem]) -> None:
    path = _free_name(folder)
    files.write(path, pieces)
    files.sync(path)
    files.sync_folder(folder)
    aside.append(messages.SET_ASIDE.at(str(folder / JOURNAL), f"now in {path.name}"))


def _free_name(folder: Path) -> Path:
    stamp = time.strftime("%Y%m%dT%H%M%SZ", time.gmtime())
    path, count = folder / f"journal.torn-{stamp}.jsonl", 1
    while path.exists():
        count += 1
        path = folder / f"journal.torn-{stamp}-{count}.jsonl"
    return path
