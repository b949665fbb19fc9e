"""Speech made for tests by eSpeak NG, whose library comes as a wheel: the same words always give the same samples."""

from __future__ import annotations

import array
import ctypes
import functools
import importlib
import importlib.util
import os
import wave
from collections.abc import Iterable
from pathlib import Path

import pytest

from witnessmark.speech import Model, installed_models

__all__ = ["RATE", "narrate", "needs_model", "needs_voice", "say", "silence", "write_wav"]

RATE = 22_050
_SYNCHRONOUS, _UTF8, _RATE_PARAMETER = 2, 1, 1
_CALLBACK = ctypes.CFUNCTYPE(ctypes.c_int, ctypes.POINTER(ctypes.c_short), ctypes.c_int, ctypes.c_void_p)


@functools.cache
def _voice() -> ctypes.CDLL:
    loader = importlib.import_module("espeakng_loader")
    library = ctypes.CDLL(loader.get_library_path())
    rate = library.espeak_Initialize(_SYNCHRONOUS, 0, loader.get_data_path().encode(), 0)
    if rate != RATE:
        message = f"eSpeak NG gives {rate} samples a second, not {RATE}"
        raise OSError(message)
    return library


def needs_voice() -> None:
    """Skip the test that asks, with the reason, where the voice cannot be had; never where CI runs."""
    try:
        _voice()
    except (ImportError, OSError) as error:
        if os.environ.get("CI"):
            raise
        pytest.skip(f"the synthetic voice (espeakng-loader, in the development extra) is not usable here: {error}")


def say(text: str, *, voice: str = "en-us", words_a_minute: int = 155) -> array.array[int]:
    """The text spoken, as 16-bit samples at ``RATE``."""
    library = _voice()
    samples: array.array[int] = array.array("h")

    def take(block: object, count: int, _events: object) -> int:
        if block and count > 0:
            samples.extend(block[:count])  # type: ignore[index]  # a ctypes pointer takes a slice
        return 0

    callback = _CALLBACK(take)
    library.espeak_SetSynthCallback(callback)
    library.espeak_SetVoiceByName(voice.encode())
    library.espeak_SetParameter(_RATE_PARAMETER, words_a_minute, 0)
    data = text.encode()
    library.espeak_Synth(data, len(data) + 1, 0, 0, 0, _UTF8, None, None)
    library.espeak_Synchronize()
    return samples


def silence(seconds: float) -> array.array[int]:
    """Nothing, for a while."""
    return array.array("h", bytes(2 * int(seconds * RATE)))


def write_wav(path: Path, parts: Iterable[array.array[int]], rate: int = RATE) -> Path:
    """The parts one after another as a WAV file of one channel."""
    with wave.open(str(path), "wb") as file:
        file.setnchannels(1)
        file.setsampwidth(2)
        file.setframerate(rate)
        for part in parts:
            file.writeframes(part.tobytes())
    return path


def narrate(path: Path, rows: Iterable[tuple[float, str]]) -> Path:
    """A recording in which each text begins at its second, or when the one before it has ended."""
    parts: list[array.array[int]] = []
    samples = 0
    for second, text in rows:
        if (gap := int(second * RATE) - samples) > 0:
            parts.append(array.array("h", bytes(2 * gap)))
            samples += gap
        parts.append(say(text))
        samples += len(parts[-1])
    return write_wav(path, [*parts, silence(0.5)])


def needs_model() -> Model:
    """The packaged small model; the test that asks is skipped with the reason where it cannot be had, never where CI runs."""
    model = next((one for one in installed_models() if one.name == "whisper-tiny.en"), None)
    if model is not None and importlib.util.find_spec("faster_whisper") is not None:
        return model
    reason = (
        "no speech model or engine is installed here (they come with the development extra: pip install -e '.[dev]')"
    )
    if os.environ.get("CI"):
        pytest.fail(reason)
    pytest.skip(reason)
