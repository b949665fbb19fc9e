"""How long ageing parts may go on: each source's own years beside the age of the part, and no year of our own.

Only where the client asked for it in the agreement (``outlook`` in ``job.toml``): the laws do not ask an inspector for
remaining life, and a list of years is easily read as a promise.
"""

from __future__ import annotations

from datetime import date

from witnessmark.journal.acts import Identified
from witnessmark.journal.fold import Fact, Record
from witnessmark.journal.job import Job
from witnessmark.packs.model import Life
from witnessmark.report.letter import Outlook
from witnessmark.report.naming import Names, capital
from witnessmark.report.wording import SURENESS

__all__ = ["outlook_of"]

_YEAR = 4
#: How the packs write a life to which a source names no end.
_OPEN = "and more"


def _made(facts: list[Fact], visited: int) -> tuple[Fact, int] | None:
    """The entry that tells the year of make, and the age; None where no entry tells one that can be."""
    for fact in facts:
        body = fact.body
        if isinstance(body, Identified) and body.attribute == "made" and not body.part:
            year = body.value.strip()[:_YEAR]
            if year.isdigit() and len(year) == _YEAR and int(year) <= visited:
                return fact, visited - int(year)
    return None


def _fits(life: Life, said: set[str]) -> bool:
    """Whether a source's row is about this part: its material, where it names one, is one that was described."""
    return not life.material or any(life.material.lower() in words or words in life.material.lower() for words in said)


def _says(life: Life, names: Names) -> str:
    say = names.tongue.say
    more = _OPEN in life.quality
    if more:
        years = say("{low} years and more", low=life.low)
    elif life.low == life.high:
        years = say("{low} years", low=life.low)
    else:
        years = say("{low} to {high} years", low=life.low, high=life.high)
    rest = ", ".join(part for part in (life.climate, life.quality if not more else "") if part)
    return f"{capital(life.name)}: {years}" + (f" ({rest})" if rest else "")


def outlook_of(job: Job, record: Record, names: Names) -> tuple[Outlook, ...]:
    """One row for each part whose year of make was recorded and each source that knows its kind; none unless asked for."""
    try:
        visited = date.fromisoformat(job.date).year
    except ValueError:
        return ()
    if not job.outlook:
        return ()
    told: dict[str, list[Fact]] = {}
    for fact in record.facts:
        if isinstance(fact.body, Identified) and (fact.component or fact.body.kind):
            told.setdefault(fact.component or fact.body.kind or "", []).append(fact)
    rows = []
    for facts in told.values():
        aged = _made(facts, visited)
        if aged is None:
            continue
        first, age = aged
        kind = names.house.kind_of(first)
        said = {fact.body.value.lower() for fact in facts if isinstance(fact.body, Identified)}
        for life in names.packs.lives.values():
            if kind in life.kinds and not life.part and _fits(life, said):
                note = SURENESS.get(life.provenance.tag, life.provenance.tag)
                source = f"{life.document}, {life.edition}" + (f" ({note})" if note else "")
                high = None if _OPEN in life.quality else int(float(life.high))
                name = capital(names.component(first.component, kind))
                rows.append(
                    Outlook(
                        name,
                        names.place_of(first),
                        age,
                        int(float(life.low)),
                        high,
                        _says(life, names),
                        source,
                        (first.id,),
                    )
                )
    return tuple(rows)
