"""What the gauges of air, surfaces and mould refuse: two readings that cannot stand together, or too few of them."""

from __future__ import annotations

from witnessmark.problems import Message

__all__ = ["BOILS", "HUMIDITY_NEEDED", "NO_DIFFERENCE", "OUT_OF_ORDER", "WET_ABOVE_DRY"]

WET_ABOVE_DRY = Message(
    "WM015",
    "these two temperatures cannot stand together",
    "Evaporation cools: a wet bulb is never warmer than the dry bulb, and never colder than bone-dry air would make it.",
    "Wet the wick with clean water, move air over it until it stands still, and read both bulbs again.",
)
OUT_OF_ORDER = Message(
    "WM016",
    "the rows of this series cannot be put in order of time",
    "Mould grows and fades in an order: hours swapped or lost give another index.",
    "Give every row its time and each later than the one before, or give no times at all and one row an hour.",
)
HUMIDITY_NEEDED = Message(
    "WM017",
    "this criterion needs the humidity of the inside air",
    "A criterion of surface humidity cannot be worked out from temperatures alone.",
    "Give the relative humidity measured in the room, or choose a criterion that is a fixed factor.",
)
NO_DIFFERENCE = Message(
    "WM018",
    "inside and outside are equally warm",
    "A temperature factor divides by their difference; without one it says nothing about the wall.",
    "Come back when it is at least 10 °C (18 °F) colder outside than inside, better after a night without sun.",
)
BOILS = Message(
    "WM019",
    "this much water vapour cannot be held at this air pressure",
    "The vapour alone would press harder than the whole air does: at this temperature and pressure water boils.",
    "Look at the temperature, the pressure and their units again.",
)
