"""Which rows apply: in force on a date, at a place, to a kind, a part, a year built."""

from __future__ import annotations

import dataclasses
from collections.abc import Iterable
from typing import Protocol, TypeVar

from witnessmark.packs.model import Condition, Criterion, Era, Packs, Procedure, Provenance, Rulebook

__all__ = [
    "conditions_of", "criteria_for", "eras_of", "in_force", "is_in_force", "is_must", "procedures_of", "rulebook_for",
]  # fmt: skip


class _Dated(Protocol):
    @property
    def provenance(self) -> Provenance: ...


_Row = TypeVar("_Row", bound=_Dated)


def is_in_force(provenance: Provenance, on_date: str) -> bool:
    """Whether a row counts on *on_date* (ISO 8601 date): from ``in_force`` on, and before ``until``."""
    day = on_date[:10]
    return (provenance.in_force or "") <= day and (provenance.until is None or day < provenance.until)


def in_force(rows: Iterable[_Row], on_date: str) -> tuple[_Row, ...]:
    """Those of *rows* that count on *on_date* (ISO 8601 date)."""
    return tuple(row for row in rows if is_in_force(row.provenance, on_date))


def _within(jurisdiction: str | None, place: str | None) -> bool:
    """Whether a rule of *jurisdiction* (``us.wa``; None is everywhere) holds in *place* (``us.wa``, ``us.wa.king``)."""
    if jurisdiction is None:
        return True
    return place is not None and (place == jurisdiction or place.startswith(jurisdiction + "."))


def is_must(criterion: Criterion, built_year: int | None) -> bool:
    """Whether the criterion is a must for what was built in *built_year*, rather than a recommendation.

    A limit that holds from a year on is no must where the year is not known.
    """
    if criterion.force != "law":
        return False
    return criterion.built_from is None or (built_year is not None and built_year >= criterion.built_from)


def criteria_for(
    packs: Packs,
    measure: str,
    kind: str | None = None,
    part: str | None = None,
    on_date: str = "9999-12-31",
    *,
    jurisdiction: str | None = None,
    built_year: int | None = None,
) -> tuple[Criterion, ...]:
    """The limits that a reading of *measure* is held against; musts first, then the more particular, then by id.

    A criterion without kinds or part holds for any; ``is_must`` tells a must from a recommendation.
    """
    found = [
        c
        for c in packs.criteria.values()
        if c.measure == measure
        and (not c.kinds or kind in c.kinds)
        and (c.part is None or c.part == part)
        and _within(c.jurisdiction, jurisdiction)
        and is_in_force(c.provenance, on_date)
    ]
    return tuple(sorted(found, key=lambda c: (not is_must(c, built_year), c.jurisdiction is None, not c.kinds, c.id)))


def rulebook_for(packs: Packs, rulebook: str, on_date: str) -> Rulebook | None:
    """The *rulebook* of that id, or its successor (``id@date``), in force on *on_date*, with the duties then in force.

    None when there is no such rulebook, or none of it was in force on that day.
    """
    day, family = on_date[:10], rulebook.partition("@")[0]
    found = [
        book
        for book in packs.rulebooks.values()
        if book.id.partition("@")[0] == family
        and book.effective_from <= day
        and (book.effective_to is None or day < book.effective_to)
    ]
    if not found:
        return None
    book = max(found, key=lambda b: b.effective_from)
    return dataclasses.replace(book, duties=in_force(book.duties, day))


def _of(row_part: str | None, part: str | None) -> bool:
    return row_part is None or part is None or row_part == part


def procedures_of(packs: Packs, kind: str, part: str | None = None) -> tuple[Procedure, ...]:
    """How the *kind* (and *part*, when given) is operated, in the order of the packs."""
    return tuple(p for p in packs.procedures.values() if p.kind == kind and _of(p.part, part))


def conditions_of(packs: Packs, kind: str, part: str | None = None) -> tuple[Condition, ...]:
    """The adverse conditions of the *kind* (and *part*, when given), in the order of the packs."""
    return tuple(c for c in packs.conditions.values() if kind in c.kinds and _of(c.part, part))


def eras_of(packs: Packs, built_year: int | None, kind: str | None = None) -> tuple[Era, ...]:
    """What to look for in what was built or altered in *built_year*, of one *kind* where one is given.

    A part that has a date of its own is asked about with that date and its kind: a deck of 2010 on a house of 1960 is
    no deck of 1960. Nothing when the year is not known.
    """
    if built_year is None:
        return ()
    return tuple(
        era
        for era in packs.eras.values()
        if (era.built_from is None or era.built_from <= built_year)
        and (era.built_to is None or built_year <= era.built_to)
        and (kind is None or kind in era.kinds)
    )
