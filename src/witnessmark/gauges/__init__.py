"""Gauges: what a measurement means, with its published source. Usable alone; knows nothing of journals or packs."""

from witnessmark.gauges.answer import Also, Answer, Limit, Outside, Source, Step, Table, Uncertainty, Verdict, rounded
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.catalogue import FAMILIES, evaluate, find, gauges
from witnessmark.gauges.gauge import Gauge, Input, gauge

__all__ = [
    "FAMILIES", "Also", "Answer", "Asked", "Gauge", "Input", "Limit", "Outside", "Source", "Step", "Table",
    "Uncertainty", "Verdict", "evaluate", "find", "gauge", "gauges", "rounded",
]  # fmt: skip
