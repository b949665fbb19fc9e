"""Pictures of movement: contours of the worked survey, its chords, and lines of cracks and tilts."""

from __future__ import annotations

import math
from collections.abc import Callable
from html import escape
from itertools import pairwise

from gauge_pictures.chart import ACCENT, INK, PALE, Line, chart
from witnessmark.gauges import Answer, evaluate, find
from witnessmark.gauges.movement.asking import EXAMPLE

__all__ = ["PICTURES"]

_LEFT, _TOP, _FOOT = 70, 56, 12.0
_WIDE, _HIGH = 36, 24


def _at(x: float, y: float) -> tuple[float, float]:
    return (_LEFT + x * _FOOT, _TOP + (_HIGH - y) * _FOOT)


def _rows(answer: Answer) -> tuple[tuple[object, ...], ...]:
    return answer.table.rows if answer.table else ()


def _number(value: object) -> float:
    return float(str(value))


def _plan(title: str, note: str, marks: list[str]) -> str:
    """The plan of the worked example with every place and its reading, and *marks* over it."""
    wide, high = _LEFT * 2 + _WIDE * _FOOT, _TOP + _HIGH * _FOOT + 74
    x0, y0 = _at(0, _HIGH)
    parts = [
        (
            f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {wide:g} {high:g}" font-family="serif" '
            f'font-size="12" fill="{INK}" role="img" aria-label="{escape(title)}">'
        ),
        f'<rect width="{wide:g}" height="{high:g}" fill="#fffdf8"/>',
        f'<text x="{_LEFT}" y="24" font-size="15">{escape(title)}</text>',
        (
            f'<rect x="{x0}" y="{y0}" width="{_WIDE * _FOOT}" height="{_HIGH * _FOOT}" fill="none" '
            f'stroke="{PALE}" stroke-width="1.2"/>'
        ),
        *marks,
    ]
    for row in _rows(evaluate("floor-tilt", {"readings": EXAMPLE})):
        x, y = _at(_number(row[1]), _number(row[2]))
        across, up = _number(row[1]) / _WIDE, _number(row[2]) / _HIGH
        anchor = "end" if across == 0 else "start"
        dx = {0.0: -8, 1.0: 8}.get(across, 7)
        dy = {0.0: 16, 1.0: -7}.get(up, 4 if across in {0.0, 1.0} else 15)
        parts.append(
            f'<circle cx="{x:g}" cy="{y:g}" r="2.6"/>'
            f'<text x="{x + dx:g}" y="{y + dy:g}" text-anchor="{anchor}">{_number(row[3]):.1f}</text>'
        )
    parts.append(f'<text x="{_LEFT}" y="{high - 34:g}">{escape(note)}</text>')
    parts.append(f'<text x="{_LEFT}" y="{high - 16:g}">36 by 24 ft, heights in inches; an invented house.</text>')
    return "\n".join([*parts, "</svg>"]) + "\n"


def _clear(corners: list[tuple[float, float]]) -> tuple[float, float]:
    """The middle of the step of a line that lies farthest from the readings printed inside the plan."""
    printed = [_at(x, y) for x in (12, 24) for y in (0, 12, 24)] + [_at(x, 12) for x in (0, 36)]

    def room(spot: tuple[float, float]) -> float:
        return min(math.hypot(spot[0] - x - 14, spot[1] - y - 8) for x, y in printed)

    return max((((a + c) / 2, (b + d) / 2) for (a, b), (c, d) in pairwise(corners)), key=room)


def _contours() -> str:
    answer = evaluate("floor-contours", find("floor-contours").example)
    lines: dict[str, list[tuple[float, float]]] = {}
    heights: dict[str, float] = {}
    for number, height, x, y, _ in _rows(answer):
        lines.setdefault(str(number), []).append(_at(_number(x), _number(y)))
        heights[str(number)] = _number(height)
    marks = []
    for number, corners in lines.items():
        path = "L".join(f"{x:.1f} {y:.1f}" for x, y in corners)
        marks.append(f'<path d="M{path}" fill="none" stroke="{ACCENT}" stroke-width="1.5"/>')
        x, y = _clear(corners)
        marks.append(
            f'<rect x="{x - 16:.1f}" y="{y - 8:.1f}" width="32" height="15" fill="#fffdf8"/>'
            f'<text x="{x:.1f}" y="{y + 4:.1f}" text-anchor="middle" fill="{ACCENT}">{heights[number]:.2f}</text>'
        )
    return _plan("Lines of equal height, a quarter inch apart", answer.words, marks)


def _tilt() -> str:
    answer = evaluate("floor-tilt", {"readings": EXAMPLE})
    a, b = _number(answer["a"]), _number(answer["b"])
    size = (a * a + b * b) ** 0.5
    (x0, y0), (x1, y1) = _at(18, 12), _at(18 - 9 * a / size, 12 - 9 * b / size)
    marks = [
        (
            '<defs><marker id="tip" viewBox="0 0 8 8" refX="7" refY="4" markerWidth="9" markerHeight="9" '
            f'orient="auto"><path d="M0 0L8 4L0 8z" fill="{ACCENT}"/></marker></defs>'
        ),
        (
            f'<path d="M{x0:.1f} {y0:.1f}L{x1:.1f} {y1:.1f}" stroke="{ACCENT}" stroke-width="2.4" '
            'marker-end="url(#tip)"/>'
        ),
    ]
    return _plan("Where the floor falls as a whole", answer.words.split(";", 1)[0] + ".", marks)


def _profile() -> str:
    answer = evaluate("level-profile", find("level-profile").example)
    readings = ((0.0, 0.0), (10.0, -0.6), (20.0, -1.0), (30.0, -1.3), (40.0, -1.2))
    length, deflection = _number(answer["length"]), _number(answer["deflection"])
    return chart(
        title=f"A line of readings and its chord: {abs(deflection):.2f} in over {length:g} ft",
        x="along the line, ft",
        y="height, in",
        lines=(
            Line("floor", readings, accent=True),
            Line("chord", (readings[0], readings[-1]), broken=True),
            Line("deflection", ((20, -0.6), (20, -1.0))),
        ),
    )


PICTURES: dict[str, Callable[[], str]] = {
    "floor-contours": _contours,
    "floor-tilt": _tilt,
    "level-profile": _profile,
}
