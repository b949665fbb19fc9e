"""How the letter begins: who, where, when, for whom, under which law, in what weather."""

from __future__ import annotations

from datetime import date, datetime

from witnessmark.journal.acts import Arrived, Left
from witnessmark.journal.fold import Record
from witnessmark.journal.job import Job
from witnessmark.judging.model import LooseEnd, Standing
from witnessmark.packs.model import Packs
from witnessmark.report.clock import Clock, offset_words
from witnessmark.report.letter import OpenEnd, Opening, Statement
from witnessmark.report.naming import capital, sentence
from witnessmark.report.tongue import Tongue
from witnessmark.report.wording import SURENESS, quantity

__all__ = ["INVENTED", "draft_of", "open_ends_of", "opening_of"]

INVENTED = "Invented for demonstration: this house, these people and these pictures do not exist."


def _visit(record: Record, job: Job, clock: Clock, visited: str) -> list[Statement]:
    say = clock.tongue.say
    came = [fact for fact in record.facts if isinstance(fact.body, Arrived)]
    went = [fact for fact in record.facts if isinstance(fact.body, Left)]
    where = job.address or say("an address not recorded")
    if not came:
        if visited:
            words = say("I inspected the house at {where} on {day}.", where=where, day=visited)
        else:
            words = say("I inspected the house at {where}.", where=where)
        return [Statement(words + " " + say("The record does not say when I arrived."))]
    first, last = clock.say(came[0].at, seconds=False), clock.say(went[-1].at, seconds=False) if went else ""
    gaps = {"where": where, "day": visited, "first": first, "last": last}
    words = (
        say("I inspected the house at {where} on {day}, from {first} to {last}.", **gaps)
        if went
        else say(
            "I inspected the house at {where} on {day}, from {first}; the record does not say when I left.", **gaps
        )
    )
    zone = offset_words(clock.offset)
    if zone:
        words += " " + say("Times in this letter are local ({zone}).", zone=zone)
    ids = tuple(fact.id for fact in (*came, *went))
    if len(came) > 1:
        words += " " + say("I was there {count} times.", count=clock.tongue.number(len(came)))
    return [Statement(words, ids)]


def _conditions(record: Record, tongue: Tongue) -> list[Statement]:
    rows = []
    for fact in record.facts:
        body = fact.body
        if not isinstance(body, Arrived):
            continue
        told = (
            ("The weather: {what}.", body.weather),
            ("It was {what} outdoors.", quantity(body.outdoor, body.outdoor_unit) if body.outdoor else ""),
            ("The ground: {what}.", body.ground),
            ("On and working to use: {what}.", tongue.join(body.utilities_on)),
            ("Present: {what}.", tongue.join(body.present)),
        )
        parts = [tongue.say(words, what=what) for words, what in told if what]
        if body.note:
            parts.append(sentence(body.note))
        if parts:
            rows.append(Statement(" ".join(parts), (fact.id,)))
    return rows


def _built(job: Job, tongue: Tongue) -> list[Statement]:
    say = tongue.say
    parts = []
    if job.year_built:
        later = tongue.join([say("{what} in {year}", what=row.what, year=row.year) for row in job.altered])
        words = (
            "The house was built in {year} and altered later: {later}." if later else "The house was built in {year}."
        )
        parts.append(say(words, year=job.year_built, later=later))
    if job.occupied is not None:
        parts.append(say("It was lived in at the time.") if job.occupied else say("Nobody lived in it at the time."))
    return [Statement(" ".join(parts))] if parts else []


def _translated(tongue: Tongue) -> list[Statement]:
    if tongue.language == "en":
        return []
    return [Statement(tongue.say("This is a translation. The report that is issued and sealed is the one in English."))]


def _law(job: Job, packs: Packs, tongue: Tongue) -> tuple[str, list[Statement]]:
    rulebook = packs.rulebooks.get(job.rulebook)
    if rulebook is None:
        name = job.rulebook or tongue.say("no law named in the job")
        words = tongue.say("The law in force is named as {name}; its text is not among the packs.", name=name)
        return name, [Statement(words)]
    law = f"{rulebook.name}, {rulebook.citation}"
    words = tongue.say(
        "The inspection was made to {law}: a look at what can be seen and reached, working things by their normal "
        "controls, on that day. What was not inspected is listed with its reason.",
        law=law,
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
    tongue, say = clock.tongue, clock.tongue.say
    try:
        day: date | None = date.fromisoformat(job.date)
    except ValueError:
        day = clock.day
    visited = tongue.long_date(day) if day else say("a day not recorded")
    law, lawful = _law(job, packs, tongue)
    paragraphs = (
        *_translated(tongue), *_visit(record, job, clock, visited), *_conditions(record, tongue), *_built(job, tongue), *lawful,
    )  # fmt: skip
    return Opening(
        address=job.address or say("Address not recorded"),
        town=job.town,
        client=job.client or say("client not recorded"),
        inspector=job.inspector or say("inspector not recorded"),
        licence=job.licence,
        firm=job.firm or "",
        visited=visited,
        visited_on=day.isoformat() if day else "",
        issued=tongue.long_date(issued.date()),
        issued_at=issued.isoformat(),
        law=law,
        paragraphs=paragraphs,
    )


def draft_of(standing: Standing, tongue: Tongue, *, sealed: bool) -> str:
    """What every page of a draft says; empty for an issued report: sealed, and nothing blocks it."""
    count = len(standing.blocking)
    if not count:
        return "" if sealed else tongue.say("Draft: not issued. Nothing keeps it from being issued.")
    if count == 1:
        return tongue.say("Draft: not issued. One thing is open.")
    return tongue.say("Draft: not issued. {count} things are open.", count=capital(tongue.number(count)))


def _end(end: LooseEnd) -> OpenEnd:
    note = SURENESS.get(end.tag, end.tag) if end.tag else ""
    return OpenEnd(end.sort, sentence(end.words), sentence(end.next), end.entries, note)


def open_ends_of(standing: Standing) -> tuple[OpenEnd, ...]:
    """What keeps the report from being issued."""
    return tuple(_end(end) for end in standing.blocking)
