"""When was it taken, by what the camera wrote into the file?"""

from __future__ import annotations

import re
from datetime import datetime

from witnessmark.imaging import messages
from witnessmark.imaging.decoding import Facts
from witnessmark.problems import Problem, Refusal

__all__ = ["checked_offset", "moment_of", "orientation_of"]

# Tags of EXIF 2.32 (CIPA DC-008), tables 4 to 8.
_ORIENTATION = 0x0112
_TIMES = ((0x9003, 0x9011), (0x9004, 0x9012))  # original, digitised; each with its offset

_CLOCK = re.compile(r"(\d{4}):(\d\d):(\d\d) (\d\d):(\d\d):(\d\d)")
_OFFSET = re.compile(r"[+-](?:0\d|1[0-4]):[0-5]\d")
_UPRIGHT = 1
_LAST_TURN = 8


def checked_offset(offset: str | None) -> str | None:
    """The offset as given, when it is one (``-07:00``); refuses anything else (WM711).

    >>> checked_offset("+05:45")
    '+05:45'
    """
    if offset is not None and not _OFFSET.fullmatch(offset):
        raise Refusal(messages.BAD_OFFSET.at(ascii(offset[:40])))
    return offset


def orientation_of(facts: Facts) -> int:
    """How the camera was held, 1 to 8 as EXIF counts; 1 (upright) when the file says nothing usable."""
    value = facts.picture.get(_ORIENTATION)
    return value if isinstance(value, int) and _UPRIGHT <= value <= _LAST_TURN else _UPRIGHT


def moment_of(facts: Facts, where: str, default_offset: str | None = None) -> tuple[str | None, list[Problem]]:
    """RFC 3339 with offset, from DateTimeOriginal (else DateTimeDigitized) and the offset beside it.

    A clock time without an offset takes *default_offset*; without that either the time is None and WM710 says so.
    The time of the last change of the file is never taken for the time of the photo (WM709).
    """
    for time_tag, offset_tag in _TIMES:
        found = _CLOCK.match(_text(facts.taking.get(time_tag)))
        if not found:
            continue
        year, month, day, hour, minute, second = found.groups()
        clock = f"{year}-{month}-{day}T{hour}:{minute}:{second}"
        try:
            datetime.fromisoformat(clock)
        except ValueError:
            continue
        offset = _text(facts.taking.get(offset_tag))
        if _OFFSET.fullmatch(offset):
            return clock + offset, []
        if default_offset is not None:
            return clock + default_offset, []
        return None, [messages.NO_OFFSET.at(where, f"clock time {clock.replace('T', ' ')}")]
    return None, [messages.NO_TIME.at(where)]


def _text(value: object) -> str:
    if isinstance(value, bytes):
        value = value.decode("ascii", "replace")
    return value.strip("\0 ") if isinstance(value, str) else ""
