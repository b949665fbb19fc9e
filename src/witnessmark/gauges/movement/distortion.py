"""How much neighbouring places of a floor turn against the house as a whole."""

from __future__ import annotations

import math
from dataclasses import replace
from typing import Annotated

from witnessmark.gauges.answer import Also, Answer, Table, Uncertainty, Verdict, rounded
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.gauge import gauge
from witnessmark.gauges.movement.asking import (
    A_TENTH,
    EXAMPLE,
    FIVE_FEET,
    Instrument,
    Readings,
    ReadsAs,
    Shortest,
    inches,
    taken,
)
from witnessmark.gauges.movement.levels import called, survey
from witnessmark.gauges.movement.plane import fit, left_over
from witnessmark.gauges.movement.sources import BJERRUM, DISTORTION, GEOMETRY, SKEMPTON, SURVEY_CAUTIONS

__all__ = ["angular_distortion"]


@gauge(
    name="angular-distortion",
    family="movement",
    title="Largest difference of height between two places over their distance, less the tilt",
    unit="1",
    gives="angular distortion: difference of settlement over distance, less the rigid tilt (0.00333 is 1/300)",
    sources=(GEOMETRY, SKEMPTON, BJERRUM),
    error="the readings' own error over the distance: 0.1 in a reading is 0.14 in over the pair",
    never="that a wall will crack or will not; the limits are from settlements of other buildings",
    cautions=(
        *SURVEY_CAUTIONS,
        "The limits were drawn from settlements since building; the shape of one survey is not a settlement.",
    ),
    example={"readings": EXAMPLE, "criterion": "Skempton and MacDonald cracks"},
)
def angular_distortion(
    readings: Readings,
    reads: ReadsAs = "height",
    shortest: Shortest = FIVE_FEET,
    instrument: Instrument = A_TENTH,
    criterion: Annotated[
        str | None, Asked("limit to hold it against, by its source", choices=tuple(DISTORTION))
    ] = None,
) -> Answer:
    """Angular distortion between two places of a floor, the largest of all pairs, after the rigid tilt is taken off.

    Formula:
        beta = |r(A) - r(B)| / |AB|, with r the height less the plane of best fit, over all pairs of places

    Traps: the tilt left in (a rigid house that leans is not distorted); pairs a foot apart, where the error of the
    readings is all there is.

    >>> from witnessmark.gauges import evaluate
    >>> evaluate("angular-distortion", {"readings": "0ft,0ft,0in; 12ft,0ft,1in; 0ft,12ft,2in; 12ft,12ft,3in"}).value
    Decimal('0')
    """
    one = survey(readings, reads)
    points, flat = one.points, left_over(one.points, fit(one.points))
    least = float(shortest.value)
    pairs = []
    order = sorted(range(len(points)), key=lambda k: (points[k].x, points[k].y))
    for at, i in enumerate(order):
        for j in order[at + 1 :]:
            apart = math.hypot(float(points[j].x - points[i].x), float(points[j].y - points[i].y))
            if apart >= least and apart > 0:
                pairs.append((abs(float(flat[i] - flat[j])) / (apart * 12), apart, i, j))
    also, steps, cautions = taken(one)
    if not pairs:
        return Answer(
            words=f"No two places stand {least:g} ft or more apart; nothing can be told of distortion.",
            also=also, steps=steps, cautions=cautions,
        )  # fmt: skip

    def rank(pair: tuple[float, float, int, int]) -> tuple[float, float, tuple[object, ...]]:
        ends = sorted((points[i].x, points[i].y) for i in pair[2:])
        return (-float(f"{pair[0]:.9e}"), -float(f"{pair[1]:.9e}"), tuple(ends))

    pairs.sort(key=rank)
    ratio, apart, i, j = pairs[0]
    off = float(instrument.value) * math.sqrt(2)
    said = f"1 in {1 / ratio:.0f}" if ratio > 1e-7 else "none"  # noqa: PLR2004 - a ten-millionth: no level shows it
    answer = Answer(
        value=rounded(ratio),
        unit="1",
        words=f"Largest angular distortion {said}: {inches(ratio * apart * 12)} over {apart:.1f} ft between "
              f"{called(points[i])} and {called(points[j])}, less the tilt of the whole.",
        uncertainty=Uncertainty(
            f"about {off:.2f} in either way in the difference of two readings", rounded(off / (apart * 12))
        ),
        cautions=cautions,
        also=(
            Also("difference", "difference of height less the tilt", rounded(ratio * apart * 12), "[in_i]"),
            Also("length", "distance between the two places", rounded(apart), "[ft_i]"),
            *(Also(name.lower().replace(" ", "_"), one_.words, rounded(float(one_.ratio)), "1")
              for name, one_ in DISTORTION.items()),
            *also,
        ),
        steps=steps,
        table=Table(
            (("from", ""), ("to", ""), ("distance", "[ft_i]"), ("distortion", "1")),
            tuple((called(points[p]), called(points[q]), rounded(l_), rounded(r)) for r, l_, p, q in pairs[:12]),
        ),
    )  # fmt: skip
    if criterion is None:
        return answer
    limit = DISTORTION[criterion]
    held = replace(answer.against(limit.limit("1")), sources=(GEOMETRY, limit.source))
    sure = max((ratio - off / (apart * 12) for ratio, apart, _, _ in pairs), default=0.0)
    if rounded(sure) <= rounded(float(limit.ratio)) or held.verdict is None:
        return held
    told = f"{limit.words}: beyond it by more than the readings are off, in at least one pair"
    return replace(held, verdict=Verdict("beyond", told, limit.source))
