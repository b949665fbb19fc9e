"""What the voltage-drop gauges ask in the same words, and the advice that they hold the drop against."""

from __future__ import annotations

from decimal import Decimal

from witnessmark.gauges.asked import Asked
from witnessmark.gauges.electrical.editions import nec

__all__ = ["ADVICE", "ADVICE_BRANCH", "ADVICE_TOTAL", "CURRENT", "NOT_ENFORCEABLE", "NO_LOAD", "VOLTAGE"]

ADVICE_BRANCH, ADVICE_TOTAL = Decimal(3), Decimal(5)
ADVICE = nec("1984 to 2023", "informational notes to 210.19 and 215.2", "seen in a copy")
NOT_ENFORCEABLE = (
    "3 % for the branch circuit and 5 % to the farthest outlet are advice in informational notes, not a rule: more "
    "than that is no violation by itself."
)
CURRENT = Asked(
    "current that flows",
    "A",
    lowest="0.1",
    highest="400",
    least="0.001",
    most="6000",
    how="with a clamp meter on one conductor, or from the plate of the load",
    example="20A",
)
VOLTAGE = Asked(
    "voltage of the circuit",
    "V",
    lowest="100",
    highest="480",
    least="1",
    most="1000",
    how="120 V between one line and neutral, 240 V between the lines of a house",
    example="120V",
)
NO_LOAD = Asked(
    "voltage at the outlet with nothing running on the circuit",
    "V",
    lowest="100",
    highest="260",
    least="1",
    most="1000",
    how="with a true-RMS meter at the outlet; wait until it stands still",
    example="121.5V",
)
