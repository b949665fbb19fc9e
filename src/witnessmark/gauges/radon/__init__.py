"""Radon: from readings to the result that may be reported, and what it calls for."""

from witnessmark.gauges.radon.action import radon_action
from witnessmark.gauges.radon.after_mitigation import radon_after_mitigation
from witnessmark.gauges.radon.blanks import blanks_due, radon_blanks
from witnessmark.gauges.radon.circumstances import radon_test_conditions
from witnessmark.gauges.radon.conditions import Hours, counting
from witnessmark.gauges.radon.duplicates import Precision, precision, radon_duplicates
from witnessmark.gauges.radon.monitor import Hour, gaps, radon_monitor
from witnessmark.gauges.radon.placement import locations, radon_locations, radon_placement
from witnessmark.gauges.radon.reported import becquerels, epa_band, half_up, mean_of, picocuries, reported
from witnessmark.gauges.radon.spikes import radon_spike, relative_percent_error
from witnessmark.gauges.radon.two_tests import radon_two_tests
from witnessmark.gauges.radon.units import radon_units
from witnessmark.gauges.radon.working_level import radon_from_working_level, working_level, working_levels

__all__ = [
    "Hour", "Hours", "Precision", "becquerels", "blanks_due", "counting", "epa_band", "gaps", "half_up", "locations",
    "mean_of", "picocuries", "precision", "radon_action", "radon_after_mitigation", "radon_blanks", "radon_duplicates",
    "radon_from_working_level", "radon_locations", "radon_monitor", "radon_placement", "radon_spike",
    "radon_test_conditions", "radon_two_tests", "radon_units", "relative_percent_error", "reported", "working_level",
    "working_levels",
]  # fmt: skip
