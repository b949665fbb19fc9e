"""Pictures of the gauges of air: the mould index through weeks, and the humidity from which mould grows."""

from __future__ import annotations

from collections.abc import Callable, Iterator

from gauge_pictures.chart import Line, chart
from witnessmark.gauges.air import CLASSES, course, critical_humidity, dew_point_celsius

__all__ = ["PICTURES"]

_DAYS = 84
_LEAK = 42


def _climate() -> Iterator[tuple[float, float, float]]:
    """Six weeks of a wet surface, then six weeks of a dry one, day by day."""
    for day in range(_DAYS):
        yield (24, 20, 97 if day < _LEAK else 50)


def _index() -> str:
    lines = tuple(
        Line(
            name,
            ((0.0, 0.0), *((day / 7, one.index) for day, one in enumerate(course(_climate(), of), 1))),
            accent=name == "sensitive",
        )
        for name, of in CLASSES.items()
    )
    return chart(
        title="Six weeks at 97 %, then six at 50 % (20 °C)",
        x="weeks",
        y="mould index (3: visible, 6: covered)",
        lines=lines,
    )


def _critical() -> str:
    lines = tuple(
        Line(
            f"{name} classes",
            tuple((1.8 * c / 2 + 32, critical_humidity(c / 2, least)) for c in range(2, 61)),
            accent=least == 80,
        )
        for name, least in (("sensitive", 80), ("resistant", 85))
    )
    return chart(
        title="Humidity at a surface from which mould grows",
        x="temperature of the surface, °F",
        y="relative humidity, %",
        lines=lines,
    )


def _dew() -> str:
    lines = tuple(
        Line(
            f"{fahrenheit} °F air",
            tuple(
                (percent, 1.8 * dew_point_celsius((fahrenheit - 32) / 1.8, percent / 100) + 32)
                for percent in range(10, 101)
            ),
            accent=fahrenheit == 70,
        )
        for fahrenheit in (60, 70, 80)
    )
    return chart(title="Surfaces colder than this condense", x="relative humidity, %", y="dew point, °F", lines=lines)


#: Name of the gauge to the function that draws its picture.
PICTURES: dict[str, Callable[[], str]] = {
    "mould-index": _index,
    "mould-critical-humidity": _critical,
    "dew-point": _dew,
}
