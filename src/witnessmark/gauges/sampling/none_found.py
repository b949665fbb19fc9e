"""How many may still be bad where a sample met none."""

from __future__ import annotations

from decimal import Decimal
from typing import Annotated

from witnessmark.gauges.answer import Also, Answer, Source, Uncertainty, rounded
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.gauge import gauge
from witnessmark.gauges.sampling.chance import bound_among_many, bound_among_so_many, chance_of_none
from witnessmark.gauges.sampling.inputs import (
    BEST_CASE,
    BINOMIAL,
    HYPERGEOMETRIC,
    NINETY_FIVE,
    Confidence,
    Tested,
    There,
    no_more,
    share_of,
)

__all__ = ["none_found", "none_found_in_many"]

_RULE_OF_THREE = Source("Rule of three", "", "3/n for none found among n, at 95 %", "common practice, no source")
_BEST = Uncertainty("a best case: a sample that is not random leaves room for more")


@gauge(
    name="none-found",
    family="sampling",
    title="How many may still be bad among so many, where none was found",
    unit="1",
    gives="the most bad ones that the sample leaves plausible",
    sources=(HYPERGEOMETRIC,),
    error="exact for a random draw; unknown for any other",
    never="that all are sound, or that so many are bad",
    cautions=BEST_CASE,
    example={"there": "40", "tested": "8"},
)
def none_found(there: There, tested: Tested, confidence: Confidence = NINETY_FIVE) -> Answer:
    """The most bad ones among N that remain plausible after n, drawn at random, were all sound; exact.

    Formula:
        largest k with C(N - k, n) / C(N, n) > 1 - confidence (one-sided)

    >>> none_found(40, 8).value
    Decimal('11')
    """
    no_more(there, where="none-found", tested=tested)
    most = bound_among_so_many(there, tested, share_of(confidence))
    still = chance_of_none(there, most, tested)
    words = (
        "Every one was tested: none is bad among them."
        if tested == there
        else f"With {tested} of {there} tested and none bad, up to {most} may still be bad "
        f"({confidence.value:f} % sure it is no more, for a random draw)."
    )
    return Answer(
        value=rounded(most),
        words=words,
        uncertainty=_BEST,
        also=(
            Also("most_share", "that many as a share of all", rounded(most / there * 100), "%"),
            Also("untested", "not tested", rounded(there - tested), "1"),
            Also("chance", "chance to find none although that many are bad", rounded(float(still * 100)), "%"),
        ),
    )


@gauge(
    name="none-found-in-many",
    family="sampling",
    title="What share may still be bad among very many, where none was found",
    unit="%",
    gives="the largest share bad that the sample leaves plausible",
    sources=(BINOMIAL, _RULE_OF_THREE),
    error="exact for a random draw from a very large number; the rule of three is too high for small samples",
    never="that all are sound, or that such a share is bad",
    cautions=BEST_CASE,
    example={"tested": "30"},
)
def none_found_in_many(
    tested: Annotated[
        int,
        Asked(
            "how many were tested, none bad",
            lowest="1",
            highest="10000",
            least="1",
            most="1000000",
            how="drawn at random from a very large number",
            example="30",
        ),
    ],
    confidence: Confidence = NINETY_FIVE,
) -> Answer:
    """The largest share bad that remains plausible after n from a very large number were all sound.

    Formula:
        p = 1 - (1 - confidence)^(1/n);   rule of three, at 95 % only: p = 3/n

    >>> round(none_found_in_many(30).value, 1)
    Decimal('9.5')
    """
    bound = rounded(bound_among_many(tested, float(confidence.value) / 100) * 100)
    return Answer(
        value=bound,
        words=f"With {tested} tested and none bad, up to {bound:.1f} % of them all may still be bad "
        f"({confidence.value:f} % sure it is no more, for a random draw).",
        uncertainty=_BEST,
        also=(Also("rule_of_three", "3/n, a rule of thumb for 95 %", rounded(min(100.0, 300 / tested)), "%"),)
        if confidence.value == Decimal(95)
        else (),
    )
