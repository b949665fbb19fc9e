"""How many of a house's parts may come to be replaced in the years ahead, with honest bands."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal
from typing import Annotated

from witnessmark.gauges.age.asking import AGE, EIGHTY, HIGH_SHARE, LIFE_HIGH, LIFE_LOW, LOW_SHARE, NEMS, TWENTY, WEIBULL
from witnessmark.gauges.age.cautions import NO_PROMISE, OPT_IN
from witnessmark.gauges.age.replacements import exact_firsts, runs_for, simulated
from witnessmark.gauges.age.weibull import Law, fitted
from witnessmark.gauges.answer import Also, Answer, Table, Uncertainty, rounded
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.gauge import gauge
from witnessmark.units import Quantity

__all__ = ["Part", "house_outlook"]

_BAND = (
    "The band holds chance alone, for independent parts whose life ranges are right. Both are doubtful: the answer with "
    "all lives 20 % shorter and 20 % longer is given beside it."
)


@dataclass(frozen=True, slots=True)
class Part:
    """One part of the house: what it is, its age, the two ages of its life range, and how many alike."""

    component: Annotated[str, Asked("what it is, in your words", example="water heater")]
    age: Annotated[Quantity, AGE]
    life_low: Annotated[Quantity, LIFE_LOW]
    life_high: Annotated[Quantity, LIFE_HIGH]
    count: Annotated[int, Asked("how many alike", lowest="1", highest="3", least="1", most="20", example="1")] = 1


@gauge(
    name="house-outlook",
    family="age",
    title="Replacements that a house may need in the years ahead",
    unit="1",
    gives="expected number of replacements within the longest horizon",
    sources=(WEIBULL, NEMS),
    error="the standard error of the drawing is stated; the doubt about the life ranges is far greater",
    never="which part fails when, what it will cost, or that a house needs no money set aside",
    cautions=(OPT_IN, NO_PROMISE, _BAND),
    example={
        "parts": "roof, 14yr, 15yr, 25yr; water heater, 9yr, 8yr, 15yr; furnace, 12yr, 15yr, 25yr; dishwasher, 6yr, 8yr, 14yr"
    },
)
def house_outlook(
    parts: Annotated[
        tuple[Part, ...],
        Asked("the parts, one a row: component, age, lower and upper age of its life range, count"),
    ],
    horizons: Annotated[
        tuple[int, ...],
        Asked(
            "years ahead to look", lowest="1", highest="30", least="1", most="60", how="as the client asks", example="5"
        ),
    ] = (5, 10, 20),
    *,
    low_share: Annotated[Quantity, LOW_SHARE] = TWENTY,
    high_share: Annotated[Quantity, HIGH_SHARE] = EIGHTY,
) -> Answer:
    """Replacements expected within each horizon, with a band from 10 to 90 %, and each part's chance.

    Formula:
        each range becomes a Weibull law through its two shares; the rest of a life is drawn given the age reached, then
        lives of new parts; up to 4000 houses with fixed random numbers. Beside it, without drawing: chance of each part
        1 - S(age + h) / S(age), and their sum, the expected number of parts that fail at least once.

    >>> from witnessmark.gauges import evaluate
    >>> answer = evaluate("house-outlook", {"parts": "furnace, 12yr, 15yr, 25yr", "horizons": "10"})
    >>> round(answer["first_10"], 2)
    Decimal('0.59')
    """
    far = sorted(set(horizons)) or [10]
    shares = float(low_share.value) / 100, float(high_share.value) / 100
    laws = [fitted(float(one.life_low.value), float(one.life_high.value), *shares) for one in parts]
    rows = list(zip(parts, laws, strict=True))
    units = [(law, float(one.age.value)) for one, law in rows for _ in range(one.count)]
    runs = runs_for(units, far[-1])
    outlooks = dict(zip(far, simulated(units, far, runs), strict=True))
    chances = {years: [law.next_years(age, years) for law, age in units] for years in far}
    last = far[-1]
    also = [Also("runs", "houses drawn", Decimal(runs), "1")]
    for years, found in outlooks.items():
        none = exact_firsts(chances[years])[0]
        also += [
            Also(
                f"expected_{years}", f"replacements expected within {years} years", rounded(round(found.mean, 4)), "1"
            ),
            Also(f"low_{years}", f"10 % of houses have no more within {years} years", Decimal(found.low), "1"),
            Also(f"high_{years}", f"90 % of houses have no more within {years} years", Decimal(found.high), "1"),
            Also(f"error_{years}", "standard error of that expectation", rounded(round(found.error, 4)), "1"),
            Also(f"first_{years}", "parts failing at least once, exact", rounded(sum(chances[years])), "1"),
            Also(f"none_{years}", "chance that no part fails, exact", rounded(round(none * 100, 6)), "%"),
        ]
    for name, times in (("shorter", 0.8), ("longer", 1.2)):
        moved = sum(Law(law.shape, law.scale * times).next_years(age, last) for law, age in units)
        also.append(Also(f"first_{last}_{name}", f"the same if all lives are {name} by a fifth", rounded(moved), "1"))
    most = outlooks[last]
    return Answer(
        value=rounded(round(most.mean, 4)),
        words=f"Within {last} years about {most.mean:.1f} replacements are expected; in eight of ten such houses there are "
        f"{most.low} to {most.high}.",
        uncertainty=Uncertainty(
            f"standard error of {runs} houses drawn; the life ranges are far less sure", _error(most.error)
        ),
        also=tuple(also),
        table=Table(
            (("component", ""), ("age", "a"), *((f"chance in {years} years", "%") for years in far)),
            tuple(
                (
                    one.component,
                    rounded(float(one.age.value)),
                    *(rounded(law.next_years(float(one.age.value), years) * 100) for years in far),
                )
                for one, law in rows
            ),
        ),
    )


def _error(value: float) -> Decimal:
    return rounded(round(value, 4))
