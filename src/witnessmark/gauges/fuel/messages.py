"""What the gauges of fuel, combustion and moving air can refuse."""

from __future__ import annotations

from witnessmark.problems import Message

__all__ = [
    "DROP_ABOVE_SUPPLY", "IMPOSSIBLE_AIR", "LIMITS_CROSSED", "NEITHER_GIVEN", "NOT_FLUE_GAS", "NO_INFILTRATION",
    "NO_SUCH_EDITION", "STANDARD_METHOD_BARRED",
]  # fmt: skip

STANDARD_METHOD_BARRED = Message(
    "WM040",
    "the standard method may not be used for a house known to be this tight",
    "Below 0.40 air changes an hour the room would be reckoned with air that does not come in.",
    "Give method='known infiltration', or leave the method out.",
)
NO_INFILTRATION = Message(
    "WM041",
    "no room is large enough where no air leaks in",
    "The method divides by the air changes of the house; at nought it permits no indoor air at all.",
    "Look at the outdoor openings instead: witnessmark gauge combustion-air-openings.",
)
NOT_FLUE_GAS = Message(
    "WM042",
    "this sample is nearly all air",
    "Close to 20.9 % oxygen (or no carbon dioxide) the correction divides by nearly nothing, and any error of the sensor "
    "becomes any result.",
    "Have the sample taken again inside the flue, ahead of the draft hood, with the burner on.",
)
DROP_ABOVE_SUPPLY = Message(
    "WM043",
    "the pressure lost in the pipe cannot reach the pressure supplied",
    "The two are easily swapped: supply pressure is what the regulator delivers, pressure drop is what the pipe may lose.",
    "Give the regulator's outlet as supply_pressure, and the loss allowed to the farthest outlet as pressure_drop.",
)
IMPOSSIBLE_AIR = Message(
    "WM044",
    "these two temperatures of the air cannot occur together",
    "A wet bulb reads at most as high as the dry bulb, and not lower than it would in air without any moisture.",
    "Wet the wick, wait until it stops falling, and read both in the same air stream.",
)
NO_SUCH_EDITION = Message(
    "WM045",
    "this document has no edition of that year",
    "Editions are years of the model document; a year between them names no text that could be applied.",
    "Give the edition adopted where and when the house was built or altered.",
)
NEITHER_GIVEN = Message(
    "WM046",
    "one of two inputs is needed and neither was given",
    "Either would do, and a guess would do harm.",
    "Run 'witnessmark gauge NAME --help' to see both.",
)
LIMITS_CROSSED = Message(
    "WM047",
    "the lower limit lies above the upper one",
    "Nothing could lie between them.",
    "Read the plate again and give the lower figure first.",
)
