"""The little of SVG that the drawings need. Text is escaped; nothing is fetched and nothing runs."""

from __future__ import annotations

from collections.abc import Iterable
from html import escape

from witnessmark.report.letter import Drawing

__all__ = ["ACCENT", "FAINT", "INK", "QUIET", "circle", "drawing", "line", "path", "rect", "text", "width_of"]

INK, QUIET, FAINT, ACCENT = "#1c1b19", "#504c46", "#cfc9bd", "#1d3f72"
_SANS = "Inter, sans-serif"
#: Mean width of a letter against the size of the type; a drawing only needs to know what surely fits.
_LETTER = 0.56


def _n(value: float) -> str:
    return f"{value:.1f}".rstrip("0").rstrip(".")


def width_of(words: str, size: float) -> float:
    """About how wide words are at a size."""
    return len(words) * size * _LETTER


def line(x1: float, y1: float, x2: float, y2: float, *, stroke: str = INK, wide: float = 1, dash: str = "") -> str:
    """A straight line."""
    dashed = f' stroke-dasharray="{dash}"' if dash else ""
    return f'<path d="M{_n(x1)} {_n(y1)}L{_n(x2)} {_n(y2)}" stroke="{stroke}" stroke-width="{_n(wide)}" fill="none"{dashed}/>'


def path(corners: Iterable[tuple[float, float]], *, stroke: str = INK, wide: float = 1, closed: bool = False) -> str:
    """A line through corners."""
    steps = "L".join(f"{_n(x)} {_n(y)}" for x, y in corners)
    return f'<path d="M{steps}{"Z" if closed else ""}" stroke="{stroke}" stroke-width="{_n(wide)}" fill="none" stroke-linejoin="round"/>'


def rect(x: float, y: float, wide: float, high: float, *, fill: str, stroke: str = "none") -> str:
    """A box."""
    return f'<rect x="{_n(x)}" y="{_n(y)}" width="{_n(max(wide, 0))}" height="{_n(high)}" fill="{fill}" stroke="{stroke}"/>'


def circle(x: float, y: float, radius: float, *, fill: str = INK, stroke: str = "none") -> str:
    """A dot."""
    return f'<circle cx="{_n(x)}" cy="{_n(y)}" r="{_n(radius)}" fill="{fill}" stroke="{stroke}"/>'


def text(x: float, y: float, words: str, *, size: float = 9, fill: str = QUIET, anchor: str = "start") -> str:
    """Words; ``y`` is their base line."""
    return f'<text x="{_n(x)}" y="{_n(y)}" font-family="{_SANS}" font-size="{_n(size)}" fill="{fill}" text-anchor="{anchor}">{escape(words)}</text>'


def drawing(
    name: str, wide: float, high: float, parts: Iterable[str], *, says: str, part: str = "", caption: str = ""
) -> Drawing:
    """A finished drawing: *says* is what a reader who does not see it is told, *part* where in the letter it stands."""
    body = "".join(parts)
    svg = (
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {_n(wide)} {_n(high)}" width="{_n(wide)}" '
        f'height="{_n(high)}">{body}</svg>'
    )
    return Drawing(name, part, svg, round(wide), round(high), says, caption)
