"""How far a wall leans or a floor slopes over a measured length."""

from __future__ import annotations

from decimal import Decimal
from typing import Annotated

from witnessmark.gauges.answer import Also, Answer, Step, Uncertainty, rounded
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.gauge import gauge
from witnessmark.gauges.movement.sources import BRE_475, GEOMETRY, TILT
from witnessmark.gauges.movement.tilt import tilt_band
from witnessmark.units import Quantity

__all__ = ["out_of_plumb"]

_EIGHTH = Quantity(Decimal("0.125"), "[in_i]")


@gauge(
    name="out-of-plumb",
    family="movement",
    title="How far a wall leans, or a floor slopes, over a measured length",
    unit="%",
    gives="lean or slope, in % of the length it was measured over",
    sources=(GEOMETRY, BRE_475),
    error="what the offset was read to, over the length: 1/8 in over 8 ft is 0.13 %",
    never="that a wall is stable, or that it has moved: walls are built out of plumb",
    cautions=(
        (
            "The bands are for whole low-rise houses that tilt without bending; one wall that leans or bulges alone is "
            "another matter, and is for a licensed structural engineer."
        ),
    ),
    example={"offset": "1/2in", "length": "8ft"},
)
def out_of_plumb(
    offset: Annotated[
        Quantity,
        Asked(
            "how far it is off over the length",
            "[in_i]",
            lowest="0",
            highest="24",
            least="0",
            most="240",
            how="between a plumb line (or a level's vial at rest) and the wall, top against bottom",
            example="1/2in",
        ),
    ],
    length: Annotated[
        Quantity,
        Asked(
            "height of the wall, or length of the floor, that the offset is over",
            "[ft_i]",
            lowest="2",
            highest="60",
            least="0.1",
            most="1000",
            how="between the two places where the offset is read",
            example="8ft",
        ),
    ],
    read_to: Annotated[
        Quantity,
        Asked(
            "how finely the offset was read",
            "[in_i]",
            lowest="0.01",
            highest="1",
            least="0",
            most="12",
            how="the smallest mark on the rule, or more if the plumb line swung",
            example="1/8in",
        ),
    ] = _EIGHTH,
    criterion: Annotated[
        str | None, Asked("limit on tilt to hold it against, by its source", choices=tuple(TILT))
    ] = None,
) -> Answer:
    """Lean of a wall or slope of a floor from one offset.

    Formula:
        tilt = offset / length, said as 1 in n; bands of BRE Digest 475 (recalled)

    >>> from witnessmark.gauges import evaluate
    >>> evaluate("out-of-plumb", {"offset": "1.2in", "length": "10ft"}).value
    Decimal('1')
    """  # fmt: skip
    ratio = float(offset.value) / (float(length.value) * 12)
    value = rounded(ratio * 100)
    off = rounded(float(read_to.value) / (float(length.value) * 12) * 100)
    answer = Answer(
        value=value,
        words=f"It is off by {float(offset.value):.2f} in in {float(length.value):.1f} ft: "
              + (f"1 in {1 / ratio:.0f}, {tilt_band(ratio)}." if ratio > 0 else "plumb as far as was read."),
        uncertainty=Uncertainty(f"about {off:.2f} % either way from reading the offset", off),
        also=(Also("band", "band of BRE Digest 475 (recalled)", tilt_band(ratio)),),
        steps=(Step("offset over length", value, "%"),),
    )  # fmt: skip
    return answer if criterion is None else answer.against(TILT[criterion].limit("%"))
