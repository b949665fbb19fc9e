"""What matters most: the findings in the order of stake, then urgency, each in its four parts."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from witnessmark.journal.acts import Found
from witnessmark.journal.fold import Fact, Record
from witnessmark.packs import SYSTEMS
from witnessmark.packs.model import STAKES, URGENCIES
from witnessmark.report.clock import Clock
from witnessmark.report.letter import Finding, PlaceFindings, StakeGroup
from witnessmark.report.naming import WHOLE_HOUSE, Names, capital, sentence
from witnessmark.report.showing import Showing
from witnessmark.report.tongue import Tongue
from witnessmark.report.wording import by_whom

__all__ = ["findings_of", "places_of", "summary_of", "systems_of"]

_HEADINGS = {
    "people": "Where people are at stake",
    "building": "Where the building is at stake",
    "function": "Where function is at stake",
    "upkeep": "Where upkeep is at stake",
}
_AT_STAKE = {
    "people": "People are at stake",
    "building": "The building is at stake",
    "function": "Function is at stake",
    "upkeep": "Upkeep is at stake",
}
_HOW_SOON = {
    "now": "deal with it now",
    "before use": "deal with it before use",
    "soon": "deal with it soon",
    "plan": "plan for it",
    "watch": "watch it",
}
_COUNTED = {
    "people": "{count} where people are at stake",
    "building": "{count} where the building is at stake",
    "function": "{count} where function is at stake",
    "upkeep": "{count} where upkeep is at stake",
}
_UNSAID = "Nothing was written here."
_OTHER = "Where the stake was not said"


def _rank(values: tuple[str, ...], value: str) -> int:
    return values.index(value) if value in values else len(values)


def _sentence(body: Found, tongue: Tongue) -> str:
    stake = tongue.say(_AT_STAKE.get(body.stake, "What is at stake was not said"))
    return f"{stake}; {tongue.say(_HOW_SOON.get(body.urgency, 'how soon was not said'))}."


def _title(body: Found, names: Names) -> str:
    condition = names.packs.conditions.get(body.condition or "")
    if body.title and not (condition and sentence(condition.name) == sentence(body.title)):
        return capital(body.title)
    if condition:
        return capital(names.tongue.row("condition", condition.id, "name", condition.name))
    words = body.seen.split(". ")[0].strip()
    return capital(words) or names.tongue.say("A finding without a title")


def _part(body: Found, field: str, text: str, names: Names) -> str:
    """One of the four parts: in the language of the report where the packs' own words stand unchanged, else as written."""
    condition = names.packs.conditions.get(body.condition or "")
    own = sentence(getattr(condition, field)) if condition else ""
    written = sentence(text)
    if condition and own and written.startswith(own):
        said = sentence(names.tongue.row("condition", condition.id, field, own))
        return said + written.removeprefix(own)
    return written or names.tongue.say(_UNSAID)


def _finding(fact: Fact, body: Found, *, record: Record, names: Names, clock: Clock, showing: Showing) -> Finding:
    based = [known for known in record.facts if known.id in set(body.rests_on)]
    place = names.place_of(fact) or next((names.place_of(row) for row in based if names.place_of(row)), "")
    subject = names.component(fact.component, body.kind) or next(
        (names.subject(row) for row in based if names.subject(row)), ""
    )
    last = record.entries.get(fact.amended_by[-1]) if fact.amended_by else None
    say = names.tongue.say
    when = clock.say(fact.entry.at, seconds=False)
    recorded = say("Written {when} on {device} by {by}", when=when, device=fact.entry.device, by=fact.entry.by)
    if fact.accepted_by and (accepted := record.entries.get(fact.accepted_by)):
        recorded += ", " + say("accepted {when} by {by}", when=clock.say(accepted.at, seconds=False), by=accepted.by)
    if last:
        recorded += ", " + say("amended {when} by {by}", when=clock.say(last.logged, seconds=False), by=last.by)
    return Finding(
        entry=fact.id,
        number=0,
        title=_title(body, names).rstrip("."),
        seen=_part(body, "observation", body.seen, names),
        why=_part(body, "implication", body.why, names),
        if_left=_part(body, "if_left", body.if_left, names),
        do=_part(body, "do", body.do, names),
        by=by_whom(body.by, names),
        direct=body.direct,
        stake=body.stake,
        urgency=body.urgency,
        sentence=_sentence(body, names.tongue),
        place=place,
        component=subject,
        recorded=recorded + ".",
        rests_on=tuple(dict.fromkeys(body.rests_on)),
        pictures=showing.of((fact.id, *body.rests_on)),
    )


