"""Where do phrases stand in a run of words? Longest first, left to right."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from typing import Generic, TypeVar

__all__ = ["Phrases"]

Payload = TypeVar("Payload")
#: Under a first word: what it stands for alone (a tuple of one, None for nothing), and, by the second word, the longer
#: phrases with their sizes, the longest first.
_Entry = tuple[tuple[Payload] | None, dict[str, list[tuple[int, dict[tuple[str, ...], Payload]]]]]


class Phrases(Generic[Payload]):
    """A table of phrases, each a tuple of compared words with what it stands for. The first row of a phrase holds."""

    __slots__ = ("_by_first", "_firsts", "_rows", "_words")

    def __init__(self, rows: Iterable[tuple[tuple[str, ...], Payload]]) -> None:
        by_first: dict[str, dict[int, dict[tuple[str, ...], Payload]]] = {}
        for words, payload in rows:
            if words:
                by_first.setdefault(words[0], {}).setdefault(len(words), {}).setdefault(words, payload)
        ordered = {first: sorted(sizes.items(), reverse=True) for first, sizes in by_first.items()}
        self._by_first: dict[str, _Entry[Payload]] = {first: _entry(sizes) for first, sizes in ordered.items()}
        self._firsts = frozenset(by_first)
        self._rows = tuple(row for sizes in ordered.values() for _, table in sizes for row in table.items())
        self._words = frozenset(word for words, _ in self._rows for word in words)

    @property
    def words(self) -> frozenset[str]:
        """Every word that stands in a phrase."""
        return self._words

    def __iter__(self) -> Iterator[tuple[tuple[str, ...], Payload]]:
        return iter(self._rows)

    def at(self, words: Sequence[str], index: int, end: int | None = None) -> tuple[int, Payload] | None:
        """The longest phrase that begins at *index* and ends by *end*: its end and what it stands for."""
        entry = self._by_first.get(words[index])
        if entry is None:
            return None
        alone, longer = entry
        stop = len(words) if end is None else end
        if index + 1 < stop:
            for size, table in longer.get(words[index + 1], ()):
                if index + size <= stop:
                    phrase = tuple(words[index : index + size])
                    if phrase in table:
                        return index + size, table[phrase]
        return None if alone is None or index >= stop else (index + 1, alone[0])

    def find(self, words: Sequence[str], start: int = 0, end: int | None = None) -> Iterator[tuple[int, int, Payload]]:
        """Every phrase between *start* and *end* that overlaps none before it: (start, end, what it stands for)."""
        # Most tables have nothing to do with most statements: that is settled without looking word by word.
        return iter(()) if self._firsts.isdisjoint(words) else self._found(words, start, end)

    def _found(self, words: Sequence[str], start: int, end: int | None) -> Iterator[tuple[int, int, Payload]]:
        stop = len(words) if end is None else end
        index = start
        firsts = self._firsts
        while index < stop:
            found = self.at(words, index, stop) if words[index] in firsts else None
            if found:
                yield index, found[0], found[1]
                index = found[0]
            else:
                index += 1

    def first(self, words: Sequence[str], start: int = 0, end: int | None = None) -> tuple[int, int, Payload] | None:
        """The first phrase between *start* and *end*, or None."""
        return None if self._firsts.isdisjoint(words) else next(self._found(words, start, end), None)


def _entry(sizes: Sequence[tuple[int, dict[tuple[str, ...], Payload]]]) -> _Entry[Payload]:
    """What stands under one first word, *sizes* the longest first."""
    alone: tuple[Payload] | None = None
    longer: dict[str, dict[int, dict[tuple[str, ...], Payload]]] = {}
    for size, table in sizes:
        for words, payload in table.items():
            if size == 1:
                alone = (payload,)
            else:
                longer.setdefault(words[1], {}).setdefault(size, {})[words] = payload
    return alone, {second: list(found.items()) for second, found in longer.items()}
