"""How much deflection or tilt a published limit comes to over a given length."""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction
from typing import Annotated

from witnessmark.gauges.answer import Also, Answer, Step, rounded
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.gauge import gauge
from witnessmark.gauges.movement.sources import BENDING, DISTORTION, GEOMETRY, TEXAS, TILT
from witnessmark.units import Quantity

__all__ = ["deflection_allowance", "inches_over"]

#: Limits by what they limit, so that a tilt is never mistaken for a bending.
_ALL = {
    **{f"{name}, bending": one for name, one in BENDING.items()},
    **{f"{name}, tilt": one for name, one in TILT.items()},
    **{f"{name}, distortion": one for name, one in DISTORTION.items()},
}


def inches_over(feet: Decimal, ratio: Fraction) -> Decimal:
    """A ratio of heights to lengths over a length in feet, in inches.

    >>> inches_over(Decimal(30), Fraction(1, 360))
    Decimal('1')
    """
    return rounded(float(Fraction(feet) * 12 * ratio))


@gauge(
    name="deflection-allowance",
    family="movement",
    title="What a limit on bending or tilt comes to, in inches, over a length",
    unit="[in_i]",
    gives="height that the limit comes to over the length",
    sources=(GEOMETRY, TEXAS),
    error="none of its own: it is a product",
    never="that a floor within it is sound, or that one beyond it must be repaired",
    cautions=(
        "The length is that of the chord that the deflection is measured from, not of the house.",
        (
            "L/360 limits bending, 1 % limits the tilt of the whole: the one is never used for the other. The L/360 of the "
            "codes for floor joists is another thing: what a joist may bend under live load."
        ),
    ),
    example={"length": "30ft"},
)
def deflection_allowance(
    length: Annotated[
        Quantity,
        Asked(
            "length of the chord, or of the plan for a tilt",
            "[ft_i]",
            lowest="1",
            highest="300",
            least="0",
            most="10000",
            how="between the two places that the deflection is measured from",
            example="30ft",
        ),
    ],
    limit: Annotated[
        str, Asked("the limit, by its source and what it limits", choices=tuple(_ALL))
    ] = "Texas Section 2009, bending",
) -> Answer:
    """Deflection or difference of height that a published limit comes to over a length.

    Formula:
        allowance = length x ratio (L/360, 1/100 ...)

    >>> from witnessmark.gauges import evaluate
    >>> evaluate("deflection-allowance", {"length": "40ft"}).value
    Decimal('1.33333333333')
    """  # fmt: skip
    one = _ALL[limit]
    value = inches_over(length.value, one.ratio)
    return Answer(
        value=value,
        words=f"Over {float(length.value):.4g} ft the limit comes to {value:.3f} in: {one.words}.",
        sources=(GEOMETRY, one.source),
        also=(
            Also("bending_l_360", "L/360 for bending over this length", inches_over(length.value, Fraction(1, 360)),
                 "[in_i]"),
            Also("tilt_1_percent", "1 % tilt over this length; never for bending",
                 inches_over(length.value, Fraction(1, 100)), "[in_i]"),
        ),
        steps=(Step("ratio of the limit", rounded(float(one.ratio)), "1"), Step("over the length", value, "[in_i]")),
    )  # fmt: skip
