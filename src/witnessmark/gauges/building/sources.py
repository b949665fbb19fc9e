"""Sources that several building gauges share."""

from __future__ import annotations

from witnessmark.gauges.answer import Source

__all__ = ["SLOPE"]

SLOPE = Source("definition of slope as the tangent of its angle", "", "", "calculated")
