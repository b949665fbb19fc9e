"""From a clean render to a phone's photo: sensor noise, falling light in the corners, JPEG, and its EXIF facts."""

from __future__ import annotations

import io
from pathlib import Path

from PIL import Image

from render_demo.engine import np

__all__ = ["LIMIT", "finish"]

#: Largest file in bytes.
LIMIT = 118_000


def finish(render: Path, target: Path, taken: str, *, grain: float = 1.0, seed: int = 0) -> int:
    """Write *render* as a JPEG taken at the local time *taken* (``2026-10-14 09:05:10``); gives its size in bytes."""
    pixels = np.asarray(Image.open(render).convert("RGB"), np.float32)
    high, wide, _ = pixels.shape
    grey = pixels.mean(axis=2, keepdims=True)
    pixels = grey + (pixels - grey) * 1.14
    rng = np.random.default_rng(seed)
    rows, cols = np.mgrid[-1 : 1 : high * 1j, -1 : 1 : wide * 1j]
    pixels *= (1 - 0.10 * (rows**2 + cols**2) ** 1.2)[..., None]
    fine = rng.normal(0, 1.5, (high, wide, 1))
    blotch = np.kron(rng.normal(0, 1.6, (high // 4, wide // 4, 3)), np.ones((4, 4, 1)))[:high, :wide]
    shade = 1.0 + 0.8 * (1 - pixels.mean(axis=2, keepdims=True) / 255)
    pixels += grain * shade * (fine + blotch * 0.5)
    photo = Image.fromarray(np.clip(pixels, 0, 255).astype(np.uint8))
    facts = Image.Exif()
    stamp = taken.replace("-", ":")
    facts[0x010E] = "Invented scene, rendered for demonstration"
    facts[0x0131] = "Witnessmark demo renderer"
    facts[0x0112] = 1
    facts[0x0132] = stamp
    inner = facts.get_ifd(0x8769)
    inner[0x9003], inner[0x9004] = stamp, stamp
    inner[0x9010], inner[0x9011], inner[0x9012] = "-07:00", "-07:00", "-07:00"
    held = io.BytesIO()
    for quality in range(85, 40, -3):
        held = io.BytesIO()
        photo.save(held, "JPEG", quality=quality, exif=facts, optimize=True, subsampling=2)
        if held.tell() <= LIMIT:
            break
    target.parent.mkdir(parents=True, exist_ok=True)
    target.write_bytes(held.getvalue())
    return held.tell()
