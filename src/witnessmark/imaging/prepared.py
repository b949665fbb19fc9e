"""A photo made ready to be shown: small, upright, and without what a camera writes about place and owner."""

from __future__ import annotations

import io
from pathlib import Path

from PIL import Image

from witnessmark.imaging import messages
from witnessmark.imaging.decoding import facts_of, head_of, opened, scale_while_decoding
from witnessmark.imaging.formats import HEIF, PICTURES, mime_of
from witnessmark.imaging.taken import orientation_of
from witnessmark.problems import Refusal

__all__ = ["prepared"]

_QUALITY = 82
#: How to turn a picture upright, by its EXIF orientation (EXIF 2.32, CIPA DC-008, tag 0x0112).
_TURNS = {
    2: Image.Transpose.FLIP_LEFT_RIGHT,
    3: Image.Transpose.ROTATE_180,
    4: Image.Transpose.FLIP_TOP_BOTTOM,
    5: Image.Transpose.TRANSPOSE,
    6: Image.Transpose.ROTATE_270,
    7: Image.Transpose.TRANSVERSE,
    8: Image.Transpose.ROTATE_90,
}


def prepared(path: Path, longest: int = 1000) -> bytes:
    """A JPEG whose longer side is at most *longest* pixels (16 to 10,000), upright, with no metadata but its colours.

    The JPEG decoder scales by a power of two while it decodes, then whole blocks of pixels are averaged; so the longer
    side may be shorter than asked, never longer. Transparent parts are laid on white.

    Raises:
        Refusal: WM701 to WM708; WM712 for thermal frames, which ``frame_picture`` draws.
        ValueError: *longest* is outside its range.
    """
    path = Path(path)
    if not 16 <= longest <= 10_000:  # noqa: PLR2004 - the range in the docstring
        raise ValueError(f"longest is {longest}, not 16 to 10,000 pixels")
    mime = mime_of(head_of(path))
    if mime == HEIF:
        raise Refusal(messages.HEIC.at(str(path)))
    if mime not in PICTURES:
        raise Refusal(messages.OTHER_KIND.at(str(path)))
    if mime == "image/tiff":
        raise Refusal(messages.NOT_A_FRAME.at(str(path), "a TIFF has to be drawn as a thermal frame"))
    with opened(path, mime) as image:
        blocks = scale_while_decoding(image, longest)
        profile = image.info.get("icc_profile")
        turn = _TURNS.get(orientation_of(facts_of(image)))
        # Averaging first, where the mode allows it, keeps the largest picture in memory once only.
        first = blocks > 1 and image.mode in {"L", "RGB", "RGBA"}
        shown = _plain(image.reduce(blocks) if first else image)
        if blocks > 1 and not first:
            shown = shown.reduce(blocks)
        if turn is not None:
            shown = shown.transpose(turn)
        bare = Image.new(shown.mode, shown.size)
        bare.paste(shown)
        kept = {"icc_profile": profile} if isinstance(profile, bytes) and image.mode == "RGB" else {}
        out = io.BytesIO()
        bare.save(out, "JPEG", quality=_QUALITY, **kept)
        return out.getvalue()


def _plain(image: Image.Image) -> Image.Image:
    """The picture in grey or RGB, with nothing see-through."""
    if image.mode.startswith("I"):
        # 16-bit grey PNG: the upper eight bits are what a screen can show.
        return image.convert("I").point(lambda value: value / 256).convert("L")
    if "A" in image.mode or "transparency" in image.info:
        colour = image.convert("RGBA")
        page = Image.new("RGBA", colour.size, "white")
        page.alpha_composite(colour)
        return page.convert("RGB")
    return image.copy() if image.mode in {"RGB", "L"} else image.convert("RGB")
