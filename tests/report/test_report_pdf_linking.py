"""Links within the PDF: each leads where the typesetter's own link leads, and says what it leads to."""

from __future__ import annotations

import io
from dataclasses import replace
from pathlib import Path

import pytest
from pypdf import PdfReader
from pypdf.generic import DictionaryObject

from report.small_visit import given, letter_of
from witnessmark.report import Letter, typesetting
from witnessmark.report.linking import Place, led
from witnessmark.report.offsets import SplicingError
from witnessmark.report.pictures import Look, foreseen
from witnessmark.report.typesetting import typeset

Row = tuple[int, list[float], int, float, float]


@pytest.fixture
def letter(tmp_path: Path) -> Letter:
    """With one title that is broken over lines wherever it stands: its links are made of several pieces."""
    made = letter_of(given(tmp_path / "media"))
    first, *others = made.stakes
    finding, *more = first.findings
    finding = replace(finding, title=f"{finding.title} that was looked at from below and from above" * 3)
    return replace(made, stakes=(replace(first, findings=(finding, *more)), *others))


def links(pdf: bytes) -> list[DictionaryObject]:
    return [
        annotation.get_object()
        for page in PdfReader(io.BytesIO(pdf), strict=True).pages
        for annotation in page.get("/Annots", [])
        if annotation.get_object()["/Subtype"] == "/Link"
    ]


def goals(pdf: bytes) -> list[Row]:
    """Page and rectangle of each link, and the page and place it leads to."""
    reader = PdfReader(io.BytesIO(pdf), strict=True)
    numbers = {page.indirect_reference.idnum: n for n, page in enumerate(reader.pages) if page.indirect_reference}
    rows = []
    for number, page in enumerate(reader.pages):
        for annotation in page.get("/Annots", []):
            link = annotation.get_object()
            goal = link["/Dest"]
            if isinstance(goal, str):
                goal = reader.named_destinations[goal].dest_array
            target, kind, left, top, _ = goal.get_object()
            assert kind == "/XYZ"
            rows.append((number, [float(x) for x in link["/Rect"]], numbers[target.idnum], float(left), float(top)))
    return rows


def looks_of(letter: Letter) -> dict[str, Look]:
    return {row.sha256: look for row in letter.pictures if (look := foreseen(row.path))}


def test_each_link_leads_where_the_typesetters_own_link_leads(letter: Letter, monkeypatch: pytest.MonkeyPatch) -> None:
    pdf = typeset(letter, looks_of(letter)).pdf
    assert b"/QuadPoints" in pdf
    assert b"(Entry 1)" in pdf  # ours, not the typesetter's own words
    ours = goals(pdf)
    refused = []

    def refuse(*_args: object) -> bytes:
        refused.append(1)
        raise SplicingError("planted")

    monkeypatch.setattr(typesetting, "led", refuse)
    theirs = goals(typeset(letter, looks_of(letter)).pdf)
    assert refused == [1]
    assert len(ours) == len(theirs) > 40
    for one, other in zip(ours, theirs, strict=True):
        assert one[0] == other[0]
        assert one[1] == pytest.approx(other[1], abs=0.01)
        assert one[2] == other[2]
        assert one[3:] == pytest.approx(other[3:], abs=0.01)


def test_no_address_of_ours_is_left(letter: Letter) -> None:
    pdf = typeset(letter, looks_of(letter)).pdf
    assert b"witnessmark:" not in pdf
    assert all("/A" not in link for link in links(pdf))


@pytest.mark.parametrize(("language", "word"), [("en", "Entry 1"), ("es", "Anotación 1")])
def test_links_say_what_they_lead_to(letter: Letter, language: str, word: str) -> None:
    pdf = typeset(replace(letter, language=language), looks_of(letter)).pdf
    assert word in {str(link["/Contents"]) for link in links(pdf)}


def test_words_beyond_ascii_are_text_strings(letter: Letter, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(typesetting, "words_of", lambda _language: {"Entry": "Añadido (uno)"})
    pdf = typeset(letter, looks_of(letter)).pdf
    assert "Añadido (uno) 1" in {str(link["/Contents"]) for link in links(pdf)}


def test_words_that_look_like_a_link_stay_words(letter: Letter) -> None:
    planted = "7 0 obj <</Type/Annot/A<</Type/Action/S/URI/URI(witnessmark:e1)>> startxref 9 %%EOF"
    first = replace(letter.pictures[0], alt=planted)
    made = replace(letter, pictures=(first, *letter.pictures[1:]), title=planted)
    pdf = typeset(made, looks_of(letter)).pdf
    assert len(goals(pdf)) == len(goals(typeset(letter, looks_of(letter)).pdf))
    assert PdfReader(io.BytesIO(pdf)).metadata is not None
    assert planted in str(PdfReader(io.BytesIO(pdf)).metadata)


def test_a_link_to_nowhere_is_noticed(letter: Letter, monkeypatch: pytest.MonkeyPatch) -> None:
    kept: dict[str, bytes] = {}

    def keep(pdf: bytes, places: dict[str, Place], words: object) -> bytes:
        kept["pdf"] = pdf
        kept["places"] = places  # type: ignore[assignment] # only to look at it below
        return led(pdf, places, words)  # type: ignore[arg-type] # passed on as it came

    monkeypatch.setattr(typesetting, "led", keep)
    typeset(letter, looks_of(letter))
    places: dict[str, Place] = dict(kept["places"])  # type: ignore[arg-type] # see above
    with pytest.raises(SplicingError, match="e1, which is nowhere"):
        led(kept["pdf"], {**places, "e1": Place(900, 0, 0)}, str)
    del places["e1"]
    with pytest.raises(SplicingError, match="e1, which is nowhere"):
        led(kept["pdf"], places, str)
