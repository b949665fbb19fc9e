"""The problems met while packs are read, and the nearest words to a mistyped one."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from difflib import get_close_matches

from witnessmark.packs.messages import UNKNOWN_KEY
from witnessmark.problems import Message, Problem

__all__ = ["Report", "close", "unknown_keys"]

#: Longer words than this are no ids; they are cut where they are told of.
_LONGEST = 80
#: Spelling suggestions are slow; a file with more problems than this has others than spelling.
_SUGGESTIONS = 40


class Report:
    """The problems met so far, each told with the place it was met at."""

    def __init__(self) -> None:
        self.problems: list[Problem] = []

    def __call__(self, message: Message, where: str, detail: str = "") -> None:
        """Note one problem."""
        self.problems.append(message.at(where, detail))

    def nearest(self, word: str, words: Iterable[str]) -> str:
        """The nearest of *words* in a phrase, or nothing."""
        return close(word, words) if len(self.problems) < _SUGGESTIONS else ""


def close(word: str, words: Iterable[str]) -> str:
    """The nearest of *words* to *word* as ``, did you mean …``; empty when none is near."""
    near = get_close_matches(word[:_LONGEST], list(words), n=3, cutoff=0.6)
    return f", did you mean {' or '.join(near)}?" if near else ""


def unknown_keys(table: Mapping[str, object], allowed: tuple[str, ...], where: str, report: Report) -> None:
    """Report the keys of *table* that are not *allowed*, with the allowed ones and the nearest."""
    for key in table:
        if key not in allowed:
            near = report.nearest(key, allowed)
            report(UNKNOWN_KEY, f"{where}, key {key[:_LONGEST]!r}", f"allowed: {', '.join(allowed)}{near}")
