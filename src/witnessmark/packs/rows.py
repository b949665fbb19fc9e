"""How a table of a pack file becomes a frozen row: the annotations of the row's class say what it may hold."""

from __future__ import annotations

import dataclasses
import re
import types
import typing
from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date, datetime
from functools import cache

from witnessmark import units
from witnessmark.packs import messages
from witnessmark.packs.faults import Report, unknown_keys
from witnessmark.packs.model import Provenance
from witnessmark.packs.provenance import PROVENANCE_KEYS, Origin, is_date
from witnessmark.packs.terms import ALLOWED, DATES, NUMBERS, UNITS

__all__ = ["Key", "is_id", "keys_of", "read_row"]

_ID = re.compile(r"[A-Za-z0-9]+(?:[-.][A-Za-z0-9]+)*(?:@\d{4}-\d{2}-\d{2})?")
_NUMBER = re.compile(r"-?\d{1,30}(?:\.\d{1,30})?", re.ASCII)
_LONGEST_ID = 80


def is_id(value: str) -> bool:
    """Whether *value* can be an id; ``@`` and a date mark a row that succeeds another."""
    return len(value) <= _LONGEST_ID and _ID.fullmatch(value) is not None


#: Fields whose text has a form of its own.
_CLOSED = {*ALLOWED, *NUMBERS, *UNITS, *DATES}


@dataclass(frozen=True, slots=True)
class _Field:
    """One field of a row class: what it holds, whether it may be left out, whether any words will do (``free``)."""

    name: str
    base: type
    many: bool
    required: bool
    empty: bool
    free: bool


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
            field.name,
            hint,
            many,
            field.default is dataclasses.MISSING,
            field.default in ("", ()),
            hint is str and field.name != "id" and (cls.__name__, field.name) not in _CLOSED,
        )
    return found


@cache
def _keys(cls: type, given: tuple[str, ...], sourced: bool) -> dict[str, None]:
    """The keys that a table of *cls* may hold, but for the fields *given* from elsewhere."""
    own = [name for name in _fields(cls) if name not in given]
    return dict.fromkeys([*own, *(PROVENANCE_KEYS if sourced else ())])


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


def _tidy(value: object) -> bool:
    return isinstance(value, str) and value != "" and value == " ".join(value.split())


def _quick(field: _Field, value: object) -> object:
    """Words that are fine as they stand, as nearly all are; None where a closer look is needed."""
    if not field.many:
        return value if _tidy(value) else None
    return tuple(value) if isinstance(value, list) and all(map(_tidy, value)) else None


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
    if (cls.__name__, field.name) in _CLOSED:
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
    if isinstance(name, str) and "plural" in fields and fields["plural"].required:
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
    origin: Origin | None = None,
    extra: Mapping[str, object] | None = None,
) -> object | None:
    """*table* as a row of *cls*; None when anything in it is wrong, each wrong thing reported.

    *origin* gives the row its provenance, for classes that have one; *extra* gives fields read elsewhere.
    """
    if not isinstance(table, dict):
        report(messages.WRONG_TYPE, where, f"expected a table, found {table!r:.80}")
        return None
    before = len(report.problems)
    fields = _fields(cls)
    values: dict[str, object] = {} if extra is None else dict(extra)
    keys = _keys(cls, tuple(values), origin is not None)
    if not table.keys() <= keys.keys():
        unknown_keys(table, tuple(keys), where, report)
    for key, value in table.items():
        field = fields.get(key)
        if field is None or key not in keys:
            continue
        quick = _quick(field, value) if field.free else None
        values[key] = _value(cls, field, value, f"{where}, key {key!r}", report) if quick is None else quick
    _complete(cls, values)
    for name, field in fields.items():
        if field.required and name not in values:
            report(messages.MISSING_KEY, where, f"{name} is missing")
    if origin is not None:
        values["provenance"] = origin.of(table, where)
    if len(report.problems) > before:
        return None
    row: object = cls(**values)
    return row


@dataclass(frozen=True, slots=True)
class Key:
    """A key of a table, for its documentation: whether it must be there, and what it holds in words."""

    name: str
    required: bool
    holds: str


def _holds(cls: type, field: _Field) -> str:
    at = (cls.__name__, field.name)
    if at in ALLOWED:
        words = "one of " + ", ".join(f"`{word}`" for word in ALLOWED[at])
    elif at in NUMBERS:
        words = "a number in quotes"
    elif at in UNITS:
        words = "a UCUM code"
    elif at in DATES:
        words = "a date"
    elif field.base in {bool, int}:
        words = "true or false" if field.base is bool else "a whole number"
    elif field.base is str:
        words = "an id" if field.name == "id" and cls.__name__ != "AttributeValue" else "text"
    else:
        words = f"a table: {field.base.__name__}"
    return f"a list, each {words}" if field.many else words


def keys_of(cls: type) -> list[Key]:
    """The keys that a table of *cls* may hold, in order; what the reader fills in itself need not be there."""
    filled = {"plural", "spoken"} if cls.__name__ != "Reason" else set()
    filled |= {"values"}
    return [
        Key(name, field.required and name not in filled, _holds(cls, field)) for name, field in _fields(cls).items()
    ]
