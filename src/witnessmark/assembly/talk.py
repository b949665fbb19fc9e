"""A recording or a transcript as a narration: sound is recognised on this machine first."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from pathlib import Path

from witnessmark.assembly import messages
from witnessmark.listening import Line, Narration, read_narration
from witnessmark.problems import Refusal
from witnessmark.speech import ENGINES, SETTING, Transcript, is_sound, transcribe_file

__all__ = ["ENGINES", "SETTING", "Speech", "Talk", "read_talk", "write_transcript"]


@dataclass(frozen=True, slots=True)
class Speech:
    """How a recording is heard: folder of the model, engine, threads (0: the engine chooses), words to expect.

    Without a model it is the one that ``WITNESSMARK_MODEL`` names, else an installed package's.
    """

    model: Path | None = None
    engine: str | None = None
    threads: int = 0
    terms: Sequence[str] = ()


@dataclass(frozen=True, slots=True)
class Talk:
    """A narration, and the transcript it was made from where it came as sound."""

    narration: Narration
    transcript: Transcript | None = None


def read_talk(
    file: Path,
    speech: Speech | None = None,
    *,
    partial: Path | None = None,
    tell: Callable[[int, int], None] | None = None,
) -> Talk:
    """Read a timed transcript, or recognise a recording.

    *partial* is the folder for the file of work under way, that of the recording unless given. *tell* is called with
    milliseconds heard and in all.

    Raises:
        Refusal: numbers of the listening for what is no narration, those of the speech for what is no speech.
    """
    if not is_sound(file):
        return Talk(read_narration(file))
    how = speech or Speech()
    transcript = transcribe_file(
        file, model=how.model, engine=how.engine, threads=how.threads, terms=how.terms, partial=partial, tell=tell
    )
    lines = tuple(Line(row.start, row.end, row.text) for row in transcript.lines)
    return Talk(Narration(file.name, lines, transcript.problems), transcript)


def write_transcript(talk: Talk, path: Path) -> None:
    """Write the words of a recording as JSON lines, which `listen` reads again in a moment; all of it or nothing.

    Raises:
        Refusal: WM919 when the place does not take the file. A transcript that came as text is not written again.
    """
    if talk.transcript is None:
        return
    try:
        talk.transcript.write(path)
    except OSError as error:
        raise Refusal(messages.TRANSCRIPT_NOT_KEPT.at(str(path), str(error))) from error
