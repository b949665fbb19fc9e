"""What a speech engine gives: words with their times and probabilities, in stretches as the engine cut them."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace

__all__ = ["Segment", "Word"]


@dataclass(frozen=True, slots=True)
class Word:
    """One word as recognised, with the punctuation that the engine wrote to it.

    Attributes:
        text: the word, without spaces around it.
        start, end: seconds from the beginning of the recording, 0 or more, end not before start.
        probability: how sure the engine is, 0 to 1; None where the engine does not tell.
    """

    text: str
    start: float
    end: float
    probability: float | None = None


@dataclass(frozen=True, slots=True)
class Segment:
    """A stretch of speech. ``start`` and ``end`` are seconds; ``words`` lie within them, in order."""

    start: float
    end: float
    text: str
    words: tuple[Word, ...] = ()

    @classmethod
    def of(cls, words: tuple[Word, ...]) -> Segment:
        """The segment that these words make; there is at least one."""
        return cls(words[0].start, words[-1].end, " ".join(word.text for word in words), words)

    def later(self, seconds: float) -> Segment:
        """The same, that many seconds later: from times within a piece to times within the recording.

        >>> Segment.of((Word("oven", 0.5, 0.9),)).later(60).words[0].start
        60.5
        """
        words = tuple(
            replace(word, start=round(word.start + seconds, 3), end=round(word.end + seconds, 3)) for word in self.words
        )
        return Segment(round(self.start + seconds, 3), round(self.end + seconds, 3), self.text, words)

    def as_json(self) -> dict[str, object]:
        """Plain data, as the file of a transcription under way keeps it."""
        return {
            "start": self.start,
            "end": self.end,
            "text": self.text,
            "words": [[word.text, word.start, word.end, word.probability] for word in self.words],
        }

    @classmethod
    def from_json(cls, row: Mapping[str, object]) -> Segment:
        """The reverse of ``as_json``.

        Raises:
            KeyError, TypeError, ValueError: when the row is something else.
        """
        rows = row["words"]
        if not isinstance(rows, list):
            raise TypeError
        words = tuple(
            Word(str(text), float(start), float(end), None if p is None else float(p)) for text, start, end, p in rows
        )
        return cls(_seconds(row["start"]), _seconds(row["end"]), str(row["text"]), words)


def _seconds(value: object) -> float:
    if isinstance(value, bool) or not isinstance(value, (int, float)):
        raise TypeError
    return float(value)
