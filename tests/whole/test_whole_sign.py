"""The command that signs the PDF of a report: with a key of its own making, without a PDF, without its libraries."""

from __future__ import annotations

import json
import os
import subprocess
import sys
from io import BytesIO
from pathlib import Path

import pytest
from pyhanko.pdf_utils.reader import PdfFileReader

from witnessmark.assembly import OpenJob, open_job, sign_report
from witnessmark.problems import Refusal


def run(home: Path, *words: str, status: int = 0) -> subprocess.CompletedProcess[str]:
    told = subprocess.run(
        [sys.executable, "-m", "witnessmark", *words],
        capture_output=True, text=True, check=False, env={**os.environ, "WITNESSMARK_KEY": str(home / "key.pem")},
    )  # fmt: skip
    assert told.returncode == status, told.stderr
    assert "Traceback" not in told.stderr
    return told


@pytest.fixture
def job(tmp_path: Path) -> OpenJob:
    folder = tmp_path / "job"
    run(tmp_path, "new", str(folder), "--address", "1 Invented Road", "--inspector", "N. N.", "--date", "2026-10-14")
    run(tmp_path, "note", str(folder), "arrived", "at=2026-10-14T09:00:00-07:00")
    return open_job(folder)


def test_a_report_is_signed_and_what_was_there_before_stays(job: OpenJob, tmp_path: Path) -> None:
    run(tmp_path, "report", str(job.folder), status=1)
    pdf = job.folder / "report" / "report.pdf"
    before = pdf.read_bytes()
    made = json.loads(run(tmp_path, "sign", str(job.folder), "--reason", "delivered", "--json").stdout)
    assert [row["sort"] for row in made["bears"]] == ["signature"]
    assert "N. N." in made["bears"][0]["by"]
    data = pdf.read_bytes()
    assert data.startswith(before)
    assert len(PdfFileReader(BytesIO(data)).embedded_signatures) == 1
    again = json.loads(run(tmp_path, "sign", str(job.folder), "--json").stdout)
    assert len(again["bears"]) == 2, "a second signature is added to the first"


def test_without_a_pdf_it_says_what_to_do(job: OpenJob, tmp_path: Path) -> None:
    assert "WM931" in run(tmp_path, "sign", str(job.folder), status=2).stderr


def test_without_its_libraries_it_says_what_to_install(job: OpenJob, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setitem(sys.modules, "witnessmark.report.signing", None)
    with pytest.raises(Refusal) as refused:
        sign_report(job)
    assert refused.value.problems[0].number == "WM930"
