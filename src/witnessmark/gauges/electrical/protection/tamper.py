"""Whether a receptacle had to be tamper-resistant when it was built, and whether today's model code asks for it."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal
from typing import Annotated, Literal

from witnessmark.gauges.answer import Answer
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.electrical.editions import ADOPTED, BUILT, EDITION, in_force, nec
from witnessmark.gauges.electrical.protection.requirement import Asks, Found, Lacks, Lifted, Rule, judged, picked
from witnessmark.gauges.gauge import gauge
from witnessmark.units import Quantity

__all__ = ["Receptacle", "tamper_found", "tamper_resistant_required"]

Area = Literal[
    "wall of a room", "kitchen or dining", "counter", "bathroom", "outdoors", "laundry area", "basement", "garage",
    "accessory building", "hallway", "foyer", "attic or crawl space",
]  # fmt: skip
FIRST = Rule(2008, "406.11", "125 V, 15 and 20 A receptacles in the dwelling areas of 210.52", "seen in a copy")
EXCEPTED = Rule(2011, "406.12", "as before, with exceptions", "seen in a copy")
WIDER = Rule(2017, "406.12", "250 V receptacles too", "seen in a copy")
ALL_DWELLING = Rule(2020, "406.12(1)", "the whole dwelling with its garages and accessory buildings")
TOO_HIGH = Decimal(66)


@dataclass(frozen=True, slots=True)
class Receptacle:
    """One receptacle as found; ``height`` above the floor in inches."""

    area: Area
    height: Decimal | None = None
    dedicated: bool = False
    built_in: bool = False
    two_slot_replacement: bool = False
    locking: bool = False
    volts: Decimal = Decimal(120)
    amperes: Decimal = Decimal(20)


def _lifted(r: Receptacle) -> Asks:
    """The exceptions of 2011 and after; a height is only lacking where nothing else lifts the rule."""
    if r.dedicated:
        return Lifted("a receptacle in the dedicated space of an appliance that is not easily moved is excepted")
    if r.built_in:
        return Lifted("a receptacle that is part of a luminaire or appliance is excepted")
    if r.two_slot_replacement:
        return Lifted("a two-slot receptacle that replaces another where there is no ground is excepted")
    if r.height is None:
        return Lacks("the height above the floor: more than 5 1/2 ft is excepted from the 2011 edition on")
    if r.height > TOO_HIGH:
        return Lifted("a receptacle more than 5 1/2 ft above the floor is excepted")
    return True


def tamper_found(receptacle: Receptacle, edition: int) -> Found:
    """What one edition says of one receptacle. Exactly 5 1/2 ft is not more than 5 1/2 ft.

    >>> tamper_found(Receptacle("wall of a room", Decimal(18)), 2005).required
    False
    >>> tamper_found(Receptacle("kitchen or dining", dedicated=True), 2008).required
    True
    """
    r = receptacle
    if r.amperes > 20 or r.volts > 250:  # noqa: PLR2004 - the rule's own figures
        return Found(required=False, why="only 15 and 20 A receptacles of 125 or 250 V are covered")
    if not FIRST.holds(edition):
        return Found(required=False)
    if r.volts > 130 and not WIDER.holds(edition):  # noqa: PLR2004 - 125 V
        return Found(required=False, why="250 V receptacles are covered from the 2017 edition on")
    if r.area == "attic or crawl space" and not ALL_DWELLING.holds(edition):
        return Found(required=False, why="this place is none of the areas of 210.52")
    if not EXCEPTED.holds(edition):
        return Found(required=True, rule=FIRST)
    if r.locking:
        return Found(required=False, why="locking types are not covered from the 2011 edition on")
    rule = ALL_DWELLING if r.area == "attic or crawl space" else WIDER if r.volts > 130 else EXCEPTED  # noqa: PLR2004 - 125 V
    return picked([(rule, _lifted(r))])


@gauge(
    name="tamper-resistant-required",
    family="electrical",
    title="Tamper-resistant receptacle: required here when built, and today",
    gives="whether the edition in force asked for a tamper-resistant receptacle, the first edition that does, and today's",
    sources=(nec("2008 to 2026", "406.12 (2008: 406.11), 406.4(D)(5)", "seen in a copy"),),
    error="none where the edition is known; from the 2020 edition on the scope is recalled",
    never="that a receptacle keeps a child from harm, or that a plain one breaks the law of the place",
    cautions=("Look for the letters TR on the face of the receptacle; do not try the shutters with an object.",),
    example={"area": "wall of a room", "height": "18in", "edition": "2008"},
)
def tamper_resistant_required(
    area: Annotated[Area, Asked("where the receptacle is")],
    *,
    height: Annotated[
        Quantity | None,
        Asked(
            "height of the receptacle above the floor",
            "[in_i]",
            least="0",
            most="600",
            how="to its centre",
            example="18in",
        ),
    ] = None,
    dedicated: Annotated[
        bool, Asked("whether it stands in the dedicated space of an appliance that is not easily moved")
    ] = False,
    built_in: Annotated[bool, Asked("whether it is part of a luminaire or an appliance")] = False,
    two_slot_replacement: Annotated[
        bool, Asked("whether it is a two-slot receptacle that replaced another where there is no ground")
    ] = False,
    locking: Annotated[bool, Asked("whether it is a locking type")] = False,
    voltage: Annotated[
        Quantity | None,
        Asked(
            "voltage of the receptacle; 120 V unless given",
            "V",
            lowest="100",
            highest="250",
            least="0",
            most="1000",
            how="from its shape",
            example="120V",
        ),
    ] = None,
    amperes: Annotated[
        Quantity | None,
        Asked(
            "rating of the receptacle; 20 A unless given",
            "A",
            lowest="10",
            highest="60",
            least="0",
            most="1000",
            how="from its face",
            example="20A",
        ),
    ] = None,
    found: Annotated[bool | None, Asked("whether it is marked tamper-resistant", example="yes")] = None,
    edition: Annotated[int | None, EDITION] = None,
    built: Annotated[int | None, BUILT] = None,
    adopted: Annotated[int | None, ADOPTED] = None,
) -> Answer:
    """Whether the edition in force asked for a tamper-resistant receptacle at this place of a dwelling.

    Rule:
        2008: all 125 V, 15 and 20 A receptacles in the areas of 210.52, without exception. 2011: not those above
        5 1/2 ft, in a luminaire or appliance, in the dedicated space of an appliance, or two-slot replacements.
        2017: 250 V receptacles too. 2020: the whole dwelling, garages and accessory buildings named.

    Traps: the space behind a refrigerator was not excepted in 2008.

    >>> from witnessmark.units import parse_quantity as q
    >>> tamper_resistant_required("wall of a room", height=q("18in"), edition=2008)["required"]
    True
    """
    seen = Receptacle(
        area,
        None if height is None else height.value,
        dedicated,
        built_in,
        two_slot_replacement,
        locking,
        Decimal(120) if voltage is None else voltage.value,
        Decimal(20) if amperes is None else amperes.value,
    )
    force = in_force(edition, built, adopted)
    return judged("a tamper-resistant receptacle", lambda one, _: tamper_found(seen, one), force, present=found)
