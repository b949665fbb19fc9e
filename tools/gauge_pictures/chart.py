"""A line chart as SVG: ink on paper, one accent colour, words beside the lines."""

from __future__ import annotations

import math
from dataclasses import dataclass
from html import escape

__all__ = ["ACCENT", "INK", "PALE", "Line", "chart"]

INK, PALE, ACCENT = "#1f2328", "#c9c6bf", "#0b5c6b"
_WIDTH, _HEIGHT = 640, 400
_LEFT, _RIGHT, _TOP, _BOTTOM = 68, 132, 40, 52


@dataclass(frozen=True, slots=True)
class Line:
    """One line: its name, its points, whether it is the one that matters, whether it is broken."""

    name: str
    points: tuple[tuple[float, float], ...]
    accent: bool = False
    broken: bool = False


def _steps(low: float, high: float, *, log: bool) -> list[float]:
    if log:
        return [10.0**power for power in range(math.floor(math.log10(low)), math.ceil(math.log10(high)) + 1)]
    span = (high - low) or 1
    step = 10.0 ** math.floor(math.log10(span / 5))
    step *= next((m for m in (1, 2, 5) if span / (step * m) <= 7), 10)
    first, last = math.floor(low / step), math.ceil(high / step)
    return [round(at * step, 10) for at in range(first, last + 1)]


def _place(value: float, marks: list[float], start: float, size: float, *, log: bool) -> float:
    low, high = marks[0], marks[-1]
    if log:
        low, high, value = math.log10(low), math.log10(high), math.log10(value)
    return start + (value - low) / (high - low) * size


def chart(*, title: str, x: str, y: str, lines: tuple[Line, ...], x_log: bool = False, y_log: bool = False) -> str:
    """The chart; *x* and *y* are the axes' words with their units. Points of a logarithmic axis must be above 0."""
    across = _steps(
        min(p[0] for one in lines for p in one.points), max(p[0] for one in lines for p in one.points), log=x_log
    )
    up = _steps(
        min(p[1] for one in lines for p in one.points), max(p[1] for one in lines for p in one.points), log=y_log
    )
    wide, high = _WIDTH - _LEFT - _RIGHT, _HEIGHT - _TOP - _BOTTOM

    def at(point: tuple[float, float]) -> tuple[float, float]:
        return (
            _place(point[0], across, _LEFT, wide, log=x_log),
            _place(point[1], up, _TOP + high, -high, log=y_log),
        )

    parts = [
        (
            f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {_WIDTH} {_HEIGHT}" font-family="serif" '
            f'font-size="13" fill="{INK}" role="img" aria-label="{escape(title)}">'
        ),
        f'<rect width="{_WIDTH}" height="{_HEIGHT}" fill="#fffdf8"/>',
        f'<text x="{_LEFT}" y="22" font-size="15">{escape(title)}</text>',
    ]
    for mark in across:
        place = at((mark, up[0]))[0]
        parts.append(
            f'<path d="M{place:.1f} {_TOP}V{_TOP + high}" stroke="{PALE}" stroke-width=".6"/>'
            f'<text x="{place:.1f}" y="{_TOP + high + 18}" text-anchor="middle">{mark:g}</text>'
        )
    for mark in up:
        place = at((across[0], mark))[1]
        parts.append(
            f'<path d="M{_LEFT} {place:.1f}H{_LEFT + wide}" stroke="{PALE}" stroke-width=".6"/>'
            f'<text x="{_LEFT - 8}" y="{place + 4:.1f}" text-anchor="end">{mark:g}</text>'
        )
    parts.append(f'<text x="{_LEFT + wide / 2}" y="{_HEIGHT - 12}" text-anchor="middle">{escape(x)}</text>')
    parts.append(
        f'<text transform="translate(16 {_TOP + high / 2}) rotate(-90)" text-anchor="middle">{escape(y)}</text>'
    )
    ends: list[tuple[float, str, bool]] = []
    for one in lines:
        path = "L".join(f"{px:.1f} {py:.1f}" for px, py in map(at, one.points))
        dash = ' stroke-dasharray="5 4"' if one.broken else ""
        stroke = f'stroke="{ACCENT if one.accent else INK}" stroke-width="{2.4 if one.accent else 1.3}"'
        parts.append(f'<path d="M{path}" fill="none" {stroke}{dash}/>')
        ends.append((at(one.points[-1])[1], one.name, one.accent))
    taken = -math.inf
    for place, name, accent in sorted(ends):
        taken = max(place + 4, taken + 15)
        colour = f' fill="{ACCENT}"' if accent else ""
        parts.append(f'<text x="{_LEFT + wide + 8}" y="{taken:.1f}" font-size="12"{colour}>{escape(name)}</text>')
    return "\n".join([*parts, "</svg>"]) + "\n"
