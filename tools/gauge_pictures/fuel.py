"""Pictures of the gauges of fuel: carbon monoxide by source over time, gas pipe capacity over length."""

from __future__ import annotations

import math
from collections.abc import Callable
from html import escape

from gauge_pictures.chart import ACCENT, INK, PALE, Line, chart
from witnessmark.gauges.fuel import INSIDE_DIAMETERS, low_pressure_cfh, spitzglass_cfh
from witnessmark.gauges.fuel.monoxide_alarm import ALARM_POINTS

__all__ = ["PICTURES"]

_WIDTH, _HEIGHT, _LEFT, _RIGHT, _TOP, _BOTTOM = 640, 400, 68, 20, 64, 52
_PPM, _MINUTES = (5.0, 600.0), (2.0, 1000.0)
#: Averages over a time: level in ppm, minutes, who says so, and which end of the words stands at the point.
_AVERAGES = (
    (9.0, 480, "outdoor air", "middle"), (35.0, 60, "outdoor air", "end"), (35.0, 480, "work, recommended", "end"),
    (50.0, 480, "work, law", "middle"),
)  # fmt: skip
#: Levels at which field bands and the trade's scale act at once.
_AT_ONCE = ((9.5, "inform, advise", INK), (35.5, "shut off, ventilate", INK), (70.0, "field: out", ACCENT),
            (100.0, "trade: out", INK))  # fmt: skip


def _across(ppm: float) -> float:
    share = math.log(ppm / _PPM[0]) / math.log(_PPM[1] / _PPM[0])
    return _LEFT + share * (_WIDTH - _LEFT - _RIGHT)


def _up(minutes: float) -> float:
    share = math.log(minutes / _MINUTES[0]) / math.log(_MINUTES[1] / _MINUTES[0])
    return _HEIGHT - _BOTTOM - share * (_HEIGHT - _TOP - _BOTTOM)


def _text(x: float, y: float, words: str, *, end: str = "start", colour: str = INK) -> str:
    return f'<text x="{x:.1f}" y="{y:.1f}" text-anchor="{end}" fill="{colour}" stroke="#fffdf8" stroke-width="4" paint-order="stroke">{escape(words)}</text>'


def _monoxide() -> str:
    low, high = _HEIGHT - _BOTTOM, _TOP
    title = "Carbon monoxide in a room: each source says its own"
    parts = [
        (
            f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {_WIDTH} {_HEIGHT}" width="{_WIDTH}" '
            f'height="{_HEIGHT}" role="img" font-family="serif" font-size="12">'
        ),
        f'<title>{title}</title><rect width="{_WIDTH}" height="{_HEIGHT}" fill="#fffdf8"/>',
        f'<text x="{_LEFT}" y="20" font-size="14" fill="{INK}">{title}</text>',
    ]
    for mark in (5, 10, 20, 50, 100, 200, 500):
        parts.append(f'<path d="M{_across(mark):.1f} {low}v5" stroke="{INK}"/>')
        parts.append(_text(_across(mark), low + 18, str(mark), end="middle"))
    for minutes, word in ((4, "4 min"), (15, "15 min"), (60, "1 h"), (240, "4 h"), (480, "8 h")):
        parts.append(f'<path d="M{_LEFT} {_up(minutes):.1f}H{_WIDTH - _RIGHT}" stroke="{PALE}" stroke-width="0.6"/>')
        parts.append(_text(_LEFT - 8, _up(minutes) + 4, word, end="end"))
    parts.append(f'<path d="M{_LEFT} {high}V{low}H{_WIDTH - _RIGHT}" fill="none" stroke="{INK}"/>')
    parts.append(
        _text(
            (_LEFT + _WIDTH) / 2,
            _HEIGHT - 12,
            "carbon monoxide, ppm (bars: when an alarm sounds; dots: averages over the time)",
            end="middle",
        )
    )
    for at, (ppm, words, colour) in enumerate(_AT_ONCE):
        parts.append(f'<path d="M{_across(ppm):.1f} {high}V{low}" stroke="{colour}" stroke-dasharray="5 4"/>')
        parts.append(_text(_across(ppm), high - (6 if at % 2 == 0 else 20), words, end="middle", colour=colour))
    for ppm, minutes, words, end in _AVERAGES:
        parts.append(f'<circle cx="{_across(ppm):.1f}" cy="{_up(minutes):.1f}" r="3.5" fill="{INK}"/>')
        parts.append(_text(_across(ppm) - (6 if end == "end" else 0), _up(minutes) - 8, words, end=end))
    for level, first, last in ALARM_POINTS:
        x = _across(float(level))
        parts.append(f'<path d="M{x:.1f} {_up(first):.1f}V{_up(last):.1f}" stroke="{ACCENT}" stroke-width="5"/>')
        parts.append(_text(x, _up(first) + 16, f"alarm at {level}", end="middle", colour=ACCENT))
    return "".join((*parts, "</svg>"))


def _pipe() -> str:
    lengths = [10 + 2 * at for at in range(96)]
    sizes = ("1/2", "3/4", "1", "1 1/4")
    lines = [
        Line(f"{size} in", tuple((float(at), low_pressure_cfh(float(INSIDE_DIAMETERS[size]), at, 0.5)) for at in lengths),
             accent=size == "3/4")
        for size in sizes
    ]  # fmt: skip
    other = tuple((float(at), spitzglass_cfh(float(INSIDE_DIAMETERS["3/4"]), at, 0.5)) for at in lengths)
    lines.append(Line("3/4, Spitzglass", other, broken=True))
    return chart(
        title="Natural gas through steel pipe, 0.5 in w.c. of drop",
        x="pipe to the farthest outlet, ft",
        y="cubic feet an hour",
        lines=tuple(lines),
        y_log=True,
    )


PICTURES: dict[str, Callable[[], str]] = {"carbon-monoxide-level": _monoxide, "gas-pipe-capacity": _pipe}
