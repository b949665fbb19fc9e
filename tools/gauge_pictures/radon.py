"""Pictures of radon: the hours of a monitor, which of them count, and what is reported."""

from __future__ import annotations

from collections.abc import Callable
from decimal import Decimal

from gauge_pictures.chart import Line, chart
from witnessmark.gauges import evaluate, find
from witnessmark.gauges.radon import precision

__all__ = ["PICTURES"]


def _monitor() -> str:
    answer = evaluate("radon-monitor", find("radon-monitor").example)
    rows = answer.table.rows if answer.table else ()
    hours = [(float(row[0]), float(row[2]), str(row[3])) for row in rows]
    left = [(hour, level) for hour, level, what in hours if what == "discarded"]
    kept = [(hour, level) for hour, level, what in hours if what != "discarded"]
    mean = float(Decimal(str(answer["mean"])))
    return chart(
        title=f"Hours of a monitor (invented): the first 4 discarded, reported {answer.value} pCi/L",
        x="hour",
        y="radon, pCi/L",
        lines=(
            Line("discarded", (*left, kept[0]), broken=True),
            Line("hours that count", tuple(kept), accent=True),
            Line("their mean", ((kept[0][0], mean), (kept[-1][0], mean))),
            Line("EPA acts from 4.0", ((1, 4), (kept[-1][0], 4)), broken=True),
        ),
    )


def _duplicates() -> str:
    def reached(outcome: str) -> tuple[tuple[float, float], ...]:
        points = []
        for tenths in range(1, 81):
            first = Decimal(tenths) / 10
            second = first
            while precision(first, second).outcome not in {outcome, "control limit reached"}:
                second += Decimal("0.01")
            points.append((float(first), float(second)))
        return tuple(points)

    return chart(
        title="Two devices side by side: from where on the higher one is too far off",
        x="lower result, pCi/L",
        y="higher result, pCi/L",
        lines=(
            Line("control limit", reached("control limit reached"), accent=True),
            Line("warning limit", reached("warning limit reached")),
            Line("equal", ((0.1, 0.1), (8, 8)), broken=True),
        ),
    )


PICTURES: dict[str, Callable[[], str]] = {"radon-monitor": _monitor, "radon-duplicates": _duplicates}
