"""Which engine runs a model: told by the user, or by the files of the model."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from witnessmark.speech.engine_faster_whisper import open_faster_whisper
from witnessmark.speech.engine_sherpa import open_sherpa
from witnessmark.speech.engine_vosk import open_vosk
from witnessmark.speech.engine_whisper_cpp import open_whisper_cpp
from witnessmark.speech.recognizer import Model, Opener, Recognizer
from witnessmark.speech.trial import try_in_a_process_of_its_own

__all__ = ["ENGINES", "open_model"]

#: Every engine by the name that the user gives.
ENGINES: Mapping[str, Opener] = {
    "faster-whisper": open_faster_whisper,
    "whisper.cpp": open_whisper_cpp,
    "vosk": open_vosk,
    "sherpa-onnx": open_sherpa,
}
#: Engines whose compiled code ends the process over a damaged model (seen in pywhispercpp 1.5.1 and sherpa-onnx 2.0.1).
_MAY_END = frozenset({"whisper.cpp", "sherpa-onnx"})


def open_model(model: Model, threads: int = 0, terms: Sequence[str] = ()) -> Recognizer:
    """Load a model in its engine. *threads* 0 lets the engine choose; *terms* are words to expect.

    Raises:
        Refusal: the library is missing (WM650), or cannot open the model (WM652).
    """
    if model.engine in _MAY_END:
        try_in_a_process_of_its_own(model)
    return ENGINES[model.engine](model, threads, terms)
