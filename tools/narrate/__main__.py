"""Write captions and gold of every source: ``PYTHONPATH=tools python -m narrate FOLDER`` (or single sources)."""

from __future__ import annotations

import json
import sys
from pathlib import Path

from narrate.captions import captions
from narrate.source import WrongSourceError, read_source


def made(source: Path) -> tuple[str, str]:
    """The text of the ``.jsonl`` and of the ``.gold.json`` that a source gives."""
    lines, gold = captions(read_source(source), source.stem)
    return (
        "".join(json.dumps(line) + "\n" for line in lines),
        json.dumps(gold, indent=1) + "\n",
    )


def main(arguments: list[str]) -> int:
    """Write the files beside the folder of the sources; 2 when a source cannot be read."""
    for name in arguments or ["tests/listening/narrations/written"]:
        path = Path(name)
        sources = sorted(path.glob("*.txt")) if path.is_dir() else [path]
        for source in sources:
            try:
                lines, gold = made(source)
            except WrongSourceError as wrong:
                print(wrong, file=sys.stderr)
                return 2
            folder = source.parent.parent
            (folder / f"{source.stem}.jsonl").write_text(lines, encoding="utf-8")
            (folder / f"{source.stem}.gold.json").write_text(gold, encoding="utf-8")
            rows = json.loads(gold)
            print(f"{source.stem}: {len(rows['records'])} records, {len(rows['boundaries'])} statements")
    return 0


if __name__ == "__main__":
    raise SystemExit(main(sys.argv[1:]))
