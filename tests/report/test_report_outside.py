"""The script of docs/verify_outside.py, run with nothing of this program: an issued job matches, a tampered one is named."""

from __future__ import annotations

import shutil
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path

import pytest

from witnessmark.report.identity import own_identity
from witnessmark.report.signing import sign_pdf

SCRIPT = Path(__file__).resolve().parents[2] / "docs" / "verify_outside.py"


def check(job: Path) -> tuple[int, str]:
    if shutil.which("openssl") is None:
        pytest.skip("no openssl on this machine")
    # -I: nothing of the environment, and no package of ours, can be imported by accident
    told = subprocess.run(
        [sys.executable, "-I", "-S", str(SCRIPT), str(job)], capture_output=True, text=True, check=False
    )
    assert "Traceback" not in told.stderr
    return told.returncode, told.stdout


@pytest.fixture
def job(demo_job: Path, tmp_path: Path) -> Path:
    copy = tmp_path / "job"
    shutil.copytree(demo_job, copy)
    return copy


def _journal(job: Path) -> None:
    path = job / "journal.jsonl"
    path.write_bytes(path.read_bytes().replace(b"overcast", b"cloudless", 1))


def _line_gone(job: Path) -> None:
    path = job / "journal.jsonl"
    lines = path.read_bytes().splitlines(keepends=True)
    path.write_bytes(b"".join(lines[:5] + lines[6:]))


def _photo(job: Path) -> None:
    path = next(p for p in (job / "media").rglob("*") if p.is_file())
    path.write_bytes(path.read_bytes() + b"x")


def _facts(job: Path) -> None:
    path = job / "job.toml"
    path.write_text(path.read_text(encoding="utf-8").replace("1968", "1998"), encoding="utf-8")


def _data(job: Path) -> None:
    path = job / "report" / "report.json"
    path.write_bytes(path.read_bytes().replace(b"soon", b"noon", 1))


def test_an_issued_job_matches_also_with_its_pdf_signed(job: Path, tmp_path: Path) -> None:
    status, told = check(job)
    assert (status, told.splitlines()[-1]) == (0, "Everything matches.")
    sign_pdf(job / "report" / "report.pdf", own_identity(tmp_path / "me.pem", "N. N."))
    status, told = check(job)
    assert status == 0
    assert "report.pdf with 1 signatures" in told


@pytest.mark.parametrize(
    ("spoil", "named"),
    [(_journal, "journal.jsonl line"), (_line_gone, "is missing or another one"), (_photo, "media/"), (_facts, "job.toml"),
     (_data, "report.json")],
)  # fmt: skip
def test_what_was_changed_is_named(job: Path, spoil: Callable[[Path], None], named: str) -> None:
    spoil(job)
    status, told = check(job)
    assert status == 1
    assert any(named in line for line in told.splitlines() if line.startswith("DOES NOT MATCH"))


def test_a_signed_pdf_that_was_changed_is_named(job: Path, tmp_path: Path) -> None:
    pdf = job / "report" / "report.pdf"
    sign_pdf(pdf, own_identity(tmp_path / "me.pem", "N. N."))
    data = bytearray(pdf.read_bytes())
    data[len(data) // 3] ^= 1
    pdf.write_bytes(bytes(data))
    status, told = check(job)
    assert status == 1
    assert "does not cover" in told
