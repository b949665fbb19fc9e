"""Render the photos of the demo visit: ``python -m render_demo.render [--draft DIR] p03 p21`` (all when none is named)."""

from __future__ import annotations

import argparse
import tempfile
import time
from pathlib import Path

from render_demo.finish import finish
from render_demo.roll import PHOTOS
from render_demo.studio import clear, shoot

__all__ = ["main"]

TARGET = Path(__file__).parents[2] / "src/witnessmark/demo/visit/photos"


def main() -> None:
    """Build, render and finish each named photo; a draft is small, quick, and left as PNG in the folder given."""
    asked = argparse.ArgumentParser(description=__doc__)
    asked.add_argument("names", nargs="*")
    asked.add_argument("--draft", type=Path, help="folder for quick PNG drafts")
    asked.add_argument("--keep", type=Path, help="folder that also keeps the PNG of the full size")
    asked.add_argument("--samples", type=int, default=16)
    given = asked.parse_args()
    for name in given.names or [*PHOTOS]:
        photo = PHOTOS[name]
        begun = time.perf_counter()
        clear()
        photo.build()
        if given.draft:
            given.draft.mkdir(parents=True, exist_ok=True)
            shoot(given.draft / f"{name}.png", samples=8, size=(400, 300), key=photo.key)
            print(f"{name}: draft in {time.perf_counter() - begun:.0f} s", flush=True)
            continue
        with tempfile.TemporaryDirectory() as folder:
            png = (given.keep or Path(folder)) / f"{name}.png"
            shoot(png, samples=given.samples, size=(800, 600), key=photo.key)
            size = finish(
                png, TARGET / f"{name}.jpg", f"2026-10-14 {photo.clock}", grain=photo.grain, seed=int(name[1:])
            )
        print(f"{name}: {size} bytes in {time.perf_counter() - begun:.0f} s", flush=True)


if __name__ == "__main__":
    main()
