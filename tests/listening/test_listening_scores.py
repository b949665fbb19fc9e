"""The stored narrations are heard at least this well: floors a little below what was reached, so that a loss shows.

Scores are harmonic means of precision and recall over kind and time (within five seconds), and with the component.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest

if TYPE_CHECKING:
    from listening.conftest import Score

FLOORS = {
    "attic_air_handler_and_heat_pump": (0.69, 0.49),
    "attic_and_old_wiring": (0.85, 0.71),
    "basement_flat": (0.79, 0.73),
    "birch_lane_heat_pump_and_closet_air_handler": (0.67, 0.32),
    "boiler_and_service": (0.90, 0.79),
    "brick_row_house_flat_roof": (0.69, 0.48),
    "bungalow_kitchen_and_half_bath": (0.71, 0.41),
    "bungalow_outside_in_rain": (0.71, 0.54),
    "canyon_house_tile_roof_afternoon": (0.70, 0.43),
    "cape_furnace_cooling_plates": (0.72, 0.46),
    "cape_truss_attic": (0.72, 0.46),
    "colonial_kitchen_dining": (0.76, 0.66),
    "colonial_living_rooms_and_stairs": (0.78, 0.56),
    "crawl_space_and_structure": (0.76, 0.68),
    "creekside_basement_boiler_and_radon": (0.62, 0.48),
    "d1_basement_mechanical": (0.84, 0.64),
    "d3_exterior_attic_panel": (0.86, 0.79),
    "farmhouse_well_septic_and_sprinklers": (0.76, 0.47),
    "fern_hollow_backyard_deck_and_sprinklers": (0.65, 0.34),
    "garage_and_heat_pump": (0.87, 0.74),
    "hawthorn_rise_two_storey_outside": (0.73, 0.49),
    "hillside_deck_and_fences": (0.87, 0.60),
    "hillside_two_story_roof_edge": (0.71, 0.46),
    "interior_and_fireplace": (0.89, 0.75),
    "kitchen_and_baths": (0.91, 0.75),
    "lakeside_living_room_stove_and_stairs": (0.82, 0.66),
    "larch_hill_split_attic_with_buyer": (0.66, 0.36),
    "mill_street_townhouse_bedrooms_and_fan": (0.65, 0.45),
    "millet_farm_well_softener_and_barn": (0.58, 0.34),
    "morning_roof_gutters_and_two_chimneys": (0.81, 0.61),
    "new_build_walk_before_closing": (0.74, 0.57),
    "old_farmhouse_kitchen_and_laundry": (0.78, 0.69),
    "old_stone_basement_with_oil_boiler": (0.71, 0.47),
    "orchard_lane_garage_deck_and_shed": (0.61, 0.39),
    "outside_and_roof": (0.87, 0.75),
    "panel_subpanel_and_receptacles": (0.74, 0.44),
    "pine_court_basement_with_old_water_heater": (0.72, 0.52),
    "plum_street_bungalow_kitchen_and_pantry": (0.70, 0.51),
    "pool_shed_and_detached_garage": (0.66, 0.45),
    "quarry_road_garage_carport_and_subpanel": (0.64, 0.48),
    "ranch_crawl_under_floor": (0.61, 0.46),
    "ranch_furnace_closet": (0.80, 0.64),
    "ranch_truss_attic_and_bath_fans": (0.65, 0.37),
    "saltmarsh_cottage_crawl_space": (0.67, 0.44),
    "small_flat_in_ten_minutes": (0.72, 0.62),
    "split_level_garage_drive_and_walls": (0.75, 0.55),
    "split_level_service_and_outlets": (0.65, 0.53),
    "tight_crawl_with_ducts_and_piers": (0.74, 0.60),
    "two_baths_and_laundry": (0.66, 0.44),
    "upstairs_two_baths_and_bedrooms": (0.84, 0.65),
    "willow_court_three_baths": (0.69, 0.46),
    "wren_street_bedrooms_heater_and_fans": (0.66, 0.44),
}
#: All that are kept for validation, together: nobody tunes on them, and only these totals are looked at.
VALIDATION = (0.68, 0.43)


@pytest.mark.parametrize("name", FLOORS)
def test_a_narration_is_heard(name: str, scores: dict[str, Score]) -> None:
    found, floor = scores[name], FLOORS[name]
    assert found.f() >= floor[0]
    assert found.f(found.matched_component) >= floor[1]


def test_every_stored_narration_has_a_floor(scores: dict[str, Score]) -> None:
    assert set(scores) == set(FLOORS)


def test_narrations_nobody_tuned_on_are_heard(unseen: dict[str, Score]) -> None:
    assert len(unseen) >= 0  # others are being written
    if not unseen:
        return
    both = sum(s.predicted + s.expected for s in unseen.values())
    assert 2 * sum(s.matched for s in unseen.values()) / both >= VALIDATION[0]
    assert 2 * sum(s.matched_component for s in unseen.values()) / both >= VALIDATION[1]


def test_values_are_read_right(scores: dict[str, Score]) -> None:
    right = sum(s.values[0] for s in scores.values())
    assert right >= 0.69 * sum(s.values[1] for s in scores.values())


def test_states_after_operating_are_right(scores: dict[str, Score]) -> None:
    right = sum(s.states[0] for s in scores.values())
    assert right >= 0.74 * sum(s.states[1] for s in scores.values())


def test_almost_nothing_is_drafted_from_what_was_only_supposed(scores: dict[str, Score]) -> None:
    assert sum(len(s.in_hypothetical) for s in scores.values()) <= 44


def test_what_was_left_on_is_kept_in_mind(scores: dict[str, Score]) -> None:
    hit, told, gold = (sum(s.still_on[i] for s in scores.values()) for i in range(3))
    assert hit >= gold - 17, "something left running was lost"
    assert told <= gold + 11, "things are said to run that do not"


def test_doubts_are_kept_in_mind(scores: dict[str, Score]) -> None:
    hit, told, gold = (sum(s.doubts[i] for s in scores.values()) for i in range(3))
    assert hit >= 0.78 * gold
    assert told <= gold + 44
