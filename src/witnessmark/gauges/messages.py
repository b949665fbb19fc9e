"""What the gauges can refuse. Families keep their own beside their gauges; 001 to 009 are the frame's."""

from __future__ import annotations

from witnessmark.problems import Message

__all__ = [
    "CANNOT_BE", "CANNOT_READ", "MISSING_INPUT", "NOT_A_CHOICE", "NO_SUCH_GAUGE", "NO_SUCH_INPUT", "WRONG_DIMENSION",
]  # fmt: skip

_SEE = "Run 'witnessmark gauge NAME --help' to see what this gauge takes and how each input is measured."

NO_SUCH_GAUGE = Message(
    "WM001",
    "there is no gauge of this name",
    "Nothing was computed.",
    "Run 'witnessmark gauge' for the list of gauges.",
)
NO_SUCH_INPUT = Message(
    "WM002",
    "this gauge takes no input of this name",
    "An input that is not read would be taken for one that counted.",
    _SEE,
)
MISSING_INPUT = Message(
    "WM003",
    "this gauge needs an input that was not given",
    "A missing measurement is never replaced by a guess.",
    _SEE,
)
WRONG_DIMENSION = Message(
    "WM004",
    "this input is measured in another kind of unit",
    "A length read as a pressure would give a number that means nothing.",
    _SEE,
)
NOT_A_CHOICE = Message(
    "WM005",
    "this input must be one of a few words",
    "Each word stands for a published rule or table; another word names none.",
    _SEE,
)
CANNOT_BE = Message(
    "WM006",
    "this value cannot occur",
    "A value beyond what can exist is a slip of the pen or of the unit, and no formula holds there.",
    "Look at the instrument's display and its unit again, and give the reading as it stood.",
)
CANNOT_READ = Message(
    "WM007",
    "this input cannot be read",
    "An input read wrongly gives a wrong answer that looks right.",
    _SEE,
)
