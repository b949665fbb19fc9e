"""How many of a component the law of a place asks to be looked at: counted by room, by side, each one, or a sample."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from witnessmark.gauges.answer import Source

__all__ = ["COMPONENTS", "JURISDICTIONS", "RULES", "Count", "Rule"]

Count = Literal["per room", "per side", "each", "sample"]

#: Components as the laws name them.
COMPONENTS = (
    "receptacles", "receptacles near water, in garage and outside", "switches", "light fixtures", "ceiling fans",
    "windows", "windows outside", "interior doors", "entry doors", "garage doors", "cabinets", "plumbing fixtures",
)  # fmt: skip
JURISDICTIONS = ("Florida", "Kansas", "New York", "North Carolina", "Texas", "Washington", "Wisconsin")


@dataclass(frozen=True, slots=True)
class Rule:
    """One law's rule for one component: how it counts, what it asks in our words, where it stands."""

    count: Count
    asks: str
    source: Source
    note: str = ""


def _law(document: str, place: str, basis: Literal["seen", "seen in a copy", "memory"], edition: str = "") -> Source:
    return Source(document, edition, place, basis)


_WI = "Wisconsin Administrative Code, SPS 131.32"
_WI_SAMPLE = Rule(
    "sample",
    "the operation of a representative number inside the house, in the garage and on exterior walls; no number stated",
    _law(_WI, "(7)(a)6", "seen in a copy", "Register of September 2024"),
)
_WI_EACH = Rule(
    "each", "entry doors and garage doors are operated", _law(_WI, "(5)(b)", "seen", "Register of June 2023")
)
_FL_DEFINED = "Florida Administrative Code, 61-30.101, Representative Number"
_FL_ROOM = Rule(
    "per room",
    "where there are several, one in each room for components inside",
    _law(_FL_DEFINED, "with 61-30.801(3)", "seen in a copy", "as of 2013"),
)
_FL_SIDE = Rule(
    "per side",
    "where there are several, one on each side of the home for components outside",
    _law(_FL_DEFINED, "with 61-30.801(3)", "seen in a copy", "as of 2013"),
)
_KS = Source("Kansas standards under the former registration act", "", "definition of representative number", "memory")
_KS_ROOM = Rule(
    "per room",
    "for identical components inside, such as windows and receptacles, one in each room",
    _KS,
    "Read in a quotation only; the registration of home inspectors in Kansas is recalled to have lapsed in 2013.",
)
_NC = "North Carolina Administrative Code, Title 11, Chapter 08"
_NC_NOTE = (
    "The definition in .1101 was not read; it is recalled as one in each room inside and one on each side outside."
)
_NC_INSIDE = Rule(
    "sample",
    "a representative number is inspected, and of windows and interior doors operated",
    _law(_NC, ".1113(a), (b)", "seen", "amended 2007"),
    _NC_NOTE,
)
_NC_ELECTRIC = Rule(
    "sample",
    "the operation of a representative number inside the house, in the garage and on exterior walls",
    _law(_NC, ".1110(a)(5)", "seen"),
    _NC_NOTE,
)
_WA_ELECTRIC = Rule(
    "sample",
    "a representative number is verified; no number stated",
    _law("Washington Administrative Code, 308-408C-110", "(1)(e)", "seen in a copy", "2016"),
)
_WA_INSIDE = Rule(
    "sample",
    "a representative number of windows and doors; no number stated",
    _law("Washington Administrative Code, 308-408C-140", "(1)(b)", "seen in a copy", "2016"),
)
_NY_ELECTRIC = Rule(
    "sample",
    "a representative number; no number stated",
    _law("19 NYCRR 197-5.9", "(a)(6), (7)", "seen in a copy"),
)
_NY_INSIDE = Rule("sample", "a representative number; no number stated", _law("19 NYCRR 197-5.12", "", "memory"))

#: Jurisdiction and component: the rule. What is missing here was not read, which is not the same as not required.
RULES: dict[tuple[str, str], Rule] = {
    ("Florida", "receptacles"): _FL_ROOM,
    ("Florida", "switches"): _FL_ROOM,
    ("Florida", "light fixtures"): _FL_ROOM,
    ("Florida", "windows"): _FL_ROOM,
    ("Florida", "interior doors"): _FL_ROOM,
    ("Florida", "cabinets"): _FL_ROOM,
    ("Florida", "windows outside"): _FL_SIDE,
    ("Kansas", "receptacles"): _KS_ROOM,
    ("Kansas", "windows"): _KS_ROOM,
    ("New York", "receptacles"): _NY_ELECTRIC,
    ("New York", "switches"): _NY_ELECTRIC,
    ("New York", "light fixtures"): _NY_ELECTRIC,
    ("New York", "windows"): _NY_INSIDE,
    ("New York", "interior doors"): _NY_INSIDE,
    ("New York", "cabinets"): _NY_INSIDE,
    ("North Carolina", "receptacles"): _NC_ELECTRIC,
    ("North Carolina", "switches"): _NC_ELECTRIC,
    ("North Carolina", "light fixtures"): _NC_ELECTRIC,
    ("North Carolina", "ceiling fans"): _NC_ELECTRIC,
    ("North Carolina", "receptacles near water, in garage and outside"): Rule(
        "each",
        "all readily accessible 120 V receptacles within 6 ft of interior plumbing fixtures with no door between, in "
        "garage or carport, and on the exterior",
        _law(_NC, ".1110(a)(6)", "seen in a copy", "2018"),
    ),
    ("North Carolina", "windows"): _NC_INSIDE,
    ("North Carolina", "interior doors"): _NC_INSIDE,
    ("North Carolina", "cabinets"): _NC_INSIDE,
    ("North Carolina", "plumbing fixtures"): Rule(
        "each",
        "all plumbing fixtures and their faucets are operated, and exterior faucets on the house",
        _law(_NC, ".1109(c)", "seen in a copy", "Register of September 2024"),
    ),
    ("Texas", "plumbing fixtures"): Rule(
        "each",
        "the rule has no wording for a sample; what is inspected is listed outright",
        _law("22 Texas Administrative Code 535.231", "", "seen in a copy", "November 2024"),
    ),
    ("Washington", "receptacles"): _WA_ELECTRIC,
    ("Washington", "switches"): _WA_ELECTRIC,
    ("Washington", "light fixtures"): _WA_ELECTRIC,
    ("Washington", "windows"): _WA_INSIDE,
    ("Washington", "interior doors"): _WA_INSIDE,
    ("Wisconsin", "receptacles"): _WI_SAMPLE,
    ("Wisconsin", "switches"): _WI_SAMPLE,
    ("Wisconsin", "light fixtures"): _WI_SAMPLE,
    ("Wisconsin", "receptacles near water, in garage and outside"): Rule(
        "each",
        "polarity and grounding of all receptacles within 6 ft of plumbing fixtures, in the garage and outside",
        _law(_WI, "(7)(a)7", "memory", "Register of September 2024"),
        "The start of the text was read (all receptacles); the rest is recalled.",
    ),
    ("Wisconsin", "windows outside"): Rule(
        "per side",
        "at least one window on each side of a dwelling unit is observed and operated",
        _law(_WI, "(5)(a)3, (b)", "seen", "Register of June 2023"),
    ),
    ("Wisconsin", "entry doors"): _WI_EACH,
    ("Wisconsin", "garage doors"): _WI_EACH,
}
