"""Which model is used: the folder named, then the setting, then an installed package that is known by its hash."""

import base64
import hashlib
import sys
from collections.abc import Iterator
from pathlib import Path

import pytest

from witnessmark.problems import Refusal
from witnessmark.speech import find_model, installed_models, model_at
from witnessmark.speech.packaged import PACKAGED, PackagedModel

CT2 = ("model.bin", "config.json", "tokenizer.json", "vocabulary.txt")


def folder(path: Path, *names: str) -> Path:
    for name in names:
        (path / name).parent.mkdir(parents=True, exist_ok=True)
        (path / name).write_bytes(b"lmgg" if name.startswith("ggml") else name.encode())
    return path


@pytest.mark.parametrize(
    ("names", "engine"),
    [
        (CT2, "faster-whisper"),
        ((*CT2[:3], "vocabulary.json", "preprocessor_config.json"), "faster-whisper"),
        (("ggml-small.en.bin",), "whisper.cpp"),
        (("am/final.mdl", "conf/model.conf"), "vosk"),
        (("encoder.onnx", "decoder.onnx", "joiner.onnx", "tokens.txt"), "sherpa-onnx"),
    ],
)
def test_the_files_tell_the_engine(tmp_path: Path, names: tuple[str, ...], engine: str) -> None:
    assert model_at(folder(tmp_path / "m", *names)).engine == engine
    assert model_at(tmp_path).engine == engine, "an unpacked archive often holds one folder more"
    assert find_model(tmp_path / "m", engine).name == "m"


def test_one_file_may_be_a_model(tmp_path: Path) -> None:
    folder(tmp_path, "ggml-tiny.en.bin")
    assert model_at(tmp_path / "ggml-tiny.en.bin").engine == "whisper.cpp"


def test_two_models_differ_by_their_digest(tmp_path: Path) -> None:
    one, two = folder(tmp_path / "a", *CT2), folder(tmp_path / "b", *CT2)
    assert model_at(one).digest == model_at(two).digest
    (two / "model.bin").write_bytes(b"other weights")
    assert model_at(one).digest != model_at(two).digest


def refused(where: Path | None = None, engine: str | None = None) -> tuple[str, str]:
    with pytest.raises(Refusal) as caught:
        find_model(where, engine)
    return caught.value.problems[0].number, str(caught.value)


def test_what_is_no_model_is_refused_with_what_is_there(tmp_path: Path) -> None:
    assert refused(tmp_path / "none") == ("WM649", refused(tmp_path / "none")[1])
    assert "does not exist" in refused(tmp_path / "none")[1]
    assert "is empty" in refused(tmp_path)[1]
    assert "model.bin" in refused(folder(tmp_path, "model.bin", "config.json"))[1]
    assert refused(folder(tmp_path, "ggml-x.bin") / "config.json")[0] == "WM649"


def test_a_model_without_its_tokenizer_is_incomplete(tmp_path: Path) -> None:
    """The library would fetch the tokenizer."""
    assert refused(folder(tmp_path, "model.bin", "config.json", "vocabulary.txt"))[0] == "WM649"


def test_engine_and_model_must_agree(tmp_path: Path) -> None:
    assert refused(folder(tmp_path, *CT2), "vosk")[0] == "WM652"
    assert refused(tmp_path, "siren")[0] == "WM651"
    folder(tmp_path, "ggml-base.bin")
    assert find_model(tmp_path, "whisper.cpp").engine == "whisper.cpp"
    assert find_model(tmp_path).engine == "faster-whisper"


def test_the_setting_names_a_folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("WITNESSMARK_MODEL", str(folder(tmp_path / "set", *CT2)))
    assert find_model().name == "set"
    assert find_model(folder(tmp_path / "named", *CT2)).name == "named"
    monkeypatch.setenv("WITNESSMARK_MODEL", str(tmp_path / "gone"))
    assert refused()[0] == "WM649"


WEIGHTS = (b"first half, ", b"second half")


def digest(data: bytes) -> str:
    return hashlib.sha256(data).hexdigest()


@pytest.fixture
def packages(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Iterator[Path]:
    """Two installed packages with the two halves of one model, and nothing else; importing one of them fails."""
    files = {"model.bin": WEIGHTS, "config.json": (b"{}",), "tokenizer.json": (b"[]",), "vocabulary.txt": (b"a",)}
    known = PackagedModel("toy", "faster-whisper", {n: tuple(digest(p) for p in parts) for n, parts in files.items()})
    monkeypatch.setattr("witnessmark.speech.models.PACKAGED", (known,))
    monkeypatch.delenv("WITNESSMARK_MODEL", raising=False)
    for number in (0, 1):
        package = tmp_path / f"toy_part{number}"
        package.mkdir()
        (package / "__init__.py").write_text("raise RuntimeError('code of a stranger was run')")
        info = tmp_path / f"toy_part{number}-1.0.dist-info"
        info.mkdir()
        (info / "METADATA").write_text(f"Metadata-Version: 2.1\nName: toy-part{number}\nVersion: 1.0\n")
        rows = []
        for name, parts in files.items():
            if len(parts) > 1 or number == 0:
                data = parts[number if len(parts) > 1 else 0]
                stored = package / (f"{name}.part{number}" if len(parts) > 1 else name)
                stored.write_bytes(data)
                hashed = base64.urlsafe_b64encode(hashlib.sha256(data).digest()).rstrip(b"=").decode()
                rows.append(f"{stored.relative_to(tmp_path)},sha256={hashed},{len(data)}")
        (info / "RECORD").write_text("\n".join(rows) + "\n")
    monkeypatch.setattr(sys, "path", [str(tmp_path)])
    yield tmp_path
    assert not any(name.startswith("toy_part") for name in sys.modules)


@pytest.mark.usefixtures("packages")
def test_a_model_in_installed_packages_is_found_by_its_hash() -> None:
    model = find_model()
    assert (model.name, model.engine, model.folder) == ("toy", "faster-whisper", None)
    assert b"".join(part.read_bytes() for part in model.files["model.bin"]) == b"".join(WEIGHTS)
    assert refused(engine="vosk")[0] == "WM648"
    assert find_model(Path("toy")).digest == model.digest
    assert refused(Path("other"))[0] == "WM649"


def test_a_packaged_file_that_was_changed_is_not_used(packages: Path) -> None:
    (packages / "toy_part1" / "model.bin.part1").write_bytes(b"second half?")
    assert list(installed_models()) == []
    assert refused()[0] == "WM648"


def test_half_a_model_is_none(packages: Path) -> None:
    (packages / "toy_part1-1.0.dist-info" / "RECORD").unlink()
    assert refused()[0] == "WM648"


def test_every_packaged_model_has_every_file_that_its_engine_needs() -> None:
    for one in PACKAGED:
        assert set(one.files) == set(CT2)
        assert all(len(part) == 64 and int(part, 16) for parts in one.files.values() for part in parts)
    assert len({part for one in PACKAGED for part in one.rare()}) == 3
