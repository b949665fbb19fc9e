"""Signing a PDF, and stamping it with a time: both are added after its last byte, which leaves what was there as it was.

The form is PAdES (ETSI EN 319 142-1), baseline B-B, or B-T with a time stamp in the signature. A file is replaced only
once the signed one was read back and found sound.
"""

from __future__ import annotations

import asyncio
from collections.abc import Callable, Coroutine
from dataclasses import dataclass
from datetime import UTC, datetime
from io import BytesIO
from pathlib import Path
from typing import TYPE_CHECKING

from asn1crypto import keys  # type: ignore[import-untyped] # it ships no types
from asn1crypto import x509 as asn1
from cryptography import x509
from cryptography.hazmat.primitives.asymmetric.ed25519 import Ed25519PrivateKey
from cryptography.hazmat.primitives.serialization import Encoding, NoEncryption, PrivateFormat
from pyhanko.pdf_utils.incremental_writer import IncrementalPdfFileWriter
from pyhanko.pdf_utils.reader import PdfFileReader
from pyhanko.sign import PdfSignatureMetadata, PdfSigner, PdfTimeStamper, SimpleSigner
from pyhanko.sign.fields import InvisSigSettings, SigFieldSpec, SigSeedSubFilter
from pyhanko.sign.signers.constants import ESIC_EXTENSION_1
from pyhanko_certvalidator.registry import SimpleCertificateStore

from witnessmark.problems import Refusal
from witnessmark.report.data import replace_file
from witnessmark.report.identity import Identity
from witnessmark.report.messages import CANNOT_SIGN, CERTIFICATE_UNFIT
from witnessmark.report.signatures import FAILURES, Borne, apart, borne
from witnessmark.report.stamping import PATIENCE, Service

if TYPE_CHECKING:
    from pyhanko.pdf_utils.writer import BasePdfFileWriter
    from pyhanko.sign.signers.pdf_signer import PdfSigningSession

__all__ = ["Signed", "sign_pdf", "signature_stays", "stamp_pdf"]

_DIGEST = "sha256"
#: Hexadecimal digits kept free for a token with its certificates. Without it the service would be asked twice, the first
#: time only to learn the size of its answer.
_ROOM = 2 * 16384
#: A field of no size outside the page: PDF/A wants it printable, PDF/UA wants it tagged or off the page.
_UNSEEN = InvisSigSettings(set_print_flag=True, set_hidden_flag=False, box_out_of_bounds=True)


@dataclass(frozen=True, slots=True)
class Signed:
    """What a PDF bears now: its signatures and time stamps in order, the newest last, and what the newest one shows."""

    path: Path
    bears: tuple[Borne, ...]
    shows: str


class _Signer(PdfSigner):
    """Signs at a given time, and leaves the file a PDF 1.7, as ISO 19005-3 has it (elliptic curves would make it a 2.0)."""

    at: datetime

    def register_extensions(self, pdf_out: BasePdfFileWriter, *, md_algorithm: str) -> None:
        """State the extension that PAdES asks for in a PDF 1.7, whatever *md_algorithm* is."""
        del md_algorithm
        pdf_out.register_extension(ESIC_EXTENSION_1)

    def init_signing_session(self, pdf_out: BasePdfFileWriter, existing_fields_only: bool = False) -> PdfSigningSession:
        """The session, with its clock set."""
        session = super().init_signing_session(pdf_out, existing_fields_only)
        session.system_time = self.at
        return session


def sign_pdf(
    path: Path,
    identity: Identity,
    *,
    reason: str = "",
    stamp: str | None = None,
    at: datetime | None = None,
    patience: float = PATIENCE,
) -> Signed:
    """Sign the PDF at *path*; it begins with the same bytes afterwards.

    Args:
        path: the PDF.
        identity: who signs (``read_identity``, ``own_identity``).
        reason: why it is signed, shown by PDF readers.
        stamp: address of an RFC 3161 service whose time stamp goes into the signature; nothing is asked unless given.
        at: the time the signer states; now unless given.
        patience: seconds to wait for the service.

    Raises:
        Refusal: WM830 (not a PDF that can be signed), WM834 (certificate not valid at that time), WM836 or WM837 (no
            time stamp), WM809 (the place does not take the file). The PDF is then as it was.
    """
    moment = (at or datetime.now(UTC)).astimezone(UTC)
    _valid_then(identity, moment)
    service = Service(stamp, patience=patience) if stamp else None
    bears = _add(path, lambda data: _sign(data, identity, reason, service, moment))
    return Signed(path, bears, _shows(identity, bears[-1]))


def stamp_pdf(path: Path, stamp: str, *, patience: float = PATIENCE) -> Signed:
    """Add a time stamp over the whole PDF as it is, signed or not; signatures in it stay valid.

    Raises:
        Refusal: WM830, WM836, WM837 or WM809, as ``sign_pdf``. The PDF is then as it was.
    """
    service = Service(stamp, patience=patience)
    bears = _add(path, lambda data: _stamp(data, service))
    return Signed(path, bears, f"The service {bears[-1].by} states that this file was there at {bears[-1].at}.")


