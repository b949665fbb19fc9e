"""The house at a glance: facts of the job, where to turn things off, and what was described."""

from __future__ import annotations

from datetime import date

from witnessmark.journal.acts import Identified, Listed, Ran, Saw, Skipped
from witnessmark.journal.fold import Fact, Record
from witnessmark.journal.job import Job
from witnessmark.packs import SYSTEMS
from witnessmark.report.letter import Description, Glance, SystemGlance
from witnessmark.report.naming import Names, capital
from witnessmark.report.showing import Showing
from witnessmark.report.tongue import Tongue
from witnessmark.report.wording import attribute_words, quantity, reason_words

__all__ = ["glance_of"]

#: Kinds and parts by which a house is turned off in an emergency: a piece of their id is enough.
_SHUTOFF = ("shutoff", "disconnect", "gas-meter", "service-panel", "propane-tank", "oil-tank")
_YEAR = 4


def _yes_no(answer: bool | None, tongue: Tongue) -> str:
    return "" if answer is None else tongue.say("yes") if answer else tongue.say("no")


def _facts_of(job: Job, tongue: Tongue) -> tuple[tuple[str, str], ...]:
    rows = [
        ("Built", str(job.year_built) if job.year_built else ""),
        ("Altered since", tongue.join([f"{row.what} ({row.year})" for row in job.altered])),
        ("Storeys above grade", job.storeys or ""),
        ("Floor area", quantity(job.area, job.area_unit) if job.area else ""),
        ("Foundation", job.foundation or ""),
        ("Fuels", tongue.join(job.fuels)),
        ("Attached garage", _yes_no(job.attached_garage, tongue)),
        ("Lived in", _yes_no(job.occupied, tongue)),
        ("Note", job.note or ""),
    ]
    return tuple((tongue.say(label), value) for label, value in rows if value)


def _age(body: Identified, visited: date | None, tongue: Tongue) -> str:
    if body.attribute != "made" or visited is None:
        return ""
    year = body.value.strip()[:_YEAR]
    if not (year.isdigit() and len(year) == _YEAR):
        return ""
    years = visited.year - int(year)
    if years < 0:
        return ""
    words = "about one year old then" if years == 1 else "about {years} years old then"
    return ", " + tongue.say(words, years=years)


def _says(fact: Fact, names: Names, visited: date | None) -> str:
    body = fact.body
    if isinstance(body, Identified):
        part = names.part(names.house.kind_of(fact), body.part)
        note = f" ({body.note})" if body.note else ""
        return f"{part + ', ' if part else ''}{attribute_words(body, names)}{_age(body, visited, names.tongue)}{note}"
    if isinstance(body, Saw):
        # What is wrong with it stands among the findings; here it is about where it is and how it is turned.
        return "" if body.state == "adverse" else body.what
    if isinstance(body, Ran):
        said = names.tongue.say("operated")
        return f"{said}: {body.what}" if body.what else said
    if isinstance(body, Skipped):
        return names.tongue.say("not operated or not looked at: {why}", why=reason_words(body, names))
    if isinstance(body, Listed):
        return body.note or ""
    return ""


def _described(facts: list[Fact], names: Names, visited: date | None) -> Description:
    first = facts[0]
    name = names.component(first.component, names.house.kind_of(first)) or names.subject(first)
    said = dict.fromkeys(words for fact in facts if (words := _says(fact, names, visited)))
    return Description(capital(name), names.place_of(first), tuple(said), tuple(fact.id for fact in facts))


def _is_shutoff(fact: Fact, names: Names) -> bool:
    ids = (names.house.kind_of(fact), getattr(fact.body, "part", None) or "")
    return any(piece in slug for piece in _SHUTOFF for slug in ids)


def _shutoffs(record: Record, names: Names, visited: date | None) -> list[Description]:
    told: dict[tuple[str, str], list[Fact]] = {}
    for fact in record.facts:
        if isinstance(fact.body, (Identified, Saw, Ran, Skipped, Listed)) and _is_shutoff(fact, names):
            told.setdefault((fact.component or names.subject(fact), names.place_of(fact)), []).append(fact)
    rows = []
    for facts in told.values():
        row = _described(facts, names, visited)
        subject = next((names.subject(f) for f in facts if getattr(f.body, "part", None)), "")
        rows.append(Description(capital(subject or row.component), row.place, row.says, row.rests_on))
    return rows


def _systems(record: Record, names: Names, visited: date | None) -> tuple[SystemGlance, ...]:
    told: dict[str, dict[str, list[Fact]]] = {}
    for fact in record.facts:
        if isinstance(fact.body, Identified):
            key = fact.component or f"{names.house.kind_of(fact)} {names.place_of(fact)}"
            told.setdefault(names.system_of(fact), {}).setdefault(key, []).append(fact)
    order = [*SYSTEMS, *(system for system in told if system not in SYSTEMS)]
    return tuple(
        SystemGlance(
            system,
            names.system(system),
            tuple(_described(facts, names, visited) for facts in told[system].values()),
        )
        for system in order
        if system in told
    )


def glance_of(job: Job, record: Record, names: Names, showing: Showing) -> Glance:
    """The house at a glance. Ages are years between the year of make and the visit, no outlook."""
    try:
        visited = date.fromisoformat(job.date)
    except ValueError:
        visited = None
    shutoffs = _shutoffs(record, names, visited)
    pictures = showing.of(entry for row in shutoffs for entry in row.rests_on)
    return Glance(_facts_of(job, names.tongue), tuple(shutoffs), pictures, _systems(record, names, visited))
