"""Where do phrases stand in a run of words? Longest first, left to right."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from typing import Generic, TypeVar

__all__ = ["Phrases"]

Payload = TypeVar("Payload")


class Phrases(Generic[Payload]):
    """A table of phrases, each a tuple of compared words with what it stands for. The first row of a phrase holds."""

    __slots__ = ("_by_first", "_words")

    def __init__(self, rows: Iterable[tuple[tuple[str, ...], Payload]]) -> None:
        by_first: dict[str, dict[int, dict[tuple[str, ...], Payload]]] = {}
        for words, payload in rows:
            if words:
                by_first.setdefault(words[0], {}).setdefault(len(words), {}).setdefault(words, payload)
        self._by_first: dict[str, list[tuple[int, dict[tuple[str, ...], Payload]]]] = {
            first: sorted(sizes.items(), reverse=True) for first, sizes in by_first.items()
        }
        self._words = frozenset(
            word for sizes in by_first.values() for table in sizes.values() for words in table for word in words
        )

    @property
    def words(self) -> frozenset[str]:
        """Every word that stands in a phrase."""
        return self._words

    def __iter__(self) -> Iterator[tuple[tuple[str, ...], Payload]]:
        for sizes in self._by_first.values():
            for _, table in sizes:
                yield from table.items()

    def at(self, words: Sequence[str], index: int, end: int | None = None) -> tuple[int, Payload] | None:
        """The longest phrase that begins at *index* and ends by *end*: its end and what it stands for."""
        left = (len(words) if end is None else end) - index
        for size, table in self._by_first.get(words[index], ()):
            if size <= left:
                phrase = tuple(words[index : index + size])
                if phrase in table:
                    return index + size, table[phrase]
        return None

    def find(self, words: Sequence[str], start: int = 0, end: int | None = None) -> Iterator[tuple[int, int, Payload]]:
        """Every phrase between *start* and *end* that overlaps none before it: (start, end, what it stands for)."""
        stop = len(words) if end is None else end
        index = start
        by_first = self._by_first
        while index < stop:
            found = self.at(words, index, stop) if words[index] in by_first else None
            if found:
                yield index, found[0], found[1]
                index = found[0]
            else:
                index += 1

    def first(self, words: Sequence[str], start: int = 0, end: int | None = None) -> tuple[int, int, Payload] | None:
        """The first phrase between *start* and *end*, or None."""
        return next(self.find(words, start, end), None)
