"""Ids of entries, jobs, places and components: UUID version 7 (RFC 9562, section 5.7).

They sort by the millisecond they were made in. Within one maker every id is greater than the one before, also when
the clock stands still or is set back (RFC 9562, section 6.2, method 2: the random part is counted up).
"""

from __future__ import annotations

import re
import secrets
import time
from collections.abc import Callable
from typing import Final

__all__ = ["Ids", "is_id", "is_uuid", "new_id"]

_V7: Final = re.compile(r"[0-9a-f]{8}-[0-9a-f]{4}-7[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}")
_UUID: Final = re.compile(r"[0-9a-f]{8}-[0-9a-f]{4}-[1-8][0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}")

_RANDOM_BITS: Final = 74  # 12 before the variant, 62 after it
_STEP_BITS: Final = 32  # how far the random part may jump within one millisecond
_LAST_MS: Final = 2**48 - 1


class Ids:
    """Makes ids that only grow. Ids that threads get from one shared maker differ, but their order is not promised.

    Args:
        bits: gives that many random bits; a seeded source gives reproducible ids for demonstrations and tests.
    """

    def __init__(self, bits: Callable[[int], int] = secrets.randbits) -> None:
        self._bits = bits
        self._ms = -1
        self._tail = 0

    def new(self, clock_ms: int | None = None) -> str:
        """A new id for that millisecond since the epoch (0 … 2**48 - 1), or for now."""
        ms = time.time_ns() // 1_000_000 if clock_ms is None else clock_ms
        if not 0 <= ms <= _LAST_MS:
            raise ValueError(f"{ms} milliseconds since the epoch do not fit an id; 0 to {_LAST_MS} do")
        if ms > self._ms:
            # The top bit stays clear, so that counting up has room.
            tail = self._bits(_RANDOM_BITS - 1)
        else:
            ms, tail = self._ms, self._tail + 1 + self._bits(_STEP_BITS)
            if tail >> _RANDOM_BITS:
                ms, tail = ms + 1, self._bits(_RANDOM_BITS - 1)
        self._ms, self._tail = ms, tail
        return _text(ms, tail)


def _text(ms: int, tail: int) -> str:
    value = (ms << 80) | (7 << 76) | ((tail >> 62) << 64) | (0b10 << 62) | (tail & (2**62 - 1))
    digits = f"{value:032x}"
    return f"{digits[:8]}-{digits[8:12]}-{digits[12:16]}-{digits[16:20]}-{digits[20:]}"


_process = Ids()


def new_id(clock_ms: int | None = None) -> str:
    """A new id; greater than every id this process made before."""
    return _process.new(clock_ms)


def is_id(text: str) -> bool:
    """Whether the text is a UUID version 7 in lower case.

    >>> is_id("017f22e2-79b0-7cc3-98c4-dc0c0c07398f")
    True
    """
    return _V7.fullmatch(text) is not None


def is_uuid(text: str) -> bool:
    """Whether the text is a UUID of any version (1 to 8) of RFC 9562 in lower case."""
    return _UUID.fullmatch(text) is not None
