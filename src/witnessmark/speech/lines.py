"""Words into short timed lines: a draft begins where its line begins, so a line ends where a speaker pauses."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from witnessmark.speech.segments import Segment, Word

__all__ = ["SpokenLine", "lines"]

#: Seconds of silence between two words that end a line.
_PAUSE = 0.6
#: Seconds after which a comma ends a line, and after which any word does.
_LONG, _LONGEST = 4.0, 7.0
_ENDS, _MAY_END = (".", "?", "!"), (",", ";", ":")


@dataclass(frozen=True, slots=True)
class SpokenLine:
    """Words that were said in one breath. ``start`` and ``end`` are seconds."""

    start: float
    end: float
    words: tuple[Word, ...]

    @property
    def text(self) -> str:
        """The words in a row."""
        return " ".join(word.text for word in self.words)

    def as_json(self) -> dict[str, object]:
        """A row of a timed transcript: ``t``, ``end`` and ``text`` are what listening reads; ``words`` are the finer times."""
        return {
            "t": self.start,
            "end": self.end,
            "text": self.text,
            "words": [
                {"text": word.text, "start": word.start, "end": word.end, "probability": word.probability}
                for word in self.words
            ],
        }


def lines(segments: Iterable[Segment]) -> Iterator[SpokenLine]:
    """Cut the words of all segments into lines at full stops, pauses and, in long runs, at commas.

    A segment without words becomes one line of its own. Lines never overlap: an end later than the next start is an
    error of the engine's alignment and is drawn back to it.

    >>> said = Segment.of((Word("Oven", 1.0, 1.3), Word("on.", 1.3, 1.6), Word("Next", 1.7, 2.0)))
    >>> [line.text for line in lines([said])]
    ['Oven on.', 'Next']
    """
    open_: list[Word] = []
    for word in _in_order(segments):
        if open_ and _ends(open_, word):
            yield _line(open_, word.start)
            open_ = []
        open_.append(word)
    if open_:
        yield _line(open_, None)


def _ends(said: list[Word], following: Word) -> bool:
    last = said[-1]
    lasted = last.end - said[0].start
    return (
        following.start - last.end >= _PAUSE
        or last.text.endswith(_ENDS)
        or lasted >= _LONGEST
        or (lasted >= _LONG and last.text.endswith(_MAY_END))
    )


def _line(words: list[Word], before: float | None) -> SpokenLine:
    end = words[-1].end if before is None else min(words[-1].end, before)
    return SpokenLine(words[0].start, max(end, words[0].start), tuple(words))


def _in_order(segments: Iterable[Segment]) -> Iterator[Word]:
    """All words; times that run backwards are drawn to the word before, so that the order is the order spoken."""
    at = 0.0
    for segment in segments:
        words = segment.words
        if not words and segment.text.strip():
            words = (Word(segment.text.strip(), segment.start, segment.end),)
        for word in words:
            start = max(word.start, at)
            at = start
            yield word if start == word.start else Word(word.text, start, max(word.end, start), word.probability)
