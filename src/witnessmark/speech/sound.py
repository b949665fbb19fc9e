"""Is this a recording, and what are its samples? The sort is told by the first bytes; nothing else is handed to a decoder.

A decoder that is given a playlist opens what the playlist names, which may be an address. So only files that begin like
sound are read, and decoders may open files only.
"""

from __future__ import annotations

import importlib
import shutil
import subprocess
import tempfile
import wave
from collections.abc import Callable, Generator
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING, Any

from witnessmark.problems import Refusal
from witnessmark.speech.messages import NO_DECODER, NOT_INSTALLED, NOT_SOUND, UNREADABLE
from witnessmark.speech.wav import RATE, wav_blocks

if TYPE_CHECKING:
    import numpy as np
    import numpy.typing as npt

__all__ = ["RATE", "Broken", "Sound", "form_of", "is_sound", "open_sound"]

#: Offset, first bytes, name of the form.
_FORMS: tuple[tuple[int, bytes, str], ...] = (
    (8, b"WAVE", "WAV"), (0, b"ID3", "MP3"), (0, b"\xff\xfb", "MP3"), (0, b"\xff\xfa", "MP3"), (0, b"\xff\xf3", "MP3"),
    (0, b"\xff\xf2", "MP3"), (0, b"\xff\xf1", "AAC"), (0, b"\xff\xf9", "AAC"), (4, b"ftyp", "MP4"), (0, b"OggS", "Ogg"),
    (0, b"fLaC", "FLAC"), (0, b"\x1aE\xdf\xa3", "WebM"), (8, b"AIFF", "AIFF"), (8, b"AIFC", "AIFF"), (0, b"caff", "CAF"),
    (0, b"#!AMR", "AMR"), (0, b"0&\xb2u\x8ef\xcf\x11", "WMA"),
)  # fmt: skip
_HEAD = 16
#: Samples in one block that a decoder gives.
_BLOCK = RATE * 10


class Broken(Exception):  # noqa: N818 - says what the sound is, for the one who reads it
    """Raised while samples are read when the recording cannot be decoded any further."""


@dataclass(frozen=True, slots=True)
class Sound:
    """A recording that can be read from the beginning, as often as needed.

    ``form`` is its sort by its first bytes, ``by`` what reads it; ``blocks()`` gives 16-bit samples of one channel at
    ``RATE`` and raises ``Broken`` where they cannot be read any further.
    """

    path: Path
    form: str
    by: str
    blocks: Callable[[], Generator[npt.NDArray[np.int16], None, None]]


def form_of(path: Path) -> str | None:
    """The form of sound that a file begins like, or None.

    Raises:
        Refusal: WM654 when the file cannot be read.
    """
    try:
        if not path.is_file():
            raise Refusal(UNREADABLE.at(path.name or str(path), "not a file" if path.exists() else "it does not exist"))
        with path.open("rb") as file:
            head = file.read(_HEAD)
    except (OSError, ValueError) as error:
        raise Refusal(UNREADABLE.at(path.name or str(path), str(error))) from error
    for offset, magic, form in _FORMS:
        if head[offset : offset + len(magic)] == magic:
            if form == "WAV" and head[:4] not in {b"RIFF", b"RF64", b"RIFX"}:
                continue
            if form == "AIFF" and head[:4] != b"FORM":
                continue
            return form
    return None


def is_sound(path: Path) -> bool:
    """Whether the file begins like a sound recording; False also for what cannot be read."""
    try:
        return form_of(path) is not None
    except Refusal:
        return False


def open_sound(path: Path) -> Sound:
    """Find what can read a recording: the standard library for plain WAV, else ffmpeg, else PyAV.

    Raises:
        Refusal: not readable (WM654), no sound by its first bytes (WM640), nothing here can decode it (WM646),
            the speech extra is not installed (WM655).
    """
    form = form_of(path)
    if form is None:
        raise Refusal(NOT_SOUND.at(path.name))
    try:
        importlib.import_module("numpy")
    except ImportError as error:
        raise Refusal(NOT_INSTALLED.at(path.name, f"{form}; {error}")) from error
    if form == "WAV":
        try:
            with wave.open(str(path), "rb") as file:
                known = file.getnframes() > 0  # a recorder that died may have left no length behind
            if known:
                return Sound(path, form, "standard library", lambda: _wav(path))
        except (wave.Error, EOFError):
            pass  # compressed or floating-point: a decoder may know it
    if program := shutil.which("ffmpeg"):
        return Sound(path, form, "ffmpeg", lambda: _ffmpeg(program, path))
    try:
        av = importlib.import_module("av")
    except ImportError as error:
        raise Refusal(NO_DECODER.at(path.name, form)) from error
    return Sound(path, form, "PyAV", lambda: _pyav(av, path))


def _wav(path: Path) -> Generator[npt.NDArray[np.int16], None, None]:
    try:
        yield from wav_blocks(path)
    except (wave.Error, EOFError, OSError, ValueError) as error:
        raise Broken(str(error)) from error


def _ffmpeg(program: str, path: Path) -> Generator[npt.NDArray[np.int16], None, None]:
    import numpy as np  # only once sound is there to be read

    command = [
        program, "-nostdin", "-v", "error", "-protocol_whitelist", "file,pipe", "-i", f"file:{path}", "-vn", "-sn", "-dn",
        "-map", "0:a:0", "-ac", "1", "-ar", str(RATE), "-f", "s16le", "pipe:1",
    ]  # fmt: skip
    with (
        tempfile.TemporaryFile() as told,
        subprocess.Popen(  # noqa: S603 - a fixed program; the path is an argument of its own
            command, stdin=subprocess.DEVNULL, stdout=subprocess.PIPE, stderr=told
        ) as running,
    ):
        output = running.stdout
        if output is None:  # pragma: no cover - stdout is a pipe
            return
        finished = False
        try:
            while data := output.read(2 * _BLOCK):
                yield np.frombuffer(data[: len(data) // 2 * 2], "<i2").astype(np.int16)
            finished = True
        finally:
            if not finished:  # whoever reads has stopped: the decoder would wait for them for ever
                output.close()
                running.kill()
        if running.wait():
            told.seek(0)
            raise Broken(told.read(300).decode("utf-8", "replace").strip() or f"ffmpeg ended with {running.returncode}")


def _pyav(av: Any, path: Path) -> Generator[npt.NDArray[np.int16], None, None]:  # noqa: ANN401 - the module, imported only where it is needed
    import numpy as np  # only once sound is there to be read

    resampler = av.audio.resampler.AudioResampler(format="s16", layout="mono", rate=RATE)
    waiting: list[npt.NDArray[np.int16]] = []
    held = 0
    try:
        with av.open(
            str(path), mode="r", metadata_errors="ignore", options={"protocol_whitelist": "file"}
        ) as container:
            if not container.streams.audio:
                message = "there is no sound in it"
                raise Broken(message)
            for frame in container.decode(audio=0):
                for part in resampler.resample(frame):
                    waiting.append(part.to_ndarray().reshape(-1).astype(np.int16))
                    held += len(waiting[-1])
                if held >= _BLOCK:
                    yield np.concatenate(waiting)
                    waiting, held = [], 0
            waiting += [part.to_ndarray().reshape(-1).astype(np.int16) for part in resampler.resample(None)]
    except (av.error.FFmpegError, OSError, ValueError, IndexError) as error:
        if waiting:
            yield np.concatenate(waiting)
        raise Broken(str(error)) from error
    if waiting:
        yield np.concatenate(waiting)
