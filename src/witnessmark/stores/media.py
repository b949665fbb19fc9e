"""Media of a job as plain files: ``media/ab/abcdef….jpg``, named by their SHA-256 and the type they came with.

A file gets its name only once all of it is on the disk: it is written to ``media/.incoming-…``, synced, renamed, and
the folder synced. What a crash leaves is at most such an incoming file, never a half one under a hash. A kept file
that was altered from outside is not overwritten when the original comes back: it is renamed to
``<hash>.altered-<count>.jpg`` beside it.
"""

from __future__ import annotations

import os
from collections.abc import Iterable, Iterator
from contextlib import suppress
from hashlib import sha256
from pathlib import Path
from typing import Final
from uuid import uuid4

from witnessmark.problems import Problem, Refusal
from witnessmark.stores import messages
from witnessmark.stores.filesystem import FileSystem, RealFileSystem
from witnessmark.stores.hashing import hash_file, hashing
from witnessmark.stores.media_names import hash_in_name, is_hash, plain_suffix
from witnessmark.stores.refusing import reading, write_problem

__all__ = ["MEDIA", "LocalMedia", "altered", "missing"]

#: Name of the media folder in a job folder.
MEDIA: Final = "media"

_INCOMING: Final = ".incoming-"
_PIECE: Final = 1 << 20


class LocalMedia:
    """Keeps files under their SHA-256 in a folder. Safe to use from several threads and processes at once.

    Args:
        folder: the media folder; made when the first file is kept, its parent must exist.
        files: the file system; tests give one that fails.
    """

    def __init__(self, folder: Path, files: FileSystem | None = None) -> None:
        self.folder = folder
        self._files = RealFileSystem() if files is None else files

    def put(self, data: bytes, suffix: str = "") -> str:
        """Keep the bytes, return their hash; *suffix* is that of their type (``.jpg``).

        Raises:
            Refusal: the drive refuses (WM304 to WM306); nothing was kept.
        """
        digest = sha256(data).hexdigest()
        if not self._sound(self.path(digest), digest):
            self._keep([data], plain_suffix(suffix))
        return digest

    def put_file(self, path: Path) -> str:
        """Keep a copy of the file, return its hash. It may be larger than the memory.

        Raises:
            Refusal: the file cannot be read (WM302, WM333), or the drive refuses (WM304 to WM306); nothing was kept.
        """
        return self._keep(_pieces(path), plain_suffix(path.suffix))

    def path(self, sha256: str) -> Path | None:
        """Where the file lies, or None."""
        if not is_hash(sha256):
            return None
        try:
            with os.scandir(self.folder / sha256[:2]) as shard:
                names = sorted(item.name for item in shard if item.name.startswith(sha256))
        except (FileNotFoundError, NotADirectoryError):
            return None
        except OSError as error:
            raise Refusal(messages.CANNOT_READ.at(str(self.folder / sha256[:2]), str(error))) from error
        paths = (self.folder / sha256[:2] / name for name in names)
        return next((path for path in paths if hash_in_name(path) == sha256), None)

    def hashes(self) -> Iterator[str]:
        """Every hash kept, in order."""
        return iter(sorted(self.files()))

    def files(self) -> dict[str, Path]:
        """Every file kept, by hash."""
        kept = {hash_in_name(path): path for path in self.everything()}
        return {digest: path for digest, path in kept.items() if digest is not None}

    def everything(self) -> Iterator[Path]:
        """Every file in the media folder, kept or stray."""
        if not self.folder.exists():
            return
        with reading(self.folder):
            yield from sorted(path for path in self.folder.rglob("*") if not path.is_dir())

    def check(self, hashes: Iterable[str] | None = None) -> list[Problem]:
        """Re-hash the named files (all when None): WM330 for each that is missing, WM331 for each that is altered."""
        kept = self.files()
        problems = []
        wanted = list(dict.fromkeys(kept if hashes is None else hashes))
        for digest in wanted:
            if not is_hash(digest):
                problems.append(messages.NOT_A_HASH.at(str(self.folder), ascii(digest)))
            elif digest not in kept:
                problems.append(missing(self.folder, digest))
        present = [digest for digest in wanted if digest in kept]
        with hashing([kept[digest] for digest in present]) as results:
            for digest, result in zip(present, results, strict=True):
                if result.error is not None:
                    problems.append(messages.CANNOT_READ.at(str(result.path), str(result.error)))
                elif result.digest != digest:
                    problems.append(altered(result.path, result.digest))
        return problems

    def _sound(self, path: Path | None, digest: str) -> bool:
        return path is not None and hash_file(path).digest == digest

    def _keep(self, pieces: Iterable[bytes], suffix: str) -> str:
        files, folder = self._files, self.folder
        incoming = folder / f"{_INCOMING}{uuid4().hex}"
        digest = sha256()

        def counted() -> Iterator[bytes]:
            for piece in pieces:
                digest.update(piece)
                yield piece

        try:
            if not folder.exists():
                files.make_folder(folder)
                files.sync_folder(folder.parent)
            files.write(incoming, counted())
            name = digest.hexdigest()
            kept = self.path(name)
            if self._sound(kept, name):
                files.remove(incoming)
                return name
            files.sync(incoming)
            shard = folder / name[:2]
            files.make_folder(shard)
            files.sync_folder(folder)
            if kept is not None:
                files.rename(kept, _free_name(kept, name))
            files.rename(incoming, shard / (name + suffix))
            files.sync_folder(shard)
        except (OSError, Refusal) as error:
            with suppress(OSError):  # a file that stays is listed as a stray one
                if incoming.exists():
                    files.remove(incoming)
            if isinstance(error, OSError):
                raise Refusal(write_problem(error, folder)) from error
            raise
        return name


def missing(folder: Path, digest: str, entries: tuple[str, ...] = ()) -> Problem:
    """WM330 for a hash that no file is kept under, named by these entries."""
    return messages.MEDIA_MISSING.at(str(folder / digest[:2] / digest), entries=entries)


def altered(path: Path, digest: str, entries: tuple[str, ...] = ()) -> Problem:
    """WM331 for a file whose content has this SHA-256 and not that of its name, named by these entries."""
    return messages.MEDIA_ALTERED.at(str(path), f"its content has SHA-256 {digest}", entries=entries)


def _pieces(path: Path) -> Iterator[bytes]:
    with reading(path, messages.MEDIA_SOURCE), path.open("rb") as file:
        while piece := file.read(_PIECE):
            yield piece


def _free_name(path: Path, digest: str) -> Path:
    count = 1
    while (name := path.with_name(f"{digest}.altered-{count}{path.suffix}")).exists():
        count += 1
    return name
