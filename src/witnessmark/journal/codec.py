"""An entry as one line of canonical JSON, and back.

The line is the canonical JSON of the entry's fields with ``hash`` among them; ``hash`` is the SHA-256 of the same
line without it. ``place``, ``component``, ``media`` and ``draft`` are left out while they say nothing; inside the
body the rule of ``shapes`` holds. Every entry has exactly one line, and a line that is not that line is refused.

An act or version that this release does not know is read as an ``Unread`` body, kept to the byte; so is an amendment
to such a body.
"""

from __future__ import annotations

import json
import re
from collections.abc import Callable, Iterable, Mapping
from dataclasses import replace
from hashlib import sha256
from typing import Any, Final

from witnessmark.journal import messages
from witnessmark.journal.acts import BODIES, Amended, Body
from witnessmark.journal.canonical import DEEPEST, LARGEST_WHOLE, encode, encode_simple
from witnessmark.journal.entry import SOURCES, Entry, Source, Unread
from witnessmark.journal.identity import is_id, is_uuid
from witnessmark.journal.moment import instant
from witnessmark.journal.shapes import Misfit, MissingField, UnknownField, path_to, shape_of
from witnessmark.problems import Problem, Refusal

__all__ = ["from_line", "from_plain", "hash_of", "problems_of_unread", "to_line", "to_plain", "with_hash"]

_Plain = dict[str, Any]  # parsed JSON: any value may stand in it


class _ActNotKnownError(Exception):
    """The body's act or version is not in the registry."""


def to_line(entry: Entry) -> bytes:
    """The entry's one line, without a newline. An entry that has no hash yet gets it.

    Raises:
        Refusal: WM210 when a field holds what could not be read back, WM205 when the entry's hash is not its own.
    """
    before, after, known = _halves_of(entry)
    line, _ = _join(before, after, entry.hash, known=known, where=_name(entry))
    return line


def to_plain(entry: Entry) -> dict[str, Any]:
    """The entry as plain JSON data, its hash included. Raises as ``to_line`` does."""
    before, after, known = _halves_of(entry)
    _, own = _join(before, after, entry.hash, known=known, where=_name(entry))
    return {**before, "hash": own, **after}


def hash_of(entry: Entry) -> str:
    """The SHA-256 (hex) of the entry's fields, whatever ``hash`` it holds. Raises WM210 as ``to_line`` does."""
    before, after, known = _halves_of(entry)
    return _join(before, after, "", known=known, where=_name(entry))[1]


def with_hash(entry: Entry) -> Entry:
    """The same entry with its own hash."""
    return replace(entry, hash=hash_of(entry))


def from_line(line: bytes, where: str) -> Entry | Problem:
    """The entry that the line holds, or what is wrong with the line; nothing else, whatever the bytes.

    Args:
        line: one line without its newline.
        where: names the line in problems (``journal.jsonl line 12``).
    """
    found = _from_line(line, where)
    if isinstance(found, Problem) and not found.entries and (named := _ID_IN_LINE.search(line)):
        return replace(found, entries=(named[1].decode(),))
    return found


def _from_line(line: bytes, where: str) -> Entry | Problem:
    try:
        text = line.decode("utf-8")
    except UnicodeDecodeError as error:
        return messages.LINE_UNREADABLE.at(where, f"byte {error.start} is not UTF-8")
    if _nested_too_deep(text):
        return messages.LINE_UNREADABLE.at(where, f"nested deeper than {DEEPEST}")
    try:
        plain = _parse(text)
    except ValueError as error:
        return messages.LINE_UNREADABLE.at(where, f"not JSON: {error}")
    try:
        entry, own_line = _read(plain, where)
    except Refusal as refusal:
        return refusal.problems[0]
    if own_line != line:
        return messages.NOT_CANONICAL.at(where, _first_difference(own_line, line), entries=(entry.id,))
    return entry


def from_plain(plain: Mapping[str, Any], where: str) -> Entry:
    """The entry that plain JSON data describes, its hash checked.

    Raises:
        Refusal: WM202 to WM205, naming *where*, the field and what is allowed.
    """
    return _read(plain, where)[0]


def problems_of_unread(entries: Iterable[Entry]) -> list[Problem]:
    """WM207 for every entry whose act or version this release does not know."""
    return [
        messages.UNREAD.at(f"entry {entry.id}", f"act {entry.act!r}, version {entry.v}", entries=(entry.id,))
        for entry in entries
        if isinstance(entry.body, Unread)
    ]


# Writing


