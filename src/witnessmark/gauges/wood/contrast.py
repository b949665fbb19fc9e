"""Whether a suspect spot reads wetter than dry spots of the same material do among themselves."""

from __future__ import annotations

import math
import statistics
from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal
from typing import Annotated

from witnessmark.gauges.answer import Also, Answer, Source, Step, Uncertainty, rounded
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.gauge import gauge
from witnessmark.gauges.wood.messages import TOO_FEW_DRY_SPOTS
from witnessmark.problems import Refusal
from witnessmark.units import Quantity

__all__ = ["Contrast", "contrast", "moisture_contrast"]

ROBUST = Source("Iglewicz and Hoaglin, How to detect and handle outliers", "1993", "modified z-score, 3.5", "memory")
#: Makes the median deviation of a normal distribution its standard deviation (1 / 0.6745).
_NORMAL = Decimal("1.4826")
FEWEST = 3
FAR, NEAR = Decimal("3.5"), Decimal(2)


@dataclass(frozen=True, slots=True)
class Contrast:
    """A suspect reading beside dry ones: their median, their spread, the steps of the spread between, and its floor."""

    median: Decimal
    spread: Decimal
    z: Decimal
    by_resolution: bool


def contrast(suspect: Decimal, dry: Sequence[Decimal], resolution: Decimal) -> Contrast:
    """The suspect reading in robust standard deviations above the dry readings (at least one), any one scale.

    Spread is 1.4826 times the median deviation from the median, never less than *resolution* (above 0): equal readings
    show no spread only because the display is coarse.

    >>> contrast(Decimal(25), [Decimal(10), Decimal(11), Decimal(12)], Decimal("0.5")).median
    Decimal('11')
    """
    median = statistics.median(dry)
    spread = _NORMAL * statistics.median([abs(each - median) for each in dry])
    floor = max(spread, resolution)
    return Contrast(median, floor, (suspect - median) / floor, by_resolution=spread < resolution)


_READING = Asked(
    "reading on the suspect spot, on the meter's own scale", "%", lowest="0", highest="100", least="0", most="1000",
    how="same meter, same setting, same depth, the meter flat on or the pins fully in", example="28%",
)  # fmt: skip


@gauge(
    name="moisture-contrast",
    family="wood",
    title="Does this spot read wetter than dry spots of the same material?",
    unit="1",
    gives="how many times the dry spots' own spread the suspect spot lies above their median (robust z)",
    sources=(ROBUST,),
    error="with 3 dry spots the spread itself is known to about half, with 8 to about a quarter",
    never="how much water the material holds: a scale made for wood is only a comparison on plaster, tile or brick",
    cautions=(
        "Salts, foil, metal and dense backing raise readings on dry material; compare like with like.",
        "Dry spots must be the same material, thickness and finish.",
    ),
    example={"suspect": "28%", "dry": "11%, 12%, 11.5%, 13%"},
)
def moisture_contrast(
    suspect: Annotated[Quantity, _READING],
    dry: Annotated[
        tuple[Quantity, ...],
        Asked(
            "readings on three or more dry spots of the same material",
            "%",
            lowest="0",
            highest="100",
            least="0",
            most="1000",
            how="away from any suspicion of damp, on the same day",
            example="11%, 12%, 11.5%",
        ),
    ],
    resolution: Annotated[
        Quantity,
        Asked(
            "smallest step that the meter shows or repeats",
            "%",
            lowest="0.1",
            highest="5",
            least="0.01",
            most="50",
            how="from the display, or the difference when the same spot is read twice",
            example="0.5%",
        ),
    ] = Quantity(Decimal("0.5"), "%"),  # noqa: B008 - a frozen value
) -> Answer:
    """A suspect spot compared with dry spots, by median and median deviation, so that one odd spot does not hide it.

    Formula:
        z = (suspect - median of dry) / max(1.4826 median |dry - median|, resolution)
        z above 3.5: apart from the dry spots; 2 to 3.5: doubtful; below 2: like them

    Fewer than three dry spots are refused (WM012). Mean and standard deviation would let one damp reference hide the
    difference; equal dry readings (median deviation nought) are given the meter's resolution as their spread.

    >>> from witnessmark.gauges import evaluate
    >>> evaluate("moisture-contrast", {"suspect": "28%", "dry": "11%, 12%, 11.5%, 13%"})["state"]
    'apart from the dry spots'
    """  # fmt: skip
    if len(dry) < FEWEST:
        raise Refusal(TOO_FEW_DRY_SPOTS.at("dry", f"{len(dry)} given, at least {FEWEST} needed"))
    found = contrast(suspect.value, [each.value for each in dry], resolution.value)
    above = suspect.value - found.median
    wet = found.z > FAR
    state = "apart from the dry spots" if wet else "doubtful" if found.z > NEAR else "like the dry spots"
    lead = f"The spot reads {suspect.value:g} against a median of {found.median:g} on {len(dry)} dry spots"
    ending = {
        "apart from the dry spots": f": {found.z:.1f} times their own spread above them. It stands apart.",
        "doubtful": f": {found.z:.1f} times their own spread above them. Take more dry readings to decide.",
        "like the dry spots": ", which is within what they differ among themselves.",
    }[state]
    if found.z < -NEAR:
        ending = ", lower than they are: the dry spots may not be dry, or not the same material."
    share = round(70 / math.sqrt(len(dry) - 1))
    return Answer(
        value=rounded(float(found.z)),
        words=lead + ending,
        uncertainty=Uncertainty(f"the spread of {len(dry)} readings is itself known to about {share} %"),
        also=(
            Also("state", "the spot against the dry spots", state),
            Also("above_median", "suspect less median of the dry spots", rounded(float(above)), "%"),
            Also("median", "median of the dry spots", rounded(float(found.median)), "%"),
            Also("spread", "spread of the dry spots", rounded(float(found.spread)), "%"),
            Also("spread_is_resolution", "the dry spots agree to the meter's resolution", found.by_resolution),
        ),
        steps=(
            Step("median of the dry spots", rounded(float(found.median)), "%"),
            Step("their spread, at least the resolution", rounded(float(found.spread)), "%"),
            Step("suspect less median, in that spread", rounded(float(found.z)), "1"),
        ),
    )
