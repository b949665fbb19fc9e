"""From a recording to a transcript: survey it, cut it where it is quiet, recognise piece by piece, keep each piece."""

from __future__ import annotations

import contextlib
import hashlib
from collections.abc import Callable, Generator, Iterator, Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from witnessmark.problems import Problem, Refusal
from witnessmark.speech.engines import open_model
from witnessmark.speech.messages import GUESSES, NO_SPEECH, PARTIAL_NOT_KEPT, UNREADABLE
from witnessmark.speech.models import find_model
from witnessmark.speech.partial import Partial, key_of
from witnessmark.speech.recognizer import Recognizer
from witnessmark.speech.segments import Segment
from witnessmark.speech.sound import RATE, Broken, Sound, open_sound
from witnessmark.speech.survey import Survey, pieces, survey
from witnessmark.speech.transcript import Transcript

if TYPE_CHECKING:
    import numpy as np
    import numpy.typing as npt

__all__ = ["transcribe_file"]

#: Mean probability of the words below which the whole is taken for guesses. Our own; clear synthetic speech gives 0.7 to
#: 0.9 with the small models, chords and noise that pass for speech 0.1 to 0.4.
_GUESSES = 0.4


def transcribe_file(
    path: Path,
    *,
    model: Path | None = None,
    engine: str | None = None,
    threads: int = 0,
    terms: Sequence[str] = (),
    partial: Path | None = None,
    tell: Callable[[int, int], None] | None = None,
    recognizer: Recognizer | None = None,
) -> Transcript:
    """Turn a recording into timed words, on this machine alone.

    Args:
        path: the recording; it is only read.
        model: folder of a speech model; without it ``WITNESSMARK_MODEL``, then an installed package.
        engine: one of ``ENGINES``; without it the files of the model decide.
        threads: how many to use, 0 to let the engine choose.
        terms: words to expect, for engines that take them.
        partial: folder for the file of work under way; without it the folder of the recording. A run that was stopped
            is taken up where it ended.
        tell: called with milliseconds done and in all, after each piece.
        recognizer: an engine that is open already, instead of ``model`` and ``engine``.

    Raises:
        Refusal: no sound, too short or long, silent, damaged from the start, not readable here (WM640 to WM647, WM654);
            no model or engine (WM648 to WM652); no speech in it (WM644), or nothing but guesses (WM645).
    """
    sound = open_sound(path)
    found = survey(sound)
    if recognizer is None:
        recognizer = open_model(find_model(model, engine), threads, terms)
    problems = list(found.problems)
    sha256 = _sha256(path)
    work = Partial.beside(path, partial or path.parent, key_of(sha256, recognizer, terms))
    segments: list[Segment] = []
    taken_up = 0
    keeping = True
    cuts = list(pieces(found, recognizer.longest))
    waiting = [cut for cut in cuts if work.heard(*cut) is None and not found.is_silent(*cut)]
    with contextlib.closing(_cut(sound, waiting)) as samples:
        for start, end in cuts:
            heard = work.heard(start, end)
            if heard is not None:
                taken_up += end - start
            elif found.is_silent(start, end):
                heard = ()
            else:
                heard = _within(recognizer.transcribe(next(samples)), start, end)
                if keeping:
                    try:
                        work.keep(start, end, heard)
                    except OSError as error:
                        keeping = False
                        problems.append(PARTIAL_NOT_KEPT.at(str(work.path.parent), str(error)))
            segments += heard
            if tell is not None:
                tell(end * 1000 // RATE, found.samples * 1000 // RATE)
    transcript = Transcript(
        path.name, sha256, found.seconds, recognizer.engine, recognizer.model.name, recognizer.model.digest,
        tuple(segments), tuple(problems), taken_up / RATE,
    )  # fmt: skip
    with contextlib.suppress(OSError):
        work.remove()
    _judge(transcript, found)
    return transcript


def _within(heard: Iterator[Segment], start: int, end: int) -> tuple[Segment, ...]:
    """Segments of a piece, at their place in the recording; what an engine lays beyond the piece is drawn to its end."""
    whole = (end - start) / RATE
    kept: list[Segment] = []
    for segment in heard:
        words = tuple(
            type(word)(word.text, min(word.start, whole), min(max(word.start, word.end), whole), word.probability)
            for word in segment.words
        )
        inside = Segment(min(segment.start, whole), min(segment.end, whole), segment.text, words)
        kept.append(inside.later(start / RATE))
    return tuple(kept)


def _cut(sound: Sound, wanted: Sequence[tuple[int, int]]) -> Generator[npt.NDArray[np.int16], None, None]:
    """The samples of each wanted piece, in one reading of the recording; silence where it breaks off."""
    import numpy as np  # the program runs without it until sound is read

    held = np.zeros(0, np.int16)
    first = 0
    blocks = sound.blocks()
    with contextlib.closing(blocks):
        for start, end in wanted:
            while first + len(held) < end:
                try:
                    block = next(blocks)
                except (StopIteration, Broken):  # told by the survey already
                    block = np.zeros(end - first - len(held), np.int16)
                held = np.concatenate([held, block])
                drop = min(max(0, start - first), len(held))
                held, first = held[drop:], first + drop
            yield held[start - first : end - first]


def _judge(transcript: Transcript, found: Survey) -> None:
    """Refuse a transcript that holds no words, or none that can be relied on."""
    words = [word for segment in transcript.segments for word in segment.words]
    name = transcript.name
    if not any(segment.text for segment in transcript.segments):
        raise Refusal(NO_SPEECH.at(name, f"{found.seconds:.0f} s, {transcript.engine}"), *transcript.problems)
    told = [word.probability for word in words if word.probability is not None]
    if told and (mean := sum(told) / len(told)) < _GUESSES:
        problem: Problem = GUESSES.at(name, f"mean probability {mean:.2f} over {len(told)} words, {transcript.model}")
        raise Refusal(problem, *transcript.problems)


def _sha256(path: Path) -> str:
    made = hashlib.sha256()
    try:
        with path.open("rb") as file:
            while block := file.read(1 << 20):
                made.update(block)
    except OSError as error:
        raise Refusal(UNREADABLE.at(path.name, str(error))) from error
    return made.hexdigest()
