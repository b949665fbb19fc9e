"""The report as data: ``report.json``, the same bytes for the same letter.

The seal stays out of it, so that the hash of these bytes can be sealed.
"""

from __future__ import annotations

import hashlib
import json
from contextlib import suppress
from dataclasses import fields, is_dataclass
from functools import cache, lru_cache
from pathlib import Path

from witnessmark.problems import Problem, Refusal
from witnessmark.report.letter import Letter
from witnessmark.report.messages import CANNOT_WRITE

__all__ = ["FORMAT", "NOT_DATA", "VERSION", "plain", "replace_file", "report_bytes", "report_hash", "write_json"]

FORMAT = "witnessmark report"
VERSION = 2
NOT_DATA = frozenset({"seal", "problems", "drawings"})


@cache
def _names(kind: type) -> tuple[str, ...]:
    """The fields of a kind of row; none for anything else."""
    return tuple(field.name for field in fields(kind)) if is_dataclass(kind) else ()


def plain(value: object) -> object:
    """Frozen rows as plain data; paths of this machine are left out."""
    if isinstance(value, str | int | float | None):
        return value
    if isinstance(value, tuple | list):
        return [plain(item) for item in value]
    if names := _names(type(value)):  # type: ignore[arg-type] # every type can be hashed
        held = ((name, getattr(value, name)) for name in names)
        return {name: plain(part) for name, part in held if not isinstance(part, Path)}
    return value


class _Same:
    """A letter, known again by being the very same object."""

    def __init__(self, letter: Letter) -> None:
        self.letter = letter

    def __hash__(self) -> int:
        return id(self.letter)

    def __eq__(self, other: object) -> bool:
        return isinstance(other, _Same) and other.letter is self.letter


def report_bytes(letter: Letter) -> bytes:
    """The bytes of ``report.json``: UTF-8, indented, ending in a line end."""
    return _bytes_of(_Same(letter))


@lru_cache(maxsize=1)  # page, PDF and the file itself each want them
def _bytes_of(same: _Same) -> bytes:
    letter = same.letter
    body = {field.name: plain(getattr(letter, field.name)) for field in fields(letter) if field.name not in NOT_DATA}
    if not letter.open_ends:
        # Whether it is sealed must not change the bytes whose hash the seal holds.
        body["draft"] = ""
    text = json.dumps({"format": FORMAT, "version": VERSION, **body}, ensure_ascii=False, indent=1)
    return (text + "\n").encode("utf-8")


def report_hash(letter: Letter) -> str:
    """The SHA-256 of ``report.json`` (hex), which a seal carries."""
    return hashlib.sha256(report_bytes(letter)).hexdigest()


def replace_file(path: Path, data: bytes) -> None:
    """Write the file whole or not at all; refused (WM809) when the place does not take it."""
    part = path.with_name(f".{path.name}.part")
    try:
        path.parent.mkdir(parents=True, exist_ok=True)
        part.write_bytes(data)
        part.replace(path)
    except OSError as error:
        with suppress(OSError):
            part.unlink(missing_ok=True)
        raise Refusal(CANNOT_WRITE.at(str(path), str(error))) from error


def write_json(letter: Letter, path: Path) -> tuple[Problem, ...]:
    """Write ``report.json``. Refused (WM809) when the place does not take it."""
    replace_file(path, report_bytes(letter))
    return ()
