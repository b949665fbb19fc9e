"""A thermal frame as a picture for the page: even colours, a scale bar, and the extremes in words."""

from __future__ import annotations

import io

from PIL import Image, ImageDraw, ImageFont

from witnessmark.imaging.describe import said
from witnessmark.imaging.frame import Frame, Spot, celsius
from witnessmark.imaging.palette import COLOURS

__all__ = ["LEAST_RANGE", "frame_picture", "scale_of"]

#: The scale covers at least this many kelvin, so that a frame without contrast does not show its own noise as a pattern.
LEAST_RANGE = 3.0

_INK, _PAPER, _NOTHING = (20, 20, 20), (255, 255, 255), (255, 255, 255)
#: Size of the drawn frame, its margins and its writing, in pixels.
_LONG_SIDE, _MARGIN, _BAR, _WORDS, _LINE = 880, 24, 34, 236, 26
_FONT = 19
_MARKS = 5


def scale_of(frame: Frame) -> tuple[float, float]:
    """Lowest and highest temperature of the colour scale in °C: the frame's own, widened to ``LEAST_RANGE``."""
    low, high = frame.coldest.celsius, frame.warmest.celsius
    if high - low < LEAST_RANGE:
        middle = (low + high) / 2
        low, high = middle - LEAST_RANGE / 2, middle + LEAST_RANGE / 2
    return low, high


def frame_picture(frame: Frame) -> bytes:
    """The frame as a PNG: temperatures in even colours, enlarged by a whole number, with scale bar and words.

    The warmest and the coldest pixel are marked by a ring and named. Pixels without a reading are white.
    """
    low, high = scale_of(frame)
    times = max(1, round(_LONG_SIDE / max(frame.width, frame.height)))
    drawn = _coloured(frame, low, high).resize((frame.width * times, frame.height * times), Image.Resampling.NEAREST)
    lines = _lines(frame, low, high)
    least = _LINE * 2 * _MARKS
    high_side = max(drawn.height, least)
    # A frame much narrower than its words would have them cut off.
    pen_width = max(int(_font().getlength(line)) for line in lines)
    wide = max(_MARGIN * 3 + drawn.width + _BAR + _WORDS, pen_width + _MARGIN * 2)
    page = Image.new("RGB", (wide, _MARGIN * 2 + high_side + _LINE * (len(lines) + 1)), _PAPER)
    page.paste(drawn, (_MARGIN, _MARGIN))
    pen = ImageDraw.Draw(page)
    _mark(pen, frame.coldest, "coldest", times, drawn.size)
    _mark(pen, frame.warmest, "warmest", times, drawn.size)
    _scale_bar(pen, _MARGIN * 2 + drawn.width, high_side, low, high)
    for row, line in enumerate(lines):
        pen.text((_MARGIN, _MARGIN + high_side + _LINE * (row + 1)), line, _INK, _font(), anchor="lm")
    out = io.BytesIO()
    page.save(out, "PNG", optimize=True)
    return out.getvalue()


def _font() -> ImageFont.FreeTypeFont | ImageFont.ImageFont:
    return ImageFont.load_default(_FONT)


def _coloured(frame: Frame, low: float, high: float) -> Image.Image:
    span = high - low
    shade = {0: _NOTHING}
    for value in set(frame.values) - {0}:
        shade[value] = COLOURS[min(255, max(0, int((celsius(value) - low) / span * 256)))]
    pixels = bytes(channel for value in frame.values for channel in shade[value])
    return Image.frombytes("RGB", (frame.width, frame.height), pixels)


def _lines(frame: Frame, low: float, high: float) -> list[str]:
    coldest, warmest = frame.coldest.celsius, frame.warmest.celsius
    lines = [
        f"Warmest {said(warmest)}. Coldest {said(coldest)}. Half of the frame below {said(frame.median)}.",
        f"Colours run evenly from {low:.1f} to {high:.1f} °C. Apparent temperatures, not corrected further.",
    ]
    if warmest - coldest < LEAST_RANGE:
        lines.append(
            f"The frame varies by {warmest - coldest:.1f} K in all; the scale is wider, so that noise makes no pattern."
        )
    stated = [
        f"emissivity {frame.emissivity:g}" if frame.emissivity is not None else "",
        f"reflected {frame.reflected:g} °C" if frame.reflected is not None else "",
        f"distance {frame.distance:g} m" if frame.distance is not None else "",
        f"taken {frame.taken_at}" if frame.taken_at else "",
    ]
    if any(stated):
        lines.append("Set on the camera: " + ", ".join(part for part in stated if part) + ".")
    if frame.invented:
        lines.append("Invented frame, computed for demonstration.")
    return lines


def _mark(pen: ImageDraw.ImageDraw, spot: Spot, word: str, times: int, size: tuple[int, int]) -> None:
    x, y = _MARGIN + (spot.x + 0.5) * times, _MARGIN + (spot.y + 0.5) * times
    for radius, colour in ((11, _INK), (10, _PAPER), (9, _PAPER), (8, _INK)):
        pen.ellipse((x - radius, y - radius, x + radius, y + radius), outline=colour)
    left = spot.x * times > size[0] * 0.75
    at = (x - 16, y) if left else (x + 16, y)
    y_in = min(max(at[1], _MARGIN + _FONT / 2), _MARGIN + size[1] - _FONT / 2)
    pen.text((at[0], y_in), word, _PAPER, _font(), anchor="rm" if left else "lm", stroke_width=2, stroke_fill=_INK)


def _scale_bar(pen: ImageDraw.ImageDraw, x: int, high_side: int, low: float, high: float) -> None:
    for row in range(high_side):
        share = 1 - row / max(1, high_side - 1)
        pen.line((x, _MARGIN + row, x + _BAR, _MARGIN + row), fill=COLOURS[min(255, int(share * 256))])
    pen.rectangle((x, _MARGIN, x + _BAR, _MARGIN + high_side - 1), outline=_INK)
    for mark in range(_MARKS):
        share = mark / (_MARKS - 1)
        y = _MARGIN + round((1 - share) * (high_side - 1))
        pen.line((x + _BAR, y, x + _BAR + 8, y), fill=_INK, width=2)
        anchor = "la" if mark == _MARKS - 1 else "ld" if mark == 0 else "lm"
        pen.text((x + _BAR + 14, y), said(low + share * (high - low)), _INK, _font(), anchor=anchor)
