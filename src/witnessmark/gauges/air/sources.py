"""Where the formulas and limits of air, surfaces and mould are published."""

from __future__ import annotations

from typing import TypeAlias

from witnessmark.gauges.answer import Source

__all__ = [
    "ADDENDUM_E", "BRE", "DIN_4108", "HANDBOOK_AIR", "HUKKA", "INSTRUMENT_GUIDE", "ISO_10211", "ISO_13788",
    "ISO_13788_CLASSES", "OJANEN", "STANDARD_AIR", "Coefficients",
]  # fmt: skip

#: Seven coefficients of the Hyland-Wexler equation.
Coefficients: TypeAlias = tuple[float, float, float, float, float, float, float]

HANDBOOK_AIR = Source("ASHRAE Handbook of Fundamentals", "2021", "chapter 1, Psychrometrics", "calculated")
STANDARD_AIR = Source("ASHRAE Handbook of Fundamentals", "2021", "chapter 1, standard atmosphere", "memory")
INSTRUMENT_GUIDE = Source("WMO No. 8, Guide to Instruments and Methods of Observation", "2018", "annex 4.B", "memory")
ISO_13788 = Source("ISO 13788", "2012", "surface temperature and humidity; annex E", "seen in a copy")
ISO_13788_CLASSES = Source("ISO 13788", "2012", "annex A, humidity classes", "memory")
ISO_10211 = Source("ISO 10211", "2017", "temperature factor at the internal surface", "memory")
DIN_4108 = Source("DIN 4108-2", "2013", "minimum temperature factor 0.70", "seen in a copy")
BRE = Source("BRE Information Paper IP 1/06", "2006", "critical temperature factors", "memory")
HUKKA = Source(
    "Hukka and Viitanen, A mathematical model of mould growth on wooden material, Wood Science and Technology 33",
    "1999", "pages 475 to 485", "memory",
)  # fmt: skip
OJANEN = Source(
    "Ojanen et al., Mold growth modeling of building structures using sensitivity classes of materials", "2010",
    "sensitivity classes, k1, A, B, C", "seen in a copy",
)  # fmt: skip
ADDENDUM_E = Source("ANSI/ASHRAE Standard 160", "2016 with addendum e", "mould index of 3 as the limit", "memory")
