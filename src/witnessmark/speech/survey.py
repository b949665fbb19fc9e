"""How long is a recording, is there anything in it, and where can it be cut without cutting a word?

One pass over the samples; what is kept is the loudness of each fiftieth of a second, so that a day fits into memory.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import TYPE_CHECKING

from witnessmark.problems import Problem, Refusal
from witnessmark.speech.messages import BROKEN, SILENT, TOO_LONG, TOO_SHORT
from witnessmark.speech.sound import RATE, Broken, Sound

if TYPE_CHECKING:
    import numpy as np
    import numpy.typing as npt

__all__ = ["LONGEST", "SHORTEST", "Survey", "pieces", "survey"]

#: Seconds: no visit lasts longer than a day at the house, no statement is shorter.
LONGEST, SHORTEST = 12 * 3600, 0.5
#: Samples in one frame of loudness (20 ms).
FRAME = RATE // 50
#: Nothing louder than this in the whole recording is silence (share of full scale; -56 dB).
_SILENCE = 0.0015
#: Frames over which loudness is averaged when the quietest moment is sought (0.3 s).
_CALM = 15


@dataclass(frozen=True, slots=True)
class Survey:
    """``samples`` in all at ``RATE``; ``loudness`` of each frame as a share of full scale; ``problems`` met."""

    samples: int
    loudness: npt.NDArray[np.float32]
    problems: tuple[Problem, ...] = ()

    @property
    def seconds(self) -> float:
        """How long the recording is."""
        return self.samples / RATE

    def is_silent(self, start: int, end: int) -> bool:
        """Whether nothing is loud enough to be speech from sample *start* to *end*."""
        part = self.loudness[start // FRAME : -(-end // FRAME)]
        return not len(part) or float(part.max()) < _SILENCE


def survey(sound: Sound) -> Survey:
    """Listen through once for length and loudness.

    Raises:
        Refusal: too short (WM641), too long (WM642), silent (WM643), or nothing could be decoded (WM647).
    """
    import numpy as np  # the program runs without it until sound is read

    levels: list[npt.NDArray[np.float32]] = []
    samples = 0
    left = np.zeros(0, np.int16)
    problems: list[Problem] = []
    name = sound.path.name
    try:
        for block in sound.blocks():
            samples += len(block)
            if samples > LONGEST * RATE:
                raise Refusal(TOO_LONG.at(name, f"more than {LONGEST // 3600} hours"))
            left = np.concatenate([left, block])
            whole = len(left) // FRAME * FRAME
            levels.append(_loudness(left[:whole]))
            left = left[whole:]
    except Broken as error:
        told = BROKEN.at(name, f"after {samples / RATE:.1f} s: {error}")
        if not samples:
            raise Refusal(told) from error
        problems.append(told)
    if len(left):
        levels.append(_loudness(np.pad(left, (0, FRAME - len(left)))))
    loudness = np.concatenate(levels) if levels else np.zeros(0, np.float32)
    if samples < SHORTEST * RATE:
        raise Refusal(TOO_SHORT.at(name, f"{samples / RATE:.2f} s"), *problems)
    found = Survey(samples, loudness, tuple(problems))
    if found.is_silent(0, samples):
        raise Refusal(SILENT.at(name, f"{found.seconds:.0f} s"), *problems)
    return found


def _loudness(samples: npt.NDArray[np.int16]) -> npt.NDArray[np.float32]:
    import numpy as np  # as above

    frames = samples.reshape(-1, FRAME).astype(np.float32) / 32_768
    return np.asarray(np.sqrt((frames * frames).mean(axis=1)), np.float32)


def pieces(found: Survey, longest: float) -> Iterator[tuple[int, int]]:
    """Where to cut, as samples: pieces of at most *longest* seconds that meet, cut at the quietest moment.

    The cut is sought in the last half of what a piece may hold, so that pieces are at least half as long.
    """
    import numpy as np  # as above

    most = int(longest * RATE) // FRAME
    calm = np.convolve(found.loudness, np.ones(_CALM, np.float32) / _CALM, mode="same")
    start, frames = 0, len(found.loudness)
    while frames - start > most:
        low = start + most // 2
        cut = low + int(np.argmin(calm[low : start + most]))
        yield start * FRAME, cut * FRAME
        start = cut
    yield start * FRAME, found.samples
