"""Learn the weights and write them: ``PYTHONPATH=tools python -m train_boundaries``; with ``try``, tell how well first."""

from __future__ import annotations

import json
import sys

from train_boundaries.examples import Example, from_narrations, from_packs, from_statements, from_text, hash_of
from train_boundaries.fit import fit, found_by
from witnessmark import packs
from witnessmark.listening.boundaries import WEIGHTS
from witnessmark.listening.lexicon import lexicon

#: Above this sum a statement begins.
ABOVE = 0


def weights_text() -> str:
    """The file of weights, as it is shipped."""
    known = lexicon(packs.read())
    narrations = list(from_narrations(known))
    weights = fit(
        [*narrations, *from_text(known), *from_statements(known), *from_packs(known)],
        twice=frozenset(one.name for one in narrations),
    )
    kept = {"learned_from": hash_of(), "above": ABOVE, "weights": weights}
    return json.dumps(kept, ensure_ascii=False, separators=(",", ":"), sort_keys=True) + "\n"


def tried(narrations: list[Example], text: list[Example]) -> None:
    """How well each narration is cut by weights learned without it."""
    whole = [0, 0, 0]
    for one in narrations:
        others = [other for other in narrations if other is not one]
        weights = fit([*others, *text], twice=frozenset(other.name for other in others))
        counts = found_by(weights, one, ABOVE)
        whole = [a + b for a, b in zip(whole, counts, strict=True)]
        print(f"{one.name:40} {_figures(*counts)}")
    print(f"{'all':40} {_figures(*whole)}")


def _figures(right: int, told: int, there: int) -> str:
    return f"precision {right / max(told, 1):.2f}, recall {right / max(there, 1):.2f}, F {2 * right / max(told + there, 1):.2f}"


def main(arguments: list[str]) -> int:
    """Write the weights."""
    if arguments[:1] == ["try"]:
        known = lexicon(packs.read())
        tried(list(from_narrations(known)), [*from_text(known), *from_statements(known), *from_packs(known)])
    WEIGHTS.write_text(weights_text(), encoding="utf-8")
    print(f"wrote {WEIGHTS.name}")
    return 0


if __name__ == "__main__":
    raise SystemExit(main(sys.argv[1:]))
