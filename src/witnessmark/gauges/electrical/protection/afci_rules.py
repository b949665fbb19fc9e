"""Where dwellings need arc-fault protection, edition by edition, and of which type."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal
from typing import Literal

from witnessmark.gauges.electrical.protection.requirement import Asks, Found, Lacks, Lifted, Rule, picked

__all__ = ["Circuit", "Device", "Room", "Work", "afci_found", "type_accepted"]

Room = Literal[
    "bedroom", "family room", "dining room", "living room", "parlor", "library", "den", "sunroom", "recreation room",
    "closet", "hallway", "similar room", "kitchen", "laundry area", "bathroom", "garage", "outdoors",
    "unfinished basement", "attic", "crawl space",
]  # fmt: skip
Work = Literal["new circuit", "extension or change of a circuit", "receptacle replaced"]
Device = Literal["none", "branch/feeder type", "combination type", "outlet type"]

_LIVED_IN = frozenset(
    ("family room", "dining room", "living room", "parlor", "library", "den", "sunroom", "recreation room", "closet",
     "hallway", "similar room", "bedroom")
)  # fmt: skip
_LATER = frozenset(("kitchen", "laundry area"))
_COPY: Literal["seen in a copy"] = "seen in a copy"
_DISPUTED = (
    "one list dates kitchens to 1999 and living rooms to 2014; the text of the editions says bedrooms first, living "
    "rooms in 2008, kitchens in 2014"
)

BEDROOM_RECEPTACLES = Rule(
    1999, "210-12(b)", "receptacle outlets in bedrooms", _COPY, last=1999, binds_from=2002, disputed=_DISPUTED
)
BEDROOM_OUTLETS = Rule(2002, "210.12(B)", "all outlets in bedrooms, lights and smoke alarms too", _COPY, last=2005)
LIVED_IN = Rule(2008, "210.12(B)", "outlets in bedrooms, living rooms, halls, closets and similar rooms", _COPY)
KITCHENS = Rule(2014, "210.12(A)", "outlets and devices, kitchens and laundry areas too", _COPY, disputed=_DISPUTED)
EXTENDED = Rule(2011, "210.12(B)", "branch circuits changed, replaced or extended in the rooms listed", _COPY)
REPLACED = Rule(2011, "406.4(D)(4)", "receptacles replaced in the rooms listed", binds_from=2014)


@dataclass(frozen=True, slots=True)
class Circuit:
    """One branch circuit by the outlet it supplies; ``added`` is the length of an extension in inches."""

    room: Room
    outlet: Literal["receptacle", "lighting", "smoke alarm", "other outlet", "switch or other device"] = "receptacle"
    volts: Decimal = Decimal(120)
    amperes: Decimal = Decimal(15)
    work: Work = "new circuit"
    added: Decimal | None = None
    adds_outlets: bool | None = None


def _new(c: Circuit, edition: int, year: int | None) -> list[tuple[Rule, Asks]]:
    device = c.outlet == "switch or other device"
    covers = {
        BEDROOM_RECEPTACLES: c.room == "bedroom" and c.outlet == "receptacle",
        BEDROOM_OUTLETS: c.room == "bedroom" and not device,
        LIVED_IN: c.room in _LIVED_IN and not device,
        KITCHENS: c.room in _LIVED_IN | _LATER,
    }
    return [(rule, yes and rule.dated(edition, year)) for rule, yes in covers.items() if rule.holds(edition)]


def _extended(c: Circuit, edition: int) -> Asks:
    """The rule on extensions, with the exception of 2014: at most 6 ft, no outlet or device added."""
    if edition < 2014 or c.adds_outlets:  # noqa: PLR2004 - edition
        return True
    if c.added is not None and c.added > 72:  # noqa: PLR2004 - 6 ft
        return True
    if c.added is None or c.adds_outlets is None:
        return Lacks("the length added and whether an outlet or device was added")
    return Lifted("from the 2014 edition an extension of at most 6 ft without a new outlet or device is excepted")


def afci_found(circuit: Circuit, edition: int, year: int | None) -> Found:
    """What one edition says of one branch circuit; *year* of the work (None: not known).

    >>> light = Circuit("bedroom", "lighting")
    >>> afci_found(light, 1999, 2003).required, afci_found(light, 2002, None).required
    (False, True)
    """
    if circuit.volts > 130 or circuit.amperes > 20:  # noqa: PLR2004 - the scope of every edition
        return Found(required=False, why="every edition covers only 120 V circuits of at most 20 A")
    new = picked(_new(circuit, edition, year))
    if circuit.work == "new circuit" or not new.required:
        return new
    rule = EXTENDED if circuit.work.startswith("extension") else REPLACED
    if not rule.holds(edition):
        return Found(required=False, why=f"a {circuit.work.removesuffix(' of a circuit')} was not covered before 2011")
    asks = _extended(circuit, edition) if rule is EXTENDED else rule.dated(edition, year)
    return picked([(rule, asks)])


def type_accepted(device: Device, edition: int, year: int | None) -> bool | None:
    """Whether a type of arc-fault device was one that the edition takes; None: hangs on the year.

    Branch/feeder type: through the 2002 edition, and in the 2005 edition until 1 January 2008.

    >>> type_accepted("branch/feeder type", 2005, 2006), type_accepted("branch/feeder type", 2008, 2009)
    (True, False)
    """
    if device == "none":
        return False
    if device != "branch/feeder type" or edition < 2005:  # noqa: PLR2004 - edition
        return True
    if edition > 2005:  # noqa: PLR2004 - edition
        return False
    return None if year is None else year < 2008  # noqa: PLR2004 - the date inside the 2005 edition
