"""The visit as a line of time: what was running when, and when it was looked at again."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import datetime, timedelta

from witnessmark.journal.acts import Arrived, Left
from witnessmark.journal.fold import Record
from witnessmark.report.drawings.svg import ACCENT, FAINT, INK, QUIET, circle, drawing, line, rect, text
from witnessmark.report.letter import Drawing
from witnessmark.report.naming import Names, capital
from witnessmark.views import Interval, instant, looks, timeline

__all__ = ["visit_drawing"]

_WIDE, _LABEL, _ROW, _TOP, _MOST = 640, 190, 17, 26, 60
_LETTERS = 34
_STEPS = (5, 10, 15, 30, 60, 120)
_MOST_MARKS = 9


def _steps(start: datetime, end: datetime) -> Iterator[datetime]:
    minutes = (end - start).total_seconds() / 60
    step = next((s for s in _STEPS if minutes / s <= _MOST_MARKS), _STEPS[-1])
    at = start.replace(minute=0, second=0, microsecond=0)
    while at <= end:
        if at >= start:
            yield at
        at += timedelta(minutes=step)


def _label(row: Interval, names: Names) -> str:
    thing = names.subject(row.run.fact) or row.run.body.what or names.tongue.say("something")
    place = names.place_of(row.run.fact)
    words = capital(f"{thing}, {place}" if place and place not in thing else thing)
    return words if len(words) <= _LETTERS else words[: _LETTERS - 1].rstrip() + "…"


def _instants(record: Record, act: type) -> list[datetime]:
    return [at for fact in record.facts if isinstance(fact.body, act) and (at := instant(fact.at)) is not None]


def visit_drawing(record: Record, names: Names) -> Drawing | None:
    """One row for each thing that was left running, by when it began; None when nothing was or no time can be read."""
    rows = list(timeline(record, names.house).intervals)[:_MOST]
    if not rows:
        return None
    say = names.tongue.say
    came, went = _instants(record, Arrived), _instants(record, Left)
    zone = (came or [rows[0].since])[0].tzinfo
    ends = [row.until for row in rows if row.until]
    start, end = min([*came, *(r.since for r in rows)]), max([*went, *ends, *(r.since for r in rows)])
    if end - start > timedelta(days=1):
        end = max([row.since for row in rows if row.since - start <= timedelta(days=1)] + [start + timedelta(hours=1)])
    span = max((end - start).total_seconds(), 60.0)

    def x(at: datetime) -> float:
        part = (at - start).total_seconds() / span
        return _LABEL + min(max(part, 0.0), 1.0) * (_WIDE - _LABEL - 12)

    again: dict[str, list[datetime]] = {}
    for look in looks(record, names.packs, names.house):
        at = instant(look.by.at) if look.by is not None else None
        if at is not None:
            again.setdefault(look.ran.id, []).append(at)
    high = _TOP + len(rows) * _ROW + 8
    parts = []
    for at in _steps(start.astimezone(zone), end.astimezone(zone)):
        parts += [
            line(x(at), _TOP - 6, x(at), high - 4, stroke=FAINT),
            text(x(at), 12, f"{at:%H:%M}", size=8, anchor="middle"),
        ]
    told = []
    for n, row in enumerate(rows):
        y = _TOP + n * _ROW
        label = _label(row, names)
        stop = row.until or end
        parts.append(text(_LABEL - 8, y + 8, label, size=8, fill=INK, anchor="end"))
        parts.append(
            rect(
                x(row.since),
                y + 2,
                max(x(stop) - x(row.since), 2),
                7,
                fill=ACCENT if row.until else "none",
                stroke=ACCENT,
            )
        )
        parts += [circle(x(at), y + 5.5, 4, fill="#fffefb", stroke=INK) for at in again.get(row.run.fact.id, ())]
        minutes = round((stop - row.since).total_seconds() / 60)
        told.append(
            say("{what}: {minutes} minutes", what=label, minutes=minutes)
            if row.until
            else say("{what}: not put back when this letter was written", what=label)
        )
    parts.append(line(_LABEL, _TOP - 6, _WIDE - 12, _TOP - 6, stroke=QUIET))
    caption = say("Bars: left running or changed, until it was put back; an empty bar was not. Rings: looked at again.")
    return drawing("visit", _WIDE, high, parts, says="; ".join(told) + ".", part="started", caption=caption)
