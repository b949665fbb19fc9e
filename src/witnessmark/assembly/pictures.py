"""Pictures of a job in a form a page can show: stand-ins for what the report cannot read, such as thermal frames."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path

from witnessmark.assembly.jobs import OpenJob
from witnessmark.imaging import HEIF, frame_picture, heif_jpeg, read_frame
from witnessmark.journal.acts import Took
from witnessmark.journal.fold import Record
from witnessmark.problems import Refusal

__all__ = ["displayable"]

_SHOWN = "shown"


def displayable(job: OpenJob, record: Record) -> Mapping[str, Path]:
    """Stand-ins by the SHA-256 of the original, made once and kept beside the report's pictures.

    Thermal frames become pictures with a scale, pictures in HEIF become JPEG. What cannot be read has no stand-in; the
    report then names the file in words.
    """
    stand_ins: dict[str, Path] = {}
    for fact in record.facts:
        body = fact.body
        if not isinstance(body, Took) or (body.sort != "thermal" and body.mime != HEIF):
            continue
        for sha256 in fact.media:
            original = job.media.path(sha256)
            if original is None:
                continue
            ending, make = ("png", _frame) if body.sort == "thermal" else ("jpg", heif_jpeg)
            made = job.folder / "report" / _SHOWN / f"{sha256}.{ending}"
            if not made.exists():
                try:
                    picture = make(original)
                except Refusal:
                    continue
                made.parent.mkdir(parents=True, exist_ok=True)
                made.write_bytes(picture)
            stand_ins[sha256] = made
    return stand_ins


def _frame(original: Path) -> bytes:
    return frame_picture(read_frame(original))
