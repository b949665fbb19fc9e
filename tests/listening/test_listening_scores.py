"""The stored narrations are heard at least this well: floors a little below what was reached, so that a loss shows.

Scores are harmonic means of precision and recall over kind and time (within five seconds), and with the component.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest

if TYPE_CHECKING:
    from listening.conftest import Score

FLOORS = {
    "attic_and_old_wiring": (0.80, 0.64),
    "basement_flat": (0.75, 0.55),
    "boiler_and_service": (0.86, 0.71),
    "crawl_space_and_structure": (0.80, 0.69),
    "d1_basement_mechanical": (0.85, 0.69),
    "d3_exterior_attic_panel": (0.89, 0.78),
    "garage_and_heat_pump": (0.84, 0.72),
    "interior_and_fireplace": (0.91, 0.76),
    "kitchen_and_baths": (0.87, 0.78),
    "outside_and_roof": (0.78, 0.62),
}


@pytest.mark.parametrize("name", FLOORS)
def test_a_narration_is_heard(name: str, scores: dict[str, Score]) -> None:
    found, floor = scores[name], FLOORS[name]
    assert found.f() >= floor[0]
    assert found.f(found.matched_component) >= floor[1]


def test_every_stored_narration_has_a_floor(scores: dict[str, Score]) -> None:
    assert set(scores) == set(FLOORS)


def test_values_are_read_right(scores: dict[str, Score]) -> None:
    right = sum(s.values[0] for s in scores.values())
    assert right >= 0.74 * sum(s.values[1] for s in scores.values())


def test_states_after_operating_are_right(scores: dict[str, Score]) -> None:
    right = sum(s.states[0] for s in scores.values())
    assert right >= 0.85 * sum(s.states[1] for s in scores.values())


def test_almost_nothing_is_drafted_from_what_was_only_supposed(scores: dict[str, Score]) -> None:
    assert sum(len(s.in_hypothetical) for s in scores.values()) <= 5


def test_what_was_left_on_is_kept_in_mind(scores: dict[str, Score]) -> None:
    hit, told, gold = (sum(s.still_on[i] for s in scores.values()) for i in range(3))
    assert hit >= gold - 1, "something left running was lost"
    assert told <= gold + 3, "things are said to run that do not"


def test_doubts_are_kept_in_mind(scores: dict[str, Score]) -> None:
    hit, told, gold = (sum(s.doubts[i] for s in scores.values()) for i in range(3))
    assert hit >= 0.8 * gold
    assert told <= gold + 6
