"""Whether a guard is needed along a drop, and whether it is high enough."""

from __future__ import annotations

from decimal import Decimal
from typing import Annotated, Literal

from witnessmark.gauges.answer import Also, Answer
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.building.asking import inches
from witnessmark.gauges.building.checks import Check, Rule, by_rule, held_against, said
from witnessmark.gauges.building.editions import Built, Edition, held_to, irc
from witnessmark.gauges.gauge import gauge
from witnessmark.units import Quantity

__all__ = ["REACH_SINCE", "guard", "guard_asked"]

#: Edition since which the drop is measured to the lowest point within 36 in of the edge, not straight down.
REACH_SINCE = 2009
_DROP, _TAPE = Decimal(30), Decimal("0.0625")
_HEIGHT = {"floor, deck or landing": Decimal(36), "open side of a stair": Decimal(34)}
_IN = "[in_i]"


def guard_asked(edition: int, straight_down: Decimal, within_reach: Decimal | None = None) -> bool:
    """Whether an IRC edition asks for a guard along a drop in inches: more than 30 in, exactly.

    *straight_down* is the drop at the edge, *within_reach* the greatest drop to grade within 36 in out from the edge,
    which counts from IRC 2009 on.

    >>> guard_asked(2018, Decimal(30)), guard_asked(2018, Decimal("30.25"))
    (False, True)
    >>> guard_asked(2006, Decimal(28), Decimal(34)), guard_asked(2009, Decimal(28), Decimal(34))
    (False, True)
    """
    drop = straight_down if within_reach is None or edition < REACH_SINCE else max(straight_down, within_reach)
    return drop > _DROP


@gauge(
    name="guard",
    family="building",
    title="Whether a guard is needed, and its height",
    unit="[in_i]",
    gives="height of the guard where one was measured, else the drop",
    sources=(irc("R312.1 (30 in drop)", "seen in a copy"), irc("R312.1 (36 in and 34 in high, 36 in reach)", "memory")),
    error="a tape reads to 1/16 in; grade moves more than that in a season",
    never="that a guard will hold a person: its strength is another question",
    cautions=("Stand back from an edge without a guard; measure the drop from below or with a pole.",),
    example={"drop": "40 in", "height": "36 in", "edition": "2018"},
)
def guard(
    drop: Annotated[
        Quantity,
        inches("drop from the walking surface straight down at its open edge", most="1200", example="40 in"),
    ],
    drop_within_36_inches: Annotated[
        Quantity | None,
        inches(
            "greatest drop to the floor or grade below anywhere within 36 in out from the edge",
            most="1200",
            how="level out from the edge with a straight edge, measure down at the lowest point",
            example="46 in",
        ),
    ] = None,
    height: Annotated[
        Quantity | None,
        inches("height of the guard, from the surface or from the nosing line of a stair", example="36 in"),
    ] = None,
    *,
    place: Annotated[
        Literal["floor, deck or landing", "open side of a stair"], Asked("what the guard stands along")
    ] = "floor, deck or landing",
    edition: Edition = None,
    built: Built = None,
) -> Answer:
    """Whether a drop needs a guard by an edition, and whether the guard there is high enough.

    Rule:
        a guard along open sides more than 30 in above the floor or grade below; from IRC 2009 on the lowest point
        within 36 in horizontally of the edge counts; guard at least 36 in high, 34 in above the nosing line of a stair

    >>> from witnessmark.units import parse_quantity as q
    >>> guard(q("30 in"), edition=2018)["required"], guard(q("30.25 in"), edition=2018)["required"]
    (False, True)
    """
    held = held_to(edition, built)
    reach = None if drop_within_36_inches is None else drop_within_36_inches.value
    needed = by_rule(
        held,
        Rule(
            "a guard here",
            "R312.1",
            lambda one: guard_asked(one, drop.value, reach),
            "memory",
            "more than 30 in is the mark",
        ),
    )
    cautions = needed.cautions
    if reach is None:
        cautions = (
            *cautions,
            "The lowest point within 36 in of the edge counts from IRC 2009 on: only straight down was given.",
        )
    if abs(drop.value - _DROP) < _TAPE:
        cautions = (*cautions, "Nearer to 30 in than a tape's 1/16 in: measure the drop again.")
    if height is None:
        return Answer(
            value=drop.value,
            words=f"Drop of {said(drop.value, _IN)}. {needed.words}",
            sources=needed.sources,
            cautions=cautions,
            also=needed.also,
        )
    measured = held_against(
        held,
        lambda _: (Check("height", "height of the guard", height.value, _IN, "R312.1.2", lowest=_HEIGHT[place]),),
        value=height.value,
    )
    told = {one.name for one in needed.also}
    return Answer(
        value=height.value,
        words=f"Drop of {said(drop.value, _IN)}. {needed.words} {measured.words}",
        verdict=measured.verdict if needed["required"] else None,
        sources=(*needed.sources, *measured.sources),
        cautions=tuple(dict.fromkeys((*cautions, *measured.cautions))),
        also=(*needed.also, *(one for one in measured.also if one.name not in told), Also("place", "along", place)),
        table=measured.table,
    )
