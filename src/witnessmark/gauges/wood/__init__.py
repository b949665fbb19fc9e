"""Moisture in wood and materials: what a meter's number means, and what the air around would give."""

from witnessmark.gauges.wood.contrast import Contrast, contrast, moisture_contrast
from witnessmark.gauges.wood.correction import meter_correction
from witnessmark.gauges.wood.equilibrium import wood_air_humidity, wood_emc
from witnessmark.gauges.wood.meter import (
    corrected_for_temperature,
    moisture_by_fit,
    moisture_by_table,
    species_corrected,
)  # fmt: skip
from witnessmark.gauges.wood.resistance import wood_resistance
from witnessmark.gauges.wood.sorption import emc_fahrenheit_form, emc_percent, humidity_for_emc
from witnessmark.gauges.wood.surroundings import wood_against_air
from witnessmark.gauges.wood.thresholds import decay_temperature, wood_moisture

__all__ = [
    "Contrast", "contrast", "corrected_for_temperature", "decay_temperature", "emc_fahrenheit_form", "emc_percent",
    "humidity_for_emc", "meter_correction", "moisture_by_fit", "moisture_by_table", "moisture_contrast",
    "species_corrected", "wood_against_air", "wood_air_humidity", "wood_emc", "wood_moisture", "wood_resistance",
]  # fmt: skip
