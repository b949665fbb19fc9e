"""Pictures made ready for a page: small, upright, and without the place and owner that a camera writes into them.

Scales are whole numbers only: the JPEG decoder halves while it decodes (``draft``), then whole blocks are averaged
(``reduce``). Full decoding takes many times as long.
"""

from __future__ import annotations

import math
import os
import warnings
from collections.abc import Callable, Iterator, Mapping
from concurrent.futures import ThreadPoolExecutor
from contextlib import contextmanager
from dataclasses import dataclass
from functools import lru_cache
from io import BytesIO
from pathlib import Path
from typing import Any

from PIL import ExifTags, Image, ImageCms, ImageOps

from witnessmark.problems import Problem, Refusal
from witnessmark.report.letter import Letter, Picture
from witnessmark.report.messages import CANNOT_WRITE, PICTURE_UNREADABLE

__all__ = ["LONG_SIDE", "Look", "Prepared", "Progress", "foreseen", "look_at", "prepare"]

#: Called with how many are done and how many there are.
Progress = Callable[[int, int], None]

#: The longer side is at most this many pixels. A little over 1000, since halving the usual 4032 twice gives 1008 and
#: halving once more would leave half the detail.
LONG_SIDE = 1024
_QUALITY = 72
_MOST_HALVINGS = 8
#: Pictures of more pixels than this are refused rather than decoded.
_MOST_PIXELS = 200_000_000
#: Decoding leaves the interpreter lock, so threads use every core; more than four gain nothing and cost memory.
_WORKERS = min(4, os.cpu_count() or 1)
#: How many files are known again by size and time, so that a preview opens none of them twice.
_REMEMBERED = 4096
#: Written into every prepared file: what made it. A file that bears another mark is made again.
_MARK = b"witnessmark picture 2"
_PLAIN = frozenset({"RGB", "L"})
#: Orientations (Exif 2.3, tag 0x0112) whose stored rows are the columns of the upright picture.
_LYING = frozenset({5, 6, 7, 8})
_FAILURES = (
    OSError, ValueError, SyntaxError, EOFError, ArithmeticError, KeyError, IndexError, TypeError, AttributeError,
    Image.DecompressionBombError, Image.DecompressionBombWarning,
)  # fmt: skip


@dataclass(frozen=True, slots=True)
class Prepared:
    """Where prepared pictures lie: ``files`` by SHA-256 of the original, with width and height in pixels."""

    folder: Path
    files: Mapping[str, tuple[str, int, int]]
    problems: tuple[Problem, ...] = ()


@dataclass(frozen=True, slots=True)
class Look:
    """What a page must know of a prepared picture: its size in pixels, its colours (``RGB``, ``L``) and their profile."""

    width: int
    height: int
    mode: str
    profile: bytes | None


def _steps(long_side: int) -> tuple[int, int]:
    """By how much to scale while decoding (1, 2, 4 or 8) and then in whole blocks."""
    halving = 1
    while halving < _MOST_HALVINGS and long_side > halving * LONG_SIDE:
        halving *= 2
    return halving, _blocks(math.ceil(long_side / halving))


def _blocks(long_side: int) -> int:
    """How many pixels a side are averaged into one."""
    return max(1, math.ceil(long_side / LONG_SIDE))


