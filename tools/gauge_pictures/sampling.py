"""Picture of sampling: how likely a sample meets a bad one."""

from __future__ import annotations

from collections.abc import Callable

from gauge_pictures.chart import Line, chart
from witnessmark.gauges.sampling.chance import chance_of_none

__all__ = ["PICTURES"]


def _chance() -> str:
    lines = tuple(
        Line(
            f"{bad} bad",
            tuple((float(n), 100 * (1 - float(chance_of_none(40, bad, n)))) for n in range(41)),
            accent=bad == 2,
        )
        for bad in (1, 2, 4, 8)
    )
    return chart(title="Chance of meeting a bad one among 40", x="number tested at random", y="%", lines=lines)


PICTURES: dict[str, Callable[[], str]] = {"chance-of-finding": _chance}
