"""Keys, and certificates by an invented authority, for tests of signatures."""

from __future__ import annotations

import datetime as dt
from dataclasses import dataclass

from cryptography import x509
from cryptography.hazmat.primitives.asymmetric import dsa, ec, ed25519, rsa
from cryptography.hazmat.primitives.hashes import SHA256
from cryptography.hazmat.primitives.serialization import (
    Encoding,
    KeySerializationEncryption,
    NoEncryption,
    PrivateFormat,
)
from cryptography.x509.oid import NameOID

from witnessmark.report.identity import SigningKey

__all__ = ["KEYS", "NOW", "Authority", "certificate_of", "invented_authority", "pem_of"]

#: When signatures of tests are made.
NOW = dt.datetime(2026, 2, 3, 19, 30, tzinfo=dt.UTC)
PLAIN = NoEncryption()


@dataclass(frozen=True)
class Authority:
    """A certificate authority of our own, for an inspector's certificate as one would buy it."""

    key: ec.EllipticCurvePrivateKey
    certificate: x509.Certificate


def certificate_of(
    key: SigningKey | dsa.DSAPrivateKey,
    name: str,
    by: Authority | None = None,
    *,
    years: tuple[int, int] = (2020, 2050),
    signs: bool = True,
    authority: bool = False,
) -> x509.Certificate:
    subject = x509.Name([x509.NameAttribute(NameOID.COMMON_NAME, name)])
    builder = (
        x509.CertificateBuilder()
        .subject_name(subject)
        .issuer_name(by.certificate.subject if by else subject)
        .public_key(key.public_key())
        .serial_number(x509.random_serial_number())
        .not_valid_before(dt.datetime(years[0], 1, 1, tzinfo=dt.UTC))
        .not_valid_after(dt.datetime(years[1], 1, 1, tzinfo=dt.UTC))
        .add_extension(x509.BasicConstraints(ca=authority, path_length=None), critical=True)
        .add_extension(
            x509.KeyUsage(
                digital_signature=signs, content_commitment=signs, key_encipherment=not signs, data_encipherment=False,
                key_agreement=False, key_cert_sign=authority, crl_sign=authority, encipher_only=False,
                decipher_only=False,
            ),
            critical=True,
        )
    )  # fmt: skip
    signer = by.key if by else key
    return builder.sign(signer, None if isinstance(signer, ed25519.Ed25519PrivateKey) else SHA256())


def invented_authority() -> Authority:
    key = ec.generate_private_key(ec.SECP256R1())
    return Authority(key, certificate_of(key, "Invented authority", authority=True))


def pem_of(key: SigningKey | dsa.DSAPrivateKey, encryption: KeySerializationEncryption = PLAIN) -> bytes:
    return key.private_bytes(Encoding.PEM, PrivateFormat.PKCS8, encryption)


KEYS: dict[str, SigningKey] = {
    "RSA": rsa.generate_private_key(65537, 2048),
    "P-256": ec.generate_private_key(ec.SECP256R1()),
    "P-384": ec.generate_private_key(ec.SECP384R1()),
    "Ed25519": ed25519.Ed25519PrivateKey.generate(),
}
