"""How much an unreinforced bearing wall may bend before cracks are likely."""

from __future__ import annotations

from decimal import Decimal
from typing import Annotated, Literal

from witnessmark.gauges.answer import Also, Answer, Limit, Outside, Source, Step, Uncertainty, rounded
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.gauge import gauge
from witnessmark.gauges.movement.deflection import length_over
from witnessmark.gauges.movement.sources import BURLAND_WROTH
from witnessmark.units import Quantity

__all__ = ["relative_deflection_limit", "wall_deflection"]

_FROM_MEMORY = Source(BURLAND_WROTH.document, "1974", "which values are for sag and which for hog", "memory")
_USUAL = Quantity(Decimal("0.12"), "[in_i]")
_LEAST, _MOST = Decimal(1), Decimal(5)


def relative_deflection_limit(length_over_height: Decimal, shape: Literal["sag", "hog"]) -> Decimal:
    """Deflection over length at which an unreinforced bearing wall is likely to crack; length over height 1 to 5.

    Burland and Wroth 1974: sag 0.0004 at L/H = 1 to 0.0008 at L/H = 5, hog half of that; straight between (own
    reading: the source draws a curve).

    >>> relative_deflection_limit(Decimal(3), "sag"), relative_deflection_limit(Decimal(5), "hog")
    (Decimal('0.0006'), Decimal('0.0004'))
    """
    sag = Decimal("0.0004") + (length_over_height - 1) * Decimal("0.0001")
    return sag if shape == "sag" else sag / 2


@gauge(
    name="wall-deflection",
    family="movement",
    title="Bending of an unreinforced bearing wall against the limits for cracks",
    unit="1",
    gives="relative deflection of the wall: deflection over length",
    sources=(BURLAND_WROTH, _FROM_MEMORY),
    error="as the deflection was measured; the limits are averages over many walls",
    never="that the wall will crack, has cracked from this, or is strong enough",
    cautions=(
        "For walls of unreinforced brick or block that carry load; framed walls bend further before they show it.",
        "Hogging (middle high) cracks a wall at half the deflection that sagging does: keep the sign.",
        "What it means for a wall is for a licensed structural engineer.",
    ),
    example={"deflection": "0.2in", "length": "30ft", "height": "10ft", "shape": "sag"},
)
def wall_deflection(
    deflection: Annotated[
        Quantity,
        Asked(
            "largest deflection of the wall off its chord, less any tilt",
            "[in_i]",
            lowest="0",
            highest="12",
            least="0",
            most="120",
            how="from a level survey along the foot of the wall or along a mortar bed",
            example="0.2in",
        ),
    ],
    length: Annotated[
        Quantity,
        Asked(
            "length of the chord that the deflection is measured from",
            "[ft_i]",
            lowest="1",
            highest="200",
            least="0.1",
            most="2000",
            how="along the wall, not of the house",
            example="30ft",
        ),
    ],
    height: Annotated[
        Quantity,
        Asked(
            "height of the wall from its footing to its top",
            "[ft_i]",
            lowest="1",
            highest="60",
            least="0.1",
            most="500",
            how="with a tape or by counting courses",
            example="10ft",
        ),
    ],
    shape: Annotated[Literal["sag", "hog"], Asked("sag (middle low) or hog (middle high)")],
    uncertainty: Annotated[
        Quantity,
        Asked(
            "how far the deflection may be off",
            "[in_i]",
            lowest="0",
            highest="1",
            least="0",
            most="12",
            how="about 1.2 times what a reading may be off by",
            example="0.12in",
        ),
    ] = _USUAL,
) -> Answer:
    """Relative deflection of an unreinforced bearing wall, and the limit for its proportions.

    Formula:
        ratio = deflection / length
        limit in sag = 0.0004 + (L/H - 1) x 0.0001 for L/H from 1 to 5; in hog half of that

    Beyond L/H of 1 to 5 the source gives no limit and none is applied.

    >>> from witnessmark.gauges import evaluate
    >>> evaluate("wall-deflection", {"deflection": "0.4in", "length": "30ft", "height": "10ft", "shape": "hog"})["limit"]
    Decimal('0.0003')
    """  # fmt: skip
    value = rounded(float(deflection.value) / (float(length.value) * 12))
    proportion = length.value / height.value
    off = rounded(float(uncertainty.value) / (float(length.value) * 12))
    answer = Answer(
        value=value,
        words=f"The wall bends {float(deflection.value):.2f} in in {float(length.value):.1f} ft ({length_over(float(value))}).",
        uncertainty=Uncertainty("as the deflection was measured", off),
        also=(Also("proportion", "length over height", rounded(float(proportion)), "1"),),
        steps=(Step("deflection over length", value, "1"),),
    )  # fmt: skip
    if not _LEAST <= proportion <= _MOST:
        why = "the source gives limits for walls from as long as high to five times as long"
        outside = Outside("length over height", Quantity(rounded(float(proportion)), "1"), _LEAST, _MOST, why)
        return Answer(
            value=answer.value, words=f"{answer.words} No limit is published for a wall of these proportions.",
            uncertainty=answer.uncertainty, also=answer.also, steps=answer.steps, outside_range=(outside,),
        )  # fmt: skip
    bound = rounded(float(relative_deflection_limit(proportion, shape)))
    words = f"{shape} of an unreinforced bearing wall, onset of cracks at {length_over(float(bound))}"
    also = (*answer.also, Also("limit", words, bound, "1"))
    return Answer(
        value=value,
        unit="1",
        words=f"{answer.words} Cracks of an unreinforced bearing wall of these proportions begin near "
              f"{length_over(float(bound))} in {shape}.",
        uncertainty=answer.uncertainty, also=also, steps=(*answer.steps, Step("limit for L/H", bound, "1")),
    ).against(Limit(BURLAND_WROTH, highest=Quantity(bound, "1"), words=words))  # fmt: skip
