"""Air, surfaces and mould: what temperature and humidity mean for condensation and growth.

Pure functions work in °C, relative humidity as a fraction and Pa; the gauges around them take any unit.
"""

from witnessmark.gauges.air.bulbs import humidity_from_wet_bulb, humidity_ratio, wet_bulb
from witnessmark.gauges.air.dew import dew_point
from witnessmark.gauges.air.element import factor_of_u, temperature_factor_of_element
from witnessmark.gauges.air.factor import (
    factor_of_surface,
    surface_for_humidity,
    temperature_factor,
    temperature_factor_minimum,
)  # fmt: skip
from witnessmark.gauges.air.load import class_of_excess, humidity_class
from witnessmark.gauges.air.mould import CLASSES, Growth, course, critical_humidity, highest_index, index_after
from witnessmark.gauges.air.mould_series import ClimateRow, mould_index
from witnessmark.gauges.air.mould_time import days_to, mould_critical_humidity, mould_days
from witnessmark.gauges.air.pressure import altitude_pressure, pressure_at
from witnessmark.gauges.air.saturation import (
    dew_point_celsius,
    dew_point_magnus,
    saturation_iso_13788,
    saturation_pressure,
    vapour_pressure,
)  # fmt: skip
from witnessmark.gauges.air.surfaces import condensation_margin, surface_humidity, surface_humidity_percent
from witnessmark.gauges.air.wetbulb import humidity_from_bulbs, water_to_dry_air, wet_bulb_celsius

__all__ = [
    "CLASSES",
    "ClimateRow",
    "Growth",
    "altitude_pressure",
    "class_of_excess",
    "condensation_margin",
    "course",
    "critical_humidity",
    "days_to",
    "dew_point",
    "dew_point_celsius",
    "dew_point_magnus",
    "factor_of_surface",
    "factor_of_u",
    "highest_index",
    "humidity_class",
    "humidity_from_bulbs",
    "humidity_from_wet_bulb",
    "humidity_ratio",
    "index_after",
    "mould_critical_humidity",
    "mould_days",
    "mould_index",
    "pressure_at",
    "saturation_iso_13788",
    "saturation_pressure",
    "surface_for_humidity",
    "surface_humidity",
    "surface_humidity_percent",
    "temperature_factor",
    "temperature_factor_minimum",
    "temperature_factor_of_element",
    "vapour_pressure",
    "water_to_dry_air",
    "wet_bulb",
    "wet_bulb_celsius",
]  # fmt: skip
