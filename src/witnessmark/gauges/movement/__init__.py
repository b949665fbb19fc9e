"""Movement of the house: what level readings, leans and cracks say, and what they do not."""

from witnessmark.gauges.movement.allowance import deflection_allowance, inches_over
from witnessmark.gauges.movement.change import levels_changed, paired
from witnessmark.gauges.movement.chords import Chord, chords, worst
from witnessmark.gauges.movement.contours import Contour, contours, floor_contours
from witnessmark.gauges.movement.cracks import crack_category, width_category
from witnessmark.gauges.movement.deflection import floor_deflection
from witnessmark.gauges.movement.distortion import angular_distortion
from witnessmark.gauges.movement.levels import Level, Point, Survey, survey
from witnessmark.gauges.movement.plane import Plane, bearing, fit, left_over
from witnessmark.gauges.movement.plumb import out_of_plumb
from witnessmark.gauges.movement.profile import Station, level_profile
from witnessmark.gauges.movement.strain import strain_category, tensile_strain_category
from witnessmark.gauges.movement.tilt import floor_tilt, tilt_band
from witnessmark.gauges.movement.triangles import triangulate
from witnessmark.gauges.movement.wall import relative_deflection_limit, wall_deflection

__all__ = [
    "Chord", "Contour", "Level", "Plane", "Point", "Station", "Survey", "angular_distortion", "bearing", "chords",
    "contours", "crack_category", "deflection_allowance", "fit", "floor_contours", "floor_deflection", "floor_tilt",
    "inches_over", "left_over", "level_profile", "levels_changed", "out_of_plumb", "paired",
    "relative_deflection_limit", "strain_category", "survey", "tensile_strain_category", "tilt_band", "triangulate",
    "wall_deflection", "width_category", "worst",
]  # fmt: skip
