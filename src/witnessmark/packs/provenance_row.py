"""Where a row comes from and how sure it is."""

from __future__ import annotations

from dataclasses import dataclass

__all__ = ["TAGS", "Provenance"]

#: How sure a row is: read in the law's own text, in an unofficial copy, recalled, recalled and doubtful, arithmetic.
TAGS = ("seen", "seen-copy", "memory", "memory?", "computed", "common practice, no source")


@dataclass(frozen=True, slots=True)
class Provenance:
    """Where a row comes from: document and section, from when it is in force, how sure, and which file holds it."""

    source: str
    in_force: str | None
    tag: str
    file: str
    until: str | None = None
