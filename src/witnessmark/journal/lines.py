"""A journal file: one entry a line, each line ended by a newline."""

from __future__ import annotations

from collections.abc import Iterable

from witnessmark.journal.codec import from_line, to_line
from witnessmark.journal.entry import Entry
from witnessmark.problems import Problem

__all__ = ["read_lines", "write_lines"]


def read_lines(data: bytes, where: str) -> tuple[list[Entry], list[Problem]]:
    """The entries of a journal file in their order, and what is wrong with the lines that hold none.

    Whatever the bytes, nothing is raised and a bad line hides no good one. ``where`` names the file. Lines are
    counted from 1; only a newline ends a line.
    """
    entries: list[Entry] = []
    problems: list[Problem] = []
    lines = data.split(b"\n")
    if lines[-1] == b"":
        lines.pop()  # what stands after the last newline
    for number, line in enumerate(lines, 1):
        found = from_line(line, f"{where} line {number}")
        if isinstance(found, Problem):
            problems.append(found)
        else:
            entries.append(found)
    return entries, problems


def write_lines(entries: Iterable[Entry]) -> bytes:
    """The bytes of a journal file that holds the entries in their order. Raises as ``to_line`` does."""
    return b"".join(to_line(entry) + b"\n" for entry in entries)
