"""What is this file, how large is its picture, and when was it taken?"""

from __future__ import annotations

import hashlib
from dataclasses import dataclass
from pathlib import Path

from witnessmark.imaging import messages
from witnessmark.imaging.decoding import check_whole, head_of
from witnessmark.imaging.formats import HEIF, PICTURES, mime_of
from witnessmark.imaging.frame import read_frame
from witnessmark.imaging.heif import heif_facts
from witnessmark.imaging.taken import checked_offset, moment_of, orientation_of
from witnessmark.problems import Problem, Refusal

__all__ = ["Picture", "read_picture"]

#: From this EXIF orientation on, the picture is stored lying on its side.
_ON_ITS_SIDE = 5


@dataclass(frozen=True, slots=True)
class Picture:
    """A photo, thermal frame, video or document as it was found.

    Attributes:
        path: where the file lies; it is read, never written.
        name: its name without folders.
        sort: ``photo``, ``thermal``, ``video`` or ``document``, by content.
        mime: media type, by content.
        sha256: hash of the bytes, 64 hex digits.
        bytes: size of the file.
        width: pixels across when the picture is held upright; None for videos and documents.
        height: pixels down when the picture is held upright; None for videos and documents.
        orientation: 1 to 8 as EXIF counts; 1 when the file says nothing.
        taken_at: RFC 3339 with offset, or None with a problem that says why.
        problems: what is missing.
    """

    path: Path
    name: str
    sort: str
    mime: str
    sha256: str
    bytes: int
    width: int | None = None
    height: int | None = None
    orientation: int = 1
    taken_at: str | None = None
    problems: tuple[Problem, ...] = ()

    def as_json(self) -> dict[str, object]:
        """Plain data for ``--json`` output."""
        return {
            "name": self.name,
            "sort": self.sort,
            "mime": self.mime,
            "sha256": self.sha256,
            "bytes": self.bytes,
            "width": self.width,
            "height": self.height,
            "orientation": self.orientation,
            "taken_at": self.taken_at,
            "problems": [problem.as_json() for problem in self.problems],
        }


def read_picture(path: Path, *, default_offset: str | None = None) -> Picture:
    """Recognise a file by its content and say what a record needs to know of it.

    Pictures are decoded once, as cheaply as the format allows, so that a file cut short is known while the original
    is still at hand. Videos and documents are recognised and hashed, not opened.

    Args:
        path: the file.
        default_offset: offset of the camera's clock (``-07:00``) for files that state a time without one.

    Raises:
        Refusal: WM701 to WM708, WM711 to WM713. Nothing else is raised, whatever the file holds.
    """
    path = Path(path)
    offset = checked_offset(default_offset)
    mime = mime_of(head_of(path))
    if mime == HEIF:
        return _phone(path, offset)
    if mime is None:
        raise Refusal(messages.OTHER_KIND.at(str(path)))
    if mime not in PICTURES:
        digest, size = _hashed(path)
        sort = "document" if mime == "application/pdf" else "video"
        return Picture(path, path.name, sort, mime, digest, size, problems=(messages.NO_TIME.at(str(path)),))
    if mime == "image/tiff":
        return _thermal(path)
    mime, (width, height), facts = check_whole(path)
    orientation = orientation_of(facts)
    if orientation >= _ON_ITS_SIDE:
        width, height = height, width
    taken_at, problems = moment_of(facts, str(path), offset)
    digest, size = _hashed(path)
    return Picture(
        path, path.name, "photo", mime, digest, size, width, height, orientation, taken_at, tuple(problems)
    )  # fmt: skip


def _phone(path: Path, offset: str | None) -> Picture:
    (width, height), facts = heif_facts(path)
    taken_at, problems = moment_of(facts, str(path), offset)
    digest, size = _hashed(path)
    return Picture(path, path.name, "photo", HEIF, digest, size, width, height, 1, taken_at, tuple(problems))


def _thermal(path: Path) -> Picture:
    frame = read_frame(path)
    problems = frame.problems if frame.taken_at else (*frame.problems, messages.NO_TIME.at(str(path)))
    digest, size = _hashed(path)
    return Picture(
        path, path.name, "thermal", "image/tiff", digest, size, frame.width, frame.height, 1, frame.taken_at, problems
    )  # fmt: skip


def _hashed(path: Path) -> tuple[str, int]:
    try:
        with path.open("rb") as file:
            digest = hashlib.file_digest(file, "sha256").hexdigest()
            return digest, file.tell()
    except OSError as error:
        raise Refusal(messages.UNREADABLE.at(str(path), error.strerror or "")) from error
