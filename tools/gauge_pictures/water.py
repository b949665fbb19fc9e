"""Pictures of water: how long hot water takes to burn, what flow fixtures are reckoned to ask for, what pressure is lost."""

from __future__ import annotations

from collections.abc import Callable

from gauge_pictures.chart import Line, chart
from witnessmark.gauges.water.demand_curves import CURVES, GAPS
from witnessmark.gauges.water.pipe_friction import hazen_williams_psi
from witnessmark.gauges.water.scald_tables import TABLES

__all__ = ["PICTURES"]

_SHORT = {
    "IPC E103.3(3), tanks": "IPC, tanks",
    "NSPC B.5.4, tanks": "NSPC, tanks",
    "NSPC B.5.4, flush valves": "NSPC, valves",
    "IPC E103.3(3), flush valves": "IPC, valves",
}
_TABLES = {"outlet_table": "outlet devices", "cpsc": "CPSC", "leaflet": "hospital leaflet"}
_MOST_UNITS = 200


def _scald() -> str:
    lines = tuple(
        Line(
            _TABLES[table.key],
            tuple((fahrenheit, seconds) for fahrenheit, seconds in table.rows if 112 <= fahrenheit <= 160),
            accent=at == 0,
            broken=at == 2,
        )
        for at, table in enumerate(TABLES["third degree"])
    )
    return chart(
        title="Time to a third-degree burn of an adult's skin, by three tables",
        x="water temperature, °F", y="seconds", lines=lines, y_log=True,
    )  # fmt: skip


def _demand() -> str:
    """Each curve as read; where rows were not read there is no line."""
    lines: list[Line] = []
    for name, printed in CURVES.items():
        points = tuple((float(units), float(gpm)) for units, gpm in printed if units <= _MOST_UNITS)
        gap = GAPS.get(name)
        tanks = name.startswith("IPC") and name.endswith("tanks")
        if gap is None:
            lines.append(Line(_SHORT[name], points, accent=tanks))
            continue
        lines.append(Line("", tuple(point for point in points if point[0] <= gap[0]), broken=True))
        lines.append(Line(_SHORT[name], tuple(point for point in points if point[0] >= gap[1]), broken=True))
    return chart(
        title="Two codes, not one curve (NSPC was not read from 14 to 120 units)",
        x="water supply fixture units", y="peak demand, gal/min", lines=tuple(lines),
    )  # fmt: skip


def _friction() -> str:
    def line(name: str, inside: float, c: float, *, accent: bool = False, broken: bool = False) -> Line:
        points = tuple((q / 2, 100 * hazen_williams_psi(q / 2, inside, c)) for q in range(2, 15))
        return Line(name, points, accent, broken)

    lines = (
        line("1/2 PEX", 0.475, 150),
        line("1/2 copper L", 0.545, 150),
        line("3/4 steel, C 60", 0.824, 60, accent=True),
        line("3/4 steel, C 120", 0.824, 120, accent=True, broken=True),
        line("3/4 copper L", 0.785, 150),
        line("1 copper L", 1.025, 150),
    )
    return chart(
        title="Pressure lost over 100 ft: the bore and the rust decide",
        x="flow, gal/min", y="psi over 100 ft", lines=lines,
    )  # fmt: skip


PICTURES: dict[str, Callable[[], str]] = {
    "scald-time": _scald,
    "water-demand": _demand,
    "pipe-friction": _friction,
}
