"""Prints how each stored narration is heard: ``python -m pytest`` holds the floors, this shows the figures."""

from __future__ import annotations

import sys
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parent))

from conftest import NARRATIONS, score  # noqa: E402 - found beside this script

from witnessmark import packs  # noqa: E402 - after the path above


def main() -> None:
    """One line for each narration, and one for all."""
    using = packs.read()
    total = [0, 0, 0, 0]
    for name in sorted(p.name.removesuffix(".gold.json") for p in NARRATIONS.glob("*.gold.json")):
        s = score(name, using)
        row = (s.matched, s.predicted, s.expected, s.matched_component)
        total = [a + b for a, b in zip(total, row, strict=True)]
        sys.stdout.write(
            f"{name:28} P {s.matched / s.predicted:.2f} R {s.matched / s.expected:.2f} F {s.f():.2f} "
            f"with component F {s.f(s.matched_component):.2f}  values {s.values[0]}/{s.values[1]} "
            f"states {s.states[0]}/{s.states[1]}  in hypothetical {len(s.in_hypothetical)}  "
            f"still on {s.still_on}  doubts {s.doubts}\n"
        )
    matched, predicted, expected, component = total
    sys.stdout.write(
        f"{'all':28} P {matched / predicted:.2f} R {matched / expected:.2f} F {2 * matched / (predicted + expected):.2f} "
        f"with component F {2 * component / (predicted + expected):.2f}\n"
    )


if __name__ == "__main__":
    main()
