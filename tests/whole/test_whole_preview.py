"""The preview of a report while somebody works on its job: written at once, again after a change, ended by Ctrl-C."""

from __future__ import annotations

import shutil
import signal
import subprocess
import sys
from pathlib import Path

import pytest

from record_builder import START, after
from witnessmark.assembly import Previewed, new_job, open_job, preview_report, read_packs
from witnessmark.journal.acts import Arrived, Found, Listed, Placed, Saw
from witnessmark.journal.job import Job


@pytest.fixture
def job(tmp_path: Path) -> Path:
    folder = tmp_path / "job"
    facts = Job("0199e000-0000-7000-8000-000000000001", date=START.date().isoformat(), rulebook="us.wa.308-408c")
    opened = new_job(folder, facts)
    pen = opened.pen("Odd Quayle")
    opened.keep(
        [
            pen.write(Arrived(), at=after(0)),
            pen.write(Placed("kitchen", "kitchen"), at=after(1), place="kitchen"),
            pen.write(Listed("range", "range"), at=after(2), place="kitchen", component="range"),
            pen.write(Saw("no anti-tip bracket", "adverse"), at=after(3), component="range"),
        ]
    )
    return folder


def found(folder: Path, title: str) -> None:
    opened = open_job(folder)
    body = Found(title, stake="people", urgency="now", kind="range")
    opened.keep([opened.pen("Odd Quayle").write(body, at=after(9), component="range")])


def text(made: Previewed) -> str:
    return made.page.read_text(encoding="utf-8")


def test_it_is_written_at_once_and_again_after_each_change_and_not_otherwise(job: Path) -> None:
    looks = iter(range(6))

    def wait() -> bool:
        look = next(looks, None)
        if look in {1, 3}:
            found(job, f"Range can tip, told {look} times")
        return look is not None

    told = []
    for made in preview_report(job, read_packs(), wait=wait):
        assert made.written
        assert made.open_ends > 0
        assert made.pdf.read_bytes().startswith(b"%PDF")
        told.append(text(made))
    assert ["told 1 times" in page for page in told] == [False, True, True]
    assert ["told 3 times" in page for page in told] == [False, False, True]
    assert not (job / "report").exists(), "an issued report is not touched"


def test_what_is_refused_is_told_and_the_last_preview_stays(job: Path) -> None:
    facts = (job / "job.toml").read_bytes()
    steps = iter((b'rulebook = "half a li', facts + b"\n"))

    def wait() -> bool:
        step = next(steps, None)
        if step is not None:
            (job / "job.toml").write_bytes(step)
        return step is not None

    first, broken, mended = preview_report(job, read_packs(), wait=wait)
    assert (first.written, broken.written, mended.written) == (True, False, True)
    assert broken.problems
    assert broken.page.exists()


def test_the_command_writes_until_it_is_ended(job: Path) -> None:
    command = [sys.executable, "-u", "-m", "witnessmark", "report", str(job), "--preview"]
    with subprocess.Popen(command, stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True) as running:
        assert running.stdout is not None
        assert "written, loose ends:" in running.stdout.readline()
        found(job, "Range can tip forward")
        assert "written, loose ends:" in running.stdout.readline()
        assert "Range can tip forward" in (job / "preview" / "index.html").read_text(encoding="utf-8")
        running.send_signal(signal.SIGINT)
        said, complaints = running.communicate(timeout=60)
    assert running.returncode == 0
    assert "The preview has ended" in said
    assert "Traceback" not in complaints


@pytest.mark.parametrize("more", ["--issue", "--json", "--date=2026-02-03T12:00:00-08:00"])
def test_a_preview_is_neither_issued_nor_data(job: Path, more: str) -> None:
    command = [sys.executable, "-m", "witnessmark", "report", str(job), "--preview", more]
    made = subprocess.run(command, capture_output=True, text=True, check=False)
    assert made.returncode == 2
    assert "A preview is a draft" in made.stderr
    shutil.rmtree(job)
