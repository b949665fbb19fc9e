"""Whether the space to work at an electrical panel is as deep, wide and high as the code asks."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal
from typing import Annotated, Literal

from witnessmark.gauges.answer import Also, Answer, Source, Table, Verdict, rounded
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.electrical.editions import ADOPTED, BUILT, EDITION, in_force, nec
from witnessmark.gauges.electrical.spacing.sketch import feet
from witnessmark.gauges.gauge import gauge
from witnessmark.units import Quantity

__all__ = ["Measure", "working_space", "working_space_measures"]

WORKING = nec(2017, "110.26(A)", "seen in a copy")
DEDICATED = nec(2017, "110.26(E)", "seen in a copy")
HANDLE = nec(2017, "240.24(A)", "memory")
ROOMS = nec(2017, "240.24(D), (E), (F)", "seen in a copy")
IRC = Source("International Residential Code", "2015", "E3405", "seen in a copy")
DEPTH, WIDTH, HEIGHT, ABOVE, HANDLES = Decimal(36), Decimal(30), Decimal(78), Decimal(72), Decimal(79)
RIGHT_ANGLE = Decimal(90)
#: From this edition the figures are those of today as far as they were read; earlier ones had smaller ones.
SURE_FROM = 1996
FORBIDDEN = ("bathroom", "toilet room", "clothes closet", "over stair steps")


@dataclass(frozen=True, slots=True)
class Measure:
    """One measure of the working space: found (None: not measured), needed, by how much it falls short, and where from."""

    name: str
    words: str
    found: Decimal | None
    needed: Decimal
    source: Source
    at_most: bool = False

    @property
    def short(self) -> Decimal | None:
        """By how much it falls short; 0 where it does not, None where it was not measured."""
        if self.found is None:
            return None
        off = self.found - self.needed if self.at_most else self.needed - self.found
        return max(off, Decimal(0))


def working_space_measures(
    depth: Decimal | None = None,
    width: Decimal | None = None,
    height: Decimal | None = None,
    *,
    equipment_width: Decimal | None = None,
    equipment_height: Decimal | None = None,
    above: Decimal | None = None,
    ceiling_above: Decimal | None = None,
    handle: Decimal | None = None,
) -> tuple[Measure, ...]:
    """The measures in inches with what each needs, for equipment of at most 150 V to ground.

    >>> [one.short for one in working_space_measures(Decimal(34), Decimal(30), Decimal(78))[:3]]
    [Decimal('2'), Decimal('0'), Decimal('0')]
    """
    wide = max(WIDTH, equipment_width or Decimal(0))
    tall = max(HEIGHT, equipment_height or Decimal(0))
    clear = ABOVE if ceiling_above is None else min(ABOVE, ceiling_above)
    return (
        Measure("depth", "clear depth in front", depth, DEPTH, WORKING),
        Measure("width", "clear width", width, wide, WORKING),
        Measure("height", "clear height", height, tall, WORKING),
        Measure("above", "space above the panel free of pipes and ducts", above, clear, DEDICATED),
        Measure("handle", "height of the highest breaker handle", handle, HANDLES, HANDLE, at_most=True),
    )


def _length(what: str, how: str, example: str, highest: str = "240") -> Asked:
    return Asked(what, "[in_i]", lowest="0", highest=highest, least="0", most="1200", how=how, example=example)


@gauge(
    name="working-space",
    family="electrical",
    title="Working space at an electrical panel",
    unit="[in_i]",
    gives="by how much the measure that falls shortest does so; 0 where none of those given does",
    sources=(WORKING, DEDICATED, ROOMS, HANDLE, IRC),
    error="as good as the tape: half an inch; a measure at the limit is decided by the tape, not by this",
    never="that a panel can be worked on without danger, or that nothing else is wrong with its place",
    cautions=(
        "Do not move stored goods, reach past live parts or stand on a wet floor to take a measure.",
        "For equipment of at most 150 V to ground, as in a dwelling; more needs more depth.",
        "An existing dwelling with a service of at most 200 A may be excepted from the headroom.",
    ),
    example={"depth": "34in", "width": "30in", "height": "78in"},
)
def working_space(
    depth: Annotated[
        Quantity | None,
        _length("clear depth in front", "from the front of the enclosure straight out to the first thing", "36in"),
    ] = None,
    width: Annotated[
        Quantity | None,
        _length("clear width", "across the front; the panel need not stand in its middle", "30in"),
    ] = None,
    height: Annotated[
        Quantity | None,
        _length("clear height", "from the floor to the first thing above the working space", "6ft 6in"),
    ] = None,
    *,
    equipment_width: Annotated[Quantity | None, _length("width of the equipment", "of its enclosure", "14in")] = None,
    equipment_height: Annotated[
        Quantity | None, _length("height of the top of the equipment above the floor", "to the top edge", "6ft")
    ] = None,
    above: Annotated[
        Quantity | None,
        _length("height above the panel to the first pipe, duct or other foreign thing", "from its top edge up", "3ft"),
    ] = None,
    ceiling_above: Annotated[
        Quantity | None,
        _length(
            "height above the panel to the structural ceiling", "from its top edge up; a dropped ceiling is none", "3ft"
        ),
    ] = None,
    handle: Annotated[
        Quantity | None,
        _length("height of the highest breaker handle above the floor", "to the middle of the grip, thrown up", "6ft"),
    ] = None,
    door_angle: Annotated[
        Quantity | None,
        Asked(
            "angle to which the panel's door opens",
            "deg",
            lowest="0",
            highest="180",
            least="0",
            most="360",
            how="by eye or with a square, until something stops it",
            example="90deg",
        ),
    ] = None,
    room: Annotated[
        Literal["bathroom", "toilet room", "clothes closet", "over stair steps", "other"] | None,
        Asked("what room it stands in, or over stair steps"),
    ] = None,
    edition: Annotated[int | None, EDITION] = None,
    built: Annotated[int | None, BUILT] = None,
    adopted: Annotated[int | None, ADOPTED] = None,
) -> Answer:
    """Each measure of the working space at a panel, and by how much any falls short.

    Rule:
        depth at least 36 in from the front; width at least 30 in or that of the equipment; height at least 6 ft 6 in
        or that of the equipment; the door opens 90 degrees; the width and depth of the panel free above it for 6 ft
        or to the structural ceiling; not in bathrooms, toilet rooms or clothes closets, nor over stair steps; the
        highest handle at most 6 ft 7 in above the floor.

    Traps: the space is not centred on the panel; a water heater in front counts, what can be carried away does too.

    >>> from witnessmark.units import parse_quantity as q
    >>> working_space(q("34in"), q("30in"), q("78in")).value
    Decimal('2')
    """
    inches = {
        name: None if one is None else one.value
        for name, one in (
            ("depth", depth), ("width", width), ("height", height), ("equipment_width", equipment_width),
            ("equipment_height", equipment_height), ("above", above), ("ceiling_above", ceiling_above), ("handle", handle),
        )
    }  # fmt: skip
    measures = working_space_measures(**inches)
    faults = [
        f"{one.words} {feet(one.found or Decimal(0))}, {'at most' if one.at_most else 'at least'} {feet(one.needed)} needed"
        for one in measures
        if one.short
    ]
    if door_angle is not None and door_angle.value < RIGHT_ANGLE:
        faults.append(f"the door opens {door_angle.value.normalize():f} degrees, 90 needed")
    if room in FORBIDDEN:
        faults.append(
            f"it stands {'' if room.startswith('over') else 'in a '}{room}, where overcurrent devices have no place"
        )
    missing = [one.name for one in measures if one.found is None]
    missing += [name for name, one in (("door_angle", door_angle), ("room", room)) if one is None]
    force = in_force(edition, built, adopted)
    shorts = [one.short for one in measures if one.short is not None]
    cautions = [f"Not measured: {', '.join(missing)}."] if missing else []
    if any(one < SURE_FROM for one in force.possible):
        cautions.append("Editions before 1996 asked for less in part (depth and headroom); their text was not read.")
    return Answer(
        value=rounded(float(max(shorts))) if shorts else None,
        unit="[in_i]" if shorts else "",
        words=_words(faults, taken=len(missing) < len(measures) + 2),
        also=(
            Also(
                "short", "what falls short", ", ".join(one.name for one in measures if one.short) or "nothing measured"
            ),
            Also("faults", "how many of the points given fall short", Decimal(len(faults))),
            Also(
                "place_excluded", "whether the room is one where overcurrent devices have no place", room in FORBIDDEN
            ),
            Also("not_measured", "what was not measured", ", ".join(missing) or "nothing"),
        ),
        verdict=_verdict(force.possible, faults, missing),
        cautions=(*cautions, *(force.cautions if force.possible else ())),
        table=Table(
            (("measure", ""), ("found", "[in_i]"), ("needed", "[in_i]"), ("short by", "[in_i]")),
            tuple(
                (
                    one.words,
                    "not measured" if one.found is None else one.found,
                    one.needed,
                    "" if one.short is None else one.short,
                )
                for one in measures
            ),
        ),
    )


def _words(faults: list[str], *, taken: bool) -> str:
    if not taken:
        return "Nothing was measured, so nothing can be said."
    if not faults:
        return "None of the measures given falls short."
    told = "; ".join(faults)
    return f"{told[:1].upper()}{told[1:]}."


def _verdict(possible: tuple[int, ...], faults: list[str], missing: list[str]) -> Verdict | None:
    if not possible:
        return None
    if faults and all(one >= SURE_FROM for one in possible):
        return Verdict("beyond", "It falls short of what was asked for then.", WORKING)
    if faults:
        return Verdict(
            "undecided", "It falls short of the figures of today; older editions asked for less in part.", WORKING
        )
    if missing:
        return Verdict("undecided", "What was measured is enough; the rest was not measured.", WORKING)
    return Verdict("within", "Nothing measured falls short of what was asked for then.", WORKING)
