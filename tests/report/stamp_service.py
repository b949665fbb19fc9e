"""A time-stamp service of our own on this machine (RFC 3161 over HTTP), which can also misbehave on purpose."""

from __future__ import annotations

import datetime as dt
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from functools import cache
from http.server import BaseHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path
from threading import Thread

from asn1crypto import keys, tsp  # type: ignore[import-untyped] # it ships no types
from asn1crypto import x509 as asn1
from cryptography import x509
from cryptography.hazmat.primitives.asymmetric import rsa
from cryptography.hazmat.primitives.hashes import SHA256
from cryptography.hazmat.primitives.serialization import Encoding, NoEncryption, PrivateFormat
from cryptography.x509.oid import ExtendedKeyUsageOID, NameOID
from pyhanko.sign.timestamps import DummyTimeStamper

__all__ = ["STAMPED", "StampService", "stamp_service", "write_authority"]

#: What the service's clock says.
STAMPED = dt.datetime(2026, 3, 4, 5, 6, 7, tzinfo=dt.UTC)
_REPLY = "application/timestamp-reply"
#: Status, kind and body of an answer.
Answer = tuple[int, str, bytes]


@cache
def _authority() -> tuple[x509.Certificate, rsa.RSAPrivateKey]:
    key = rsa.generate_private_key(65537, 2048)
    name = x509.Name([x509.NameAttribute(NameOID.COMMON_NAME, "Invented time")])
    certificate = (
        x509.CertificateBuilder()
        .subject_name(name)
        .issuer_name(name)
        .public_key(key.public_key())
        .serial_number(x509.random_serial_number())
        .not_valid_before(dt.datetime(2020, 1, 1, tzinfo=dt.UTC))
        .not_valid_after(dt.datetime(2120, 1, 1, tzinfo=dt.UTC))
        # RFC 3161, 2.3: the certificate has this one extended key usage, marked critical.
        .add_extension(x509.ExtendedKeyUsage([ExtendedKeyUsageOID.TIME_STAMPING]), critical=True)
        .sign(key, SHA256())
    )
    return certificate, key


def write_authority(path: Path) -> Path:
    """The service's certificate as a PEM file."""
    path.write_bytes(_authority()[0].public_bytes(Encoding.PEM))
    return path


def _stamper() -> DummyTimeStamper:
    certificate, key = _authority()
    secret = key.private_bytes(Encoding.DER, PrivateFormat.PKCS8, NoEncryption())
    return DummyTimeStamper(
        asn1.Certificate.load(certificate.public_bytes(Encoding.DER)), keys.PrivateKeyInfo.load(secret), fixed_dt=STAMPED
    )  # fmt: skip


def _good(asked: bytes) -> Answer:
    return 200, _REPLY, _stamper().request_tsa_response(tsp.TimeStampReq.load(asked)).dump()


def _of_another_file(asked: bytes) -> Answer:
    request = tsp.TimeStampReq.load(asked)
    request["message_imprint"]["hashed_message"] = b"\1" * 32
    return 200, _REPLY, _stamper().request_tsa_response(request).dump()


def _of_another_question(asked: bytes) -> Answer:
    request = tsp.TimeStampReq.load(asked)
    request["nonce"] = 7
    return 200, _REPLY, _stamper().request_tsa_response(request).dump()


def _refusal(_asked: bytes) -> Answer:
    status = tsp.PKIStatusInfo({"status": "rejection", "status_string": ["no more today"]}).dump()
    return 200, _REPLY, b"\x30" + bytes([len(status)]) + status  # a sequence of the status alone (RFC 3161, 2.4.2)


def _forged(asked: bytes) -> Answer:
    answer = _stamper().request_tsa_response(tsp.TimeStampReq.load(asked))
    signer = answer["time_stamp_token"]["content"]["signer_infos"][0]
    signer["signature"] = bytes(reversed(signer["signature"].native))
    return 200, _REPLY, answer.dump(force=True)


#: Each way to answer, by its name.
WAYS: dict[str, Callable[[bytes], Answer]] = {
    "good": _good,
    "of another file": _of_another_file,
    "of another question": _of_another_question,
    "a refusal": _refusal,
    "a forged signature": _forged,
    "noise": lambda _asked: (200, _REPLY, b"\x30\x82garbage" * 40),
    "nothing": lambda _asked: (200, _REPLY, b""),
    "half an answer": lambda asked: (200, _REPLY, _good(asked)[2][:400]),
    "a page": lambda _asked: (200, "text/html", b"<p>Sign in to the hotel network</p>"),
    "too much": lambda _asked: (200, _REPLY, b"\0" * (1 << 21)),
    "an error": lambda _asked: (503, "text/plain", b"busy"),
    "elsewhere": lambda _asked: (302, "text/plain", b""),
}


@dataclass
class StampService:
    """Its address, and how often it was asked."""

    address: str
    asked: list[bytes] = field(default_factory=list)


@contextmanager
def stamp_service(way: str = "good") -> Iterator[StampService]:
    """A service on a free port of this machine, gone afterwards."""
    seen: list[bytes] = []

    class Desk(BaseHTTPRequestHandler):
        def do_POST(self) -> None:
            body = self.rfile.read(int(self.headers["Content-Length"]))
            seen.append(body)
            status, kind, answer = WAYS[way](body)
            self.send_response(status)
            self.send_header("Content-Type", kind)
            self.send_header("Content-Length", str(len(answer)))
            if status == 302:
                self.send_header("Location", "/again")
            self.end_headers()
            self.wfile.write(answer)

        def log_message(self, *_args: object) -> None:
            return

    server = ThreadingHTTPServer(("127.0.0.1", 0), Desk)
    thread = Thread(target=server.serve_forever, kwargs={"poll_interval": 0.02})
    thread.start()
    try:
        yield StampService(f"http://127.0.0.1:{server.server_port}/", seen)
    finally:
        server.shutdown()
        server.server_close()
        thread.join()
