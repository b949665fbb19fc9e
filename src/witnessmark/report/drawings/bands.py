"""The outlook as bands: the years each source gives, and the age of the part on the day of the visit."""

from __future__ import annotations

from collections.abc import Sequence

from witnessmark.report.drawings.svg import ACCENT, FAINT, INK, circle, drawing, line, rect, text
from witnessmark.report.letter import Drawing, Outlook
from witnessmark.report.tongue import Tongue

__all__ = ["outlook_drawing"]

_WIDE, _LABEL, _ROW, _TOP = 640, 250, 17, 26
_LETTERS = 46
_OPEN_END = 8


def _years(row: Outlook, tongue: Tongue) -> str:
    if row.high is None:
        return tongue.say("{low} years and more", low=row.low)
    if row.low == row.high:
        return tongue.say("{low} years", low=row.low)
    return tongue.say("{low} to {high} years", low=row.low, high=row.high)


def outlook_drawing(rows: Sequence[Outlook], tongue: Tongue) -> Drawing | None:
    """One band for each source of each part; a band without an end fades into none. None when there is no outlook."""
    if not rows:
        return None
    most = max(max(row.high or row.low + _OPEN_END, row.age) for row in rows) + 2
    scale = (_WIDE - _LABEL - 16) / most
    parts = []
    step = 5 if most <= 60 else 10 if most <= 120 else 25  # noqa: PLR2004 - readable steps of an axis
    high = _TOP + len(rows) * _ROW + 6
    for years in range(0, most + 1, step):
        x = _LABEL + years * scale
        parts += [line(x, _TOP - 6, x, high - 4, stroke=FAINT), text(x, 12, str(years), size=8, anchor="middle")]
    told = []
    for n, row in enumerate(rows):
        y = _TOP + n * _ROW
        start, end = _LABEL + row.low * scale, _LABEL + (row.high or most) * scale
        label = f"{row.component}: {row.source}"
        label = label if len(label) <= _LETTERS else label[: _LETTERS - 1].rstrip() + "…"
        parts.append(text(_LABEL - 8, y + 8, label, size=8, fill=INK, anchor="end"))
        if row.low == row.high:
            parts.append(line(start, y, start, y + 11, stroke=ACCENT, wide=2.5))
        else:
            parts.append(rect(start, y + 2, end - start, 7, fill="none" if row.high is None else ACCENT, stroke=ACCENT))
        parts.append(circle(_LABEL + row.age * scale, y + 5.5, 4, fill="#fffefb", stroke=INK))
        told.append(
            tongue.say(
                "{what}, {age} years old; {source}: {years}",
                what=row.component, age=row.age, source=row.source, years=_years(row, tongue),
            )
        )  # fmt: skip
    caption = tongue.say("Years. Bars: what each source gives; rings: the age of the part at the visit.")
    return drawing("outlook", _WIDE, high, parts, says="; ".join(told) + ".", part="outlook", caption=caption)
