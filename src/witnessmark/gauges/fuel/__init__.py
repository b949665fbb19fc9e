"""Fuel, combustion and moving air: what burns, what it burns with, where it goes, and the air that carries heat."""

from witnessmark.gauges.fuel.air_free import air_free_by_dioxide, air_free_by_oxygen, carbon_monoxide_air_free
from witnessmark.gauges.fuel.air_heat import air_heat
from witnessmark.gauges.fuel.combustion_air import (
    Burner,
    combustion_air_indoors,
    infiltration_volume,
    standard_volume,
)  # fmt: skip
from witnessmark.gauges.fuel.combustion_openings import combustion_air_openings, opening_area
from witnessmark.gauges.fuel.cooling_split import cooling_split, expected_split
from witnessmark.gauges.fuel.draft import draft_floor, vent_draft
from witnessmark.gauges.fuel.dryer import Fitting, dryer_duct_length, fitting_inches
from witnessmark.gauges.fuel.fan_airflow import fan_airflow
from witnessmark.gauges.fuel.gas_demand import Load, gas_demand, gas_meter_input
from witnessmark.gauges.fuel.gas_flow import (
    INSIDE_DIAMETERS,
    high_pressure_cfh,
    low_pressure_cfh,
    spitzglass_cfh,
    viscosity_factor,
)  # fmt: skip
from witnessmark.gauges.fuel.gas_pipe import Segment, gas_pipe_capacity
from witnessmark.gauges.fuel.heating_rise import heating_temperature_rise
from witnessmark.gauges.fuel.hood import range_hood_make_up_air
from witnessmark.gauges.fuel.infiltration_credit import infiltration_cfm, infiltration_credit, normalized_leakage
from witnessmark.gauges.fuel.moist_air import enthalpy, humidity_ratio, saturation_psi
from witnessmark.gauges.fuel.monoxide_alarm import alarm_minutes, carbon_monoxide_alarm
from witnessmark.gauges.fuel.monoxide_flue import carbon_monoxide_in_flue
from witnessmark.gauges.fuel.monoxide_level import carbon_monoxide_level
from witnessmark.gauges.fuel.monoxide_scales import SCALES, milligrams_per_cubic_metre
from witnessmark.gauges.fuel.vent_connector import vent_connector
from witnessmark.gauges.fuel.vent_terminal import gas_vent_height, height_above_roof
from witnessmark.gauges.fuel.whole_house import (
    area_rate,
    metric_rate,
    table_2010,
    table_2013,
    whole_house_ventilation,
)

__all__ = [
    "INSIDE_DIAMETERS", "SCALES", "Burner", "Fitting", "Load", "Segment", "air_free_by_dioxide", "air_free_by_oxygen",
    "air_heat", "alarm_minutes", "area_rate", "carbon_monoxide_air_free", "carbon_monoxide_alarm",
    "carbon_monoxide_in_flue", "carbon_monoxide_level", "combustion_air_indoors", "combustion_air_openings",
    "cooling_split", "draft_floor", "dryer_duct_length", "enthalpy", "expected_split", "fan_airflow", "fitting_inches",
    "gas_demand", "gas_meter_input", "gas_pipe_capacity", "gas_vent_height", "heating_temperature_rise",
    "height_above_roof", "high_pressure_cfh", "humidity_ratio", "infiltration_cfm", "infiltration_credit",
    "infiltration_volume", "low_pressure_cfh", "metric_rate", "milligrams_per_cubic_metre", "normalized_leakage", "opening_area",
    "range_hood_make_up_air", "saturation_psi", "spitzglass_cfh", "standard_volume", "table_2010", "table_2013",
    "vent_connector", "vent_draft", "viscosity_factor", "whole_house_ventilation",
]  # fmt: skip