def signature_stays(path: Path, unsigned: bytes) -> bool:
    """Whether the file at *path* is these very bytes with nothing but sound signatures and time stamps added."""
    try:
        data = path.read_bytes()
    except OSError:
        return False
    if len(data) <= len(unsigned) or not data.startswith(unsigned):
        return False
    try:
        found = borne(data)
    except ValueError:
        return False
    return bool(found) and all(one.intact and one.whole for one in found)


def _add(path: Path, change: Callable[[bytes], Coroutine[None, None, bytes]]) -> tuple[Borne, ...]:
    """The file with a signature more, written only once that was read back and found sound."""
    try:
        before = path.read_bytes()
    except OSError as error:
        raise Refusal(CANNOT_SIGN.at(str(path), str(error))) from error
    if not before.endswith(b"\n"):
        before += b"\n"  # what is added must begin on a line of its own (ISO 19005-3, 6.1.9)
    try:
        data = apart(lambda: asyncio.run(change(before)))
        bears = borne(data, changes=False)
    except Refusal:
        raise
    except FAILURES as error:
        raise Refusal(CANNOT_SIGN.at(str(path), f"{type(error).__name__}: {error}")) from error
    broken = [one.field for one in bears if not (one.intact and one.whole)]
    if broken or not data.startswith(before):
        raise Refusal(CANNOT_SIGN.at(str(path), f"it would not be sound afterwards: {', '.join(broken) or 'changed'}"))
    replace_file(path, data)
    return bears


async def _sign(data: bytes, identity: Identity, reason: str, service: Service | None, at: datetime) -> bytes:
    writer = IncrementalPdfFileWriter(BytesIO(data))
    field = _free_field(writer.prev, "Signature")
    about = PdfSignatureMetadata(
        field_name=field,
        # An Ed25519 signature goes with SHA-512 (RFC 8419, 3.1).
        md_algorithm="sha512" if isinstance(identity.key, Ed25519PrivateKey) else _DIGEST,
        subfilter=SigSeedSubFilter.PADES,
        name=identity.name,
        reason=reason or None,
    )
    spec = SigFieldSpec(field, on_page=0, readable_field_name="Signature", invis_sig_settings=_UNSEEN)
    signer = _Signer(about, _pen(identity), timestamper=service, new_field_spec=spec)
    signer.at = at
    signed: BytesIO = await signer.async_sign_pdf(writer, bytes_reserved=_ROOM if service else None)
    return signed.getvalue()


async def _stamp(data: bytes, service: Service) -> bytes:
    writer = IncrementalPdfFileWriter(BytesIO(data))
    stamper = PdfTimeStamper(service, field_name=_free_field(writer.prev, "Time stamp"), invis_settings=_UNSEEN)
    stamped: BytesIO = await stamper.async_timestamp_pdf(writer, _DIGEST, bytes_reserved=_ROOM)
    return stamped.getvalue()


def _free_field(reader: PdfFileReader, name: str) -> str:
    taken = {one.field_name for one in reader.embedded_signatures}
    return next(f"{name} {n}" for n in range(1, len(taken) + 2) if f"{name} {n}" not in taken)


def _pen(identity: Identity) -> SimpleSigner:
    known = SimpleCertificateStore()  # type: ignore[no-untyped-call] # so the library has it
    known.register_multiple(_asn1(one) for one in identity.chain)
    secret = identity.key.private_bytes(Encoding.DER, PrivateFormat.PKCS8, NoEncryption())
    return SimpleSigner(_asn1(identity.certificate), keys.PrivateKeyInfo.load(secret), known)


def _asn1(certificate: x509.Certificate) -> asn1.Certificate:
    return asn1.Certificate.load(certificate.public_bytes(Encoding.DER))


def _valid_then(identity: Identity, at: datetime) -> None:
    first, last = identity.certificate.not_valid_before_utc, identity.certificate.not_valid_after_utc
    if not first <= at <= last:
        detail = f"valid from {first:%Y-%m-%d} to {last:%Y-%m-%d}, to be used on {at:%Y-%m-%d}"
        raise Refusal(CERTIFICATE_UNFIT.at(identity.name, detail))


def _shows(identity: Identity, newest: Borne) -> str:
    """In words, what the signature shows and what it does not."""
    if identity.own:
        words = (
            f"Signed as {identity.name} with a certificate that this program made for itself. It shows that the file was "
            "not changed since, and that the same key signed other files that bear it; it does not show who holds the key."
        )
    else:
        words = f"Signed as {identity.name}, vouched for by {identity.certificate.issuer.rfc4514_string()}."
    if newest.stamped is not None:
        words += f" A time-stamp service states that it was there at {newest.stamped}."
    return words
