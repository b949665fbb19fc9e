"""Where a visit stands: what is running, which loose ends are open, which duties are met, what the readings say."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import UTC, datetime

from witnessmark.journal.fold import Record
from witnessmark.journal.job import Job
from witnessmark.judging.coverage import coverage
from witnessmark.judging.findings import draft
from witnessmark.judging.limits import judge_readings
from witnessmark.judging.look_again import look_again
from witnessmark.judging.make_sure import make_sure
from witnessmark.judging.model import ENDS, DraftFinding, DutyCoverage, LooseEnd, Standing
from witnessmark.judging.name_it import name_it
from witnessmark.judging.picture_it import picture_it
from witnessmark.judging.put_back import put_back
from witnessmark.judging.say_why import say_why
from witnessmark.judging.scene import Scene, gather
from witnessmark.judging.still_on import now_running, still_on
from witnessmark.judging.write_up import write_up
from witnessmark.packs import rulebook_for
from witnessmark.packs.model import Packs

__all__ = ["draft_findings", "standing", "under_each"]

_BEGINNING = datetime.min.replace(tzinfo=UTC)


def _order(end: LooseEnd) -> tuple[int, datetime]:
    return ENDS.index(end.sort), end.opened or _BEGINNING


def standing(record: Record, packs: Packs, job: Job, now: datetime) -> Standing:
    """Where the visit stands at *now* (an instant with its offset; without one it is read as UTC).

    A pure function of its arguments, the same in whatever order the entries arrived; nothing that a record can hold
    makes it raise. Loose ends come in the order of ``ENDS`` and, within a sort, by when they were opened.
    """
    scene = gather(record, packs, job, now)
    judged = judge_readings(scene)
    duties = coverage(scene)
    ends = [
        *still_on(scene),
        *look_again(scene),
        *put_back(scene),
        *make_sure(scene),
        *write_up(scene, judged),
        *picture_it(scene),
        *name_it(scene),
        *say_why(scene, duties),
    ]
    return Standing(scene.now, now_running(scene), tuple(sorted(ends, key=_order)), duties, judged)


def under_each(
    record: Record, packs: Packs, job: Job, now: datetime, rulebooks: Sequence[str]
) -> dict[str, tuple[DutyCoverage, ...]]:
    """The same visit held against several laws at once: the duties of each of *rulebooks* (ids) in force that day.

    A rulebook that there is not, or that was not in force, has no duties.
    """
    scene = gather(record, packs, job, now)
    return {name: coverage(scene.under(rulebook_for(packs, name, scene.date))) for name in rulebooks}


def draft_findings(record: Record, packs: Packs, standing: Standing) -> tuple[DraftFinding, ...]:
    """Findings to propose for the open *write up* loose ends of a *standing* of the same record and packs."""
    scene: Scene = gather(record, packs, Job(id=""), standing.at)
    return draft(scene, standing.loose_ends, standing.readings)
