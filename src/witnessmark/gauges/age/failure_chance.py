"""What the chance is that a part of a known law of lives fails within the next years."""

from __future__ import annotations

from decimal import Decimal
from typing import Annotated

from witnessmark.gauges.age.asking import (
    AGE,
    AHEAD,
    EIGHTY,
    HIGH_SHARE,
    LIFE_HIGH,
    LIFE_LOW,
    LOW_SHARE,
    NEMS,
    TWENTY,
    WEIBULL,
)
from witnessmark.gauges.age.cautions import NO_PROMISE, OPT_IN
from witnessmark.gauges.age.messages import NOT_ONE_SET
from witnessmark.gauges.age.parameter_sets import PARAMETER_SETS, RANGES, Published
from witnessmark.gauges.age.weibull import Law, fitted, scale_for_mean
from witnessmark.gauges.answer import Also, Answer, Source, rounded
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.gauge import gauge
from witnessmark.problems import Refusal
from witnessmark.units import Quantity

__all__ = ["failure_chance", "failure_chance_by_range"]

_NEVER = "that this part will fail or last, or when: it is one of many, and only their share is known"
_ERROR = "as wide as the lives are uncertain: lives 20 % longer or shorter move the chance by a quarter and more"
_NO_DELAY = Quantity(Decimal(0), "a")


def _told(law: Law, age: Decimal, ahead: Decimal, sources: tuple[Source, ...]) -> Answer:
    old, far = float(age), float(ahead)
    chance = law.next_years(old, far)
    unconditional = 1 - law.survival(old + far)
    value = rounded(chance * 100)
    flat = ("With a shape of 1 parts do not age: the chance is the same at every age.",) if law.shape == 1 else ()
    late = (
        (
            "Few parts of this law come to this age at all: one that has is not like the others, and the number says little.",
        )
        if law.survival(old) < 0.05  # noqa: PLR2004 - one in twenty
        else ()
    )
    return Answer(
        value=value,
        words=f"Of parts that have reached {old:.4g} years, about {float(value):.0f} % fail within the next {far:.4g} years "
        "by this law of lives.",
        sources=sources,
        cautions=(*flat, *late),
        also=(
            Also("shape", "shape K", rounded(law.shape), "1"),
            Also("scale", "scale", rounded(law.scale), "a"),
            Also("mean", "mean life of a new part", rounded(law.mean()), "a"),
            Also("median", "age by which half have failed", rounded(law.median()), "a"),
            Also("alive", "share that reaches this age", rounded(law.survival(old) * 100), "%"),
            Also(
                "new_part",
                "chance of a new part to fail before then, not of this one",
                rounded(unconditional * 100),
                "%",
            ),
        ),
    )


@gauge(
    name="failure-chance",
    family="age",
    title="Chance of failure in the next years, by a law of lives",
    unit="%",
    gives="chance that a part which has reached its age fails within the years ahead",
    sources=(WEIBULL, NEMS),
    error=_ERROR,
    never=_NEVER,
    cautions=(OPT_IN, NO_PROMISE),
    example={"age": "12yr", "ahead": "5yr", "parameters": "air-source heat pump"},
)
def failure_chance(
    age: Annotated[Quantity, AGE],
    ahead: Annotated[Quantity, AHEAD],
    parameters: Annotated[Published | None, Asked("a published law of lives, by the part it is for")] = None,
    shape: Annotated[
        Decimal | None,
        Asked(
            "shape K of the Weibull law; 1 is no ageing",
            "1",
            lowest="0.5",
            highest="10",
            least="0.1",
            most="100",
            example="2",
        ),
    ] = None,
    *,
    scale: Annotated[
        Quantity | None,
        Asked(
            "scale of the Weibull law: age after the delay by which 63 % have failed; not the mean life",
            "a",
            lowest="1",
            highest="200",
            least="0.01",
            most="10000",
            how="from the source that gives the shape",
            example="16.88yr",
        ),
    ] = None,
    mean_life: Annotated[
        Quantity | None,
        Asked(
            "mean life, in place of the scale",
            "a",
            lowest="1",
            highest="200",
            least="0.01",
            most="10000",
            how="from the source that gives the shape",
            example="15yr",
        ),
    ] = None,
    delay: Annotated[
        Quantity,
        Asked(
            "age before which nothing fails",
            "a",
            lowest="0",
            highest="20",
            least="0",
            most="100",
            how="from the source that gives the shape",
            example="0yr",
        ),
    ] = _NO_DELAY,
) -> Answer:
    """Chance that a part alive at its age fails within the next years.

    Formula:
        S(y) = exp(-((y - delay) / scale)^K), 1 before the delay;  chance = 1 - S(age + ahead) / S(age)
        scale from a mean life: scale = (mean - delay) / Gamma(1 + 1/K)
    Known traps: the mean used as the scale; 1 - S(age + ahead), which is the chance of a new part.

    >>> from witnessmark.units import parse_quantity as q
    >>> round(failure_chance(q("10yr"), q("5yr"), "air-source heat pump").value, 1)
    Decimal('35.5')
    """
    if (parameters is None) == (shape is None) or (parameters is not None and (scale or mean_life)):
        raise Refusal(NOT_ONE_SET.at("parameters, shape", "none given" if parameters is None else "both given"))
    if parameters is not None:
        return _told(PARAMETER_SETS[parameters], age.value, ahead.value, (WEIBULL, NEMS, RANGES))
    if shape is None or (scale is None) == (mean_life is None):
        raise Refusal(NOT_ONE_SET.at("scale, mean_life", "both given" if scale else "none given"))
    early = float(delay.value)
    if scale is not None:
        law = Law(float(shape), float(scale.value), early)
    else:
        mean = float(mean_life.value if mean_life is not None else 0)
        law = Law(float(shape), scale_for_mean(mean, float(shape), early), early)
    return _told(law, age.value, ahead.value, (WEIBULL, NEMS))


@gauge(
    name="failure-chance-by-range",
    family="age",
    title="Chance of failure in the next years, by a life range",
    unit="%",
    gives="chance that a part which has reached its age fails within the years ahead, by the law through the range",
    sources=(WEIBULL, NEMS),
    error=_ERROR,
    never=_NEVER,
    cautions=(OPT_IN, NO_PROMISE, "Which share fails by each end of a range is assumed unless its source says it."),
    example={"age": "12yr", "ahead": "5yr", "life_low": "10yr", "life_high": "20yr"},
)
def failure_chance_by_range(
    age: Annotated[Quantity, AGE],
    ahead: Annotated[Quantity, AHEAD],
    life_low: Annotated[Quantity, LIFE_LOW],
    life_high: Annotated[Quantity, LIFE_HIGH],
    *,
    low_share: Annotated[Quantity, LOW_SHARE] = TWENTY,
    high_share: Annotated[Quantity, HIGH_SHARE] = EIGHTY,
) -> Answer:
    """Chance that a part alive at its age fails within the next years, from a life range.

    Formula:
        K = ln(ln(1 - high share) / ln(1 - low share)) / ln(high / low),  scale = low / (-ln(1 - low share))^(1/K)
        chance = 1 - S(age + ahead) / S(age)

    >>> from witnessmark.units import parse_quantity as q
    >>> round(failure_chance_by_range(q("20yr"), q("10yr"), q("20yr"), q("30yr")).value)
    75
    """
    shares = float(low_share.value) / 100, float(high_share.value) / 100
    law = fitted(float(life_low.value), float(life_high.value), *shares)
    return _told(law, age.value, ahead.value, (WEIBULL, NEMS))
