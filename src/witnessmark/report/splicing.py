"""Pictures put into a finished PDF in place of stand-ins of one pixel.

A typesetter decodes every picture whole, only to copy the file into the PDF afterwards; with three hundred photos that
takes most of its time and a gigabyte. So it is given stand-ins, and the files take their place here: the streams are
replaced, their sizes stated, and the table of offsets at the end of the file is written anew (ISO 32000-1, 7.5.4).
"""

from __future__ import annotations

import io
import re
from bisect import bisect_right
from collections.abc import Callable, Iterator
from itertools import accumulate

from PIL import Image

from witnessmark.report.pictures import Look

__all__ = ["SplicingError", "splice", "stand_in"]

_WORDS = b"witnessmark stands in for "
_IMAGE = re.compile(
    rb"<</Length (\d+)/Type/XObject/Subtype/Image/Filter/DCTDecode/Width 1/Height 1(/[^>]*>>)\s*stream\r?\n"
)
_MARK = re.compile(re.escape(_WORDS) + rb"([0-9a-f]{64})")
_TABLE = re.compile(rb"startxref\s+(\d+)\s+%%EOF\s*\Z")
_HEAD = re.compile(rb"xref\r?\n0 (\d+)\r?\n")
_ROW = 20
_ENTRY = re.compile(rb"\d{10} \d{5} [nf](?: \r| \n|\r\n)")


class SplicingError(ValueError):
    """The PDF is not built as this program knows it; set it with the pictures themselves instead."""


def stand_in(sha256: str, look: Look) -> bytes:
    """A JPEG of one pixel in the colours of a picture, which bears the hash of that picture."""
    file = io.BytesIO()
    extra = {"icc_profile": look.profile} if look.profile else {}
    Image.new(look.mode, (1, 1)).save(file, "JPEG", comment=_WORDS + sha256.encode(), **extra)
    return file.getvalue()


def splice(pdf: bytes, picture: Callable[[str], tuple[bytes, int, int]], expected: set[str]) -> bytes:
    """The PDF with each stand-in replaced by its picture.

    Args:
        pdf: as the typesetter made it, with stand-ins.
        picture: by SHA-256 of the original: the JPEG, its width and height in pixels.
        expected: the stand-ins that must be there.

    Raises:
        SplicingError: a stand-in is missing, or the file is not built as expected.
    """
    pieces: list[bytes] = []
    moved: list[tuple[int, int]] = []  # from which offset on, by how many bytes more
    at, found = 0, set()
    for start, end, sha256, rest in _stand_ins(pdf):
        data, width, height = picture(sha256)
        head = b"<</Length %d/Type/XObject/Subtype/Image/Filter/DCTDecode/Width %d/Height %d" % (
            len(data),
            width,
            height,
        )
        new = head + rest + b"\nstream\n" + data
        pieces += [pdf[at:start], new]
        moved.append((end, len(new) - (end - start)))
        at = end
        found.add(sha256)
    if found != expected:
        raise SplicingError(f"{len(expected - found)} of {len(expected)} pictures have no place in the file")
    return b"".join([*pieces, _end(pdf, at, moved)])


def _stand_ins(pdf: bytes) -> Iterator[tuple[int, int, str, bytes]]:
    """Where each begins and ends, the hash it bears, and the rest of its dictionary."""
    for match in _IMAGE.finditer(pdf):
        end = match.end() + int(match[1])
        mark = _MARK.search(pdf, match.end(), end)
        if mark is not None:
            yield match.start(), end, mark[1].decode(), match[2]


def _end(pdf: bytes, at: int, moved: list[tuple[int, int]]) -> bytes:
    """Everything after the last picture, with the table of offsets written anew."""
    tail = _TABLE.search(pdf, max(0, len(pdf) - 64))
    begins = int(tail[1]) if tail else -1
    head = _HEAD.match(pdf, begins) if 0 <= begins < len(pdf) else None
    if tail is None or head is None or begins < at:
        raise SplicingError("the table of offsets is not where it should be")
    edges = [edge for edge, _ in moved]
    shifts = [0, *accumulate(more for _, more in moved)]
    rows = []
    for number in range(int(head[1])):
        row = pdf[head.end() + _ROW * number : head.end() + _ROW * (number + 1)]
        if not _ENTRY.fullmatch(row):
            raise SplicingError(f"row {number} of the table of offsets is not one")
        if row[17:18] == b"n":
            offset = int(row[:10])
            row = b"%010d" % (offset + shifts[bisect_right(edges, offset)]) + row[10:]
        rows.append(row)
    after = head.end() + _ROW * int(head[1])
    if not pdf.startswith(b"trailer", after):
        raise SplicingError("the table of offsets ends otherwise than it says")
    table = pdf[begins : head.end()] + b"".join(rows) + pdf[after : tail.start()]
    return pdf[at:begins] + table + b"startxref\n%d\n%%%%EOF\n" % (begins + shifts[-1])
