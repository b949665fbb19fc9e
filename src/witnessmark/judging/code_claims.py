"""Findings that cite a code, and what the law wants beside such a claim that is not there."""

from __future__ import annotations

import re
from dataclasses import dataclass

from witnessmark.journal.acts import Found
from witnessmark.judging.scene import Scene

__all__ = ["CodeClaim", "code_claims"]


@dataclass(frozen=True, slots=True)
class CodeClaim:
    """A finding that cites a code, and what is still missing of what the law wants beside such a claim."""

    entry: str
    cited: str
    missing: tuple[str, ...]


#: Names of codes as findings cite them. A plain "to code" claims one as well.
_CODES = re.compile(
    r"\b(?:building code|electrical code|plumbing code|mechanical code|fire code|code violation|(?:not |up )?to code|"
    r"NEC|IRC|IBC|UPC|IPC|IMC|IFGC|NFPA\s?\d+)\b",
    re.IGNORECASE,
)
_SECTION = re.compile(
    r"\b(?:section\s+|§\s*)?[A-Z]{0,2}\d{2,4}(?:\.\d+)+(?:\([A-Za-z0-9]+\))*|\b(?:section|§)\s*[A-Z]?\d+", re.IGNORECASE
)


def code_claims(scene: Scene) -> tuple[CodeClaim, ...]:
    """Findings that cite a code, where the rulebook asks for the date of construction and the section beside them."""
    if scene.rulebook is None or not scene.rulebook.code_claims:
        return ()
    found = []
    for fact in scene.record.facts:
        body = fact.body
        if not isinstance(body, Found):
            continue
        text = f"{body.title} {body.seen} {body.why} {body.if_left} {body.do}"
        named = _CODES.search(text)
        if named is None:
            continue
        missing = [] if scene.job.year_built or scene.job.altered else ["the date of construction or alteration"]
        missing += [] if _SECTION.search(text) else ["the section of the code"]
        found.append(CodeClaim(fact.id, named[0], tuple(missing)))
    return tuple(found)
