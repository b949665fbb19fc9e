"""Pictures that take the place of stand-ins: every one arrives whole, and the file is as if it had been laid in."""

from __future__ import annotations

import io
import re
from dataclasses import replace
from pathlib import Path

import pypdfium2
import pytest
from PIL import Image, ImageChops, ImageCms, ImageDraw
from pypdf import PdfReader

from report.small_visit import given, letter_of
from witnessmark.report import Letter, Prepared, begin_pdf, prepare, write_pdf
from witnessmark.report import pdf as pdf_module
from witnessmark.report.offsets import SplicingError
from witnessmark.report.pictures import foreseen, look_at
from witnessmark.report.splicing import splice, stand_in
from witnessmark.report.typesetting import typeset

PROFILE = ImageCms.ImageCmsProfile(ImageCms.createProfile("sRGB")).tobytes()


def painted(path: Path, size: tuple[int, int], colour: str, mode: str = "RGB", **extra: object) -> Path:
    image = Image.new(mode, size, "white")
    ImageDraw.Draw(image).ellipse((9, 9, size[0] - 9, size[1] - 9), fill=colour)
    image.save(path, "PNG" if path.suffix == ".png" else "JPEG", **extra)
    return path


def drawn(path: Path) -> list[Image.Image]:
    """The pages as PDFium draws them, at 40 pixels an inch."""
    with pypdfium2.PdfDocument(path) as document:
        return [page.render(scale=40 / 72).to_pil().convert("RGB") for page in document]


@pytest.fixture
def letter(tmp_path: Path) -> Letter:
    """Three pictures of different sizes, colours and profiles."""
    made = letter_of(given(tmp_path / "media"))
    exif = Image.Exif()
    exif[0x0112] = 6
    paths = [
        painted(tmp_path / "tall.jpg", (2400, 1600), "navy", exif=exif),
        painted(tmp_path / "grey.jpg", (800, 300), "gray", "L"),
        painted(tmp_path / "profile.png", (641, 480), "olive", icc_profile=PROFILE),
    ]
    rows = [replace(row, path=path) for row, path in zip(made.pictures, paths, strict=True)]
    return replace(made, pictures=tuple(rows))


@pytest.fixture
def ready(letter: Letter, tmp_path: Path) -> Prepared:
    made = prepare(letter, tmp_path / "prepared")
    assert made.problems == ()
    return made


def test_every_picture_arrives_byte_for_byte(letter: Letter, ready: Prepared, tmp_path: Path) -> None:
    write_pdf(letter, tmp_path / "report.pdf", prepared=ready)
    reader = PdfReader(tmp_path / "report.pdf", strict=True)
    held = {}
    for page in reader.pages:
        for thing in page.get("/Resources", {}).get_object().get("/XObject", {}).values():
            image = thing.get_object()
            if image["/Subtype"] == "/Image":
                held[image._data] = (image["/Width"], image["/Height"])
    files = {(ready.folder / name).read_bytes(): (w, h) for name, w, h in ready.files.values()}
    assert held == files


def test_every_offset_of_the_table_leads_to_its_object(letter: Letter, ready: Prepared, tmp_path: Path) -> None:
    # ISO 32000-1, 7.5.4: the offset of each object from the beginning of the file.
    write_pdf(letter, tmp_path / "report.pdf", prepared=ready)
    data = (tmp_path / "report.pdf").read_bytes()
    begins = int(re.findall(rb"startxref\n(\d+)\n%%EOF\n\Z", data)[0])
    rows = re.findall(rb"(\d{10}) (\d{5}) ([nf])", data[begins:])
    assert len(rows) > 500
    for number, (offset, _, kind) in enumerate(rows):
        if kind == b"n":
            assert data[int(offset) :].startswith(b"%d 0 obj" % number)


def test_the_pages_look_as_if_the_pictures_had_been_laid_in(letter: Letter, ready: Prepared, tmp_path: Path) -> None:
    looks = {sha256: look_at(ready.folder / row[0]) for sha256, row in ready.files.items()}
    whole = typeset(letter, looks, {sha256: ready.folder / row[0] for sha256, row in ready.files.items()})
    (tmp_path / "whole.pdf").write_bytes(whole.pdf)
    write_pdf(letter, tmp_path / "spliced.pdf", prepared=ready)
    pages = [drawn(tmp_path / f"{name}.pdf") for name in ("whole", "spliced")]
    assert len(pages[0]) == len(pages[1]) > 4
    for one, other in zip(*pages, strict=True):
        assert ImageChops.difference(one, other).getbbox() is None


