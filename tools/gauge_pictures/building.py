"""Pictures of the building: where a chimney's height comes from, what is measured on a stair, where ledger bolts may be."""

from __future__ import annotations

from collections.abc import Callable
from decimal import Decimal
from html import escape

from gauge_pictures.chart import ACCENT, INK, PALE, Line, chart
from witnessmark.gauges.building import chimney_needs, triangle_sphere
from witnessmark.gauges.building.ledger import COLUMNS, SPACINGS

__all__ = ["PICTURES"]

Point = tuple[float, float]
_ONE = Decimal(1)
_SHORT = {
    "1/2 in lag screw": "lag screw", "1/2 in bolt": "bolt", "1/2 in bolt with 1/2 in stacked washers": "bolt, washers",
    "1/2 in lag screw, 1 in engineered rim": "lag, 1 in rim",
}  # fmt: skip


def _page(wide: int, high: int, title: str, parts: list[str]) -> str:
    head = (
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {wide} {high}" font-family="serif" font-size="13" '
        f'fill="{INK}" role="img" aria-label="{escape(title)}">'
    )
    paper = f'<rect width="{wide}" height="{high}" fill="#fffdf8"/>'
    return (
        "\n".join([head, paper, f'<text x="24" y="28" font-size="15">{escape(title)}</text>', *parts, "</svg>"]) + "\n"
    )


def _line(a: Point, b: Point, colour: str = INK, width: float = 1.6, *, broken: bool = False) -> str:
    dash = ' stroke-dasharray="5 4"' if broken else ""
    return f'<line x1="{a[0]:g}" y1="{a[1]:g}" x2="{b[0]:g}" y2="{b[1]:g}" stroke="{colour}" stroke-width="{width}"{dash}/>'


def _words(at: Point, text: str, anchor: str = "start", colour: str = INK) -> str:
    return f'<text x="{at[0]:g}" y="{at[1]:g}" text-anchor="{anchor}" fill="{colour}">{escape(text)}</text>'


def _measure(a: Point, b: Point, text: str, at: Point, anchor: str = "middle") -> str:
    """A measure between two points with small cross strokes at its ends."""
    across = (0, 5) if a[1] == b[1] else (5, 0)
    ends = [
        _line((p[0] - across[0], p[1] - across[1]), (p[0] + across[0], p[1] + across[1]), ACCENT, 1.4) for p in (a, b)
    ]
    return "\n".join([_line(a, b, ACCENT, 1.4), *ends, _words(at, text, anchor, ACCENT)])


def _chimney() -> str:
    """A 6:12 roof, chimney 12 ft below the ridge: 7 ft, because the roof within 10 ft stands 5 ft above its top edge."""
    foot, x0, y0, pitch = 17.0, 150.0, 250.0, 0.5  # the point where the chimney's uphill face meets the roof
    need = float(chimney_needs(6 * _ONE, 12 * _ONE)) / 12

    def at(right: float, up: float) -> Point:
        return (x0 + right * foot, y0 - up * foot)

    ridge = at(12, 12 * pitch)
    parts = [
        _line(at(-6, -6 * pitch), ridge),
        _line(ridge, at(20, 12 * pitch - 8 * pitch)),
        _line(at(0, 0), at(0, need)),
        _line(at(-2.5, -2.5 * pitch), at(-2.5, need)),
        _line(at(-2.5, need), at(0, need)),
        _line(at(10, 10 * pitch), at(10, need + 0.6), PALE, 1.2, broken=True),
        _line(at(0, need), at(14, need), PALE, 1.2, broken=True),
        _measure(at(0, need + 0.6), at(10, need + 0.6), "10 ft, level", (at(5, need + 1.0))),
        _measure(at(10, 10 * pitch), at(10, need), "2 ft", at(9.6, 10 * pitch + 0.8), "end"),
        _measure(at(1.2, 0), at(1.2, need), f"{need:g} ft needed here", at(1.6, 3.9), "start"),
        _measure(at(-3.4, 0), at(-3.4, 3), "3 ft at least", at(-3.8, 1.5), "end"),
        _line(at(-3.9, 0), at(0, 0), PALE, 1.2, broken=True),
        _words(
            (24, 334),
            "Roof 6 in 12, ridge 12 ft from the uphill face. Both rules hold: 3 ft above where the chimney passes",
        ),
        _words(
            (24, 352),
            "through the roof, and 2 ft above anything within 10 ft of it, measured level and not along the slope.",
        ),
    ]
    return _page(640, 370, "Height of a chimney above the roof", parts)


