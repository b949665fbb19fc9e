"""What the gauges of movement can refuse."""

from __future__ import annotations

from witnessmark.problems import Message

__all__ = ["DATES_TURNED_ROUND", "IN_ONE_LINE", "NOTHING_IN_COMMON", "TOO_FEW_PLACES", "TOO_MANY_LINES"]

TOO_FEW_PLACES = Message(
    "WM080",
    "too few different places were read",
    "A line needs two places to have a slope and three to bend; fewer say nothing about the shape of the floor.",
    "Give one row for each place with where it stands and what was read there.",
)
IN_ONE_LINE = Message(
    "WM081",
    "all places stand in one line",
    "Contour lines need a surface, and readings along one line say nothing about the floor beside it.",
    "Read places beside the line too, or use the gauge for a single line of readings.",
)
NOTHING_IN_COMMON = Message(
    "WM082",
    "the two surveys have fewer than two places in common",
    "A change can only be told where both surveys read the same place.",
    "Give both surveys with the same distances or the same names for the same places.",
)
TOO_MANY_LINES = Message(
    "WM083",
    "the interval is too small for the range of these readings",
    "Thousands of lines would hide the shape that they should show, and lie far below what the instrument can tell.",
    "Give a larger interval; twice the uncertainty of a reading is the least that means anything.",
)
DATES_TURNED_ROUND = Message(
    "WM084",
    "the second survey is not later than the first",
    "A change told the wrong way round turns settlement into heave.",
    "Give the earlier survey as the first, with its date.",
)
