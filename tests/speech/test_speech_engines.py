"""Each adapter speaks to its library as the library wants to be spoken to.

faster-whisper runs for real in ``test_speech_whisper.py``. No English model of the others can be had from a package, so
they are held here to fakes with the signatures of pywhispercpp 1.5.1, vosk 0.3.45 and sherpa-onnx 2.0.1, read in the
installed libraries. A fake takes no argument that the library does not take.
"""

# ruff: noqa: N802 - the names of the fakes are those of the libraries
import json
import math
import sys
from pathlib import Path
from types import ModuleType, SimpleNamespace
from typing import Any

import numpy as np
import pytest

from witnessmark.problems import Refusal
from witnessmark.speech import Model, Segment, model_at, open_model

SOUND = (np.sin(np.arange(16_000 * 3)) * 8_000).astype(np.int16)


def model(tmp_path: Path, *names: str) -> Model:
    for name in names:
        path = tmp_path / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_bytes(b"lmgg" if name.startswith("ggml") else name.encode())
    return model_at(tmp_path)


def module(monkeypatch: pytest.MonkeyPatch, name: str, **contents: object) -> ModuleType:
    made = ModuleType(name)
    for key, value in contents.items():
        setattr(made, key, value)
    monkeypatch.setitem(sys.modules, name, made)
    if "." in name:
        module(monkeypatch, name.rpartition(".")[0])
    return made


def told(segments: list[Segment]) -> list[tuple[str, float, float, float | None]]:
    return [(w.text, w.start, w.end, w.probability) for s in segments for w in s.words]


@pytest.fixture(autouse=True)
def no_trial(monkeypatch: pytest.MonkeyPatch) -> None:
    """A process of its own would not know the fakes."""
    monkeypatch.setattr("witnessmark.speech.engines.try_in_a_process_of_its_own", lambda _: None)


CT2 = ("model.bin", "config.json", "tokenizer.json", "vocabulary.txt")


class FakeWhisperModel:
    """faster_whisper.WhisperModel 1.2.1."""

    def __init__(
        self, model_size_or_path: str, *, device: str = "auto", compute_type: str = "default", cpu_threads: int = 0,
        local_files_only: bool = False, files: dict[str, bytes] | None = None,
    ) -> None:  # fmt: skip
        self.given = (model_size_or_path, device, compute_type, cpu_threads, local_files_only, files)

    def transcribe(
        self, audio: Any, *, language: str | None = None, task: str = "transcribe", beam_size: int = 5,
        condition_on_previous_text: bool = True, initial_prompt: str | None = None, word_timestamps: bool = False,
        vad_filter: bool = False,
    ) -> Any:  # fmt: skip
        assert audio.dtype == np.float32
        assert np.abs(audio).max() <= 1
        assert (language, task, vad_filter, word_timestamps) == ("en", "transcribe", True, True)
        assert not condition_on_previous_text
        self.prompt, self.beam = initial_prompt, beam_size

        def segment(words: list[tuple[str, float, float, float]], repeats: float, silent: float, likely: float) -> Any:
            rows = [SimpleNamespace(word=w, start=np.float64(a), end=b, probability=p) for w, a, b, p in words]
            return SimpleNamespace(words=rows, compression_ratio=repeats, no_speech_prob=silent, avg_logprob=likely)

        rows = [
            segment(
                [(" Twenty", 0.1, 0.4, 0.9), ("-four", 0.4, 0.6, 0.8), (" percent.", 0.7, 1.0, 0.95)], 1.0, 0.1, -0.3
            ),
            segment([(" thank you", 1.0, 1.2, 0.2)], 1.0, 0.9, -1.4),
            segment([(" on on on on", 1.3, 1.9, 0.5)], 3.1, 0.1, -0.5),
            segment([], 1.0, 0.1, -0.1),
        ]
        return iter(rows), None


