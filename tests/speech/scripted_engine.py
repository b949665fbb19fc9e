"""An engine that follows a script: it hears one word a second, and tells where in the recording it was asked."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import numpy as np
import numpy.typing as npt

from witnessmark.speech import Model, Segment, Word

__all__ = ["Scripted", "counting_wav"]


class Scripted:
    """Hears the word ``p<n>`` at each whole second, where n is how loud that second is in steps (see ``counting_wav``)."""

    engine = "scripted 1"
    longest = 10.0

    def __init__(self, stop_after: int | None = None, digest: str = "0" * 64, sure: float | None = 0.9) -> None:
        self.model = Model("script", "scripted", {}, None, digest)
        self.asked = 0
        self.stop_after = stop_after
        self.sure = sure

    def transcribe(self, pcm16k: npt.NDArray[np.int16]) -> Iterator[Segment]:
        if self.stop_after is not None and self.asked >= self.stop_after:
            raise KeyboardInterrupt
        self.asked += 1
        loud = np.abs(pcm16k.astype(np.int64))
        above = np.flatnonzero(loud > 2000)
        starts = above[np.diff(above, prepend=-16_000) > 3_200]
        words = []
        for start in starts:
            step = int(loud[start : start + 160].max()) // 100 - 30
            words.append(Word(f"p{step}", float(start) / 16_000, float(start) / 16_000 + 0.3, self.sure))
        if words:
            yield Segment.of(tuple(words))


def counting_wav(path: Path, seconds: int) -> Path:
    """A recording in which second n begins with a tone (0.3 s) whose loudness tells n; at most 250 seconds."""
    import wave

    sound = np.zeros(seconds * 16_000, np.int16)
    for second in range(seconds):
        at = second * 16_000 + 4_000
        tone = np.where(np.arange(4_800) % 20 < 10, 1, -1)
        sound[at : at + 4_800] = tone * ((second + 30) * 100 + 50)
    with wave.open(str(path), "wb") as file:
        file.setnchannels(1)
        file.setsampwidth(2)
        file.setframerate(16_000)
        file.writeframes(sound.tobytes())
    return path
