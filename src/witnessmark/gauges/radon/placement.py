"""Whether a radon device stands where the rules of the place want it, and how many places must be tested."""

from __future__ import annotations

import math
from dataclasses import dataclass
from decimal import Decimal
from typing import Annotated, Literal

from witnessmark.gauges.answer import Also, Answer, Source, Step, Table
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.gauge import gauge
from witnessmark.gauges.radon.sources import EPA_HOMES_RECALLED, ILLINOIS, NOT_ONE_READING, OHIO
from witnessmark.units import Quantity, convert, say

__all__ = ["RULES", "Distance", "Place", "locations", "radon_locations", "radon_placement"]

Place = Literal["Illinois", "Ohio", "EPA 1993"]


@dataclass(frozen=True, slots=True)
class Distance:
    """One distance that a rule asks for, in inches: at least, at most."""

    what: str
    least: Decimal | None = None
    most: Decimal | None = None


def _stated(sump: int) -> dict[str, Distance]:
    return {
        "opening": Distance("exterior doors, windows and ventilation ducts", Decimal(36)),
        "exterior_wall": Distance("exterior wall", Decimal(12)),
        "floor": Distance("floor", Decimal(20), Decimal(72)),
        "objects": Distance("other objects", Decimal(4)),
        "heat": Distance("heat, fireplace or furnace", Decimal(48)),
        "sump": Distance("sump pit", Decimal(12 * sump)),
        "ceiling": Distance("ceiling, where it hangs", Decimal(12)),
    }


_OHIO = {name: one for name, one in _stated(10).items() if name != "ceiling"}
#: Distances in inches by place. What a rule does not name is not checked there.
RULES: dict[str, tuple[Source, dict[str, Distance]]] = {
    "Illinois": (ILLINOIS, _stated(7)),
    "Ohio": (OHIO, _OHIO),
    "EPA 1993": (
        EPA_HOMES_RECALLED,
        {
            "opening": Distance("exterior doors and windows", Decimal(36)),
            "exterior_wall": Distance("exterior wall", Decimal(12)),
            "floor": Distance("floor", Decimal(20)),
            "objects": Distance("other objects", Decimal(4)),
        },
    ),
}


def _distance(what: str, example: str) -> Asked:
    return Asked(f"distance from the device to {what}", "[in_i]", lowest="0", highest="600", least="0", most="100000",
                 how="with a tape, from the nearest side of the device", example=example)  # fmt: skip


