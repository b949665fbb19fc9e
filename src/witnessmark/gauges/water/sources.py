"""The documents that the water gauges cite, each with how sure the project is of its text."""

from __future__ import annotations

from witnessmark.gauges.answer import Basis, Source

__all__ = [
    "BURNS_1947", "CPSC_5098", "DRAW_PATTERNS", "FIRST_HOUR", "FIXTURE_UNITS", "HAZEN_WILLIAMS", "IPC_DEMAND", "JOUKOWSKY",
    "KELL", "NC_DEFINITIONS", "NC_PLUMBING", "NSPC_DEMAND", "OUTLET_DEVICES", "PRACTICE", "SCALD_LEAFLET", "TEXAS_2009",
    "TEXAS_2022", "WISCONSIN", "code", "of_edition",
]  # fmt: skip

_NAMES = {
    "IRC": "International Residential Code",
    "IPC": "International Plumbing Code",
    "UPC": "Uniform Plumbing Code",
}


def code(short: str, edition: int | str, place: str, basis: Basis) -> Source:
    """A model code by its short name, as a source.

    >>> str(code("UPC", 2018, "608.2", "seen in a copy"))
    'Uniform Plumbing Code, 2018, 608.2 (read in a copy: check the text)'
    """
    return Source(_NAMES[short], str(edition), place, basis)


def of_edition(short: str, edition: int, place: str, *read: int) -> Source:
    """A model code in one edition: seen in a copy where that edition is among those *read*, recalled for the others.

    >>> of_edition("UPC", 2018, "608.2", 2015).basis
    'memory'
    """
    return code(short, edition, place, "seen in a copy" if edition in read else "memory")


PRACTICE = Source("common practice", "", "", "common practice, no source")
TEXAS_2022 = Source(
    "Texas Administrative Code, Title 22", "in force 1 February 2022", "section 535.231(a)(1)", "seen in a copy"
)
TEXAS_2009 = Source("Texas Administrative Code, Title 22", "text of 2009", "section 535.231", "memory")
NC_PLUMBING = Source(
    "North Carolina Administrative Code, Title 11", "current to 16 September 2024", "08 .1109", "seen in a copy"
)
NC_DEFINITIONS = Source(
    "North Carolina Administrative Code, Title 11", "1 October 2014", "08 .1101(10)", "seen in a copy"
)
WISCONSIN = Source("Wisconsin Administrative Code", "Register June 2023", "SPS 131.32(6)", "seen")
CPSC_5098 = Source(
    "U.S. Consumer Product Safety Commission, Avoiding Tap Water Scalds", "Publication 5098", "", "seen in a copy"
)
BURNS_1947 = Source(
    "Moritz and Henriques, Studies of Thermal Injury II, American Journal of Pathology 23:695", "1947", "", "memory"
)
OUTLET_DEVICES = Source(
    "exposure times printed with ASTM F444 and ASSE 1016 devices for bathing outlets", "1988", "table", "seen in a copy"
)
SCALD_LEAFLET = Source("a children's hospital's leaflet on scalds", "", "table", "seen in a copy")
HAZEN_WILLIAMS = Source("Hazen and Williams, Hydraulic Tables", "1905", "NFPA 13 form, constant 4.52", "seen in a copy")
JOUKOWSKY = Source(
    "Joukowsky 1898; Korteweg 1878", "as in handbooks of hydraulics", "pressure rise and wave speed", "memory"
)
KELL = Source("Kell, Journal of Chemical and Engineering Data 20:97", "1975", "density of water, 0 to 150 °C", "memory")
FIRST_HOUR = Source("10 CFR part 430, subpart B, Appendix E", "2014 and later", "first-hour rating", "memory")
DRAW_PATTERNS = Source(
    "16 CFR part 305, Appendix D; 10 CFR part 430, Appendix E", "2016", "usage bins", "seen in a copy"
)
FIXTURE_UNITS = code("IPC", 2018, "Table E103.3(2)", "seen in a copy")
IPC_DEMAND = code("IPC", 2021, "Table E103.3(3)", "seen in a copy")
NSPC_DEMAND = Source("National Standard Plumbing Code", "as adopted in New Jersey", "Table B.5.4", "seen in a copy")
