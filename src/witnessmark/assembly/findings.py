"""Findings that the engine drafts for what is adverse and not yet written up, put into the journal as drafts."""

from __future__ import annotations

from datetime import datetime

from witnessmark.assembly.jobs import OpenJob
from witnessmark.journal.acts import Found
from witnessmark.journal.entry import Entry, Source
from witnessmark.judging import draft_findings
from witnessmark.packs.model import Packs

__all__ = ["write_findings"]


def write_findings(
    job: OpenJob, packs: Packs, *, at: datetime | None = None, by: str | None = None, device: str = "desk"
) -> list[Entry]:
    """Draft a finding for every adverse fact that nothing speaks of; a person amends, accepts or drops each.

    What is drafted already and not yet decided is not drafted twice.
    """
    record = job.record()
    drafted = {entry for fact in record.drafts if isinstance(fact.body, Found) for entry in fact.body.rests_on}
    moment = at or job.now()
    pen = job.pen(by, device)
    entries = [
        pen.write(
            Found(
                title=draft.title,
                seen=draft.seen,
                why=draft.why,
                if_left=draft.if_left,
                do=draft.do,
                by=draft.by,
                direct=draft.direct,
                stake=draft.stake,
                urgency=draft.urgency,
                kind=draft.kind,
                condition=draft.condition,
                rests_on=draft.rests_on,
            ),
            at=moment,
            place=draft.place,
            component=draft.component,
            source=Source(
                "program", rule="drafted from the condition" if draft.condition else "drafted from the words"
            ),
            draft=True,
        )
        for draft in draft_findings(record, packs, job.standing(packs, moment))
        if not drafted & set(draft.rests_on)
    ]
    job.keep(entries)
    return entries
