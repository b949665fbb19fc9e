"""Where receptacles stand along walls and counters, and the space to work at a panel."""

from witnessmark.gauges.electrical.spacing.counters import (
    CounterPiece,
    CounterReceptacle,
    least_counter_receptacles,
    receptacle_spacing_counter,
)
from witnessmark.gauges.electrical.spacing.islands import island_receptacles, receptacle_island
from witnessmark.gauges.electrical.spacing.walls import (
    WallPiece,
    WallReceptacle,
    least_wall_receptacles,
    receptacle_spacing_wall,
)
from witnessmark.gauges.electrical.spacing.working_space import working_space, working_space_measures

__all__ = [
    "CounterPiece", "CounterReceptacle", "WallPiece", "WallReceptacle", "island_receptacles",
    "least_counter_receptacles", "least_wall_receptacles", "receptacle_island", "receptacle_spacing_counter",
    "receptacle_spacing_wall", "working_space", "working_space_measures",
]  # fmt: skip
