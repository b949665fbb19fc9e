"""How likely it was that a sample met a bad one, and how many must be tested to be likely to."""

from __future__ import annotations

from fractions import Fraction
from typing import Annotated

from witnessmark.gauges.answer import Also, Answer, Uncertainty, rounded
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.gauge import gauge
from witnessmark.gauges.sampling.chance import (
    chance_among_many,
    chance_of_none,
    smallest_among_many,
    smallest_number,
)
from witnessmark.gauges.sampling.inputs import (
    BEST_CASE,
    BINOMIAL,
    HYPERGEOMETRIC,
    NINETY_FIVE,
    Bad,
    Share,
    Tested,
    There,
    no_more,
    share_of,
)
from witnessmark.gauges.sampling.messages import NEVER_SO_SURE
from witnessmark.problems import Refusal
from witnessmark.units import Quantity

__all__ = ["chance_of_finding", "chance_of_finding_in_many", "number_to_test"]

_BEST = Uncertainty("a best case: a sample that is not random may find far less, by how much is unknown")


@gauge(
    name="chance-of-finding",
    family="sampling",
    title="Chance that a sample meets at least one bad one",
    unit="%",
    gives="chance that at least one of the bad ones is among those tested",
    sources=(HYPERGEOMETRIC,),
    error="exact for a random draw; unknown for any other",
    never="that those not tested are sound, or a chance for a sample of one in each room",
    cautions=BEST_CASE,
    example={"there": "40", "bad": "4", "tested": "8"},
)
def chance_of_finding(there: There, bad: Bad, tested: Tested) -> Answer:
    """Chance that testing n of N, drawn at random, meets at least one of k bad ones; exact, with whole numbers.

    Formula:
        P = 1 - C(N - k, n) / C(N, n)

    Trap: the binomial 1 - (1 - k/N)^n for a small N is too low, because what was tested is not put back.

    >>> round(chance_of_finding(40, 4, 8).value, 2)
    Decimal('60.65')
    """
    no_more(there, where="chance-of-finding", bad=bad, tested=tested)
    found = 1 - chance_of_none(there, bad, tested)
    percent = rounded(float(found * 100))
    wanted = {name: smallest_number(there, bad, Fraction(name, 100)) for name in (90, 95)} if bad else {}
    words = f"Testing {tested} of {there} at random meets at least one of {bad} bad with a chance of {percent:.1f} %, at best."
    return Answer(
        value=percent,
        words=words,
        uncertainty=_BEST,
        also=(
            Also("expected", "bad ones met on average", rounded(float(Fraction(tested * bad, there))), "1"),
            *(
                Also(f"for_{name}", f"to be tested for a chance of {name} %", rounded(number), "1")
                for name, number in wanted.items()
            ),
        ),
    )


@gauge(
    name="chance-of-finding-in-many",
    family="sampling",
    title="Chance that a sample from a very large number meets a bad one",
    unit="%",
    gives="chance that at least one bad one is among those tested",
    sources=(BINOMIAL,),
    error="exact for a random draw from a very large number; too low where a tenth or more of them were tested",
    never="that those not tested are sound, or a chance for a sample of one in each room",
    cautions=BEST_CASE,
    example={"share": "5%", "tested": "59"},
)
def chance_of_finding_in_many(share: Share, tested: Tested) -> Answer:
    """Chance that testing n, drawn at random from a very large number of which a share is bad, meets a bad one.

    Formula:
        P = 1 - (1 - p)^n

    For shingles, bricks, boards. For a counted number of receptacles or windows use chance-of-finding.

    >>> from witnessmark.units import parse_quantity as q
    >>> round(chance_of_finding_in_many(q("5%"), 59).value, 2)
    Decimal('95.15')
    """
    part = float(share.value) / 100
    percent = rounded(chance_among_many(part, tested) * 100)
    wanted = {name: smallest_among_many(part, name / 100) for name in (90, 95) if 1e-6 < part < 1}  # noqa: PLR2004 - below one in a million no sample is thinkable
    return Answer(
        value=percent,
        words=f"Testing {tested} of a very large number meets at least one bad with a chance of {percent:.1f} %, at best, "
        f"where {share.value:f} % are bad.",
        uncertainty=_BEST,
        also=tuple(
            Also(f"for_{name}", f"to be tested for a chance of {name} %", rounded(number), "1")
            for name, number in wanted.items()
        ),
    )


@gauge(
    name="number-to-test",
    family="sampling",
    title="How many must be tested to be likely to meet a bad one",
    unit="1",
    gives="smallest number to draw at random",
    sources=(HYPERGEOMETRIC,),
    error="exact for a random draw; unknown for any other",
    never="the number that a law asks, or that a smaller sample breaks it",
    cautions=BEST_CASE,
    example={"there": "40", "bad": "2", "chance": "95%"},
)
def number_to_test(
    there: There,
    bad: Bad,
    chance: Annotated[
        Quantity,
        Asked(
            "chance that is wanted",
            "%",
            lowest="1",
            highest="100",
            least="0.0001",
            most="100",
            how="95 % is usual",
            example="95%",
        ),
    ] = NINETY_FIVE,
) -> Answer:
    """Smallest number to test, at random, for a wanted chance to meet at least one of k bad ones among N.

    Formula:
        smallest n with 1 - C(N - k, n) / C(N, n) >= wanted chance

    >>> number_to_test(40, 2).value
    Decimal('31')
    """
    no_more(there, where="number-to-test", bad=bad)
    if bad == 0:
        raise Refusal(NEVER_SO_SURE.at("number-to-test: bad", "none is supposed bad"))
    number = smallest_number(there, bad, share_of(chance))
    reached = 1 - chance_of_none(there, bad, number)
    return Answer(
        value=rounded(number),
        words=f"{number} of {there}, drawn at random, meet at least one of {bad} bad with a chance of "
        f"{float(reached) * 100:.1f} %.",
        uncertainty=_BEST,
        also=(
            Also("reached", "chance with that number", rounded(float(reached * 100)), "%"),
            *(
                (Also("one_less", "chance with one less",
                      rounded(float((1 - chance_of_none(there, bad, number - 1)) * 100)), "%"),) if number else ()
            ),
        ),
    )  # fmt: skip
