"""Train the vote: ``PYTHONPATH=tools python -m train_votes`` writes ``votes.json``."""

from __future__ import annotations

import sys
from pathlib import Path

from train_votes.examples import Example, of_narration, of_statements, read_statements
from train_votes.fit import fitted, stored
from witnessmark import packs

_ROOT = Path(__file__).resolve().parents[2]
_NARRATIONS = _ROOT / "tests" / "listening" / "narrations"
_STATEMENTS = Path(__file__).parent / "statements"
_WEIGHTS = _ROOT / "src" / "witnessmark" / "listening" / "votes.json"


def main() -> int:
    """Train on every narration beside its gold and on every file of statements."""
    using = packs.read()
    examples: list[Example] = []
    for path in sorted(_NARRATIONS.glob("*.jsonl")):
        examples += of_narration(path, using)
    for path in sorted(_STATEMENTS.glob("*.txt")):
        examples += of_statements(read_statements(path), using)
    text = stored(fitted(examples))
    _WEIGHTS.write_text(text, encoding="utf-8")
    print(f"{len(examples)} statements, {len(text) // 1000} kB of weights")
    return 0


if __name__ == "__main__":
    sys.exit(main())
