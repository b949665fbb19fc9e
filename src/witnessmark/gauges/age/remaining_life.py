"""What is left of a listed life: bookkeeping, and said to be no prediction."""

from __future__ import annotations

from decimal import Decimal
from typing import Annotated

from witnessmark.gauges.age.asking import AGE
from witnessmark.gauges.age.cautions import NO_PROMISE, OPT_IN
from witnessmark.gauges.age.messages import CANNOT_FIT
from witnessmark.gauges.answer import Also, Answer, Source, rounded
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.gauge import gauge
from witnessmark.problems import Refusal
from witnessmark.units import Quantity

__all__ = ["remaining_life"]

_LIFE = {"lowest": "1", "highest": "100", "least": "0", "most": "1000", "how": "from one named source, see life-range"}


@gauge(
    name="remaining-life",
    family="age",
    title="Years left of a listed life (bookkeeping, no prediction)",
    unit="a",
    gives="listed life at its longest less age, not below nought",
    sources=(
        Source(
            "Expected and remaining useful life as lenders' property condition reports count them", "", "", "memory"
        ),
    ),
    error="not a measurement: as sure as the list",
    never="that a part will last so long, or that one past its listed life must be replaced",
    cautions=(OPT_IN, NO_PROMISE, "Listed life less age is bookkeeping for reserves, not a prediction."),
    example={"age": "12yr", "life_low": "10yr", "life_high": "15yr"},
)
def remaining_life(
    age: Annotated[Quantity, AGE],
    life_low: Annotated[Quantity, Asked("shortest life that the source lists", "a", example="10yr", **_LIFE)],
    life_high: Annotated[
        Quantity | None, Asked("longest life that the source lists; left out, the same", "a", example="15yr", **_LIFE)
    ] = None,
) -> Answer:
    """Listed life less age.

    Formula:
        left = max(life - age, 0), for the shortest and the longest life of the list

    >>> from witnessmark.units import parse_quantity as q
    >>> remaining_life(q("12yr"), q("10yr"), q("15yr")).value
    Decimal('3')
    """
    high = life_low if life_high is None else life_high
    if high.value < life_low.value:
        raise Refusal(CANNOT_FIT.at("life_high", f"{high.value:f} is shorter than {life_low.value:f} years"))
    least, most = (max(life.value - age.value, Decimal(0)) for life in (life_low, high))
    over = age.value - high.value
    if over >= 0:
        words = f"The part is {float(over):.4g} years past the listed life; that alone is no defect."
    elif least == most:
        words = f"{float(most):.4g} years of the listed life are left, by the list only."
    else:
        words = f"{float(least):.4g} to {float(most):.4g} years of the listed life are left, by the list only."
    return Answer(
        value=rounded(float(most)),
        words=words,
        also=(
            Also("least", "left of the shortest listed life", rounded(float(least)), "a"),
            Also("past", "past every life of the list", over >= 0),
        ),
    )
