"""Pictures of water: how long hot water takes to burn, what flow fixtures are reckoned to ask for."""

from __future__ import annotations

from collections.abc import Callable

from gauge_pictures.chart import Line, chart
from witnessmark.gauges.water.fixture_units import CURVES
from witnessmark.gauges.water.scald_tables import TABLES

__all__ = ["PICTURES"]


def _scald() -> str:
    lines = tuple(
        Line(
            table.name if len(table.name) < 18 else table.key.replace("_", " "),
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
    short = {
        "IPC E103.3(3), tanks": "IPC, tanks",
        "NSPC B.5.4, tanks": "NSPC, tanks",
        "NSPC B.5.4, flush valves": "NSPC, valves",
    }
    lines = tuple(
        Line(short[name], tuple((float(u), float(g)) for u, g in points if u <= 120), accent=name.startswith("IPC"))
        for name, points in CURVES.items()
    )
    return chart(title="Two codes, two curves", x="water supply fixture units", y="peak demand, gal/min", lines=lines)


PICTURES: dict[str, Callable[[], str]] = {"scald-time": _scald, "water-demand": _demand}
