"""What judging looks at, gathered once: the record's views, the packs' indexes, the job and the moment."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from datetime import UTC, datetime

from witnessmark.journal.acts import Arrived
from witnessmark.journal.fold import Fact, Record
from witnessmark.journal.job import Job
from witnessmark.packs import rulebook_for
from witnessmark.packs.model import Packs, Procedure, Rulebook
from witnessmark.views.adverse import Adverse, adverse, findings_on
from witnessmark.views.decisions import Decisions, decisions
from witnessmark.views.doubts import Doubt, doubts
from witnessmark.views.house import House, house
from witnessmark.views.looks import Look, looks
from witnessmark.views.media import Medium, media
from witnessmark.views.procedures import by_kind
from witnessmark.views.readings import Reading, readings
from witnessmark.views.running import Run, running

__all__ = ["Scene", "gather"]


@dataclass(frozen=True, slots=True)
class Scene:
    """Everything a judgement rests on.

    Attributes:
        record, packs, job: as given.
        now: the moment of judging, with its offset.
        date: the date that the law and the limits are read for: the job's, else that of the first arrival, else now's.
        rulebook: the rulebook in force on that date, None when the job names none or none was in force.
        house, decisions, runs, looks, readings, media, doubts, adverse: the views of the record.
        found: the first ``found`` resting on each entry.
        procedures: the packs' procedures by kind.
        facts: the record's facts by id.
    """

    record: Record
    packs: Packs
    job: Job
    now: datetime
    date: str
    rulebook: Rulebook | None
    house: House
    decisions: Decisions
    runs: tuple[Run, ...]
    looks: tuple[Look, ...]
    readings: tuple[Reading, ...]
    media: tuple[Medium, ...]
    doubts: tuple[Doubt, ...]
    adverse: tuple[Adverse, ...]
    found: Mapping[str, Fact]
    procedures: Mapping[str, tuple[Procedure, ...]]
    facts: Mapping[str, Fact]

    def under(self, rulebook: Rulebook | None) -> Scene:
        """The same visit held against another rulebook."""
        return replace(self, rulebook=rulebook)

    def kind_name(self, kind: str) -> str:
        """The plain name of a kind, the id itself where the packs do not know it."""
        row = self.packs.kinds.get(kind)
        return row.name if row else kind.replace("-", " ")

    def part_name(self, kind: str, part: str | None) -> str:
        """The plain name of a part of a kind; empty for no part."""
        row = self.packs.kinds.get(kind)
        named = next((p.name for p in row.parts if p.id == part), None) if row and part else None
        return named or (part or "").replace("-", " ")

    def name_of(self, fact: Fact) -> str:
        """How the thing a fact is about is called: its label, else its kind's name; empty when neither is known."""
        component = self.house.components.get(fact.component) if fact.component else None
        if component is not None and component.declared:
            return component.label if component.label != component.id else self.kind_name(component.kind)
        kind = self.house.kind_of(fact)
        return self.kind_name(kind) if kind else ""

    def where(self, fact: Fact) -> str:
        """The thing and its place in words: ``range (kitchen)``; empty when nothing is known."""
        name, place = self.name_of(fact), self.house.places.get(self.house.place_of(fact) or "")
        part = self.part_name(self.house.kind_of(fact), getattr(fact.body, "part", None))
        if part and part.lower() not in name.lower():
            name = f"{name}, {part}" if name else part
        if place is None:
            return name
        return f"{name} ({place.name})" if name else place.name


def _date(record: Record, job: Job, now: datetime) -> str:
    if job.date:
        return job.date[:10]
    first = next((fact.at for fact in record.facts if isinstance(fact.body, Arrived)), "")
    return first[:10] or now.date().isoformat()


def gather(record: Record, packs: Packs, job: Job, now: datetime) -> Scene:
    """Gather what judging looks at. A moment without an offset is read as UTC."""
    now = now if now.tzinfo is not None else now.replace(tzinfo=UTC)
    home, settled, found = house(record), decisions(record), findings_on(record)
    procedures = by_kind(packs)
    date = _date(record, job, now)
    return Scene(
        record=record,
        packs=packs,
        job=job,
        now=now,
        date=date,
        rulebook=rulebook_for(packs, job.rulebook, date) if job.rulebook else None,
        house=home,
        decisions=settled,
        runs=running(record, home),
        looks=looks(record, packs, home, procedures),
        readings=readings(record, home),
        media=media(record),
        doubts=doubts(record, home, settled),
        adverse=adverse(record, settled, found),
        found=found,
        procedures=procedures,
        facts={fact.id: fact for fact in record.facts},
    )
