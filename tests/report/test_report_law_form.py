"""The account in the order of a prescribed form: there where the law prescribes one, and nowhere else."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from pypdf import PdfReader

from record_builder import START, Visit, after
from report.pdf_standards import pdf_standards
from witnessmark import packs as packs_
from witnessmark.journal.acts import Absent, Arrived, Found, Identified, Left, Listed, Placed, Saw, Skipped
from witnessmark.journal.job import Job
from witnessmark.judging import standing
from witnessmark.packs.model import Packs
from witnessmark.report import Letter, compose, prepare, write_html, write_pdf
from witnessmark.report.letter import FormLine


@pytest.fixture(scope="module")
def shipped() -> Packs:
    return packs_.read()


def letter_under(packs: Packs, rulebook: str, language: str = "en") -> Letter:
    made = Visit()
    made.add(Arrived(), 0)
    made.add(Placed("kitchen", "kitchen"), 1, place="kitchen")
    made.add(Listed("range", "range"), 2, place="kitchen", component="range")
    made.add(Listed("dishwasher", "dishwasher"), 3, place="kitchen", component="dishwasher")
    made.add(Saw("no anti-tip bracket", "adverse"), 5, component="range")  # e005
    made.add(
        Found("Range can tip", rests_on=("e005",), stake="people", urgency="now", kind="range"), 6, component="range"
    )
    made.add(Identified("fuel", "natural gas", kind="range"), 6, component="range")
    made.add(Skipped(reason="stored-items", what="dishwasher"), 7, component="dishwasher")
    made.add(Absent("microwave"), 8, place="kitchen")
    made.add(Left(), 60)
    record = made.record()
    job = Job("0199e000-0000-7000-8000-000000000001", date=START.date().isoformat(), rulebook=rulebook, year_built=1985)
    stands = standing(record, packs, job, after(120))
    return compose(job, record, packs, stands, media=lambda _sha256: None, issued=after(120), language=language)


def line(letter: Letter, group: str, number: str) -> FormLine:
    assert letter.form is not None
    return next(row for row in letter.form.lines if row.group.startswith(f"{group}.") and row.number == number)


def test_each_item_bears_the_laws_marks_and_what_they_rest_on(shipped: Packs) -> None:
    letter = letter_under(shipped, "us.tx.535-r")
    ranges = line(letter, "V", "D")
    assert ranges.marks == ("Inspected", "Deficient")
    assert ranges.codes == ("I", "D")
    assert ranges.findings == (1,)
    assert [row.text for row in ranges.says] == ["Range, fuel or energy source: natural gas."]
    assert ranges.rests_on
    washer = line(letter, "V", "A")
    assert washer.codes == ("NI",)
    assert "stored" in washer.says[0].text
    assert washer.says[0].rests_on
    assert line(letter, "V", "E").codes == ("NP",)
    untold = line(letter, "I", "A")
    assert (untold.marks, [row.text for row in untold.says]) == ((), ["The record says nothing of it."])
    assert letter.form is not None
    assert letter.form.note == "recalled, check the text"
    assert letter.form.columns == (
        ("I", "Inspected"),
        ("NI", "Not Inspected"),
        ("NP", "Not Present"),
        ("D", "Deficient"),
    )


def test_page_and_pdf_have_it_in_the_order_of_the_form(shipped: Packs, tmp_path: Path) -> None:
    letter = letter_under(shipped, "us.tx.535-r")
    ready = prepare(letter, tmp_path / "pictures")
    write_html(letter, tmp_path, prepared=ready)
    write_pdf(letter, tmp_path / "report.pdf", prepared=ready)
    page = re.sub(r"<[^>]+>", " ", (tmp_path / "index.html").read_text(encoding="utf-8"))
    paper = " ".join(page.extract_text() for page in PdfReader(tmp_path / "report.pdf").pages)
    assert letter.form is not None
    for text in (" ".join(page.split()), " ".join(paper.split())):
        places = [text.find(f"{row.number}. {row.item}") for row in letter.form.lines]
        assert -1 not in places
        assert places == sorted(places)
    with pdf_standards() as standards:
        assert standards.check(tmp_path / "report.pdf").breaches == ()


def test_a_law_that_prescribes_none_has_no_such_part(shipped: Packs, tmp_path: Path) -> None:
    letter = letter_under(shipped, "us.wa.308-408c")
    assert letter.form is None
    write_html(letter, tmp_path)
    page = (tmp_path / "index.html").read_text(encoding="utf-8")
    assert "law’s form" not in page
    assert 'href="#form"' not in page


def test_in_spanish_our_own_words_are_spanish_and_the_laws_stay(shipped: Packs) -> None:
    letter = letter_under(shipped, "us.tx.535-r", "es")
    assert line(letter, "V", "D").marks == ("Inspected", "Deficient")
    assert line(letter, "I", "A").says[0].text == "El registro no dice nada de esto."
