"""What the gauges of wood refuse: corrections made twice, and comparisons with too little to compare."""

from __future__ import annotations

from witnessmark.problems import Message

__all__ = ["ALREADY_CORRECTED", "BEYOND_THE_EQUATION", "SPECIES_INCOMPLETE", "TOO_FEW_DRY_SPOTS"]

ALREADY_CORRECTED = Message(
    "WM010",
    "this reading has been corrected for temperature by the meter",
    "Corrected twice, cold wood would be read as wetter than it is, and warm wood as drier.",
    "Take the reading as it stands, or set the meter to its reference temperature and read again.",
)
SPECIES_INCOMPLETE = Message(
    "WM011",
    "the coefficients of a species need both numbers and where they are from",
    "Half a correction is none, and a coefficient without its table cannot be checked.",
    "Give species_a, species_b and species_source from the meter's own table, or none of them for Douglas-fir.",
)
BEYOND_THE_EQUATION = Message(
    "WM013",
    "the equation of wood and air gives no number at this temperature",
    "Beyond -50 °C and 132 °C (-58 and 270 °F) its terms divide by nought and turn negative.",
    "Look at the temperature and its unit again; measure when it is less extreme.",
)
TOO_FEW_DRY_SPOTS = Message(
    "WM012",
    "there are too few readings of dry spots to compare with",
    "Two readings cannot show how much the material varies by itself.",
    "Take at least three readings on the same material, thickness and finish, away from any suspicion of damp.",
)
