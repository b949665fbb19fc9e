"""Water, waste and hot water: pressure, friction, hammer, drains, heaters, scalding, demand."""

from witnessmark.gauges.water.bucket import drain_time, flow_by_bucket
from witnessmark.gauges.water.dishwasher_drain import dishwasher_drain
from witnessmark.gauges.water.drain_slope import drain_slope, least_fall
from witnessmark.gauges.water.expansion import (
    ATMOSPHERE,
    DESIGN_MOST,
    RELIEF_SETTING,
    acceptance,
    expansion_tank,
    growth,
    water_expansion,
)
from witnessmark.gauges.water.first_hour import (
    Draw,
    draw_pattern,
    first_hour_estimate,
    first_hour_gallons,
    first_hour_test,
)
from witnessmark.gauges.water.fixture_needs import (
    MOST_FLOW,
    NEEDED,
    fixture_flow_limit,
    fixture_pressure,
    flow_at_test_pressure,
)
from witnessmark.gauges.water.fixture_units import CURVES, UNITS, FixtureCount, Weight, demand_gpm, water_demand
from witnessmark.gauges.water.functional import functional_drainage, functional_flow
from witnessmark.gauges.water.mixing import hot_share, hot_water_share
from witnessmark.gauges.water.pipe_friction import hazen_williams_psi, pipe_friction, pipe_velocity, velocity_fps
from witnessmark.gauges.water.pipe_size import pipe_inside_diameter
from witnessmark.gauges.water.recovery import WEIGHT, heater_recovery, recovery_gph
from witnessmark.gauges.water.scald import scald_time
from witnessmark.gauges.water.static_head import head_psi, static_head
from witnessmark.gauges.water.static_pressure import static_pressure
from witnessmark.gauges.water.supply_curve import flow_at_pressure, pressure_at_flow, residual_pressure
from witnessmark.gauges.water.trap_arm import LONGEST, trap_arm
from witnessmark.gauges.water.trap_place import OUTLET_LONGEST, STANDPIPE, laundry_standpipe, trap_outlet
from witnessmark.gauges.water.water_hammer import hammer_psi, slow_closure, water_hammer, wave_speed

__all__ = [
    "ATMOSPHERE",
    "CURVES",
    "DESIGN_MOST",
    "LONGEST",
    "MOST_FLOW",
    "NEEDED",
    "OUTLET_LONGEST",
    "RELIEF_SETTING",
    "STANDPIPE",
    "UNITS",
    "WEIGHT",
    "Draw",
    "FixtureCount",
    "Weight",
    "acceptance",
    "demand_gpm",
    "dishwasher_drain",
    "drain_slope",
    "drain_time",
    "draw_pattern",
    "expansion_tank",
    "first_hour_estimate",
    "first_hour_gallons",
    "first_hour_test",
    "fixture_flow_limit",
    "fixture_pressure",
    "flow_at_pressure",
    "flow_at_test_pressure",
    "flow_by_bucket",
    "functional_drainage",
    "functional_flow",
    "growth",
    "hammer_psi",
    "hazen_williams_psi",
    "head_psi",
    "heater_recovery",
    "hot_share",
    "hot_water_share",
    "laundry_standpipe",
    "least_fall",
    "pipe_friction",
    "pipe_inside_diameter",
    "pipe_velocity",
    "pressure_at_flow",
    "recovery_gph",
    "residual_pressure",
    "scald_time",
    "slow_closure",
    "static_head",
    "static_pressure",
    "trap_arm",
    "trap_outlet",
    "velocity_fps",
    "water_demand",
    "water_expansion",
    "water_hammer",
    "wave_speed",
]
