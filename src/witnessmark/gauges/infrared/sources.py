"""Where the formulas and limits of the infrared gauges are published."""

from __future__ import annotations

from witnessmark.gauges.answer import Source

__all__ = [
    "ASHRAE_101",
    "ASTM_C1060",
    "CODATA",
    "COUNTS",
    "DATA_SHEETS",
    "EN_13187",
    "EN_13187_PRACTICE",
    "FIELD_ERROR",
    "GEOMETRY",
    "GRAYBODY",
    "GUIDE_BANDS",
    "ISO_6946",
    "ISO_9869_2",
    "NOISE",
    "REFERENCE_EMITTER",
    "TRANSMISSION",
    "WALL_CLASSES",
]  # fmt: skip

GRAYBODY = Source(
    "Stefan-Boltzmann law with a gray, opaque surface",
    "",
    "signal = e times own radiation + (1 - e) times reflected",
    "calculated",
)
CODATA = Source("CODATA recommended values (h, c, k exact in the SI)", "2018", "Planck's law", "memory")
COUNTS = Source(
    "Planck curve of a calibrated camera with constants R1, R2, B, F, O",
    "",
    "constants and measurement formula as radiometric files carry them",
    "seen in a copy",
)
TRANSMISSION = Source(
    "Minkina and Dudzik, Infrared Thermography: Errors and Uncertainties", "2009", "transmission of the air", "memory"
)
REFERENCE_EMITTER = Source("ASTM E1933, emissivity by a reference emitter", "", "", "memory")
DATA_SHEETS = Source(
    "Accuracy on data sheets of building cameras: 2 °C or 2 % of the reading", "", "", "common practice, no source"
)
GEOMETRY = Source("Geometry of a lens that keeps straight lines straight", "", "", "calculated")
ISO_6946 = Source("ISO 6946", "2017", "surface resistances Rsi 0.13, 0.10, 0.17 m2K/W", "seen in a copy")
ISO_9869_2 = Source(
    "ISO 9869-2, infrared method for frame dwellings", "2018", "radiative and convective part", "memory"
)
FIELD_ERROR = Source(
    "Gasi and others, Buildings 9, 132", "2019", "errors of 0 to 30 % of the design value", "seen in a copy"
)
WALL_CLASSES = Source(
    "Bands of whole-wall resistance: below R-5 little or none, R-5 to R-10 some, above R-10 insulated",
    "",
    "",
    "common practice, no source",
)
NOISE = Source("Contrast below five times the camera's noise is hard to tell", "", "", "common practice, no source")
ASHRAE_101 = Source("ANSI/ASHRAE 101", "1981", "temperature difference before and during", "seen in a copy")
ASTM_C1060 = Source("ASTM C1060", "2011a", "environmental conditions", "seen in a copy")
EN_13187_PRACTICE = Source("Practice sheet for surveys to BS EN 13187:1999", "", "", "seen in a copy")
EN_13187 = Source("ISO 6781 (1983) and EN 13187 (1998)", "", "test conditions", "memory")
GUIDE_BANDS = Source("Guide for thermal surveys in the United Kingdom", "", "bands of difference", "seen in a copy")
