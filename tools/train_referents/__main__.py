"""Train the ranking: ``PYTHONPATH=tools python -m train_referents`` writes ``referents.json``; ``try`` only tells how well.

``try`` leaves each eighth of the narrations out in turn and tells how often the thing meant is found on those left out.
"""

from __future__ import annotations

import sys
from pathlib import Path

from train_referents.examples import Example, of_narration
from train_referents.fit import fitted, stored
from witnessmark import packs
from witnessmark.listening.referents import read_weights
from witnessmark.packs.model import Packs

_ROOT = Path(__file__).resolve().parents[2]
_NARRATIONS = _ROOT / "tests" / "listening" / "narrations"
_WEIGHTS = _ROOT / "src" / "witnessmark" / "listening" / "referents.json"
_FOLDS = 8


def weights_text(paths: list[Path], using: Packs) -> str:
    """Weights from these narrations: heard by the rules alone, then again by what was learned of that."""
    examples: list[Example] = [e for path in paths for e in of_narration(path, using, {})]
    first = fitted(examples)
    examples += [e for path in paths for e in of_narration(path, using, first)]
    return stored(fitted(examples))


def _tell(paths: list[Path], using: Packs) -> None:
    ruled = learned = told = 0
    for fold in range(_FOLDS):
        out = paths[fold::_FOLDS]
        weights = read_weights(weights_text([p for p in paths if p not in out], using))
        for path in out:
            for example in of_narration(path, using, {}):
                told += 1
                ruled += example.right[0]
            learned += sum(e.right[e.chosen(weights)] for e in of_narration(path, using, weights))
    print(
        f"{told} statements: the rules name the thing meant in {ruled / told:.3f}, with the ranking {learned / told:.3f}"
    )


def main() -> int:
    """Train on every narration kept for development, or tell how well that goes."""
    using = packs.read()
    paths = sorted(_NARRATIONS.glob("*.jsonl"))
    if sys.argv[1:] == ["try"]:
        _tell(paths, using)
        return 0
    text = weights_text(paths, using)
    _WEIGHTS.write_text(text, encoding="utf-8")
    print(f"{len(paths)} narrations, {len(text) // 1000} kB of weights")
    return 0


if __name__ == "__main__":
    sys.exit(main())
