"""A rulebook with single rows corrected by a user: which rows stand in for which."""

from __future__ import annotations

import dataclasses
from collections.abc import Callable, Mapping
from typing import Any, cast

from witnessmark.packs.law import Duty, Rulebook

__all__ = ["correct"]

#: What makes two rows of a law the same row, by the rulebook's field.
_SAME: dict[str, Callable[[Any], object]] = {
    "duties": lambda row: row.id,
    "definitions": lambda row: row.term,
    "condition_words": lambda row: (row.code, row.words),
    "deliveries": lambda row: row.anchor,
    "form_items": lambda row: (row.group, row.number),
}


def _laid_over(rows: tuple[Any, ...], over: tuple[Any, ...], same: Callable[[Any], object]) -> tuple[Any, ...]:
    named = {same(row): row for row in over}
    kept = [named.pop(same(row), row) for row in rows]
    return (*kept, *named.values())


def correct(book: Rulebook, law: Mapping[str, object]) -> tuple[Rulebook, list[tuple[Duty, Duty]]]:
    """The *book* with the rows of *law* (by field) laid over it, and each duty replaced with what replaces it.

    A row of the same id (duty), term, words or anchor stands in the place of the one it corrects; others are added at
    the end. A summary, departure or form replaces the whole of it.
    """
    changes: dict[str, Any] = {}
    for field, same in _SAME.items():
        over = cast("tuple[Any, ...]", law.get(field, ()))
        if over:
            changes[field] = _laid_over(getattr(book, field), over, same)
    changes |= {name: law[name] for name in ("summary", "departure", "form") if law.get(name) is not None}
    earlier = {duty.id: duty for duty in book.duties}
    new = cast("tuple[Duty, ...]", law.get("duties", ()))
    replaced = [(earlier[duty.id], duty) for duty in new if duty.id in earlier]
    return dataclasses.replace(book, **changes), replaced
