"""Adapter for sherpa-onnx: transducers, Whisper and CTC models in ONNX form, with ``tokens.txt``."""

from __future__ import annotations

import math
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

__all__ = ["Sherpa", "open_sherpa"]

ENGINE, PACKAGE = "sherpa-onnx", "sherpa-onnx"
#: Marks that begin a new word in the tokens of such models (SentencePiece writes U+2581 for a space).
_BEGINS = ("\u2581", " ")
#: How long a last token is taken to last, in seconds.
_A_TOKEN = 0.2


def _loaded(offline: Any, model: Model, threads: int) -> Any:  # noqa: ANN401 - the library, imported lazily
    """The recogniser for the sort of model that the files make.

    Raises:
        ValueError: when the files make none that gives times for words.
    """
    files = {name: str(parts[0]) for name, parts in model.files.items()}
    shared: dict[str, Any] = {"tokens": files["tokens"], "num_threads": threads or 2, "provider": "cpu"}
    name = f"{model.folder.name if model.folder else ''} {model.name}".lower()
    if {"encoder", "decoder", "joiner"} <= files.keys():
        made = {key: files[key] for key in ("encoder", "decoder", "joiner")}
        nemo = any(word in name for word in ("nemo", "parakeet"))
        return offline.from_transducer(**made, **shared, model_type="nemo_transducer" if nemo else "transducer")
    if {"encoder", "decoder"} <= files.keys():
        return offline.from_whisper(
            encoder=files["encoder"], decoder=files["decoder"], language="en", task="transcribe",
            enable_token_timestamps=True, **shared,
        )  # fmt: skip
    if "model" in files:
        sorts = {"sense": "from_sense_voice", "nemo": "from_nemo_ctc", "zipformer": "from_zipformer_ctc"}
        for word, opener in sorts.items():
            if word in name:
                return getattr(offline, opener)(model=files["model"], **shared)
        message = "the folder's name does not tell which sort of CTC model it is (sense-voice, nemo or zipformer)"
        raise ValueError(message)
    message = "neither a transducer, nor Whisper, nor a CTC model"
    raise ValueError(message)


class Sherpa:
    """Models in ONNX form by sherpa-onnx. Terms are not passed on: only some of its models could take them."""

    longest = 25.0

    def __init__(self, module: Any, model: Model, threads: int) -> None:  # noqa: ANN401 - the library, imported lazily
        self.engine = f"{ENGINE} {release(PACKAGE)}"
        self.model = model
        self.recognizer = _loaded(module.OfflineRecognizer, model, threads)

    def transcribe(self, pcm16k: npt.NDArray[np.int16]) -> Iterator[Segment]:
        """See ``Recognizer``. Probabilities are those of the tokens, where the model gives them."""
        import numpy as np  # the library brings it

        stream = self.recognizer.create_stream()
        stream.accept_waveform(RATE, pcm16k.astype(np.float32) / 32_768)
        self.recognizer.decode_stream(stream)
        words = tuple(_words(stream.result, len(pcm16k) / RATE))
        if words:
            yield Segment.of(words)


def _words(result: Any, whole: float) -> Iterator[Word]:  # noqa: ANN401 - the library's result
    """Tokens with their times into words; without times the words share the sound evenly."""
    tokens, times = list(result.tokens), list(result.timestamps)
    if len(times) != len(tokens) or not tokens:
        said = result.text.split()
        for i, text in enumerate(said):
            yield Word(text, round(i * whole / len(said), 3), round((i + 1) * whole / len(said), 3))
        return
    logs = list(getattr(result, "ys_log_probs", ()) or ())
    ends = [*times[1:], min(whole, times[-1] + _A_TOKEN)]
    text, start, end = "", 0.0, 0.0
    sure: list[float] = []
    for i, token in enumerate(tokens):
        begins = token.startswith(_BEGINS)
        if begins and text:
            yield _word(text, start, end, sure)
            text, sure = "", []
        if not text:
            start = float(times[i])
        text += token.lstrip("".join(_BEGINS))
        end = float(ends[i])
        if len(logs) == len(tokens):
            sure.append(float(logs[i]))
    if text:
        yield _word(text, start, end, sure)


def _word(text: str, start: float, end: float, logs: Sequence[float]) -> Word:
    sure = round(math.exp(sum(logs) / len(logs)), 3) if logs else None
    return Word(text, round(start, 3), round(max(start, end), 3), sure)


def open_sherpa(model: Model, threads: int, terms: Sequence[str]) -> Sherpa:
    """See ``Opener``."""
    del terms
    module = library("sherpa_onnx", PACKAGE, ENGINE)
    try:
        return Sherpa(module, model, threads)
    except (RuntimeError, ValueError, OSError, AssertionError, TypeError) as error:
        raise Refusal(MODEL_UNFIT.at(model.name, f"{ENGINE}: {str(error)[:200]}")) from error
