"""What named sources say of the life of parts of a house, in years, as they print it.

Long because the table is printed so: one line for each statement of each source, none merged and none left out.
"""

from __future__ import annotations

from dataclasses import dataclass

from witnessmark.gauges.answer import Source

__all__ = ["COMPONENTS", "LIVES", "PUBLISHED", "Life"]


@dataclass(frozen=True, slots=True)
class Life:
    """One statement: source key, shortest and longest life in years (None: no end given), climate, what it is about."""

    source: str
    low: float
    high: float | None
    climate: str = ""
    note: str = ""


#: Sources by key. Where a list is known from copies alone, so it is said; none of them states what share fails by when.
PUBLISHED = {
    "FM": Source(
        "Expected useful life tables of Fannie Mae and HUD for multifamily property",
        "1991 and later forms",
        "attachment A",
        "memory",
    ),
    "CNA": Source("Capital needs report that states it uses those tables", "2021", "lives of items", "seen in a copy"),
    "MS": Source(
        "Life guide of an appraisal cost service, grades low to excellent", "October 2012", "", "seen in a copy"
    ),
    "HB": Source("Builders' survey of lives of home components", "about 2007", "", "seen in a copy"),
    "SW": Source("List of lives for north and south", "1998", "", "seen in a copy"),
    "DOE": Source(
        "Technical support documents for appliance standards, U.S. Department of Energy",
        "2010s",
        "chapter 8, average lifetime",
        "memory",
    ),
}

