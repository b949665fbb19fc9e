"""What was started, watched and put back: each thing that was run, with its times."""

from __future__ import annotations

from witnessmark.journal.acts import Ran, Stopped
from witnessmark.journal.fold import Fact, Record
from witnessmark.judging.model import Standing
from witnessmark.report.clock import Clock
from witnessmark.report.letter import Operation, Statement, Step
from witnessmark.report.naming import Names, capital, sentence
from witnessmark.report.tongue import Tongue
from witnessmark.report.wording import telling
from witnessmark.views import Run, decisions, looks, running

__all__ = ["as_found_of", "operations_of"]

_OPEN_SORTS = frozenset({"still on", "look again", "put back"})


def _story(record: Record, names: Names) -> list[tuple[Run, list[Fact], bool]]:
    """Each run, what came of it by time, and whether a second look came late."""
    order = {fact.id: i for i, fact in enumerate(record.facts)}
    seen: dict[str, list[Fact]] = {}
    late: set[str] = set()
    for look in looks(record, names.packs, names.house):
        if look.by is not None:
            seen.setdefault(look.ran.id, []).append(look.by)
            if look.late:
                late.add(look.ran.id)
    decided = decisions(record).by_entry
    rows = []
    for run in running(record, names.house):
        then = [fact for fact in (run.stopped, run.restated, run.taken_over) if fact is not None]
        then += seen.get(run.fact.id, [])
        then += decided.get(run.fact.id, ())
        ordered = sorted({fact.id: fact for fact in then}.values(), key=lambda fact: order[fact.id])
        rows.append((run, ordered, run.fact.id in late))
    return rows


def _open_by_run(standing: Standing) -> dict[str, list[str]]:
    open_: dict[str, list[str]] = {}
    for end in standing.loose_ends:
        if end.sort in _OPEN_SORTS:
            for entry in end.entries:
                open_.setdefault(entry, []).append(end.words.rstrip("."))
    return open_


def _outcome(run: Run, then: list[Fact], still: list[str], stands: str, tongue: Tongue, *, late: bool) -> str:
    say = tongue.say
    if still:
        return say("Open when this letter was written: {what}.", what="; ".join(dict.fromkeys(still)))
    words = say("The second look came later than it should have.") + " " if late else ""
    if stands:
        return words + say("So it stood when this letter was written: {what}.", what=stands)
    if run.taken_over is not None:
        return words + say("Changed again later.")
    if any(isinstance(fact.body, Stopped) for fact in then):
        return words + say("Put back.")
    return words + (say("Settled.") if run.leaves and then else say("Left as found."))


def _name(run: Run, names: Names) -> str:
    return capital(names.subject(run.fact) or run.body.what or names.tongue.say("something"))


def operations_of(record: Record, names: Names, clock: Clock, standing: Standing) -> tuple[Operation, ...]:
    """Everything that was run and changed, or looked at again, in the order it was started."""
    open_ = _open_by_run(standing)
    stands = {row.entry: row.words.rstrip(".") for row in standing.running}
    rows = []
    for run, then, late in _story(record, names):
        still = open_.get(run.fact.id, [])
        if not (run.leaves or then or still or run.fact.id in stands):
            continue
        steps = tuple(Step(clock.say(fact.at), telling(fact, names), fact.id) for fact in (run.fact, *then))
        outcome = _outcome(run, then, still, stands.get(run.fact.id, ""), names.tongue, late=late)
        rows.append(Operation(_name(run, names), names.place(run.place), steps, outcome, bool(still)))
    return tuple(rows)


def as_found_of(record: Record, names: Names, operations: tuple[Operation, ...]) -> tuple[Statement, ...]:
    """What was operated and left as it was found at once: every run that *operations* does not tell."""
    told = {step.entry for operation in operations for step in operation.steps}
    return tuple(
        Statement(
            sentence(": ".join(dict.fromkeys(part for part in (names.subject(fact), fact.body.what) if part))),
            (fact.id,),
        )
        for fact in record.facts
        if isinstance(fact.body, Ran) and fact.id not in told
    )
