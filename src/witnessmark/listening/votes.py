"""What is a statement, as far as its words show? A learned vote beside the rules.

A multinomial logistic regression over the features of ``votes_features``; its weights stand in ``votes.json``, made by
``tools/train_votes`` from written narrations and labelled statements. It only speaks where the rules are silent, or
where they would have to guess.
"""

from __future__ import annotations

import json
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from functools import lru_cache
from importlib.resources import files
from math import exp

__all__ = ["LABELS", "Vote", "Weights", "read_weights", "stored_weights", "vote"]

#: What a statement may be: adverse, sound, operated and left on, off or as it was, … ``aside`` is teaching, what ought
#: to be and what if; ``talk`` gives nothing.
LABELS = (
    "adverse", "sound", "on", "off", "operated", "measured", "identified", "described", "limited", "doubt", "aside", "talk",
)  # fmt: skip


@dataclass(frozen=True, slots=True)
class Weights:
    """What each feature says for each of the labels: pairs of label (index into ``LABELS``) and a whole number of ``scale``."""

    scale: float
    of: Mapping[str, tuple[tuple[int, int], ...]]


@dataclass(frozen=True, slots=True)
class Vote:
    """The likeliest label, how likely it is (0 to 1), and every label's share in the order of ``LABELS``."""

    label: str
    share: float
    shares: tuple[float, ...]


def read_weights(text: str) -> Weights:
    """Weights from their JSON form; each feature's are written ``label letter, number`` (``a-12c30``)."""
    stored = json.loads(text)
    return Weights(float(stored["scale"]), {name: _pairs(row) for name, row in stored["features"].items()})


def _pairs(row: str) -> tuple[tuple[int, int], ...]:
    made: list[tuple[int, int]] = []
    at = 0
    while at < len(row):
        end = at + 1
        while end < len(row) and not row[end].isalpha():
            end += 1
        made.append((ord(row[at]) - ord("a"), int(row[at + 1 : end])))
        at = end
    return tuple(made)


@lru_cache(maxsize=1)
def stored_weights() -> Weights:
    """The weights that come with the listener."""
    return read_weights(files("witnessmark.listening").joinpath("votes.json").read_text(encoding="utf-8"))


def vote(of: Iterable[str], weights: Weights) -> Vote:
    """The vote on a statement with these features; features never seen in training say nothing."""
    sums = [0] * len(LABELS)
    for name in of:
        for label, weight in weights.of.get(name, ()):
            sums[label] += weight
    most = max(sums)
    raised = [exp((s - most) * weights.scale) for s in sums]
    total = sum(raised)
    shares = tuple(r / total for r in raised)
    best = max(range(len(LABELS)), key=shares.__getitem__)
    return Vote(LABELS[best], shares[best], shares)
