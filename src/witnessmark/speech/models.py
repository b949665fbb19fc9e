"""Which speech model is on this machine: in a folder that the user names, or in an installed package, by its hash."""

from __future__ import annotations

import base64
import hashlib
import importlib.metadata
import os
from collections.abc import Iterator, Mapping
from dataclasses import replace
from pathlib import Path

from witnessmark.problems import Refusal
from witnessmark.speech.engines import ENGINES
from witnessmark.speech.messages import MODEL_UNFIT, NO_MODEL, NOT_A_MODEL, UNKNOWN_ENGINE
from witnessmark.speech.packaged import PACKAGED, PackagedModel
from witnessmark.speech.recognizer import Model

__all__ = ["SETTING", "find_model", "installed_models", "model_at"]

#: The setting that names a model folder where no option does.
SETTING = "WITNESSMARK_MODEL"
_AT_ONCE = 1 << 20


def find_model(where: Path | None = None, engine: str | None = None) -> Model:
    """The model to use: *where* if given, else what ``WITNESSMARK_MODEL`` names, else one in an installed package.

    *where* is a folder, a file, or the name of a packaged model (``whisper-base``).

    Raises:
        Refusal: no model (WM648), no known set of files (WM649), an engine unknown (WM651) or not for it (WM652).
    """
    if engine is not None and engine not in ENGINES:
        raise Refusal(UNKNOWN_ENGINE.at(engine))
    if where is None and (setting := os.environ.get(SETTING, "")):
        where = Path(setting).expanduser()
    named = "" if where is None or where.exists() else str(where)
    if where is not None and not any(one.name == named for one in PACKAGED):
        return model_at(where, engine)
    for model in installed_models():
        if engine in {None, model.engine} and named in {"", model.name}:
            return model
    raise Refusal(NO_MODEL.at(named or (f"engine {engine}" if engine else "speech")))


def model_at(where: Path, engine: str | None = None) -> Model:
    """The model in a folder (or one folder further down), or the one file that is a model.

    Raises:
        Refusal: no known set of files (WM649), or they are for another engine than *engine* (WM652).
    """
    if not where.exists():
        raise Refusal(NOT_A_MODEL.at(str(where), "it does not exist"))
    try:
        candidates = [where, *sorted(p for p in where.iterdir() if p.is_dir())] if where.is_dir() else [where]
        sets = [(place, name, files) for place in candidates for name, files in _sets(place)]
    except OSError as error:
        raise Refusal(NOT_A_MODEL.at(str(where), str(error))) from error
    if not sets:
        names = sorted(p.name for p in where.iterdir())[:6] if where.is_dir() else ["one file"]
        raise Refusal(NOT_A_MODEL.at(str(where), "it is empty" if not names else "it holds " + ", ".join(names)))
    fitting = [row for row in sets if engine in {None, row[1]}]
    if not fitting:
        raise Refusal(MODEL_UNFIT.at(str(where), f"it is for {sets[0][1]}, not for {engine}"))
    place, name, files = fitting[0]
    folder = place if place.is_dir() else place.parent
    label = place.stem if place.is_file() else place.name
    return Model(label or str(where), name, files, folder, _digest(files))


def _sets(place: Path) -> Iterator[tuple[str, Mapping[str, tuple[Path, ...]]]]:
    """The sets of model files that lie in a folder, each with its engine."""
    if place.is_file():
        if _is_ggml(place):
            yield "whisper.cpp", {"model": (place,)}
        return
    inside = {path.name: path for path in sorted(place.iterdir()) if path.is_file()}
    vocabulary = next((inside[n] for n in ("vocabulary.txt", "vocabulary.json") if n in inside), None)
    if {"model.bin", "config.json", "tokenizer.json"} <= inside.keys() and vocabulary is not None:
        names = ["model.bin", "config.json", "tokenizer.json", vocabulary.name]
        names += ["preprocessor_config.json"] if "preprocessor_config.json" in inside else []
        yield "faster-whisper", {name: (inside[name],) for name in names}
    for path in inside.values():
        if path.name.startswith("ggml-") and _is_ggml(path):
            yield "whisper.cpp", {"model": (path,)}
            break
    if (place / "am" / "final.mdl").is_file():
        files = sorted(path for path in place.rglob("*") if path.is_file())
        yield "vosk", {str(path.relative_to(place)): (path,) for path in files}
    tokens = next((path for name, path in inside.items() if name.endswith("tokens.txt")), None)
    onnx = [path for name, path in inside.items() if name.endswith(".onnx")]
    if tokens is not None and onnx:
        roles: dict[str, tuple[Path, ...]] = {"tokens": (tokens,)}
        for role in ("encoder", "decoder", "joiner", "model"):
            named = [path for path in onnx if role in path.name]
            if named:  # the 8-bit one where there are two
                roles[role] = (min(named, key=lambda path: ("int8" not in path.name, path.name)),)
        yield "sherpa-onnx", roles


def _is_ggml(path: Path) -> bool:
    """Whether a file begins with the mark of the ggml form (little-endian ``ggml``)."""
    try:
        with path.open("rb") as file:
            return file.read(4) in {b"lmgg", b"GGUF"}
    except OSError:
        return False


def _sha256(parts: tuple[Path, ...]) -> str:
    made = hashlib.sha256()
    for part in parts:
        with part.open("rb") as file:
            while block := file.read(_AT_ONCE):
                made.update(block)
    return made.hexdigest()


def _digest(files: Mapping[str, tuple[Path, ...]]) -> str:
    made = hashlib.sha256()
    for name, parts in sorted(files.items()):
        made.update(f"{name} {_sha256(parts)}\n".encode())
    return made.hexdigest()


def installed_models() -> Iterator[Model]:
    """Models of ``PACKAGED`` that lie in installed packages, best first.

    They are found in the packages' own lists of files, by hash; no code of those packages is imported. What a list
    promises is hashed again before it is used.
    """
    lists: list[tuple[importlib.metadata.Distribution, str]] = []
    for package in importlib.metadata.distributions():
        record = package.read_text("RECORD")
        if record and any(_as_record(digest) in record for one in PACKAGED for digest in one.rare()):
            lists.append((package, record))
    for one in PACKAGED if lists else ():
        model = _installed(one, lists)
        if model is not None:
            yield model


def _as_record(digest: str) -> str:
    """A SHA-256 as lists of installed files write it (PEP 376 and the wheel format: URL-safe base 64, no padding)."""
    return "sha256=" + base64.urlsafe_b64encode(bytes.fromhex(digest)).rstrip(b"=").decode()


def _installed(one: PackagedModel, lists: list[tuple[importlib.metadata.Distribution, str]]) -> Model | None:
    files: dict[str, tuple[Path, ...]] = {}
    for name, digests in one.files.items():
        parts = []
        for digest in digests:
            path = _listed(digest, lists)
            if path is None or _sha256((path,)) != digest:
                return None
            parts.append(path)
        files[name] = tuple(parts)
    folders = {path.parent for parts in files.values() for path in parts}
    whole = all(len(parts) == 1 and parts[0].name == name for name, parts in files.items())
    model = Model(one.name, one.engine, files, None, _digest(files))
    return replace(model, folder=folders.pop()) if whole and len(folders) == 1 else model


def _listed(digest: str, lists: list[tuple[importlib.metadata.Distribution, str]]) -> Path | None:
    wanted = _as_record(digest)
    for package, record in lists:
        for line in record.splitlines():
            name, _, rest = line.partition(",")
            if rest.startswith(wanted):
                path = Path(str(package.locate_file(name)))
                if path.is_file():
                    return path
    return None
