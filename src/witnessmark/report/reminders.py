"""When to look at what: the findings by how soon, as events that common calendars take (RFC 5545).

A finding says how soon in words and names no day. The days here are counted from the visit, a suggestion and nothing
more (common practice, no source); the event says so.
"""

from __future__ import annotations

from datetime import date, datetime, timedelta
from pathlib import Path
from uuid import UUID, uuid5

from icalendar import Calendar, Event

from witnessmark.report.data import replace_file
from witnessmark.report.letter import Finding, Letter

__all__ = ["REMINDERS", "reminders", "write_reminders"]

REMINDERS = "reminders.ics"
#: Days after the visit, and every how many months again, by urgency.
_WHEN: dict[str, tuple[int, int]] = {
    "now": (1, 0),
    "before use": (1, 0),
    "soon": (30, 0),
    "plan": (180, 0),
    "watch": (180, 6),
}
_SUGGESTED = (
    "The report names no day; this one is counted from the visit as a suggestion. What the report says is “{urgency}”."
)
_SPACE = UUID("6f0f5d5c-3f53-5a3e-9d0e-2f6f7a7c1b11")
_TIMES = 4


def _event(letter: Letter, urgency: str, findings: list[Finding], day: date) -> Event:
    event = Event()
    count = f"{len(findings)} finding{'s' * (len(findings) != 1)}"
    after, again = _WHEN[urgency]
    start = day + timedelta(after)
    event.add("uid", f"{uuid5(_SPACE, f'{letter.job} {urgency}')}")
    event.add("dtstamp", datetime.fromisoformat(letter.opening.issued_at))
    event.add("dtstart", start)
    event.add("dtend", start + timedelta(1))
    event.add("summary", f"{count} of the house inspection: {urgency} ({letter.opening.address})")
    event.add("location", ", ".join(part for part in (letter.opening.address, letter.opening.town) if part))
    lines = [f"{f.number}. {f.title}{f' ({f.place})' if f.place else ''}: {f.do}" for f in findings]
    event.add("description", "\n".join([_SUGGESTED.format(urgency=urgency), *lines]))
    event.add("transp", "TRANSPARENT")
    if again:
        event.add("rrule", {"freq": "monthly", "interval": again, "count": _TIMES})
    return event


def reminders(letter: Letter) -> bytes:
    """The calendar: one event for each urgency that findings have. The same bytes for the same letter."""
    calendar = Calendar()
    calendar.add("prodid", "-//Witnessmark//report//EN")
    calendar.add("version", "2.0")
    issued = datetime.fromisoformat(letter.opening.issued_at)
    day = date.fromisoformat(letter.opening.visited_on) if letter.opening.visited_on else issued.date()
    for urgency in _WHEN:
        findings = [finding for finding in letter.findings if finding.urgency == urgency]
        if findings:
            calendar.add_component(_event(letter, urgency, findings, day))
    return bytes(calendar.to_ical())


def write_reminders(letter: Letter, folder: Path) -> None:
    """Write the calendar. Refused (WM809) when the place does not take it."""
    replace_file(folder / REMINDERS, reminders(letter))
