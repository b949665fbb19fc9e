"""The PDF: tagged, titled, in one language, with words for every picture, the data attached, and nothing left to chance."""

import io
import zlib
from dataclasses import replace
from itertools import pairwise
from pathlib import Path
from typing import Any

import pytest
from pypdf import PdfReader
from pypdf.generic import ArrayObject, DictionaryObject, IndirectObject

from report.small_visit import ISSUED, JOB, given, letter_of
from witnessmark.journal.acts import Found, Head, Sealed
from witnessmark.problems import Refusal
from witnessmark.report import Letter, compose, prepare, report_bytes, typesetting, write_pdf

ODD = '#let x = 1; $y$ @ref \\ *b* _i_ `c` [x] <l> // "q" #panic("no") #{ 7 * 7 }'


def read(letter: Letter, path: Path) -> PdfReader:
    write_pdf(letter, path)
    return PdfReader(io.BytesIO(path.read_bytes()), strict=False)


def root_of(reader: PdfReader) -> Any:
    """The catalogue, whose values pypdf types as the least they may be."""
    return reader.root_object


def words(reader: PdfReader) -> str:
    text = " ".join(page.extract_text() for page in reader.pages)
    return " ".join(text.replace("\u200b", "").split())


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return tmp_path_factory.mktemp("pdf")


@pytest.fixture(scope="module")
def letter(folder: Path) -> Letter:
    return letter_of(given(folder / "media"))


@pytest.fixture(scope="module")
def reader(letter: Letter, folder: Path) -> PdfReader:
    return read(letter, folder / "report.pdf")


def tree(reader: PdfReader) -> list[Any]:
    """Every element of the structure tree, in reading order."""
    found: list[Any] = []

    def walk(node: object) -> None:
        node = node.get_object() if isinstance(node, IndirectObject) else node
        if isinstance(node, ArrayObject):
            for child in node:
                walk(child)
        elif isinstance(node, DictionaryObject):
            if "/S" in node:
                found.append(node)
            walk(node.get("/K"))

    walk(root_of(reader)["/StructTreeRoot"])
    return found


def test_it_claims_pdf_a_3a_and_pdf_ua_1(reader: PdfReader) -> None:
    # ISO 19005-3, 6.6.4 (pdfaid:part, pdfaid:conformance) and ISO 14289-1, clause 5 (pdfuaid:part).
    metadata = root_of(reader)["/Metadata"].get_object()
    text = metadata.get_data().decode()
    assert "pdfaid:part>3<" in text
    assert "pdfaid:conformance>A<" in text
    assert "pdfuaid:part>1<" in text


def test_title_language_author_and_date(reader: PdfReader) -> None:
    # ISO 14289-1, 7.1: the title is displayed; 7.2: the natural language is stated.
    info = reader.metadata
    assert info is not None
    assert info.title == "Inspection of 1 Teasel Row, Mallow, XX 00000 (draft)"
    assert info.author == "Odd Quayle"
    assert info.creation_date is not None
    assert info.creation_date.date() == ISSUED.date()
    assert root_of(reader)["/Lang"] == "en-US"
    assert root_of(reader)["/ViewerPreferences"].get_object()["/DisplayDocTitle"]


def test_it_is_tagged_and_headings_skip_no_level(reader: PdfReader) -> None:
    # ISO 14289-1, 7.4.2: headings of a strongly structured document begin with the first level and skip none.
    assert root_of(reader)["/MarkInfo"].get_object()["/Marked"]
    levels = [int(str(node["/S"])[2:]) for node in tree(reader) if str(node["/S"]) in {f"/H{i}" for i in range(1, 7)}]
    assert levels[0] == 1
    assert all(later <= earlier + 1 for earlier, later in pairwise(levels))
    assert len(levels) > 20


