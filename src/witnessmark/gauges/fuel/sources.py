"""Where the rules of fuel, combustion and moving air are published, and how each was read."""

from __future__ import annotations

from witnessmark.gauges.answer import Source

__all__ = [
    "AIRFLOW_METHOD",
    "AIR_FREE",
    "ALARM_STANDARD",
    "AMBIENT_AIR",
    "COMMON",
    "ENTHALPY",
    "FIELD_BANDS",
    "FURNACE_PRACTICE",
    "FURNACE_STANDARD",
    "HEATER_STANDARD",
    "HOOD",
    "IRC_DRYER",
    "IRC_EXHAUST",
    "IRC_VENTILATION",
    "OPENINGS",
    "PIPE_EQUATIONS",
    "PIPE_TABLES",
    "RANGE_ROOM",
    "RANGE_STANDARD",
    "SPITZGLASS",
    "TRADE_SCALE",
    "UMC_DRYER",
    "VENTILATION_2010",
    "VENTILATION_2013",
    "VENT_CONNECTOR",
    "VENT_HEIGHT",
    "VOLUME",
    "WORKPLACE_NIOSH",
    "WORKPLACE_OSHA",
]  # fmt: skip

VOLUME = Source(
    "International Fuel Gas Code; NFPA 54", "2018", "304.5.1 and 304.5.2; 9.3.2.1 and 9.3.2.2", "seen in a copy"
)
OPENINGS = Source(
    "International Fuel Gas Code; NFPA 54", "2018", "304.5.3, 304.6, 304.7; 9.3.2.3, 9.3.3, 9.3.4", "seen in a copy"
)
VENT_CONNECTOR = Source(
    "International Fuel Gas Code", "2018", "503.10.8 and 503.10.9 (International Residential Code G2427.10)", "memory"
)
VENT_HEIGHT = Source("International Residential Code", "2018", "Figure G2427.6.4", "seen in a copy")

AMBIENT_AIR = Source(
    "National Ambient Air Quality Standards, 40 CFR 50.8", "", "carbon monoxide, outdoor air", "seen in a copy"
)
ALARM_STANDARD = Source("UL 2034", "", "carbon monoxide alarm response", "seen in a copy")
WORKPLACE_OSHA = Source("29 CFR 1910.1000", "", "Table Z-1, 8-hour average at work", "seen in a copy")
WORKPLACE_NIOSH = Source(
    "NIOSH recommended exposure limit", "", "carbon monoxide, 8-hour average at work", "seen in a copy"
)
FIELD_BANDS = Source("ANSI/BPI-1200-S", "2017", "carbon monoxide action levels and appliance limits", "memory")
TRADE_SCALE = Source("Scale used in the heating trade", "", "a contractor's page; no standard", "seen in a copy")
FURNACE_STANDARD = Source("ANSI Z21.47", "1998", "combustion, air-free sample", "seen in a copy")
FURNACE_PRACTICE = Source("Good practice of the heating trade", "", "below 100 ppm air-free", "seen in a copy")
RANGE_STANDARD = Source("ANSI Z21.1", "", "oven and top burners, air-free sample", "seen in a copy")
HEATER_STANDARD = Source("ANSI Z21.11.2", "", "unvented room heater, air-free sample", "seen in a copy")
RANGE_ROOM = Source("Levels near kitchen stoves, EPA text on carbon monoxide", "", "", "seen in a copy")
AIR_FREE = Source("ANSI Z21.47 and Z21.1", "", "air-free carbon monoxide from oxygen or carbon dioxide", "memory")

PIPE_EQUATIONS = Source(
    "International Fuel Gas Code; NFPA 54", "2018", "A.4, equations for low and high pressure; Table 402.4 factors",
    "seen in a copy",
)  # fmt: skip
PIPE_TABLES = Source("International Fuel Gas Code", "2018", "Tables 402.4(5) and 402.4(7)", "seen in a copy")
SPITZGLASS = Source("Spitzglass formula below 1 psi", "", "in the form 3550 [h d^5/(S L f)]^0.5", "seen in a copy")

HOOD = Source("International Residential Code", "2009 to 2024", "M1503.4, from 2018 M1503.6", "seen in a copy")
IRC_DRYER = Source(
    "International Residential Code", "2000 to 2024", "M1502.4 and its table of fittings", "seen in a copy"
)
UMC_DRYER = Source("Uniform Mechanical Code", "", "504.3.1.2 (504.4.2.1)", "seen in a copy")
IRC_EXHAUST = Source(
    "International Residential Code", "2012 to 2024", "Table M1507.4, from 2018 M1505.4.4", "seen in a copy"
)
IRC_VENTILATION = Source(
    "International Residential Code", "2012 to 2024", "Table M1507.3.3(1), from 2018 M1505.4.3(1); equation 15-1",
    "seen in a copy",
)  # fmt: skip
VENTILATION_2010 = Source("ASHRAE 62.2", "2010", "equation 4.1a and Table 4.1a", "seen in a copy")
VENTILATION_2013 = Source("ASHRAE 62.2", "2013 and later", "equation 4.1a, Table 4.1a, 4.1.2", "seen in a copy")
AIRFLOW_METHOD = Source(
    "California Reference Residential Appendices", "2008", "RA3.2.2.7; the table itself not seen", "memory"
)
ENTHALPY = Source("ASHRAE Handbook, Fundamentals", "2017", "chapter 1, equations 5, 6, 22, 30, 33", "calculated")
COMMON = Source("Trade practice", "", "", "common practice, no source")
