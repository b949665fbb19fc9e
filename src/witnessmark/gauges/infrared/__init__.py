"""Infrared pictures: what a surface's temperature is, how small a thing can be measured, and what a contrast says."""

from witnessmark.gauges.infrared.by_tape import emissivity_by_tape
from witnessmark.gauges.infrared.contrast import insulation_contrast, surface_contrast
from witnessmark.gauges.infrared.correction import infrared_correction
from witnessmark.gauges.infrared.counts import Curve, air_transmission, infrared_counts
from witnessmark.gauges.infrared.emissivity import infrared_material
from witnessmark.gauges.infrared.forward import infrared_apparent
from witnessmark.gauges.infrared.materials import MATERIALS, range_of
from witnessmark.gauges.infrared.planck import band_radiance, band_temperature
from witnessmark.gauges.infrared.recorrection import infrared_recorrection
from witnessmark.gauges.infrared.resistance import r_and_u
from witnessmark.gauges.infrared.scan_conditions import infrared_scan_conditions
from witnessmark.gauges.infrared.scan_rules import difference_needed
from witnessmark.gauges.infrared.spot import infrared_spot, picture_width, pixel_angle, spot_by_ifov, spot_by_ratio
from witnessmark.gauges.infrared.surface import apparent_kelvin, emissivity_from, object_kelvin
from witnessmark.gauges.infrared.u_class import infrared_u_class
from witnessmark.gauges.infrared.wall import surface_temperature, u_by_film, u_by_radiation, u_spread

__all__ = [
    "MATERIALS", "Curve", "air_transmission", "apparent_kelvin", "band_radiance", "band_temperature",
    "difference_needed", "emissivity_by_tape", "emissivity_from", "infrared_apparent", "infrared_correction",
    "infrared_counts", "infrared_material", "infrared_recorrection", "infrared_scan_conditions", "infrared_spot",
    "infrared_u_class", "insulation_contrast", "object_kelvin", "picture_width", "pixel_angle", "r_and_u", "range_of",
    "spot_by_ifov", "spot_by_ratio", "surface_contrast", "surface_temperature", "u_by_film", "u_by_radiation",
    "u_spread",
]  # fmt: skip
