"""Pictures of the gauges of wood: moisture content against the humidity of the air, and what a cold meter misses."""

from __future__ import annotations

from collections.abc import Callable

from gauge_pictures.chart import Line, chart
from witnessmark.gauges.wood import corrected_for_temperature, emc_percent

__all__ = ["PICTURES"]


def _emc() -> str:
    lines = tuple(
        Line(
            f"{fahrenheit} °F",
            tuple((percent, emc_percent((fahrenheit - 32) / 1.8, percent / 100)) for percent in range(5, 96)),
            accent=fahrenheit == 70,
        )
        for fahrenheit in (30, 70, 110, 150)
    )
    return chart(
        title="Moisture content that wood comes to",
        x="relative humidity of the air, %",
        y="moisture content, %",
        lines=lines,
    )


def _correction() -> str:
    lines = tuple(
        Line(
            f"displayed {reading} %",
            tuple((1.8 * c + 32, corrected_for_temperature(reading, c)) for c in range(-15, 51)),
            accent=reading == 15,
        )
        for reading in (10, 15, 20)
    )
    return chart(
        title="Cold wood reads low: what the reading stands for",
        x="temperature of the wood, °F",
        y="moisture content, %",
        lines=lines,
    )


#: Name of the gauge to the function that draws its picture.
PICTURES: dict[str, Callable[[], str]] = {"wood-emc": _emc, "wood-meter-correction": _correction}
