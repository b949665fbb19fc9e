"""Whether the number that was looked at is the representative number of the law: by room, by side, each one."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated

from witnessmark.gauges.answer import Also, Answer, Source, Table, Uncertainty, Verdict, rounded
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.gauge import gauge
from witnessmark.gauges.sampling.inputs import no_more
from witnessmark.gauges.sampling.law_rules import COMPONENTS, JURISDICTIONS, RULES, Count, Rule

__all__ = ["Place", "needed_at", "representative_number", "still_to_test"]

_STATUTES = Source("Home inspection law of the place", "", "rule by component", "seen in a copy")
_READ = "Read the law of the place itself: the rule here is told in our words, and laws change."


@dataclass(frozen=True, slots=True)
class Place:
    """One room, or one side of the house: how many are there, how many were tested, how many could not be reached."""

    place: Annotated[str, Asked("the room, or the side of the house")]
    there: Annotated[int, Asked("how many are there", lowest="0", highest="200", least="0", most="10000")]
    tested: Annotated[int, Asked("how many were tested there", lowest="0", highest="200", least="0", most="10000")]
    out_of_reach: Annotated[
        int,
        Asked("how many could not be reached, each with its reason noted", lowest="0", highest="200", least="0",
              most="10000"),
    ] = 0  # fmt: skip


def _joined(rows: tuple[Place, ...]) -> tuple[Place, ...]:
    """Rows of one place added up, in the order in which places first come."""
    found: dict[str, Place] = {}
    for row in rows:
        key = row.place.strip().lower()
        had = found.get(key, Place(row.place.strip() or "(no name)", 0, 0))
        found[key] = Place(
            had.place, had.there + row.there, had.tested + row.tested, had.out_of_reach + row.out_of_reach
        )
    return tuple(found.values())


def needed_at(row: Place, count: Count) -> int:
    """How many the rule needs at one place: one where there is one within reach, or each one within reach.

    >>> needed_at(Place("kitchen", 6, 1), "per room"), needed_at(Place("kitchen", 6, 1, 1), "each")
    (1, 5)
    """
    within_reach = row.there - row.out_of_reach
    return within_reach if count == "each" else min(1, within_reach)


def still_to_test(rows: tuple[Place, ...], count: Count) -> int:
    """How many tests the rule still wants, place by place: more tests in one place never make up for another.

    >>> still_to_test((Place("hall", 5, 5), Place("kitchen", 6, 0)), "per room")
    1
    """
    return sum(max(0, needed_at(row, count) - row.tested) for row in rows)


def _words(rule: Rule, rows: tuple[Place, ...], short: tuple[Place, ...], missing: int) -> str:
    each = {"per room": "one in each room", "per side": "one on each side", "each": "each one within reach"}
    if rule.count == "sample":
        text = "The law asks a representative number and states none here, so it is the inspector's judgment."
        return text + (f" None was tested in: {', '.join(row.place for row in short)}." if short else "")
    if not short:
        return f"The rule counts {each[rule.count]}: met in all {len(rows)} places that were listed."
    where = ", ".join(f"{row.place} ({row.tested} of {needed_at(row, rule.count)})" for row in short)
    return f"The rule counts {each[rule.count]}: still {missing} to test, in {where}."


@gauge(
    name="representative-number",
    family="sampling",
    title="Whether the representative number of the law was looked at",
    unit="1",
    gives="how many are still to be tested by the rule; none where the law states no number",
    sources=(_STATUTES,),
    error="none in the count; the law's own words decide, and some were read in a copy only",
    never="that those not tested are sound, that the law has been met, or any chance of having found what is bad",
    cautions=(_READ, "What could not be reached is a limitation: say which, where and why in the report."),
    example={
        "jurisdiction": "Florida",
        "component": "receptacles",
        "places": "place,there,tested\nkitchen,6,2\nliving room,5,1\nbedroom,4,0",
    },
)
def representative_number(
    jurisdiction: Annotated[str, Asked("whose law", choices=JURISDICTIONS, example="Florida")],
    component: Annotated[str, Asked("which component", choices=COMPONENTS, example="receptacles")],
    places: Annotated[tuple[Place, ...], Asked("every room, or every side of the house, also those with none tested")],
) -> Answer:
    """Whether enough were looked at under the law of a place, room by room or side by side.

    Rule:
        per room: one where the room has one within reach; per side: one where the side has one; each: every one
        within reach; sample: the law states no number. Coverage is the least over places, never a percentage:
        twelve tested in the living room do not make up for none in the bedroom.

    >>> rows = (Place("kitchen", 6, 6), Place("bedroom", 4, 0))
    >>> answer = representative_number("Florida", "receptacles", rows)
    >>> answer.value, answer["short"]
    (Decimal('1'), 'bedroom')
    """
    for at, one in enumerate(places, 1):
        no_more(
            one.there,
            where=f"places[{at}] {one.place}".rstrip(),
            tested=one.tested,
            out_of_reach=one.out_of_reach,
            tested_and_out_of_reach=one.tested + one.out_of_reach,
        )
    rows = _joined(places)
    there, tested = sum(row.there for row in rows), sum(row.tested for row in rows)
    rule = RULES.get((jurisdiction, component))
    counted = (
        Also("there", "how many there are", rounded(there), "1"),
        Also("tested", "how many were tested", rounded(tested), "1"),
        Also("out_of_reach", "how many could not be reached", rounded(sum(r.out_of_reach for r in rows)), "1"),
    )
    if rule is None:
        return Answer(
            words=f"No rule of {jurisdiction} on {component} has been read, which does not mean that there is none; "
            f"{tested} of {there} were tested.",
            verdict=Verdict(
                "undecided", "no rule read", Source(f"Home inspection law of {jurisdiction}", "", "", "memory")
            ),
            also=counted,
        )
    count: Count = rule.count
    short = tuple(row for row in rows if row.tested < needed_at(row, count))
    missing = still_to_test(rows, count)
    unstated = count == "sample"
    unreached = tuple(row.place for row in rows if row.there and row.there == row.out_of_reach)
    words = _words(rule, rows, short, missing)
    if unreached:
        words += f" Nothing was within reach in: {', '.join(unreached)}."
    least = min((row.tested for row in rows if needed_at(row, count)), default=0)
    return Answer(
        value=None if unstated else rounded(missing),
        unit="" if unstated else "1",
        words=words,
        uncertainty=Uncertainty("none in the count"),
        verdict=Verdict(
            "undecided" if unstated else "beyond" if short else "within",
            f"{jurisdiction}: {rule.asks}",
            rule.source,
        ),
        sources=(rule.source,),
        cautions=(rule.note,) if rule.note else (),
        also=(
            Also("count", "how the rule counts", count),
            *(
                ()
                if unstated
                else (Also("needed", "how many the rule needs in all",
                           rounded(sum(needed_at(row, count) for row in rows)), "1"),)
            ),
            Also("least_tested", "fewest tested in any place that has some within reach", rounded(least), "1"),
            Also("short", "places that are short", ", ".join(row.place for row in short)),
            *counted,
        ),
        table=Table(
            (("place", ""), ("there", "1"), ("out of reach", "1"), ("needed", "1"), ("tested", "1")),
            tuple(
                (row.place, rounded(row.there), rounded(row.out_of_reach),
                 "not stated" if unstated else rounded(needed_at(row, count)), rounded(row.tested))
                for row in rows
            ),
        ),
    )  # fmt: skip
