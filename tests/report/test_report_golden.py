"""Golden reports of a small, a bare and an awkward house, and a house with three hundred findings."""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest
from pypdf import PdfReader

from record_builder import Visit, after
from report.golden_page import GOLDEN, hold_against, read_text
from report.small_visit import JOB, Given, given
from witnessmark.journal.acts import Arrived, Found, Left, Placed
from witnessmark.packs.model import STAKES, URGENCIES
from witnessmark.report import Letter, compose, write_html, write_pdf

RTL = "משה כהן"
LONG = "Bartholomew-Maximilian Featherstonehaugh-Cholmondeley von Oberammergau und zu Unterschleißheim the Third, and Partners"


def letter_in(some: Given, language: str = "en") -> Letter:
    return compose(
        some.job, some.record, some.packs, some.standing, media=some.files.get, issued=after(600),
        pictures=some.pictures, language=language,
    )  # fmt: skip


def page_of(letter: Letter, folder: Path) -> str:
    write_html(letter, folder)
    return (folder / "index.html").read_text(encoding="utf-8")


def bare(some: Given) -> Given:
    made = Visit()
    made.add(Arrived(), 0)
    made.add(Left(), 30)
    return replace(some, record=made.record())


def awkward(some: Given) -> Given:
    job = replace(JOB, client=RTL, inspector="Bo", address=LONG, town="Y", firm=None, licence="")
    return replace(some, job=job)


@pytest.mark.parametrize(
    ("name", "change", "language"),
    [
        ("small", lambda some: some, "en"),
        ("small-es", lambda some: some, "es"),
        ("bare", bare, "en"),
        ("awkward", awkward, "en"),
    ],
)
def test_golden(name: str, change: object, language: str, tmp_path: Path) -> None:
    assert callable(change)
    letter = letter_in(change(given(tmp_path / "media")), language)
    hold_against(name, page_of(letter, tmp_path), tmp_path)
    assert [row.number for row in write_pdf(letter, tmp_path / "report.pdf") if row.number != "WM801"] == []


def test_a_difference_is_shown_side_by_side(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.delenv("GOLDEN", raising=False)
    page = page_of(letter_in(given(tmp_path / "media")), tmp_path)
    with pytest.raises(AssertionError, match="side by side in"):
        hold_against("small", page.replace("What matters most", "What matters least"), tmp_path)
    beside = (tmp_path / "small-beside.html").read_text(encoding="utf-8")
    assert "as it was" in beside
    # HtmlDiff marks what changed within a line, so that the changed word stands in pieces.
    assert "matters&nbsp;<" in beside


def test_dates_times_and_hashes_are_scrubbed() -> None:
    for file in GOLDEN.glob("*.txt"):
        text = file.read_text(encoding="utf-8")
        assert read_text(f"<p>{text}</p>").count("<hash>") == text.count("<hash>"), (
            "what is scrubbed once stays scrubbed"
        )
    assert read_text("<p>on Tuesday, February 3, 2026 at 9:01:00 am</p>") == "on <day> at <time>\n"


def test_three_hundred_findings_are_told_one_by_one(tmp_path: Path) -> None:
    made = Visit()
    made.add(Placed("attic", "attic"), 1, place="attic")
    for n in range(300):
        made.add(
            Found(f"Thing {n} is loose", f"It moves, {n}.", "w", "f", "fasten it", "carpenter", "repair", STAKES[n % 4],
                  URGENCIES[n % 5]),
            place="attic",
        )  # fmt: skip
    letter = letter_in(replace(given(tmp_path / "media"), record=made.record()))
    page = page_of(letter, tmp_path)
    assert page.count('<article class="finding"') == 300
    assert write_pdf(letter, tmp_path / "report.pdf") == ()
    reader = PdfReader(tmp_path / "report.pdf")
    text = " ".join(part.extract_text() for part in reader.pages)
    assert all(f"Thing {n} is loose" in text for n in range(0, 300, 37))
    assert "300 findings" in text


def test_a_client_who_writes_from_right_to_left_stays_in_place(tmp_path: Path) -> None:
    page = page_of(letter_in(awkward(given(tmp_path / "media"))), tmp_path)
    assert f"<bdi>{RTL}</bdi>" in page
