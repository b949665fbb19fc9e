"""A journal and media that live as long as the program: for trying things out, for tests, and as the plain example."""

from __future__ import annotations

import shutil
import tempfile
import weakref
from collections.abc import Iterable, Iterator, Sequence
from hashlib import sha256
from pathlib import Path
from threading import RLock

from witnessmark.journal.entry import Entry
from witnessmark.problems import Problem
from witnessmark.stores import messages
from witnessmark.stores.admission import Index, admit
from witnessmark.stores.lines import Reader
from witnessmark.stores.media_names import is_hash, plain_suffix
from witnessmark.stores.refusing import reading

__all__ = ["MemoryJournal", "MemoryMedia"]

_NAME = "memory"


class MemoryJournal:
    """Keeps the lines of one job's entries in memory."""

    def __init__(self) -> None:
        self._lines: list[bytes] = []
        self._index = Index()
        self._guard = RLock()

    def append(self, entries: Sequence[Entry], *, forks: bool = False) -> int:
        """Keep all of the entries or none; see ``JournalStore.append`` and ``admission.admit``."""
        with self._guard:
            admitted = admit(entries, self._index, _NAME, forks=forks)
            self._lines += [one.line for one in admitted]
            self._index.add(one.entry for one in admitted)
            return len(admitted)

    def read(self) -> tuple[list[Entry], list[Problem]]:
        """All entries in the order they came; WM207 for those of acts that this release does not know."""
        reader = Reader(_NAME)
        with self._guard:
            lines = list(self._lines)
        for number, line in enumerate(lines, 1):
            reader.take(line, number)
        result = reader.done()
        return result.entries, result.problems + result.unread

    def head(self, device: str) -> tuple[int, str]:
        """Count and hash of the device's last entry; ``(0, NO_PREVIOUS)`` when it has none."""
        with self._guard:
            return self._index.head(device)


class MemoryMedia:
    """Keeps files in memory; ``path`` writes a file out, to a temporary folder that goes with this object."""

    def __init__(self) -> None:
        self._kept: dict[str, tuple[bytes, str]] = {}
        self._folder: Path | None = None
        self._guard = RLock()

    def put(self, data: bytes, suffix: str = "") -> str:
        """Keep the bytes, return their hash."""
        digest = sha256(data).hexdigest()
        with self._guard:
            self._kept.setdefault(digest, (bytes(data), plain_suffix(suffix)))
        return digest

    def put_file(self, path: Path) -> str:
        """Keep a copy of the file, return its hash. Raises ``Refusal`` (WM333) when it cannot be read."""
        with reading(path, messages.MEDIA_SOURCE):
            data = path.read_bytes()
        return self.put(data, path.suffix)

    def path(self, sha256: str) -> Path | None:
        """Where a copy of the file lies, or None."""
        with self._guard:
            if sha256 not in self._kept:
                return None
            if self._folder is None:
                self._folder = Path(tempfile.mkdtemp(prefix="witnessmark-"))
                weakref.finalize(self, shutil.rmtree, self._folder, ignore_errors=True)
            data, suffix = self._kept[sha256]
            path = self._folder / (sha256 + suffix)
            if not path.exists():
                path.write_bytes(data)
            return path

    def hashes(self) -> Iterator[str]:
        """Every hash kept."""
        return iter(sorted(self._kept))

    def check(self, hashes: Iterable[str] | None = None) -> list[Problem]:
        """Which of the named files (all when None) are missing; memory does not alter."""
        problems = []
        for digest in dict.fromkeys(self._kept if hashes is None else hashes):
            if not is_hash(digest):
                problems.append(messages.NOT_A_HASH.at(_NAME, ascii(digest)))
            elif digest not in self._kept:
                problems.append(messages.MEDIA_MISSING.at(_NAME, digest))
        return problems
