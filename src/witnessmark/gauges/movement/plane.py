"""The plane that fits the heights of a floor best, and what is left over."""

from __future__ import annotations

import math
from dataclasses import dataclass
from fractions import Fraction

from witnessmark.gauges.movement.levels import Point

__all__ = ["Plane", "bearing", "fit", "left_over"]

#: Places that stray from one line by less than about a thousandth of its length are in one line: what two directions
#: of slope would be fitted to is then the tape, not the floor.
_THIN = Fraction(1, 1_000_000)


@dataclass(frozen=True, slots=True)
class Plane:
    """z = a x + b y + c, exact: *a*, *b* in inches per foot, *c* in inches; *in_line* when all places are in one line.

    *spread* holds the inverse of the sums of squares about the middle (xx, xy, yy): what the uncertainty of a reading
    is multiplied by to give that of the slopes.
    """

    a: Fraction
    b: Fraction
    c: Fraction
    in_line: bool
    spread: tuple[Fraction, Fraction, Fraction]

    def at(self, x: Fraction, y: Fraction) -> Fraction:
        """Height of the plane in inches."""
        return self.a * x + self.b * y + self.c

    @property
    def slope(self) -> float:
        """The steepest slope, in inches per inch (0.01 is 1 %)."""
        return math.hypot(float(self.a), float(self.b)) / 12

    def slope_error(self, reading: float) -> float:
        """How far the steepest slope may be off, in inches per inch, when each reading may by *reading* inches."""
        size = math.hypot(float(self.a), float(self.b))
        if size == 0:
            xx, yy = float(self.spread[0]), float(self.spread[2])
            return reading * math.sqrt(max(xx, yy)) / 12
        u, v = float(self.a) / size, float(self.b) / size
        xx, xy, yy = (float(one) for one in self.spread)
        return reading * math.sqrt(max(0.0, u * u * xx + 2 * u * v * xy + v * v * yy)) / 12


def fit(points: tuple[Point, ...]) -> Plane:
    """The plane of least squares through the heights, solved exactly in fractions.

    Where all places stand in one line the slope along the line is fitted and the slope across it, which nothing was
    read about, is left at nought (the solution of least length). Needs two different places.

    >>> one = fit(tuple(Point(Fraction(x), Fraction(y), Fraction(2 * x - 3 * y + 1))
    ...                 for x, y in [(0, 0), (4, 0), (0, 5), (4, 5)]))
    >>> (one.a, one.b, one.c) == (2, -3, 1)
    True
    """
    n = len(points)
    mx, my = sum((p.x for p in points), Fraction(0)) / n, sum((p.y for p in points), Fraction(0)) / n
    mz = sum((p.height for p in points), Fraction(0)) / n
    rows = [(p.x - mx, p.y - my, p.height - mz) for p in points]
    xx, xy, yy = (sum((r[i] * r[j] for r in rows), Fraction(0)) for i, j in ((0, 0), (0, 1), (1, 1)))
    xz, yz = (sum((r[i] * r[2] for r in rows), Fraction(0)) for i in (0, 1))
    size = xx * yy - xy * xy
    if size <= _THIN * (xx + yy) ** 2:
        dx, dy = max((r[0] ** 2 + r[1] ** 2, r[0], r[1]) for r in rows)[1:]
        along = [(r[0] * dx + r[1] * dy, r[2]) for r in rows]
        squares = sum((s * s for s, _ in along), Fraction(0))
        m = sum((s * z for s, z in along), Fraction(0)) / squares
        a, b = m * dx, m * dy
        spread = (dx * dx / squares, dx * dy / squares, dy * dy / squares)
        return Plane(a, b, mz - a * mx - b * my, in_line=True, spread=spread)
    a, b = (yy * xz - xy * yz) / size, (xx * yz - xy * xz) / size
    return Plane(a, b, mz - a * mx - b * my, in_line=False, spread=(yy / size, -xy / size, xx / size))


def left_over(points: tuple[Point, ...], plane: Plane) -> tuple[Fraction, ...]:
    """Height of each place above (+) or below (-) the plane, in inches.

    >>> three = (Point(Fraction(0), Fraction(0), Fraction(0)), Point(Fraction(1), Fraction(0), Fraction(3)),
    ...          Point(Fraction(2), Fraction(0), Fraction(0)))
    >>> left_over(three, fit(three)) == (-1, 2, -1)
    True
    """
    return tuple(point.height - plane.at(point.x, point.y) for point in points)


def bearing(a: float, b: float, north: float = 0.0) -> float | None:
    """The bearing toward which a slope of *a* along x and *b* along y falls, degrees clockwise from north, 0 to 360.

    *north* is the bearing of the y direction of the plan (0 when the plan is drawn north up). None on the level.

    >>> bearing(0.0, -1.0), bearing(-1.0, 0.0)
    (0.0, 90.0)
    """
    if a == 0 and b == 0:
        return None
    return (math.degrees(math.atan2(-a, -b)) + north) % 360
