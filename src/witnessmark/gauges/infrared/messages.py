"""What the gauges of infrared pictures can refuse."""

from __future__ import annotations

from witnessmark.problems import Message

__all__ = ["NO_HEAT_FLOW", "OFF_THE_CURVE", "ONE_OF_TWO", "READINGS_CONTRADICT"]

READINGS_CONTRADICT = Message(
    "WM020",
    "these readings contradict each other",
    "What is reflected alone would send the camera more than it read, so no surface temperature fits.",
    "Measure the reflected temperature again with crumpled foil in the plane of the surface, and look at the "
    "emissivity; on bare metal put tape on the surface and read the tape.",
)
OFF_THE_CURVE = Message(
    "WM021",
    "these raw counts lie off the camera's own curve",
    "The calibration constants turn no temperature out of them.",
    "Take the counts and all five constants from the same file, and look at the byte order of the counts.",
)
NO_HEAT_FLOW = Message(
    "WM022",
    "these temperatures show no heat flowing through the wall",
    "Without a difference that points one way from inside through the surface to outside there is nothing to divide by.",
    "Measure when inside and outside differ by 18 °F (10 °C) or more, away from sun, heaters and outlets of air.",
)
ONE_OF_TWO = Message(
    "WM023",
    "one of two inputs is needed, and only one",
    "With none there is nothing to convert; with both it is open which of them holds.",
    "Give either the resistance (R) or the transmittance (U).",
)
