"""Findings that were looked at again: the answer, by what evidence, with the pictures of both visits."""

from __future__ import annotations

from collections.abc import Mapping

from witnessmark.journal.fold import Record
from witnessmark.report.clock import Clock
from witnessmark.report.letter import Answered, Finding
from witnessmark.report.naming import Names, sentence
from witnessmark.report.showing import Showing
from witnessmark.views.rechecks import rechecks

__all__ = ["answered_of"]


def answered_of(
    record: Record, names: Names, clock: Clock, showing: Showing, findings: Mapping[str, Finding]
) -> tuple[Answered, ...]:
    """Every finding that was answered, in the order of the letter."""
    rows = []
    for row in rechecks(record):
        finding = findings.get(row.finding.id)
        if finding is None:
            continue
        after = showing.of((row.answer.id,))
        before = tuple(n for n in (*finding.pictures, *finding.pictures_elsewhere) if n not in after)
        rows.append(
            Answered(
                finding=finding.number,
                title=finding.title,
                place=finding.place,
                answer=names.tongue.say(row.state),
                says=sentence(row.words),
                clock=clock.say(row.answer.at, seconds=False),
                rests_on=(row.answer.id, *(fact.id for fact in row.before)),
                before=before,
                after=after,
            )
        )
    return tuple(sorted(rows, key=lambda row: row.finding))
