"""Which findings were looked at again after the report, and how each was answered.

A finding is answered by a ``settled`` that names it and whose state is one of ``ANSWERS``. Of several answers the last
one, by the time it was given, holds; the earlier ones stay in the record.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from witnessmark.journal.acts import Found, Settled
from witnessmark.journal.fold import Fact, Record

__all__ = ["ANSWERS", "Recheck", "rechecks"]

#: How a finding can be answered when it is looked at again.
ANSWERS: Final = ("repaired", "not repaired", "cannot verify")


@dataclass(frozen=True, slots=True)
class Recheck:
    """A finding, the ``settled`` that answers it last, and the answers given before."""

    finding: Fact
    answer: Fact
    state: str
    words: str
    before: tuple[Fact, ...] = ()


def rechecks(record: Record) -> tuple[Recheck, ...]:
    """Every finding that was answered, in the order the findings were written. Linear in the facts."""
    answers: dict[str, list[tuple[Fact, Settled, str]]] = {}
    for fact in record.facts:
        if isinstance(fact.body, Settled):
            state = (fact.body.state or "").strip().lower()
            if state in ANSWERS:
                for finding in dict.fromkeys(fact.body.of):
                    answers.setdefault(finding, []).append((fact, fact.body, state))
    rows = []
    for fact in record.facts:
        if isinstance(fact.body, Found) and fact.id in answers:
            *before, (answer, body, state) = answers[fact.id]
            rows.append(Recheck(fact, answer, state, body.how, tuple(row[0] for row in before)))
    return tuple(rows)
