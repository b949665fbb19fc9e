"""Times as they are recorded: RFC 3339 text with its offset, and the moment it stands for.

A profile of RFC 3339, section 5.6: capital ``T`` and ``Z``, at most six decimals of a second, years 1900 to 9998, no
leap second (a computer's clock never shows one). The text as written is kept in the journal; the moment is for
order and durations.
"""

from __future__ import annotations

import re
from datetime import UTC, datetime, timedelta
from typing import Final

from witnessmark.journal import messages
from witnessmark.problems import Refusal

__all__ = ["EPOCH", "instant", "since_epoch", "text_of"]

#: The beginning of POSIX time.
EPOCH: Final = datetime(1970, 1, 1, tzinfo=UTC)

_FORM: Final = re.compile(
    r"(?:19|[2-9][0-9])[0-9]{2}-[0-9]{2}-[0-9]{2}T[0-9]{2}:[0-9]{2}:[0-9]{2}(?:\.[0-9]{1,6})?"
    r"(?:Z|[+-](?:[01][0-9]|2[0-3]):[0-5][0-9])"
)
_LAST_YEAR: Final = 9998  # one year short of the calendar's end, so that no offset can lead beyond it


def instant(text: str) -> datetime:
    """The moment that the text names, with its offset.

    Raises:
        Refusal: WM209 when the text is not of that form or names no real date.

    >>> instant("2026-03-14T09:26:53-07:00").isoformat()
    '2026-03-14T09:26:53-07:00'
    """
    if _FORM.fullmatch(text) is not None:
        try:
            moment = datetime.fromisoformat(text)
        except ValueError as error:
            raise Refusal(messages.BAD_TIME.at(ascii(text[:80]), str(error))) from None
        if moment.year <= _LAST_YEAR:
            return moment
    raise Refusal(messages.BAD_TIME.at(ascii(text[:80]), "not of the form YYYY-MM-DDThh:mm:ss[.ffffff]±hh:mm"))


def since_epoch(text: str) -> timedelta:
    """How long after the epoch the moment lies; the fast key for ordering."""
    return instant(text) - EPOCH


def text_of(moment: datetime) -> str:
    """The moment as text, with its own offset; decimals only when there are any.

    Raises:
        Refusal: WM209 when the moment carries no offset, or one that is not in whole minutes.

    >>> text_of(datetime(2026, 3, 14, 9, 26, 53, tzinfo=UTC))
    '2026-03-14T09:26:53+00:00'
    """
    if moment.utcoffset() is None:
        raise Refusal(messages.BAD_TIME.at(str(moment), "it has no offset"))
    text = moment.isoformat(timespec="milliseconds" if moment.microsecond % 1000 == 0 else "microseconds")
    if moment.microsecond == 0:
        text = moment.isoformat(timespec="seconds")
    instant(text)
    return text
