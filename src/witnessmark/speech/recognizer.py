"""The port that every speech engine is reached through, and what a model on this machine is."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING, Protocol

from witnessmark.speech.segments import Segment

if TYPE_CHECKING:
    import numpy as np
    import numpy.typing as npt

__all__ = ["Model", "Opener", "Recognizer"]


@dataclass(frozen=True, slots=True)
class Model:
    """A speech model on this machine.

    Attributes:
        name: what to call it (the folder's name, or that of a packaged model).
        engine: which engine it is for.
        files: path of each file by the name the engine knows it by; several where a file comes in parts.
        folder: where they lie, None when they do not lie in one folder under those names.
        digest: SHA-256 that tells it from any other model, in hexadecimal.
    """

    name: str
    engine: str
    files: Mapping[str, tuple[Path, ...]]
    folder: Path | None
    digest: str


class Recognizer(Protocol):
    """An engine with its model loaded.

    Attributes:
        engine: name and release of the library, such as ``faster-whisper 1.2.1``.
        model: the model it runs.
        longest: seconds of sound it takes at once.
    """

    engine: str
    model: Model
    longest: float

    def transcribe(self, pcm16k: npt.NDArray[np.int16]) -> Iterator[Segment]:
        """The speech in 16-bit samples of one channel at 16 000 a second, with times from their beginning."""
        ...


class Opener(Protocol):
    """What an adapter offers: opens its engine on a model."""

    def __call__(self, model: Model, threads: int, terms: Sequence[str]) -> Recognizer:
        """Load the model; *threads* 0 lets the engine choose, *terms* are words to expect, where the engine can.

        Raises:
            Refusal: the library is missing (WM650) or cannot open the model (WM652).
        """
        ...
