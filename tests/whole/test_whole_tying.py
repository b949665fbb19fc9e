"""What is said and what is photographed in the same minutes come together, whichever is brought in first."""

from __future__ import annotations

import json
from datetime import datetime
from pathlib import Path

import pytest
from PIL import Image

from witnessmark.assembly import hear_into, look_into, new_job, read_packs
from witnessmark.assembly.jobs import OpenJob
from witnessmark.journal.acts import Accepted, Amended, Took
from witnessmark.journal.fold import Fact, Record
from witnessmark.journal.job import Job
from witnessmark.packs.model import Packs

BEGAN = "2026-10-14T09:00:00-07:00"


@pytest.fixture(scope="module")
def packs() -> Packs:
    return read_packs()


@pytest.fixture
def job(tmp_path: Path) -> OpenJob:
    now = datetime.fromisoformat("2026-10-14T12:00:00-07:00")
    return new_job(tmp_path / "job", Job("0199e000-0000-7000-8000-000000000001", date="2026-10-14"), lambda: now)


def narration(folder: Path) -> Path:
    lines = [
        (2.0, "okay in the kitchen"),
        (5.0, "the range has no anti tip bracket"),
        (60.0, "the sink faucet drips at the base"),
    ]
    file = folder / "talk.jsonl"
    file.write_text("".join(json.dumps({"t": t, "text": text}) + "\n" for t, text in lines), encoding="utf-8")
    return file


def photo(folder: Path, name: str, taken: str) -> Path:
    picture = Image.new("RGB", (64, 48), (sum(map(ord, name)) % 256, 90, 90))
    exif = Image.Exif()
    exif.get_ifd(0x8769).update({0x9003: taken, 0x9011: "-07:00"})
    picture.save(folder / name, exif=exif)
    return folder / name


def took(record: Record, name: str) -> Fact:
    return next(f for f in (*record.facts, *record.drafts) if isinstance(f.body, Took) and f.body.name == name)


def words_of(record: Record, name: str) -> list[str | None]:
    body = took(record, name).body
    assert isinstance(body, Took)
    return [record.entries[entry].source.words for entry in body.speaks_of]


def accept_all(job: OpenJob) -> Record:
    of = tuple(fact.id for fact in job.record().drafts)
    job.keep([job.pen().write(Accepted(of=of), at=BEGAN)])
    return job.record()


def test_pictures_after_the_talk(job: OpenJob, packs: Packs, tmp_path: Path) -> None:
    hear_into(job, packs, narration(tmp_path), began=BEGAN)
    look_into(
        job, [photo(tmp_path, "range.jpg", "2026:10:14 09:00:08"), photo(tmp_path, "later.jpg", "2026:10:14 09:10:00")]
    )
    record = job.record()
    (said,) = words_of(record, "range.jpg")
    assert said
    assert "anti tip" in said
    assert words_of(record, "later.jpg") == []


def test_pictures_before_the_talk(job: OpenJob, packs: Packs, tmp_path: Path) -> None:
    look_into(
        job, [photo(tmp_path, "range.jpg", "2026:10:14 09:00:08"), photo(tmp_path, "later.jpg", "2026:10:14 09:10:00")]
    )
    hear_into(job, packs, narration(tmp_path), began=BEGAN)
    assert words_of(job.record(), "range.jpg") == [], "a tie is a draft until a person accepts it"
    record = accept_all(job)
    (said,) = words_of(record, "range.jpg")
    assert said
    assert "anti tip" in said
    assert took(record, "range.jpg").place == "kitchen"
    assert took(record, "range.jpg").media, "the picture keeps its file"
    assert words_of(record, "later.jpg") == []


def test_a_tie_is_drafted_once_and_never_over_one_that_stands(job: OpenJob, packs: Packs, tmp_path: Path) -> None:
    look_into(job, [photo(tmp_path, "range.jpg", "2026:10:14 09:00:08")])
    hear_into(job, packs, narration(tmp_path), began=BEGAN)
    hear_into(job, packs, narration(tmp_path), began=BEGAN, device="other")
    ties = [f for f in job.record().drafts if isinstance(f.body, Amended)]
    assert len(ties) == 1
    accept_all(job)
    hear_into(job, packs, narration(tmp_path), began=BEGAN, device="third")
    assert not [f for f in job.record().drafts if isinstance(f.body, Amended)]
