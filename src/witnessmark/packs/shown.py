"""What a row says, where it comes from and what refers to it."""

from __future__ import annotations

import dataclasses
from collections.abc import Iterator, Mapping

from witnessmark.packs.faults import close
from witnessmark.packs.messages import NO_SUCH_ROW
from witnessmark.packs.model import Override, Packs, Subject
from witnessmark.packs.terms import TABLES
from witnessmark.problems import Refusal

__all__ = ["show"]


def _data(value: object) -> object:
    """*value* as plain data for JSON."""
    if dataclasses.is_dataclass(value) and not isinstance(value, type):
        return {f.name: _data(getattr(value, f.name)) for f in dataclasses.fields(value)}
    if isinstance(value, tuple):
        return [_data(v) for v in value]
    return value


def _tables(packs: Packs) -> Iterator[tuple[str, Mapping[str, object]]]:
    for name, (_, attribute) in TABLES.items():
        yield name, getattr(packs, attribute)
    yield "rulebook", packs.rulebooks
    yield "duty", {duty.id: duty for book in packs.rulebooks.values() for duty in book.duties}


def _subject_names(subjects: tuple[Subject, ...], table: str) -> Iterator[str]:
    field = {"kind": "kinds", "attribute": "attributes", "measure": "measures", "sort": "sorts"}.get(table)
    if field is not None:
        for subject in subjects:
            yield from getattr(subject, field)


#: For each table, the tables whose rows name its rows, and in which fields.
_NAMED_IN: dict[str, tuple[tuple[str, tuple[str, ...]], ...]] = {
    "kind": (
        ("procedure", ("kind",)),
        ("condition", ("kinds",)),
        ("criterion", ("kinds",)),
        ("era", ("kinds",)),
        ("life", ("kinds",)),
        ("kind", ("found_on",)),
    ),
    "measure": (("kind", ("measures",)), ("criterion", ("measure",))),
    "condition": (("criterion", ("condition",)),),
    "sort": (("kind", ("sorts", "expected")),),
    "attribute": (("kind", ("describe",)),),
    "reason": (("duty", ("reasons",)), ("rulebook", ("reasons",))),
    "caution": tuple((t, ("cautions",)) for t in ("kind", "procedure", "condition", "criterion")),
    "trade": (("condition", ("by",)), ("duty", ("refer_to",))),
}


def _names(row: object, fields: tuple[str, ...]) -> Iterator[str]:
    for field in fields:
        value = getattr(row, field)
        if isinstance(value, tuple):
            yield from value
        elif value:
            yield value


def _referred(packs: Packs, table: str, row_id: str) -> list[str]:
    tables = dict(_tables(packs))
    found = [
        f"{other} {other_id}"
        for other, fields in _NAMED_IN.get(table, ())
        for other_id, row in tables[other].items()
        if row_id in _names(row, fields)
    ]
    if table == "kind":
        found += [
            f"procedure {p.id}"
            for p in packs.procedures.values()
            if p.look_again is not None and row_id in p.look_again.kinds
        ]
    for book in packs.rulebooks.values():
        found += [f"duty {d.id} of {book.id}" for d in book.duties if row_id in _subject_names(d.subjects, table)]
    return list(dict.fromkeys(found))


def _replaced(override: Override) -> dict[str, object]:
    return {"row": _data(override.row), "file": override.shipped.file}


def _ids(packs: Packs) -> list[str]:
    return [row_id for _, table in _tables(packs) for row_id in table] + [file.id for file in packs.files]


def show(packs: Packs, row_id: str) -> dict[str, object]:
    """Every row with this id as plain data, each with its table, its file, what refers to it and what it replaced.

    ``found`` holds one entry a table, for the same id may name a kind and a sort of place; ``pack`` is the file's
    own data when *row_id* is a pack's. Raises Refusal (WM415) with the nearest ids when there is none.
    """
    files = {file.path: file for file in packs.files}
    found: list[dict[str, object]] = []
    for table, rows in _tables(packs):
        row = rows.get(row_id)
        if row is None:
            continue
        path: str = row.provenance.file  # type: ignore[attr-defined]  # every row of every table has a provenance
        replaced = [_replaced(o) for o in packs.overrides if o.sort == table and o.id == row_id]
        found.append(
            {
                "table": table,
                "row": _data(row),
                "file": _data(files[path]) if path in files else path,
                "referred_to_by": _referred(packs, table, row_id),
                "stands_in_for": replaced,
            }
        )
    of_pack = [_data(file) for file in packs.files if file.id == row_id]
    if not found and not of_pack:
        raise Refusal(NO_SUCH_ROW.at(repr(row_id[:80]), close(row_id, _ids(packs)).removeprefix(", ")))
    return {"id": row_id, "found": found, "pack": of_pack}
