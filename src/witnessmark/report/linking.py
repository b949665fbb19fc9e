"""Links within a finished PDF: laid out as links to names, and led to their places once the pages are known.

A typesetter that has to know where a link leads lays out every page with links twice; with some two thousand of them, as a
report has, that is nearly half of its work. So it gets links with an address of our own, and its answer says where each
named place came to lie. Here each address becomes a destination (ISO 32000-1, 12.3.2.2).
"""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass

from witnessmark.report.offsets import Change, Objects, SplicingError

__all__ = ["SCHEME", "Place", "led"]

#: Addresses that never leave this program; the template writes them.
SCHEME = "witnessmark:"
_LINK = re.compile(
    rb"(<</Type/Annot/Subtype/Link/Rect\[[^\]]*\]/Border\[0 0 0\](?:/QuadPoints\[[^\]]*\])?)"
    rb"/A<</Type/Action/S/URI/URI\(witnessmark:([a-z]\d+)\)>>(/F \d+/StructParent \d+)/Contents\([^()]*\)>>"
)
_PAGES = re.compile(rb"<</Type/Pages/Count \d+/Kids\[([^\]]*)\]")
_PAGE = re.compile(rb"<</Type/Page/[^\[]*/MediaBox\[0 0 [\d.]+ ([\d.]+)\]")
_ROOT = re.compile(rb"/Root (\d+) 0 R")
_OF = re.compile(rb"/Pages (\d+) 0 R")
_KID = re.compile(rb"(\d+) 0 R")
#: Points left free above a place, so that it does not stick to the edge of the window.
_ABOVE = 10.0


@dataclass(frozen=True, slots=True)
class Place:
    """Where a name lies: page from 1; from the left and from the top edge, in points."""

    page: int
    left: float
    top: float


def led(pdf: bytes, places: Mapping[str, Place], words: Callable[[str], str]) -> bytes:
    """The PDF with every link to a name led to its place.

    Args:
        pdf: as the typesetter made it.
        places: where each name lies.
        words: what a link to a name is called, for those who hear the page.

    Raises:
        SplicingError: a link names no place, or the file is not built as expected.
    """
    objects = Objects.of(pdf)
    changes: list[Change] = []
    pages: list[tuple[int, float]] | None = None
    for link in objects.matching(_LINK):
        pages = pages or _pages(objects)
        name = link[2].decode()
        place = places.get(name)
        if place is None or not 1 <= place.page <= len(pages):
            raise SplicingError(f"a link leads to {name}, which is nowhere")
        page, height = pages[place.page - 1]
        top = height - max(0.0, place.top - _ABOVE)
        goal = b"/Dest[%d 0 R/XYZ %s %s 0]" % (page, _number(place.left), _number(top))
        changes.append((link.start(), link.end(), link[1] + goal + link[3] + b"/Contents" + _text(words(name)) + b">>"))
    whole = objects.changed(changes) if changes else pdf
    if b"URI(" + SCHEME.encode() in whole:
        raise SplicingError("some links to names are built otherwise than expected")
    return whole


def _pages(objects: Objects) -> list[tuple[int, float]]:
    """Number and height in points of each page, in order."""
    root = _ROOT.search(objects.pdf, objects.rows_end)
    catalog = objects.body(int(root[1])) if root else 0
    tree = _OF.search(objects.pdf, catalog)
    if root is None or tree is None:
        raise SplicingError("the file does not name its pages")
    return list(_kids(objects, int(tree[1])))


def _kids(objects: Objects, number: int) -> list[tuple[int, float]]:
    at = objects.body(number)
    if page := _PAGE.match(objects.pdf, at):
        return [(number, float(page[1]))]
    branch = _PAGES.match(objects.pdf, at)
    if branch is None:
        raise SplicingError(f"object {number} is neither a page nor a list of pages")
    return [row for kid in _KID.findall(branch[1]) for row in _kids(objects, int(kid))]


def _number(value: float) -> bytes:
    return f"{value:.2f}".rstrip("0").rstrip(".").encode()


def _text(words: str) -> bytes:
    """A text string (ISO 32000-1, 7.9.2.2)."""
    if words.isascii():
        return b"(" + re.sub(rb"([\\()])", rb"\\\1", words.encode("ascii")) + b")"
    return b"<FEFF" + words.encode("utf-16-be").hex().upper().encode() + b">"
