"""Pictures of the electrical requirements: who came when, how fast a device opens, how far a receptacle reaches."""

from __future__ import annotations

from collections.abc import Callable
from decimal import Decimal
from html import escape

from gauge_pictures.chart import ACCENT, INK, PALE, Line, chart
from witnessmark.gauges.electrical import longest_trip_seconds
from witnessmark.gauges.electrical.editions import EDITIONS
from witnessmark.gauges.electrical.protection.gfci_rules import RULES
from witnessmark.gauges.electrical.spacing.sketch import farthest, feet, laid, spaces

__all__ = ["PICTURES"]

_PAPER = "#fffdf8"


def _open(wide: int, high: int, title: str) -> list[str]:
    return [
        (
            f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {wide} {high}" font-family="serif" font-size="13" '
            f'fill="{INK}" role="img" aria-label="{escape(title)}">'
        ),
        f'<rect width="{wide}" height="{high}" fill="{_PAPER}"/>',
        f'<text x="16" y="24" font-size="15">{escape(title)}</text>',
    ]


def _trip() -> str:
    currents = [6 * (264 / 6) ** (step / 60) for step in range(61)]
    return chart(
        title="Longest time in which a Class A device may open",
        x="current to ground, mA",
        y="time, s",
        lines=(
            Line("limit", tuple((one, longest_trip_seconds(one)) for one in currents), accent=True),
            Line("25 ms", ((264, 0.025), (1000, 0.025)), broken=True),
        ),
        x_log=True,
        y_log=True,
    )


def _timeline() -> str:
    """Each rule on ground-fault protection from the edition that first holds it, oldest above."""
    wide, left, right, row = 760, 20, 24, 19
    rules = sorted({(rule.first, rule.last, rule.words) for rule, _ in RULES})
    high = 64 + row * len(rules)
    first, last = 1968, EDITIONS[-1] + 1

    def across(year: int) -> float:
        return left + (min(year, last) - first) / (last - first) * (wide - left - right)

    parts = _open(wide, high, "Ground-fault protection of dwellings: what each edition of the code added")
    for edition in EDITIONS:
        if edition >= first:
            parts.append(
                f'<path d="M{across(edition):.1f} 44V{high - 8}" stroke="{PALE}" stroke-width=".6"/>'
                f'<text x="{across(edition):.1f}" y="40" font-size="9" text-anchor="middle">{edition}</text>'
            )
    for at, (begun, ended, words) in enumerate(rules):
        y = 60 + at * row
        end = across(next((one for one in EDITIONS if one > ended), last))
        words_wide = 6 * len(words)
        inside = across(begun) + words_wide < wide - right
        anchor = ("start", across(begun) + 4) if inside else ("end", across(begun) - 6)
        parts.append(
            f'<path d="M{across(begun):.1f} {y + 5}H{end:.1f}" stroke="{ACCENT}" stroke-width="2"/>'
            f'<circle cx="{across(begun):.1f}" cy="{y + 5}" r="2.6" fill="{ACCENT}"/>'
            f'<text x="{anchor[1]:.1f}" y="{y + 1 if inside else y + 8}" font-size="11" text-anchor="{anchor[0]}">'
            f"{escape(words)}</text>"
        )
    return "".join([*parts, "</svg>"])


def _reach(title: str, parts_of: list[tuple[str, int, bool]], at: list[int], reach: int) -> str:
    """A wall or counter unrolled, with what each receptacle reaches along it and the point farthest from one."""
    wide, left = 760, 30
    line = laid([(kind, Decimal(length), breaks) for kind, length, breaks in parts_of], running=False)
    scale = (wide - 2 * left) / float(line[-1].end)

    def x(inches: Decimal | int) -> float:
        return left + float(inches) * scale

    parts = _open(wide, 190, title)
    for space in spaces(line, [Decimal(one) for one in at]):
        for one in space.receptacles:
            low, high = max(one - reach, space.start), min(one + reach, space.end)
            parts.append(
                f'<rect x="{x(low):.1f}" y="96" width="{x(high) - x(low):.1f}" height="10" fill="{ACCENT}" opacity=".35"/>'
            )
        far = farthest(space)
        if far:
            parts.append(
                f'<path d="M{x(far.place):.1f} 90V118" stroke="{INK}" stroke-width="1.4"/>'
                f'<text x="{min(max(x(far.place), 60), wide - 60):.1f}" y="134" font-size="12" text-anchor="middle">'
                f"{feet(far.distance)} at {feet(far.place)}</text>"
            )
    for piece in line:
        stroke = PALE if piece.breaks else INK
        dash = ' stroke-dasharray="3 4"' if piece.breaks else ""
        parts.append(
            f'<path d="M{x(piece.start):.1f} 84H{x(piece.end):.1f}" stroke="{stroke}" stroke-width="3"{dash}/>'
            f'<text x="{(x(piece.start) + x(piece.end)) / 2:.1f}" y="74" font-size="11" text-anchor="middle">'
            f"{escape(piece.kind)}</text>"
        )
    parts += [f'<rect x="{x(one) - 3:.1f}" y="80" width="6" height="8" fill="{ACCENT}"/>' for one in at]
    parts.append(
        f'<text x="{left}" y="168" font-size="12">Filled squares: receptacles. Shaded: within {feet(Decimal(reach))} of '
        "one in the same space. Upright line: the farthest point.</text>"
    )
    return "".join([*parts, "</svg>"])


def _wall() -> str:
    return _reach(
        "A wall unrolled: corners do not break it, the door does",
        [("wall", 132, False), ("wall, round the corner", 96, False), ("door", 36, True), ("wall", 120, False)],
        [60, 180, 300],
        72,
    )


def _counter() -> str:
    return _reach(
        "A counter unrolled: the sink parts it",
        [
            ("counter", 40, False),
            ("sink", 30, True),
            ("counter", 60, False),
            ("range", 30, True),
            ("counter", 24, False),
        ],
        [20, 94, 172],
        24,
    )


#: Gauge name: its picture as SVG text.
PICTURES: dict[str, Callable[[], str]] = {
    "gfci-required": _timeline,
    "gfci-trip": _trip,
    "receptacle-spacing-counter": _counter,
    "receptacle-spacing-wall": _wall,
}
