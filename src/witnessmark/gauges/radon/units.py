"""A radon concentration in both of its units."""

from __future__ import annotations

from decimal import Decimal
from typing import Annotated

from witnessmark.gauges.answer import Also, Answer, rounded
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.gauge import gauge
from witnessmark.gauges.radon.reported import becquerels
from witnessmark.gauges.radon.sources import CURIE
from witnessmark.units import Quantity

__all__ = ["radon_units"]


@gauge(
    name="radon-units",
    family="radon",
    title="A radon level in pCi/L and in Bq/m³",
    unit="pCi/L",
    gives="the concentration in pCi/L; in Bq/m³ beside it",
    sources=(CURIE,),
    error="none: 1 pCi/L is 37 Bq/m³ by definition",
    never="a level that a rule names in the other unit: 4 pCi/L is 148 Bq/m³, though 150 is printed beside it",
    example={"radon": "150Bq/m3"},
)
def radon_units(
    radon: Annotated[
        Quantity,
        Asked(
            "radon concentration, in either unit",
            "pCi/L",
            lowest="0",
            highest="100000",
            least="0",
            most="1000000000",
            how="as the report of the test states it",
            example="150Bq/m3",
        ),
    ],
) -> Answer:
    """The same radon concentration in pCi/L and Bq/m³.

    Formula:
        1 pCi/L = 37 Bq/m3 exactly (1 Ci = 3.7E10 Bq, 1 m3 = 1000 L)

    >>> from witnessmark.gauges import evaluate
    >>> evaluate("radon-units", {"radon": "148Bq/m3"}).value, evaluate("radon-units", {"radon": "4pCi/L"})["becquerels"]
    (Decimal('4'), Decimal('148'))
    """  # fmt: skip
    metric = rounded(float(becquerels(radon.value)))
    value = rounded(float(radon.value))
    return Answer(
        value=value,
        words=f"{_short(value)} pCi/L is {_short(metric)} Bq/m³.",
        also=(Also("becquerels", "in Bq/m3", metric, "Bq/m3"),),
    )


def _short(value: Decimal) -> str:
    return f"{float(value):,.4g}" if value < 10_000 else f"{float(value):,.0f}"  # noqa: PLR2004 - where commas begin
