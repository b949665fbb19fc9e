"""A recording in words: the transcript, and the JSON lines that listening reads."""

from __future__ import annotations

import json
from dataclasses import dataclass
from pathlib import Path

from witnessmark.problems import Problem
from witnessmark.speech.lines import SpokenLine, lines
from witnessmark.speech.partial import replace_file
from witnessmark.speech.segments import Segment

__all__ = ["Transcript"]


@dataclass(frozen=True, slots=True)
class Transcript:
    """What was said in a recording.

    Attributes:
        name: of the recording.
        sha256: of the recording, so that the words stay tied to the very file they were heard in.
        seconds: how long it is.
        engine, model, digest: what heard it, with the SHA-256 of the model.
        segments: the words, in order.
        problems: what was odd on the way (damaged sound, no room for the file of work under way).
        taken_up: seconds of the recording that an earlier, stopped run had done already.
    """

    name: str
    sha256: str
    seconds: float
    engine: str
    model: str
    digest: str
    segments: tuple[Segment, ...]
    problems: tuple[Problem, ...] = ()
    taken_up: float = 0.0

    @property
    def lines(self) -> tuple[SpokenLine, ...]:
        """The words in short timed lines."""
        return tuple(lines(self.segments))

    def made_by(self) -> dict[str, object]:
        """Where the words come from."""
        return {
            "recording": self.name,
            "sha256": self.sha256,
            "seconds": round(self.seconds, 3),
            "engine": self.engine,
            "model": self.model,
            "model_sha256": self.digest,
        }

    def as_json_lines(self) -> str:
        """One JSON object a line, as listening reads them; the first one also says what the words were heard by."""
        rows = [line.as_json() for line in self.lines]
        if rows:
            rows[0] = {**rows[0], "made": self.made_by()}
        return "".join(json.dumps(row, ensure_ascii=False) + "\n" for row in rows)

    def write(self, path: Path) -> None:
        """Write the JSON lines, all or nothing.

        Raises:
            OSError: the file cannot be written; what was there before is as it was.
        """
        replace_file(path, self.as_json_lines())
