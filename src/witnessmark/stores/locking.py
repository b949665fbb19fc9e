"""Who may write: one process or thread at a time, by a lock that the system releases when its holder dies."""

from __future__ import annotations

import os
import sys
import time
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

__all__ = ["PATIENCE", "locked"]

#: Seconds a writer waits for another one. Writing a batch takes some milliseconds; this is for slow drives.
PATIENCE = 20.0

_SHORTEST_NAP = 0.001
_LONGEST_NAP = 0.05

if sys.platform == "win32":  # pragma: no cover - the other system's half
    import msvcrt

    def _try(handle: int, *, alone: bool) -> bool:
        del alone  # Windows has no shared locks here; readers hold theirs for a moment only
        os.lseek(handle, 0, os.SEEK_SET)
        try:
            msvcrt.locking(handle, msvcrt.LK_NBLCK, 1)
        except PermissionError:
            return False
        return True

    def _release(handle: int) -> None:
        os.lseek(handle, 0, os.SEEK_SET)
        msvcrt.locking(handle, msvcrt.LK_UNLCK, 1)

else:
    import fcntl

    def _try(handle: int, *, alone: bool) -> bool:
        try:
            # flock belongs to the open file, so it also keeps threads of one process apart.
            fcntl.flock(handle, (fcntl.LOCK_EX if alone else fcntl.LOCK_SH) | fcntl.LOCK_NB)
        except BlockingIOError:
            return False
        return True

    def _release(handle: int) -> None:
        fcntl.flock(handle, fcntl.LOCK_UN)


@contextmanager
def locked(path: Path, *, alone: bool, wait: float = PATIENCE) -> Iterator[None]:
    """Hold the lock file: *alone* to write (the file is made when missing), else together with other readers.

    Raises:
        TimeoutError: somebody else held it for *wait* seconds.
        OSError: the file cannot be opened, or the drive knows no locks.
    """
    # O_CREAT only for writers: reading a job leaves no file behind.
    flags = os.O_RDWR | os.O_CREAT if alone else os.O_RDONLY
    handle = os.open(path, flags | getattr(os, "O_CLOEXEC", 0) | getattr(os, "O_BINARY", 0), 0o666)
    try:
        _wait(handle, path, alone=alone, wait=wait)
        try:
            yield
        finally:
            _release(handle)
    finally:
        os.close(handle)


def _wait(handle: int, path: Path, *, alone: bool, wait: float) -> None:
    until = time.monotonic() + wait
    nap = _SHORTEST_NAP
    while not _try(handle, alone=alone):
        if time.monotonic() >= until:
            raise TimeoutError(f"{path} has been held by another program for {wait:g} seconds")
        time.sleep(nap)
        nap = min(2 * nap, _LONGEST_NAP)
