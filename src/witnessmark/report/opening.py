"""How the letter begins: who, where, when, for whom, under which law, in what weather."""

from __future__ import annotations

from datetime import date, datetime

from witnessmark.journal.acts import Arrived, Left
from witnessmark.journal.fold import Record
from witnessmark.journal.job import Job
from witnessmark.judging.model import LooseEnd, Standing
from witnessmark.packs.model import Packs
from witnessmark.report.clock import Clock, long_date, offset_words, spell
from witnessmark.report.letter import OpenEnd, Opening, Statement
from witnessmark.report.naming import capital, sentence
from witnessmark.report.wording import SURENESS, join, quantity

__all__ = ["INVENTED", "draft_of", "open_ends_of", "opening_of"]

INVENTED = "Invented for demonstration: this house, these people and these pictures do not exist."


def _visit(record: Record, job: Job, clock: Clock, visited: str) -> list[Statement]:
    came = [fact for fact in record.facts if isinstance(fact.body, Arrived)]
    went = [fact for fact in record.facts if isinstance(fact.body, Left)]
    where = f"the house at {job.address or 'an address not recorded'}"
    if not came:
        when = f" on {visited}" if visited else ""
        return [Statement(f"I inspected {where}{when}. The record does not say when I arrived.")]
    zone = offset_words(clock.offset)
    first = clock.say(came[0].at, seconds=False)
    words = f"I inspected {where} on {visited}, from {first}"
    words += f" to {clock.say(went[-1].at, seconds=False)}." if went else "; the record does not say when I left."
    if zone:
        words += f" Times in this letter are local ({zone})."
    ids = tuple(fact.id for fact in (*came, *went))
    if len(came) > 1:
        words += f" I was there {spell(len(came))} times."
    return [Statement(words, ids)]


def _conditions(record: Record) -> list[Statement]:
    rows = []
    for fact in record.facts:
        body = fact.body
        if not isinstance(body, Arrived):
            continue
        parts = []
        if body.weather:
            parts.append(f"The weather: {body.weather}.")
        if body.outdoor:
            parts.append(f"It was {quantity(body.outdoor, body.outdoor_unit)} outdoors.")
        if body.ground:
            parts.append(f"The ground: {body.ground}.")
        if body.utilities_on:
            parts.append(f"On and working to use: {join(body.utilities_on)}.")
        if body.present:
            parts.append(f"Present: {join(body.present)}.")
        if body.note:
            parts.append(sentence(body.note))
        if parts:
            rows.append(Statement(" ".join(parts), (fact.id,)))
    return rows


def _built(job: Job) -> list[Statement]:
    parts = []
    if job.year_built:
        later = join([f"{row.what} in {row.year}" for row in job.altered])
        parts.append(f"The house was built in {job.year_built}" + (f" and altered later: {later}." if later else "."))
    if job.occupied is not None:
        parts.append("It was lived in at the time." if job.occupied else "Nobody lived in it at the time.")
    return [Statement(" ".join(parts))] if parts else []


def _law(job: Job, packs: Packs) -> tuple[str, list[Statement]]:
    rulebook = packs.rulebooks.get(job.rulebook)
    if rulebook is None:
        name = job.rulebook or "no law named in the job"
        return name, [Statement(f"The law in force is named as {name}; its text is not among the packs.")]
    law = f"{rulebook.name}, {rulebook.citation}"
    words = (
        f"The inspection was made to {law}: a look at what can be seen and reached, working things by their normal "
        "controls, on that day. What was not inspected is listed with its reason."
    )
    return law, [Statement(words)]


def opening_of(
    job: Job,
    record: Record,
    packs: Packs,
    *,
    clock: Clock,
    issued: datetime,
) -> Opening:
    """The opening of the letter; ``visited`` and ``issued`` in words."""
    try:
        day: date | None = date.fromisoformat(job.date)
    except ValueError:
        day = clock.day
    visited = long_date(day) if day else "a day not recorded"
    law, lawful = _law(job, packs)
    paragraphs = (
        *_visit(record, job, clock, visited), *_conditions(record), *_built(job), *lawful,
    )  # fmt: skip
    return Opening(
        address=job.address or "Address not recorded",
        town=job.town,
        client=job.client or "client not recorded",
        inspector=job.inspector or "inspector not recorded",
        licence=job.licence,
        firm=job.firm or "",
        visited=visited,
        visited_on=day.isoformat() if day else "",
        issued=long_date(issued.date()),
        issued_at=issued.isoformat(),
        law=law,
        paragraphs=paragraphs,
    )


def draft_of(standing: Standing, *, sealed: bool) -> str:
    """What every page of a draft says; empty for an issued report: sealed, and nothing blocks it."""
    count = len(standing.blocking)
    if not count:
        return "" if sealed else "Draft: not issued. Nothing keeps it from being issued."
    return f"Draft: not issued. {capital(spell(count))} thing{'s are' if count != 1 else ' is'} open."


def _end(end: LooseEnd) -> OpenEnd:
    note = SURENESS.get(end.tag, end.tag) if end.tag else ""
    return OpenEnd(end.sort, sentence(end.words), sentence(end.next), end.entries, note)


def open_ends_of(standing: Standing) -> tuple[OpenEnd, ...]:
    """What keeps the report from being issued."""
    return tuple(_end(end) for end in standing.blocking)
