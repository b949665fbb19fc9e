"""Canonical JSON: one value, one sequence of bytes, on every machine and for ever.

Follows RFC 8785 (JSON Canonicalization Scheme): no white space, keys in the order of their UTF-16 code units,
numbers as ECMAScript writes them (ECMA-262, Number::toString), text in UTF-8 with the shortest escapes. What has
no such form is refused: lone surrogates, NaN, infinities, and whole numbers that an IEEE 754 double cannot hold
exactly (RFC 7493, section 2.2).
"""

from __future__ import annotations

import json
import math
from typing import Final

from witnessmark.journal import messages
from witnessmark.problems import Refusal

__all__ = ["DEEPEST", "LARGEST_WHOLE", "encode", "encode_simple"]

#: The largest whole number that every reader of JSON keeps exactly (RFC 7493, section 2.2).
LARGEST_WHOLE: Final = 2**53 - 1

#: Lists and objects may be nested this deep; deeper values are refused rather than run out of stack.
DEEPEST: Final = 100

_simple = json.JSONEncoder(
    sort_keys=True, ensure_ascii=False, separators=(",", ":"), allow_nan=False, check_circular=False
).encode
_text = json.JSONEncoder(ensure_ascii=False).encode


def encode(value: object) -> bytes:
    """The canonical bytes of a JSON value (dict, list, tuple, str, int, float, bool, None).

    Raises:
        Refusal: WM208 when the value has no canonical form.

    >>> encode({"b": 1.0, "a": [True, None, "\u20ac"]}).decode()
    '{"a":[true,null,"€"],"b":1}'
    """
    if _is_simple(value, 0):
        return encode_simple(value)
    pieces: list[str] = []
    _write(value, pieces, 0)
    return _utf8("".join(pieces))


def encode_simple(value: object) -> bytes:
    """The same bytes, faster, for a value known to hold no floats, only ASCII keys, and whole numbers in range.

    Raises:
        Refusal: WM208 when some text holds a lone surrogate.
    """
    return _utf8(_simple(value))


def _utf8(text: str) -> bytes:
    try:
        return text.encode("utf-8")
    except UnicodeEncodeError as error:
        around = ascii(error.object[max(0, error.start - 20) : error.end])
        raise Refusal(messages.NO_CANONICAL_FORM.at("text", f"a lone surrogate after {around}")) from None


def _is_simple(value: object, depth: int) -> bool:
    """Whether the standard library's encoder gives the canonical form already."""
    if depth > DEEPEST:
        return False
    sort = type(value)
    if sort is str or sort is bool or value is None:
        return True
    if sort is int:
        return -LARGEST_WHOLE <= value <= LARGEST_WHOLE  # type: ignore[operator] # its type was just seen to be int
    if sort is dict:
        return all(
            type(key) is str and key.isascii() and _is_simple(item, depth + 1)
            for key, item in value.items()  # type: ignore[attr-defined] # its type was just seen to be dict
        )
    if sort is list or sort is tuple:
        return all(_is_simple(item, depth + 1) for item in value)  # type: ignore[attr-defined] # a list or tuple
    return False


def _write(value: object, out: list[str], depth: int) -> None:
    if depth > DEEPEST:
        raise Refusal(messages.NO_CANONICAL_FORM.at("value", f"nested deeper than {DEEPEST}"))
    match value:
        case None:
            out.append("null")
        case bool():
            out.append("true" if value else "false")
        case str():
            out.append(_text(value))
        case int():
            if not -LARGEST_WHOLE <= value <= LARGEST_WHOLE:
                raise Refusal(messages.NO_CANONICAL_FORM.at("number", f"a whole number of {value.bit_length()} bits"))
            out.append(str(int(value)))
        case float():
            out.append(_number(value))
        case dict():
            _write_object(value, out, depth)
        case list() | tuple():
            out.append("[")
            for index, item in enumerate(value):
                if index:
                    out.append(",")
                _write(item, out, depth + 1)
            out.append("]")
        case _:
            raise Refusal(messages.NO_CANONICAL_FORM.at("value", f"a {type(value).__name__} is not JSON"))


def _write_object(value: dict[object, object], out: list[str], depth: int) -> None:
    keys: list[str] = []
    for key in value:
        if not isinstance(key, str):
            raise Refusal(messages.NO_CANONICAL_FORM.at("key", f"{key!r} is a {type(key).__name__}, not text"))
        keys.append(key)
    # Big-endian UTF-16 sorts as its code units do; a lone surrogate passes here and is refused when written.
    keys.sort(key=lambda text: text.encode("utf-16-be", "surrogatepass"))
    out.append("{")
    for index, key in enumerate(keys):
        if index:
            out.append(",")
        out.extend((_text(key), ":"))
        _write(value[key], out, depth + 1)
    out.append("}")


def _number(value: float) -> str:
    """A double as ECMA-262 Number::toString writes it: the shortest digits that give the same double back."""
    if not math.isfinite(value):
        raise Refusal(messages.NO_CANONICAL_FORM.at("number", f"{value} is not a finite number"))
    if value == 0:
        return "0"  # also for -0
    sign = "-" if value < 0 else ""
    # repr gives the shortest digits too; only their layout differs. `digits` times 10 ** (point - len(digits)).
    mantissa, _, exponent = repr(abs(value)).partition("e")
    whole, _, fraction = mantissa.partition(".")
    point = len(whole) + int(exponent or 0)
    digits = whole + fraction
    led = len(digits) - len(digits.lstrip("0"))
    digits = digits[led:].rstrip("0")
    point -= led
    count = len(digits)
    if count <= point <= 21:  # noqa: PLR2004 - 21, -6: where ECMA-262 changes to an exponent
        return sign + digits + "0" * (point - count)
    if 0 < point <= 21:  # noqa: PLR2004 - as above
        return f"{sign}{digits[:point]}.{digits[point:]}"
    if -6 < point <= 0:  # noqa: PLR2004 - as above
        return f"{sign}0.{'0' * -point}{digits}"
    tail = f"e{'+' if point > 0 else '-'}{abs(point - 1)}"
    return sign + (digits if count == 1 else f"{digits[0]}.{digits[1:]}") + tail
