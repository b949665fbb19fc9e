"""Where statements begin without marks: what the model may and may not cut, and that it is learned the same each time."""

from __future__ import annotations

import json
from decimal import Decimal

import pytest

from train_boundaries.examples import Example
from train_boundaries.fit import fit, found_by
from witnessmark.listening import Line, Narration, listen
from witnessmark.listening.boundaries import WEIGHTS
from witnessmark.packs.model import Packs


def heard(words: str, packs: Packs) -> list[str]:
    """What is drafted of words in captions that break anywhere."""
    said = words.split()
    lines = tuple(
        Line(2.0 * n, 2.0 * n + 2, " ".join(said[n * 5 : n * 5 + 5]), timed_end=False)
        for n in range(-(-len(said) // 5))
    )
    return [f"{d.act} {d.condition or d.left or d.value}" for d in listen(Narration("t", lines), packs).drafts]


def test_fragments_without_a_verb_are_statements_of_their_own(shipped: Packs) -> None:
    found = heard("roof asphalt one layer boot's split two tabs gone gutter full valley clean flashing rusted", shipped)
    assert sum(row.startswith("saw adverse") for row in found) >= 3


def test_nothing_begins_inside_a_quantity(shipped: Packs) -> None:
    lines = (Line(0.0, 6.0, "water pressure at the hose bib outside was sixty two p s i so that is good there"),)
    (read,) = [d for d in listen(Narration("t", lines), shipped).drafts if d.act == "read"]
    assert (read.value, read.unit) == (Decimal(62), "[psi]")


@pytest.mark.parametrize(
    "words", ["a good furnace will last twenty years", "the hatch was screwed down", "none of the windows leak"]
)
def test_one_dictated_sentence_is_one_statement(words: str, shipped: Packs) -> None:
    drafts = listen(Narration("t", (Line(0.0, 3.0, words),)), shipped).drafts
    assert all(draft.text == words for draft in drafts)


def test_the_shipped_weights_are_small_and_say_what_they_were_learned_from() -> None:
    kept = json.loads(WEIGHTS.read_text(encoding="utf-8"))
    assert len(kept["learned_from"]) == 64
    assert 1000 < len(kept["weights"]) < 40_000
    assert WEIGHTS.stat().st_size < 400_000
    assert all(isinstance(weight, int) for weight in kept["weights"].values())


def test_learning_is_the_same_each_time_and_learns() -> None:
    places = tuple(((f"w{n % 7}", f"v{n % 3}"), n % 7 == 0) for n in range(300))
    examples = [Example("one", places), Example("two", places[::-1])]
    first, again = fit(examples), fit(examples)
    assert first == again
    right, told, there = found_by(first, examples[0], 0)
    assert right == told == there > 0
