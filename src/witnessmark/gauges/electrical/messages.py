"""What the electrical gauges of requirements can refuse."""

from __future__ import annotations

from witnessmark.problems import Message

__all__ = ["FACTS_CONTRADICT", "NOT_AT_THAT_TIME", "NO_SUCH_EDITION", "READING_INCOMPLETE", "SKETCH_CANNOT_BE"]

NO_SUCH_EDITION = Message(
    "WM050",
    "there is no edition of the National Electrical Code of this year",
    "A rule is judged by the edition in force; years printed in lists are often dates inside an edition.",
    "Give the edition that the place had adopted then, or leave edition out and give the year as built=1973.",
)
NOT_AT_THAT_TIME = Message(
    "WM051",
    "these years cannot stand together",
    "Work cannot follow an edition that did not exist yet, nor one that was adopted after it was done.",
    "Look at the years again: edition in force, year built or altered, year of the last adoption before it.",
)
READING_INCOMPLETE = Message(
    "WM052",
    "the tester reading is incomplete",
    "Two lamps of three fit several wiring faults.",
    "Give all three lamps as yes or no, or all three voltages, or both.",
)
SKETCH_CANNOT_BE = Message(
    "WM053",
    "this sketch of a wall or counter cannot be",
    "A place that lies off the wall, or a tape that runs back, would give a distance that no one measured.",
    "Give the pieces in order from one end, and each receptacle by its distance from that same end.",
)
FACTS_CONTRADICT = Message(
    "WM054",
    "these facts cannot both be",
    "An answer from contradicting facts would rest on one of them by chance.",
    "Give the facts again as they were found.",
)
