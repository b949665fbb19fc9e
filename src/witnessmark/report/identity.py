"""Who signs a PDF: a private key and the certificate that names its holder, from files of the user's or made here.

A certificate of the user's, issued by an authority that readers trust, shows who signed. A certificate that this program
makes for itself shows two things only: that the file was not changed since, and that the same key signed other files
that bear it. It does not show who holds the key; anybody can make one with any name.
"""

from __future__ import annotations

import os
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta
from pathlib import Path
from typing import TypeAlias

from cryptography import x509
from cryptography.exceptions import UnsupportedAlgorithm
from cryptography.hazmat.primitives.asymmetric import ec, ed25519, rsa
from cryptography.hazmat.primitives.hashes import SHA256
from cryptography.hazmat.primitives.serialization import (
    Encoding,
    NoEncryption,
    PrivateFormat,
    load_pem_private_key,
    pkcs12,
)
from cryptography.x509.oid import NameOID

from witnessmark.problems import Refusal
from witnessmark.report.messages import (
    CERTIFICATE_UNFIT,
    KEY_AND_CERTIFICATE_DIFFER,
    KEY_UNFIT,
    KEY_UNREADABLE,
    WRONG_PASSWORD,
)

__all__ = ["PASSWORD_VARIABLE", "Identity", "SigningKey", "own_identity", "read_identity", "read_password"]

SigningKey: TypeAlias = rsa.RSAPrivateKey | ec.EllipticCurvePrivateKey | ed25519.Ed25519PrivateKey

#: Holds the password of the signing key where no file does.
PASSWORD_VARIABLE = "WITNESSMARK_PASSWORD"  # noqa: S105 - the name of a variable, not a password
_FEWEST_BITS = 2048
_CURVES = (ec.SECP256R1, ec.SECP384R1, ec.SECP521R1)
#: A report is kept for years; a certificate of one's own that ends earlier would only make readers complain.
_YEARS = 10
_PEM = b"-----BEGIN "
_FAILURES = (ValueError, TypeError, UnsupportedAlgorithm)


@dataclass(frozen=True, slots=True)
class Identity:
    """A key that can sign, its certificate, and the certificates between that and the authority.

    Attributes:
        own: whether the certificate is signed with its own key, so that it shows nothing of who holds it.
    """

    key: SigningKey
    certificate: x509.Certificate
    chain: tuple[x509.Certificate, ...] = ()

    @property
    def own(self) -> bool:
        """Whether nobody but the key itself vouches for the certificate."""
        return self.certificate.issuer == self.certificate.subject

    @property
    def name(self) -> str:
        """The name in the certificate."""
        common = self.certificate.subject.get_attributes_for_oid(NameOID.COMMON_NAME)
        return str(common[0].value) if common else self.certificate.subject.rfc4514_string()


def read_password(file: Path | None = None) -> bytes | None:
    """The password of a signing key: the first line of *file*, else ``WITNESSMARK_PASSWORD``, else none.

    Raises:
        Refusal: WM832 when the file cannot be read.
    """
    if file is None:
        given = os.environ.get(PASSWORD_VARIABLE)
        return given.encode() if given else None
    try:
        return file.read_bytes().split(b"\n", 1)[0].rstrip(b"\r")
    except OSError as error:
        raise Refusal(WRONG_PASSWORD.at(str(file), str(error))) from error


def read_identity(key: Path, certificate: Path | None = None, *, password: bytes | None = None) -> Identity:
    """The key and certificate of the user's: PEM, or PKCS#12 with everything in one file.

    Args:
        key: the private key; a PEM file may hold the certificates too.
        certificate: the certificates (PEM, the signer's and those above it, in any order), unless *key* holds them.
        password: of the key, where it has one.

    Raises:
        Refusal: WM831 (no key there), WM832 (password), WM833 (key and certificate are not a pair), WM834 (the
            certificate is not for signing), WM835 (a kind of key that is not used here).
    """
    data = _bytes(key)
    if data.lstrip().startswith(_PEM):
        private, held = _from_pem(data, key, password)
    else:
        private, held = _from_pkcs12(data, key, password)
    if certificate is not None:
        held = _certificates(_bytes(certificate), certificate)
    signing = _usable(private, key)
    mine = [one for one in held if one.public_key() == signing.public_key()]
    if not mine:
        where = certificate or key
        raise Refusal(KEY_AND_CERTIFICATE_DIFFER.at(str(where), f"{len(held)} certificates, none for this key"))
    _for_signing(mine[0], certificate or key)
    return Identity(signing, mine[0], tuple(one for one in held if one is not mine[0]))


def own_identity(path: Path, name: str, *, at: datetime | None = None) -> Identity:
    """The identity in *path*; made there, when there is none, with a fresh ECDSA key (P-256) and *name*.

    The key that seals a record is another one (Ed25519): programs that show PDF files seldom know that kind.

    Raises:
        Refusal: WM831 when the file cannot be read or written; else as ``read_identity``.
    """
    if not path.exists():
        _make(path, name, at or datetime.now(UTC))
    return read_identity(path)


