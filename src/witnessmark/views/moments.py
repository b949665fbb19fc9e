"""When something happened, as an instant that can be compared."""

from __future__ import annotations

from datetime import datetime

from witnessmark.journal import moment
from witnessmark.problems import Refusal

__all__ = ["instant"]


def instant(text: str) -> datetime | None:
    """The instant an RFC 3339 text with its offset names, None when it names none.

    >>> instant("2026-05-04T09:30:00-07:00").isoformat(), instant("half past nine")
    ('2026-05-04T09:30:00-07:00', None)
    """
    try:
        return moment.instant(text)
    except Refusal:
        return None
