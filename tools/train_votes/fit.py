"""Fits a multinomial logistic regression to examples; the same examples always give the same weights."""

from __future__ import annotations

import json
import random
from collections import Counter
from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray

from train_votes.examples import Example
from witnessmark.listening.votes import LABELS

__all__ = ["fitted", "stored"]

_SEED, _ROUNDS, _RATE, _SHRINK, _FEWEST = 7, 14, 0.12, 2e-4, 2
#: Whole numbers stand for weights in steps of this.
_SCALE = 0.02


def fitted(examples: Sequence[Example]) -> dict[str, NDArray[np.float64]]:
    """The weights of each feature seen at least twice, one for each label; averaged over the second half of the rounds."""
    counts = Counter(name for e in examples for name in e.features)
    index = {name: i for i, name in enumerate(sorted(n for n, c in counts.items() if c >= _FEWEST))}
    rows = [np.array([index[n] for n in e.features if n in index], dtype=np.intp) for e in examples]
    wanted = np.zeros((len(examples), len(LABELS)))
    for i, e in enumerate(examples):
        for label in e.labels:
            wanted[i, LABELS.index(label)] += 1 / len(e.labels)
    weights = np.zeros((len(index), len(LABELS)))
    squares = np.full_like(weights, 1e-2)
    mean = np.zeros_like(weights)
    order = list(range(len(rows)))
    rng = random.Random(_SEED)  # noqa: S311 - the order of examples, no secret
    for turn in range(_ROUNDS):
        rng.shuffle(order)
        for i in order:
            at = rows[i]
            sums = weights[at].sum(axis=0)
            raised = np.exp(sums - sums.max())
            slope = (raised / raised.sum() - wanted[i]) + _SHRINK * weights[at]
            squares[at] += slope**2
            weights[at] -= _RATE * slope / np.sqrt(squares[at])
        if turn >= _ROUNDS // 2:
            mean += weights
    mean /= _ROUNDS - _ROUNDS // 2
    return {name: mean[i] for name, i in index.items()}


def stored(weights: dict[str, NDArray[np.float64]]) -> str:
    """The weights as JSON, rounded to whole steps; what rounds to nothing is left out."""
    rows: dict[str, str] = {}
    for name in sorted(weights):
        steps = [round(float(w) / _SCALE) for w in weights[name]]
        row = "".join(f"{chr(ord('a') + i)}{n}" for i, n in enumerate(steps) if abs(n) >= _LEAST)
        if row:
            rows[name] = row
    return (
        json.dumps({"labels": list(LABELS), "scale": _SCALE, "features": rows}, indent=0, separators=(",", ":")) + "\n"
    )


#: Weights below so many steps are noise.
_LEAST = 4
