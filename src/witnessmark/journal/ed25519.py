"""Whether an Ed25519 signature is good: verification only, in plain Python so that it runs in a browser.

Follows RFC 8032, section 5.1.7, with the equation without cofactor: the point R is computed anew and its encoding
compared with the one in the signature. Constant time is not needed: the key, the message and the signature are
public, and no secret is handled here. Signing is done elsewhere, behind the port ``Signer``.
"""

from __future__ import annotations

from hashlib import sha512
from typing import Final

__all__ = ["verify"]

_P: Final = 2**255 - 19
_L: Final = 2**252 + 27742317777372353535851937790883648493
_D: Final = -121665 * pow(121666, -1, _P) % _P
_ROOT_OF_MINUS_1: Final = pow(2, (_P - 1) // 4, _P)

# A point in extended coordinates (X, Y, Z, T): x = X/Z, y = Y/Z, x*y = T/Z (RFC 8032, section 5.1.4).
_Point = tuple[int, int, int, int]
_NEUTRAL: Final[_Point] = (0, 1, 1, 0)


def verify(public_key: bytes, message: bytes, signature: bytes) -> bool:
    """Whether the signature (64 bytes) over the message is that of the public key (32 bytes).

    Anything malformed, of wrong length or out of range is no signature: the answer is False, never an error.
    """
    if len(public_key) != 32 or len(signature) != 64:  # noqa: PLR2004 - RFC 8032, section 5.1
        return False
    key = _decode(public_key)
    s = int.from_bytes(signature[32:], "little")
    if key is None or s >= _L:
        return False
    digest = sha512(signature[:32] + public_key + message).digest()
    k = int.from_bytes(digest, "little") % _L
    x, y, z, t = key
    minus_key = (-x % _P, y, z, -t % _P)
    return _encode(_sum_of_multiples(s, _BASE, k, minus_key)) == signature[:32]


def _add(a: _Point, b: _Point) -> _Point:
    x1, y1, z1, t1 = a
    x2, y2, z2, t2 = b
    m = (y1 - x1) * (y2 - x2) % _P
    n = (y1 + x1) * (y2 + x2) % _P
    c = 2 * t1 * t2 * _D % _P
    d = 2 * z1 * z2 % _P
    e, f, g, h = n - m, d - c, d + c, n + m
    return e * f % _P, g * h % _P, f * g % _P, e * h % _P


def _double(a: _Point) -> _Point:
    x, y, z, _ = a
    xx, yy = x * x % _P, y * y % _P
    h = xx + yy
    e = h - (x + y) * (x + y)
    g = xx - yy
    f = 2 * z * z + g
    return e * f % _P, g * h % _P, f * g % _P, e * h % _P


def _sum_of_multiples(s: int, a: _Point, k: int, b: _Point) -> _Point:
    """s·a + k·b, both at once, bit by bit from the top."""
    both = _add(a, b)
    total = _NEUTRAL
    for bit in range(max(s.bit_length(), k.bit_length()) - 1, -1, -1):
        total = _double(total)
        match s >> bit & 1, k >> bit & 1:
            case 1, 1:
                total = _add(total, both)
            case 1, 0:
                total = _add(total, a)
            case 0, 1:
                total = _add(total, b)
    return total


def _decode(data: bytes) -> _Point | None:
    """The point that 32 bytes encode, or None when there is none (RFC 8032, section 5.1.3)."""
    number = int.from_bytes(data, "little")
    sign, y = number >> 255, number & (2**255 - 1)
    if y >= _P:
        return None
    u, v = (y * y - 1) % _P, (_D * y * y + 1) % _P
    x = u * pow(v, 3, _P) * pow(u * pow(v, 7, _P), (_P - 5) // 8, _P) % _P
    if v * x * x % _P == -u % _P:
        x = x * _ROOT_OF_MINUS_1 % _P
    if v * x * x % _P != u or (x == 0 and sign):
        return None
    if x & 1 != sign:
        x = _P - x
    return x, y, 1, x * y % _P


def _encode(point: _Point) -> bytes:
    x, y, z, _ = point
    inverse = pow(z, -1, _P)
    return (y * inverse % _P | (x * inverse % _P & 1) << 255).to_bytes(32, "little")


def _base() -> _Point:
    point = _decode((4 * pow(5, -1, _P) % _P).to_bytes(32, "little"))
    if point is None:
        raise AssertionError("the base point of RFC 8032, section 5.1, decodes")
    return point


_BASE: Final = _base()
