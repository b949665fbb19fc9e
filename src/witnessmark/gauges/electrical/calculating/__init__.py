"""Electrical calculations: conductors and their devices, voltage drop, the load of a dwelling and its service."""

from witnessmark.gauges.electrical.calculating.ampacity import conductor_ampacity
from witnessmark.gauges.electrical.calculating.drop_by_size import voltage_drop_by_size
from witnessmark.gauges.electrical.calculating.drop_measured import voltage_drop_measured
from witnessmark.gauges.electrical.calculating.dwelling_existing import dwelling_load_existing
from witnessmark.gauges.electrical.calculating.dwelling_measured import dwelling_load_measured
from witnessmark.gauges.electrical.calculating.dwelling_new import dwelling_load_new
from witnessmark.gauges.electrical.calculating.dwelling_standard import dwelling_load_standard
from witnessmark.gauges.electrical.calculating.longest_run import longest_run
from witnessmark.gauges.electrical.calculating.overcurrent import conductor_protection
from witnessmark.gauges.electrical.calculating.ranges import range_demand
from witnessmark.gauges.electrical.calculating.service_conductor import service_conductor

__all__ = [
    "conductor_ampacity", "conductor_protection", "dwelling_load_existing", "dwelling_load_measured",
    "dwelling_load_new", "dwelling_load_standard", "longest_run", "range_demand", "service_conductor",
    "voltage_drop_by_size", "voltage_drop_measured",
]  # fmt: skip
