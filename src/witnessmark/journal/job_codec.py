"""The facts of a job as TOML that a person can write, and back."""

from __future__ import annotations

import dataclasses
import re
import tomllib
import typing
from collections.abc import Callable, Mapping
from datetime import date
from hashlib import sha256
from typing import Final

import tomli_w

from witnessmark.journal import messages
from witnessmark.journal.identity import is_uuid
from witnessmark.journal.job import Alteration, Job
from witnessmark.problems import Message, Problem, Refusal

__all__ = ["facts_hash", "job_from_toml", "job_to_toml"]


def facts_hash(data: bytes) -> str:
    """The SHA-256 (hex) of ``job.toml`` as it is stored; this is what a seal covers."""
    return sha256(data).hexdigest()


def job_from_toml(data: bytes, where: str) -> Job:
    """The facts that the file holds. A number may be written without quotes where text is kept.

    Raises:
        Refusal: WM250 when it is not TOML, WM251 for every unknown key with the allowed ones, WM252 for every value
            that is not allowed, all of them at once. *where* names the file.
    """
    try:
        table = tomllib.loads(data.decode("utf-8"), parse_float=_Written)
    except UnicodeDecodeError as error:
        raise Refusal(messages.JOB_UNREADABLE.at(where, f"byte {error.start} is not UTF-8")) from None
    except (tomllib.TOMLDecodeError, RecursionError, ValueError) as error:
        raise Refusal(messages.JOB_UNREADABLE.at(where, f"not TOML: {error}")) from None
    problems: list[Problem] = []
    values = _read_table(table, _READERS, where, problems)
    if "id" not in table:
        problems.append(messages.JOB_WRONG_VALUE.at(where, "id is missing; it is the UUID of the job"))
    if problems:
        raise Refusal(*problems)
    return Job(**values)  # type: ignore[arg-type] # each value was read by the reader of its own field


def job_to_toml(job: Job) -> bytes:
    """The facts as TOML; what is not known is left out.

    Raises:
        Refusal: WM252 when a field holds what could not be read back.
    """
    table: dict[str, object] = {}
    for field in dataclasses.fields(job):
        value = getattr(job, field.name)
        if value is None or value in ("", ()) or (field.default is False and value is False):
            continue
        if field.name == "altered":
            value = [dataclasses.asdict(one) for one in value]
        table[field.name] = list(value) if isinstance(value, tuple) else value
    try:
        data = tomli_w.dumps(table).encode("utf-8")
    except (TypeError, UnicodeEncodeError) as error:
        raise Refusal(messages.JOB_WRONG_VALUE.at(f"job {job.id}", str(error))) from None
    again = job_from_toml(data, f"job {job.id}")
    if again != job:
        changed = [f.name for f in dataclasses.fields(job) if getattr(again, f.name) != getattr(job, f.name)]
        raise Refusal(messages.JOB_WRONG_VALUE.at(f"job {job.id}", f"not kept as it is: {', '.join(changed)}"))
    return data


class _Written(str):
    """A number with decimals, kept as it was written."""

    __slots__ = ()


class _NotAllowedError(Exception):
    """A value that a key does not allow; says what it does allow."""


_Reader = Callable[[object], object]


def _read_table(
    table: Mapping[str, object], readers: Mapping[str, _Reader], where: str, problems: list[Problem]
) -> dict[str, object]:
    values: dict[str, object] = {}
    for key, value in table.items():
        reader = readers.get(key)
        if reader is None:
            problems.append(_problem(messages.JOB_UNKNOWN_KEY, where, key, value, f"allowed are {', '.join(readers)}"))
            continue
        try:
            values[key] = reader(value)
        except _NotAllowedError as error:
            problems.append(_problem(messages.JOB_WRONG_VALUE, where, key, value, str(error)))
    return values


def _problem(message: Message, where: str, key: str, value: object, allowed: str) -> Problem:
    shown = ascii(value)
    shown = shown if len(shown) <= 60 else shown[:57] + "..."  # noqa: PLR2004 - short enough for one line
    name = key if key.isascii() and key.isprintable() else ascii(key)
    return message.at(where, f"key {name}, which holds {shown}: {allowed}")


def _text(value: object) -> str:
    if isinstance(value, _Written) or (isinstance(value, int) and not isinstance(value, bool)):
        return str(value)
    if isinstance(value, str):
        return value
    raise _NotAllowedError('it must be text in quotes, such as "two"')


def _year(value: object) -> int:
    if isinstance(value, int) and not isinstance(value, bool) and 1000 <= value <= 9999:  # noqa: PLR2004 - four digits
        return value
    raise _NotAllowedError("it must be a year of four digits without quotes, such as 1987")


def _truth(value: object) -> bool:
    if isinstance(value, bool):
        return value
    raise _NotAllowedError("it must be true or false, without quotes")


def _texts(value: object) -> tuple[str, ...]:
    if isinstance(value, list) and all(type(one) is str for one in value):
        return tuple(value)
    raise _NotAllowedError('it must be a list of texts, such as ["natural gas", "wood"]')


def _uuid(value: object) -> str:
    if isinstance(value, str) and is_uuid(value):
        return value
    raise _NotAllowedError("it must be a UUID in lower case")


_AREA: Final = re.compile(r"[0-9]+(?:\.[0-9]+)?")
_UNSEPARATED: Final = "it must be a number without separators, such as 1850"


def _decimal(value: object) -> str:
    text = _text(value)
    if _AREA.fullmatch(text):
        return text
    raise _NotAllowedError(_UNSEPARATED)


def _day(value: object) -> str:
    if type(value) is date:
        return value.isoformat()
    if isinstance(value, str):
        try:
            if date.fromisoformat(value).isoformat() == value:
                return value
        except ValueError:
            pass
    raise _NotAllowedError("it must be a date, such as 2026-03-14")


def _alterations(value: object) -> tuple[Alteration, ...]:
    allowed = 'it must be a list of what and year, such as [{ what = "kitchen", year = 2004 }]'
    if not isinstance(value, list):
        raise _NotAllowedError(allowed)
    rows: list[Alteration] = []
    for one in value:
        if not isinstance(one, dict) or one.keys() != {"what", "year"}:
            raise _NotAllowedError(allowed)
        rows.append(Alteration(_text(one["what"]), _year(one["year"])))
    return tuple(rows)


_SPECIAL: Final[Mapping[str, _Reader]] = {"id": _uuid, "date": _day, "area": _decimal, "altered": _alterations}


def _reader_of(annotation: object) -> _Reader:
    inner = [one for one in typing.get_args(annotation) if one is not type(None)]
    if typing.get_origin(annotation) is tuple:
        return _texts
    wanted = inner[0] if inner else annotation
    if wanted is int:
        return _year
    return _truth if wanted is bool else _text


_HINTS: Final = typing.get_type_hints(Job)
_READERS: Final[Mapping[str, _Reader]] = {
    field.name: _SPECIAL.get(field.name) or _reader_of(_HINTS[field.name]) for field in dataclasses.fields(Job)
}
