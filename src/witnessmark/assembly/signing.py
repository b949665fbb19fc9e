"""Signing the PDF of a report, and stamping it with a time: after it is issued, with whatever identity the user has.

The libraries for it are an extra (``pip install 'witnessmark[sign]'``) and are loaded only here.
"""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

from witnessmark.assembly import messages
from witnessmark.assembly.jobs import OpenJob
from witnessmark.assembly.keys import default_key_path
from witnessmark.problems import Refusal

__all__ = ["SignedPdf", "sign_report"]

#: Beside the key that seals records: PDF programs seldom know that kind of key.
_OWN = "pdf-identity.pem"


@dataclass(frozen=True, slots=True)
class SignedPdf:
    """What the PDF bears now: by whom and when, oldest first, and what the newest one shows."""

    path: Path
    bears: tuple[tuple[str, str, str], ...]
    shows: str

    def as_json(self) -> dict[str, object]:
        """Plain data for ``--json``."""
        bears = [{"sort": sort, "by": by, "at": at} for sort, by, at in self.bears]
        return {"pdf": str(self.path), "bears": bears, "shows": self.shows}


def sign_report(
    job: OpenJob,
    *,
    pdf: Path | None = None,
    key: Path | None = None,
    certificate: Path | None = None,
    password_file: Path | None = None,
    reason: str = "",
    stamp: str | None = None,
) -> SignedPdf:
    """Sign the PDF of the report of *job* (or *pdf*). Without *key*, with an identity of the program's own making.

    Raises:
        Refusal: WM930 without the extra, WM931 when there is no PDF yet, or numbers of the report. The PDF is then as it
            was.
    """
    try:
        from witnessmark.report.identity import own_identity, read_identity, read_password
        from witnessmark.report.signing import sign_pdf
    except ImportError as error:
        raise Refusal(messages.NO_SIGNER.at("the signing libraries", str(error))) from error
    path = pdf or job.folder / "report" / "report.pdf"
    if not path.is_file():
        raise Refusal(messages.NO_PDF_YET.at(str(path)))
    if key is None:
        identity = own_identity(default_key_path().with_name(_OWN), job.job.inspector or "inspector")
    else:
        identity = read_identity(key, certificate, password=read_password(password_file))
    made = sign_pdf(path, identity, reason=reason, stamp=stamp)
    bears = tuple(
        ("time stamp" if one.stamp else "signature", one.by, one.at.isoformat() if one.at else "") for one in made.bears
    )
    return SignedPdf(path, bears, made.shows)
