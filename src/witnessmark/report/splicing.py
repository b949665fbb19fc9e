"""Pictures put into a finished PDF in place of stand-ins of one pixel.

A typesetter decodes every picture whole, only to copy the file into the PDF afterwards; with three hundred photos that
takes most of its time and a gigabyte. So it is given stand-ins, and the files take their place here: the streams are
replaced and their sizes stated.
"""

from __future__ import annotations

import io
import re
from collections.abc import Callable, Iterator
from functools import lru_cache

from PIL import Image

from witnessmark.report.offsets import Change, Objects, SplicingError
from witnessmark.report.pictures import Look

__all__ = ["splice", "stand_in"]

_WORDS = b"witnessmark stands in for "
_IMAGE = re.compile(
    rb"<</Length (\d+)/Type/XObject/Subtype/Image/Filter/DCTDecode/Width 1/Height 1(/[^>]*>>)\s*stream\r?\n"
)
_MARK = re.compile(re.escape(_WORDS) + rb"([0-9a-f]{64})")


@lru_cache(maxsize=1024)
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
    objects = Objects.of(pdf)
    changes: list[Change] = []
    found = set()
    for start, end, sha256, rest in _stand_ins(objects):
        data, width, height = picture(sha256)
        new = (
            b"<</Length %d/Type/XObject/Subtype/Image/Filter/DCTDecode/Width %d/Height %d" % (len(data), width, height)
            + rest
            + b"\nstream\n"
            + data
        )
        changes.append((start, end, new))
        found.add(sha256)
    if found != expected:
        raise SplicingError(f"{len(expected - found)} of {len(expected)} pictures have no place in the file")
    return objects.changed(changes)


def _stand_ins(objects: Objects) -> Iterator[tuple[int, int, str, bytes]]:
    """Where each begins and ends, the hash it bears, and the rest of its dictionary."""
    for match in objects.matching(_IMAGE):
        end = match.end() + int(match[1])
        mark = _MARK.search(objects.pdf, match.end(), end)
        if mark is not None:
            yield match.start(), end, mark[1].decode(), match[2]
