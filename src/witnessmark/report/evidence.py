"""Every entry that the letter cites: what it says, when, on which device, and in whose words."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace
from datetime import datetime

from witnessmark.journal.entry import Entry, Source
from witnessmark.journal.fold import Fact, Record
from witnessmark.judging.model import Standing
from witnessmark.problems import Problem
from witnessmark.report.clock import Clock
from witnessmark.report.letter import Evidence
from witnessmark.report.messages import NO_SUCH_ENTRY
from witnessmark.report.naming import Names
from witnessmark.report.readings import limits_of
from witnessmark.report.showing import Showing
from witnessmark.report.wording import telling

__all__ = ["evidence_of"]

_HOW = {
    "tap": "entered by hand",
    "speech": "said aloud",
    "photo": "from a picture",
    "import": "imported",
    "program": "worked out by a program",
}
_MINUTE = 60


def _into(seconds: str) -> str:
    """Seconds into a recording as minutes and seconds."""
    try:
        whole = int(float(seconds))
    except (ValueError, OverflowError):
        return seconds
    return f"{whole // _MINUTE}:{whole % _MINUTE:02}"


def _how(source: Source) -> str:
    words = _HOW.get(source.sort, source.sort)
    if source.start:
        words += f" at {_into(source.start)}"
        if source.end and _into(source.end) != _into(source.start):
            words += f" to {_into(source.end)}"
    if source.file:
        words += f" {'of' if source.start else 'from'} {source.file}"
    return words


def _changes(fact: Fact, record: Record, clock: Clock) -> tuple[str, ...]:
    rows = []
    for change in fact.amended_by:
        entry = record.entries.get(change)
        if entry:
            why = getattr(entry.body, "why", "")
            rows.append(f"Amended {clock.say(entry.logged)} by {entry.by}" + (f": {why}" if why else "") + ".")
    accepted = record.entries.get(fact.accepted_by) if fact.accepted_by else None
    if accepted:
        rows.append(f"Proposed by a program, accepted {clock.say(accepted.at)} by {accepted.by}.")
    return tuple(rows)


def _instant(at: str) -> tuple[int, float, str]:
    try:
        moment = datetime.fromisoformat(at)
    except ValueError:
        return (1, 0.0, at)
    return (0, moment.timestamp() if moment.tzinfo else 0.0, at)


def evidence_of(
    cited: Iterable[str],
    *,
    record: Record,
    names: Names,
    clock: Clock,
    standing: Standing,
    showing: Showing,
) -> tuple[tuple[Evidence, ...], tuple[Problem, ...]]:
    """The cited entries by time, numbered from 1, and a problem for each that is not in the record.

    An entry that was dropped, or that no person accepted, is shown as what it is.
    """
    facts = {fact.id: (fact, "") for fact in record.facts}
    facts |= {fact.id: (fact, "Proposed by a program; no person has accepted it.") for fact in record.drafts}
    facts |= {
        row.fact.id: (row.fact, f"No longer counts: {row.why or 'no reason recorded'}.") for row in record.dismissed
    }
    limits = limits_of(standing)
    rows: list[tuple[tuple[int, float, str], Evidence]] = []
    problems = []
    for entry in dict.fromkeys(cited):
        fact, note = facts.get(entry, (None, ""))
        if fact is not None:
            rows.append(
                (
                    _instant(fact.at),
                    _counting(fact, note, record=record, names=names, clock=clock, limits=limits, showing=showing),
                )
            )
            continue
        raw = record.entries.get(entry)
        if raw is None:
            problems.append(NO_SUCH_ENTRY.at(entry, entries=(entry,)))
        rows.append((_instant(raw.at if raw else ""), _not_counting(entry, raw, names, clock)))
    rows.sort(key=lambda row: (row[0][:2], row[1].entry))
    return tuple(replace(row, number=number) for number, (_, row) in enumerate(rows, 1)), tuple(problems)


def _counting(
    fact: Fact,
    note: str,
    *,
    record: Record,
    names: Names,
    clock: Clock,
    limits: dict[str, tuple[str, ...]],
    showing: Showing,
) -> Evidence:
    return Evidence(
        entry=fact.id,
        number=0,
        act=fact.act,
        words=telling(fact, names),
        place=names.place_of(fact),
        component=names.subject(fact),
        at=fact.at,
        clock=clock.say(fact.at),
        device=fact.entry.device,
        by=fact.entry.by,
        how=_how(fact.source),
        quoted=fact.source.words or "",
        changes=_changes(fact, record, clock),
        standing=note,
        pictures=showing.of((fact.id,)),
        limits=limits.get(fact.id, ()),
    )


def _not_counting(entry: str, raw: Entry | None, names: Names, clock: Clock) -> Evidence:
    """An entry that was cited but holds nothing this program can read, or that is not there at all."""
    if raw is None:
        return Evidence(
            entry, 0, "", "This entry is not in the record.", "", "", "", "", "", "", "", standing="Missing."
        )
    return Evidence(
        entry=entry,
        number=0,
        act=raw.act,
        words="This entry is kept as it is, but this program cannot read it or what it builds on has not arrived.",
        place=names.place(raw.place),
        component=names.component(raw.component),
        at=raw.at,
        clock=clock.say(raw.at),
        device=raw.device,
        by=raw.by,
        how=_how(raw.source),
        quoted=raw.source.words or "",
        standing="Does not count.",
    )
