"""Whatever is said, the listener answers: nothing raises, every draft quotes words that stand there at those times."""

from __future__ import annotations

import json
from typing import TYPE_CHECKING

from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from witnessmark.listening import Heard, Line, Narration, components, listen, places, to_body
from witnessmark.listening.terms import own_words
from witnessmark.listening.words import words
from witnessmark.packs.model import Packs

if TYPE_CHECKING:
    from collections.abc import Sequence

TRADE = st.sampled_from(
    [
        "sink",
        "furnace",
        "filter",
        "tub",
        "deck",
        "baluster",
        "window",
        "smoke",
        "detector",
        "kitchen",
        "hall",
        "bath",
        "attic",
        "supply",
        "inches",
        "apart",
        "psi",
        "degrees",
        "five",
        "twenty",
        "two",
        "of",
        "the",
        "eight",
        "no",
        "not",
        "cracked",
        "loose",
        "missing",
        "leaks",
        "good",
        "fine",
        "i",
        "ran",
        "turned",
        "on",
        "off",
        "up",
        "it",
        "that's",
        "there's",
        "is",
        "are",
        "couldn't",
        "see",
        "wait",
        "scratch",
        "that",
        "if",
        "you",
        "would",
        "might",
        "be",
        "model",
        "serial",
        "number",
        "m",
        "i",
        "oh",
        "three",
        "made",
        "in",
        "and",
        "but",
        "okay",
        "now",
    ]
)
OWN = st.sampled_from(sorted(own_words()))
LINE = st.lists(
    st.one_of(TRADE, OWN, st.sampled_from([".", ",", "?", "…", "—", "5'6\"", "1/0", "0", "°F"])), max_size=14
).map(" ".join)
WORDS = st.lists(LINE, max_size=6)
ANYTHING = st.lists(st.text(max_size=40), max_size=5)


def timed(texts: Sequence[str]) -> Narration:
    return Narration("fuzz", tuple(Line(2.5 * i, 2.5 * i + 2.0, text) for i, text in enumerate(texts)))


def check(narration: Narration, heard: Heard) -> None:
    spoken = words(narration.lines)
    for draft in heard.drafts:
        assert 0 <= draft.first <= draft.last < len(spoken)
        assert draft.text == " ".join(w.text for w in spoken[draft.first : draft.last + 1])
        assert draft.start == spoken[draft.first].start
        assert draft.end == spoken[draft.last].end
        assert draft.what
        assert draft.label
        to_body(draft)
    live = set(map(id, heard.drafts))
    assert all(id(row.draft) in live for row in (*heard.still_on, *heard.make_sure))
    json.dumps(heard.as_json(), allow_nan=False)
    assert {c.place for c in components(heard)} <= {"house", *(p.key for p in places(heard))}


@settings(max_examples=4000, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(st.one_of(WORDS, ANYTHING), st.none() | st.text(max_size=15))
def test_any_words_with_small_packs(small: Packs, texts: list[str], place: str | None) -> None:
    narration = timed(texts)
    check(narration, listen(narration, small, place=place))


@settings(max_examples=40, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(WORDS)
def test_any_words_with_the_shipped_packs(shipped: Packs, texts: list[str]) -> None:
    narration = timed(texts)
    check(narration, listen(narration, shipped))


@settings(max_examples=40, deadline=None)
@given(WORDS)
def test_without_any_packs(texts: list[str]) -> None:
    narration = timed(texts)
    check(narration, listen(narration, Packs()))


def test_the_same_words_are_heard_the_same(small: Packs) -> None:
    narration = timed(["we're in the kitchen", "sink is cracked", "i turned the furnace on", "not sure about it"])
    assert listen(narration, small) == listen(narration, small)