def _halves_of(entry: Entry) -> tuple[_Plain, _Plain, bool]:
    """The fields that stand before and after ``hash`` in the line, and whether the body is one we know."""
    where = _name(entry)
    try:
        body, known = _plain_body(entry)
        before: _Plain = {"act": entry.act, "at": entry.at, "body": body, "by": entry.by}
        if entry.component is not None:
            before["component"] = entry.component
        before["device"] = entry.device
        if entry.draft is not False:
            before["draft"] = entry.draft
        after: _Plain = {"id": entry.id, "job": entry.job, "logged": entry.logged}
        if entry.media != ():
            after["media"] = _listed(entry.media)
        after["n"] = entry.n
        if entry.place is not None:
            after["place"] = entry.place
        after["prev"] = entry.prev
        after["source"] = shape_of(Source).write(entry.source, "source")
        after["v"] = entry.v
        _check_fields({**before, **after})
    except Misfit as misfit:
        raise Refusal(messages.NOT_WRITABLE.at(where, str(misfit))) from None
    return before, after, known


def _listed(media: object) -> list[object]:
    if type(media) is not tuple:
        raise Misfit("media", "a tuple of SHA-256", media)
    return list(media)


def _plain_body(entry: Entry) -> tuple[Any, bool]:
    if isinstance(entry.body, Unread):
        try:
            return _with_doubles(_parse(entry.body.json)), False
        except ValueError as error:
            raise Misfit("body", "the JSON of an act that a newer release wrote", str(error)) from None
    return _write_body(entry.body, entry.act, entry.v, "body"), True


def _write_body(body: object, act: str, v: int, path: str) -> _Plain:
    cls = BODIES.get((act, v))
    if cls is None or type(body) is not cls:
        what = "a body that this release knows" if cls is None else f"a {cls.__name__}"
        raise Misfit(path, f"{what} for act {act!r}, version {v!r}", type(body).__name__)
    plain = shape_of(cls).write(body, path)
    if isinstance(body, Amended):
        _check_amended(body, path)
        if body.body is not None:
            plain["body"] = _write_body(body.body, body.act, body.v, f"{path}.body")
    return plain


def _join(before: _Plain, after: _Plain, held: str, *, known: bool, where: str) -> tuple[bytes, str]:
    """The line and the hash of the line without it; ``held`` is the hash that the entry says it has."""
    write = encode_simple if known else encode
    try:
        first, second = write(before)[:-1], write(after)[1:]
    except Refusal as refusal:
        raise Refusal(*(replace(problem, where=where) for problem in refusal.problems)) from None
    own = sha256(b"%b,%b" % (first, second)).hexdigest()
    if held and held != own:
        raise Refusal(messages.HASH_DIFFERS.at(where, f"it holds {held}, its content gives {own}"))
    return b'%b,"hash":"%b",%b' % (first, own.encode(), second), own


def _name(entry: Entry) -> str:
    return f"entry {entry.id}"


# Reading


def _refuse_constant(name: str) -> object:
    raise ValueError(f"{name} is not JSON")


_decoder = json.JSONDecoder(parse_constant=_refuse_constant)


def _parse(text: str) -> object:
    """JSON to plain data. Raises ``ValueError``, also for what is too deep or too long for Python."""
    try:
        return _decoder.decode(text)
    except RecursionError:
        raise ValueError("nested too deep") from None


def _with_doubles(value: object) -> object:
    """The value with whole numbers beyond the exact ones as the doubles that canonical JSON takes them for."""
    if isinstance(value, dict):
        return {key: _with_doubles(item) for key, item in value.items()}
    if isinstance(value, list):
        return [_with_doubles(item) for item in value]
    if type(value) is int and abs(value) > LARGEST_WHOLE:
        try:
            return float(value)
        except OverflowError:
            raise Misfit("number", "a number that a double can hold", f"{value.bit_length()} bits") from None
    return value


#: Where a line that cannot be read still tells which entry it was.
_ID_IN_LINE: Final = re.compile(rb'"id":"([0-9a-f]{8}-[0-9a-f]{4}-7[0-9a-f-]{21})","job":')
_STRINGS: Final = re.compile(r'"(?:[^"\\]|\\.)*"?')


def _nested_too_deep(text: str) -> bool:
    if text.count("{") + text.count("[") <= DEEPEST:
        return False
    depth = 0
    for mark in _STRINGS.sub("", text):
        depth += (mark in "{[") - (mark in "}]")
        if depth > DEEPEST:
            return True
    return False


def _read(plain: object, where: str) -> tuple[Entry, bytes]:
    """The entry and its one line. Raises ``Refusal``."""
    try:
        entry, known = _entry(plain)
        fields: _Plain = plain if known else _with_doubles(plain)  # type: ignore[assignment] # seen to be an object
        before = {name: value for name, value in fields.items() if name < "hash"}
        after = {name: value for name, value in fields.items() if name > "hash"}
        line, _ = _join(before, after, entry.hash, known=known, where=where)
    except UnknownField as misfit:
        raise Refusal(messages.UNKNOWN_FIELD.at(where, str(misfit))) from None
    except MissingField as misfit:
        raise Refusal(messages.MISSING_FIELD.at(where, str(misfit))) from None
    except Misfit as misfit:
        raise Refusal(messages.WRONG_VALUE.at(where, str(misfit))) from None
    return entry, line