def test_faster_whisper(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    module(monkeypatch, "faster_whisper", WhisperModel=FakeWhisperModel)
    engine: Any = open_model(model(tmp_path, *CT2), 2, ("flue", "soffit"))
    assert engine.whisper.given == (str(tmp_path), "cpu", "int8", 2, True, None)
    heard = list(engine.transcribe(SOUND))
    assert told(heard) == [("Twenty-four", 0.1, 0.6, 0.8), ("percent.", 0.7, 1.0, 0.95)]
    assert engine.whisper.prompt == "flue, soffit"


class FakeCppModel:
    """pywhispercpp.model.Model 1.5.1: it cuts at every word when asked to, in hundredths of a second."""

    KEYS = frozenset({"n_threads", "no_context", "token_timestamps", "max_len", "split_on_word", "initial_prompt", "language",
                      "translate", "suppress_blank", "print_progress", "print_realtime", "print_timestamps"})  # fmt: skip

    def __init__(self, model: str = "tiny", redirect_whispercpp_logs_to: object = False, **params: object) -> None:
        assert Path(model).is_file(), "the library would fetch a model that is not a file"
        assert set(params) <= self.KEYS
        assert (params["max_len"], params["split_on_word"], params["token_timestamps"]) == (1, True, True)
        self.params = params
        assert redirect_whispercpp_logs_to is None

    def transcribe(self, media: Any, n_processors: int | None = None, extract_probability: bool = False) -> list[Any]:
        assert media.dtype == np.float32
        assert extract_probability
        assert n_processors is None
        rows = [(0, 0, "", math.nan), (10, 40, "Oven", 0.9), (40, 90, "on.", math.nan), (90, 120, "[BLANK_AUDIO]", 0.3)]
        return [SimpleNamespace(t0=a, t1=b, text=t, probability=p) for a, b, t, p in rows]


def test_whisper_cpp(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    module(monkeypatch, "pywhispercpp.model", Model=FakeCppModel)
    engine: Any = open_model(model(tmp_path, "ggml-tiny.en.bin"), 2, ("flue",))
    assert (engine.whisper.params["n_threads"], engine.whisper.params["initial_prompt"]) == (2, "flue")
    assert told(list(engine.transcribe(SOUND))) == [("Oven", 0.1, 0.4, 0.9), ("on.", 0.4, 0.9, None)]


class FakeKaldi:
    """vosk.KaldiRecognizer 0.3.45: bytes in, JSON out, one result at each end of an utterance."""

    def __init__(self, *args: object) -> None:
        _, rate = args
        assert rate == 16_000
        self.words, self.bytes = False, 0

    def SetWords(self, enable_words: bool) -> None:
        self.words = enable_words

    def AcceptWaveform(self, data: bytes) -> int:
        before, self.bytes = self.bytes, self.bytes + len(data)
        return int(before < 32_000 <= self.bytes)

    def _answer(self, *rows: tuple[str, float, float, float]) -> str:
        assert self.words
        result = [{"word": w, "start": a, "end": b, "conf": c} for w, a, b, c in rows]
        return json.dumps({"result": result, "text": "…"} if rows else {"text": ""})

    def Result(self) -> str:
        return self._answer(("oven", 0.1, 0.4, 1.0), ("[unk]", 0.4, 0.5, 0.2), ("on", 0.5, 0.8, 0.75))

    def FinalResult(self) -> str:
        assert self.bytes == 2 * len(SOUND)
        return self._answer()


class FakeVoskModel:
    def __init__(self, model_path: str | None = None, model_name: str | None = None, lang: str | None = None) -> None:
        assert model_path is not None, "the library would fetch a model by its name"
        assert (model_name, lang) == (None, None)
        if not (Path(model_path) / "conf").is_dir():
            message = "Failed to create a model"
            raise Exception(message)  # noqa: TRY002 - as the library does


def test_vosk(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    level: list[int] = []
    module(monkeypatch, "vosk", Model=FakeVoskModel, KaldiRecognizer=FakeKaldi, SetLogLevel=level.append)
    found = model(tmp_path, "am/final.mdl", "conf/mfcc.conf", "graph/HCLr.fst")
    heard = list(open_model(found).transcribe(SOUND))
    assert told(heard) == [("oven", 0.1, 0.4, 1.0), ("on", 0.5, 0.8, 0.75)]
    assert level == [-1]


def test_a_model_that_vosk_cannot_open_is_refused(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    module(monkeypatch, "vosk", Model=FakeVoskModel, SetLogLevel=lambda _: None)
    with pytest.raises(Refusal) as caught:
        open_model(model(tmp_path, "am/final.mdl"))
    assert caught.value.problems[0].number == "WM652"


class FakeSherpa:
    """sherpa_onnx.OfflineRecognizer 2.0.1: factories with their own arguments, streams, results with token times."""

    calls: list[tuple[str, dict[str, object]]]

    @classmethod
    def from_transducer(
        cls, *, encoder: str, decoder: str, joiner: str, tokens: str, num_threads: int = 1, provider: str = "cpu",
        model_type: str = "transducer",
    ) -> "FakeSherpa":  # fmt: skip
        return cls("transducer", encoder, decoder, joiner, tokens, num_threads, provider, model_type)

    @classmethod
    def from_whisper(
        cls, *, encoder: str, decoder: str, tokens: str, language: str = "en", task: str = "transcribe", num_threads: int = 1,
        provider: str = "cpu", enable_token_timestamps: bool = False,
    ) -> "FakeSherpa":  # fmt: skip
        return cls("whisper", encoder, decoder, tokens, language, task, num_threads, provider, enable_token_timestamps)

    @classmethod
    def from_nemo_ctc(cls, model: str, tokens: str, num_threads: int = 1, provider: str = "cpu") -> "FakeSherpa":
        return cls("nemo", model, tokens, num_threads, provider)

    def __init__(self, sort: str, *given: object) -> None:
        self.sort, self.given = sort, given
        self.result: Any = SimpleNamespace(
            text="Oven on", tokens=["\u2581O", "ven", "\u2581on", "."], timestamps=[0.1, 0.25, 0.5, 0.8],
            ys_log_probs=[math.log(0.5)] * 4,
        )  # fmt: skip

    def create_stream(self, hotwords: str | None = None) -> Any:
        assert hotwords is None

        def accept(rate: int, samples: Any) -> None:
            assert rate == 16_000
            assert samples.dtype == np.float32

        return SimpleNamespace(accept_waveform=accept, result=None)

    def decode_stream(self, s: Any) -> None:
        s.result = self.result


TRANSDUCER = ("encoder.int8.onnx", "encoder.onnx", "decoder.onnx", "joiner.onnx", "tokens.txt")


@pytest.mark.parametrize(
    ("folder", "names", "sort"),
    [
        ("zipformer-en", TRANSDUCER, "transducer"),
        ("whisper", ("tiny.en-encoder.int8.onnx", "tiny.en-decoder.int8.onnx", "tiny.en-tokens.txt"), "whisper"),
        ("nemo-ctc-en", ("model.int8.onnx", "tokens.txt"), "nemo"),
    ],
)
def test_sherpa(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, folder: str, names: tuple[str, ...], sort: str
) -> None:
    module(monkeypatch, "sherpa_onnx", OfflineRecognizer=FakeSherpa)
    engine: Any = open_model(model(tmp_path / folder, *names), 3)
    assert engine.recognizer.sort == sort
    assert "int8" in str(engine.recognizer.given[0])
    assert told(list(engine.transcribe(SOUND))) == [("Oven", 0.1, 0.5, 0.5), ("on.", 0.5, 1.0, 0.5)]


def test_sherpa_without_times_shares_the_sound_evenly(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    module(monkeypatch, "sherpa_onnx", OfflineRecognizer=FakeSherpa)
    engine: Any = open_model(model(tmp_path / "nemo", "model.onnx", "tokens.txt"))
    engine.recognizer.result = SimpleNamespace(text="oven is on", tokens=[], timestamps=[])
    assert told(list(engine.transcribe(SOUND))) == [
        ("oven", 0.0, 1.0, None),
        ("is", 1.0, 2.0, None),
        ("on", 2.0, 3.0, None),
    ]
    engine.recognizer.result = SimpleNamespace(text="", tokens=[], timestamps=[])
    assert list(engine.transcribe(SOUND)) == []


@pytest.mark.parametrize("names", [("model.onnx", "tokens.txt"), ("preprocess.onnx", "tokens.txt")])
def test_a_sort_that_sherpa_cannot_be_told_is_refused(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, names: tuple[str, ...]
) -> None:
    module(monkeypatch, "sherpa_onnx", OfflineRecognizer=FakeSherpa)
    with pytest.raises(Refusal) as caught:
        open_model(model(tmp_path / "mystery", *names))
    assert caught.value.problems[0].number == "WM652"


@pytest.mark.parametrize(
    ("names", "library", "package"),
    [
        (CT2, "faster_whisper", "faster-whisper"),
        (("ggml-base.bin",), "pywhispercpp", "pywhispercpp"),
        (("am/final.mdl",), "vosk", "vosk"),
        (TRANSDUCER, "sherpa_onnx", "sherpa-onnx"),
    ],
)
def test_a_missing_library_is_told_with_what_to_install(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, names: tuple[str, ...], library: str, package: str
) -> None:
    monkeypatch.setitem(sys.modules, library, None)
    with pytest.raises(Refusal) as caught:
        open_model(model(tmp_path, *names))
    assert caught.value.problems[0].number == "WM650"
    assert f"pip install {package}" in str(caught.value)
