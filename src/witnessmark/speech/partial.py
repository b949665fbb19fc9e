"""What was recognised before the program was stopped: one small file, replaced as a whole after each piece.

The file belongs to one recording (by its SHA-256), one model and one set of settings; anything else is another file.
"""

from __future__ import annotations

import hashlib
import json
import os
import tempfile
from collections.abc import Sequence
from dataclasses import dataclass, field
from pathlib import Path

from witnessmark.speech.recognizer import Recognizer
from witnessmark.speech.segments import Segment

__all__ = ["Partial", "key_of", "replace_file"]

#: Number of the form of this file; another number is another file.
_FORM = 1
_SHOWN = 16


def key_of(recording: str, recognizer: Recognizer, terms: Sequence[str]) -> dict[str, object]:
    """What a transcription depends on: the recording, the engine with its release, the model, the terms, the cutting."""
    return {
        "form": _FORM,
        "recording": recording,
        "engine": recognizer.engine,
        "model": recognizer.model.digest,
        "longest": recognizer.longest,
        "terms": list(terms),
    }


def replace_file(path: Path, text: str) -> None:
    """Write a text file so that a reader (or a crash) sees the old one or the new one, never half of it.

    Raises:
        OSError: it cannot be written; what was there before is as it was.
    """
    handle, name = tempfile.mkstemp(prefix=f".{path.name[:40]}.", dir=path.parent)
    try:
        with os.fdopen(handle, "w", encoding="utf-8", newline="\n") as file:
            file.write(text)
            file.flush()
            os.fsync(file.fileno())
        Path(name).replace(path)
    except BaseException:
        Path(name).unlink(missing_ok=True)
        raise


@dataclass(slots=True)
class Partial:
    """The pieces done so far, in order: where each begins and ends (samples), and what was heard in it."""

    path: Path
    key: dict[str, object]
    done: list[tuple[int, int, tuple[Segment, ...]]] = field(default_factory=list)

    @classmethod
    def beside(cls, recording: Path, folder: Path, key: dict[str, object]) -> Partial:
        """The partial transcript of a recording in *folder*, with what an earlier run left there under the same key."""
        mark = hashlib.sha256(json.dumps(key, sort_keys=True).encode()).hexdigest()[:_SHOWN]
        partial = cls(folder / f"{recording.name}.{mark}.partial.jsonl", key)
        partial._take_up()
        return partial

    def _take_up(self) -> None:
        try:
            rows = [json.loads(line) for line in self.path.read_text(encoding="utf-8").splitlines()]
            if not rows or rows[0] != self.key:
                return
            self.done = [
                (int(row["from"]), int(row["to"]), tuple(Segment.from_json(s) for s in row["segments"]))
                for row in rows[1:]
            ]
        except (OSError, ValueError, KeyError, TypeError, RecursionError):
            self.done = []  # not there, or not ours: the recording is listened to from its beginning

    def heard(self, start: int, end: int) -> tuple[Segment, ...] | None:
        """What an earlier run heard in this very piece, or None."""
        return next((segments for a, b, segments in self.done if (a, b) == (start, end)), None)

    def keep(self, start: int, end: int, segments: tuple[Segment, ...]) -> None:
        """Add a piece and write the file.

        Raises:
            OSError: the file cannot be written.
        """
        self.done.append((start, end, segments))
        rows: list[object] = [
            self.key,
            *({"from": a, "to": b, "segments": [s.as_json() for s in heard]} for a, b, heard in self.done),
        ]
        replace_file(self.path, "".join(json.dumps(row, ensure_ascii=False) + "\n" for row in rows))

    def remove(self) -> None:
        """The transcription is complete: the file is not needed any more."""
        self.path.unlink(missing_ok=True)
