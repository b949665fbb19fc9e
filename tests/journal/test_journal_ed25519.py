"""Verification of signatures against RFC 8032, section 7.1, and the library cryptography (OpenSSL)."""

from __future__ import annotations

from hashlib import sha512

import pytest
from cryptography.exceptions import InvalidSignature
from cryptography.hazmat.primitives.asymmetric.ed25519 import Ed25519PrivateKey, Ed25519PublicKey
from hypothesis import example, given, settings
from hypothesis import strategies as st

from witnessmark.journal.ed25519 import verify

# RFC 8032, section 7.1: public key, message, signature. TEST 1024 is left out for its length; messages of any length
# are compared with the library below. Checked in several public copies of the vectors.
VECTORS = {
    "TEST 1": (
        "d75a980182b10ab7d54bfed3c964073a0ee172f3daa62325af021a68f707511a",
        "",
        (
            "e5564300c360ac729086e2cc806e828a84877f1eb8e5d974d873e06522490155"
            "5fb8821590a33bacc61e39701cf9b46bd25bf5f0595bbe24655141438e7a100b"
        ),
    ),
    "TEST 2": (
        "3d4017c3e843895a92b70aa74d1b7ebc9c982ccf2ec4968cc0cd55f12af4660c",
        "72",
        (
            "92a009a9f0d4cab8720e820b5f642540a2b27b5416503f8fb3762223ebdb69da"
            "085ac1e43e15996e458f3613d0f11d8c387b2eaeb4302aeeb00d291612bb0c00"
        ),
    ),
    "TEST 3": (
        "fc51cd8e6218a1a38da47ed00230f0580816ed13ba3303ac5deb911548908025",
        "af82",
        (
            "6291d657deec24024827e69c3abe01a30ce548a284743a445e3680d7db5ac3ac"
            "18ff9b538d16f290ae67f760984dc6594a7c15e9716ed28dc027beceea1ec40a"
        ),
    ),
    "TEST SHA(abc)": (
        "ec172b93ad5e563bf4932c70e1245034c35467ef2efd4d64ebf819683467e2bf",
        sha512(b"abc").hexdigest(),
        (
            "dc2a4459e7369633a52b1bf277839a00201009a3efbf3ecb69bea2186c26b589"
            "09351fc9ac90b3ecfdfbc7c66431e0303dca179c138ac17ad9bef1177331a704"
        ),
    ),
}
L = 2**252 + 27742317777372353535851937790883648493


@pytest.mark.parametrize("name", VECTORS)
def test_vectors_of_rfc_8032(name: str) -> None:
    key, message, signature = (bytes.fromhex(part) for part in VECTORS[name])
    assert verify(key, message, signature)
    assert not verify(key, message + b"\0", signature)
    for at in (0, 31, 32, 63):
        changed = bytearray(signature)
        changed[at] ^= 1
        assert not verify(key, message, bytes(changed))


def by_library(key: bytes, message: bytes, signature: bytes) -> bool:
    try:
        Ed25519PublicKey.from_public_bytes(key).verify(signature, message)
    except (InvalidSignature, ValueError):
        return False
    return True


@given(st.binary(min_size=32, max_size=32), st.binary(max_size=200))
@settings(max_examples=30, deadline=None)
def test_what_the_library_signs_is_good(seed: bytes, message: bytes) -> None:
    private = Ed25519PrivateKey.from_private_bytes(seed)
    assert verify(private.public_key().public_bytes_raw(), message, private.sign(message))


@given(st.binary(min_size=32, max_size=32), st.integers(0, 95), st.integers(1, 255))
@settings(max_examples=60, deadline=None)
def test_one_flipped_byte_of_key_or_signature_is_judged_as_by_the_library(seed: bytes, at: int, flip: int) -> None:
    private = Ed25519PrivateKey.from_private_bytes(seed)
    both = bytearray(private.public_key().public_bytes_raw() + private.sign(b"report"))
    both[at] ^= flip
    key, signature = bytes(both[:32]), bytes(both[32:])
    assert verify(key, b"report", signature) == by_library(key, b"report", signature)
    assert not verify(key, b"report", signature)


@given(st.binary(min_size=32, max_size=32), st.binary(min_size=64, max_size=64))
@settings(max_examples=50, deadline=None)
@example(bytes(32), bytes(64))
@example(b"\xff" * 32, b"\xff" * 64)
def test_arbitrary_bytes_are_judged_as_by_the_library(key: bytes, signature: bytes) -> None:
    assert verify(key, b"report", signature) == by_library(key, b"report", signature)


def test_a_scalar_that_is_not_reduced_is_refused() -> None:
    # RFC 8032, section 5.1.7: S must be below L, or a second signature could be made from a good one.
    key, message, signature = (bytes.fromhex(part) for part in VECTORS["TEST 2"])
    s = int.from_bytes(signature[32:], "little") + L
    assert not verify(key, message, signature[:32] + s.to_bytes(32, "little"))


def test_a_point_that_is_not_reduced_is_refused() -> None:
    # RFC 8032, section 5.1.3: y must be below p. The neutral point (0, 1) as a key makes any such signature fit.
    neutral, signature = (1).to_bytes(32, "little"), (1).to_bytes(32, "little") + bytes(32)
    assert verify(neutral, b"report", signature) == by_library(neutral, b"report", signature) is True
    assert not verify((2**255 - 19 + 1).to_bytes(32, "little"), b"report", signature)


@pytest.mark.parametrize(("key", "signature"), [(b"", b""), (bytes(31), bytes(64)), (bytes(32), bytes(63))])
def test_wrong_lengths_are_no_signature(key: bytes, signature: bytes) -> None:
    assert not verify(key, b"", signature)
