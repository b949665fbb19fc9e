"""Moisture in wood and materials: what a meter's number means, and what the air around would give."""

from witnessmark.gauges.wood.equilibrium import emc_percent, wood_emc

__all__ = ["emc_percent", "wood_emc"]
