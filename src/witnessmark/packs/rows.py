"""How a table of a pack file becomes a frozen row: the annotations of the row's class say what it may hold."""

from __future__ import annotations

import dataclasses
import re
import types
import typing
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from datetime import date, datetime
from difflib import get_close_matches
from functools import cache

from witnessmark import units
from witnessmark.packs import messages
from witnessmark.packs.model import TAGS, Provenance
from witnessmark.packs.terms import ALLOWED, DATES, NUMBERS, UNITS
from witnessmark.problems import Message, Problem

__all__ = ["PROVENANCE_KEYS", "Report", "close", "is_date", "is_id", "read_provenance", "read_row", "unknown_keys"]

PROVENANCE_KEYS = ("source", "tag", "in_force", "until")
_ID = re.compile(r"[A-Za-z0-9]+(?:[-.][A-Za-z0-9]+)*(?:@\d{4}-\d{2}-\d{2})?")
_NUMBER = re.compile(r"-?\d{1,30}(?:\.\d{1,30})?", re.ASCII)
_DATE = re.compile(r"\d{4}-\d{2}-\d{2}", re.ASCII)
_LONGEST_ID = 80
#: Spelling suggestions are slow; a file with more problems than this has others than spelling.
_SUGGESTIONS = 40


class Report:
    """The problems met so far, each told with the place it was met at."""

    def __init__(self) -> None:
        self.problems: list[Problem] = []

    def __call__(self, message: Message, where: str, detail: str = "") -> None:
        """Note one problem."""
        self.problems.append(message.at(where, detail))

    def nearest(self, word: str, words: typing.Iterable[str]) -> str:
        """The nearest of *words* in a phrase, or nothing."""
        return close(word, words) if len(self.problems) < _SUGGESTIONS else ""


def close(word: str, words: typing.Iterable[str]) -> str:
    """The nearest of *words* to *word* as ``, did you mean …``; empty when none is near."""
    near = get_close_matches(word[:_LONGEST_ID], list(words), n=3, cutoff=0.6)
    return f", did you mean {' or '.join(near)}?" if near else ""


def is_id(value: str) -> bool:
    """Whether *value* can be an id; ``@`` and a date mark a row that succeeds another."""
    return len(value) <= _LONGEST_ID and _ID.fullmatch(value) is not None


def is_date(value: str) -> bool:
    """Whether *value* is a calendar date, ISO 8601."""
    if _DATE.fullmatch(value) is None:
        return False
    try:
        date.fromisoformat(value)
    except ValueError:
        return False
    return True


@dataclass(frozen=True, slots=True)
class _Field:
    """One field of a row class: what it holds and whether it may be left out."""

    name: str
    base: type
    many: bool
    required: bool
    empty: bool


@cache
def _fields(cls: type) -> dict[str, _Field]:
    hints = typing.get_type_hints(cls)
    found: dict[str, _Field] = {}
    for field in dataclasses.fields(cls):
        hint, many = hints[field.name], False
        if typing.get_origin(hint) in {types.UnionType, typing.Union}:
            hint = next(a for a in typing.get_args(hint) if a is not types.NoneType)
        if typing.get_origin(hint) is tuple:
            hint, many = typing.get_args(hint)[0], True
        if hint is Provenance:
            continue
        found[field.name] = _Field(
            field.name, hint, many, field.default is dataclasses.MISSING, field.default in ("", ())
        )
    return found


def unknown_keys(table: Mapping[str, object], allowed: tuple[str, ...], where: str, report: Report) -> None:
    """Report the keys of *table* that are not *allowed*, with the allowed ones and the nearest."""
    for key in table:
        if key not in allowed:
            near = report.nearest(key, allowed)
            report(messages.UNKNOWN_KEY, f"{where}, key {key[:_LONGEST_ID]!r}", f"allowed: {', '.join(allowed)}{near}")


def read_provenance(
    table: Mapping[str, object], defaults: Mapping[str, object], file: str, where: str, report: Report
) -> Provenance | None:
    """Source, tag and dates of a row, its own before the file's; None (and problems) when any is missing or wrong."""
    values: dict[str, str | None] = {}
    for key in PROVENANCE_KEYS:
        value = table.get(key, defaults.get(key))
        if isinstance(value, date) and not isinstance(value, datetime):
            value = value.isoformat()
        if value is None:
            if key != "until":
                report(messages.NO_PROVENANCE, where, f"{key} is missing")
                return None
            values[key] = None
            continue
        if not isinstance(value, str) or not value.strip():
            report(messages.NO_PROVENANCE, f"{where}, key {key!r}", f"{value!r:.80} is no text")
            return None
        values[key] = value
    if values["tag"] not in TAGS:
        report(messages.NOT_ALLOWED, f"{where}, key 'tag'", f"{values['tag']!r:.80}; allowed: {', '.join(TAGS)}")
        return None
    for key in ("in_force", "until"):
        held = values[key]
        if held is not None and not is_date(held):
            report(messages.BAD_DATE, f"{where}, key {key!r}", f"{held!r:.80}")
            return None
    if values["until"] is not None and values["until"] <= (values["in_force"] or ""):
        report(messages.CONTRADICTS, where, f"until {values['until']} is not after in_force {values['in_force']}")
        return None
    return Provenance(str(values["source"]), values["in_force"], str(values["tag"]), file, values["until"])


