"""Adapter for whisper.cpp through pywhispercpp (Whisper models in ggml form, one file)."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import TYPE_CHECKING, Any

from witnessmark.problems import Refusal
from witnessmark.speech.libraries import library, release
from witnessmark.speech.messages import MODEL_UNFIT
from witnessmark.speech.recognizer import Model
from witnessmark.speech.segments import Segment, Word

if TYPE_CHECKING:
    import numpy as np
    import numpy.typing as npt

__all__ = ["WhisperCpp", "open_whisper_cpp"]

ENGINE, PACKAGE = "whisper.cpp", "pywhispercpp"
#: The library counts in hundredths of a second.
_TICK = 100
#: What the model writes where it heard no words: ``[BLANK_AUDIO]``, ``(wind blowing)``, ``♪``.
_NO_WORDS = ("[", "(", "♪", "*")


class WhisperCpp:
    """Whisper by ggml. Each segment of the library is one word, since it is asked to cut at every word."""

    longest = 120.0

    def __init__(self, module: Any, model: Model, threads: int, terms: Sequence[str]) -> None:  # noqa: ANN401 - the library, imported lazily
        self.engine = f"{ENGINE} ({PACKAGE} {release(PACKAGE)})"
        self.model = model
        (file,) = model.files["model"]
        params: dict[str, Any] = {
            "language": "en", "translate": False, "no_context": True, "token_timestamps": True, "max_len": 1,
            "split_on_word": True, "suppress_blank": True, "print_progress": False, "print_realtime": False,
            "print_timestamps": False,
        }  # fmt: skip
        if threads:
            params["n_threads"] = threads
        if terms:
            params["initial_prompt"] = ", ".join(terms)
        self.whisper = module.Model(str(file), redirect_whispercpp_logs_to=None, **params)

    def transcribe(self, pcm16k: npt.NDArray[np.int16]) -> Iterator[Segment]:
        """See ``Recognizer``. The probability is the mean over the pieces of the word."""
        import numpy as np  # the library brings it

        words: list[Word] = []
        for row in self.whisper.transcribe(pcm16k.astype(np.float32) / 32_768, extract_probability=True):
            text = row.text.strip()
            if not text or text.startswith(_NO_WORDS):
                continue
            sure = float(row.probability)
            start, end = row.t0 / _TICK, max(row.t0, row.t1) / _TICK
            words.append(Word(text, start, end, None if np.isnan(sure) else round(sure, 3)))
        if words:
            yield Segment.of(tuple(words))


def open_whisper_cpp(model: Model, threads: int, terms: Sequence[str]) -> WhisperCpp:
    """See ``Opener``."""
    module = library("pywhispercpp.model", PACKAGE, ENGINE)
    try:
        return WhisperCpp(module, model, threads, terms)
    except (RuntimeError, ValueError, OSError, TypeError) as error:
        raise Refusal(MODEL_UNFIT.at(model.name, f"{ENGINE}: {str(error)[:200]}")) from error
