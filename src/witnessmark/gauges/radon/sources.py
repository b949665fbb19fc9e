"""Where the rules for measuring radon in homes are published."""

from __future__ import annotations

from witnessmark.gauges.answer import Source

__all__ = [
    "BLANKS",
    "CITIZENS_GUIDE",
    "CURIE",
    "DEVICE_PROTOCOL",
    "EPA_HOMES",
    "EPA_HOMES_RECALLED",
    "EQUILIBRIUM",
    "ILLINOIS",
    "ILLINOIS_DUPLICATES",
    "ILLINOIS_SALE",
    "LARGE_BUILDINGS",
    "MAH_ACTION",
    "MAH_CLOSED",
    "MAH_DISAGREE",
    "MAH_MITIGATED",
    "MAH_MONITORS",
    "MAH_REPORTS",
    "MAH_WEATHER",
    "NOT_ONE_READING",
    "OHIO",
    "QA_DUPLICATES",
    "QA_SPIKES",
    "TWICE_RULE",
    "WHO",
]  # fmt: skip

_MAH = "ANSI/AARST MAH, Protocol for Conducting Measurements of Radon and Radon Decay Products in Homes"
_QA = "ANSI/AARST MS-QA, Radon Measurement Systems Quality Assurance"
_HOMES = "EPA, Protocols for Radon and Radon Decay Product Measurements in Homes, EPA 402-R-92-003"
_DEVICES = "EPA, Indoor Radon and Radon Decay Product Measurement Device Protocols, EPA 402-R-92-004"
MAH_WEATHER = Source(_MAH, "2019", "2.2.3", "seen")
MAH_CLOSED = Source(_MAH, "2019", "6.1.2", "seen")
MAH_ACTION = Source(_MAH, "2019", "7.1", "seen")
MAH_DISAGREE = Source(_MAH, "2019", "7.2.1", "seen")
MAH_MITIGATED = Source(_MAH, "2019", "7.3.2", "seen")
MAH_REPORTS = Source(_MAH, "2019", "8.5.2", "seen")
MAH_MONITORS = Source(_MAH, "2019", "8.5.3", "seen")
QA_DUPLICATES = Source(_QA, "2019", "3.5.1, 3.5.2 and Table 7.1", "seen")
QA_SPIKES = Source(_QA, "2019", "5.3.2 and 5.3.3", "seen")
DEVICE_PROTOCOL = Source(_DEVICES, "1992", "2.1: 44 contiguous hours after the first 4", "memory")
EPA_HOMES = Source(_HOMES, "1993", "closed-building conditions", "seen in a copy")
EPA_HOMES_RECALLED = Source(_HOMES, "1993", "2.2 measurement location", "memory")
TWICE_RULE = Source(_HOMES, "1993", "3.2: higher more than twice the lower, repeat", "memory")
BLANKS = Source(_DEVICES, "1992", "field control blanks", "seen in a copy")
CITIZENS_GUIDE = Source("EPA, A Citizen's Guide to Radon, EPA 402/K-12/002", "2016", "action level", "seen in a copy")
WHO = Source("WHO Handbook on Indoor Radon", "2009", "reference level 100 Bq/m3", "seen in a copy")
ILLINOIS = Source("32 Illinois Administrative Code 422.130", "", "(a)(1) and (b)", "seen")
ILLINOIS_SALE = Source("32 Illinois Administrative Code 422, Appendix B", "", "options", "seen")
ILLINOIS_DUPLICATES = Source(
    "32 Illinois Administrative Code 422.130", "", "(c) duplicates 4 to 5 in apart", "seen in a copy"
)
OHIO = Source("Ohio Administrative Code 3701-69-07, Appendix A", "2012", "A.1", "seen in a copy")
LARGE_BUILDINGS = Source(
    "ANSI/AARST MALB, measurements in schools and large buildings", "2014", "65 to 80 °F", "seen in a copy"
)
EQUILIBRIUM = Source("definition of the working level: 100 pCi/L in equilibrium is 1 WL", "", "", "calculated")
CURIE = Source("NIST Special Publication 811", "2008", "1 Ci = 3.7E10 Bq, exact", "seen in a copy")

NOT_ONE_READING = (
    "Radon swings with the hour, the weather and the season: a short test tells of those days, not of the year.",
    "Radon is measured, and houses are fixed, by those whom the state licenses or certifies where it asks for that.",
)