LIVES: dict[str, tuple[Life, ...]] = {
    "asphalt shingle roof": (
        Life("FM", 20, 20),
        Life("CNA", 15, 15),
        Life("SW", 20, 20, "north"),
        Life("SW", 10, 10, "south"),
        Life("SW", 25, 25, "north", "fibreglass"),
        Life("SW", 15, 15, "south", "fibreglass"),
    ),
    "metal standing-seam roof": (
        Life("FM", 50, 50),
        Life("SW", 50, 50, "north"),
        Life("SW", 40, 40, "south"),
    ),
    "slate roof": (
        Life("FM", 50, None),
        Life("SW", 50, None, "north"),
        Life("SW", 25, 25, "south"),
    ),
    "clay tile roof": (
        Life("FM", 50, 50),
        Life("SW", 50, 50, "north"),
        Life("SW", 25, 25, "south"),
    ),
    "wood shingle roof": (
        Life("FM", 25, 25),
        Life("SW", 40, 40, "north"),
        Life("SW", 25, 25, "south"),
    ),
    "low-slope roof membrane": (Life("FM", 15, 20),),
    "gutters and downspouts": (
        Life("FM", 20, 20),
        Life("CNA", 15, 15),
    ),
    "vinyl siding": (Life("FM", 25, 25),),
    "fibre-cement siding": (
        Life("FM", 45, 45),
        Life("CNA", 30, 30),
    ),
    "cedar siding": (
        Life("FM", 20, 20),
        Life("SW", 50, 50, "north"),
        Life("SW", 20, 20, "south"),
    ),
    "plywood siding": (
        Life("FM", 20, 20),
        Life("SW", 20, 20, "north"),
        Life("SW", 20, 20, "south"),
    ),
    "brick veneer": (
        Life("FM", 50, None),
        Life("SW", 50, 50, "north"),
        Life("SW", 40, 40, "south"),
    ),
    "exterior paint": (
        Life("FM", 5, 10),
        Life("CNA", 12, 12),
    ),
    "exterior caulk": (
        Life("FM", 10, 10),
        Life("CNA", 10, 10),
    ),
    "vinyl window": (
        Life("FM", 30, 30),
        Life("CNA", 30, 30),
    ),
    "double-glazed window": (
        Life("SW", 30, 30, "", "good grade"),
        Life("SW", 15, 15, "north", "average grade"),
        Life("SW", 20, 20, "south", "average grade"),
    ),
    "exterior door": (
        Life("FM", 25, 30),
        Life("CNA", 30, 30),
        Life("HB", 100, None, "", "wood"),
        Life("HB", 20, 20, "", "vinyl"),
    ),
    "storm or screen door": (
        Life("FM", 10, 10),
        Life("CNA", 15, 15),
        Life("HB", 40, 40),
    ),
    "interior hollow-core door": (
        Life("FM", 15, 20),
        Life("CNA", 25, 25),
        Life("HB", 20, 30),
        Life("SW", 20, 20),
    ),
    "interior solid-core door": (
        Life("FM", 25, 50),
        Life("HB", 30, 100),
        Life("SW", 40, 40),
    ),
    "gas furnace": (
        Life("FM", 20, 20),
        Life("HB", 15, 25),
        Life("SW", 20, 20, "north"),
        Life("SW", 10, 20, "south"),
        Life("DOE", 21.5, 21.5, "", "non-weatherised"),
    ),
    "boiler": (
        Life("FM", 22, 30),
        Life("HB", 20, 35),
        Life("SW", 30, 30, "", "iron"),
        Life("SW", 20, 20, "", "steel"),
        Life("DOE", 25, 27, "", "gas"),
    ),
    "heat pump": (
        Life("FM", 15, 15),
        Life("HB", 16, 16),
        Life("SW", 12, 12, "north", "compressor"),
        Life("SW", 10, 15, "south", "compressor"),
        Life("DOE", 15, 15),
    ),
    "central air conditioner": (
        Life("FM", 15, 15),
        Life("HB", 8, 15),
        Life("SW", 15, 15, "north"),
        Life("SW", 10, 15, "south"),
        Life("DOE", 18, 21),
    ),
    "room air conditioner": (Life("DOE", 9, 10.5),),
    "electric baseboard": (
        Life("FM", 25, 25),
        Life("CNA", 20, 20),
    ),
    "storage water heater": (
        Life("FM", 10, 12),
        Life("CNA", 15, 15),
        Life("MS", 3, 12, "", "grades low 3, average 5, good 7, excellent 12"),
        Life("HB", 10, 11),
        Life("SW", 15, 15, "north", "electric"),
        Life("SW", 15, 15, "south", "electric"),
        Life("SW", 25, 25, "north", "gas or oil"),
        Life("SW", 15, 15, "south", "gas or oil"),
        Life("DOE", 14, 15, "", "an older rule gives 13"),
    ),
    "tankless gas water heater": (Life("DOE", 20, 20),),
    "copper water pipe": (
        Life("FM", 50, 75),
        Life("CNA", 35, 35, "", "re-piping"),
        Life("MS", 12, 33, "", "fixtures with pipe, grades 12, 17, 24, 33"),
    ),
    "well pump": (
        Life("FM", 15, 15),
        Life("MS", 8, 15, "", "with sump pumps, grades 8, 10, 12, 15"),
        Life("SW", 25, 25, "north", "submersible"),
        Life("SW", 15, 15, "south", "submersible"),
    ),
    "faucets and valves": (
        Life("FM", 10, 15),
        Life("CNA", 25, 25, "", "sink with faucet"),
        Life("MS", 8, 16, "", "grades 8, 10, 13, 16"),
        Life("HB", 15, 20),
    ),
    "toilet": (
        Life("FM", 40, 40),
        Life("CNA", 25, 25),
        Life("MS", 17, 30, "", "fixtures, grades 17, 20, 25, 30"),
        Life("HB", 100, None),
    ),
    "tub or shower": (
        Life("FM", 30, 40),
        Life("CNA", 25, 25),
        Life("MS", 10, 20, "", "fibreglass, grades 10, 13, 16, 20"),
        Life("HB", 50, 50, "", "enclosure"),
    ),
    "electrical panel": (
        Life("FM", 40, None),
        Life("CNA", 40, 40),
    ),
    "GFCI receptacle": (
        Life("FM", 15, 15),
        Life("CNA", 15, 15),
    ),
    "interior light fixture": (
        Life("FM", 20, 20),
        Life("CNA", 25, 25),
    ),
    "exterior light fixture": (
        Life("FM", 20, 20),
        Life("CNA", 20, 20),
    ),
    "smoke alarm": (
        Life("FM", 10, 10, "", "NFPA 72: replace at ten years"),
        Life("CNA", 12, 12),
    ),
    "bath exhaust fan": (
        Life("FM", 15, 15),
        Life("CNA", 25, 25),
        Life("HB", 10, 10),
    ),
    "kitchen exhaust fan": (
        Life("FM", 15, 15),
        Life("CNA", 20, 20),
        Life("HB", 14, 14, "", "hood"),
    ),
    "ceiling fan": (Life("DOE", 14, 14),),
    "refrigerator": (
        Life("FM", 12, 15),
        Life("CNA", 15, 15),
        Life("HB", 9, 13),
        Life("SW", 15, 15, "", "average grade"),
        Life("SW", 20, 20, "", "high grade"),
        Life("DOE", 15, 17),
    ),
    "freezer": (Life("DOE", 22, 22),),
    "range": (
        Life("FM", 15, 25),
        Life("CNA", 15, 15),
        Life("HB", 13, 15, "", "electric"),
        Life("HB", 15, 17, "", "gas"),
        Life("SW", 15, 15, "", "average grade"),
        Life("SW", 20, 20, "", "high grade"),
        Life("DOE", 16, 16, "", "electric"),
        Life("DOE", 13, 13, "", "gas"),
    ),
    "dishwasher": (
        Life("FM", 10, 10),
        Life("HB", 9, 9),
        Life("SW", 15, 15, "", "average grade"),
        Life("SW", 20, 20, "", "high grade"),
        Life("DOE", 15, 15),
    ),
    "microwave oven": (Life("DOE", 9, 11),),
    "disposer": (
        Life("FM", 5, 7),
        Life("CNA", 20, 20),
        Life("HB", 12, 12),
    ),
    "clothes washer": (
        Life("FM", 10, 12),
        Life("HB", 5, 15),
        Life("SW", 15, 15, "", "average grade"),
        Life("SW", 20, 20, "", "high grade"),
        Life("DOE", 14, 14),
    ),
    "clothes dryer": (
        Life("FM", 10, 12),
        Life("HB", 13, 13),
        Life("SW", 15, 15, "", "average grade"),
        Life("SW", 20, 20, "", "high grade"),
        Life("DOE", 13, 14),
    ),
    "dehumidifier": (Life("DOE", 10, 11),),
    "kitchen cabinets": (
        Life("FM", 20, 20),
        Life("CNA", 25, 25),
        Life("HB", 50, 50),
    ),
    "laminate countertop": (
        Life("FM", 10, 20),
        Life("CNA", 15, 15),
        Life("HB", 20, 30),
    ),
    "carpet": (
        Life("FM", 7, 7),
        Life("CNA", 12, 12),
        Life("HB", 8, 10),
    ),
    "resilient flooring": (
        Life("FM", 15, 15),
        Life("CNA", 15, 15),
        Life("HB", 25, 25, "", "vinyl"),
    ),
    "interior paint": (
        Life("FM", 8, 10),
        Life("CNA", 10, 10),
    ),
    "concrete walk": (
        Life("FM", 50, 50),
        Life("CNA", 45, 45),
        Life("MS", 15, 25, "", "curbing, grades 15, 19, 21, 25"),
        Life("HB", 50, None, "", "floor"),
    ),
    "asphalt seal coat": (
        Life("FM", 5, 5),
        Life("CNA", 8, 8),
    ),
    "wood deck": (Life("FM", 15, 20),),
    "wood fence": (
        Life("FM", 15, 20),
        Life("MS", 6, 12, "", "grades 6, 8, 10, 12"),
    ),
    "chain-link fence": (Life("MS", 13, 20, "", "grades 13, 15, 17, 20"),),
    "vinyl fence": (Life("MS", 12, 18, "", "grades 12, 14, 16, 18"),),
    "septic system": (
        Life("SW", 25, 25, "north"),
        Life("SW", 15, 15, "south"),
    ),
    "poured foundation": (
        Life("FM", 50, None),
        Life("SW", 100, 100),
    ),
    "block foundation": (
        Life("FM", 50, None),
        Life("SW", 50, 50),
    ),
}
#: Names of the parts, in the order of a house from the roof down.
COMPONENTS = tuple(LIVES)
