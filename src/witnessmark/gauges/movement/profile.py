"""What one line of readings along a floor says: its tilt and its bending."""

from __future__ import annotations

from dataclasses import dataclass, replace
from decimal import Decimal
from typing import Annotated

from witnessmark.gauges.answer import Also, Answer, rounded
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.gauge import gauge
from witnessmark.gauges.movement.asking import A_TENTH, NO_FEET, Instrument, ReadsAs, Shortest
from witnessmark.gauges.movement.deflection import bent
from witnessmark.gauges.movement.levels import Level, survey
from witnessmark.gauges.movement.plane import fit
from witnessmark.gauges.movement.sources import BENDING, GEOMETRY, SURVEY_CAUTIONS, TEXAS
from witnessmark.units import Quantity, say

__all__ = ["Station", "level_profile"]


@dataclass(frozen=True, slots=True)
class Station:
    """One reading along a line, in the order in which the readings were taken."""

    along: Annotated[
        Quantity,
        Asked("distance along the line", "[ft_i]", least="-2000", most="2000", how="along a stretched tape",
              example="10ft"),
    ]  # fmt: skip
    reading: Annotated[
        Quantity,
        Asked("what the level shows here", "[in_i]", lowest="-24", highest="24", least="-1200", most="1200",
              how="on the finished floor, instrument at rest", example="-0.6in"),
    ]  # fmt: skip
    covering: Annotated[
        Quantity | None,
        Asked("thickness of the floor covering here", "[in_i]", lowest="0", highest="6", least="0", most="24",
              how="at a register, threshold or loose edge", example="0.5in"),
    ] = None  # fmt: skip
    name: Annotated[str, Asked("name of the place")] = ""


@gauge(
    name="level-profile",
    family="movement",
    title="Tilt and bending along one line of a floor",
    unit="1",
    gives="deflection off a chord over the length of that chord, the largest along the line (0.00278 is L/360)",
    sources=(GEOMETRY, TEXAS),
    error="the readings' own error: 0.1 in a reading is about 0.12 in in a deflection at mid-span",
    never="how the floor lies beside the line, or that the foundation has failed or needs repair",
    cautions=SURVEY_CAUTIONS,
    example={"readings": "0ft,0in; 10ft,-0.6in; 20ft,-1.0in; 30ft,-1.3in; 40ft,-1.2in",
             "criterion": "Texas Section 2009"},
)  # fmt: skip
def level_profile(
    readings: Annotated[
        tuple[Station, ...],
        Asked(
            "the readings in the order they were taken, one row each: along, reading, covering, name",
            how="read the first place again at the end: what it differs by is spread over the readings",
        ),
    ],
    reads: ReadsAs = "height",
    shortest: Shortest = NO_FEET,
    instrument: Instrument = A_TENTH,
    criterion: Annotated[
        str | None, Asked("limit on bending to hold it against, by its source", choices=tuple(BENDING))
    ] = None,
) -> Answer:
    """Tilt from end to end and worst bending of a line of readings, over every chord of it.

    Formula:
        tilt = (last height - first height) / length
        deflection of P between A and B = z(P) - [(1 - t) z(A) + t z(B)]; ratio = |deflection| / |AB|, largest of all

    A line that is straight, however steep, bends nothing. Traps: only the chord from end to end tried; sign dropped.

    >>> from witnessmark.gauges import evaluate
    >>> answer = evaluate("level-profile", {"readings": "0ft,0in; 10ft,-0.6in; 20ft,-1in; 30ft,-1.3in; 40ft,-1.2in"})
    >>> answer["tilt"], answer["deflection"], answer["length"]
    (Decimal('-0.25'), Decimal('-0.4'), Decimal('40'))
    """
    nought = Quantity(Decimal(0), "[ft_i]")
    one = survey(tuple(Level(s.along, nought, s.reading, s.covering, s.name or say(s.along)) for s in readings), reads)
    order = sorted(one.points, key=lambda point: point.x)
    rise, run = order[-1].height - order[0].height, order[-1].x - order[0].x
    answer = bent(one, 0, float(shortest.value), float(instrument.value), criterion)
    tilt = rounded(float(rise / run) / 12 * 100)
    turn = "rises" if rise > 0 else "falls"
    return replace(
        answer,
        words=f"{answer.words} From end to end the line {f'{turn} {abs(tilt):.2f} %' if rise else 'is level'}.",
        also=(
            Also("tilt", "slope from the first end to the last, rising positive", tilt, "%"),
            Also("tilt_fitted", "slope of the best line", rounded(float(fit(one.points).a) / 12 * 100), "%"),
            *answer.also,
        ),
    )
