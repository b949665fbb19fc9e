"""Readings of a level survey, and the heights of the floor that they stand for."""

from __future__ import annotations

import itertools
from dataclasses import dataclass
from fractions import Fraction
from typing import Annotated, Literal

from witnessmark.gauges.asked import Asked
from witnessmark.gauges.movement.messages import TOO_FEW_PLACES
from witnessmark.problems import Refusal
from witnessmark.units import Quantity

__all__ = ["Level", "Point", "Reads", "Survey", "called", "survey"]

#: What a larger number on the instrument means: a higher floor, or (on a staff under a fixed line) a lower one.
Reads = Literal["height", "staff"]


@dataclass(frozen=True, slots=True)
class Level:
    """One reading of a level survey, in the order in which the readings were taken."""

    x: Annotated[
        Quantity,
        Asked("distance to the right of the corner that is counted from (east, where the plan is drawn north up)",
              "[ft_i]", least="-2000", most="2000", how="along the wall with a tape, from one corner of the house",
              example="12ft"),
    ]  # fmt: skip
    y: Annotated[
        Quantity,
        Asked("distance away from the corner that is counted from (north, where the plan is drawn north up)", "[ft_i]",
              least="-2000", most="2000", how="square to the first distance, from the same corner", example="24ft"),
    ]  # fmt: skip
    reading: Annotated[
        Quantity,
        Asked("what the level shows at this place", "[in_i]", lowest="-24", highest="24", least="-1200", most="1200",
              how="on the finished floor, away from door thresholds and hearths; let the instrument settle",
              example="-0.3in"),
    ]  # fmt: skip
    covering: Annotated[
        Quantity | None,
        Asked("thickness of the floor covering under the instrument, where it differs from room to room", "[in_i]",
              lowest="0", highest="6", least="0", most="24",
              how="at a floor register, a threshold or a loose edge; carpet with its pad pressed down", example="0.5in"),
    ] = None  # fmt: skip
    name: Annotated[str, Asked("name of the place, so that a person finds it again")] = ""


@dataclass(frozen=True, slots=True)
class Point:
    """A place read: *x* and *y* in feet, *height* of the bare floor in inches, how far two readings here differed."""

    x: Fraction
    y: Fraction
    height: Fraction
    name: str = ""
    spread: Fraction = Fraction(0)


@dataclass(frozen=True, slots=True)
class Survey:
    """A survey with its corrections made.

    Attributes:
        points: each place once, in the order of its first reading.
        closing: last less first reading at the place that was read first, in inches; None if it was read only once.
        returns: how often the first place was read again.
        covered: whether any covering was subtracted.
    """

    points: tuple[Point, ...]
    closing: Fraction | None
    returns: int
    covered: bool

    @property
    def spread(self) -> Fraction:
        """The largest difference, in inches, between readings at one place after the corrections."""
        return max((point.spread for point in self.points), default=Fraction(0))


def called(point: Point) -> str:
    """How a place is named in words: its name, or where it stands.

    >>> called(Point(Fraction(12), Fraction(49, 2), Fraction(0)))
    '(12, 24.5) ft'
    """
    return point.name or f"({float(point.x):.6g}, {float(point.y):.6g}) ft"


def _drift(heights: list[Fraction], bases: list[int]) -> list[Fraction]:
    """What to take off each reading: nothing at the first, the difference at each return, evenly spread between."""
    drift = [Fraction(0)] * len(heights)
    for start, end in itertools.pairwise(bases):
        begun, ended = heights[start] - heights[0], heights[end] - heights[0]
        for at in range(start, end + 1):
            drift[at] = begun + (ended - begun) * Fraction(at - start, end - start)
    for at in range(bases[-1], len(heights)):
        drift[at] = heights[bases[-1]] - heights[0]
    return drift


def survey(levels: tuple[Level, ...], reads: Reads = "height", least: int = 3) -> Survey:
    """The survey that these readings make, exact; lengths in feet, heights in inches.

    The covering is subtracted from each reading where it lies; whenever the place read first is read again, the
    difference is spread evenly over the readings since the last return; places read more than once are averaged.
    Refuses fewer than *least* different places (WM080).

    >>> from decimal import Decimal
    >>> rows = [(0, "0"), (10, "-0.5"), (20, "-1.0"), (0, "0.3")]
    >>> taken = [Level(Quantity(Decimal(x), "[ft_i]"), Quantity(Decimal(0), "[ft_i]"), Quantity(Decimal(z), "[in_i]"))
    ...          for x, z in rows]
    >>> one = survey(tuple(taken))
    >>> [float(point.height) for point in one.points], float(one.closing)
    ([0.0, -0.6, -1.2], 0.3)
    """
    sign = -1 if reads == "staff" else 1
    heights = [
        sign * Fraction(level.reading.value) - (Fraction(level.covering.value) if level.covering else 0)
        for level in levels
    ]
    places = [(Fraction(level.x.value), Fraction(level.y.value)) for level in levels]
    bases = [at for at, place in enumerate(places) if place == places[0]]
    drift = _drift(heights, bases) if bases else []
    found: dict[tuple[Fraction, Fraction], list[Fraction]] = {}
    names: dict[tuple[Fraction, Fraction], str] = {}
    for level, place, height, off in zip(levels, places, heights, drift, strict=True):
        found.setdefault(place, []).append(height - off)
        names[place] = names.get(place) or level.name
    if len(found) < least:
        raise Refusal(TOO_FEW_PLACES.at("readings", f"{len(found)} different places, needed are {least}"))
    return Survey(
        tuple(
            Point(x, y, sum(all_, Fraction(0)) / len(all_), names[x, y], max(all_) - min(all_))
            for (x, y), all_ in found.items()
        ),
        heights[bases[-1]] - heights[0] if len(bases) > 1 else None,
        len(bases) - 1,
        any(level.covering for level in levels),
    )
