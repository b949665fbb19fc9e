"""The journal of a job folder: ``journal.jsonl``, one entry a line, only ever added to.

How a batch is kept whole or not at all. A writer holds ``journal.lock`` alone. It writes the batch to
``journal.pending`` (with its place, size and SHA-256) and syncs that file and the folder; then it appends the batch to
the journal in one write and syncs; then it removes ``journal.pending``. If a step fails while the program lives, the
steps before are taken back. If the program or the machine dies, whoever next writes finds ``journal.pending`` and
finishes or discards it (see ``pending``); whoever only reads sees the same outcome without writing anything.

What cannot come from this program, a last line that stops in the middle, is never deleted: the next writer moves it to
``journal.torn-<time>.jsonl`` beside the journal and says so (WM311, in ``set_aside``).
"""

from __future__ import annotations

from collections.abc import Sequence
from contextlib import ExitStack, suppress
from pathlib import Path
from threading import RLock
from typing import NoReturn

from witnessmark.journal.entry import Entry
from witnessmark.problems import Problem, Refusal
from witnessmark.stores import messages
from witnessmark.stores.admission import Index, admit
from witnessmark.stores.filesystem import FileSystem, RealFileSystem
from witnessmark.stores.journal_file import (
    JOURNAL,
    LOCK,
    PENDING,
    View,
    read_from,
    read_journal,
    require_folder,
    size_of,
    view_of,
)
from witnessmark.stores.locking import PATIENCE
from witnessmark.stores.mending import mend
from witnessmark.stores.pending import Pending
from witnessmark.stores.refusing import reading, write_problem, writing

__all__ = ["FolderJournal"]


class FolderJournal:
    """Keeps the entries of one job in its folder. Safe to use from several threads, processes and objects at once.

    Attributes:
        set_aside: WM311 for whatever this object moved out of the journal.

    Args:
        folder: the job folder; it must exist.
        files: the file system; tests give one that fails.
        wait: seconds to wait for another writer.
    """

    def __init__(self, folder: Path, files: FileSystem | None = None, *, wait: float = PATIENCE) -> None:
        self.folder = folder
        self.set_aside: list[Problem] = []
        self._files = RealFileSystem() if files is None else files
        self._wait = wait
        self._journal = folder / JOURNAL
        self._pending = folder / PENDING
        self._guard = RLock()
        self._index = Index()
        self._indexed = 0  # so many bytes of the file are in the index, always whole lines

    def append(self, entries: Sequence[Entry], *, forks: bool = False) -> int:
        """Keep all of the entries or none and return how many were new; ``admission.admit`` says which are taken.

        Raises:
            Refusal: an entry cannot be taken (WM320 to WM324), or the drive refuses (WM304 to WM309). The journal is
                then as it was before, to the byte.
        """
        with self._guard, ExitStack() as held:
            require_folder(self.folder)
            with writing(self._journal):
                held.enter_context(self._files.lock(self.folder / LOCK, wait=self._wait))
                self.set_aside += mend(self.folder, self._files)
            with reading(self._journal):
                size = size_of(self._journal)
            index = self._up_to_date(View(size, b""))
            admitted = admit(entries, index, str(self._journal), forks=forks)
            if admitted:
                batch = b"".join(one.line + b"\n" for one in admitted)
                self._write(Pending(size, batch))
                index.add(one.entry for one in admitted)
                self._indexed = size + len(batch)
            return len(admitted)

    def read(self) -> tuple[list[Entry], list[Problem]]:
        """All good entries in the order of the file, and what is wrong with the rest. Writes nothing."""
        result = read_journal(self.folder, wait=self._wait)
        if result is None:
            return [], []
        return result.entries, result.problems + result.unread

    def head(self, device: str) -> tuple[int, str]:
        """Count and hash of the device's last entry; ``(0, NO_PREVIOUS)`` when it has none. Writes nothing."""
        with self._guard:
            require_folder(self.folder)
            return self._up_to_date(view_of(self.folder, self._wait)).head(device)

    def _up_to_date(self, view: View) -> Index:
        """The index of everything in the view; reads only what was added since last time."""
        if view.size < self._indexed:
            self._index, self._indexed = Index(), 0
        if view.more:
            # A crash left a batch behind and only a writer may finish it: do not remember what is not in the file.
            whole = Index()
            whole.add(read_from(self._journal, 0, view).entries)
            return whole
        if view.size > self._indexed:
            added = read_from(self._journal, self._indexed, view)
            self._index.add(added.entries)
            self._indexed += added.whole
        return self._index

    def _write(self, pending: Pending) -> None:
        files = self._files
        try:
            files.write(self._pending, [pending.encode()])
            files.sync(self._pending)
            files.sync_folder(self.folder)
            files.append(self._journal, pending.batch)
            files.sync(self._journal)
            if pending.at == 0:
                files.sync_folder(self.folder)
        except OSError as error:
            self._take_back(pending, error)
        with suppress(OSError):  # if it stays, the next writer sees that the batch has arrived
            files.remove(self._pending)

    def _take_back(self, pending: Pending, error: OSError) -> NoReturn:
        """Leave no trace of the batch and refuse it. The pending file goes last: until then it can be finished."""
        problem = write_problem(error, self._journal)
        try:
            if pending.at == 0 and self._journal.exists():
                self._files.remove(self._journal)
            elif size_of(self._journal) > pending.at:
                self._files.truncate(self._journal, pending.at)
                self._files.sync(self._journal)
            if self._pending.exists():
                self._files.remove(self._pending)
                self._files.sync_folder(self.folder)
        except OSError as second:
            raise Refusal(messages.UNSURE.at(str(self._journal), str(second)), problem) from error
        raise Refusal(problem) from error
