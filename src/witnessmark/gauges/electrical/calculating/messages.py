"""What the electrical calculations can refuse; numbers 055 to 059."""

from __future__ import annotations

from witnessmark.problems import Message

__all__ = ["BAD_SIZE", "LOAD_WITHOUT_RATING", "NOT_CARRIED", "NOT_IN_TABLE", "ONE_OF_TWO"]

BAD_SIZE = Message(
    "WM055",
    "this is no conductor size that the tables list",
    "A gauge number and a thousand circular mils are different scales: 12 AWG is 6.53 kcmil, and a mistake between them "
    "changes the answer a hundredfold.",
    "Write the size as it is printed on the cable: 14, 12 AWG, 1/0, 250 kcmil.",
)
NOT_CARRIED = Message(
    "WM056",
    "the table of this edition is not carried here",
    "Ampacity tables before 1984 give other numbers; a table must never be read for an edition that is not its own.",
    "Look the value up in that edition, or ask for an edition that is carried and say which one was used.",
)
NOT_IN_TABLE = Message(
    "WM057",
    "the table gives no value for this combination",
    "Where a table is silent the combination is not allowed by it or was never made; a neighbour's value means nothing.",
    "Check the size, the material and the temperature again; aluminum begins at 12 AWG.",
)
LOAD_WITHOUT_RATING = Message(
    "WM058",
    "this load gives neither its power nor its current",
    "A load of unknown size is not nought; left out, the total would be too small.",
    "Read the plate and give the power (4500 W) or the current with its voltage (12 A, 115 V).",
)
ONE_OF_TWO = Message(
    "WM059",
    "exactly one of these inputs is needed",
    "None leaves nothing to compute with, and two can contradict each other.",
    "Give the one that was read from the record.",
)
