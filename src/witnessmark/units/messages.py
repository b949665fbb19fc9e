"""What reading and converting quantities can refuse."""

from __future__ import annotations

from witnessmark.problems import Message

__all__ = ["NOT_THE_SAME_DIMENSION", "NO_NUMBER", "NO_SUCH_UNIT", "NO_UNIT"]

_RIGHT_FORM = "Write the number and then its unit, such as 118F, 62psi, 5 3/4in, 6'8\", 19%, 50gal or 2 1/2 gal/min."

NO_NUMBER = Message(
    "WM101",
    "this does not begin with a number that can be read",
    "A reading without its number cannot be held against a limit.",
    _RIGHT_FORM,
)
NO_UNIT = Message(
    "WM102",
    "the number stands without a unit",
    "118 °F and 118 °C are not the same water; the unit is never guessed.",
    _RIGHT_FORM,
)
NO_SUCH_UNIT = Message(
    "WM103",
    "this unit is not known",
    "A quantity whose unit is not known can be neither converted nor compared.",
    _RIGHT_FORM + " A UCUM code, such as [psi] or Cel, works too.",
)
NOT_THE_SAME_DIMENSION = Message(
    "WM104",
    "these units measure different things",
    "A number changed into a unit of another dimension would mean nothing.",
    "Give a unit of the same dimension; a temperature and a difference between temperatures are kept apart.",
)
