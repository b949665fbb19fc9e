"""Electrical: what the code asked for when a house was built, and what a reading at a wire or receptacle means."""

from witnessmark.gauges.electrical.calculating import (
    conductor_ampacity,
    conductor_protection,
    dwelling_load_existing,
    dwelling_load_measured,
    dwelling_load_new,
    dwelling_load_standard,
    longest_run,
    range_demand,
    service_conductor,
    voltage_drop_by_size,
    voltage_drop_measured,
)
from witnessmark.gauges.electrical.protection import (
    afci_required,
    gfci_required,
    gfci_trip,
    longest_trip_seconds,
    receptacle_tester,
    tamper_resistant_required,
)
from witnessmark.gauges.electrical.spacing import (
    CounterPiece,
    CounterReceptacle,
    WallPiece,
    WallReceptacle,
    island_receptacles,
    least_counter_receptacles,
    least_wall_receptacles,
    receptacle_island,
    receptacle_spacing_counter,
    receptacle_spacing_wall,
    working_space,
    working_space_measures,
)

# calculations
# calculations

__all__ = [
    "CounterPiece",
    "CounterReceptacle",
    "WallPiece",
    "WallReceptacle",
    "afci_required",
    "conductor_ampacity",
    "conductor_protection",
    "dwelling_load_existing",
    "dwelling_load_measured",
    "dwelling_load_new",
    "dwelling_load_standard",
    "gfci_required",
    "gfci_trip",
    "island_receptacles",
    "least_counter_receptacles",
    "least_wall_receptacles",
    "longest_run",
    "longest_trip_seconds",
    "range_demand",
    "receptacle_island",
    "receptacle_spacing_counter",
    "receptacle_spacing_wall",
    "receptacle_tester",
    "service_conductor",
    "tamper_resistant_required",
    "voltage_drop_by_size",
    "voltage_drop_measured",
    "working_space",
    "working_space_measures",
]  # fmt: skip