@gauge(
    name="radon-placement",
    family="radon",
    title="Whether a radon device stands where the rule of the place wants it",
    gives="a word answer: every distance with what the rule asks for",
    sources=(ILLINOIS, OHIO, EPA_HOMES_RECALLED),
    error="as the tape was held",
    never="that the result is right, or that a rule of another place is met",
    cautions=(
        "The rule of the state where the house stands goes before all others; look for it before you place a device.",
        *NOT_ONE_READING,
    ),
    example={"place": "Illinois", "opening": "5ft", "exterior_wall": "2ft", "floor": "30in", "objects": "6in",
             "heat": "6ft", "sump": "9ft"},
)  # fmt: skip
def radon_placement(
    place: Annotated[Place, Asked("whose rule is looked at")],
    *,
    opening: Annotated[
        Quantity | None, _distance("the nearest exterior door, window or ventilation duct", "5ft")
    ] = None,
    exterior_wall: Annotated[Quantity | None, _distance("the nearest exterior wall", "2ft")] = None,
    floor: Annotated[Quantity | None, _distance("the floor", "30in")] = None,
    objects: Annotated[Quantity | None, _distance("the nearest object beside or above it", "6in")] = None,
    heat: Annotated[Quantity | None, _distance("a heater, fireplace or furnace, or direct sun", "6ft")] = None,
    sump: Annotated[Quantity | None, _distance("a sump pit", "9ft")] = None,
    ceiling: Annotated[Quantity | None, _distance("the ceiling, where it hangs", "2ft")] = None,
    damp_room: Annotated[bool, Asked("it stands in a bathroom, kitchen, laundry or other damp room")] = False,
    closet_or_crawl_space: Annotated[bool, Asked("it stands in a closet, cupboard, sump, crawl space or nook")] = False,
    in_air_stream: Annotated[bool, Asked("it stands in the air stream of a duct or a fan")] = False,
) -> Answer:
    """Placement of a radon device against the rule of a place, distance by distance.

    Rule:
        Illinois and Ohio: 3 ft from exterior openings and ducts, 1 ft from exterior walls, 20 in to 6 ft above the floor,
        4 in from objects, 4 ft from heat, 7 ft (Ohio: 10 ft) from a sump; hanging: 1 ft below the ceiling (Illinois).
        EPA 1993 (recalled): 3 ft from doors and windows, 1 ft from exterior walls, 20 in above the floor, 4 in from objects.

    A distance that was not measured is listed as not measured, never as met.

    >>> from witnessmark.gauges import evaluate
    >>> evaluate("radon-placement", {"place": "Ohio", "sump": "8ft"})["sump"]
    'less than 120 in'
    """  # fmt: skip
    source, rules = RULES[place]
    given = {"opening": opening, "exterior_wall": exterior_wall, "floor": floor, "objects": objects, "heat": heat,
             "sump": sump, "ceiling": ceiling}  # fmt: skip
    also, rows, short, unknown = [], [], [], []
    for name, rule in rules.items():
        want = f"{rule.least} in" + (f" to {rule.most} in" if rule.most else " or more")
        have = given[name]
        if have is None:
            told = "not measured"
            if name not in {"ceiling", "sump", "heat"}:
                unknown.append(rule.what)
        elif rule.least is not None and have.value < rule.least:
            told = f"less than {rule.least} in"
            short.append(f"{say(convert(have, '[in_i]'))} from {rule.what}, asked is {want}")
        elif rule.most is not None and have.value > rule.most:
            told = f"more than {rule.most} in"
            short.append(f"{say(convert(have, '[in_i]'))} from {rule.what}, asked is {want}")
        else:
            told = "as asked"
        also.append(Also(name, f"distance to {rule.what}", told))
        rows.append((rule.what, "" if have is None else say(have), want, told))
    short += [
        what
        for is_so, what in (
            (damp_room, "in a damp room"),
            (closet_or_crawl_space, "in a closet, crawl space or nook, which represents no room"),
            (in_air_stream, "in a stream of air"),
        )
        if is_so
    ]
    said = f"Not placed as {place} asks: {'; '.join(short)}" if short else f"What was measured is as {place} asks"
    missing = f" Not measured: {', '.join(unknown)}." if unknown else ""
    return Answer(
        words=f"{said}.{missing}",
        sources=(source,),
        also=(
            Also("misplaced", "something is not as the rule asks", bool(short)),
            Also("all_measured", "everything that the rule always asks for was measured", not unknown),
            *also,
        ),
        table=Table((("from", ""), ("measured", ""), ("asked", ""), ("", "")), tuple(rows)),
    )


def locations(square_feet: Decimal) -> int:
    """Places to be tested on a level of this area: one, and one more for each further 2000 sq ft begun.

    >>> [locations(Decimal(area)) for area in (1200, 2000, 2001, 4500)]
    [1, 1, 2, 3]
    """
    return max(1, math.ceil(square_feet / 2000))


@gauge(
    name="radon-locations",
    family="radon",
    title="How many places of a level must be tested for radon",
    unit="1",
    gives="places to be tested on the level, in each lowest structural area suitable for living",
    sources=(ILLINOIS, OHIO),
    error="none: it is a count",
    never="that one place stands for another: every foundation type has its own test",
    cautions=(
        "A house over a basement, a slab and a crawl space has a test over each, at the same time.",
        "At exactly 4000, 6000 … sq ft the rules can be read as asking for one more.",
    ),
    example={"area": "2400sqft"},
)
def radon_locations(
    area: Annotated[
        Quantity,
        Asked(
            "area of the level that is tested",
            "[sft_i]",
            lowest="50",
            highest="20000",
            least="0",
            most="1000000",
            how="inside, of one foundation type",
            example="2400sqft",
        ),
    ],
) -> Answer:
    """Number of test locations on a level.

    Rule:
        one; over 2000 sq ft one more for each 2000 sq ft of the area tested (Illinois, Ohio)

    >>> from witnessmark.gauges import evaluate
    >>> evaluate("radon-locations", {"area": "2400sqft"}).value
    Decimal('2')
    """  # fmt: skip
    count = locations(area.value)
    where = f"{count} place{'s' if count > 1 else ''}"
    return Answer(
        value=Decimal(count),
        words=f"{where} on a level of {float(area.value):,.0f} sq ft, in each foundation type.",
        steps=(Step("area over 2000 sq ft, begun ones counted", Decimal(count), "1"),),
    )
