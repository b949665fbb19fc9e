"""What a radon level calls for, by whose guidance."""

from __future__ import annotations

from decimal import Decimal
from typing import Annotated, Literal

from witnessmark.gauges.answer import Also, Answer, Step, Verdict
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.gauge import gauge
from witnessmark.gauges.radon.reported import becquerels, epa_band, reported
from witnessmark.gauges.radon.sources import CITIZENS_GUIDE, MAH_ACTION, MAH_REPORTS, NOT_ONE_READING, WHO
from witnessmark.units import Quantity

__all__ = ["EPA_WORDS", "radon_action"]

EPA_WORDS = {
    "act": "At or above 4 pCi/L EPA says to fix the house.",
    "consider": "Between 2 and 4 pCi/L EPA says to consider fixing the house.",
    "below": "Below 2 pCi/L, where devices measure little; EPA holds that no level is without risk.",
}
_WHO_LEVEL = Decimal(100)


@gauge(
    name="radon-action",
    family="radon",
    title="What a radon level calls for",
    unit="pCi/L",
    gives="the level as it is reported, to one decimal",
    sources=(CITIZENS_GUIDE, MAH_ACTION, WHO),
    error="as the test was; near the level a repeat may fall on the other side",
    never="that a level below the action level harms no one, or that one test settles it",
    cautions=(
        "The 150 Bq/m3 printed beside 4 pCi/L is rounded: 4 pCi/L is 148 Bq/m3, and that counts here.",
        "Outside a sale, EPA asks for a second test before a house is fixed on one short test.",
        *NOT_ONE_READING,
    ),
    example={"radon": "3.2pCi/L", "by": "EPA"},
)
def radon_action(
    radon: Annotated[
        Quantity,
        Asked(
            "result of the test, the average where two are averaged",
            "pCi/L",
            lowest="0",
            highest="1000",
            least="0",
            most="1000000",
            how="from a valid test, unrounded if you have it",
            example="3.2pCi/L",
        ),
    ],
    by: Annotated[Literal["EPA", "WHO"], Asked("whose level it is held against")] = "EPA",
) -> Answer:
    """What a radon level calls for: EPA action level 4 pCi/L, WHO reference level 100 Bq/m3.

    Rule:
        reported = level rounded once, halves up, to 0.1 pCi/L (3.95 is 4.0)
        EPA: 4.0 or more fix; 2.0 to 3.9 consider; WHO: 100 Bq/m3 (2.7 pCi/L) or more is above its level

    >>> from witnessmark.gauges import evaluate
    >>> evaluate("radon-action", {"radon": "3.95pCi/L"})["epa"], evaluate("radon-action", {"radon": "147Bq/m3"}).value
    ('act', Decimal('4.0'))
    """  # fmt: skip
    figure = reported([radon.value])
    band = epa_band(figure)
    metric = becquerels(radon.value).quantize(Decimal("0.1"))
    above_who = becquerels(radon.value) >= _WHO_LEVEL
    who_words = f"WHO recommends to stay below 100 Bq/m³; this is {metric} Bq/m³."
    if by == "EPA":
        verdict = Verdict("beyond" if band == "act" else "within", EPA_WORDS[band], CITIZENS_GUIDE)
    else:
        verdict = Verdict("beyond" if above_who else "within", who_words, WHO)
    return Answer(
        value=figure,
        words=f"{figure} pCi/L. {EPA_WORDS[band] if by == 'EPA' else who_words}",
        sources=(CITIZENS_GUIDE, MAH_ACTION, MAH_REPORTS) if by == "EPA" else (WHO, MAH_ACTION),
        verdict=verdict,
        also=(
            Also("epa", "what EPA says: act, consider or below", band),
            Also("who", "at or above 100 Bq/m3, the level of WHO", above_who),
            Also("becquerels", "the level in Bq/m3", metric, "Bq/m3"),
        ),
        steps=(Step("rounded once, halves up, to one decimal", figure, "pCi/L"),),
    )
