"""HEIF pictures (ISO/IEC 23008-12), as phones take them: their facts, and a JPEG that a page can show.

Decoding is libheif's, through ``pi-heif``. The original is kept as it is; the JPEG stands in for it in documents.
"""

from __future__ import annotations

import io
import warnings
from pathlib import Path

from PIL import Image, ImageOps

from witnessmark.imaging import messages
from witnessmark.imaging.decoding import MOST_PIXELS, Facts, facts_of
from witnessmark.problems import Refusal

__all__ = ["heif_facts", "heif_jpeg"]

#: Longest side of the stand-in; documents show less.
LONGEST = 2048
_QUALITY = 88


def _decoded(path: Path) -> Image.Image:
    """The main picture. Refuses what is missing here (WM705), too many pixels (WM707) and damage (WM706)."""
    try:
        import pi_heif  # type: ignore[import-untyped] # it ships no types; loaded only where a phone's picture is read
    except ImportError as error:
        raise Refusal(messages.HEIC.at(str(path), str(error))) from error
    try:
        with warnings.catch_warnings():
            warnings.simplefilter("ignore")  # a damaged tag beside the picture is no reason to refuse it
            picture = pi_heif.open_heif(path, convert_hdr_to_8bit=True)
            _bounded(path, *picture.size)
            image: Image.Image = picture.to_pillow()
            image.load()
    except Refusal:
        raise
    except Exception as error:
        # The decoder meets damaged files with almost any exception; to the person it is one and the same.
        raise Refusal(messages.DAMAGED.at(str(path), str(error)[:200])) from error
    return image


def _bounded(path: Path, width: int, height: int) -> None:
    if width * height > MOST_PIXELS:
        facts = f"{width:,} by {height:,} pixels; at most {MOST_PIXELS:,} in all"
        raise Refusal(messages.TOO_MANY_PIXELS.at(str(path), facts))


def heif_facts(path: Path) -> tuple[tuple[int, int], Facts]:
    """Width and height in pixels, held upright, and the EXIF facts; decodes it, to know that nothing is missing.

    Refuses with WM705 to WM707.
    """
    image = _decoded(path)
    return image.size, facts_of(image)


def heif_jpeg(path: Path) -> bytes:
    """A JPEG of at most ``LONGEST`` pixels on its longer side, upright, without EXIF, place or comments.

    A colour profile stays. Refuses with WM705 to WM707.
    """
    image = ImageOps.exif_transpose(_decoded(path)).convert("RGB")
    blocks = max(1, -(-max(image.size) // LONGEST))
    if blocks > 1:
        image = image.reduce(blocks)
    made = io.BytesIO()
    profile = image.info.get("icc_profile")
    image.save(made, "JPEG", quality=_QUALITY, **({"icc_profile": profile} if profile else {}))
    return made.getvalue()
