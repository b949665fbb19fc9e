"""What one pack file holds: its id and version, its rows by table, its rulebook."""

from __future__ import annotations

import hashlib
import tomllib
from collections.abc import Mapping
from dataclasses import dataclass, field

from witnessmark.packs import messages
from witnessmark.packs.faults import Report, unknown_keys
from witnessmark.packs.law import (
    ConditionWord,
    Definition,
    Delivery,
    Departure,
    Duty,
    FormItem,
    LawForm,
    Rulebook,
    Summary,
)
from witnessmark.packs.model import PackFile
from witnessmark.packs.provenance import PROVENANCE_KEYS, Origin
from witnessmark.packs.rows import read_row
from witnessmark.packs.terms import TABLES

__all__ = ["Contents", "read_contents"]

_LARGEST = 4 * 1024 * 1024
_TOP = ("pack", "version", "corrects", *PROVENANCE_KEYS)
_RULEBOOK_TABLES = (
    "rulebook",
    "definition",
    "duty",
    "condition_word",
    "delivery",
    "summary",
    "departure",
    "form",
    "form_item",
)


@dataclass(slots=True)
class Contents:
    """The rows of one file: ``rows[table]`` in file order, the rulebook where the file holds one.

    ``corrects`` is the id of the rulebook that ``law``, the file's rows of a law by field, are laid over.
    """

    file: PackFile
    rows: dict[str, list[object]] = field(default_factory=dict)
    rulebook: Rulebook | None = None
    corrects: str = ""
    law: dict[str, object] = field(default_factory=dict)


def _load(path: str, data: bytes, report: Report) -> dict[str, object] | None:
    if len(data) > _LARGEST:
        report(messages.TOO_LARGE, path, f"{len(data)} bytes")
        return None
    try:
        text = data.decode("utf-8")
    except UnicodeDecodeError as error:
        report(messages.UNREADABLE, path, f"not UTF-8 at byte {error.start}")
        return None
    try:
        return tomllib.loads(text)
    except RecursionError:
        report(messages.NOT_TOML, path, "nested too deep")
    except ValueError as error:  # a TOMLDecodeError, or a number too long for int()
        report(messages.NOT_TOML, path, str(error))
    return None


def _head(path: str, table: Mapping[str, object], key: str, report: Report) -> str | None:
    value = table.get(key)
    if value is None:
        report(messages.MISSING_KEY, path, f"{key} is missing at the top of the file")
    elif not isinstance(value, str) or not value.strip():
        report(messages.WRONG_TYPE, f"{path}, key {key!r}", f"expected text in quotes, found {value!r:.80}")
    else:
        return value
    return None


def _tables(path: str, table: Mapping[str, object], name: str, report: Report) -> list[tuple[str, object]]:
    """The entries of the array of tables *name*, each with words that say where it is."""
    value = table.get(name, [])
    if not isinstance(value, list):
        report(messages.WRONG_TYPE, f"{path}, key {name!r}", f"expected [[{name}]], found {value!r:.80}")
        return []
    found: list[tuple[str, object]] = []
    for number, row in enumerate(value, 1):
        known = row.get("id", row.get("term")) if isinstance(row, dict) else None
        label = f"{known:.80}" if isinstance(known, str) else f"number {number}"
        found.append((f"{path}: [[{name}]] {label}", row))
    return found


def _law(path: str, table: Mapping[str, object], origin: Origin, report: Report) -> dict[str, object]:
    """The rows of a law in one file, by the field of the rulebook that holds them."""
    held: dict[str, object] = {}
    for name, attribute, cls in (
        ("definition", "definitions", Definition),
        ("condition_word", "condition_words", ConditionWord),
        ("delivery", "deliveries", Delivery),
        ("form_item", "form_items", FormItem),
    ):
        read = [read_row(cls, row, at, report) for at, row in _tables(path, table, name, report)]
        held[attribute] = tuple(row for row in read if row is not None)
    for name, one in (("summary", Summary), ("departure", Departure), ("form", LawForm)):
        held[name] = read_row(one, table[name], f"{path}: [{name}]", report) if name in table else None
    duties: list[Duty] = []
    seen: set[str] = set()
    for at, row in _tables(path, table, "duty", report):
        duty = read_row(Duty, row, at, report, origin=origin)
        if isinstance(duty, Duty):
            if duty.id in seen:
                report(messages.DUPLICATE_ID, at)
            seen.add(duty.id)
            duties.append(duty)
    held["duties"] = tuple(duties)
    return held


def _rulebook(
    path: str, table: Mapping[str, object], law: dict[str, object], origin: Origin, report: Report
) -> Rulebook | None:
    if "rulebook" not in table:
        report(messages.MISSING_KEY, path, "[rulebook] is missing beside [[duty]]")
        return None
    book = read_row(Rulebook, table["rulebook"], f"{path}: [rulebook]", report, origin=origin, extra=law)
    return book if isinstance(book, Rulebook) else None


def read_contents(path: str, data: bytes, report: Report, *, overlay: bool) -> Contents | None:
    """The rows of the file *path* with bytes *data*; None when it cannot be read at all. Problems go to *report*."""
    table = _load(path, data, report)
    if table is None:
        return None
    unknown_keys(table, (*_TOP, *TABLES, *_RULEBOOK_TABLES), path, report)
    pack, version = _head(path, table, "pack", report), _head(path, table, "version", report)
    origin = Origin(path, table, report)
    file = PackFile(pack or path, version or "", hashlib.sha256(data).hexdigest(), path, overlay)
    contents = Contents(file)
    for name, (cls, _) in TABLES.items():
        if name in table:
            read = [read_row(cls, row, at, report, origin=origin) for at, row in _tables(path, table, name, report)]
            contents.rows[name] = [row for row in read if row is not None]
    if any(name in table for name in _RULEBOOK_TABLES):
        contents.law = _law(path, table, origin, report)
        corrects = table.get("corrects")
        if corrects is None:
            contents.rulebook = _rulebook(path, table, contents.law, origin, report)
        elif not overlay or not isinstance(corrects, str) or "rulebook" in table:
            report(messages.CORRECTS_WHAT, f"{path}, key 'corrects'", f"{corrects!r:.80}")
        else:
            contents.corrects = corrects
    return contents
