"""How long hot water takes to burn an adult's skin: three published tables, and reading between their rows."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Literal

from witnessmark.gauges.answer import Source
from witnessmark.gauges.water.sources import CPSC_5098, OUTLET_DEVICES, SCALD_LEAFLET

__all__ = ["CPSC", "LEAFLET", "OUTLETS", "SECOND", "TABLES", "Reading", "ScaldTable", "shortest"]


@dataclass(frozen=True, slots=True)
class ScaldTable:
    """One published table: *rows* of temperature (°F) and seconds, rising in temperature and falling in time."""

    key: str
    name: str
    source: Source
    rows: tuple[tuple[float, float], ...]

    def seconds(self, fahrenheit: float) -> float | None:
        """Seconds to the burn, None beyond the rows; between rows the logarithm of the time runs straight.

        Times fall by a factor for each degree, so a straight line through the times themselves reads far too long.

        >>> round(CPSC.seconds(135), 1)
        13.4
        """
        if not self.rows[0][0] <= fahrenheit <= self.rows[-1][0]:
            return None
        for (low, long), (high, short) in zip(self.rows, self.rows[1:], strict=False):
            if fahrenheit <= high:
                part = (fahrenheit - low) / (high - low)
                return math.exp(math.log(long) + part * (math.log(short) - math.log(long)))
        return self.rows[-1][1]

    def bound(self, fahrenheit: float) -> float | None:
        """Above the last row: its time, which hotter water does not exceed; None at or below it.

        >>> CPSC.bound(160), CPSC.bound(140)
        (2, None)
        """
        return self.rows[-1][1] if fahrenheit > self.rows[-1][0] else None


def _metric(*rows: tuple[float, float]) -> tuple[tuple[float, float], ...]:
    return tuple((round(celsius * 1.8 + 32, 6), seconds) for celsius, seconds in rows)


_MINUTE, _HOUR = 60.0, 3600.0
OUTLETS = ScaldTable(
    "outlet_table",
    "table printed with bathing-outlet devices",
    OUTLET_DEVICES,
    _metric((45, 3 * _HOUR), (47, 45 * _MINUTE), (48, 20 * _MINUTE), (49, 10 * _MINUTE), (51, 252), (55, 30), (60, 5)),
)
#: The same document's times to a second-degree burn.
SECOND = ScaldTable(
    "outlet_table",
    "table printed with bathing-outlet devices",
    OUTLET_DEVICES,
    _metric((45, 2 * _HOUR), (47, 20 * _MINUTE), (48, 15 * _MINUTE), (49, 8 * _MINUTE), (51, 120), (55, 17), (60, 3)),
)
CPSC = ScaldTable("cpsc", "CPSC Publication 5098", CPSC_5098, ((120, 300), (130, 30), (140, 6), (150, 2)))
#: Where the leaflet gives a range or "less than", its shorter end.
LEAFLET = ScaldTable(
    "leaflet",
    "hospital leaflet",
    SCALD_LEAFLET,
    ((125, 90), (130, 30), (135, 10), (140, 5), (145, 3), (150, 1.5), (155, 1)),
)
TABLES: dict[str, tuple[ScaldTable, ...]] = {
    "third degree": (OUTLETS, CPSC, LEAFLET),
    "second degree": (SECOND,),
}


@dataclass(frozen=True, slots=True)
class Reading:
    """The shortest time of all tables: *seconds*, whether it is only an upper bound, and each table's own time."""

    seconds: float | None
    at_most: bool
    each: tuple[tuple[ScaldTable, float | None], ...]


def shortest(fahrenheit: float, injury: Literal["third degree", "second degree"] = "third degree") -> Reading:
    """The shorter answer where tables differ; a table that ends below this temperature still bounds the time.

    >>> shortest(120).seconds, shortest(100).seconds
    (300.0, None)
    """
    each = tuple((table, table.seconds(fahrenheit)) for table in TABLES[injury])
    times = [seconds for _, seconds in each if seconds is not None]
    bounds = [bound for table, _ in each if (bound := table.bound(fahrenheit)) is not None]
    if not times and not bounds:
        return Reading(None, at_most=False, each=each)
    least = min([*times, *bounds])
    return Reading(round(least, 9), not times or least not in times, each)
