"""An averaged perceptron: the mean of all the weights it ever had, which forgets less than the last ones."""

from __future__ import annotations

import random
from collections import Counter, defaultdict
from collections.abc import Sequence

from train_boundaries.examples import Example

__all__ = ["fit", "found_by"]

#: A feature seen less often than this is chance.
_LEAST = 3
#: Weights are kept as whole tenths; smaller ones are left out.
_SCALE, _SMALL = 10, 4


def fit(examples: Sequence[Example], *, rounds: int = 5, twice: frozenset[str] = frozenset()) -> dict[str, int]:
    """Weights by feature. The same examples give the same weights; those named in *twice* are seen twice a round."""
    seen: Counter[str] = Counter()
    for example in examples:
        for found, _ in example.places:
            seen.update(found)
    known = {name for name, count in seen.items() if count >= _LEAST}
    rows = [
        ([name for name in found if name in known], begins)
        for example in examples
        for _ in range(2 if example.name in twice else 1)
        for found, begins in example.places
    ]
    rng = random.Random(1999)  # noqa: S311 - an order, no secret
    weights: dict[str, float] = defaultdict(float)
    sums: dict[str, float] = defaultdict(float)
    step = 0
    for _ in range(rounds):
        rng.shuffle(rows)
        for names, begins in rows:
            step += 1
            if (sum(weights[name] for name in names) > 0) != begins:
                change = 1.0 if begins else -1.0
                for name in names:
                    weights[name] += change
                    sums[name] += change * step
    mean = {name: round((weights[name] - sums[name] / step) * _SCALE) for name in sorted(weights)}
    return {name: weight for name, weight in mean.items() if abs(weight) >= _SMALL}


def found_by(weights: dict[str, int], example: Example, above: int) -> tuple[int, int, int]:
    """How many beginnings are found rightly, how many are found, and how many there are."""
    told = [sum(weights.get(name, 0) for name in found) > above for found, _ in example.places]
    right = sum(here and begins for here, (_, begins) in zip(told, example.places, strict=True))
    return right, sum(told), sum(begins for _, begins in example.places)
