"""What a user's overlay changes: row by row and field by field, with where each value comes from."""

from __future__ import annotations

import dataclasses
from collections.abc import Iterator
from dataclasses import dataclass

from witnessmark.packs.model import Override, Packs
from witnessmark.packs.terms import TABLES

__all__ = ["Change", "changes"]


@dataclass(frozen=True, slots=True)
class Change:
    """One row that an overlay adds or replaces: the fields that differ, as (name, shipped, yours)."""

    table: str
    id: str
    file: str
    source: str
    tag: str
    added: bool
    fields: tuple[tuple[str, object, object], ...]


def _row(packs: Packs, override: Override) -> object:
    if override.sort == "duty":
        return next((d for b in packs.rulebooks.values() for d in b.duties if d.id == override.id), None)
    attribute = "rulebooks" if override.sort == "rulebook" else TABLES[override.sort][1]
    return getattr(packs, attribute).get(override.id)


def _fields(before: object, after: object) -> Iterator[tuple[str, object, object]]:
    for field in dataclasses.fields(after):  # type: ignore[arg-type]  # rows are dataclasses
        old, new = getattr(before, field.name), getattr(after, field.name)
        if field.name not in {"provenance", "duties"} and old != new:
            yield field.name, old, new


def changes(packs: Packs) -> tuple[Change, ...]:
    """Every row of the overlays in *packs*: first those that replace a shipped row, then those that are new."""
    found = []
    for override in packs.overrides:
        row = _row(packs, override)
        new = override.overlay
        if row is not None:
            fields = tuple(_fields(override.row, row))
            found.append(Change(override.sort, override.id, new.file, new.source, new.tag, added=False, fields=fields))
    replaced = {(o.sort, o.id) for o in packs.overrides}
    overlays = {file.path for file in packs.files if file.overlay}
    tables = [(name, getattr(packs, attribute)) for name, (_, attribute) in TABLES.items()]
    tables.append(("duty", {d.id: d for b in packs.rulebooks.values() for d in b.duties}))
    tables.append(("rulebook", packs.rulebooks))
    for table, rows in tables:
        for row in rows.values():
            origin = row.provenance
            if origin.file in overlays and (table, row.id) not in replaced:
                found.append(Change(table, row.id, origin.file, origin.source, origin.tag, added=True, fields=()))
    return tuple(found)
