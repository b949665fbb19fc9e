"""A floor as lines of equal height, from level readings whose spot says where they were taken ("12 ft, 3.5 ft").

Lines run straight between readings and end at the outermost ones: nothing is drawn where nothing was read.
"""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction

from witnessmark.gauges.movement import Point, contours
from witnessmark.journal.acts import Read
from witnessmark.journal.fold import Record
from witnessmark.problems import Refusal
from witnessmark.report.drawings.spots import spot_of
from witnessmark.report.drawings.svg import ACCENT, INK, QUIET, circle, drawing, path, text
from witnessmark.report.letter import Drawing
from witnessmark.report.naming import Names, capital
from witnessmark.units import Quantity, exact

__all__ = ["level_drawings"]

_MEASURE = "level"
_FEWEST, _MOST = 4, 200
_WIDE, _EDGE = 420.0, 36.0
_INTERVALS = (Fraction(1, 8), Fraction(1, 4), Fraction(1, 2), Fraction(1), Fraction(2))
_MOST_LINES = 12


def _point(body: Read) -> Point | None:
    spot = spot_of(body.spot)
    if spot is None:
        return None
    x, y = spot
    try:
        height = exact(Quantity(Decimal(body.value), body.unit or "[in_i]"), "[in_i]")
    except (Refusal, ArithmeticError):
        return None
    return Point(x, y, height)


def _draw(place: str, points: list[Point], names: Names) -> Drawing | None:
    heights = tuple(point.height for point in points)
    spread = max(heights) - min(heights)
    step = next((i for i in _INTERVALS if spread / i <= _MOST_LINES), _INTERVALS[-1])
    lines = contours(tuple(points), heights, step)
    left, right = min(p.x for p in points), max(p.x for p in points)
    low, top = min(p.y for p in points), max(p.y for p in points)
    across, up = float(right - left), float(top - low)
    if not across or not up:
        return None
    scale = min((_WIDE - 2 * _EDGE) / across, (_WIDE - 2 * _EDGE) / up)
    high = up * scale + 2 * _EDGE

    def at(x: Fraction, y: Fraction) -> tuple[float, float]:
        return _EDGE + float(x - left) * scale, high - _EDGE - float(y - low) * scale

    parts = []
    for one in lines:
        corners = [at(x, y) for x, y in one.corners]
        parts.append(path(corners, stroke=ACCENT, wide=1.6 if one.level == 0 else 1, closed=one.closed))
        x, y = corners[len(corners) // 2]
        parts.append(text(x + 3, y - 3, f"{float(one.level):g}", size=7.5, fill=ACCENT))
    for point in points:
        x, y = at(point.x, point.y)
        parts += [circle(x, y, 2.2), text(x, y + 11, f"{float(point.height):g}", size=8, fill=INK, anchor="middle")]
    say = names.tongue.say
    parts.append(text(_EDGE, 14, say("inches; lines every {step} in", step=f"{float(step):g}"), size=8, fill=QUIET))
    says = say(
        "Level readings in {place}: {count} places, from {low} to {high} in.",
        place=place, count=len(points), low=f"{float(min(heights)):g}", high=f"{float(max(heights)):g}",
    )  # fmt: skip
    caption = say("{place}: heights of the floor in inches, as read.", place=capital(place))
    return drawing(f"levels-{place}", _WIDE, high, parts, says=says, part="readings", caption=caption)


def level_drawings(record: Record, names: Names) -> tuple[Drawing, ...]:
    """One drawing for each place with at least four level readings that say where they were taken."""
    told: dict[str, list[Point]] = {}
    for fact in record.facts:
        if isinstance(fact.body, Read) and fact.body.measure == _MEASURE and (point := _point(fact.body)):
            told.setdefault(names.place_of(fact) or names.tongue.say("the house"), []).append(point)
    made = [_draw(place, points[:_MOST], names) for place, points in told.items() if len(points) >= _FEWEST]
    return tuple(one for one in made if one is not None)
