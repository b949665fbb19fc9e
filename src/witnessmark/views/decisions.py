"""Which decisions (``settled``) close which entries' loose ends."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field

from witnessmark.journal.acts import Settled
from witnessmark.journal.fold import Fact, Record

__all__ = ["Decisions", "decisions"]


@dataclass(frozen=True, slots=True)
class Decisions:
    """The ``settled`` facts, by the entry and by the duty they name."""

    by_entry: Mapping[str, Sequence[Fact]] = field(default_factory=dict)
    by_duty: Mapping[str, Sequence[Fact]] = field(default_factory=dict)

    def about(self, entry: str, sort: str) -> list[tuple[Fact, Settled]]:
        """Decisions that close loose ends of this *sort* opened by *entry*: those naming the sort, or none."""
        return [
            (fact, fact.body)
            for fact in self.by_entry.get(entry, ())
            if isinstance(fact.body, Settled) and (not fact.body.ends or sort in fact.body.ends)
        ]


def decisions(record: Record) -> Decisions:
    """Every ``settled`` of *record*, by what it names."""
    entries: dict[str, list[Fact]] = {}
    duties: dict[str, list[Fact]] = {}
    for fact in record.facts:
        body = fact.body
        if isinstance(body, Settled):
            for name in dict.fromkeys(body.of):
                entries.setdefault(name, []).append(fact)
            if body.duty:
                duties.setdefault(body.duty, []).append(fact)
    return Decisions(entries, duties)
