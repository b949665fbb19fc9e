"""Phrases are found as by looking at every phrase at every word; spellings agree as difflib says."""

from __future__ import annotations

from difflib import SequenceMatcher

from hypothesis import given
from hypothesis import strategies as st

from witnessmark.listening.phrases import Phrases
from witnessmark.listening.sounds import close_in_spelling

WORDS = st.sampled_from(["no", "not", "leak", "leaks", "at", "all"])
TABLE = st.lists(st.lists(WORDS, min_size=1, max_size=4).map(tuple), max_size=12)


def plainly(rows: list[tuple[str, ...]], words: list[str], start: int, end: int) -> list[tuple[int, int, int]]:
    """Every phrase, the longest first, left to right, the slow way."""
    found, at = [], start
    while at < end:
        fits = [row for row in rows if at + len(row) <= end and tuple(words[at : at + len(row)]) == row]
        if fits:
            longest = max(fits, key=len)
            found.append((at, at + len(longest), rows.index(longest)))
            at += len(longest)
        else:
            at += 1
    return found


@given(rows=TABLE, words=st.lists(WORDS, max_size=10), bounds=st.tuples(st.integers(0, 10), st.integers(0, 10)))
def test_every_phrase_is_found_and_no_other(
    rows: list[tuple[str, ...]], words: list[str], bounds: tuple[int, int]
) -> None:
    table = Phrases((row, number) for number, row in enumerate(rows))
    start, end = sorted(min(bound, len(words)) for bound in bounds)
    expected = plainly(rows, words, start, end)
    assert list(table.find(words, start, end)) == expected
    assert table.first(words, start, end) == (expected[0] if expected else None)
    assert list(table.find(words)) == plainly(rows, words, 0, len(words))
    assert dict(table) == {row: rows.index(row) for row in rows}
    assert table.words == {word for row in rows for word in row}


@given(
    st.text("abcde", min_size=1, max_size=9),
    st.text("abcde", min_size=1, max_size=9),
    st.sampled_from([0.6, 0.75, 0.86]),
)
def test_the_quick_bound_on_spelling_leaves_nothing_out(one: str, other: str, least: float) -> None:
    assert close_in_spelling(one, other, least) == (SequenceMatcher(None, one, other).ratio() >= least)
