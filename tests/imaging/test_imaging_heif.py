"""Pictures of phones: read with their time, shown as JPEG without their place, kept as they are.

``files/invented.heic`` is a drawing of ours, encoded by libheif's ``heif-enc``, with a time, an offset and a GPS place.
"""

from __future__ import annotations

import io
import sys
from datetime import datetime
from pathlib import Path

import pytest
from PIL import Image

from witnessmark.assembly import look_into, new_job
from witnessmark.assembly.pictures import displayable
from witnessmark.imaging import heif_jpeg, read_picture
from witnessmark.journal.acts import Accepted
from witnessmark.journal.job import Job
from witnessmark.problems import Refusal

HEIC = Path(__file__).with_name("files") / "invented.heic"


def test_its_time_and_size_are_read() -> None:
    picture = read_picture(HEIC)
    assert (picture.sort, picture.mime) == ("photo", "image/heic")
    assert (picture.width, picture.height) == (320, 240)
    assert picture.taken_at == "2026-10-14T09:15:30-07:00"
    assert picture.problems == ()


def test_the_stand_in_shows_the_same_and_holds_no_place() -> None:
    made = heif_jpeg(HEIC)
    with Image.open(io.BytesIO(made)) as shown:
        assert (shown.format, shown.size) == ("JPEG", (320, 240))
        assert not dict(shown.getexif())
        red, green, blue = shown.convert("RGB").getpixel((90, 70))  # type: ignore[misc] # three bands
    assert blue > red
    assert blue > green
    assert b"GPS" not in made


@pytest.mark.parametrize("share", [0.3, 0.6, 0.9])
def test_one_cut_short_is_refused(share: float, tmp_path: Path) -> None:
    whole = HEIC.read_bytes()
    (tmp_path / "cut.heic").write_bytes(whole[: int(len(whole) * share)])
    with pytest.raises(Refusal) as refused:
        read_picture(tmp_path / "cut.heic")
    assert refused.value.problems[0].number == "WM706"


def test_without_its_library_it_says_what_to_do(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setitem(sys.modules, "pi_heif", None)
    with pytest.raises(Refusal) as refused:
        read_picture(HEIC)
    assert refused.value.problems[0].number == "WM705"
    assert "pi-heif" in refused.value.problems[0].message.next


def test_in_a_job_the_original_is_kept_and_a_stand_in_shown(tmp_path: Path) -> None:
    now = datetime.fromisoformat("2026-10-14T12:00:00-07:00")
    job = new_job(tmp_path / "job", Job("0199e000-0000-7000-8000-000000000001", date="2026-10-14"), lambda: now)
    rows, problems = look_into(job, [HEIC])
    assert len(rows) == 1
    assert problems == []
    job.keep([job.pen().write(Accepted(of=tuple(fact.id for fact in job.record().drafts)), at=now)])
    ((sha256, shown),) = displayable(job, job.record()).items()
    kept = job.media.path(sha256)
    assert kept is not None
    assert kept.read_bytes() == HEIC.read_bytes()
    assert shown.read_bytes()[:3] == b"\xff\xd8\xff"
