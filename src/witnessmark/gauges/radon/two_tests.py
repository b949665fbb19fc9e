"""What two radon tests of one place come to, and whether they may be averaged."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal
from typing import Annotated, Literal

from witnessmark.gauges.answer import Also, Answer, Step, rounded
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.gauge import gauge
from witnessmark.gauges.radon.action import EPA_WORDS
from witnessmark.gauges.radon.duplicates import precision
from witnessmark.gauges.radon.reported import epa_band, mean_of, reported
from witnessmark.gauges.radon.sources import (
    ILLINOIS_DUPLICATES,
    ILLINOIS_SALE,
    MAH_DISAGREE,
    MAH_REPORTS,
    NOT_ONE_READING,
    QA_DUPLICATES,
    TWICE_RULE,
)  # fmt: skip
from witnessmark.units import Quantity

__all__ = ["radon_two_tests"]

#: Devices within this distance are in one place: MAH-2019 8.5.2 d 8 in; Illinois 4 to 5 in.
_ONE_PLACE = {"model standard": (Decimal(0), Decimal(8)), "Illinois": (Decimal(4), Decimal(5))}
_LEVEL = Decimal("4.0")

_RESULT = Asked("result of the first test", "pCi/L", lowest="0", highest="1000", least="0", most="1000000",
                how="as the laboratory or monitor gave it, unrounded if you have it", example="3.8pCi/L")  # fmt: skip


@gauge(
    name="radon-two-tests",
    family="radon",
    title="What two radon tests come to: averaged, kept apart, or repeated",
    unit="pCi/L",
    gives="the average of the two as it is reported; none where they must not be averaged",
    sources=(MAH_DISAGREE, MAH_REPORTS, TWICE_RULE),
    error="two devices side by side often differ by 14 % (the target for pairs at 4 pCi/L or more)",
    never="an average over two rooms or floors, or the yearly average of the house",
    cautions=("Both results are reported as well as their average.", *NOT_ONE_READING),
    example={"first": "3.8pCi/L", "second": "4.1pCi/L", "apart": "4in"},
)
def radon_two_tests(
    first: Annotated[Quantity, _RESULT],
    second: Annotated[Quantity, replace(_RESULT, what="result of the second test", example="4.1pCi/L")],
    apart: Annotated[
        Quantity,
        Asked(
            "distance between the two devices; 0 where one stood where the other had been",
            "[in_i]",
            lowest="0",
            highest="24",
            least="0",
            most="100000",
            how="with a tape, between their nearest sides",
            example="4in",
        ),
    ],
    manner: Annotated[
        Literal["simultaneous", "sequential"], Asked("both at once, or one after the other")
    ] = "simultaneous",
    place: Annotated[Literal["model standard", "Illinois"], Asked("whose rule for devices in one place")] = (
        "model standard"
    ),
) -> Answer:
    """Two radon tests: the average where they may be averaged, else why not.

    Rule:
        more than 8 in apart (Illinois: 4 to 5 in): two places, never averaged, each reported
        both at or above 4, or both below: the average counts
        one at or above, one below, at once: the average counts unless the higher is more than twice the lower; then repeat
        one after the other: the average counts
        average exact in decimals, rounded once, halves up, to 0.1

    Traps: rounding each result before averaging; binary floats; averaging two rooms.

    >>> from witnessmark.gauges import evaluate
    >>> evaluate("radon-two-tests", {"first": "3.8pCi/L", "second": "4.1pCi/L", "apart": "4in"}).value
    Decimal('4.0')
    >>> evaluate("radon-two-tests", {"first": "3.8pCi/L", "second": "4.1pCi/L", "apart": "20ft"}).value is None
    True
    """  # fmt: skip
    pair = (first.value, second.value)
    low, high = min(pair), max(pair)
    figures = [reported([one]) for one in pair]
    nearest, farthest = _ONE_PLACE[place]
    separate = apart.value > farthest
    astride = (figures[0] >= _LEVEL) != (figures[1] >= _LEVEL)
    again = not separate and astride and manner == "simultaneous" and high > 2 * low
    average = reported(pair)
    each = f"{figures[0]} and {figures[1]} pCi/L"
    cautions = []
    if place == "Illinois" and apart.value < nearest and manner == "simultaneous":
        cautions.append("Illinois asks for 4 to 5 in between the two devices.")
    if place == "Illinois" and manner == "sequential":
        cautions.append(
            "For a sale, Illinois lists two tests at once or a continuous monitor, not one after the other."
        )
    if separate:
        decision, value = "keep apart", None
        words = (
            f"More than {farthest} in apart the devices tested two places: {each} are reported each for its own, and "
            f"never averaged. {EPA_WORDS[epa_band(max(figures))]}"
        )
    elif again:
        decision, value = "repeat", None
        words = (
            f"{each}: one is at or above 4 pCi/L and the other below, and the higher is more than twice the lower. The "
            "average does not count; test again."
        )
    else:
        decision, value = "average", average
        words = f"Average {average} pCi/L, of {each}. {EPA_WORDS[epa_band(average)]}"
    standing = precision(*pair)
    also = [
        Also("decision", "average, repeat or keep apart", decision),
        Also("first", "first result as reported", figures[0], "pCi/L"),
        Also("second", "second result as reported", figures[1], "pCi/L"),
        Also("one_place", "the devices stood in one place", not separate),
        Also("astride", "one result at or above 4 pCi/L and one below", astride),
    ]
    if manner == "simultaneous" and not separate:
        also.append(Also("precision", "how the pair stands against the limits for duplicates", standing.outcome))
        if standing.outcome == "control limit reached":
            cautions.append("The two disagree beyond the control limit for duplicates: find out why before using them.")
    if value is not None:
        also.append(Also("action", "what EPA says of the average", epa_band(value)))
    return Answer(
        value=value,
        words=words,
        sources=(MAH_DISAGREE, MAH_REPORTS, TWICE_RULE, QA_DUPLICATES, *((ILLINOIS_DUPLICATES, ILLINOIS_SALE) if place == "Illinois" else ())),
        cautions=tuple(cautions),
        also=tuple(also),
        steps=()
        if value is None
        else (
            Step("mean of the two, exact", rounded(float(mean_of(pair))), "pCi/L"),
            Step("rounded once, halves up", average, "pCi/L"),
        ),
    )  # fmt: skip
