"""What the building gauges can refuse: 070 to 079."""

from __future__ import annotations

from witnessmark.problems import Message

__all__ = ["EITHER_OR", "NEEDED_HERE", "NOT_BOTH_ORDERS"]

NEEDED_HERE = Message(
    "WM070",
    "the rule for this case needs a measurement that was not given",
    "Without it nobody can say whether the rule reaches this place, and a guess would be taken for a finding.",
    "Measure it, or report the place as not measured and say why.",
)
EITHER_OR = Message(
    "WM071",
    "exactly one of these inputs is needed",
    "Given twice, the two can contradict each other; given not at all, there is nothing to work with.",
    "Give the one that was measured.",
)
NOT_BOTH_ORDERS = Message(
    "WM072",
    "these inputs contradict each other",
    "One of them was read or typed wrongly, and the answer would rest on the wrong one.",
    "Look at both measurements again.",
)
