"""What is said with every answer about water that can burn, burst or flood: common practice, no source."""

from __future__ import annotations

__all__ = ["FLOOD", "FRAGILE", "LOCAL", "RELIEF", "SCALD", "STORED"]

SCALD = "Hot water scalds before it can be felt as too hot; measure it with a thermometer, never with a hand."
RELIEF = (
    "A relief valve (most tanks: 150 psi and 210 °F) is the last guard of a tank. Look at the valve and its pipe, and never "
    "operate one: it may not seat again."
)
STORED = (
    "A closed tank of hot water under pressure holds energy enough to do harm; work on it is for a licensed plumber."
)
FRAGILE = "Old valves and hose ends may not close again once opened; operate only what its owner operates."
FLOOD = "Do not leave water running or a vessel filling out of sight, and look below it afterwards."
LOCAL = "The code adopted where and when the house was built or altered decides; local amendments are common."