def test_what_is_foreseen_is_what_is_made(letter: Letter, ready: Prepared) -> None:
    for row in letter.pictures:
        assert foreseen(row.path) == look_at(ready.folder / ready.files[row.sha256][0])


def test_pages_begun_before_the_pictures_are_ready_are_taken_up(letter: Letter, tmp_path: Path) -> None:
    begun = begin_pdf(letter)
    ready = prepare(letter, tmp_path / "prepared")
    assert write_pdf(letter, tmp_path / "begun.pdf", prepared=ready, begun=begun) == ()
    write_pdf(letter, tmp_path / "plain.pdf", prepared=ready)
    write_pdf(letter, tmp_path / "alone.pdf")
    plain = (tmp_path / "plain.pdf").read_bytes()
    assert (tmp_path / "begun.pdf").read_bytes() == plain
    assert (tmp_path / "alone.pdf").read_bytes() == plain
    other = begin_pdf(replace(letter, title="Another letter"))
    write_pdf(letter, tmp_path / "other.pdf", prepared=ready, begun=other)
    assert (tmp_path / "other.pdf").read_bytes() == plain


def test_a_picture_that_breaks_its_promise_is_told_in_words(letter: Letter, tmp_path: Path) -> None:
    first = letter.pictures[0].path
    first.write_bytes(first.read_bytes()[:700])  # the head is good, the picture is not there
    assert foreseen(first) is not None
    assert [problem.number for problem in write_pdf(letter, tmp_path / "report.pdf")] == ["WM803"]
    text = " ".join(page.extract_text() for page in PdfReader(tmp_path / "report.pdf").pages)
    assert "could not be shown" in " ".join(text.split())


def test_a_typesetter_that_builds_its_files_otherwise_gets_the_pictures_themselves(
    letter: Letter, ready: Prepared, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def refuse(*_args: object) -> bytes:
        raise SplicingError("planted")

    monkeypatch.setattr(pdf_module, "splice", refuse)
    assert write_pdf(letter, tmp_path / "report.pdf", prepared=ready) == ()
    data = (tmp_path / "report.pdf").read_bytes()
    assert all((ready.folder / name).read_bytes() in data for name, _, _ in ready.files.values())


def test_files_that_are_built_otherwise_are_noticed(letter: Letter, ready: Prepared) -> None:
    looks = {sha256: look_at(ready.folder / row[0]) for sha256, row in ready.files.items()}
    pdf = typeset(letter, looks).pdf
    for broken in (
        pdf.replace(b"/Filter/DCTDecode/Width 1", b"/Filter/DCTDecode/Xidth 1", 1),
        pdf.replace(b"startxref", b"startxxxx"),
        pdf + b"more after the end of the file, which nobody expects there at all, and which is not short",
        pdf[:-300] + pdf[-250:],
    ):
        with pytest.raises(SplicingError):
            splice(broken, lambda _sha256: (b"", 2, 2), set(looks))


def test_a_stand_in_is_tiny_and_bears_its_hash(ready: Prepared) -> None:
    sha256, (name, _, _) = next(iter(ready.files.items()))
    data = stand_in(sha256, look_at(ready.folder / name))
    assert sha256.encode() in data
    assert Image.open(io.BytesIO(data)).size == (1, 1)


def test_a_profile_for_other_colours_does_not_come_along(tmp_path: Path) -> None:
    # A four-colour photo becomes RGB: its profile would make the colours wrong, and the PDF no PDF/A.
    grey = ImageCms.ImageCmsProfile(ImageCms.createProfile("LAB")).tobytes()
    for number, profile in enumerate((grey, b"garbage" * 20, PROFILE[:-700])):
        path = painted(tmp_path / f"{number}.jpg", (300, 200), "navy", icc_profile=profile)
        look = foreseen(path)
        assert look is not None
        assert look.profile in {None, PROFILE[:-700]}
