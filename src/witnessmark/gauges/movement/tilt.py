"""How much, and toward where, a floor tilts as a whole."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from typing import Annotated

from witnessmark.gauges.answer import Also, Answer, Step, Table, Uncertainty, rounded
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.gauge import gauge
from witnessmark.gauges.movement.asking import (
    A_TENTH,
    EXAMPLE,
    NORTH_UP,
    Instrument,
    NorthOfPlan,
    Readings,
    ReadsAs,
    taken,
)
from witnessmark.gauges.movement.levels import called, survey
from witnessmark.gauges.movement.plane import bearing, fit, left_over
from witnessmark.gauges.movement.sources import BRE_475, GEOMETRY, SURVEY_CAUTIONS, TEXAS_TILT, TILT

__all__ = ["floor_tilt", "tilt_band"]

_BANDS = (
    (Fraction(1, 50), "regarded as dangerous (1/50 or more)"),
    (Fraction(1, 100), "remedial work to be considered (1/100 to 1/50)"),
    (Fraction(1, 250), "noticeable, to be watched (1/250 to 1/100)"),
    (Fraction(1, 400), "above what design allows for (1/400 to 1/250)"),
)


def tilt_band(ratio: float) -> str:
    """The band of BRE Digest 475 (recalled) that a tilt, as a ratio of heights to lengths, falls into.

    >>> tilt_band(1 / 250), tilt_band(1 / 500)
    ('noticeable, to be watched (1/250 to 1/100)', 'below 1/400, within what design allows for')
    """
    value = rounded(ratio)
    for limit, words in _BANDS:
        if value >= rounded(float(limit)):
            return words
    return "below 1/400, within what design allows for"


def _one_in(slope: float) -> str:
    return f"1 in {1 / slope:.0f}" if slope > 1e-6 else "level"  # noqa: PLR2004 - a millionth: no level shows it


@gauge(
    name="floor-tilt",
    family="movement",
    title="How much and toward where a floor tilts as a whole",
    unit="%",
    gives="steepest slope of the plane that fits the readings best, in % (1 % is 1 ft in 100 ft)",
    sources=(GEOMETRY, TEXAS_TILT, BRE_475),
    error="what the readings are off by, over the size of the house; 0.1 in over 30 ft is 0.03 %",
    never="that the house has moved or is moving, that it is sound, or that a repair is needed",
    cautions=(*SURVEY_CAUTIONS, "Tilt bends nothing: the limits on tilt are never limits on deflection."),
    example={"readings": EXAMPLE, "criterion": "Texas Section 2009"},
)
def floor_tilt(
    readings: Readings,
    reads: ReadsAs = "height",
    north: NorthOfPlan = NORTH_UP,
    instrument: Instrument = A_TENTH,
    criterion: Annotated[
        str | None, Asked("limit on tilt to hold it against, by its source", choices=tuple(TILT))
    ] = None,
) -> Answer:
    """Tilt of a floor as a whole: the plane of least squares through the readings of a level survey.

    Formula:
        z = a x + b y + c, least squares over all places (exact), after taking off coverings and closing error
        tilt = sqrt(a^2 + b^2), falling toward the bearing atan2(-a, -b) clockwise from the y direction of the plan

    The y direction is north unless *north* gives its bearing. Places in one line give the slope along the line only.
    Traps: fitting before the closing error is spread; coverings forgotten; the 1 % compared with a deflection.

    >>> from witnessmark.gauges import evaluate
    >>> answer = evaluate("floor-tilt", {"readings": "0ft,0ft,0in; 10ft,0ft,0in; 0ft,10ft,-1.2in; 10ft,10ft,-1.2in"})
    >>> answer.value, answer["bearing"]
    (Decimal('1'), Decimal('0'))
    """
    one = survey(readings, reads, least=2)
    plane = fit(one.points)
    rest = left_over(one.points, plane)
    slope, off = plane.slope, plane.slope_error(float(instrument.value))
    toward = bearing(float(plane.a), float(plane.b), float(north.value))
    value = rounded(slope * 100)
    also, steps, cautions = taken(one)
    said = f"The floor tilts {value:.2f} % ({_one_in(slope)})"
    if toward is None:
        said = "The floor is level as a whole"
    elif plane.in_line:
        said += f" along the line that was read, falling toward {toward:.0f}°"
        cautions = (*cautions, "All places stand in one line: nothing is known of the slope across it.")
    else:
        said += f", falling toward {toward:.0f}°"
    answer = Answer(
        value=value,
        unit="%",
        words=f"{said}; no place lies more than {max(abs(float(r)) for r in rest):.2f} in off the plane.",
        uncertainty=Uncertainty(
            f"about {off * 100:.2f} % either way from the readings alone; bending of the floor adds to it",
            rounded(off * 100),
        ),
        cautions=cautions,
        also=(
            *((Also("bearing", "bearing toward which the floor falls, clockwise from north", rounded(toward), "deg"),)
              if toward is not None else ()),
            Also("slope_x", "slope along x, rising positive", rounded(float(plane.a) / 12 * 100), "%"),
            Also("slope_y", "slope along y, rising positive", rounded(float(plane.b) / 12 * 100), "%"),
            Also("a", "rise along x", rounded(float(plane.a)), "[in_i]/[ft_i]"),
            Also("b", "rise along y", rounded(float(plane.b)), "[in_i]/[ft_i]"),
            Also("c", "height of the plane at x = 0, y = 0", rounded(float(plane.c)), "[in_i]"),
            Also("in_line", "all places stand in one line", plane.in_line),
            Also("band", "band of BRE Digest 475 (recalled)", tilt_band(slope)),
            *also,
        ),
        steps=(
            *steps,
            Step("a: rise for each foot along x", rounded(float(plane.a)), "[in_i]/[ft_i]"),
            Step("b: rise for each foot along y", rounded(float(plane.b)), "[in_i]/[ft_i]"),
            Step("steepest slope, sqrt(a^2 + b^2) / 12", value, "%"),
        ),
        table=Table(
            (("place", ""), ("x", "[ft_i]"), ("y", "[ft_i]"), ("height", "[in_i]"), ("off the plane", "[in_i]")),
            tuple(
                (called(p), rounded(float(p.x)), rounded(float(p.y)), rounded(float(p.height)), rounded(float(r)))
                for p, r in zip(one.points, rest, strict=True)
            ),
        ),
    )  # fmt: skip
    if criterion is None:
        return answer
    held = answer.against(TILT[criterion].limit("%"))
    return replace(held, sources=(GEOMETRY, TILT[criterion].source))
