"""What several gauges of sampling ask for in the same words, and what they all warn of."""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction
from typing import Annotated

from witnessmark.gauges.answer import Source
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.sampling.messages import MORE_THAN_THERE
from witnessmark.problems import Refusal
from witnessmark.units import Quantity

__all__ = [
    "BEST_CASE", "BINOMIAL", "HYPERGEOMETRIC", "NINETY_FIVE", "Bad", "Confidence", "Share", "Tested", "There", "no_more",
    "share_of",
]  # fmt: skip

HYPERGEOMETRIC = Source("Hypergeometric distribution", "", "drawing without putting back", "calculated")
BINOMIAL = Source("Binomial distribution", "", "drawing from a very large number", "calculated")

#: A law's sample is no random draw, so no chance may be claimed for it.
BEST_CASE = (
    (
        "A best case: it holds for a random draw. One in each room or on each side, as laws ask, is not random, and faults "
        "cluster on one circuit or one wall: do not claim this figure for such a sample."
    ),
)
NINETY_FIVE = Quantity(Decimal(95), "%")

There = Annotated[
    int,
    Asked(
        "how many there are in all",
        lowest="1",
        highest="2000",
        least="1",
        most="100000",
        how="counted, those out of reach too",
        example="40",
    ),
]
Tested = Annotated[
    int,
    Asked(
        "how many were tested",
        lowest="0",
        highest="2000",
        least="0",
        most="100000",
        how="those whose outcome was seen, drawn without regard to which are easy to reach",
        example="8",
    ),
]
Bad = Annotated[
    int,
    Asked(
        "how many are supposed to be bad",
        lowest="0",
        highest="2000",
        least="0",
        most="100000",
        how="a supposition: the fewest that should not escape",
        example="4",
    ),
]
Share = Annotated[
    Quantity,
    Asked(
        "share that is supposed to be bad",
        "%",
        lowest="0",
        highest="100",
        least="0",
        most="100",
        how="a supposition: the smallest share that should not escape",
        example="5%",
    ),
]
Confidence = Annotated[
    Quantity,
    Asked(
        "how sure it should be",
        "%",
        lowest="50",
        highest="99.9",
        least="1",
        most="99.9999",
        how="95 % is usual",
        example="95%",
    ),
]


def no_more(there: int, *, where: str, **counts: int) -> None:
    """Refuse counts beyond what there is (WM025).

    >>> no_more(12, where="hall", tested=5)
    """
    for name, count in counts.items():
        if count > there:
            raise Refusal(MORE_THAN_THERE.at(f"{where}: {name}", f"{name} {count}, there {there}"))


def share_of(percent: Quantity) -> Fraction:
    """A percentage as an exact fraction.

    >>> share_of(NINETY_FIVE)
    Fraction(19, 20)
    """
    return Fraction(percent.value) / 100
