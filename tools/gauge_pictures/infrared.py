"""Pictures of infrared: what emissivity does to a reading, what contrast a cold day gives."""

from __future__ import annotations

from collections.abc import Callable

from gauge_pictures.chart import Line, chart
from witnessmark.gauges.infrared.surface import object_kelvin

__all__ = ["PICTURES"]


def _correction() -> str:
    lines = []
    for apart in (-10, 5, 10, 20):
        points = []
        for step in range(25, 101):
            true = object_kelvin(293.15 + apart, step / 100, 293.15)
            if true is not None:
                points.append((step / 100, true - 293.15 - apart))
        lines.append(Line(f"read {apart:+d} K", tuple(points), accent=apart == 10))
    return chart(
        title="Surface less reading, reading so far from what is reflected",
        x="emissivity", y="correction, K", lines=tuple(lines),
    )  # fmt: skip


def _contrast() -> str:
    lines = tuple(
        Line(name, tuple((float(d), (without - with_) * 0.13 * d) for d in range(0, 31, 2)), accent=at == 1)
        for at, (name, without, with_) in enumerate(
            (("0.6 and 0.3", 0.6, 0.3), ("1.5 and 0.35", 1.5, 0.35), ("2.5 and 0.35", 2.5, 0.35))
        )
    )
    return chart(
        title="Contrast of missing insulation on an inside wall, by U-values in W/(m²K)",
        x="inside less outside, K", y="contrast, K", lines=lines,
    )  # fmt: skip


PICTURES: dict[str, Callable[[], str]] = {"infrared-correction": _correction, "insulation-contrast": _contrast}
