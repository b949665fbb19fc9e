"""Which law of lives passes through a life range."""

from __future__ import annotations

from typing import Annotated

from witnessmark.gauges.age.asking import EIGHTY, HIGH_SHARE, LIFE_HIGH, LIFE_LOW, LOW_SHARE, NEMS, TWENTY, WEIBULL
from witnessmark.gauges.age.cautions import NO_PROMISE, OPT_IN
from witnessmark.gauges.age.weibull import fitted
from witnessmark.gauges.answer import Also, Answer, rounded
from witnessmark.gauges.gauge import gauge
from witnessmark.units import Quantity

__all__ = ["life_fit"]


@gauge(
    name="life-fit",
    family="age",
    title="Law of lives through a life range",
    unit="a",
    gives="mean life of the Weibull law through the two ages; shape and scale beside it",
    sources=(WEIBULL, NEMS),
    error="none in the fit; which share fails by each end is assumed unless the source says it",
    never="the life of one part",
    cautions=(OPT_IN, NO_PROMISE, "The mean is not the scale: a law built with the mean as its scale fails too early."),
    example={"life_low": "20yr", "life_high": "30yr"},
)
def life_fit(
    life_low: Annotated[Quantity, LIFE_LOW],
    life_high: Annotated[Quantity, LIFE_HIGH],
    low_share: Annotated[Quantity, LOW_SHARE] = TWENTY,
    high_share: Annotated[Quantity, HIGH_SHARE] = EIGHTY,
) -> Answer:
    """The Weibull law by which the two shares have failed at the two ages.

    Formula:
        K = ln(ln(1 - high share) / ln(1 - low share)) / ln(high / low),  scale = low / (-ln(1 - low share))^(1/K),
        mean = scale * Gamma(1 + 1/K), median = scale * (ln 2)^(1/K)

    >>> from witnessmark.units import parse_quantity as q
    >>> round(life_fit(q("20yr"), q("30yr")).value, 1)
    Decimal('24.9')
    """
    shares = float(low_share.value) / 100, float(high_share.value) / 100
    law = fitted(float(life_low.value), float(life_high.value), *shares)
    return Answer(
        value=rounded(law.mean()),
        words=f"The law through {float(life_low.value):.4g} and {float(life_high.value):.4g} years has a mean life of "
        f"{law.mean():.1f} years (shape {law.shape:.2f}, scale {law.scale:.1f} years).",
        also=(
            Also("shape", "shape K", rounded(law.shape), "1"),
            Also("scale", "scale", rounded(law.scale), "a"),
            Also("median", "age by which half have failed", rounded(law.median()), "a"),
        ),
    )
