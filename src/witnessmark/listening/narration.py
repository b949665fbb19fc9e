"""What was said and when: a narration as timed lines, whatever file it came from."""

from __future__ import annotations

from dataclasses import dataclass

from witnessmark.problems import Problem

__all__ = ["Line", "Narration"]


@dataclass(frozen=True, slots=True)
class Line:
    """One timed line.

    Attributes:
        start: seconds from the beginning of the recording, 0 or more.
        end: seconds; the start of the next line where the file gives no end.
        text: the words as they stand in the file, tags of the caption format removed.
        timed_end: whether the file itself gave the end, so that a gap before the next line is a real pause.
    """

    start: float
    end: float
    text: str
    timed_end: bool = True


@dataclass(frozen=True, slots=True)
class Narration:
    """A narration ready to be listened to: lines in the order of their times, and what was wrong with the file."""

    name: str
    lines: tuple[Line, ...]
    problems: tuple[Problem, ...] = ()
