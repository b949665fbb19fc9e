"""Opens a still picture with bounded memory: pixels are counted from the header before any of them is decoded."""

from __future__ import annotations

import warnings
from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from dataclasses import dataclass, field
from pathlib import Path

from PIL import Image

from witnessmark.imaging import messages
from witnessmark.imaging.formats import HEAD, PICTURES, mime_of
from witnessmark.problems import Refusal

__all__ = [
    "MOST_PIXELS",
    "MOST_SCALED_PIXELS",
    "Facts",
    "check_whole",
    "facts_of",
    "head_of",
    "opened",
    "scale_while_decoding",
]

#: Most pixels of a picture that has to be decoded in full: PNG, WebP, TIFF, progressive JPEG (about 4 bytes each).
MOST_PIXELS = 64_000_000
#: Most pixels of a JPEG that is scaled while it is decoded. Pillow opens nothing larger unless its limit is raised for
#: the whole process, which is not ours to do.
MOST_SCALED_PIXELS = 178_956_970
#: The JPEG decoder scales by 1, 2, 4 or 8.
_MOST_HALVINGS = 8
#: Where EXIF keeps how a picture was taken (EXIF 2.32, CIPA DC-008, 4.6.3).
_TAKING = 0x8769


def head_of(path: Path) -> bytes:
    """The first bytes of a file. Refuses what is not a file (WM702), cannot be opened (WM703) or is empty (WM701)."""
    try:
        if path.exists() and not path.is_file():
            raise Refusal(messages.NOT_A_FILE.at(str(path)))
        with path.open("rb") as file:
            head = file.read(HEAD)
    except (OSError, ValueError) as error:
        raise Refusal(messages.UNREADABLE.at(str(path), _said(error))) from error
    if not head:
        raise Refusal(messages.EMPTY.at(str(path)))
    return head


def _said(error: BaseException) -> str:
    return (getattr(error, "strerror", None) or str(error) or type(error).__name__)[:200]


@contextmanager
def opened(path: Path, mime: str) -> Iterator[Image.Image]:
    """The picture with only its header read. Refuses too many pixels (WM707), sequences (WM708), damage (WM706).

    Damage that shows later, inside the ``with`` block, is refused the same way.
    """
    try:
        with warnings.catch_warnings():
            warnings.simplefilter("ignore")  # a damaged tag beside the picture is no reason to refuse it
            with Image.open(path, formats=(PICTURES[mime],)) as image:
                _bounded(path, image)
                # A JPEG with a second picture behind the first (depth, gain map) is one photo; others are sequences.
                if mime != "image/jpeg":
                    _single(path, image)
                yield image
    except Refusal:
        raise
    except Image.DecompressionBombError as error:
        raise Refusal(messages.TOO_MANY_PIXELS.at(str(path), _said(error))) from error
    except Exception as error:
        # Decoders meet damaged files with almost any exception; to the person it is one and the same: damaged.
        raise Refusal(messages.DAMAGED.at(str(path), _said(error))) from error


def _single(path: Path, image: Image.Image) -> None:
    count = getattr(image, "n_frames", 1)
    if count > 1:
        raise Refusal(messages.ANIMATED.at(str(path), f"{count} pictures"))


def _bounded(path: Path, image: Image.Image) -> None:
    scaled = image.format in {"JPEG", "MPO"} and not image.info.get("progressive")
    most = MOST_SCALED_PIXELS if scaled else MOST_PIXELS
    if image.width * image.height > most:
        facts = f"{image.width:,} by {image.height:,} pixels; at most {most:,} in all"
        raise Refusal(messages.TOO_MANY_PIXELS.at(str(path), facts))


def scale_while_decoding(image: Image.Image, longest: int) -> int:
    """Let a JPEG be scaled by 1/2, 1/4 or 1/8 as far as *longest* allows; gives the whole blocks left to average.

    Scaling by whole numbers only: a full decode takes many times as long.
    """
    long_side = max(image.size)
    if image.format in {"JPEG", "MPO"}:
        halving = 1
        while halving < _MOST_HALVINGS and long_side > halving * longest:
            halving *= 2
        image.draft(None, (max(1, image.width // halving), max(1, image.height // halving)))
    return max(1, -(-max(image.size) // longest))


@dataclass(frozen=True, slots=True)
class Facts:
    """What the file says of itself: EXIF tags by number, of the picture and of how it was taken."""

    picture: Mapping[int, object] = field(default_factory=dict)
    taking: Mapping[int, object] = field(default_factory=dict)


def facts_of(image: Image.Image) -> Facts:
    """The EXIF facts; damaged ones are none, since the picture itself still shows what was seen."""
    try:
        exif = image.getexif()
        return Facts(dict(exif), dict(exif.get_ifd(_TAKING)))
    except Exception:  # noqa: BLE001 - damaged tags end in almost any exception
        return Facts()


def check_whole(path: Path) -> tuple[str, tuple[int, int], Facts]:
    """Decode a still picture as cheaply as its format allows, to know that nothing is missing.

    Gives the media type, width and height in pixels as stored, and the EXIF facts. Refuses with WM701 to WM708.
    """
    mime = mime_of(head_of(path))
    if mime not in PICTURES:
        raise Refusal(messages.OTHER_KIND.at(str(path)))
    with opened(path, mime) as image:
        size = image.size
        scale_while_decoding(image, 1)
        image.load()
        return mime, size, facts_of(image)
