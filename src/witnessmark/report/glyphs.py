"""Which signs the shipped fonts hold, read from their own tables, so that no page shows an empty box unannounced."""

from __future__ import annotations

import struct
import unicodedata
from functools import cache
from pathlib import Path

__all__ = ["FONTS", "REPLACEMENT", "FontUnreadableError", "covered", "fitting"]

#: The fonts that come with the program (licence and origin in NOTICE beside them).
FONTS = Path(__file__).with_name("fonts")
#: Printed for a sign that no font holds: a white square, which every text face here holds (few hold U+FFFD).
REPLACEMENT = "\u25a1"

_HEADER, _RECORD = 12, 16
_SEGMENTS, _GROUPS = 4, 12
_NONE = 0xFFFF


class FontUnreadableError(ValueError):
    """A shipped font has no character map this program can read."""


def _table(data: bytes, tag: bytes) -> bytes:
    (count,) = struct.unpack_from(">H", data, 4)
    for i in range(count):
        name, _, offset, length = struct.unpack_from(">4sIII", data, _HEADER + _RECORD * i)
        if name == tag:
            return data[offset : offset + length]
    raise FontUnreadableError(f"no {tag.decode()} table")


def _segments(map_: bytes) -> set[int]:
    """A format 4 map (OpenType 1.9, cmap): code points whose glyph is not 0."""
    (twice,) = struct.unpack_from(">H", map_, 6)
    count = twice // 2
    ends = struct.unpack_from(f">{count}H", map_, 14)
    starts = struct.unpack_from(f">{count}H", map_, 16 + twice)
    deltas = struct.unpack_from(f">{count}h", map_, 16 + 2 * twice)
    at = 16 + 3 * twice
    offsets = struct.unpack_from(f">{count}H", map_, at)
    points: set[int] = set()
    for i, (start, end, delta, offset) in enumerate(zip(starts, ends, deltas, offsets, strict=True)):
        for point in range(start, min(end, _NONE - 1) + 1):
            glyph = point
            if offset:
                (glyph,) = struct.unpack_from(">H", map_, at + 2 * i + offset + 2 * (point - start))
                if glyph == 0:
                    continue
            if (glyph + delta) & _NONE:
                points.add(point)
    return points


def _groups(map_: bytes) -> set[int]:
    """A format 12 map: groups of code points."""
    (count,) = struct.unpack_from(">I", map_, 12)
    points: set[int] = set()
    for i in range(count):
        start, end, glyph = struct.unpack_from(">III", map_, 16 + 12 * i)
        points.update(range(start + (glyph == 0), end + 1))
    return points


@cache
def covered(font: Path) -> frozenset[int]:
    """The code points that a font file (OTF, TTF) holds a glyph for."""
    table = _table(font.read_bytes(), b"cmap")
    (count,) = struct.unpack_from(">H", table, 2)
    points: set[int] = set()
    for i in range(count):
        platform, _, offset = struct.unpack_from(">HHI", table, 4 + 8 * i)
        (form,) = struct.unpack_from(">H", table, offset)
        if platform in {0, 3} and form == _SEGMENTS:
            points |= _segments(table[offset:])
        elif platform in {0, 3} and form == _GROUPS:
            points |= _groups(table[offset:])
    if not points:
        raise FontUnreadableError(f"{font.name}: no map of format 4 or 12")
    return frozenset(points)


@cache
def _somewhere() -> frozenset[int]:
    """Signs that some shipped face holds; a page takes each sign from the first face that has it."""
    return frozenset().union(*(covered(path) for path in FONTS.iterdir() if path.suffix in {".otf", ".ttf"}))


def fitting(text: str) -> tuple[str, tuple[str, ...]]:
    """The text with ``REPLACEMENT`` for every sign that no shipped font holds, and those signs.

    Joiners and variation selectors that no font holds are left out without a replacement: they only steer a sign
    beside them. A run of replaced signs that belong together (an emoji with its modifiers) gives one replacement.
    """
    if text.isascii():
        return text, ()
    some = _somewhere()
    out: list[str] = []
    lost: list[str] = []
    for sign in text:
        if ord(sign) in some or sign == "\n":
            out.append(sign)
        elif unicodedata.category(sign) in {"Cf", "Mn", "Me"} and not _letter_mark(sign):
            continue
        elif unicodedata.category(sign) == "Zs":
            out.append(" ")
        else:
            lost.append(sign)
            if unicodedata.category(sign) == "Sk" and out and out[-1] == REPLACEMENT:
                continue  # a skin tone after its emoji
            out.append(REPLACEMENT)
    return "".join(out), tuple(lost)


def _letter_mark(sign: str) -> bool:
    """Whether a mark carries meaning of its own (a vowel sign), so that leaving it out would change the word."""
    return unicodedata.category(sign) == "Mn" and not unicodedata.name(sign, "").startswith("VARIATION SELECTOR")
