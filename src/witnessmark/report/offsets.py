"""A finished PDF whose objects change their length: found by its table of offsets, which is then written anew.

Only the plain kind of table is known (ISO 32000-1, 7.5.4), as the typesetter writes it; whatever is built otherwise is refused
rather than guessed at.
"""

from __future__ import annotations

import re
from bisect import bisect_right
from collections.abc import Iterator
from dataclasses import dataclass
from itertools import accumulate

__all__ = ["Change", "Objects", "SplicingError"]

#: From where to where in the file, and what takes the place.
Change = tuple[int, int, bytes]
_TABLE = re.compile(rb"startxref\s+(\d+)\s+%%EOF\s*\Z")
_HEAD = re.compile(rb"xref\r?\n0 (\d+)\r?\n")
_ROW = 20
_ENTRY = re.compile(rb"\d{10} \d{5} [nf](?: \r| \n|\r\n)")
_BEGINS = re.compile(rb"(\d+) 0 obj\s+")
_BEFORE = re.compile(rb"(?<!\d)(\d+) 0 obj\s+\Z")


class SplicingError(ValueError):
    """The PDF is not built as this program knows it; set it with pictures and links as they are instead."""


@dataclass(frozen=True, slots=True)
class Objects:
    """A PDF and where its objects begin: ``starts`` by number, 0 for a number that is free."""

    pdf: bytes
    starts: tuple[int, ...]
    table: int
    rows_end: int
    tail: int

    @classmethod
    def of(cls, pdf: bytes) -> Objects:
        """Read the table.

        Raises:
            SplicingError: there is none, or not of this kind.
        """
        tail = _TABLE.search(pdf, max(0, len(pdf) - 64))
        table = int(tail[1]) if tail else -1
        head = _HEAD.match(pdf, table) if 0 <= table < len(pdf) else None
        if tail is None or head is None:
            raise SplicingError("the table of offsets is not where it should be")
        rows_end = head.end() + _ROW * int(head[1])
        if not pdf.startswith(b"trailer", rows_end):
            raise SplicingError("the table of offsets ends otherwise than it says")
        rows = [pdf[at : at + _ROW] for at in range(head.end(), rows_end, _ROW)]
        if wrong := next((row for row in rows if not _ENTRY.fullmatch(row)), None):
            raise SplicingError(f"{wrong!r} is no row of a table of offsets")
        starts = tuple(int(row[:10]) if row[17:18] == b"n" else 0 for row in rows)
        return cls(pdf, starts, table, rows_end, tail.start())

    def body(self, number: int) -> int:
        """Where the object of that number begins, after its number.

        Raises:
            SplicingError: it is not there.
        """
        start = self.starts[number] if number < len(self.starts) else 0
        head = _BEGINS.match(self.pdf, start) if start else None
        if head is None or int(head[1]) != number:
            raise SplicingError(f"object {number} is not where the table says")
        return head.end()

    def matching(self, form: re.Pattern[bytes]) -> Iterator[re.Match[bytes]]:
        """Every object whose beginning, after its number, has that form. What only looks like one, in a text, is passed over."""
        for found in form.finditer(self.pdf):
            near = max(0, found.start() - 32)
            head = _BEFORE.search(self.pdf[near : found.start()])
            number = int(head[1]) if head else 0
            if head and number < len(self.starts) and self.starts[number] == near + head.start():
                yield found

    def changed(self, changes: list[Change]) -> bytes:
        """The file with those stretches replaced; they must not overlap, and lie before the table."""
        pieces: list[bytes] = []
        edges, shifts, at = [], [0], 0
        for begin, end, new in sorted(changes):
            if begin < at or end > self.table:
                raise SplicingError("two changes overlap, or one reaches into the table of offsets")
            pieces += [self.pdf[at:begin], new]
            edges.append(end)
            shifts.append(len(new) - (end - begin))
            at = end
        shifts = list(accumulate(shifts))
        first = self.rows_end - _ROW * len(self.starts)
        rows = []
        for number, start in enumerate(self.starts):
            row = self.pdf[first + _ROW * number : first + _ROW * (number + 1)]
            rows.append(b"%010d" % (start + shifts[bisect_right(edges, start)]) + row[10:] if start else row)
        pieces += [self.pdf[at:first], *rows, self.pdf[self.rows_end : self.tail]]
        return b"".join([*pieces, b"startxref\n%d\n%%%%EOF\n" % (self.table + shifts[-1])])
