"""What is always said beside a gauge of fuel, combustion or exhaust."""

from __future__ import annotations

__all__ = ["FINDING", "GAS", "LEAVE", "LICENSED", "LOCAL", "MONOXIDE", "RELIGHT", "SILENT"]

GAS = (
    "A smell of gas: leave, light nothing, switch nothing on or off, and call the gas supplier or the fire department "
    "from outside."
)
RELIGHT = "Never relight a pilot and never open a gas valve that was found closed."
MONOXIDE = "Carbon monoxide has no smell; wear a personal alarm and do not stay to finish a measurement."
LEAVE = "Get everybody out into fresh air now, count heads, call 911 from outside, and do not go back in."
SILENT = "A carbon monoxide alarm that stays silent proves nothing; it is no measuring instrument."
LOCAL = "Local codes and the maker's instructions come first; adoption lags the edition's date by years."
FINDING = "First required by an edition is a fact about the model code, not about this house."
LICENSED = "Correction is for a licensed heating or gas contractor."
