"""Reading a journal line by line: every good entry comes back, every bad line is named, memory stays bounded."""

from __future__ import annotations

import io
from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass, field
from itertools import chain
from typing import BinaryIO, Final

from witnessmark.journal import messages as journal_messages
from witnessmark.journal.codec import from_line
from witnessmark.journal.entry import Entry, Unread
from witnessmark.problems import Message, Problem
from witnessmark.stores import messages

__all__ = ["LONGEST_LINE", "MOST_PROBLEMS", "Reader", "Reading", "read_lines"]

#: No entry's line is longer than this many bytes; longer ones are neither written nor loaded.
LONGEST_LINE: Final = 1 << 20

#: So many problems of one number are listed for one file; the rest are counted.
MOST_PROBLEMS: Final = 200

_MARK: Final = b"\xef\xbb\xbf"  # the byte-order mark that some editors put before UTF-8


@dataclass(slots=True)
class Reading:
    """What reading a journal gave.

    Attributes:
        entries: every good entry, in the order of the file, each id once.
        problems: what is wrong, in the order of the file.
        unread: entries of acts that this release does not know, told as problems; they are among the entries.
        lines: how many lines there are.
        size: how many bytes there are.
        whole: how many of them form whole lines, each with its newline.
    """

    entries: list[Entry] = field(default_factory=list)
    problems: list[Problem] = field(default_factory=list)
    unread: list[Problem] = field(default_factory=list)
    lines: int = 0
    size: int = 0
    whole: int = 0


class Reader:
    """Takes lines one by one and sorts them into entries and problems."""

    def __init__(self, name: str) -> None:
        self.reading = Reading()
        self._name = name
        self._first: dict[str, tuple[str, int]] = {}
        self._counts: Counter[str] = Counter()
        self._said: set[str] = set()

    def take(self, line: bytes, number: int) -> None:
        """One line without its newline; *number* counts from 1 and names it in problems."""
        self.reading.lines += 1
        unreadable = journal_messages.LINE_UNREADABLE.number
        if self._counts[unreadable] >= MOST_PROBLEMS and line[:1] != b"{" and line.strip():
            self._counts[unreadable] += 1  # a large file of something else: no entry begins so, do not parse each line
            return
        where = f"{self._name} line {number}"
        if line.endswith(b"\r"):
            line = line[:-1]
            self._changed("a carriage return at the end", where)
        if number == 1 and line.startswith(_MARK):
            line = line[len(_MARK) :]
            self._changed("a byte-order mark at the beginning", where)
        if not line.strip():
            self.problem(messages.BLANK_LINE.at(where))
            return
        entry = from_line(line, where)
        if isinstance(entry, Problem):
            self.problem(entry)
            return
        first = self._first.setdefault(entry.id, (entry.hash, number))
        if first[1] == number:
            self.reading.entries.append(entry)
            if isinstance(entry.body, Unread):
                self._unread(entry, where)
            return
        message = messages.REPEATED if first[0] == entry.hash else messages.SAME_ID
        self.problem(message.at(where, f"entry {entry.id}, first in line {first[1]}", entries=(entry.id,)))

    def problem(self, problem: Problem) -> None:
        """Note a problem, unless too many of its number were noted already."""
        if self._room(problem.message):
            self.reading.problems.append(problem)

    def done(self) -> Reading:
        """The reading, with a count of the problems that were not listed."""
        for number, count in self._counts.items():
            if count > MOST_PROBLEMS:
                detail = f"{count:,} times {number}, the first {MOST_PROBLEMS} are listed"
                listed = self.reading.unread if number == journal_messages.UNREAD.number else self.reading.problems
                listed.append(messages.MORE_PROBLEMS.at(self._name, detail))
        return self.reading

    def _room(self, message: Message) -> bool:
        self._counts[message.number] += 1
        return self._counts[message.number] <= MOST_PROBLEMS

    def _changed(self, detail: str, where: str) -> None:
        if detail not in self._said:  # said once: a conversion touches every line
            self._said.add(detail)
            self.problem(messages.LINE_ENDS.at(where, detail))

    def _unread(self, entry: Entry, where: str) -> None:
        if self._room(journal_messages.UNREAD):
            detail = f"act {entry.act!r}, version {entry.v}"
            self.reading.unread.append(journal_messages.UNREAD.at(where, detail, entries=(entry.id,)))


def read_lines(file: BinaryIO, name: str, size: int, more: bytes = b"") -> Reading:
    """Read a journal.

    Args:
        file: the open file; it is read from where it stands.
        name: names the file in problems.
        size: read no more than so many bytes; a writer may be adding to the file meanwhile.
        more: whole lines that belong after them.
    """
    reader = Reader(name)
    reading = reader.reading
    for number, (line, length, ended) in enumerate(chain(_split(file, size), _split(io.BytesIO(more), len(more))), 1):
        reading.size += length
        if ended:
            reading.whole = reading.size
        if line is None:
            reading.lines += 1
            reader.problem(messages.LINE_TOO_LONG.at(f"{name} line {number}", f"{length:,} bytes"))
        elif ended or not isinstance(from_line(line, name), Problem):
            reader.take(line, number)  # a last line that only lacks its newline is whole
        else:
            reading.lines += 1
            reader.problem(messages.TORN_LINE.at(f"{name} line {number}", f"{length:,} bytes"))
    if reading.size == 0:
        reader.problem(messages.EMPTY.at(name))
    return reader.done()


def _split(file: BinaryIO, size: int) -> Iterator[tuple[bytes | None, int, bool]]:
    """Each line without its newline (None when too long, and then never held whole), its length, and if it ended."""
    left = size
    while left > 0 and (line := file.readline(min(left, LONGEST_LINE + 1))):
        left -= len(line)
        if line.endswith(b"\n"):
            yield line[:-1], len(line), True
        elif len(line) <= LONGEST_LINE:
            yield line, len(line), False
        else:
            length = len(line)
            while left > 0 and not line.endswith(b"\n") and (line := file.readline(min(left, LONGEST_LINE))):
                length += len(line)
                left -= len(line)
            yield None, length, line.endswith(b"\n")
