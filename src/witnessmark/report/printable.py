"""Every text of a letter freed of signs that cannot be printed or that would turn round the words beside them."""

from __future__ import annotations

import unicodedata
from collections.abc import Callable, Mapping
from dataclasses import fields, is_dataclass, replace
from functools import cache
from typing import Any, TypeVar, cast

__all__ = ["change_texts", "printable", "steers"]

_T = TypeVar("_T")

#: Embedding, override and isolate controls of the bidirectional algorithm (Unicode Standard Annex 9), and the marks
#: that only steer layout. Pages isolate every text on their own.
_STEERING = frozenset(map(chr, (*range(0x202A, 0x202F), *range(0x2066, 0x206A), 0xFEFF, 0xFFF9, 0xFFFA, 0xFFFB)))
_LINES = frozenset("\n\r\t\v\f")
_BREAKS: Mapping[str, str] = {
    "\r\n": "\n",
    "\r": "\n",
    "\u2028": "\n",
    "\u2029": "\n",
    "\t": " ",
    "\v": "\n",
    "\f": "\n",
}


def _keep(sign: str) -> str:
    if sign in _STEERING:
        return ""
    category = unicodedata.category(sign)
    if category == "Cs":
        return "\ufffd"
    if category == "Cc" and sign != "\n":
        return ""
    # Noncharacters end in FFFE or FFFF, or lie in FDD0..FDEF (The Unicode Standard, section 23.7).
    point = ord(sign)
    return "" if point & 0xFFFE == 0xFFFE or 0xFDD0 <= point <= 0xFDEF else sign  # noqa: PLR2004 - code points, named above


def printable(text: str) -> str:
    r"""The text in composed form, with line ends as ``\n`` and without control signs; lone surrogates become U+FFFD.

    >>> printable("left\u202eright\x00\tend")
    'leftright end'
    """
    if text.isascii() and text.isprintable():
        return text
    for sign, instead in _BREAKS.items():
        text = text.replace(sign, instead)
    return unicodedata.normalize("NFC", "".join(map(_keep, text)))


def steers(text: str) -> bool:
    """Whether the text holds signs that ``printable`` leaves out."""
    return any(sign in _STEERING or (unicodedata.category(sign) == "Cc" and sign not in _LINES) for sign in text)


def change_texts(value: _T, change: Callable[[str], str]) -> _T:
    """The same frozen rows with every text in them changed; anything else stands as it is."""
    if isinstance(value, str):
        return cast("_T", change(value))
    if isinstance(value, tuple):
        items = tuple(change_texts(item, change) for item in value)
        return value if all(new is old for new, old in zip(items, value, strict=True)) else cast("_T", items)
    names = _names(type(value))  # type: ignore[arg-type] # every type can be hashed
    if not names:
        return value
    # A row none of whose texts changes is given back as it is, which also saves the making of a new one.
    changed = {name: new for name in names if (new := change_texts(old := getattr(value, name), change)) is not old}
    return cast("_T", replace(cast("Any", value), **changed)) if changed else value


@cache
def _names(kind: type) -> tuple[str, ...]:
    """The fields of a kind of row; none for anything else."""
    return tuple(field.name for field in fields(kind)) if is_dataclass(kind) else ()
