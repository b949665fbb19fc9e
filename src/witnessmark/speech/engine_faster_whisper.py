"""Adapter for faster-whisper (Whisper models in CTranslate2 form), the engine used unless another is asked for."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from typing import TYPE_CHECKING, Any

from witnessmark.problems import Refusal
from witnessmark.speech.libraries import library, release
from witnessmark.speech.messages import MODEL_UNFIT
from witnessmark.speech.recognizer import Model
from witnessmark.speech.segments import Segment, Word

if TYPE_CHECKING:
    import numpy as np
    import numpy.typing as npt

__all__ = ["FasterWhisper", "open_faster_whisper"]

ENGINE, PACKAGE = "faster-whisper", "faster-whisper"
#: Widest beam the decoder follows; the library's own default.
_BEAM = 5
#: Stretches that even after decoding again repeat themselves (ratio of their text to its compressed form) or that the
#: engine itself holds for no speech are dropped; thresholds of the Whisper paper's decoder (Radford et al., Robust Speech
#: Recognition via Large-Scale Weak Supervision, 2022, section 4.5).
_REPEATS, _NO_SPEECH, _UNLIKELY = 2.4, 0.6, -1.0


class FasterWhisper:
    """Whisper by CTranslate2, 8-bit, on the processor. Nothing is fetched: every file is given by its path or content."""

    longest = 120.0

    def __init__(self, module: Any, model: Model, threads: int, terms: Sequence[str]) -> None:  # noqa: ANN401 - the library, imported lazily
        self.engine = f"{ENGINE} {release(PACKAGE)}"
        self.model = model
        self.prompt = ", ".join(terms) or None
        kwargs: dict[str, Any] = {
            "device": "cpu", "compute_type": "int8", "cpu_threads": threads, "local_files_only": True,
        }  # fmt: skip
        if model.folder is not None:
            self.whisper = module.WhisperModel(str(model.folder), **kwargs)
        else:
            files = {name: b"".join(part.read_bytes() for part in parts) for name, parts in model.files.items()}
            self.whisper = module.WhisperModel(model.name, files=files, **kwargs)

    def transcribe(self, pcm16k: npt.NDArray[np.int16]) -> Iterator[Segment]:
        """See ``Recognizer``. Words come with the probability the model gave them."""
        import numpy as np  # the library brings it

        audio = pcm16k.astype(np.float32) / 32_768
        found, _ = self.whisper.transcribe(
            audio, language="en", task="transcribe", beam_size=_BEAM, vad_filter=True, word_timestamps=True,
            condition_on_previous_text=False, initial_prompt=self.prompt,
        )  # fmt: skip
        for segment in found:
            if segment.compression_ratio > _REPEATS or (
                segment.no_speech_prob > _NO_SPEECH and segment.avg_logprob < _UNLIKELY
            ):
                continue
            words = _joined(segment.words or ())
            if words:
                yield Segment.of(words)


def _joined(rows: Iterable[Any]) -> tuple[Word, ...]:
    """The library's words; one that follows without a space ("twenty", "-four") belongs to the word before."""
    words: list[Word] = []
    for row in rows:
        text, sure = row.word.strip(), round(float(row.probability), 3)
        if not text:
            continue
        start, end = max(0.0, float(row.start)), max(0.0, float(row.end))
        if words and not row.word[:1].isspace():
            last = words.pop()
            words.append(Word(last.text + text, last.start, max(last.end, end), min(last.probability or 0.0, sure)))
        else:
            words.append(Word(text, start, max(start, end), sure))
    return tuple(words)


def open_faster_whisper(model: Model, threads: int, terms: Sequence[str]) -> FasterWhisper:
    """See ``Opener``."""
    module = library("faster_whisper", PACKAGE, ENGINE)
    try:
        return FasterWhisper(module, model, threads, terms)
    except (RuntimeError, ValueError, OSError, KeyError, TypeError) as error:
        raise Refusal(MODEL_UNFIT.at(model.name, f"{ENGINE}: {str(error)[:200]}")) from error
