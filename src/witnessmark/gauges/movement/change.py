"""What changed between two level surveys of the same places."""

from __future__ import annotations

import datetime as dt
import math
from dataclasses import replace
from decimal import Decimal
from typing import Annotated

from witnessmark.gauges.answer import Also, Answer, Table, Uncertainty, rounded
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.gauge import gauge
from witnessmark.gauges.movement.asking import (
    A_FOOT,
    A_TENTH,
    NORTH_UP,
    Beside,
    Instrument,
    NorthOfPlan,
    ReadsAs,
    inches,
)
from witnessmark.gauges.movement.chords import chords, worst
from witnessmark.gauges.movement.levels import Level, Point, called, survey
from witnessmark.gauges.movement.messages import DATES_TURNED_ROUND, NOTHING_IN_COMMON
from witnessmark.gauges.movement.plane import bearing, fit, left_over
from witnessmark.gauges.movement.sources import GEOMETRY, TEXAS
from witnessmark.problems import Refusal

__all__ = ["levels_changed", "paired"]

_HOW = Asked("the readings of one survey, one row each: x, y, reading, covering, name",
             how="the same places, the same instrument, the same covering, and coming back to the first place")  # fmt: skip


def paired(first: tuple[Point, ...], second: tuple[Point, ...]) -> tuple[tuple[Point, Point], ...]:
    """The places that both surveys read: by name where both have one, else by where they stand.

    >>> from fractions import Fraction as F
    >>> [b.height for _, b in paired((Point(F(0), F(0), F(0), "door"),), (Point(F(1), F(0), F(7), "door"),))] == [7]
    True
    """
    names = {point.name: point for point in second if point.name}
    places = {(point.x, point.y): point for point in second}
    found = []
    for point in first:
        other = names.get(point.name) if point.name else None
        other = other or places.get((point.x, point.y))
        if other is not None:
            found.append((point, other))
    return tuple(found)


@gauge(
    name="levels-changed",
    family="movement",
    title="What changed between two level surveys of the same places",
    unit="[in_i]",
    gives="largest change less smallest change: how much the shape moved, whatever the datum",
    sources=(GEOMETRY, TEXAS),
    error="each change is off by the error of two readings, the difference of two changes by that of four",
    never="why the floor moved, that it will go on, or that it has stopped",
    cautions=(
        (
            "Changes are told against the first place in common, which may itself have moved; only a fixed mark off the "
            "house tells that."
        ),
        "Ground swells and shrinks with the seasons: two surveys in different seasons show that too.",
        "A change of shape is for a licensed structural or geotechnical engineer to explain.",
    ),
    example={
        "first": "0ft,0ft,0in; 20ft,0ft,-0.2in; 0ft,20ft,-0.1in; 20ft,20ft,-0.3in",
        "second": "0ft,0ft,0in; 20ft,0ft,-0.2in; 0ft,20ft,-0.2in; 20ft,20ft,-1.1in",
        "first_on": "2025-04-10",
        "second_on": "2026-04-12",
    },
)
def levels_changed(
    first: Annotated[tuple[Level, ...], replace(_HOW, what="readings of the earlier survey: " + _HOW.what)],
    second: Annotated[tuple[Level, ...], replace(_HOW, what="readings of the later survey: " + _HOW.what)],
    *,
    first_on: Annotated[dt.date | None, Asked("day of the earlier survey", example="2025-04-10")] = None,
    second_on: Annotated[dt.date | None, Asked("day of the later survey", example="2026-04-12")] = None,
    reads: ReadsAs = "height",
    instrument: Instrument = A_TENTH,
    second_instrument: Instrument = A_TENTH,
    north: NorthOfPlan = NORTH_UP,
    beside: Beside = A_FOOT,
) -> Answer:
    """Change of shape between two surveys of the same places, with what the instruments can tell.

    Formula:
        change(P) = second(P) - first(P), both less the change of the first place in common
        value = largest change - smallest change; error = sqrt(2 (u1^2 + u2^2))

    Traps: one survey called a movement; a difference smaller than the readings' own error called a movement.

    >>> from witnessmark.gauges import evaluate
    >>> one = evaluate("levels-changed", {"first": "0ft,0ft,0in; 9ft,0ft,0in", "second": "0ft,0ft,0in; 9ft,0ft,-1in"})
    >>> one.value, one["beyond_error"]
    (Decimal('1'), True)
    """
    if first_on and second_on and second_on <= first_on:
        raise Refusal(DATES_TURNED_ROUND.at("second_on", f"{second_on} after {first_on}"))
    pairs = paired(survey(first, reads, least=1).points, survey(second, reads, least=1).points)
    moved = tuple(Point(a.x, a.y, (b.height - a.height) - (pairs[0][1].height - pairs[0][0].height), a.name or b.name)
                  for a, b in pairs)  # fmt: skip
    if len({(point.x, point.y) for point in moved}) < 2:  # noqa: PLR2004 - a change of shape needs two places
        raise Refusal(NOTHING_IN_COMMON.at("second", f"{len(pairs)} in common"))
    low, high = min(moved, key=lambda p: p.height), max(moved, key=lambda p: p.height)
    shape = high.height - low.height
    u1, u2 = float(instrument.value), float(second_instrument.value)
    off = math.sqrt(2 * (u1 * u1 + u2 * u2))
    plane = fit(moved)
    toward = bearing(float(plane.a), float(plane.b), float(north.value))
    value, beyond = rounded(float(shape)), float(shape) > off
    also = [
        Also("beyond_error", "the change is larger than the readings can be off by", beyond),
        Also("risen_most", "place that rose most, or fell least, against the first", called(high)),
        Also("fallen_most", "place that fell most, or rose least, against the first", called(low)),
        Also("tilt_change", "change of tilt of the whole", rounded(plane.slope * 100), "%"),
        Also("in_common", "places in common", rounded(float(len(moved))), "1"),
    ]
    if toward is not None:
        also.append(Also("toward", "bearing toward which it tilted further", rounded(toward), "deg"))
    if lines := worst(chords(moved, left_over(moved, plane), float(beside.value)), moved):
        also += [
            Also("bending_change", "worst change of bending over its chord", rounded(lines[0].ratio), "1"),
            Also("bending_shape", "sag or hog of that change", lines[0].shape),
        ]
    if first_on and second_on:
        years = Decimal((second_on - first_on).days) / Decimal("365.25")
        also.append(Also("rate", "change of shape a year, as if even", rounded(float(value / years)), "[in_i]/a"))
    said = (
        f"Between the surveys the shape of the floor changed by {inches(float(shape))}: against {called(moved[0])}, "
        f"{called(low)} is at {float(low.height):+.2f} in and {called(high)} at {float(high.height):+.2f} in"
        if beyond
        else f"The surveys differ by {inches(float(shape))} in shape, no more than the readings may be off by"
    )
    return Answer(
        value=value,
        words=f"{said} (readings good to {off:.2f} in in such a difference).",
        uncertainty=Uncertainty("four readings' error", rounded(off)),
        cautions=(
            ("Two surveys by different instruments or people differ by more than either alone.",) if u1 != u2 else ()
        ),
        also=tuple(also),
        table=Table(
            (("place", ""), ("x", "[ft_i]"), ("y", "[ft_i]"), ("change", "[in_i]")),
            tuple((called(p), rounded(float(p.x)), rounded(float(p.y)), rounded(float(p.height))) for p in moved),
        ),
    )
