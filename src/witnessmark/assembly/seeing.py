"""Pictures into the job: kept under their hash, drafted as entries, tied to what was said around them."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from datetime import datetime
from pathlib import Path

from witnessmark.assembly import messages
from witnessmark.assembly.jobs import OpenJob
from witnessmark.assembly.tying import TIED, spoken_of
from witnessmark.imaging import Picture, read_picture
from witnessmark.journal.acts import Took
from witnessmark.journal.entry import Source
from witnessmark.journal.moment import instant
from witnessmark.problems import Problem, Refusal

__all__ = ["look_at", "look_into"]

Tell = Callable[[int, int], None]


def _silent(_done: int, _whole: int) -> None:
    return


def look_at(
    files: Sequence[Path], *, offset: str | None = None, tell: Tell = _silent
) -> tuple[list[Picture], list[Problem]]:
    """Read pictures; a file that cannot be read becomes a problem, and the others still come in."""
    seen: list[Picture] = []
    problems: list[Problem] = []
    for number, file in enumerate(files, 1):
        try:
            picture = read_picture(file, default_offset=offset)
        except Refusal as refusal:
            problems += refusal.problems
        else:
            seen.append(picture)
            problems += picture.problems
        tell(number, len(files))
    return seen, problems


def look_into(
    job: OpenJob,
    files: Sequence[Path],
    *,
    offset: str | None = None,
    device: str = "camera",
    by: str | None = None,
    tell: Tell = _silent,
) -> tuple[list[dict[str, object]], list[Problem]]:
    """Keep the pictures in the job and draft an entry for each, in the order they were taken.

    The tie to what was said is a guess by time. It never says what a picture shows: only a person can.

    A picture already in the job is not drafted again. One without a time is named (WM915) and left out.
    """
    seen, problems = look_at(files, offset=offset, tell=tell)
    record = job.record()
    known = {sha256 for entry in record.entries.values() for sha256 in entry.media}
    timed: list[tuple[datetime, Picture]] = []
    for picture in seen:
        if picture.taken_at is None:
            problems.append(messages.NO_CLOCK.at(picture.name))
        elif picture.sha256 not in known:
            known.add(picture.sha256)
            timed.append((instant(picture.taken_at), picture))
    timed.sort(key=lambda row: (row[0], row[1].name))
    pen = job.pen(by, device)
    entries = []
    for at, picture in timed:
        sha256 = job.media.put_file(picture.path)
        about = spoken_of(at, record)
        body = Took(
            sort=picture.sort,
            name=picture.name,
            mime=picture.mime,
            speaks_of=(about.id,) if about else (),
        )
        entries.append(
            pen.write(
                body,
                at=picture.taken_at,
                place=about.place if about else None,
                component=about.component if about else None,
                media=(sha256,),
                source=Source("photo", file=picture.name, rule=TIED if about else None),
                draft=True,
            )
        )
    job.keep(entries)
    return [picture.as_json() for _, picture in timed], problems
