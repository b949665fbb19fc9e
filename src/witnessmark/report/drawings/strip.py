"""A reading beside its limit: a short scale with where it has to be, and where it is."""

from __future__ import annotations

from decimal import Decimal

from witnessmark.judging.model import JudgedReading
from witnessmark.problems import Refusal
from witnessmark.report.drawings.svg import ACCENT, FAINT, INK, circle, drawing, line, rect, text, width_of
from witnessmark.report.letter import Drawing
from witnessmark.report.tongue import Tongue
from witnessmark.units import Quantity, as_difference, convert, say

__all__ = ["strip_drawing"]

_WIDE, _HIGH, _LEFT, _RIGHT, _AXIS = 300, 40, 10, 290, 20
_ROOM = Decimal("0.25")


def _number(words: str | None) -> Decimal | None:
    try:
        value = Decimal(words or "")
    except ArithmeticError:
        return None
    return value if value.is_finite() else None


def strip_drawing(value: str, unit: str | None, judged: JudgedReading, tongue: Tongue) -> Drawing | None:
    """The strip of one reading and one limit; None where the two cannot stand on one scale."""
    limit = judged.criterion
    read, low = _number(value), _number(limit.value if limit else None)
    if limit is None or read is None or low is None or judged.verdict not in {"within", "beyond"}:
        return None
    high = _number(limit.high) if limit.op == "between" else None
    try:
        here = convert(Quantity(read, unit or "1"), limit.unit).value
    except Refusal:
        try:
            here = convert(Quantity(read, as_difference(unit or "1")), as_difference(limit.unit)).value
        except Refusal:
            return None
    marks = [mark for mark in (low, high) if mark is not None]
    points = [*marks, here]
    span = max(points) - min(points) or abs(low) or Decimal(1)
    start, end = min(points) - span * _ROOM, max(points) + span * _ROOM

    def x(at: Decimal) -> float:
        return _LEFT + float((at - start) / (end - start)) * (_RIGHT - _LEFT)

    first, last = (
        (low, high)
        if high is not None
        else (start, low) if limit.op in {"<=", "<"} else (low, end)
    )  # fmt: skip
    parts = [
        line(_LEFT, _AXIS, _RIGHT, _AXIS, stroke=FAINT),
        rect(x(first), _AXIS - 3, x(last) - x(first), 6, fill=FAINT),
    ]
    for mark in marks:
        words = say(Quantity(mark, limit.unit))
        at = x(mark)
        parts.append(line(at, _AXIS - 8, at, _AXIS + 8, stroke=INK))
        parts.append(text(_inside(at, words), _AXIS - 11, words, size=8))
    words = say(Quantity(read, unit or "1"))
    at = x(here)
    parts += [circle(at, _AXIS, 4.5, fill=ACCENT), text(_inside(at, words), _AXIS + 18, words, size=8.5, fill=INK)]
    says = tongue.say(
        "The reading, {value}, {verdict} the limit.",
        value=words,
        verdict=tongue.say("lies within") if judged.verdict == "within" else tongue.say("lies beyond"),
    )
    return drawing(f"strip-{judged.entry}-{limit.id}", _WIDE, _HIGH, parts, says=says, part=judged.entry)


def _inside(at: float, words: str) -> float:
    """Where words centred at a point begin without leaving the strip."""
    half = width_of(words, 8.5) / 2
    return min(max(at - half, 0), _WIDE - 2 * half)
