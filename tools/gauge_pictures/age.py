"""Pictures of age: which lives the sources give, how parts thin out, and what a house may need."""

from __future__ import annotations

from collections.abc import Callable
from html import escape

from gauge_pictures.chart import ACCENT, INK, PALE, Line, chart
from witnessmark.gauges.age.life_range import SOURCE_NAMES, statements
from witnessmark.gauges.age.lives_table import Life
from witnessmark.gauges.age.replacements import simulated
from witnessmark.gauges.age.weibull import Law, fitted

__all__ = ["PICTURES"]

_LEFT, _TOP, _ROW, _SCALE = 250, 44, 24, 12.0
_YEARS = range(41)


def _survival() -> str:
    middle, shorter, longer = fitted(20, 30), fitted(16, 24), fitted(24, 36)

    def line(name: str, law: Law, *, accent: bool = False) -> Line:
        points = tuple((float(y), 100 * law.survival(y)) for y in _YEARS)
        return Line(name, points, accent=accent, broken=not accent)

    drawn: str = chart(
        title="Share of parts still in use, life range 20 to 30 years",
        x="age, years",
        y="still in use, %",
        lines=(
            line("lives a fifth longer", longer),
            line("20 to 30 years", middle, accent=True),
            line("a fifth shorter", shorter),
        ),
    )
    return drawn


def _chance() -> str:
    law = fitted(10, 20)
    aged = tuple((float(age), 100 * law.next_years(age, 5)) for age in range(31))
    fresh = tuple((float(age), 100 * (1 - law.survival(age + 5))) for age in range(31))
    drawn: str = chart(
        title="Chance to fail within five years, life range 10 to 20 years",
        x="age reached, years",
        y="chance, %",
        lines=(Line("of one this old", aged, accent=True), Line("wrong: of a new one", fresh, broken=True)),
    )
    return drawn


def _outlook() -> str:
    house = ((15, 25, 14), (8, 15, 9), (15, 25, 12), (8, 14, 6))
    parts = [(fitted(low, high), float(age)) for low, high, age in house]
    years = list(range(1, 21))
    found = simulated(parts, years, 1000)
    drawn: str = chart(
        title="Replacements in a house of four parts",
        x="years ahead",
        y="replacements",
        lines=(
            Line(
                "nine of ten houses",
                tuple((y, float(one.high)) for y, one in zip(years, found, strict=True)),
                broken=True,
            ),
            Line("expected", tuple((y, one.mean) for y, one in zip(years, found, strict=True)), accent=True),
            Line(
                "one of ten houses",
                tuple((y, float(one.low)) for y, one in zip(years, found, strict=True)),
                broken=True,
            ),
        ),
    )
    return drawn


def _row(life: Life, name: str, down: float) -> str:
    about = ", ".join(filter(None, (life.climate, "" if "," in life.note else life.note)))
    low, high = (_LEFT + _SCALE * years for years in (life.low, life.high or 30))
    text = f"{name}{f' ({about})' if about else ''}"
    ends = (
        f'<circle cx="{low}" cy="{down}" r="4" fill="{ACCENT}"/><circle cx="{high}" cy="{down}" r="4" fill="{ACCENT}"/>'
    )
    line = f'<path d="M{low} {down}H{high}" stroke="{ACCENT}" stroke-width="2.4"/>'
    return f'<text x="{_LEFT - 10}" y="{down + 4}" text-anchor="end" font-size="12">{escape(text)}</text>{line}{ends}'


def _ranges() -> str:
    names = {key: name for name, key in SOURCE_NAMES.items()}
    lives = statements("storage water heater")
    high = _TOP + _ROW * len(lives) + 44
    parts = [
        (
            f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 640 {high}" font-family="serif" font-size="13" '
            f'fill="{INK}" role="img" aria-label="Lives of a storage water heater by source">'
        ),
        f'<rect width="640" height="{high}" fill="#fffdf8"/>',
        '<text x="16" y="24" font-size="15">Lives that sources give for a storage water heater</text>',
    ]
    for years in range(0, 31, 5):
        across, foot = _LEFT + _SCALE * years, high - 36
        parts.append(f'<path d="M{across} {_TOP - 8}V{foot}" stroke="{PALE}" stroke-width=".6"/>')
        parts.append(f'<text x="{across}" y="{foot + 16}" text-anchor="middle">{years}</text>')
    parts += [_row(life, names[life.source], _TOP + _ROW * at + 4) for at, life in enumerate(lives)]
    parts.append(f'<text x="{_LEFT + _SCALE * 15}" y="{high - 4}" text-anchor="middle">years</text>')
    return "\n".join([*parts, "</svg>"]) + "\n"


#: Gauge name: what draws its picture.
PICTURES: dict[str, Callable[[], str]] = {
    "life-range": _ranges,
    "life-fit": _survival,
    "failure-chance-by-range": _chance,
    "house-outlook": _outlook,
}
