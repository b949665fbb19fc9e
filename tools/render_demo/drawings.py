"""Flat drawings for labels, dials, scales and displays; every maker and number on them is invented."""

from __future__ import annotations

import math

from PIL import Image, ImageDraw, ImageFont

__all__ = ["board", "dial", "tape", "write"]

Ink = tuple[int, int, int] | tuple[int, int, int, int] | str


def board(wide: int, high: int, colour: Ink = (0, 0, 0, 0)) -> tuple[Image.Image, ImageDraw.ImageDraw]:
    """An empty drawing and the pen for it."""
    drawing = Image.new("RGBA", (wide, high), colour)
    return drawing, ImageDraw.Draw(drawing)


def write(
    pen: ImageDraw.ImageDraw,
    at: tuple[float, float],
    words: str,
    size: float,
    *,
    ink: Ink = "black",
    anchor: str = "lm",
    heavy: int = 0,
) -> None:
    """Words at a point; *heavy* pixels of outline make them bold."""
    pen.text(at, words, ink, ImageFont.load_default(size), anchor=anchor, stroke_width=heavy, stroke_fill=ink)


def tape(inches: float, *, start: float = 0.0, upright: bool = False) -> Image.Image:
    """A steel tape, yellow, 1 in wide, ticked to sixteenths; *upright* turns its figures for a tape held vertically."""
    scale = 96
    drawing, pen = board(math.ceil(inches * scale), scale, (236, 190, 22, 255))
    pen.rectangle((0, scale - 5, drawing.width, scale), fill=(200, 160, 20, 255))
    first = math.ceil(start * 16)
    for step in range(first, math.floor((start + inches) * 16) + 1):
        x = (step / 16 - start) * scale
        long = next(
            share for share, part in ((0.62, 16), (0.46, 8), (0.36, 4), (0.27, 2), (0.18, 1)) if step % part == 0
        )
        pen.line((x, 0, x, long * scale), fill=(15, 15, 15, 255), width=3 if step % 8 == 0 else 2)
        if step % 16 == 0 and step:
            mark, ink = board(scale, scale)
            foot = (step // 16) % 12 == 0
            write(
                ink,
                (scale / 2, scale / 2),
                str(step // 16),
                44,
                ink=(190, 20, 20) if foot else "black",
                anchor="mm",
                heavy=1,
            )
            mark = mark.rotate(-90 if upright else 0)
            drawing.alpha_composite(
                mark, (max(0, round(x - (scale * 0.98 if not upright else scale * 0.85))), round(scale * 0.25))
            )
    return drawing


def dial(value: float, top: float, unit: str, *, step: float = 10.0, red_above: float | None = None) -> Image.Image:
    """A round gauge face from 0 to *top* over 270 degrees with its needle at *value*."""
    size = 700
    drawing, pen = board(size, size)
    middle = size / 2
    pen.ellipse((4, 4, size - 4, size - 4), fill=(246, 246, 240, 255))

    def spot(mark: float, radius: float) -> tuple[float, float]:
        angle = math.radians(225 - 270 * mark / top)
        return middle + radius * math.cos(angle), middle - radius * math.sin(angle)

    if red_above is not None:
        pen.arc((60, 60, size - 60, size - 60), 135 + 270 * red_above / top, 405, fill=(196, 30, 30, 255), width=18)
    for tick in range(round(top / step * 5) + 1):
        mark = tick * step / 5
        main = tick % 5 == 0
        pen.line((*spot(mark, 300), *spot(mark, 262 if main else 282)), fill="black", width=7 if main else 3)
        if main and round(mark / step) % 2 == 0:
            write(pen, spot(mark, 214), f"{mark:.0f}", 50, anchor="mm", heavy=1)
    write(pen, (middle, middle + 120), unit, 54, anchor="mm", heavy=1)
    write(pen, (middle, middle + 190), "WATER PRESSURE", 24, anchor="mm")
    tip, tail = spot(value, 272), spot(value + top * 2 / 3, 70)
    pen.line((*tail, *tip), fill=(20, 20, 20, 255), width=11)
    pen.ellipse((middle - 26, middle - 26, middle + 26, middle + 26), fill=(30, 30, 30, 255))
    return drawing
