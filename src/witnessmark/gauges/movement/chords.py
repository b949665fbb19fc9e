"""Bending: how far a floor lies off the straight lines between its own places, in every direction."""

from __future__ import annotations

import math
from dataclasses import dataclass
from fractions import Fraction
from typing import Literal

from witnessmark.gauges.movement.levels import Point

__all__ = ["Chord", "chords", "worst"]

#: Two ratios nearer than this (relative) are one ratio: what parts them is the last place of the machine.
_ALIKE = 1e-9


@dataclass(frozen=True, slots=True)
class Chord:
    """The straight line between two places, and the place between them that lies farthest off it.

    Attributes:
        start, end, at: numbers of the places in the survey.
        length: length of the chord in feet.
        part: how far along the chord *at* stands, 0 to 1.
        deflection: height of *at* above the chord in inches: positive hogs, negative sags.
    """

    start: int
    end: int
    at: int
    length: float
    part: float
    deflection: float

    @property
    def ratio(self) -> float:
        """Deflection over the length of the chord, both in the same unit; 1/360 is 0.00278."""
        return abs(self.deflection) / (self.length * 12)

    @property
    def shape(self) -> Literal["sag", "hog", "straight"]:
        """``sag`` when the middle lies low, ``hog`` when it lies high."""
        return "sag" if self.deflection < 0 else "hog" if self.deflection > 0 else "straight"

    def least(self, reading: float) -> float:
        """The ratio that is there at least, when each of the three readings may be off by *reading* inches."""
        return (abs(self.deflection) - self.error(reading)) / (self.length * 12)

    def error(self, reading: float) -> float:
        """How far the deflection may be off, in inches, when each of the three readings may by *reading* inches."""
        return reading * math.sqrt(1 + self.part**2 + (1 - self.part) ** 2)


def chords(
    points: tuple[Point, ...], flat: tuple[Fraction, ...], beside: float, shortest: float = 0.0
) -> tuple[Chord, ...]:
    """Every chord between two places that has a place between them, with the one farthest off it.

    *flat* are the heights less the plane of best fit, so that a rigid tilt bends nothing, also at places that stand
    a little beside the line. *beside* is how far beside, in feet; *shortest* the least length of a chord, in feet.

    >>> line = tuple(Point(Fraction(s), Fraction(0), Fraction(z)) for s, z in ((0, 0), (10, 1), (20, 0)))
    >>> [(one.length, one.deflection) for one in chords(line, tuple(p.height for p in line), 0.5)]
    [(20.0, 1.0)]
    """
    where = [(float(p.x), float(p.y)) for p in points]
    order = sorted(range(len(points)), key=lambda k: (points[k].x, points[k].y))
    off = [float(one) for one in flat]
    reach = beside + 1e-9
    found = []
    for at, i in enumerate(order):
        ax, ay = where[i]
        for j in order[at + 1 :]:
            dx, dy = where[j][0] - ax, where[j][1] - ay
            square = dx * dx + dy * dy
            length = math.sqrt(square)
            if length < shortest or square == 0:
                continue
            best: tuple[float, int, float] | None = None
            for k in order:
                px, py = where[k]
                part = ((px - ax) * dx + (py - ay) * dy) / square
                if k in {i, j} or not 0 < part < 1 or abs((px - ax) * dy - (py - ay) * dx) > reach * length:
                    continue
                sagged = off[k] - (off[i] + part * (off[j] - off[i]))
                if best is None or abs(sagged) > abs(best[0]) + _ALIKE:
                    best = (sagged, k, part)
            if best is not None:
                found.append(Chord(i, j, best[1], length, best[2], 0.0 if abs(best[0]) < _ALIKE else best[0]))
    return tuple(found)


def worst(found: tuple[Chord, ...], points: tuple[Point, ...]) -> tuple[Chord, ...]:
    """The chords from the greatest ratio down; of those alike the longest first, then by where they stand.

    >>> worst((Chord(0, 1, 2, 10.0, 0.5, 0.1), Chord(0, 2, 1, 20.0, 0.5, -0.2)),
    ...       (Point(Fraction(0), Fraction(0), Fraction(0)),) * 3)[0].length
    20.0
    """

    def rank(one: Chord) -> tuple[float, float, tuple[tuple[Fraction, Fraction], ...]]:
        ends = sorted((points[i].x, points[i].y) for i in (one.start, one.end))
        return (-float(f"{one.ratio:.9e}"), -float(f"{one.length:.9e}"), tuple(ends))

    return tuple(sorted(found, key=rank))
