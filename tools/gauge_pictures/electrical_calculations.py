"""Pictures of the electrical calculations: what a run loses by its length, for each size."""

from __future__ import annotations

from collections.abc import Callable
from decimal import Decimal

from gauge_pictures.chart import Line, chart
from witnessmark.gauges.electrical.calculating.ampacity_tables import table_ampacity
from witnessmark.gauges.electrical.calculating.resistance import drop, ohms_per_foot
from witnessmark.gauges.electrical.calculating.sizes import CIRCULAR_MILS, printed_size

__all__ = ["PICTURES"]

_LENGTHS = tuple(range(0, 201, 10))


def _by_length() -> str:
    def percent(size: str, feet: int) -> float:
        return float(drop(Decimal(16), Decimal(feet), ohms_per_foot(size, "copper")) / 120 * 100)

    sizes = [
        Line(printed_size(size), tuple((feet, percent(size, feet)) for feet in _LENGTHS))
        for size in ("12", "10", "8", "6")
    ]
    advice = Line("advice, 3 %", ((0, 3.0), (200, 3.0)), accent=True, broken=True)
    drawn: str = chart(
        title="Voltage drop of 16 A at 120 V in copper",
        x="length one way, ft",
        y="voltage drop, %",
        lines=(*sizes, advice),
    )
    return drawn


def _by_size() -> str:
    sizes = [size for size in CIRCULAR_MILS if size != "14"]

    def line(metal: str, column: int, *, accent: bool = False) -> Line:
        points = tuple((CIRCULAR_MILS[s] / 1000, float(table_ampacity(s, metal, column, 2023))) for s in sizes)
        return Line(f"{metal} {column} °C", points, accent=accent, broken=metal != "copper")

    drawn: str = chart(
        title="Ampacity by the table of 2023",
        x="cross-section, kcmil (12 AWG is 6.53)",
        y="ampacity, A",
        lines=(line("copper", 60), line("copper", 75, accent=True), line("copper", 90), line("aluminum", 75)),
        x_log=True,
        y_log=True,
    )
    return drawn


#: Gauge name: what draws its picture.
PICTURES: dict[str, Callable[[], str]] = {"voltage-drop-by-size": _by_length, "conductor-ampacity": _by_size}
