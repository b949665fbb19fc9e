"""Readings, each with the limits it was held against: document, edition, section."""

from __future__ import annotations

from witnessmark.journal.acts import Read
from witnessmark.journal.fold import Record
from witnessmark.judging.model import JudgedReading, Standing
from witnessmark.report.clock import Clock
from witnessmark.report.letter import ReadingLine
from witnessmark.report.naming import Names, capital, sentence
from witnessmark.report.wording import SURENESS, measured

__all__ = ["limits_of", "readings_of"]


def _limit(row: JudgedReading) -> str:
    """The verdict in a sentence, which names the limit and its source, and how sure we are of that source."""
    words = sentence(row.words)
    if row.criterion is None:
        return words
    note = SURENESS.get(row.criterion.provenance.tag, row.criterion.provenance.tag)
    return f"{words} ({capital(note)}.)" if note else words


def limits_of(standing: Standing) -> dict[str, tuple[str, ...]]:
    """What each reading was held against, by entry id; readings with no limit are left out."""
    found: dict[str, list[str]] = {}
    for row in standing.readings:
        if row.verdict != "no criterion":
            found.setdefault(row.entry, []).append(_limit(row))
    return {entry: tuple(dict.fromkeys(words)) for entry, words in found.items()}


def readings_of(record: Record, names: Names, clock: Clock, standing: Standing) -> tuple[ReadingLine, ...]:
    """Every measurement in the order it was taken."""
    limits = limits_of(standing)
    rows = []
    for fact in record.facts:
        body = fact.body
        if not isinstance(body, Read):
            continue
        measure = names.packs.measures.get(body.measure)
        rows.append(
            ReadingLine(
                entry=fact.id,
                clock=clock.say(fact.at),
                place=names.place_of(fact),
                subject=names.subject(fact),
                measure=capital(measure.name if measure else body.measure.replace("-", " ") or "reading"),
                value=measured(body),
                spot=body.spot or "",
                instrument=body.instrument or "",
                limits=limits.get(fact.id, ()),
            )
        )
    return tuple(rows)
