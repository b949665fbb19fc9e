"""How much hot water a storage heater gives in its first hour, and which usage bin that is."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal
from typing import Annotated

from witnessmark.gauges.answer import Also, Answer, Source, Step, rounded
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.gauge import gauge
from witnessmark.gauges.water.cautions import SCALD
from witnessmark.gauges.water.messages import DRAWS_AT_ODDS
from witnessmark.gauges.water.sources import DRAW_PATTERNS, FIRST_HOUR, PRACTICE
from witnessmark.problems import Refusal
from witnessmark.units import Quantity

__all__ = ["Draw", "draw_pattern", "first_hour_estimate", "first_hour_gallons", "first_hour_test"]

_BINS = ((Decimal(18), "very small"), (Decimal(51), "low"), (Decimal(75), "medium"))
_SHARE, _LEAST, _MOST = Decimal("0.70"), Decimal("0.60"), Decimal("0.80")
_NOT_TESTED = "The label's figure comes from a test in a laboratory; a heater in a house, with scale in it, gives less."


def draw_pattern(gallons: Decimal) -> str:
    """The usage bin of a first-hour rating in gallons: below 18, 51 and 75, and from there on.

    >>> [draw_pattern(Decimal(g)) for g in ("17.9", "18", "51", "75")]
    ['very small', 'low', 'medium', 'high']
    """
    return next((name for below, name in _BINS if gallons < below), "high")


@dataclass(frozen=True, slots=True)
class Draw:
    """One draw of the test, in order."""

    volume: Annotated[
        Quantity, Asked("volume drawn", "[gal_us]", lowest="0", highest="200", least="0", example="45gal")
    ]
    mean: Annotated[
        Quantity,
        Asked("mean outlet temperature", "[degF]", lowest="60", highest="180", least="32", most="212", example="122F"),
    ]
    lowest: Annotated[
        Quantity,
        Asked(
            "lowest outlet temperature", "[degF]", lowest="60", highest="180", least="32", most="212", example="110F"
        ),
    ]


def first_hour_gallons(volumes: tuple[float, ...], last_mean: float, mean_before: float, lowest_before: float) -> float:
    """First-hour rating with the last draw begun at the hour: its volume counts by its warmth (volumes one unit, °F).

    >>> round(first_hour_gallons((45, 12, 9), 112, 122, 110), 2)
    58.5
    """
    part = (last_mean - lowest_before) / (mean_before - lowest_before)
    return sum(volumes[:-1]) + volumes[-1] * max(0.0, part)


@gauge(
    name="first-hour-estimate",
    family="water",
    title="First-hour delivery of a storage heater, estimated",
    unit="[gal_us]",
    gives="hot water in the first hour from a tank that is hot through",
    sources=(
        Source("rule of thumb: seven tenths of the tank and an hour's recovery", "", "", "memory"),
        PRACTICE,
        DRAW_PATTERNS,
    ),
    error="about a tenth of the tank's volume either way",
    never="the first-hour rating on the label, or that a household will have enough",
    cautions=(_NOT_TESTED, SCALD),
    example={"tank": "50gal", "recovery": "40.5gal/h"},
)
def first_hour_estimate(
    tank: Annotated[
        Quantity,
        Asked(
            "volume of the tank",
            "[gal_us]",
            lowest="20",
            highest="120",
            least="0",
            most="10000",
            how="as printed on the plate",
            example="50gal",
        ),
    ],
    recovery: Annotated[
        Quantity,
        Asked(
            "recovery in an hour",
            "[gal_us]/h",
            lowest="0",
            highest="300",
            least="0",
            most="10000",
            how="from heater-recovery, or as printed for a rise of 90 °F",
            example="40.5gal/h",
        ),
    ],
) -> Answer:
    """Hot water in the first hour, estimated from the tank and its recovery.

    Formula:
        first hour = 0.70 * tank + recovery; with 0.60 to 0.80 for the range

    >>> from witnessmark.gauges import evaluate
    >>> evaluate("first-hour-estimate", {"tank": "50gal", "recovery": "40.5gal/h"}).value
    Decimal('75.5')
    """  # fmt: skip
    value = rounded(float(_SHARE * tank.value + recovery.value))
    low, high = (rounded(float(share * tank.value + recovery.value)) for share in (_LEAST, _MOST))
    first, last = draw_pattern(low), draw_pattern(high)
    bins = f"the {first} bin" if first == last else f"the {first} or the {last} bin"
    return Answer(
        value=value,
        words=f"About {value:.0f} gallons in the first hour, {low:.0f} to {high:.0f}: {bins} of use.",
        also=(
            Also("least", "with six tenths of the tank", low, "[gal_us]"),
            Also("most", "with eight tenths of the tank", high, "[gal_us]"),
            Also("draw_pattern", "usage bin", draw_pattern(value)),
        ),
        steps=(
            Step("seven tenths of the tank", rounded(float(_SHARE * tank.value)), "[gal_us]"),
            Step("an hour's recovery", recovery.value, "[gal_us]/h"),
        ),
    )


@gauge(
    name="first-hour-test",
    family="water",
    title="First-hour rating from the draws of a test",
    unit="[gal_us]",
    gives="first-hour rating",
    sources=(FIRST_HOUR, DRAW_PATTERNS),
    error="as good as the record of the draws; the test itself asks for outlet probes to half a degree",
    never="what a heater in a house gives, unless the whole test was run on it as written",
    cautions=(_NOT_TESTED, SCALD),
    example={"draws": "45gal,122F,110F; 12gal,122F,110F; 9gal,112F,110F", "last_at_hour": "yes"},
)
def first_hour_test(
    draws: Annotated[tuple[Draw, ...], Asked("the draws in order: volume, mean and lowest outlet temperature")],
    last_at_hour: Annotated[bool, Asked("whether the last draw was begun at the end of the hour")],
) -> Answer:
    """First-hour rating computed from the draws of the federal test.

    Formula:
        last draw begun before the hour ended: Fhr = sum of all volumes
        last draw begun at the hour: Fhr = sum of the others + V(n) (T(n) - Tmin(n-1)) / (T(n-1) - Tmin(n-1))
        with T the mean and Tmin the lowest outlet temperature of a draw

    >>> from witnessmark.gauges import evaluate
    >>> evaluate("first-hour-test", {"draws": "45gal,122F,110F; 12gal,122F,110F; 9gal,112F,110F",
    ...     "last_at_hour": "yes"}).value
    Decimal('58.5')
    """
    volumes = tuple(float(one.volume.value) for one in draws)
    for at, one in enumerate(draws, 1):
        if one.lowest.value > one.mean.value:
            raise Refusal(DRAWS_AT_ODDS.at(f"draws[{at}]", "the lowest temperature is above the mean"))
    if not draws:
        raise Refusal(DRAWS_AT_ODDS.at("draws", "no draw was given"))
    steps = [Step(f"draw {at}", rounded(volume), "[gal_us]") for at, volume in enumerate(volumes, 1)]
    cautions: tuple[str, ...] = ()
    if last_at_hour:
        if len(draws) == 1:
            raise Refusal(DRAWS_AT_ODDS.at("draws", "a last draw begun at the hour needs a draw before it"))
        last, before = draws[-1], draws[-2]
        if before.mean.value <= before.lowest.value:
            raise Refusal(
                DRAWS_AT_ODDS.at(f"draws[{len(draws) - 1}]", "mean and lowest are equal: the formula divides by 0")
            )
        value = first_hour_gallons(
            volumes, float(last.mean.value), float(before.mean.value), float(before.lowest.value)
        )
        counted = value - sum(volumes[:-1])
        steps.append(Step("of the last draw counts", rounded(counted), "[gal_us]"))
        if last.mean.value > before.mean.value:
            cautions = (
                "The last draw ran hotter than the one before, so more than its volume counts: look at the record.",
            )
    else:
        value = sum(volumes)
    rating = rounded(value)
    return Answer(
        value=rating,
        words=f"First-hour rating {rating:.1f} gallons: the {draw_pattern(rating)} bin of use.",
        also=(Also("draw_pattern", "usage bin", draw_pattern(rating)),),
        cautions=cautions,
        steps=tuple(steps),
    )