def test_every_picture_has_words_of_the_record(reader: PdfReader, letter: Letter) -> None:
    # ISO 14289-1, 7.3: figures have an alternative representation.
    told = [str(node.get("/Alt", "")) for node in tree(reader) if node["/S"] == "/Figure"]
    assert sorted(told) == sorted(
        [*(picture.alt for picture in letter.pictures), *(row.says for row in letter.drawings)]
    )


def test_tables_have_header_cells(reader: PdfReader) -> None:
    # ISO 14289-1, 7.5.
    kinds = [str(node["/S"]) for node in tree(reader)]
    assert kinds.count("/Table") == 1
    assert kinds.count("/TH") == 4


def test_the_data_are_attached_as_data(reader: PdfReader, letter: Letter) -> None:
    # ISO 19005-3, 6.8: an associated file with its relationship.
    assert list(reader.attachments) == ["report.json"]
    assert reader.attachments["report.json"][0] == report_bytes(letter)
    spec = root_of(reader)["/AF"].get_object()[0].get_object()
    assert spec["/AFRelationship"] == "/Data"


def test_address_draft_invented_and_page_number_are_on_every_page(reader: PdfReader) -> None:
    count = len(reader.pages)
    assert count > 4
    for number, page in enumerate(reader.pages, 1):
        text = " ".join(page.extract_text().split())
        assert "1 Teasel Row, Mallow, XX 00000" in text
        assert "Draft: not issued. Two things are open." in text
        assert "Invented for demonstration: this house, these people and these pictures do not exist." in text
        assert f"Page {number} of {count}" in text


def test_the_letter_is_all_there(reader: PdfReader, letter: Letter) -> None:
    text = words(reader)
    for finding in letter.findings:
        for part in (finding.title, finding.seen, finding.why, finding.if_left, finding.do, finding.sentence):
            assert part in text
    for row in letter.evidence:
        assert row.words in text
    assert "there's a drip right at the nut" in text
    assert "An Invented Code, 2020, 7.1" in text
    assert "(recalled, check the text)" in text
    assert "Words the law fixes." in text


def test_an_issued_letter_shows_its_seal_and_no_draft(folder: Path) -> None:
    some = given(folder / "media", blocked=False, job=replace(JOB, invented=False))
    seal = Sealed("ab" * 32, (Head("phone", 27, "cd" * 32, 1),), (), "12" * 32, "34" * 32, "56" * 32, "78" * 64)
    issued = compose(
        some.job, some.record, some.packs, some.standing, media=some.files.get, issued=ISSUED,
        pictures=some.pictures, seal=seal, verification=(),
    )  # fmt: skip
    reader = read(issued, folder / "issued.pdf")
    text = words(reader)
    assert "Draft" not in text
    assert "Invented for" not in text
    for shown in ("ab" * 32, "cd" * 32, "12" * 32, "34" * 32, "56" * 32, "78" * 32):
        assert shown in text
    assert reader.metadata is not None
    assert reader.metadata.title == "Inspection of 1 Teasel Row, Mallow, XX 00000"


def test_the_same_letter_gives_the_same_bytes(letter: Letter, folder: Path) -> None:
    prepared = prepare(letter, folder / "pictures")
    write_pdf(letter, folder / "one.pdf", prepared=prepared)
    write_pdf(letter, folder / "two.pdf")
    assert (folder / "one.pdf").read_bytes() == (folder / "two.pdf").read_bytes()


def test_it_ends_with_a_line_end_so_that_it_can_be_signed(letter: Letter, folder: Path) -> None:
    write_pdf(letter, folder / "end.pdf")
    assert (folder / "end.pdf").read_bytes().endswith(b"%%EOF\n")


def test_what_a_user_wrote_is_never_markup(folder: Path) -> None:
    some = given(folder / "media", job=replace(JOB, client=ODD, town=ODD, firm=ODD, note=ODD))
    facts = tuple(
        replace(fact, body=replace(fact.body, title=ODD, seen=ODD, do=ODD, by=ODD))
        if isinstance(fact.body, Found)
        else fact
        for fact in some.record.facts
    )
    text = words(read(letter_of(replace(some, record=replace(some.record, facts=facts))), folder / "odd.pdf"))
    assert text.count(ODD) >= 8


