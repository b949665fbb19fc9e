"""Pictures of infrared: what emissivity does to a reading, what contrast a cold day gives."""

from __future__ import annotations

from collections.abc import Callable

from gauge_pictures.chart import Line, chart
from witnessmark.gauges.infrared.contrast import surface_contrast
from witnessmark.gauges.infrared.surface import object_kelvin

__all__ = ["PICTURES"]


def _correction() -> str:
    # Drawn over what is mirrored and not over emissivity, so that the lines part where their names stand.
    lines = []
    for apart in (20, 10, 5, -10):
        points = []
        for mirrored in range(71):
            true = object_kelvin(293.15 + apart, 1 - mirrored / 100, 293.15)
            if true is not None:
                points.append((mirrored / 100, true - 293.15 - apart))
        lines.append(Line(f"read {apart:+d} K", tuple(points), accent=apart == 10))
    drawn: str = chart(
        title="Surface less reading, reading so far from what is reflected",
        x="share mirrored, 1 - emissivity", y="correction, K", lines=tuple(lines),
    )  # fmt: skip
    return drawn


def _contrast() -> str:
    lines = [
        Line(
            name, tuple((float(d), surface_contrast(without, with_, 0.13, d)) for d in range(0, 21, 2)), accent=at == 1
        )
        for at, (name, without, with_) in enumerate(
            (("0.6 and 0.3", 0.6, 0.3), ("1.5 and 0.35", 1.5, 0.35), ("2.5 and 0.35", 2.5, 0.35))
        )
    ]
    lines.append(Line("5 x noise of 0.1", ((0.0, 0.5), (20.0, 0.5)), broken=True))
    drawn: str = chart(
        title="Contrast of missing insulation on an inside wall, by U-values in W/(m²K)",
        x="inside less outside, K", y="contrast, K", lines=tuple(lines),
    )  # fmt: skip
    return drawn


PICTURES: dict[str, Callable[[], str]] = {"infrared-correction": _correction, "insulation-contrast": _contrast}
