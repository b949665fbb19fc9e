"""To whom each edition of an issued report was delivered, and when it was opened.

A delivery is a ``settled`` that names the seal of the edition and whose state is ``delivered`` or ``opened``;
``with_whom`` says to whom, ``how`` by which way. It says nothing of the house, so it changes no report.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Final

from witnessmark.journal.acts import Sealed, Settled
from witnessmark.journal.entry import Entry
from witnessmark.journal.fold import Fact, Record

__all__ = ["DELIVERED", "Delivery", "deliveries", "is_delivery"]

#: What can be recorded of an edition once it is issued.
DELIVERED: Final = ("delivered", "opened")


@dataclass(frozen=True, slots=True)
class Delivery:
    """One thing recorded of an edition: ``state`` is delivered or opened."""

    fact: Fact
    edition: int
    state: str
    whom: str
    how: str


def _state(body: object) -> str:
    state = (body.state or "").strip().lower() if isinstance(body, Settled) else ""
    return state if state in DELIVERED else ""


def is_delivery(entry: Entry, entries: Mapping[str, Entry]) -> bool:
    """Whether an entry records a delivery of a sealed report and nothing else."""
    body = entry.body
    return (
        bool(_state(body))
        and isinstance(body, Settled)
        and bool(body.of)
        and all(of in entries and isinstance(entries[of].body, Sealed) for of in body.of)
    )


def deliveries(record: Record) -> tuple[Delivery, ...]:
    """Every delivery and opening, by time. Linear in the facts."""
    rows = []
    for fact in record.facts:
        body = fact.body
        state = _state(body)
        if not state or not isinstance(body, Settled):
            continue
        for of in body.of:
            seal = record.entries.get(of)
            if seal is not None and isinstance(seal.body, Sealed):
                rows.append(Delivery(fact, seal.body.edition, state, body.with_whom or "", body.how))
    return tuple(rows)
