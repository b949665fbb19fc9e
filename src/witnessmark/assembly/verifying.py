"""Checking a whole job: what was hashed, what does not match, told in words and as data."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from datetime import UTC, datetime
from pathlib import Path

from witnessmark.packs.model import Packs
from witnessmark.problems import Problem
from witnessmark.stores.verify import Verification, verify_folder

__all__ = ["Checked", "verify_job"]


@dataclass(frozen=True, slots=True)
class Checked:
    """A verification, ready to be told."""

    folder: Path
    verification: Verification

    @property
    def problems(self) -> tuple[Problem, ...]:
        """Exactly what does not match."""
        return self.verification.problems

    def in_words(self) -> list[str]:
        """The lines a person reads."""
        v = self.verification
        seals = {0: "no seal", 1: "1 seal"}.get(v.seals, f"{v.seals} seals")
        entries = "1 entry" if v.entries == 1 else f"{v.entries} entries"
        files = "1 file" if v.media == 1 else f"{v.media} files"
        lines = [f"Checked {entries}, {seals}, {files}, {v.size / 1e6:.1f} MB in {v.seconds:.2f} s."]
        lines += [
            f"Worth knowing: {note.where}: {note.message.what}" + (f" ({note.detail})" if note.detail else "")
            for note in v.notes
        ]
        lines.append("Everything is as it was recorded." if v.sound else _mismatch(len(v.problems)))
        return lines

    def as_json(self) -> dict[str, object]:
        """Plain data for ``--json``."""
        v = self.verification
        return {
            "sound": v.sound,
            "entries": v.entries,
            "seals": v.seals,
            "media": v.media,
            "bytes": v.size,
            "seconds": round(v.seconds, 3),
            "problems": [problem.as_json() for problem in v.problems],
            "notes": [note.as_json() for note in v.notes],
        }


def _mismatch(count: int) -> str:
    return (
        "1 thing does not match; it is named above."
        if count == 1
        else f"{count} things do not match; they are named above."
    )


def verify_job(
    folder: Path, packs: Packs, tell: Callable[[int, int], None] | None = None, *, now: datetime | None = None
) -> Checked:
    """Re-hash and check everything in the job folder; changes nothing. What says it happened after *now* is named.

    Raises:
        Refusal: there is no job folder. Everything else is told in the result.
    """
    hashes = {file.id: file.hash for file in packs.files}
    versions = {file.id: file.version for file in packs.files}
    return Checked(folder, verify_folder(folder, hashes, tell, packs_versions=versions, now=now or datetime.now(UTC)))
