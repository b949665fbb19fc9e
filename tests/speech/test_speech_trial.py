"""An engine that ends its process over a damaged model does not end this one."""

import sys
from pathlib import Path

import pytest

from witnessmark.problems import Refusal
from witnessmark.speech import model_at, open_model

LIBRARY = """
import os, sys

class OfflineRecognizer:
    @classmethod
    def from_transducer(cls, **given):
        print("bad magic in", given["encoder"], file=sys.stderr, flush=True)
        {end}
"""


@pytest.fixture
def folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.setenv("PYTHONPATH", str(tmp_path))
    made = tmp_path / "zipformer"
    made.mkdir()
    for name in ("encoder.onnx", "decoder.onnx", "joiner.onnx", "tokens.txt"):
        (made / name).write_bytes(b"damaged")
    return made


@pytest.mark.parametrize("end", ["os._exit(255)", "os.abort()"])
def test_a_model_over_which_the_engine_dies_is_refused(folder: Path, end: str) -> None:
    (folder.parent / "sherpa_onnx.py").write_text(LIBRARY.format(end=end), encoding="utf-8")
    with pytest.raises(Refusal) as caught:
        open_model(model_at(folder))
    assert caught.value.problems[0].number == "WM652"
    assert "bad magic" in str(caught.value)


def test_what_can_be_said_is_said_here(folder: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """The trial is survived, and the library refuses in its own words, or is not there at all."""
    (folder.parent / "sherpa_onnx.py").write_text(LIBRARY.format(end="raise RuntimeError('no')"), encoding="utf-8")
    monkeypatch.setitem(sys.modules, "sherpa_onnx", None)
    with pytest.raises(Refusal) as caught:
        open_model(model_at(folder))
    assert caught.value.problems[0].number == "WM650"
