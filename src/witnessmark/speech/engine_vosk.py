"""Adapter for vosk (Kaldi models, a folder with ``am/final.mdl``)."""

from __future__ import annotations

import json
from collections.abc import Iterator, Sequence
from typing import TYPE_CHECKING, Any

from witnessmark.problems import Refusal
from witnessmark.speech.libraries import library, release
from witnessmark.speech.messages import MODEL_UNFIT
from witnessmark.speech.recognizer import Model
from witnessmark.speech.segments import Segment, Word
from witnessmark.speech.wav import RATE

if TYPE_CHECKING:
    import numpy as np
    import numpy.typing as npt

__all__ = ["Vosk", "open_vosk"]

ENGINE, PACKAGE = "vosk", "vosk"
#: Samples given at once: a quarter of a second, as the library's own examples do.
_SIP = 4000
#: What the model writes where it heard a word that it does not know.
_UNKNOWN = "[unk]"


class Vosk:
    """Kaldi by vosk. It writes no punctuation, and expects no terms: its vocabulary is that of the model."""

    longest = 120.0

    def __init__(self, module: Any, model: Model) -> None:  # noqa: ANN401 - the library, imported lazily
        self.engine = f"{ENGINE} {release(PACKAGE)}"
        self.model = model
        self.module = module
        module.SetLogLevel(-1)
        self.kaldi = module.Model(model_path=str(model.folder))

    def transcribe(self, pcm16k: npt.NDArray[np.int16]) -> Iterator[Segment]:
        """See ``Recognizer``."""
        recognizer = self.module.KaldiRecognizer(self.kaldi, RATE)
        recognizer.SetWords(True)  # noqa: FBT003 - the library's own signature
        for start in range(0, len(pcm16k), _SIP):
            if recognizer.AcceptWaveform(pcm16k[start : start + _SIP].astype("<i2").tobytes()):
                yield from _segment(recognizer.Result())
        yield from _segment(recognizer.FinalResult())


def _segment(answer: str) -> Iterator[Segment]:
    words = tuple(
        Word(row["word"], float(row["start"]), float(row["end"]), round(float(row["conf"]), 3))
        for row in json.loads(answer).get("result", ())
        if row["word"] != _UNKNOWN
    )
    if words:
        yield Segment.of(words)


def open_vosk(model: Model, threads: int, terms: Sequence[str]) -> Vosk:
    """See ``Opener``. Neither *threads* nor *terms* can be set in this engine."""
    del threads, terms
    module = library("vosk", PACKAGE, ENGINE)
    try:
        return Vosk(module, model)
    except Exception as error:  # the library raises bare Exception
        raise Refusal(MODEL_UNFIT.at(model.name, f"{ENGINE}: {str(error)[:200]}")) from error
