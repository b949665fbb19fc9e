"""How many parts of a house come to be replaced within some years: drawn at random with fixed numbers, and exactly."""

from __future__ import annotations

import math
import random
from collections.abc import Sequence
from dataclasses import dataclass

from witnessmark.gauges.age.weibull import Law

__all__ = ["RUNS", "Outlook", "exact_firsts", "runs_for", "simulated"]

#: Houses drawn for one outlook, and where the numbers begin: the same on every machine.
RUNS = 4000
_SEED = 20_250_101
_LEAST_RUNS, _MOST_LIVES = 500, 200_000
#: No new part fails before this, in years, so that a law with many early failures comes to an end.
_SHORTEST = 0.05


@dataclass(frozen=True, slots=True)
class Outlook:
    """Replacements within one horizon: mean, 10 % and 90 % bounds, standard error of the mean."""

    mean: float
    low: int
    high: int
    error: float


def runs_for(parts: Sequence[tuple[Law, float]], longest: int) -> int:
    """How many houses to draw: 4000, or fewer (500 at least) where short lives would make that slow.

    *parts* as in `simulated`, *longest* in years.

    >>> runs_for([(Law(2.0, 15.0), 5.0)] * 10, 20)
    4000
    """
    lives = sum(1 + longest / max(law.mean(), _SHORTEST) for law, _ in parts)
    return max(_LEAST_RUNS, min(RUNS, int(_MOST_LIVES / max(lives, 1.0))))


def simulated(parts: Sequence[tuple[Law, float]], horizons: Sequence[int], runs: int = RUNS) -> list[Outlook]:
    """Replacements of parts (law, age in years) within each horizon in years, renewed parts included.

    Each run draws the rest of every part's life, given that it is alive at its age, and then lives of new parts until
    the longest horizon is passed. Seeded, so that equal inputs give equal answers.

    >>> simulated([(Law(100.0, 5.0), 0.0)], [4, 6, 11])[1].mean
    1.0
    """
    draw = random.Random(_SEED).random  # noqa: S311 - repeatable on purpose, guards nothing
    longest = max(horizons)
    totals: list[list[int]] = [[] for _ in horizons]
    for _ in range(runs):
        counts = [0] * len(horizons)
        for law, age in parts:
            at = law.life_from(age, 1.0 - draw())
            while at <= longest:
                for index, horizon in enumerate(horizons):
                    counts[index] += at <= horizon
                at += max(law.life_from(0.0, 1.0 - draw()), _SHORTEST)
        for index, count in enumerate(counts):
            totals[index].append(count)
    return [_outlook(sorted(column)) for column in totals]


def _outlook(ordered: list[int]) -> Outlook:
    number = len(ordered)
    mean = sum(ordered) / number
    spread = math.sqrt(sum((one - mean) ** 2 for one in ordered) / (number - 1))
    low, high = (ordered[max(math.ceil(share * number) - 1, 0)] for share in (0.1, 0.9))
    return Outlook(mean, low, high, spread / math.sqrt(number))


def exact_firsts(chances: Sequence[float]) -> list[float]:
    """Exact chances of 0, 1, 2 … of independent parts failing at least once (Poisson-binomial), by convolution.

    >>> exact_firsts([0.5, 0.5])
    [0.25, 0.5, 0.25]
    """
    made = [1.0]
    for chance in chances:
        longer = [one * (1 - chance) for one in made] + [0.0]
        for index, one in enumerate(made):
            longer[index + 1] += one * chance
        made = longer
    return made