def _bytes(path: Path) -> bytes:
    try:
        return path.read_bytes()
    except OSError as error:
        raise Refusal(KEY_UNREADABLE.at(str(path), str(error))) from error


def _from_pem(data: bytes, path: Path, password: bytes | None) -> tuple[object, list[x509.Certificate]]:
    private: object
    try:
        try:
            private = load_pem_private_key(data, password)
        except TypeError as error:
            if password is None:
                raise Refusal(WRONG_PASSWORD.at(str(path), "it needs a password, and none was given")) from error
            private = load_pem_private_key(data, None)  # a password nobody asked for does no harm
    except _FAILURES as error:
        message = WRONG_PASSWORD if b"ENCRYPTED" in data else KEY_UNREADABLE
        raise Refusal(message.at(str(path), _short(error))) from error
    return private, _certificates(data, path) if b"BEGIN CERTIFICATE" in data else []


def _from_pkcs12(data: bytes, path: Path, password: bytes | None) -> tuple[object, list[x509.Certificate]]:
    try:
        bag = pkcs12.load_pkcs12(data, password)
    except _FAILURES as error:
        # A wrong password and a damaged file look the same from outside: the file's own check fails.
        message = WRONG_PASSWORD if "password" in str(error).lower() else KEY_UNREADABLE
        raise Refusal(message.at(str(path), _short(error))) from error
    if bag.key is None:
        raise Refusal(KEY_UNREADABLE.at(str(path), "it holds certificates and no private key"))
    held = [bag.cert, *bag.additional_certs]
    return bag.key, [one.certificate for one in held if one is not None]


def _certificates(data: bytes, path: Path) -> list[x509.Certificate]:
    try:
        return x509.load_pem_x509_certificates(data)
    except ValueError as error:
        raise Refusal(KEY_UNREADABLE.at(str(path), _short(error))) from error


def _short(error: Exception) -> str:
    return str(error).split("\n", maxsplit=1)[0][:120]


def _usable(private: object, path: Path) -> SigningKey:
    if isinstance(private, rsa.RSAPrivateKey):
        if private.key_size < _FEWEST_BITS:
            raise Refusal(KEY_UNFIT.at(str(path), f"RSA with {private.key_size} bits"))
    elif isinstance(private, ec.EllipticCurvePrivateKey):
        if not isinstance(private.curve, _CURVES):
            raise Refusal(KEY_UNFIT.at(str(path), f"the curve {private.curve.name}"))
    elif not isinstance(private, ed25519.Ed25519PrivateKey):
        raise Refusal(KEY_UNFIT.at(str(path), type(private).__name__.lstrip("_")))
    return private


def _for_signing(certificate: x509.Certificate, path: Path) -> None:
    """Refuse a certificate whose key usage (RFC 5280, 4.2.1.3) leaves out the signing of documents."""
    try:
        usage = certificate.extensions.get_extension_for_class(x509.KeyUsage).value
    except x509.ExtensionNotFound:
        return
    except ValueError as error:
        raise Refusal(CERTIFICATE_UNFIT.at(str(path), _short(error))) from error
    if not (usage.digital_signature or usage.content_commitment):
        raise Refusal(CERTIFICATE_UNFIT.at(str(path), "its key usage leaves out the signing of documents"))


def _make(path: Path, name: str, at: datetime) -> None:
    key = ec.generate_private_key(ec.SECP256R1())
    subject = x509.Name([x509.NameAttribute(NameOID.COMMON_NAME, name[:64] or "inspector")])
    usage = x509.KeyUsage(
        digital_signature=True, content_commitment=True, key_encipherment=False, data_encipherment=False,
        key_agreement=False, key_cert_sign=False, crl_sign=False, encipher_only=False, decipher_only=False,
    )  # fmt: skip
    certificate = (
        x509.CertificateBuilder()
        .subject_name(subject)
        .issuer_name(subject)
        .public_key(key.public_key())
        .serial_number(x509.random_serial_number())
        .not_valid_before(at - timedelta(days=1))
        .not_valid_after(at + timedelta(days=366 * _YEARS))
        .add_extension(x509.BasicConstraints(ca=False, path_length=None), critical=True)
        .add_extension(usage, critical=True)
        .add_extension(x509.SubjectKeyIdentifier.from_public_key(key.public_key()), critical=False)
        .sign(key, SHA256())
    )
    pem = key.private_bytes(Encoding.PEM, PrivateFormat.PKCS8, NoEncryption())
    try:
        path.parent.mkdir(parents=True, exist_ok=True, mode=0o700)
        # Made with its final rights, so that it is never readable by others, not even for a moment.
        with os.fdopen(os.open(path, os.O_WRONLY | os.O_CREAT | os.O_EXCL, 0o600), "wb") as file:
            file.write(pem + certificate.public_bytes(Encoding.PEM))
    except OSError as error:
        raise Refusal(KEY_UNREADABLE.at(str(path), str(error))) from error
