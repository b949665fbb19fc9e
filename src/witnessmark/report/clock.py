"""When something happened, as a reader says it."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date, datetime, timedelta

from witnessmark.journal.fold import Record
from witnessmark.report.tongue import ENGLISH, Tongue

__all__ = ["Clock", "clock_of", "offset_words", "spell"]

_NOON = 12
_HOUR = 3600
_MINUTE = 60


def _moment(at: str) -> datetime | None:
    try:
        return datetime.fromisoformat(at)
    except ValueError:
        return None


def offset_words(offset: timedelta | None) -> str:
    """The offset from UTC, empty when not known.

    >>> offset_words(timedelta(hours=-7))
    'UTC−07:00'
    """
    if offset is None:
        return ""
    seconds = int(offset.total_seconds())
    sign = "−" if seconds < 0 else "+"
    hours, rest = divmod(abs(seconds), _HOUR)
    return f"UTC{sign}{hours:02}:{rest // _MINUTE:02}"


def _time(moment: datetime, *, seconds: bool) -> str:
    half = "am" if moment.hour < _NOON else "pm"
    tail = f":{moment.second:02}" if seconds else ""
    return f"{moment.hour % _NOON or _NOON}:{moment.minute:02}{tail} {half}"


def spell(number: int) -> str:
    """Small whole numbers in letters, others in figures.

    >>> spell(3), spell(14)
    ('three', '14')
    """
    return ENGLISH.number(number)


@dataclass(frozen=True, slots=True)
class Clock:
    """Prints times of one visit: the day and the offset are left out where they are the visit's own."""

    day: date | None
    offset: timedelta | None
    tongue: Tongue = ENGLISH

    def say(self, at: str, *, seconds: bool = True) -> str:
        """*at* (RFC 3339) as printed; text that is no time is returned as it is."""
        moment = _moment(at)
        if moment is None:
            return at
        words = _time(moment, seconds=seconds)
        if moment.date() != self.day:
            month = self.tongue.month(moment)
            words = self.tongue.say(
                "{time} on {month} {day}, {year}", time=words, month=month, day=moment.day, year=moment.year
            )
        if moment.utcoffset() != self.offset and moment.utcoffset() is not None:
            words += f" ({offset_words(moment.utcoffset())})"
        return words


def clock_of(visit: str, record: Record, tongue: Tongue = ENGLISH) -> Clock:
    """The clock of a job: the day of its visit, and the offset of its arrival (of its first entry without one)."""
    try:
        day = date.fromisoformat(visit)
    except ValueError:
        day = None
    at = next((fact.at for fact in record.facts if fact.act == "arrived"), "")
    at = at or next((fact.at for fact in record.facts), "")
    moment = _moment(at)
    if moment is None:
        return Clock(day, None, tongue)
    return Clock(day or moment.date(), moment.utcoffset(), tongue)
