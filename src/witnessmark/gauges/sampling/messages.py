"""What the gauges of sampling can refuse."""

from __future__ import annotations

from witnessmark.problems import Message

__all__ = ["MORE_THAN_THERE", "NEVER_SO_SURE"]

MORE_THAN_THERE = Message(
    "WM025",
    "more are counted here than there are",
    "Of twelve receptacles thirteen cannot have been tested or bad: one of the counts is wrong.",
    "Count again how many there are, how many were tested or out of reach, and how many are supposed bad.",
)
NEVER_SO_SURE = Message(
    "WM026",
    "no number of tests gives this chance",
    "Where none is bad there is none to meet, however many are tested.",
    "Suppose at least one bad one: the fewest that should not escape.",
)