def _text(value: object, where: str, report: Report, *, empty: bool) -> str | None:
    if isinstance(value, date) and not isinstance(value, datetime):
        value = value.isoformat()
    if not isinstance(value, str):
        shape = "a number in quotes" if isinstance(value, int | float) else "text in quotes"
        report(messages.WRONG_TYPE, where, f"expected {shape}, found {value!r:.80}")
        return None
    text = " ".join(value.split())
    if not text and not empty:
        report(messages.EMPTY_TEXT, where)
        return None
    return text


def _one(field: _Field, value: object, where: str, report: Report, *, empty: bool = False) -> object:
    if field.base is str:
        return _text(value, where, report, empty=empty)
    if field.base in {int, bool}:
        if type(value) is not field.base:
            what = "true or false" if field.base is bool else "a whole number without quotes"
            report(messages.WRONG_TYPE, where, f"expected {what}, found {value!r:.80}")
            return None
        return value
    return read_row(field.base, value, where, report)


def _closed(cls: type, field: _Field, value: str, where: str, report: Report) -> None:
    """Fields whose text has a form of its own: ids, words of a closed list, numbers, units, dates."""
    at = (cls.__name__, field.name)
    allowed = ALLOWED.get(at)
    if allowed is not None and value not in allowed:
        report(messages.NOT_ALLOWED, where, f"{value!r:.80}; allowed: {', '.join(allowed)}")
    elif at in NUMBERS and _NUMBER.fullmatch(value) is None:
        report(messages.BAD_NUMBER, where, f"{value!r:.80}")
    elif at in UNITS and not units.known(value):
        report(messages.UNKNOWN_UNIT, where, f"{value!r:.80}")
    elif at in DATES and not is_date(value):
        report(messages.BAD_DATE, where, f"{value!r:.80}")
    elif field.name == "id" and cls.__name__ != "AttributeValue" and not is_id(value):
        report(messages.BAD_ID, where, f"{value!r:.80}")


def _value(cls: type, field: _Field, value: object, where: str, report: Report) -> object:
    if not field.many:
        read = _one(field, value, where, report, empty=field.empty)
        if isinstance(read, str) and read:
            _closed(cls, field, read, where, report)
        return read
    if not isinstance(value, list):
        report(messages.WRONG_TYPE, where, f"expected a list, found {value!r:.80}")
        return ()
    rows = tuple(_one(field, v, f"{where} number {n}", report) for n, v in enumerate(value, 1))
    if (cls.__name__, field.name) in UNITS:
        for unit in rows:
            if isinstance(unit, str):
                _closed(cls, field, unit, where, report)
    return rows


def _spoken(values: dict[str, object], name: str) -> tuple[str, ...]:
    said = values.get("spoken", ())
    assert isinstance(said, tuple)  # noqa: S101 - read as a list above
    return tuple(dict.fromkeys([name.lower(), *(str(s).lower() for s in said)]))


def _complete(cls: type, values: dict[str, object]) -> None:
    """Fill what follows from the name: the plural, and the name among the spoken forms."""
    name = values.get("name")
    fields = _fields(cls)
    if isinstance(name, str) and "plural" in fields:
        values.setdefault("plural", name + "s")
    if "spoken" in fields:
        if isinstance(name, str):
            values["spoken"] = _spoken(values, name)
        elif cls.__name__ == "AttributeValue":
            values["spoken"] = _spoken(values, str(values.get("id")))
    if "values" in fields:
        values.setdefault("values", ())


def read_row(
    cls: type,
    table: object,
    where: str,
    report: Report,
    *,
    provenance: Callable[[Mapping[str, object], str], Provenance | None] | None = None,
    extra: Mapping[str, object] | None = None,
) -> object | None:
    """*table* as a row of *cls*; None when anything in it is wrong, each wrong thing reported.

    *provenance* reads the row's provenance for classes that have one; *extra* gives fields read elsewhere.
    """
    if not isinstance(table, dict):
        report(messages.WRONG_TYPE, where, f"expected a table, found {table!r:.80}")
        return None
    before = len(report.problems)
    fields = _fields(cls)
    given = {} if extra is None else dict(extra)
    keys = tuple(k for k in fields if k not in given) + (PROVENANCE_KEYS if provenance else ())
    if not table.keys() <= set(keys):
        unknown_keys(table, keys, where, report)
    values: dict[str, object] = given
    for key, value in table.items():
        field = fields.get(key)
        if field is not None and key in keys:
            values[key] = _value(cls, field, value, f"{where}, key {key!r}", report)
    _complete(cls, values)
    for name, field in fields.items():
        if field.required and name not in values:
            report(messages.MISSING_KEY, where, f"{name} is missing")
    if provenance is not None:
        values["provenance"] = provenance(table, where)
    if len(report.problems) > before:
        return None
    row: object = cls(**values)
    return row
