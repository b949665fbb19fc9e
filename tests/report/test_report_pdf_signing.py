"""Signatures and time stamps: what other programs say of them, and that a failure leaves the PDF as it was."""

from __future__ import annotations

import asyncio
import re
import subprocess
from pathlib import Path

import pytest
from cryptography.hazmat.primitives.serialization import (
    Encoding,
)
from pyhanko.pdf_utils.reader import PdfFileReader
from pyhanko.sign.validation import validate_pdf_signature
from pyhanko_certvalidator import ValidationContext
from pypdf import PdfReader, PdfWriter

from report.certificates import KEYS, NOW, Authority, certificate_of, invented_authority, pem_of
from report.small_visit import given, letter_of
from report.stamp_service import STAMPED, stamp_service, write_authority
from witnessmark.problems import Refusal
from witnessmark.report import Letter, write_pdf
from witnessmark.report.identity import Identity, own_identity, read_identity
from witnessmark.report.signatures import apart, borne, sound
from witnessmark.report.signing import sign_pdf, signature_stays, stamp_pdf


@pytest.fixture(scope="module")
def letter(tmp_path_factory: pytest.TempPathFactory) -> Letter:
    return letter_of(given(tmp_path_factory.mktemp("media")))


@pytest.fixture(scope="module")
def unsigned(letter: Letter, tmp_path_factory: pytest.TempPathFactory) -> bytes:
    path = tmp_path_factory.mktemp("unsigned") / "report.pdf"
    write_pdf(letter, path)
    return path.read_bytes()


@pytest.fixture
def pdf(unsigned: bytes, tmp_path: Path) -> Path:
    path = tmp_path / "report.pdf"
    path.write_bytes(unsigned)
    return path


@pytest.fixture(scope="module")
def authority() -> Authority:
    return invented_authority()


def identity_of(kind: str, authority: Authority, folder: Path) -> Identity:
    key = KEYS[kind]
    path = folder / "key.pem"
    chain = certificate_of(key, "Odd Quayle", authority).public_bytes(Encoding.PEM)
    path.write_bytes(pem_of(key) + chain + authority.certificate.public_bytes(Encoding.PEM))
    return read_identity(path)


def taken_apart(pdf: Path, folder: Path) -> list[tuple[Path, Path]]:
    """Each signature of the file as DER, and the bytes it covers, found with nothing but the file's own words."""
    data = pdf.read_bytes()
    found = []
    for number, match in enumerate(re.finditer(rb"/ByteRange \[(\d+) (\d+) (\d+) (\d+)\]", data)):
        start, length, again, rest = map(int, match.groups())
        assert start == 0
        signature = bytes.fromhex(data[length + 1 : again - 1].decode()).rstrip(b"\0")
        # The reserved room is filled up with zeros; the first object in it states its own length (ITU-T X.690, 8.1.3).
        size = 4 + int.from_bytes(signature[2:4])
        der, content = folder / f"{number}.der", folder / f"{number}.bin"
        der.write_bytes(signature.ljust(size, b"\0")[:size])
        content.write_bytes(data[:length] + data[again : again + rest])
        found.append((der, content))
    return found


def openssl(*words: object) -> subprocess.CompletedProcess[str]:
    return subprocess.run(["openssl", *map(str, words)], capture_output=True, text=True, check=False)


def cms_verify(der: Path, content: Path, trusted: Path) -> subprocess.CompletedProcess[str]:
    return openssl(
        "cms", "-verify", "-binary", "-inform", "DER", "-in", der, "-content", content, "-CAfile", trusted,
        "-purpose", "any", "-out", "/dev/null",
    )  # fmt: skip


@pytest.mark.parametrize("kind", KEYS)
def test_a_library_of_pdf_signatures_trusts_it_through_its_authority(
    kind: str, authority: Authority, pdf: Path, unsigned: bytes, tmp_path: Path
) -> None:
    # Reference: pyHanko's validation, ISO 32000-1 12.8 and RFC 5280, with the authority as the one trusted root.
    signed = sign_pdf(pdf, identity_of(kind, authority, tmp_path), reason="Issued", at=NOW)
    assert signed.shows == "Signed as Odd Quayle, vouched for by CN=Invented authority."
    assert pdf.read_bytes().startswith(unsigned)
    from asn1crypto import x509 as asn1  # type: ignore[import-untyped] # it ships no types

    root = asn1.Certificate.load(authority.certificate.public_bytes(Encoding.DER))
    with pdf.open("rb") as file:
        (one,) = PdfFileReader(file).embedded_signatures
        known = ValidationContext(trust_roots=[root], allow_fetching=False, moment=NOW)
        status = apart(lambda: validate_pdf_signature(one, known))
        assert status.bottom_line
        assert status.trusted
        assert one.self_reported_timestamp == NOW
        assert str(one.sig_object["/SubFilter"]) == "/ETSI.CAdES.detached"
        assert str(one.sig_object["/Reason"]) == "Issued"


