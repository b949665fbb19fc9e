"""Laws of lives that are published, by a generic name of the part."""

from __future__ import annotations

from typing import Literal

from witnessmark.gauges.age.weibull import Law, fitted
from witnessmark.gauges.answer import Source

__all__ = ["PARAMETER_SETS", "PUBLISHED_RANGES", "RANGES", "Published"]

Published = Literal["air-source heat pump", "gas boiler", "oil boiler", "electric resistance heat", "wood stove"]
RANGES = Source(
    "Updated Buildings Sector Appliance and Equipment Costs and Efficiencies (U.S. Energy Information Administration)",
    "",
    "typical service lives",
    "seen in a copy",
)
#: Years by which 20 % and 80 % have failed.
PUBLISHED_RANGES = {
    "gas boiler": (20, 30), "electric resistance heat": (15, 30), "oil boiler": (18, 28), "wood stove": (12, 25),
}  # fmt: skip
#: The heat pump is published with its parameters (the delay folded into the scale), the rest as ranges.
PARAMETER_SETS: dict[str, Law] = {"air-source heat pump": Law(2.0, 16.88)} | {
    name: fitted(low, high) for name, (low, high) in PUBLISHED_RANGES.items()
}