def findings_of(record: Record, names: Names, clock: Clock, showing: Showing) -> tuple[StakeGroup, ...]:
    """The findings by stake, most urgent first; within one urgency in the order they were seen.

    A picture is shown with the first finding that rests on it; later ones name it.
    """
    rows = [(fact, fact.body) for fact in record.facts if isinstance(fact.body, Found)]
    order = sorted(
        range(len(rows)),
        key=lambda i: (_rank(STAKES, rows[i][1].stake), _rank(URGENCIES, rows[i][1].urgency), i),
    )
    shown: set[int] = set()
    groups: dict[str, list[Finding]] = {}
    for number, i in enumerate(order, 1):
        fact, body = rows[i]
        finding = _finding(fact, body, record=record, names=names, clock=clock, showing=showing)
        here = tuple(p for p in finding.pictures if p not in shown)
        elsewhere = tuple(p for p in finding.pictures if p in shown)
        shown.update(here)
        stake = body.stake if body.stake in STAKES else ""
        finding = replace(finding, number=number, pictures=here, pictures_elsewhere=elsewhere)
        groups.setdefault(stake, []).append(finding)
    return tuple(
        StakeGroup(stake, names.tongue.say(_HEADINGS.get(stake, _OTHER)), tuple(found))
        for stake, found in groups.items()
    )


def summary_of(groups: Sequence[StakeGroup], tongue: Tongue) -> str:
    """How many findings there are, by what they put at stake, in one or two sentences."""
    count = sum(len(group.findings) for group in groups)
    if not count:
        return tongue.say("Nothing was written down as a finding.")
    said = [
        tongue.say(_COUNTED[group.stake], count=tongue.number(len(group.findings))) for group in groups if group.stake
    ]
    words = "There is one finding" if count == 1 else "There are {count} findings"
    total = tongue.say(words, count=tongue.number(count))
    return f"{total}: {tongue.join(said)}." if said else f"{total}."


def places_of(groups: Sequence[StakeGroup], names: Names) -> tuple[PlaceFindings, ...]:
    """The numbers of the findings by place, places in the order they were visited."""
    numbers: dict[str, list[int]] = {}
    for group in groups:
        for finding in group.findings:
            numbers.setdefault(finding.place or names.tongue.say(WHOLE_HOUSE), []).append(finding.number)
    visited = [names.place(place) for place in names.house.places]
    known = sorted(numbers, key=lambda place: visited.index(place) if place in visited else len(visited))
    return tuple(PlaceFindings(capital(place), tuple(sorted(numbers[place]))) for place in known)


def systems_of(groups: Sequence[StakeGroup], record: Record, names: Names) -> tuple[PlaceFindings, ...]:
    """The numbers of the findings by the system of the house they are about, systems in their usual order."""
    facts = {fact.id: fact for fact in record.facts}
    numbers: dict[str, list[int]] = {}
    for group in groups:
        for finding in group.findings:
            fact = facts.get(finding.entry)
            body = fact.body if fact else None
            kind = names.packs.kinds.get((body.kind or "") if isinstance(body, Found) else "")
            system = kind.system if kind else names.system_of(fact) if fact else ""
            numbers.setdefault(system, []).append(finding.number)
    order = [*SYSTEMS, *(system for system in numbers if system not in SYSTEMS)]
    return tuple(
        PlaceFindings(names.system(system), tuple(sorted(numbers[system]))) for system in order if system in numbers
    )
