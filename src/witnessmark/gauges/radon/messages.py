"""What the gauges of radon can refuse."""

from __future__ import annotations

from witnessmark.problems import Message

__all__ = ["HOURS_OUT_OF_ORDER", "MIXED_CLOCKS", "NOTHING_DEPLOYED", "ONE_SERIES", "STARTED_BEFORE"]

ONE_SERIES = Message(
    "WM085",
    "the hourly readings must be given once: either as values or as hours with their times",
    "Two series, or none, leave open what is averaged.",
    "Give values=… for readings without times, or hours=… for rows of reading and time; not both.",
)
HOURS_OUT_OF_ORDER = Message(
    "WM086",
    "the hours do not follow one another in time",
    "An hour counted twice, or sorted by hand, is no longer the series that the monitor recorded.",
    "Give the rows as the monitor wrote them; where clocks went back, add the offset to the times (2026-11-01T01:00-05:00).",
)
MIXED_CLOCKS = Message(
    "WM087",
    "some times have an offset from UTC and some have none",
    "They cannot be put in order or subtracted.",
    "Write all times the same way, with an offset or without.",
)
STARTED_BEFORE = Message(
    "WM088",
    "the test began before the fan did",
    "What was measured then is the house without its system, not what the system does.",
    "Give the time when the fan was switched on, and the time when the test after that began.",
)
NOTHING_DEPLOYED = Message(
    "WM089",
    "there are more blanks than devices deployed",
    "Blanks are a share of the devices set out; more of them than devices is a slip in the count.",
    "Count all devices set out in the month, with the blanks among them.",
)
