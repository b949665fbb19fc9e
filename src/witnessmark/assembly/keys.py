"""The inspector's signing key: an Ed25519 private key in a PEM file that only its owner may read.

Signing holds a secret, so it is done by the ``cryptography`` library; checking a signature needs no secret and is
done by the journal itself.
"""

from __future__ import annotations

import os
from pathlib import Path

from cryptography.exceptions import UnsupportedAlgorithm
from cryptography.hazmat.primitives.asymmetric.ed25519 import Ed25519PrivateKey
from cryptography.hazmat.primitives.serialization import (
    Encoding,
    NoEncryption,
    PrivateFormat,
    PublicFormat,
    load_pem_private_key,
)

from witnessmark.assembly import messages
from witnessmark.problems import Refusal

__all__ = ["FileSigner", "default_key_path"]


def default_key_path() -> Path:
    """Where the key lies unless told otherwise: ``$WITNESSMARK_KEY``, else in the user's configuration folder."""
    if named := os.environ.get("WITNESSMARK_KEY"):
        return Path(named)
    base = os.environ.get("XDG_CONFIG_HOME") or Path.home() / ".config"
    return Path(base) / "witnessmark" / "signing-key.pem"


class FileSigner:
    """Signs with the key in a file; makes the key when the file does not exist.

    Raises:
        Refusal: WM910 when the file cannot be read or written, or holds something else.
    """

    def __init__(self, path: Path) -> None:
        try:
            if not path.exists():
                _make(path)
            key = load_pem_private_key(path.read_bytes(), password=None)
        except (OSError, ValueError, TypeError, UnsupportedAlgorithm) as error:
            raise Refusal(messages.BAD_KEY.at(str(path), str(error).split("\n")[0][:120])) from error
        if not isinstance(key, Ed25519PrivateKey):
            raise Refusal(messages.BAD_KEY.at(str(path), "it is a key of another kind"))
        self._key = key

    def public_key(self) -> str:
        """The public key, 64 hex digits."""
        return self._key.public_key().public_bytes(Encoding.Raw, PublicFormat.Raw).hex()

    def sign(self, message: bytes) -> str:
        """The signature over the message, 128 hex digits."""
        return self._key.sign(message).hex()


def _make(path: Path) -> None:
    path.parent.mkdir(parents=True, exist_ok=True, mode=0o700)
    pem = Ed25519PrivateKey.generate().private_bytes(Encoding.PEM, PrivateFormat.PKCS8, NoEncryption())
    # Made with its final rights, so that it is never readable by others, not even for a moment.
    with os.fdopen(os.open(path, os.O_WRONLY | os.O_CREAT | os.O_EXCL, 0o600), "wb") as file:
        file.write(pem)
