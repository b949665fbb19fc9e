"""What happened when, and what was running in the meantime."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime

from witnessmark.journal.fold import Fact, Record
from witnessmark.views.house import House, house
from witnessmark.views.moments import instant
from witnessmark.views.running import Run, running

__all__ = ["Event", "Interval", "Timeline", "timeline"]


@dataclass(frozen=True, slots=True)
class Event:
    """One fact at its instant (None when its time cannot be read); ``running`` counts what was on just after it."""

    at: datetime | None
    fact: Fact
    place: str | None
    running: int


@dataclass(frozen=True, slots=True)
class Interval:
    """From when until when something was left on; ``until`` is None while nothing has stopped it."""

    run: Run
    since: datetime
    until: datetime | None


@dataclass(frozen=True, slots=True)
class Timeline:
    """Events in the record's order, and the intervals of what was running, by their beginning."""

    events: tuple[Event, ...]
    intervals: tuple[Interval, ...]


def timeline(record: Record, home: House | None = None, runs: tuple[Run, ...] | None = None) -> Timeline:
    """The events of *record* and the intervals of what was running. Linear in the facts.

    *home* and *runs* are the house and the runs of the same record, where the caller has them already.
    """
    home = home or house(record)
    runs = running(record, home) if runs is None else runs
    intervals: list[Interval] = []
    change: dict[str, int] = {}
    for run in runs:
        if not run.leaves:
            continue
        change[run.fact.id] = change.get(run.fact.id, 0) + 1
        end = run.stopped or run.taken_over
        if end is not None:
            change[end.id] = change.get(end.id, 0) - 1
        if run.since is not None:
            intervals.append(Interval(run, run.since, instant(end.at) if end is not None else None))
    events: list[Event] = []
    on = 0
    for fact in record.facts:
        on += change.get(fact.id, 0)
        events.append(Event(instant(fact.at), fact, home.place_of(fact), on))
    return Timeline(tuple(events), tuple(intervals))