@pytest.mark.parametrize("kind", ["RSA", "P-256", "P-384"])
def test_openssl_verifies_it_and_rejects_a_changed_byte(
    kind: str, authority: Authority, pdf: Path, tmp_path: Path
) -> None:
    # Reference: OpenSSL's cms command (RFC 5652).
    sign_pdf(pdf, identity_of(kind, authority, tmp_path), at=NOW)
    trusted = tmp_path / "authority.pem"
    trusted.write_bytes(authority.certificate.public_bytes(Encoding.PEM))
    ((der, content),) = taken_apart(pdf, tmp_path)
    assert cms_verify(der, content, trusted).returncode == 0, cms_verify(der, content, trusted).stderr
    data = bytearray(content.read_bytes())
    data[len(data) // 3] ^= 1
    content.write_bytes(data)
    assert cms_verify(der, content, trusted).returncode != 0


def test_a_certificate_of_our_own_says_plainly_what_it_shows(pdf: Path, tmp_path: Path) -> None:
    mine = tmp_path / "keys" / "own.pem"
    signed = sign_pdf(pdf, own_identity(mine, "Odd Quayle", at=NOW), at=NOW)
    assert "does not show who holds the key" in signed.shows
    assert mine.stat().st_mode & 0o777 == 0o600
    kept = mine.read_bytes()
    assert own_identity(mine, "Somebody Else").name == "Odd Quayle"
    assert mine.read_bytes() == kept
    ((der, content),) = taken_apart(pdf, tmp_path)
    assert cms_verify(der, content, mine).returncode == 0, cms_verify(der, content, mine).stderr
    another = tmp_path / "another.pem"
    own_identity(another, "Odd Quayle", at=NOW)
    assert cms_verify(der, content, another).returncode != 0


def test_the_bytes_before_a_signature_are_the_same_for_the_same_letter(
    letter: Letter, unsigned: bytes, tmp_path: Path
) -> None:
    mine = own_identity(tmp_path / "own.pem", "Odd Quayle", at=NOW)
    for name in ("one.pdf", "two.pdf"):
        write_pdf(letter, tmp_path / name)
        assert (tmp_path / name).read_bytes() == unsigned
        sign_pdf(tmp_path / name, mine, at=NOW)
        assert (tmp_path / name).read_bytes()[: len(unsigned)] == unsigned


def test_writing_the_same_letter_again_keeps_its_signature_and_another_letter_does_not(
    letter: Letter, pdf: Path, tmp_path: Path
) -> None:
    sign_pdf(pdf, own_identity(tmp_path / "own.pem", "Odd Quayle", at=NOW), at=NOW)
    signed = pdf.read_bytes()
    write_pdf(letter, pdf)
    assert pdf.read_bytes() == signed
    other = letter_of(given(tmp_path / "media", blocked=False))
    write_pdf(other, pdf)
    assert not sound(pdf.read_bytes())


def test_whatever_else_was_added_after_a_signature_does_not_stay(
    letter: Letter, unsigned: bytes, pdf: Path, tmp_path: Path
) -> None:
    sign_pdf(pdf, own_identity(tmp_path / "own.pem", "Odd Quayle", at=NOW), at=NOW)
    changed = PdfWriter(pdf, incremental=True)
    changed.pages[0].rotate(90)
    changed.write(pdf)
    data = pdf.read_bytes()
    assert data.startswith(unsigned)
    assert not sound(data)
    assert not signature_stays(pdf, unsigned)
    write_pdf(letter, pdf)
    assert pdf.read_bytes() == unsigned


def test_a_time_stamp_goes_into_the_signature_and_the_service_is_asked_once(pdf: Path, tmp_path: Path) -> None:
    mine = own_identity(tmp_path / "own.pem", "Odd Quayle", at=NOW)
    with stamp_service() as service:
        signed = sign_pdf(pdf, mine, stamp=service.address, at=NOW)
        assert len(service.asked) == 1
        # What is asked is a hash and a number: nothing of the report leaves the machine.
        assert len(service.asked[0]) < 120
        sign_pdf(pdf, mine, at=NOW)
        assert len(service.asked) == 1
    assert signed.bears[0].stamped == STAMPED
    assert str(STAMPED) in signed.shows


def test_a_later_time_stamp_keeps_the_signature_valid(pdf: Path, tmp_path: Path) -> None:
    # Reference: OpenSSL's cms and ts commands (RFC 3161).
    own = tmp_path / "own.pem"
    sign_pdf(pdf, own_identity(own, "Odd Quayle", at=NOW), at=NOW)
    with stamp_service() as service:
        stamped = stamp_pdf(pdf, service.address)
    assert [one.stamp for one in stamped.bears] == [False, True]
    assert "Invented time" in stamped.shows
    assert all(one.intact and one.whole for one in borne(pdf.read_bytes()))
    (signature, signed), (token, covered) = taken_apart(pdf, tmp_path)
    assert cms_verify(signature, signed, own).returncode == 0
    authority = write_authority(tmp_path / "time.pem")
    verify = ("ts", "-verify", "-data", covered, "-in", token, "-token_in", "-CAfile", authority)
    assert openssl(*verify).returncode == 0, openssl(*verify).stderr
    covered.write_bytes(covered.read_bytes() + b" ")
    assert openssl(*verify).returncode != 0


def test_an_unsigned_file_can_be_stamped_and_one_can_be_signed_twice(pdf: Path, tmp_path: Path) -> None:
    mine = own_identity(tmp_path / "own.pem", "Odd Quayle", at=NOW)
    with stamp_service() as service:
        stamp_pdf(pdf, service.address)
    sign_pdf(pdf, mine, at=NOW)
    sign_pdf(pdf, mine, at=NOW)
    found = borne(pdf.read_bytes())
    assert [one.field for one in found] == ["Time stamp 1", "Signature 1", "Signature 2"]
    assert all(one.intact and one.whole for one in found)


@pytest.mark.parametrize(
    ("way", "number"),
    [
        ("of another file", "WM837"), ("of another question", "WM837"), ("a refusal", "WM837"),
        ("a forged signature", "WM837"), ("noise", "WM837"), ("nothing", "WM837"), ("half an answer", "WM837"),
        ("a page", "WM837"), ("too much", "WM837"), ("an error", "WM836"), ("elsewhere", "WM836"),
    ],
)  # fmt: skip
def test_a_service_that_answers_badly_leaves_the_file_as_it_was(
    way: str, number: str, pdf: Path, unsigned: bytes, tmp_path: Path
) -> None:
    mine = own_identity(tmp_path / "own.pem", "Odd Quayle", at=NOW)
    with stamp_service(way) as service:
        with pytest.raises(Refusal) as signing:
            sign_pdf(pdf, mine, stamp=service.address, at=NOW)
        assert pdf.read_bytes() == unsigned
        with pytest.raises(Refusal) as stamping:
            stamp_pdf(pdf, service.address)
        assert pdf.read_bytes() == unsigned
    for caught in (signing, stamping):
        assert [problem.number for problem in caught.value.problems] == [number]
    assert list(tmp_path.glob(".*")) == []


@pytest.mark.parametrize(
    "address", ["", "stamp", "ftp://localhost/", "file:///etc/hostname", "http://", "http://127.0.0.1:1/", "http://[::"]
)
def test_a_service_that_is_not_there_leaves_the_file_as_it_was(address: str, pdf: Path, unsigned: bytes) -> None:
    with pytest.raises(Refusal, match="WM836"):
        stamp_pdf(pdf, address, patience=2)
    assert pdf.read_bytes() == unsigned


def test_a_service_that_never_answers_is_given_up(pdf: Path, unsigned: bytes) -> None:
    import socket

    with socket.socket() as silent:
        silent.bind(("127.0.0.1", 0))
        silent.listen()
        with pytest.raises(Refusal, match="WM836"):
            stamp_pdf(pdf, f"http://127.0.0.1:{silent.getsockname()[1]}/", patience=0.2)
    assert pdf.read_bytes() == unsigned


@pytest.mark.parametrize("data", [b"", b"%PDF-1.7\n", b"no pdf at all", b"%PDF-1.7\n%%EOF\n"])
def test_what_is_no_pdf_is_refused_and_stays(data: bytes, tmp_path: Path) -> None:
    mine = own_identity(tmp_path / "own.pem", "Odd Quayle", at=NOW)
    path = tmp_path / "report.pdf"
    path.write_bytes(data)
    with pytest.raises(Refusal, match="WM830"):
        sign_pdf(path, mine, at=NOW)
    assert path.read_bytes() == data
    assert not sound(data)
    with pytest.raises(Refusal, match="WM830"):
        sign_pdf(tmp_path / "gone.pdf", mine, at=NOW)


def test_a_file_cut_in_the_middle_is_refused_and_stays(pdf: Path, unsigned: bytes, tmp_path: Path) -> None:
    mine = own_identity(tmp_path / "own.pem", "Odd Quayle", at=NOW)
    pdf.write_bytes(unsigned[: len(unsigned) // 2])
    with pytest.raises(Refusal, match="WM830"):
        sign_pdf(pdf, mine, at=NOW)
    assert len(pdf.read_bytes()) == len(unsigned) // 2


def test_it_can_be_signed_from_inside_an_event_loop(pdf: Path, tmp_path: Path) -> None:
    mine = own_identity(tmp_path / "own.pem", "Odd Quayle", at=NOW)

    async def serve() -> None:
        sign_pdf(pdf, mine, at=NOW)

    asyncio.run(serve())
    assert sound(pdf.read_bytes())


def test_the_attached_data_are_still_there_after_signing(pdf: Path, tmp_path: Path) -> None:
    before = PdfReader(pdf).attachments["report.json"]
    sign_pdf(pdf, own_identity(tmp_path / "own.pem", "Odd Quayle", at=NOW), at=NOW)
    assert PdfReader(pdf).attachments["report.json"] == before