@contextmanager
def _opened(path: Path) -> Iterator[tuple[Image.Image, int]]:
    """The picture, not decoded yet but told to what scale it shall be, and how many pixels are then averaged a side."""
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")  # a damaged tag beside the picture is no reason not to show it
        with Image.open(path, formats=("JPEG", "PNG", "WEBP")) as opened:
            if opened.width * opened.height > _MOST_PIXELS:
                raise ValueError(f"{opened.width} by {opened.height} pixels are too many")
            if opened.mode in {"I;16", "I"}:
                raise ValueError("16-bit grey needs a palette before it can be shown")
            blocks = _blocks(max(opened.size))
            if opened.format in {"JPEG", "MPO"}:
                halving, blocks = _steps(max(opened.size))
                opened.draft(None, (opened.width // halving, opened.height // halving))
            yield opened, blocks


def _upright(path: Path) -> Image.Image:
    with _opened(path) as (opened, blocks):
        image = opened if opened.mode in _PLAIN else _over_white(opened)
        image.load()
        if blocks > 1:
            image = image.reduce(blocks)
        orientation = opened.getexif()
        if orientation:
            image.getexif().update(orientation)
            image = ImageOps.exif_transpose(image)
        return image.copy()


def _profile(info: Mapping[Any, Any], mode: str) -> bytes | None:
    """The colour profile of a picture, where it is one for the colours the page is given."""
    profile = info.get("icc_profile")
    # ICC.1:2010, 7.2.6: the header names the colours that the profile is for.
    if isinstance(profile, bytes) and mode == "RGB" and profile[16:20] == b"RGB " and _readable(profile):
        return profile
    return None


@lru_cache(maxsize=16)
def _readable(profile: bytes) -> bool:
    try:
        ImageCms.ImageCmsProfile(BytesIO(profile))
    except (ImageCms.PyCMSError, OSError):
        return False
    return True


def foreseen(path: Path) -> Look | None:
    """How a picture will look once it is prepared, by its first bytes alone; None when they cannot be read."""
    try:
        about = path.stat()
    except OSError:
        return None
    return _foreseen(path, about.st_size, about.st_mtime_ns)


@lru_cache(maxsize=_REMEMBERED)
def _foreseen(path: Path, _size: int, _changed: int) -> Look | None:
    try:
        with _opened(path) as (opened, blocks):
            width, height = (math.ceil(side / blocks) for side in opened.size)
            if opened.getexif().get(ExifTags.Base.Orientation) in _LYING:
                width, height = height, width
            mode = opened.mode if opened.mode in _PLAIN else "RGB"
            return Look(width, height, mode, _profile(opened.info, mode))
    except _FAILURES:
        return None


def look_at(path: Path) -> Look:
    """How a prepared picture looks."""
    about = path.stat()
    return _looked_at(path, about.st_size, about.st_mtime_ns)


@lru_cache(maxsize=_REMEMBERED)
def _looked_at(path: Path, _size: int, _changed: int) -> Look:
    with Image.open(path, formats=("JPEG",)) as image:
        return Look(*image.size, image.mode, _profile(image.info, image.mode))


def _over_white(image: Image.Image) -> Image.Image:
    if "A" in image.mode or "transparency" in image.info:
        colour = image.convert("RGBA")
        page = Image.new("RGBA", colour.size, "white")
        page.alpha_composite(colour)
        return page.convert("RGB")
    return image.convert("RGB")


def _marked(path: Path) -> tuple[int, int] | None:
    """Size of a prepared file that this program made before, None when it must be made."""
    about = path.stat()
    return _marked_then(path, about.st_size, about.st_mtime_ns)


@lru_cache(maxsize=_REMEMBERED)
def _marked_then(path: Path, _size: int, _changed: int) -> tuple[int, int] | None:
    try:
        with Image.open(path, formats=("JPEG",)) as image:
            return image.size if image.info.get("comment") == _MARK else None
    except _FAILURES:
        return None


def _prepare_one(picture: Picture, folder: Path) -> tuple[str, int, int] | Problem:
    name = f"{picture.sha256}.jpg"
    target = folder / name
    known = _marked(target) if target.exists() else None
    if known:
        return name, *known
    try:
        image = _upright(picture.path)
        profile = _profile(image.info, image.mode)
        image.info = {}  # nothing of the camera's comes along: no EXIF, XMP, comment or second picture
        part = folder / f".{name}.part"
        extra = {"icc_profile": profile} if profile else {}
        image.save(part, "JPEG", quality=_QUALITY, comment=_MARK, **extra)
        part.replace(target)
    except _FAILURES as error:
        return PICTURE_UNREADABLE.at(picture.name, f"{type(error).__name__}: {error}", entries=(picture.entry,))
    return name, *image.size


def _all(pictures: list[Picture], folder: Path) -> Iterator[tuple[str, int, int] | Problem]:
    if len(pictures) == 1 or _WORKERS == 1:
        yield from (_prepare_one(picture, folder) for picture in pictures)
        return
    with ThreadPoolExecutor(_WORKERS) as pool:
        yield from pool.map(lambda picture: _prepare_one(picture, folder), pictures)


def prepare(letter: Letter, folder: Path, *, progress: Progress | None = None) -> Prepared:
    """Make every picture of the letter ready in *folder*, as ``<sha256>.jpg``; what lies there already is kept.

    The longer side has at most ``LONG_SIDE`` pixels, the camera's orientation is applied, and EXIF, GPS, XMP and
    comments are gone. A colour profile stays. A file that cannot be read becomes a problem (WM803), never an error.
    """
    try:
        folder.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        raise Refusal(CANNOT_WRITE.at(str(folder), str(error))) from error
    pictures = list({picture.sha256: picture for picture in letter.pictures}.values())
    files: dict[str, tuple[str, int, int]] = {}
    problems: list[Problem] = []
    for done, (picture, result) in enumerate(zip(pictures, _all(pictures, folder), strict=True), 1):
        if isinstance(result, Problem):
            problems.append(result)
        else:
            files[picture.sha256] = result
        if progress:
            progress(done, len(pictures))
    return Prepared(folder, files, tuple(problems))
