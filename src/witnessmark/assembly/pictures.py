"""Pictures of a job in a form a page can show: stand-ins for what is neither JPEG nor PNG, such as thermal frames."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path

from witnessmark.assembly.jobs import OpenJob
from witnessmark.imaging import frame_picture, read_frame
from witnessmark.journal.acts import Took
from witnessmark.journal.fold import Record
from witnessmark.problems import Refusal

__all__ = ["displayable"]

_SHOWN = "shown"


def displayable(job: OpenJob, record: Record) -> Mapping[str, Path]:
    """Stand-ins by the SHA-256 of the original, made once and kept beside the report's pictures."""
    stand_ins: dict[str, Path] = {}
    for fact in record.facts:
        if not isinstance(fact.body, Took) or fact.body.sort != "thermal":
            continue
        for sha256 in fact.media:
            original = job.media.path(sha256)
            if original is None:
                continue
            made = job.folder / "report" / _SHOWN / f"{sha256}.png"
            if not made.exists():
                try:
                    picture = frame_picture(read_frame(original))
                except Refusal:
                    continue  # the report then names the file in words
                made.parent.mkdir(parents=True, exist_ok=True)
                made.write_bytes(picture)
            stand_ins[sha256] = made
    return stand_ins
