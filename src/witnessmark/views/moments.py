"""When something happened, as an instant that can be compared."""

from __future__ import annotations

from datetime import UTC, datetime

__all__ = ["instant"]


def instant(text: str) -> datetime | None:
    """The instant an RFC 3339 text names, None when it names none; without an offset it is read as UTC.

    >>> instant("2026-05-04T09:30:00-07:00").isoformat()
    '2026-05-04T09:30:00-07:00'
    """
    try:
        read = datetime.fromisoformat(text)
    except ValueError:
        return None
    return read if read.tzinfo is not None else read.replace(tzinfo=UTC)
