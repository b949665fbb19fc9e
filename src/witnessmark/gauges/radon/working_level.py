"""Radon decay products: working levels from radon, and back."""

from __future__ import annotations

from decimal import Decimal
from typing import Annotated

from witnessmark.gauges.answer import Also, Answer, Step, rounded
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.gauge import gauge
from witnessmark.gauges.radon.sources import EQUILIBRIUM
from witnessmark.units import Quantity

__all__ = ["radon_from_working_level", "working_level", "working_levels"]

_RATIO = Asked(
    "equilibrium ratio: how much of the decay products that could be there is in the air", lowest="0.1", highest="0.9",
    least="0.01", most="1", how="measured with both kinds of device; assumed 0.5 in EPA guidance of 1992, 0.4 in later "
    "studies (recalled); lower with fans and air cleaners", example="0.5",
)  # fmt: skip
_CAUTION = (
    "The equilibrium ratio of a house is seldom known and changes within hours: levels for action are stated in pCi/L.",
)


def working_levels(picocuries: Decimal, ratio: Decimal) -> Decimal:
    """Working levels of *picocuries* pCi/L of radon at an equilibrium *ratio*: C x ratio / 100.

    >>> working_levels(Decimal(4), Decimal("0.5")), working_levels(Decimal(4), Decimal("0.4"))
    (Decimal('0.02'), Decimal('0.016'))
    """
    return picocuries * ratio / 100


@gauge(
    name="working-level",
    family="radon",
    title="Working levels of radon decay products from the radon level",
    unit="1",
    gives="working levels (WL): decay products in the air; 1 WL is 100 pCi/L of radon in equilibrium",
    sources=(EQUILIBRIUM,),
    error="the ratio's: from 0.3 to 0.7 in most houses, so nearly a factor of two",
    never="a measurement of decay products",
    cautions=_CAUTION,
    example={"radon": "4pCi/L", "equilibrium_ratio": "0.5"},
)
def working_level(
    radon: Annotated[
        Quantity,
        Asked(
            "radon level",
            "pCi/L",
            lowest="0",
            highest="1000",
            least="0",
            most="1000000",
            how="from a valid test",
            example="4pCi/L",
        ),
    ],
    equilibrium_ratio: Annotated[Decimal, _RATIO],
) -> Answer:
    """Working levels from radon and an assumed or measured equilibrium ratio.

    Formula:
        WL = C x ER / 100, C in pCi/L

    >>> from witnessmark.gauges import evaluate
    >>> evaluate("working-level", {"radon": "4pCi/L", "equilibrium_ratio": "0.4"}).value
    Decimal('0.016')
    """  # fmt: skip
    value = rounded(float(working_levels(radon.value, equilibrium_ratio)))
    at_half, at_less = (rounded(float(working_levels(radon.value, Decimal(r)))) for r in ("0.5", "0.4"))
    return Answer(
        value=value,
        words=f"{float(value):.4g} WL at an equilibrium ratio of {equilibrium_ratio.normalize():f}.",
        also=(
            Also("at_0_5", "at a ratio of 0.5 (EPA guidance of 1992, recalled)", at_half, "1"),
            Also("at_0_4", "at a ratio of 0.4 (later studies, recalled)", at_less, "1"),
        ),
        steps=(Step("radon times ratio over 100", value, "1"),),
    )


@gauge(
    name="radon-from-working-level",
    family="radon",
    title="Radon level from working levels of its decay products",
    unit="pCi/L",
    gives="radon in pCi/L that goes with the working levels at the ratio given",
    sources=(EQUILIBRIUM,),
    error="the ratio's: from 0.3 to 0.7 in most houses, so nearly a factor of two",
    never="a measurement of radon: test for radon itself before a house is fixed or let be",
    cautions=_CAUTION,
    example={"working_levels": "0.02", "equilibrium_ratio": "0.5"},
)
def radon_from_working_level(
    working_levels: Annotated[
        Decimal,
        Asked(
            "working levels measured",
            lowest="0",
            highest="10",
            least="0",
            most="10000",
            how="from a working-level monitor's report",
            example="0.02",
        ),
    ],
    equilibrium_ratio: Annotated[Decimal, _RATIO],
) -> Answer:
    """Radon from working levels and an equilibrium ratio.

    Formula:
        C = WL x 100 / ER, C in pCi/L

    >>> from witnessmark.gauges import evaluate
    >>> evaluate("radon-from-working-level", {"working_levels": "0.02", "equilibrium_ratio": "0.5"}).value
    Decimal('4')
    """  # fmt: skip
    value = rounded(float(working_levels * 100 / equilibrium_ratio))
    return Answer(
        value=value,
        words=f"About {float(value):.2g} pCi/L of radon, if the equilibrium ratio is {equilibrium_ratio.normalize():f}.",
        steps=(Step("working levels times 100 over the ratio", value, "pCi/L"),),
    )
