"""Fits the conditional logit to examples by AdaGrad; the same examples always give the same weights."""

from __future__ import annotations

import json
import random
from collections import Counter
from collections.abc import Sequence

import numpy as np

from train_referents.examples import Example

__all__ = ["fitted", "stored"]

_SEED, _ROUNDS, _RATE, _SHRINK, _FEWEST = 7, 8, 0.04, 5e-3, 4
#: Weights are stored in whole steps of this; smaller ones are noise.
_STEP = 0.01


def fitted(examples: Sequence[Example]) -> dict[str, float]:
    """The weights of each feature seen at least four times, averaged over the second half of the rounds.

    Examples in which every candidate is right, or none, teach nothing and are passed over.
    """
    taught = [e for e in examples if any(e.right) and not all(e.right)]
    counts = Counter(name for e in taught for row in e.features for name in set(row))
    index = {name: i for i, name in enumerate(sorted(n for n, c in counts.items() if c >= _FEWEST))}
    rows = [[np.array([index[n] for n in row if n in index], dtype=np.intp) for row in e.features] for e in taught]
    right = [np.array(e.right) for e in taught]
    weights, mean = np.zeros(len(index)), np.zeros(len(index))
    squares = np.full(len(index), 1e-2)
    order = list(range(len(taught)))
    rng = random.Random(_SEED)  # noqa: S311 - the order of examples, no secret
    for turn in range(_ROUNDS):
        rng.shuffle(order)
        for i in order:
            sums = np.array([weights[at].sum() for at in rows[i]])
            raised = np.exp(sums - sums.max())
            shares = raised / raised.sum()
            wanted = np.where(right[i], shares, 0.0)
            for at, slope in zip(rows[i], shares - wanted / wanted.sum(), strict=True):
                step = slope + _SHRINK * weights[at]
                squares[at] += step**2
                weights[at] -= _RATE * step / np.sqrt(squares[at])
        if turn >= _ROUNDS // 2:
            mean += weights
    mean /= _ROUNDS - _ROUNDS // 2
    return {name: float(mean[i]) for name, i in index.items()}


def stored(weights: dict[str, float]) -> str:
    """The weights as JSON, in whole steps; what rounds to nothing is left out."""
    steps = {name: round(w / _STEP) for name, w in sorted(weights.items())}
    kept = {name: n for name, n in steps.items() if n}
    return json.dumps({"scale": _STEP, "features": kept}, indent=0, separators=(",", ":")) + "\n"
