"""Protection of outlets: ground faults, arc faults, shutters, and what a tester shows."""

from witnessmark.gauges.electrical.protection.afci import afci_required
from witnessmark.gauges.electrical.protection.gfci import gfci_required
from witnessmark.gauges.electrical.protection.tamper import tamper_resistant_required
from witnessmark.gauges.electrical.protection.tester import receptacle_tester
from witnessmark.gauges.electrical.protection.trip import gfci_trip, longest_trip_seconds

__all__ = [
    "afci_required", "gfci_required", "gfci_trip", "longest_trip_seconds", "receptacle_tester",
    "tamper_resistant_required",
]  # fmt: skip
