"""Lines of equal height over a floor."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction
from math import ceil, floor
from typing import Annotated, Literal

from witnessmark.gauges.answer import Also, Answer, Table, Uncertainty, rounded
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.gauge import gauge
from witnessmark.gauges.movement.asking import A_TENTH, EXAMPLE, Instrument, Readings, ReadsAs, taken
from witnessmark.gauges.movement.levels import Point, called, survey
from witnessmark.gauges.movement.messages import IN_ONE_LINE, TOO_MANY_LINES
from witnessmark.gauges.movement.plane import fit, left_over
from witnessmark.gauges.movement.sources import GEOMETRY, SURVEY_CAUTIONS
from witnessmark.gauges.movement.triangles import triangulate
from witnessmark.problems import Refusal
from witnessmark.units import Quantity

__all__ = ["Contour", "contours", "floor_contours"]

_MOST_LINES = 2000
_QUARTER = Quantity(Decimal("0.25"), "[in_i]")
_Edge = tuple[int, int]


@dataclass(frozen=True, slots=True)
class Contour:
    """One line of equal height: *level* in inches, its corners in feet, whether it comes back to its beginning."""

    level: Fraction
    corners: tuple[tuple[Fraction, Fraction], ...]
    closed: bool


def _chains(steps: dict[_Edge, _Edge]) -> list[tuple[list[_Edge], bool]]:
    """Crossings joined end to end; each line starts where nothing leads to it, closed ones at their least edge."""
    led = set(steps.values())
    lines: list[tuple[list[_Edge], bool]] = []
    for start in sorted(edge for edge in steps if edge not in led):
        line = [start]
        while line[-1] in steps:
            line.append(steps.pop(line[-1]))
        lines.append((line, False))
    while steps:
        start = min(steps)
        line = [start]
        while line[-1] in steps:
            line.append(steps.pop(line[-1]))
        lines.append((line, True))
    return lines


def contours(points: tuple[Point, ...], heights: tuple[Fraction, ...], interval: Fraction) -> tuple[Contour, ...]:
    """Lines of equal height at the multiples of *interval*, over triangles between the places; higher floor to the right.

    Heights run straight along the edges of the triangles, so that no line shows what was not read. A line ends at
    the outline of the places. Empty when the places stand in one line.

    >>> square = tuple(Point(Fraction(x), Fraction(y), Fraction(x)) for x in (0, 2) for y in (0, 2))
    >>> [(float(one.level), len(one.corners)) for one in contours(square, tuple(p.height for p in square), Fraction(1))]
    [(1.0, 3), (2.0, 2)]
    """
    faces = triangulate([(p.x, p.y) for p in points])
    if not faces:
        return ()
    found: list[Contour] = []
    for step in range(ceil(min(heights) / interval), floor(max(heights) / interval) + 1):
        level = step * interval
        steps: dict[_Edge, _Edge] = {}
        for face in faces:
            above = [heights[k] >= level for k in face]
            if all(above) or not any(above):
                continue
            edges = [(face[k], face[(k + 1) % 3]) for k in range(3)]
            down = next(e for e, k in zip(edges, range(3), strict=True) if above[k] and not above[(k + 1) % 3])
            up = next(e for e, k in zip(edges, range(3), strict=True) if not above[k] and above[(k + 1) % 3])
            steps[min(up), max(up)] = (min(down), max(down))
        for line, closed in _chains(steps):
            corners = [_crossing(edge, points, heights, level) for edge in line]
            kept = [corner for k, corner in enumerate(corners) if k == 0 or corner != corners[k - 1]]
            if len(kept) > 1:
                found.append(Contour(level, tuple(kept), closed))
    return tuple(found)


def _crossing(
    edge: _Edge, points: tuple[Point, ...], heights: tuple[Fraction, ...], level: Fraction
) -> tuple[Fraction, Fraction]:
    a, b = edge
    part = (level - heights[a]) / (heights[b] - heights[a])
    return (points[a].x + part * (points[b].x - points[a].x), points[a].y + part * (points[b].y - points[a].y))


@gauge(
    name="floor-contours",
    family="movement",
    title="Lines of equal height over a floor",
    unit="[in_i]",
    gives="highest less lowest height of the floor; the lines stand in the table",
    sources=(GEOMETRY,),
    error="lines run straight between the places read; nothing is known between them",
    never="where the floor moved, or what lies between the places that were read",
    cautions=SURVEY_CAUTIONS,
    example={"readings": EXAMPLE, "interval": "0.25in"},
)
def floor_contours(
    readings: Readings,
    interval: Annotated[
        Quantity,
        Asked(
            "height between two lines",
            "[in_i]",
            lowest="0.05",
            highest="6",
            least="0.001",
            most="100",
            how="at least twice what a reading may be off by",
            example="0.25in",
        ),
    ] = _QUARTER,
    of: Annotated[
        Literal["height", "height less tilt"], Asked("whether the floor is drawn as it lies or less its tilt")
    ] = "height",
    reads: ReadsAs = "height",
    instrument: Instrument = A_TENTH,
) -> Answer:
    """Lines of equal height of a surveyed floor, as rows: line, height, x, y.

    Rule:
        triangles between the places with no place inside the circle of any (Delaunay); height straight along edges;
        lines at the multiples of the interval, higher floor to the right of each line

    Refuses places in one line (WM081) and intervals that would give thousands of lines (WM083).

    >>> from witnessmark.gauges import evaluate
    >>> answer = evaluate("floor-contours", {"readings": "0ft,0ft,0in; 8ft,0ft,1in; 0ft,8ft,0in", "interval": "0.5in"})
    >>> answer.value, [str(cell) for cell in answer.table.rows[0]]
    (Decimal('1'), ['1', '0.5', '4', '0', 'open'])
    """
    one = survey(readings, reads)
    heights = tuple(p.height for p in one.points)
    if of == "height less tilt":
        heights = left_over(one.points, fit(one.points))
    step = Fraction(interval.value)
    if (max(heights) - min(heights)) / step > _MOST_LINES:
        raise Refusal(TOO_MANY_LINES.at("interval", f"{float((max(heights) - min(heights)) / step):.0f} lines"))
    lines = contours(one.points, heights, step)
    if not lines and not triangulate([(p.x, p.y) for p in one.points]):
        raise Refusal(IN_ONE_LINE.at("readings"))
    low, high = (pick(range(len(heights)), key=lambda k: heights[k]) for pick in (min, max))
    also, _, cautions = taken(one)
    range_ = rounded(float(heights[high] - heights[low]))
    what = "Less its tilt, the floor" if of == "height less tilt" else "The floor"
    return Answer(
        value=range_,
        words=f"{what} lies {range_:.2f} in higher at {called(one.points[high])} than at {called(one.points[low])}; "
              f"{len(lines)} lines of equal height, {float(step):g} in apart.",
        uncertainty=Uncertainty(
            "two readings' error", rounded(float(instrument.value) * 2**0.5)
        ),
        cautions=(
            *cautions,
            *(("The lines stand closer than two readings can tell apart.",) if step < 2 * Fraction(instrument.value)
              else ()),
        ),
        also=(
            Also("lines", "lines of equal height", rounded(float(len(lines))), "1"),
            Also("highest_at", "highest place", called(one.points[high])),
            Also("lowest_at", "lowest place", called(one.points[low])),
            *also,
        ),
        table=Table(
            (("line", "1"), ("height", "[in_i]"), ("x", "[ft_i]"), ("y", "[ft_i]"), ("", "")),
            tuple(
                (Decimal(number), rounded(float(line.level)), rounded(float(x)), rounded(float(y)),
                 "closed" if line.closed else "open")
                for number, line in enumerate(lines, 1)
                for x, y in line.corners
            ),
        ),
    )  # fmt: skip