def _entry(plain: object) -> tuple[Entry, bool]:
    if type(plain) is not dict:
        raise Misfit("entry", "an object", plain)
    _check_fields(plain)
    if not plain.keys() >= _ALWAYS:
        name = next(name for name in _CHECKS if name in _ALWAYS and name not in plain)
        raise MissingField(name, _CHECKS[name][1], None)
    body: Body | Unread
    try:
        body = _read_body(plain["body"], plain["act"], plain["v"], "body")
    except _ActNotKnownError:
        body = _unread(plain["body"])
    values = {**plain, "body": body, "source": shape_of(Source).read(plain["source"], "source")}
    if "media" in values:
        values["media"] = tuple(values["media"])
    return Entry(**values), type(body) is not Unread


def _unread(body: object) -> Unread:
    try:
        return Unread(encode(_with_doubles(body)).decode())
    except Refusal as refusal:
        raise Misfit("body", "what has a canonical form", refusal.problems[0].detail) from None


def _check_fields(fields: _Plain) -> None:
    for name, value in fields.items():
        if name not in _CHECKS:
            raise UnknownField(path_to("", name), ", ".join(_CHECKS), value)
        check, words = _CHECKS[name]
        if not check(value):
            raise Misfit(name, words, value)


def _read_body(plain: _Plain, act: str, v: int, path: str) -> Body:
    cls = BODIES.get((act, v))
    if cls is None:
        raise _ActNotKnownError
    body: Body = shape_of(cls).read(plain, path)
    if isinstance(body, Amended):
        _check_amended(body, path)
        if body.body is not None:
            inner: Any = body.body
            if type(inner) is not dict:
                raise Misfit(f"{path}.body", "an object", inner)
            return replace(body, body=_read_body(inner, body.act, body.v, f"{path}.body"))
    return body


def _check_amended(body: Amended, path: str) -> None:
    if body.body is not None and not body.act:
        raise Misfit(f"{path}.act", "the act that now holds", body.act)
    if body.act == "amended":
        raise Misfit(f"{path}.act", "the act that now holds, which is not an amendment", body.act)
    if body.v < 1:
        raise Misfit(f"{path}.v", "a whole number from 1", body.v)
    if body.at is not None and not _is_time(body.at):
        raise Misfit(f"{path}.at", _TIME_WORDS, body.at)


def _first_difference(own: bytes, line: bytes) -> str:
    at = next((i for i, (a, b) in enumerate(zip(own, line, strict=False)) if a != b), min(len(own), len(line)))
    return f"from byte {at}: expected {own[at : at + 24].decode('utf-8', 'replace')!a}"


# What the fields of an entry allow

_HEX: Final = re.compile(r"[0-9a-f]{64}")


def _is_name(value: object) -> bool:
    return type(value) is str and value != ""


def _is_count(value: object) -> bool:
    return type(value) is int and 1 <= value <= LARGEST_WHOLE


def _is_hash(value: object) -> bool:
    return type(value) is str and _HEX.fullmatch(value) is not None


def _is_time(value: object) -> bool:
    if type(value) is not str:
        return False
    try:
        instant(value)
    except Refusal:
        return False
    return True


def _is_source(value: object) -> bool:
    return type(value) is dict and value.get("sort") in SOURCES


_TIME_WORDS: Final = "a time with its offset such as 2026-03-14T09:26:53-07:00"
_CHECKS: Final[Mapping[str, tuple[Callable[[object], bool], str]]] = {
    "act": (_is_name, "the name of an act"),
    "at": (_is_time, _TIME_WORDS),
    "body": (lambda value: type(value) is dict, "an object"),
    "by": (_is_name, "the name of who records"),
    "component": (_is_name, "the id of a component, or nothing: it is left out when there is none"),
    "device": (_is_name, "the name of a device"),
    "draft": (lambda value: value is True, "true, or nothing: it is left out when false"),
    "hash": (_is_hash, "64 hex digits in lower case"),
    "id": (lambda value: type(value) is str and is_id(value), "a UUID version 7 in lower case"),
    "job": (lambda value: type(value) is str and is_uuid(value), "a UUID in lower case"),
    "logged": (_is_time, _TIME_WORDS),
    "media": (
        lambda value: type(value) is list and value != [] and all(_is_hash(one) for one in value),
        "a list of SHA-256 in lower-case hex, or nothing: it is left out when empty",
    ),
    "n": (_is_count, "a whole number from 1"),
    "place": (_is_name, "the id of a place, or nothing: it is left out when there is none"),
    "prev": (_is_hash, "64 hex digits in lower case"),
    "source": (_is_source, f"an object whose sort is one of {', '.join(SOURCES)}"),
    "v": (_is_count, "a whole number from 1"),
}
_ALWAYS: Final = frozenset(_CHECKS) - {"component", "draft", "media", "place"}
