"""Whether the steps of one flight are low enough, deep enough and even enough."""

from __future__ import annotations

from collections.abc import Sequence
from decimal import Decimal
from typing import Annotated

from witnessmark.gauges.answer import Also, Answer, Basis
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.building.asking import inches, numbers
from witnessmark.gauges.building.checks import Check, held_against, said
from witnessmark.gauges.building.editions import IRC, Built, held_to, irc
from witnessmark.gauges.gauge import gauge
from witnessmark.units import Quantity

__all__ = ["EDITIONS", "spread", "stair_flight"]

#: Editions with a stair rule held here: CABO from 1989 as recalled, then the IRC.
EDITIONS = (1989, 1992, 1995, 1998, *IRC)
_RISER, _TREAD = Decimal("7.75"), Decimal(10)
_EARLIER_RISER, _EARLIER_TREAD = Decimal("8.25"), Decimal(9)
_SPREAD, _SPHERE = Decimal("0.375"), Decimal(4)
_NOSING_LEAST, _NOSING_MOST, _NO_NOSING_FROM = Decimal("0.75"), Decimal("1.25"), Decimal(11)
_IN = "[in_i]"


def spread(values: Sequence[Decimal]) -> Decimal:
    """Greatest less smallest, exactly; any one unit. Needs one value at least.

    >>> spread([Decimal("7.5"), Decimal("7.75"), Decimal("7.625")])
    Decimal('0.25')
    """
    return max(values) - min(values)


def _checks(
    edition: int,
    risers: Sequence[Decimal],
    treads: Sequence[Decimal],
    nosings: Sequence[Decimal],
    opening: Decimal | None,
) -> tuple[Check, ...]:
    old = edition < IRC[0]
    since = EDITIONS[0] if old else IRC[0]
    rise, run, nose, gap = (
        ("stair section",) * 4 if old else ("R311.7.5.1", "R311.7.5.2", "R311.7.5.3", "R311.7.5.1")
    )  # fmt: skip
    seen: Basis | None = None if old else "seen in a copy"
    tallest, lowest = (_EARLIER_RISER, _EARLIER_TREAD) if old else (_RISER, _TREAD)
    found = [
        Check("riser", "tallest riser", max(risers), _IN, rise, highest=tallest, since=since, basis=seen),
        Check(
            "riser_spread",
            "tallest less lowest riser",
            spread(risers),
            _IN,
            rise,
            highest=_SPREAD,
            since=since,
            basis=seen,
        ),
    ]
    if treads:
        uneven = spread(treads)
        found += [
            Check("tread", "shallowest tread", min(treads), _IN, run, lowest=lowest, since=since, basis=seen),
            Check(
                "tread_spread",
                "deepest less shallowest tread",
                uneven,
                _IN,
                run,
                highest=_SPREAD,
                since=since,
                basis=seen,
            ),
        ]
    if nosings and not old and (not treads or min(treads) < _NO_NOSING_FROM):
        found += [
            Check("nosing_least", "smallest nosing", min(nosings), _IN, nose, lowest=_NOSING_LEAST),
            Check("nosing_most", "largest nosing", max(nosings), _IN, nose, highest=_NOSING_MOST),
            Check("nosing_spread", "largest less smallest nosing", spread(nosings), _IN, nose, highest=_SPREAD),
        ]
    if opening is not None and not old:
        found.append(Check("riser_opening", "opening in an open riser", opening, _IN, gap, below=_SPHERE))
    return tuple(found)


@gauge(
    name="stair-flight",
    family="building",
    title="Risers, treads and nosings of one flight of stairs",
    unit="[in_i]",
    gives="difference between the tallest and the lowest riser of the flight",
    sources=(
        irc("R311.7.5 (7 3/4 in riser, 10 in tread)", "seen in a copy"),
        irc("R311.7.5 (3/8 in between steps)", "seen in a copy"),
        irc("R311.7.5.3 nosing, open risers", "memory"),
    ),
    error="a tape reads to 1/16 in; worn carpet and rounded nosings hide as much",
    never="that the stair cannot make a person fall, or that the place adopted this edition",
    cautions=(
        "Measure every riser: the first and the last are the ones that differ, after flooring was laid.",
        "Measure treads from nosing to nosing, level, not along the board.",
    ),
    example={
        "risers": "7 1/2 in, 7 1/2 in, 7 3/4 in, 7 5/8 in",
        "treads": "10 in, 10 in, 10 1/8 in",
        "edition": "2018",
    },
)
def stair_flight(
    risers: Annotated[
        tuple[Quantity, ...],
        inches(
            "height of every riser of the flight",
            most="36",
            how="with a level laid on the upper tread and a tape down to the lower one, near the middle",
            example="7 1/2 in, 7 5/8 in",
        ),
    ],
    treads: Annotated[
        tuple[Quantity, ...],
        inches("depth of every tread, nosing to nosing", most="60", example="10 in, 10 1/4 in"),
    ] = (),
    nosings: Annotated[
        tuple[Quantity, ...], inches("how far each nosing stands out over the tread below", most="6", example="1 in")
    ] = (),
    riser_opening: Annotated[
        Quantity | None,
        inches(
            "largest opening in an open riser more than 30 in above the floor or grade below",
            most="36",
            how="with a tape, or a ball of 4 in",
            example="3 7/8 in",
        ),
    ] = None,
    *,
    edition: Annotated[
        int | None, Asked("edition of the code to hold it against", choices=EDITIONS, example="2018")
    ] = None,
    built: Built = None,
) -> Answer:
    """Whether risers, treads and nosings keep the limits of an edition, and how uneven the flight is.

    Rule:
        IRC 2000 and later: riser at most 7 3/4 in, tread at least 10 in; in one flight the tallest riser is at most
        3/8 in more than the lowest, and so for treads; nosing 3/4 to 1 1/4 in, the largest at most 3/8 in more than the
        smallest, where treads are under 11 in; an open riser lets no 4 in sphere through (so the opening is less than
        4 in). CABO 1989 to 1998 as recalled: riser at most 8 1/4 in, tread at least 9 in (several states kept these).

    Traps: a flight whose every riser is low enough can still be uneven; 3/8 in is compared exactly, in decimals.

    >>> from witnessmark.units import parse_quantity as q
    >>> answer = stair_flight((q("7.5in"), q("7.875in")), edition=2018)
    >>> answer.value, answer["riser_spread_within"], answer["riser_within"]
    (Decimal('0.375'), True, False)
    """
    rises, runs = numbers(risers, "risers"), [one.value for one in treads]
    opening = None if riser_opening is None else riser_opening.value
    value = spread(rises)
    return held_against(
        held_to(edition, built, EDITIONS),
        lambda one: _checks(one, rises, runs, [each.value for each in nosings], opening),
        value=value,
        unit=_IN,
        lead=f"{len(rises)} risers between {said(min(rises), _IN)} and {said(max(rises), _IN)}. "
        if len(rises) > 1
        else f"One riser of {said(rises[0], _IN)}. ",
        editions=EDITIONS,
        also=(
            Also("tallest_riser", "tallest riser", max(rises), _IN),
            Also("total_rise", "all risers together", sum(rises, Decimal(0)), _IN),
            *((Also("tread_spread", "deepest less shallowest tread", spread(runs), _IN),) if runs else ()),
        ),
    )
