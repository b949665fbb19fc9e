"""Electrical: what the code asked for when a house was built, and what a reading at a wire or receptacle means."""

from witnessmark.gauges.electrical.protection import (
    afci_required,
    gfci_required,
    gfci_trip,
    longest_trip_seconds,
    receptacle_tester,
    tamper_resistant_required,
)

__all__ = [
    "afci_required", "gfci_required", "gfci_trip", "longest_trip_seconds", "receptacle_tester",
    "tamper_resistant_required",
]  # fmt: skip
