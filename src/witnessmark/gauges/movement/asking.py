"""Inputs that several gauges of a level survey ask for, and the answers' shared parts."""

from __future__ import annotations

from decimal import Decimal
from typing import Annotated

from witnessmark.gauges.answer import Also, Step, rounded
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.movement.levels import Level, Reads, Survey
from witnessmark.units import Quantity

__all__ = [
    "A_FOOT", "A_TENTH", "EXAMPLE", "FIVE_FEET", "NORTH_UP", "NO_FEET", "Beside", "Instrument", "NorthOfPlan", "Readings",
    "ReadsAs", "Shortest", "inches", "taken",
]  # fmt: skip

NORTH_UP, NO_FEET = Quantity(Decimal(0), "deg"), Quantity(Decimal(0), "[ft_i]")
A_FOOT, FIVE_FEET = Quantity(Decimal(1), "[ft_i]"), Quantity(Decimal(5), "[ft_i]")
A_TENTH = Quantity(Decimal("0.1"), "[in_i]")
#: An invented house of 36 by 24 ft, read on a grid of twelve places.
EXAMPLE = (
    "x,y,reading; 0ft,0ft,0.0in; 12ft,0ft,-0.2in; 24ft,0ft,-0.3in; 36ft,0ft,-0.6in; "
    "0ft,12ft,-0.3in; 12ft,12ft,-0.7in; 24ft,12ft,-0.9in; 36ft,12ft,-1.1in; "
    "0ft,24ft,-0.8in; 12ft,24ft,-1.0in; 24ft,24ft,-1.4in; 36ft,24ft,-1.9in"
)

Readings = Annotated[
    tuple[Level, ...],
    Asked(
        "the readings in the order they were taken, one row each: x, y, reading, covering, name",
        how="start at one place and come back to it now and then: what it differs by is the drift, and is spread "
            "over the readings between",
    ),
]  # fmt: skip
ReadsAs = Annotated[
    Reads,
    Asked(
        "what a larger reading means: 'height' a higher floor (most water and pressure levels), 'staff' a lower one "
        "(a staff under a fixed line of sight or laser)"
    ),
]
Instrument = Annotated[
    Quantity,
    Asked("how far one reading may be off", "[in_i]", lowest="0", highest="0.5", least="0", most="6",
          how="from twenty readings at one place, or from the maker's sheet; 0.1 in is usual for a water level",
          example="0.1in"),
]  # fmt: skip
NorthOfPlan = Annotated[
    Quantity,
    Asked("compass bearing of the y direction of the plan, clockwise from north", "deg", lowest="0", highest="360",
          least="-360", most="360", how="with a compass out of doors, away from steel", example="0deg"),
]  # fmt: skip
Beside = Annotated[
    Quantity,
    Asked("how far a place may stand beside the line between two others and still count as on it", "[ft_i]",
          lowest="0", highest="3", least="0", most="20", how="about the accuracy of the tape", example="1ft"),
]  # fmt: skip
Shortest = Annotated[
    Quantity,
    Asked("shortest line between two places that is looked at", "[ft_i]", lowest="0", highest="40", least="0",
          most="2000", how="0 for all; over a few feet, the error of the readings is most of the bending",
          example="0ft"),
]  # fmt: skip


def inches(height: float) -> str:
    """A height in words, to hundredths of an inch, without a sign.

    >>> inches(-0.4)
    '0.40 in'
    """
    return f"{abs(height):.2f} in"


def taken(one: Survey) -> tuple[tuple[Also, ...], tuple[Step, ...], tuple[str, ...]]:
    """What every answer from a survey says of its readings: further results, steps of the correction, cautions.

    >>> from witnessmark.gauges import evaluate
    >>> int(evaluate("floor-tilt", {"readings": "0ft,0ft,0in; 10ft,0ft,-1in; 0ft,10ft,0in"})["places"])
    3
    """
    also = [Also("places", "different places read", rounded(float(len(one.points))), "1")]
    steps, cautions = [], []
    if one.closing is not None:
        closing = rounded(float(one.closing))
        also.append(Also("closing_error", "last less first reading at the place read first", closing, "[in_i]"))
        steps.append(Step("closing error, spread evenly over the readings before the fit", closing, "[in_i]"))
    else:
        cautions.append("The first place was not read again, so drift of the instrument was not seen or taken out.")
    if one.spread:
        spread = rounded(float(one.spread))
        also.append(Also("spread", "largest difference between readings at one place", spread, "[in_i]"))
    if one.covered:
        cautions.append("Floor coverings were taken off as given, reading by reading.")
    return tuple(also), tuple(steps), tuple(cautions)
