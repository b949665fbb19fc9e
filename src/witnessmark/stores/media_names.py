"""Under which names media are kept: the SHA-256 of the file, and the suffix of its type for the people who open it."""

from __future__ import annotations

import re
from pathlib import PurePath
from typing import Final

__all__ = ["hash_in_name", "is_hash", "plain_suffix"]

_HASH: Final = re.compile(r"[0-9a-f]{64}")
_NAME: Final = re.compile(r"([0-9a-f]{64})(?:\.[a-z0-9]{1,10})?")
_SUFFIX: Final = re.compile(r"\.[a-z0-9]{1,10}")


def is_hash(text: str) -> bool:
    """Whether the text is a SHA-256: 64 hex digits in lower case."""
    return _HASH.fullmatch(text) is not None


def plain_suffix(suffix: str) -> str:
    """The suffix in lower case with its dot, or nothing when it is not a plain one.

    >>> plain_suffix(".JPG"), plain_suffix("jpg"), plain_suffix("./../x")
    ('.jpg', '.jpg', '')
    """
    dotted = "." + suffix.lower().removeprefix(".")
    return dotted if _SUFFIX.fullmatch(dotted) else ""


def hash_in_name(path: PurePath) -> str | None:
    """The hash that the name of a kept file states; None for any other file."""
    match = _NAME.fullmatch(path.name)
    return match[1] if match and path.parent.name == match[1][:2] else None
