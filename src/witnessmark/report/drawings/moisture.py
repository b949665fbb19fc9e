"""Moisture readings where they were taken on a wall or floor: numbers at their places, and nothing between them.

Nothing is drawn where nothing was read: how damp it is between two readings is not known. A larger dot is a higher
reading; the number beside it says how high, so that the drawing needs no colours.
"""

from __future__ import annotations

from fractions import Fraction

from witnessmark.journal.acts import Read
from witnessmark.journal.fold import Record
from witnessmark.report.drawings.spots import spot_of
from witnessmark.report.drawings.svg import ACCENT, FAINT, INK, QUIET, circle, drawing, rect, text
from witnessmark.report.letter import Drawing
from witnessmark.report.naming import Names, capital

__all__ = ["moisture_drawings"]

_MEASURES = ("wood-moisture", "wall-moisture", "floor-moisture")
_FEWEST, _MOST = 3, 200
_WIDE, _EDGE = 420.0, 40.0
_LEAST_DOT, _MORE_DOT = 2.0, 7.0

_Reading = tuple[Fraction, Fraction, Fraction]


def _draw(name: str, place: str, measure: str, rows: list[_Reading], names: Names) -> Drawing | None:
    left, right = min(x for x, _, _ in rows), max(x for x, _, _ in rows)
    low, top = min(y for _, y, _ in rows), max(y for _, y, _ in rows)
    least, most = min(v for _, _, v in rows), max(v for _, _, v in rows)
    across, up = float(right - left) or 1.0, float(top - low) or 1.0
    scale = min((_WIDE - 2 * _EDGE) / across, (_WIDE - 2 * _EDGE) / up)
    wide, high = across * scale + 2 * _EDGE, up * scale + 2 * _EDGE
    parts = [rect(_EDGE / 2, _EDGE / 2, wide - _EDGE, high - _EDGE, fill="none", stroke=FAINT)]
    for x, y, value in rows:
        at = _EDGE + float(x - left) * scale, high - _EDGE - float(y - low) * scale
        share = float((value - least) / (most - least)) if most > least else 0.0
        radius = _LEAST_DOT + share * _MORE_DOT
        parts.append(circle(*at, radius, fill=ACCENT))
        parts.append(
            text(at[0], min(at[1] + radius + 9, high - 2), f"{float(value):g}", size=8.5, fill=INK, anchor="middle")
        )
    say = names.tongue.say
    parts.append(text(_EDGE / 2, 12, measure, size=8, fill=QUIET))
    says = say(
        "{measure} in {place}: {count} places, from {low} to {high}.",
        measure=measure, place=place, count=len(rows), low=f"{float(least):g}", high=f"{float(most):g}",
    )  # fmt: skip
    caption = say(
        "{place}: {measure} where it was read; between the dots nothing is known.",
        place=capital(place),
        measure=measure,
    )
    return drawing(name, wide, high, parts, says=says, part="readings", caption=caption)


def moisture_drawings(record: Record, names: Names) -> tuple[Drawing, ...]:
    """One drawing for each place and measure with at least three readings that say where they were taken."""
    told: dict[tuple[str, str], list[_Reading]] = {}
    for fact in record.facts:
        body = fact.body
        spot = spot_of(body.spot) if isinstance(body, Read) and body.measure in _MEASURES else None
        if spot is None or not isinstance(body, Read):
            continue
        try:
            value = Fraction(body.value)
        except (ValueError, ZeroDivisionError):
            continue
        told.setdefault((names.place_of(fact) or names.tongue.say("the house"), body.measure), []).append(
            (*spot, value)
        )
    made = []
    for (place, measure), rows in told.items():
        known = names.packs.measures.get(measure)
        words = names.tongue.row("measure", measure, "name", known.name if known else measure.replace("-", " "))
        unit = " (%)" if known is not None and known.unit == "%" else ""
        if len(rows) >= _FEWEST:
            made.append(_draw(f"moisture-{measure}-{place}", place, words + unit, rows[:_MOST], names))
    return tuple(one for one in made if one is not None)
