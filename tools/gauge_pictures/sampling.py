"""Picture of sampling: how likely a sample meets a bad one."""

from __future__ import annotations

from collections.abc import Callable

from gauge_pictures.chart import Line, chart
from witnessmark.gauges.sampling.chance import chance_of_none

__all__ = ["PICTURES"]


def _chance() -> str:
    # Half of the forty, so that the lines are still apart where their names stand.
    lines = tuple(
        Line(
            f"{bad} bad",
            tuple((float(n), 100 * (1 - float(chance_of_none(40, bad, n)))) for n in range(21)),
            accent=bad == 2,
        )
        for bad in (8, 4, 2, 1)
    )
    drawn: str = chart(
        title="Chance of meeting a bad one among 40", x="number tested at random", y="chance, %", lines=lines
    )
    return drawn


PICTURES: dict[str, Callable[[], str]] = {"chance-of-finding": _chance}
