"""SHA-256 of many files, on as many processors as there are."""

from __future__ import annotations

import os
import threading
from collections.abc import Iterable, Iterator
from concurrent.futures import ThreadPoolExecutor
from contextlib import contextmanager
from hashlib import sha256
from pathlib import Path
from typing import Final, NamedTuple

__all__ = ["Hashed", "hash_file", "hashing"]

#: Bytes read at a time. Large, because a thread that has hashed a piece may wait some milliseconds for its next turn
#: while another one runs Python code; most photos are read in one piece.
_PIECE: Final = 4 << 20

#: More threads than this only wait for the disk.
_MOST_THREADS: Final = 8

_own = threading.local()


class Hashed(NamedTuple):
    """A file that was hashed; or with the reason why it could not be read, and then without digest."""

    path: Path
    digest: str
    size: int
    error: OSError | None = None


def hash_file(path: Path) -> Hashed:
    """SHA-256 (hex) and size of the file; never raises ``OSError``."""
    buffer: bytearray | None = getattr(_own, "buffer", None)
    if buffer is None:
        buffer = _own.buffer = bytearray(_PIECE)
    digest = sha256()
    size = 0
    try:
        with memoryview(buffer) as view, path.open("rb", buffering=0) as file:
            while count := file.readinto(view):
                digest.update(view[:count])
                size += count
    except OSError as error:
        return Hashed(path, "", size, error)
    return Hashed(path, digest.hexdigest(), size)


@contextmanager
def hashing(paths: Iterable[Path]) -> Iterator[Iterator[Hashed]]:
    """Begin to hash the files in the background; gives the results in the order of the paths.

    Leaving early drops what was not begun.
    """
    pool = ThreadPoolExecutor(min(_MOST_THREADS, os.cpu_count() or 1), thread_name_prefix="hash")
    try:
        yield pool.map(hash_file, paths)
    finally:
        pool.shutdown(cancel_futures=True)
