"""Plain WAV into 16-bit samples of one channel at 16 000 a second, by the standard library and NumPy alone.

Every rate becomes 16 000 by a windowed-sinc low-pass filter, one for each phase (Hamming window; Oppenheim & Schafer,
Discrete-Time Signal Processing, FIR filter design by windowing and changing the rate by a non-integer factor; recalled).
The filters are centred on the moment of each sample, so that times stay exact.
"""

from __future__ import annotations

import math
import wave
from collections.abc import Iterator
from pathlib import Path
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    import numpy as np
    import numpy.typing as npt

__all__ = ["RATE", "wav_blocks"]

#: Samples a second that every engine takes.
RATE = 16_000
#: Seconds of sound in one block.
_BLOCK = 10
#: Half the length of the low-pass filter in samples of the slower rate; share of the band that it keeps.
_HALF, _KEPT = 16, 0.92
#: Bytes of sound that a header promises when the recorder did not know how long it would run.
_UNKNOWN = 0x7FFF_0000


def wav_blocks(path: Path) -> Iterator[npt.NDArray[np.int16]]:
    """The samples in blocks of about ten seconds.

    Raises:
        wave.Error, EOFError: not a WAV that the standard library reads, or (after what is there) one that breaks off.
    """
    import numpy as np  # only once sound is there to be read: the rest of the program runs without it

    with wave.open(str(path), "rb") as file:
        channels, width, rate = file.getnchannels(), file.getsampwidth(), file.getframerate()
        if not (channels and rate):
            message = "no channels or no rate"
            raise wave.Error(message)
        resampled = _Resampler(rate)
        promised, got = file.getnframes(), 0
        while data := file.readframes(rate * _BLOCK):
            whole = len(data) // (width * channels) * width * channels
            mono = _samples(data[:whole], width).reshape(-1, channels).mean(axis=1)
            got += len(mono)
            yield resampled.take(mono)
            if whole < len(data):
                break
        last = resampled.take(np.zeros(0, np.float64), last=True)
        if len(last):
            yield last
        if got < promised and promised * width * channels < _UNKNOWN:
            message = f"{got} of {promised} samples are there"
            raise EOFError(message)


def _samples(data: bytes, width: int) -> npt.NDArray[np.float64]:
    """Samples of any width, scaled to the range of 16 bits."""
    import numpy as np  # as above

    if width == 1:  # the only unsigned one
        return (np.frombuffer(data, np.uint8).astype(np.float64) - 128) * 256
    if width == 3:  # noqa: PLR2004 - 24 bits have no type of their own
        raw = np.frombuffer(data, np.uint8).reshape(-1, 3)
        wide = np.zeros((len(raw), 4), np.uint8)
        wide[:, 1:] = raw
        return wide.view("<i4").reshape(-1).astype(np.float64) / 65_536
    whole = np.frombuffer(data, f"<i{width}").astype(np.float64)
    return whole / (1 << (8 * (width - 2)))


class _Resampler:
    """Any rate to ``RATE``, block by block, with exact times."""

    def __init__(self, rate: int) -> None:
        import numpy as np  # as above

        shared = math.gcd(rate, RATE)
        self.up, self.down = RATE // shared, rate // shared
        self.half = int(_HALF * max(1.0, self.down / self.up))
        self.next = 0  # number of the next sample to give
        self.kept = np.zeros(self.half - 1, np.float32)
        self.first = 1 - self.half  # number of the first sample in ``kept``
        self.filters: dict[int, npt.NDArray[np.float32]] = {}

    def take(self, block: npt.NDArray[np.float64], *, last: bool = False) -> npt.NDArray[np.int16]:
        """The samples that can be given now that *block* is there."""
        import numpy as np  # as above

        if self.up == self.down:
            return _whole(block)
        tail = np.zeros(self.half if last else 0, np.float32)
        self.kept = np.concatenate([self.kept, block.astype(np.float32), tail])
        reached = self.first + len(self.kept) - self.half  # samples around which a whole filter fits
        count = max(0, -(-reached * self.up // self.down) - self.next)
        given = np.zeros(count, np.float32)
        if count:
            windows = np.lib.stride_tricks.sliding_window_view(self.kept, 2 * self.half)
            for offset in range(min(self.up, count)):
                at, phase = divmod((self.next + offset) * self.down, self.up)
                rows = windows[at - self.half + 1 - self.first :: self.down][: -(-(count - offset) // self.up)]
                given[offset :: self.up] = rows @ self._filter(phase)
        self.next += count
        drop = max(0, self.next * self.down // self.up - self.half + 1 - self.first)
        self.kept, self.first = self.kept[drop:], self.first + drop
        return _whole(given)

    def _filter(self, phase: int) -> npt.NDArray[np.float32]:
        """The low-pass filter for samples that lie *phase* of ``up`` parts behind one that was recorded."""
        import numpy as np  # as above

        if phase not in self.filters:
            cutoff = _KEPT * min(1.0, self.up / self.down)
            away = np.arange(1 - self.half, self.half + 1) - phase / self.up
            window = 0.54 + 0.46 * np.cos(np.pi * away / self.half)
            made = np.sinc(away * cutoff) * window
            self.filters[phase] = np.asarray(made / made.sum(), np.float32)
        return self.filters[phase]


def _whole(samples: npt.NDArray[np.floating[Any]]) -> npt.NDArray[np.int16]:
    import numpy as np  # as above

    return np.asarray(samples.round().clip(-32_768, 32_767), np.int16)
