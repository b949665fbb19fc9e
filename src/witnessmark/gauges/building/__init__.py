"""Building: stairs, guards, windows to escape by, glass, decks, roofs, chimneys and alarms held against dated codes."""

from witnessmark.gauges.building.alarm_age import alarm_age, whole_years
from witnessmark.gauges.building.alarm_place import smoke_alarm_distance
from witnessmark.gauges.building.alarms import smoke_alarms
from witnessmark.gauges.building.anti_tip import range_anti_tip
from witnessmark.gauges.building.attic import attic_ratio, attic_ventilation, vent_area
from witnessmark.gauges.building.ceiling import ceiling_height, sloped_ceiling
from witnessmark.gauges.building.chimney import chimney_cricket, chimney_height, chimney_needs, cricket_height
from witnessmark.gauges.building.co_alarms import co_alarms, co_asked
from witnessmark.gauges.building.covering import roof_covering_slope, underlayment
from witnessmark.gauges.building.crawl import crawl_space_vents, vents_needed
from witnessmark.gauges.building.deck_lateral import deck_lateral
from witnessmark.gauges.building.egress import clear_area, egress_opening
from witnessmark.gauges.building.garage import (
    door_shortfalls,
    garage_board,
    garage_door_to_house,
    garage_duct,
    self_closing_asked,
)
from witnessmark.gauges.building.garage_opener import garage_door_opener
from witnessmark.gauges.building.glazing import glazing_asked, safety_glazing
from witnessmark.gauges.building.glazing_date import safety_glazing_date
from witnessmark.gauges.building.grading import fall_percent, grading
from witnessmark.gauges.building.guard import guard, guard_asked
from witnessmark.gauges.building.guard_openings import guard_openings, sphere_for, triangle_sphere
from witnessmark.gauges.building.handrail import handrail, handrail_from
from witnessmark.gauges.building.headroom import stair_headroom
from witnessmark.gauges.building.joists import deck_joist_span, joist_span
from witnessmark.gauges.building.ledger import deck_ledger, fastener_load, ledger_spacing
from witnessmark.gauges.building.ledger_edges import deck_ledger_edges
from witnessmark.gauges.building.live_load import live_load, load_for
from witnessmark.gauges.building.roof_slope import degrees_of, pitch_of, roof_slope
from witnessmark.gauges.building.stair_flight import spread, stair_flight
from witnessmark.gauges.building.stair_rise import highest_rise, stair_rise
from witnessmark.gauges.building.stair_width import stair_width
from witnessmark.gauges.building.vent_openings import attic_vent_openings
from witnessmark.gauges.building.vent_size import vent_net_area
from witnessmark.gauges.building.winders import winder_treads
from witnessmark.gauges.building.window_well import window_well

__all__ = [
    "alarm_age", "attic_ratio", "attic_vent_openings", "attic_ventilation", "ceiling_height", "chimney_cricket", "chimney_height",
    "chimney_needs", "clear_area", "co_alarms", "co_asked", "crawl_space_vents", "cricket_height", "deck_joist_span", "deck_lateral",
    "deck_ledger", "deck_ledger_edges", "degrees_of", "door_shortfalls", "egress_opening", "fall_percent",
    "fastener_load", "garage_board", "garage_door_opener", "garage_door_to_house", "garage_duct", "glazing_asked",
    "grading", "guard", "guard_asked", "guard_openings", "handrail", "handrail_from", "highest_rise", "joist_span",
    "ledger_spacing", "live_load", "load_for", "pitch_of", "range_anti_tip", "roof_covering_slope", "roof_slope",
    "safety_glazing", "safety_glazing_date", "self_closing_asked", "sloped_ceiling", "smoke_alarm_distance",
    "smoke_alarms", "sphere_for", "spread", "stair_flight", "stair_headroom", "stair_rise", "stair_width",
    "triangle_sphere", "underlayment", "vent_area", "vent_net_area", "vents_needed", "whole_years", "winder_treads",
    "window_well",
]  # fmt: skip