def _stair() -> str:
    inch, x0, y0 = 9.0, 90.0, 330.0
    riser, tread, nosing = 7.75, 10.0, 1.0

    def at(right: float, up: float) -> Point:
        return (x0 + right * inch, y0 - up * inch)

    parts = []
    for step in range(3):
        face, foot = step * tread, step * riser
        parts += [
            _line(at(face + nosing, foot), at(face + nosing, foot + riser - 1)),
            _line(at(face, foot + riser - 1), at(face + nosing, foot + riser - 1)),
            _line(at(face, foot + riser - 1), at(face, foot + riser)),
            _line(at(face, foot + riser), at(face + tread + nosing, foot + riser)),
        ]
    parts += [
        _line(at(-8, 0), at(nosing, 0)),
        _line(at(-5, riser - 5 * riser / tread), at(27, riser + 27 * riser / tread), PALE, 1.2, broken=True),
        _measure(at(0, 18.6), at(10, 18.6), "tread, nosing to nosing", at(5, 19.6)),
        _line(at(0, riser), at(0, 18.6), PALE, 1, broken=True),
        _line(at(10, 2 * riser), at(10, 18.6), PALE, 1, broken=True),
        _measure(at(33, 2 * riser), at(33, 3 * riser), "riser", at(34, 2.45 * riser), "start"),
        _line(at(21, 2 * riser), at(33, 2 * riser), PALE, 1, broken=True),
        _measure(at(20, riser * 2 - 2.5), at(21, riser * 2 - 2.5), "nosing", at(22, riser * 2 - 3), "start"),
        _line(at(20, 3 * riser), at(20, riser * 2 - 2.5), PALE, 1, broken=True),
        _words((at(27, riser + 27 * riser / tread + 0.8)), "line of the nosings:", "start"),
        _words((at(27, riser + 27 * riser / tread - 0.9)), "rail height and headroom", "start"),
        _words((24, 378), "In one flight the tallest riser is at most 3/8 in more than the lowest; treads likewise."),
        _words(
            (24, 396),
            f"A ball of {triangle_sphere(7.75, 10):.1f} in fits the triangle of a 7 3/4 by 10 in step under a rail on the nosings.",
        ),
    ]
    return _page(640, 412, "What is measured on a stair", parts)


def _edges() -> str:
    inch, x0, y0 = 22.0, 110.0, 90.0
    long, deep = 20.0, 9.25
    bolts = [(2.5, 2.0), (8.0, 8.5), (13.5, 2.0)]

    def at(right: float, down: float) -> Point:
        return (x0 + right * inch, y0 + down * inch)

    (left, top), (right, bottom) = at(0, 0), at(long, deep)
    parts = [
        f'<rect x="{left}" y="{top}" width="{right - left}" height="{bottom - top}" fill="none" stroke="{INK}" stroke-width="1.6"/>',
        *(f'<circle cx="{at(*bolt)[0]:g}" cy="{at(*bolt)[1]:g}" r="5" fill="{INK}"/>' for bolt in bolts),
        _measure(at(13.5, 0), at(13.5, 2), "2 in at least", at(13.9, 1.2), "start"),
        _measure(at(8, 8.5), at(8, 9.25), "3/4 in at least", at(8.6, 9.1), "start"),
        _measure(at(0, 2), at(2.5, 2), "2 to 5 in", at(1.25, 1.6)),
        _measure(at(2.5, 4.6), at(8, 4.6), "spacing by the table", at(5.25, 4.3)),
        _line(at(2.5, 2), at(2.5, 4.6), PALE, 1, broken=True),
        _line(at(8, 8.5), at(8, 4.6), PALE, 1, broken=True),
        _measure(at(17, 2), at(17, 8.5), "rows 1 5/8 in apart at least,", at(16.6, 5.2), "end"),
        _words(at(16.6, 6.0), "5 in at most", "end", ACCENT),
        _line(at(13.5, 2), at(17, 2), PALE, 1, broken=True),
        _line(at(8, 8.5), at(17, 8.5), PALE, 1, broken=True),
        _words(
            (24, 334),
            "Rows are staggered. In the band joist behind, top and bottom change places: 3/4 in above, 2 in below.",
        ),
    ]
    return _page(640, 352, "Fasteners in a deck ledger", parts)


def _spacings() -> str:
    lines = []
    for name, spacings in SPACINGS.items():
        points: list[Point] = []
        start = 4.0
        for column, spacing in zip(COLUMNS, spacings, strict=True):
            points += [(start, float(spacing)), (float(column), float(spacing))]
            start = float(column)
        lines.append(Line(_SHORT[name], tuple(points), accent=name == "1/2 in bolt"))
    return chart(
        title="Ledger fasteners: greatest spacing, next larger column",
        x="joist span (ft)",
        y="spacing on centre (in)",
        lines=tuple(lines),
    )


#: A picture for each gauge that one helps.
PICTURES: dict[str, Callable[[], str]] = {
    "chimney-height": _chimney,
    "stair-flight": _stair,
    "deck-ledger-edges": _edges,
    "deck-ledger-fasteners": _spacings,
}
