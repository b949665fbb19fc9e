"""Everything a store does to a disk, in ten small steps that a test can make fail one by one."""

from __future__ import annotations

import os
from collections.abc import Iterable
from contextlib import AbstractContextManager
from pathlib import Path
from typing import Protocol

from witnessmark.stores.locking import locked

__all__ = ["FileSystem", "RealFileSystem"]


class FileSystem(Protocol):
    """The effects a store needs. Every method raises ``OSError`` when the system refuses.

    Nothing is promised to survive a loss of power before ``sync`` (for a file's content) or ``sync_folder`` (for the
    names in a folder) has returned.
    """

    def lock(self, path: Path, *, wait: float) -> AbstractContextManager[None]:
        """Hold the lock file at *path* alone; made when missing. Raises ``TimeoutError`` after *wait* seconds."""

    def make_folder(self, path: Path) -> None:
        """Make the folder; its parent exists. One that is there already is left alone."""

    def write(self, path: Path, chunks: Iterable[bytes]) -> None:
        """Make the file, or empty it, and write the chunks."""

    def append(self, path: Path, data: bytes) -> None:
        """Write after the end of the file; made when missing."""

    def truncate(self, path: Path, size: int) -> None:
        """Cut the file to that many bytes."""

    def sync(self, path: Path) -> None:
        """Return once the file's content is on the disk."""

    def sync_folder(self, path: Path) -> None:
        """Return once the names in the folder are on the disk."""

    def rename(self, old: Path, new: Path) -> None:
        """Give the file another name in one step, in place of any file of that name."""

    def remove(self, path: Path) -> None:
        """Remove the file; no error when it is not there."""


class RealFileSystem:
    """The machine's own file system."""

    def lock(self, path: Path, *, wait: float) -> AbstractContextManager[None]:
        """Hold the lock file, made when missing."""
        return locked(path, alone=True, wait=wait)

    def make_folder(self, path: Path) -> None:
        """Make the folder."""
        path.mkdir(exist_ok=True)

    def write(self, path: Path, chunks: Iterable[bytes]) -> None:
        """Write a file anew."""
        with path.open("wb", buffering=0) as file:
            for chunk in chunks:
                _write_all(file.fileno(), chunk)

    def append(self, path: Path, data: bytes) -> None:
        """Write after the end."""
        with path.open("ab", buffering=0) as file:
            _write_all(file.fileno(), data)

    def truncate(self, path: Path, size: int) -> None:
        """Cut to the size."""
        os.truncate(path, size)

    def sync(self, path: Path) -> None:
        """Put the file's content on the disk."""
        # Opened for writing, because Windows flushes only such handles. Linux reports a failed write-back to the
        # first handle that asks, also when it was opened later.
        with path.open("r+b", buffering=0) as file:
            os.fsync(file.fileno())

    def sync_folder(self, path: Path) -> None:
        """Put the folder's names on the disk."""
        if os.name == "nt":
            return  # Windows cannot sync a folder; NTFS journals its names itself
        handle = os.open(path, os.O_RDONLY)
        try:
            os.fsync(handle)
        finally:
            os.close(handle)

    def rename(self, old: Path, new: Path) -> None:
        """Rename in one step."""
        old.replace(new)

    def remove(self, path: Path) -> None:
        """Remove the file."""
        path.unlink(missing_ok=True)


def _write_all(handle: int, data: bytes) -> None:
    """Write all of it; the system may take less than asked at a time (signals, 2 GiB at once)."""
    rest = memoryview(data)
    while rest:
        rest = rest[os.write(handle, rest) :]
