"""What the water gauges can refuse; 030 to 039 are theirs."""

from __future__ import annotations

from witnessmark.problems import Message

__all__ = [
    "AT_ODDS", "DRAWS_AT_ODDS", "NEEDS_A_FACT", "NO_SUCH_EDITION", "PRESSURES_AT_ODDS", "TEMPERATURES_AT_ODDS",
]  # fmt: skip

NO_SUCH_EDITION = Message(
    "WM030",
    "this code or law has no such edition here",
    "A house is judged by the text in force where and when it was built or altered; a year between editions names none.",
    "Give one of the editions listed, or leave the edition out for the newest one held.",
)
NEEDS_A_FACT = Message(
    "WM031",
    "one of two facts must be given and neither was",
    "Without it the formula has nothing to work on, and no value is guessed.",
    "Give either of the inputs named.",
)
PRESSURES_AT_ODDS = Message(
    "WM032",
    "these pressures cannot stand together",
    "Each pressure has its place in the order of things; turned round they would size a tank or judge a supply wrongly.",
    "Read the gauges again and see that the pressures were not exchanged.",
)
TEMPERATURES_AT_ODDS = Message(
    "WM033",
    "these temperatures cannot stand together",
    "Mixed water lies between the cold and the hot it was mixed from, and heated water above the cold that went in.",
    "Read the thermometer again and see that hot, cold and mixed were not exchanged.",
)
DRAWS_AT_ODDS = Message(
    "WM034",
    "these draws cannot come from one test",
    "The mean temperature of a draw lies above its lowest, and the formula divides by the difference.",
    "Look at the record of the draws again; a last draw begun at the hour needs a draw before it.",
)
AT_ODDS = Message(
    "WM035",
    "these inputs contradict each other",
    "An answer from inputs that contradict each other would be an answer to neither.",
    "Give the inputs that were measured together.",
)
