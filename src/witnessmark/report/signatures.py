"""Which signatures and time stamps a PDF bears, and whether the file is still what each of them covers.

This says that nothing was changed and with which certificate it was signed. Whether that certificate is to be trusted is
for the reader to say, whose program knows the authorities.
"""

from __future__ import annotations

import logging
import warnings
from collections.abc import Callable
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass
from datetime import datetime
from io import BytesIO
from typing import TypeVar

from pyhanko.pdf_utils.misc import PdfError
from pyhanko.pdf_utils.reader import PdfFileReader
from pyhanko.sign.diff_analysis import ModificationLevel
from pyhanko.sign.general import SigningError
from pyhanko.sign.validation import (
    EmbeddedPdfSignature,
    SignatureCoverageLevel,
    validate_pdf_signature,
    validate_pdf_timestamp,
)
from pyhanko.sign.validation.errors import SignatureValidationError
from pyhanko.sign.validation.status import SignatureStatus
from pyhanko_certvalidator import ValidationContext

__all__ = ["FAILURES", "Borne", "apart", "borne", "sound"]

T = TypeVar("T")

#: What reading a file that is no proper PDF can raise.
FAILURES = (
    PdfError, SigningError, SignatureValidationError, ValueError, TypeError, KeyError, IndexError, AttributeError, OSError,
    NotImplementedError, RecursionError,
)  # fmt: skip
#: What may have come after a signature: nothing, or more signatures and time stamps.
_HARMLESS = frozenset({ModificationLevel.NONE, ModificationLevel.LTA_UPDATES, ModificationLevel.FORM_FILLING})

# The library logs at length that nobody is trusted, which is not asked here; whoever wants to read that can.
for _name in ("pyhanko", "pyhanko_certvalidator"):
    logging.getLogger(_name).addHandler(logging.NullHandler())


@dataclass(frozen=True, slots=True)
class Borne:
    """A signature or document time stamp that a PDF bears.

    Attributes:
        field: name of its field.
        by: who signed, as the certificate says.
        at: when: as the signer said, or as the service said for a time stamp; None when neither did.
        stamp: whether it is a time stamp of the whole file rather than a person's signature.
        stamped: when a service said that the signature was there; None for a signature without a time stamp.
        intact: whether what it covers is as it was signed, the time stamp in it included.
        whole: whether what came after it are only further signatures and time stamps.
    """

    field: str
    by: str
    at: datetime | None
    stamp: bool
    stamped: datetime | None
    intact: bool
    whole: bool


def apart(work: Callable[[], T]) -> T:
    """The work done in a thread of its own: the library runs an event loop, and the caller may be running one.

    The library also warns of machines that state no time zone, though no time of theirs is used here.
    """

    def quiet() -> T:
        with warnings.catch_warnings():
            warnings.simplefilter("ignore")
            return work()

    with ThreadPoolExecutor(1) as alone:
        return alone.submit(quiet).result()


def borne(data: bytes, *, changes: bool = True) -> tuple[Borne, ...]:
    """The signatures and time stamps of a PDF, in the order they were made.

    *changes* False leaves out what came after each signature, which takes seconds in a file that bears several:
    ``whole`` then says only whether it covers the file up to its own end.

    Raises:
        ValueError: the bytes are no PDF that can be read.
    """

    def read() -> tuple[Borne, ...]:
        reader = PdfFileReader(BytesIO(data))
        return tuple(_told(one, changes=changes) for one in reader.embedded_signatures)

    try:
        return apart(read)
    except FAILURES as error:
        raise ValueError(str(error)) from error


def sound(data: bytes) -> bool:
    """Whether the PDF bears at least one signature or time stamp, and all of them are intact and whole."""
    try:
        found = borne(data)
    except ValueError:
        return False
    return bool(found) and all(one.intact and one.whole for one in found)


def _told(one: EmbeddedPdfSignature, *, changes: bool) -> Borne:
    """What one signature says, without asking anybody on the network and without a word on trust."""
    nobody = ValidationContext(trust_roots=[], allow_fetching=False)
    stamp = str(one.sig_object_type) == "/DocTimeStamp"
    at = stamped = None
    status: SignatureStatus
    if stamp:
        status = told = validate_pdf_timestamp(one, validation_context=nobody, skip_diff=not changes)
        at, token = told.timestamp, True
    else:
        status = signed = validate_pdf_signature(
            one, signer_validation_context=nobody, ts_validation_context=nobody, skip_diff=not changes
        )
        inner = signed.timestamp_validity
        at, stamped = one.self_reported_timestamp, None if inner is None else inner.timestamp
        token = inner is None or (inner.intact and inner.valid)
    name = one.signer_cert.subject.native.get("common_name") or one.signer_cert.subject.human_friendly
    return Borne(
        field=one.field_name,
        by=str(name),
        at=at,
        stamp=stamp,
        stamped=stamped,
        intact=bool(status.intact and status.valid and token),
        whole=_only_signed_since(one, changes=changes),
    )


def _only_signed_since(one: EmbeddedPdfSignature, *, changes: bool) -> bool:
    """Whether it covers the whole file, or the whole of a revision after which only signatures were added."""
    coverage: SignatureCoverageLevel | None = one.coverage
    if coverage is SignatureCoverageLevel.ENTIRE_FILE:
        return True
    if coverage is SignatureCoverageLevel.ENTIRE_REVISION and not changes:
        return True
    level = getattr(one.diff_result, "modification_level", ModificationLevel.OTHER)
    return coverage is SignatureCoverageLevel.ENTIRE_REVISION and level in _HARMLESS