def test_other_scripts_emoji_and_endless_words(folder: Path) -> None:
    job = replace(
        JOB, client="נועה פרנסבי", inspector="مارين", town="渋谷 👍🏽", address="1 " + "Teasel" * 60, note="a\n\nb"
    )
    path = folder / "scripts.pdf"
    problems = write_pdf(letter_of(given(folder / "media", job=job)), path)
    (problem,) = problems
    assert problem.number == "WM804"
    assert "U+6E0B" in problem.detail
    text = words(PdfReader(io.BytesIO(path.read_bytes())))
    assert "Teasel" * 60 in text.replace(" ", "")
    assert "□" in text
    assert "渋" in path_attachment(path)


def path_attachment(path: Path) -> str:
    reader = PdfReader(io.BytesIO(path.read_bytes()))
    return reader.attachments["report.json"][0].decode()


def test_no_findings_and_many(folder: Path) -> None:
    some = given(folder / "media")
    template = next(fact for fact in some.record.facts if isinstance(fact.body, Found))
    none = tuple(fact for fact in some.record.facts if not isinstance(fact.body, Found))
    empty = replace(some, record=replace(some.record, facts=none))
    assert "Nothing was written down as a finding." in words(read(letter_of(empty), folder / "none.pdf"))
    many = tuple(replace(template, id=f"m{i:03}") for i in range(300))
    full = replace(some, record=replace(some.record, facts=some.record.facts + many))
    assert "There are 302 findings" in words(read(letter_of(full), folder / "many.pdf"))


def test_a_picture_that_cannot_be_read_is_told_in_words(folder: Path) -> None:
    some = given(folder / "broken")
    (folder / "broken" / "drip.jpg").write_bytes(b"\xff\xd8\xff not a picture")
    path = folder / "broken.pdf"
    assert [problem.number for problem in write_pdf(letter_of(some), path)] == ["WM803"]
    text = words(PdfReader(io.BytesIO(path.read_bytes())))
    assert "This picture (drip.jpg) could not be shown." in text


def test_nothing_of_the_machine_is_in_the_file(letter: Letter, folder: Path) -> None:
    path = folder / "private.pdf"
    reader = read(letter, path)
    raw = path.read_bytes()
    for number in range(1, int(str(reader.trailer["/Size"]))):
        try:
            thing: Any = reader.get_object(number)
        except (KeyError, ValueError, zlib.error):
            continue
        if hasattr(thing, "get_data"):
            raw += thing.get_data()
    assert str(folder).encode() not in raw
    assert b"/tmp/" not in raw


def test_a_typesetter_that_fails_is_a_refusal_and_leaves_no_file(
    letter: Letter, folder: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    broken = folder / "letter.typ"
    broken.write_text('#panic("planted")')
    monkeypatch.setattr(typesetting, "_TEMPLATE", broken)
    with pytest.raises(Refusal, match="WM808"):
        write_pdf(letter, folder / "never.pdf")
    assert not (folder / "never.pdf").exists()


def test_a_picture_without_words_is_refused_by_the_standard(
    letter: Letter, folder: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    # A canary: were the standards not asked for, this would pass unnoticed.
    source = typesetting._TEMPLATE.read_text(encoding="utf-8")
    mute = folder / "mute"
    mute.mkdir()
    (mute / "letter.typ").write_text(source.replace(", alt: p.alt", ""), encoding="utf-8")
    monkeypatch.setattr(typesetting, "_TEMPLATE", mute / "letter.typ")
    with pytest.raises(Refusal, match="alt"):
        write_pdf(letter, folder / "mute.pdf")


def test_a_place_that_takes_no_file_is_refused(letter: Letter, folder: Path) -> None:
    (folder / "wall").write_text("in the way")
    with pytest.raises(Refusal, match="WM809"):
        write_pdf(letter, folder / "wall" / "report.pdf")
