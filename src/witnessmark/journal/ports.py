"""What the journal needs from outside: a place to keep lines and media, a signer, a clock. Stores implement these."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from pathlib import Path
from typing import Protocol

from witnessmark.journal.entry import Entry
from witnessmark.problems import Problem

__all__ = ["JournalStore", "MediaStore", "Signer"]


class JournalStore(Protocol):
    """Keeps the entries of one job, in the order they arrived. All methods raise ``Refusal`` when they cannot."""

    def append(self, entries: Sequence[Entry], *, forks: bool = False) -> int:
        """Keep all of the entries or none of them; those already kept (same id, same hash) are passed over.

        Returns how many were new. An id already kept with another hash is refused, as is a device position
        (device, n) already taken by another entry: the writer then asks for the head again. With *forks* such an
        entry is kept: for bringing in another copy of the record, whose forks ``chain.check_chains`` reports.
        """

    def read(self) -> tuple[list[Entry], list[Problem]]:
        """All entries in arrival order, and the problems met on the way; problems never hide good entries."""

    def head(self, device: str) -> tuple[int, str]:
        """Count and hash of the device's last entry; ``(0, NO_PREVIOUS)`` when it has none."""


class MediaStore(Protocol):
    """Keeps files under their SHA-256."""

    def put(self, data: bytes, suffix: str = "") -> str:
        """Keep the bytes, return their hash (hex). Keeping the same bytes twice keeps them once."""

    def put_file(self, path: Path) -> str:
        """Keep a copy of the file, return its hash."""

    def path(self, sha256: str) -> Path | None:
        """Where the file lies, or None."""

    def hashes(self) -> Iterator[str]:
        """Every hash kept."""

    def check(self, hashes: Iterable[str] | None = None) -> list[Problem]:
        """Re-hash the named files (all when None) and say exactly which are missing or altered."""


class Signer(Protocol):
    """Signs with Ed25519."""

    def public_key(self) -> str:
        """The public key, 64 hex digits."""

    def sign(self, message: bytes) -> str:
        """The signature over the message, 128 hex digits."""
