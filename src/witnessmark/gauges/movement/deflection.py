"""How much a floor bends between its own places, in every direction."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal
from typing import Annotated

from witnessmark.gauges.answer import Also, Answer, Step, Table, Uncertainty, Verdict, rounded
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.gauge import gauge
from witnessmark.gauges.movement.asking import (
    A_FOOT,
    A_TENTH,
    EXAMPLE,
    NO_FEET,
    Beside,
    Instrument,
    Readings,
    ReadsAs,
    Shortest,
    inches,
    taken,
)
from witnessmark.gauges.movement.chords import Chord, chords, worst
from witnessmark.gauges.movement.levels import Point, Survey, called, survey
from witnessmark.gauges.movement.plane import fit, left_over
from witnessmark.gauges.movement.sources import BENDING, GEOMETRY, SURVEY_CAUTIONS, TEXAS

__all__ = ["bent", "floor_deflection", "length_over"]

_SHOWN = 12
_AS_BUILT = Decimal("0.75")


def length_over(ratio: float) -> str:
    """A deflection ratio as it is said: L over a number.

    >>> length_over(1 / 1200)
    'L/1200'
    """
    return f"L/{1 / ratio:.0f}" if ratio > 1e-7 else "none"  # noqa: PLR2004 - a ten-millionth: no level shows it


def _row(one: Chord, points: tuple[Point, ...]) -> tuple[Decimal | str, ...]:
    return (
        called(points[one.start]), called(points[one.end]), called(points[one.at]), rounded(one.length),
        rounded(one.deflection), one.shape, length_over(one.ratio),
    )  # fmt: skip


def bent(one: Survey, beside: float, shortest: float, instrument: float, criterion: str | None) -> Answer:
    """The answer of the gauges of bending: the worst of all chords of the survey, held against *criterion*.

    Short chords carry most of the readings' error; a longer one that is surely beyond the criterion decides, also
    where the worst ratio is a short one that the readings cannot tell from the limit.

    >>> from witnessmark.gauges import evaluate
    >>> round(evaluate("level-profile", {"readings": "0ft,0in; 15ft,-1in; 30ft,0in"}).value, 6)
    Decimal('0.002778')
    """
    flat = left_over(one.points, fit(one.points))
    found = worst(chords(one.points, flat, beside, shortest), one.points)
    also, steps, cautions = taken(one)
    if not found:
        nothing = Answer(
            words="No place lies between two others, so bending cannot be told; read more places in line.",
            also=also,
            steps=steps,
            cautions=cautions,
        )
        return nothing if criterion is None else nothing.against(BENDING[criterion].limit("1"))
    first = found[0]
    deepest = max(found, key=lambda chord: (round(abs(chord.deflection), 9), chord.length))
    off = first.error(instrument)
    value = rounded(first.ratio)
    names = [called(one.points[i]) for i in (first.start, first.end, first.at)]
    if first.shape == "straight":
        said = "The places lie on straight lines: the floor does not bend"
    else:
        said = (
            f"Worst bending: {first.shape} of {inches(first.deflection)} over {first.length:.1f} ft "
            f"({length_over(first.ratio)}), at {names[2]} between {names[0]} and {names[1]}"
        )
    allowed = first.length * 12 / 360
    answer = Answer(
        value=value,
        unit="1",
        words=f"{said}.",
        uncertainty=Uncertainty(
            f"about {off:.2f} in either way in the deflection, when each reading may be off by {instrument:g} in",
            rounded(off / (first.length * 12)),
        ),
        cautions=cautions,
        also=(
            Also("deflection", "height above the chord; below it is negative", rounded(first.deflection), "[in_i]"),
            Also("shape", "sag (middle low) or hog (middle high)", first.shape),
            Also("length", "length of the chord", rounded(first.length), "[ft_i]"),
            Also("from", "one end", names[0]),
            Also("to", "other end", names[1]),
            Also("at", "where it bends most", names[2]),
            Also("allowance", "L/360 for this chord", rounded(allowed), "[in_i]"),
            Also("chords", "lines looked at", rounded(float(len(found))), "1"),
            Also("deepest", "largest deflection of any chord", rounded(deepest.deflection), "[in_i]"),
            Also("deepest_length", "length of that chord", rounded(deepest.length), "[ft_i]"),
            Also(
                "could_be_as_built",
                "no chord bends more than 3/4 in, a common tolerance of a new slab in 10 ft (recalled)",
                rounded(abs(deepest.deflection)) <= _AS_BUILT,
            ),
            *also,
        ),
        steps=(
            *steps,
            Step("length of the chord", rounded(first.length), "[ft_i]"),
            Step("deflection off the chord", rounded(first.deflection), "[in_i]"),
            Step("L/360 for this chord", rounded(allowed), "[in_i]"),
        ),
        table=Table(
            (("from", ""), ("to", ""), ("at", ""), ("length", "[ft_i]"), ("deflection", "[in_i]"), ("shape", ""),
             ("ratio", "")),
            tuple(_row(chord, one.points) for chord in found[:_SHOWN]),
        ),
    )  # fmt: skip
    if criterion is None:
        return answer
    limit = BENDING[criterion]
    held = replace(answer.against(limit.limit("1")), sources=(GEOMETRY, limit.source))
    sure = max(found, key=lambda chord: (round(chord.least(instrument), 12), chord.length))
    if (
        rounded(sure.least(instrument)) <= rounded(float(limit.ratio))
        or held.verdict is None
        or held.verdict.outcome == "beyond"
    ):
        return held
    told = (
        f"{limit.words}: beyond it by more than the readings are off, {length_over(sure.ratio)} over "
        f"{sure.length:.1f} ft between {called(one.points[sure.start])} and {called(one.points[sure.end])}"
    )
    return replace(held, verdict=Verdict("beyond", told, limit.source))


@gauge(
    name="floor-deflection",
    family="movement",
    title="How much a floor bends, in every direction, less its tilt",
    unit="1",
    gives="deflection off a chord over the length of that chord, the largest of all chords (0.00278 is L/360)",
    sources=(GEOMETRY, TEXAS),
    error="the readings' own error: 0.1 in a reading is about 0.12 in in a deflection at mid-span",
    never="that the foundation has failed or needs repair, or that it has not moved",
    cautions=SURVEY_CAUTIONS,
    example={"readings": EXAMPLE, "criterion": "Texas Section 2009"},
)
def floor_deflection(
    readings: Readings,
    *,
    reads: ReadsAs = "height",
    beside: Beside = A_FOOT,
    shortest: Shortest = NO_FEET,
    instrument: Instrument = A_TENTH,
    criterion: Annotated[
        str | None, Asked("limit on bending to hold it against, by its source", choices=tuple(BENDING))
    ] = None,
) -> Answer:
    """Worst deflection of a floor between any two of its places, in every direction and over every length.

    Formula:
        for each pair of places A, B and each place P beside the line A-B by no more than a tolerance,
        at the part t of the way: deflection = r(P) - [(1 - t) r(A) + t r(B)], with r the height less the best plane
        ratio = |deflection| / length of A-B; the largest ratio is given, its sign kept (below the chord: sag)

    Traps: tilt not removed; the length of the house taken for L; rows and columns only; end to end only; the 1 %
    for tilt used here.

    >>> from witnessmark.gauges import evaluate
    >>> answer = evaluate("floor-deflection", {"readings": "0ft,0ft,0in; 10ft,0ft,-0.5in; 20ft,0ft,0in; 0ft,9ft,0in"})
    >>> answer["shape"], answer["deflection"], answer.words[:14]
    ('sag', Decimal('-0.5'), 'Worst bending:')
    """
    return bent(survey(readings, reads), float(beside.value), float(shortest.value), float(instrument.value), criterion)
