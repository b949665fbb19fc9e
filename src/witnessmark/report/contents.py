"""The order of the letter: its parts, and which pictures stand in which."""

from __future__ import annotations

from itertools import groupby

from witnessmark.report.letter import Letter, OpenEnd
from witnessmark.report.tongue import Tongue

__all__ = ["SECTIONS", "language_of", "open_groups", "other_pictures", "sections_of", "shutoff_pictures", "tongue_of"]

#: The parts of the letter in order: an anchor and a heading.
SECTIONS = (
    ("matters", "What matters most"),
    ("glance", "The house at a glance"),
    ("places", "Findings by place and by system"),
    ("form", "In the order of the law’s form"),
    ("inspected", "What was inspected, and how"),
    ("not-inspected", "What was not inspected, and why"),
    ("started", "What was started, watched and put back"),
    ("readings", "Readings"),
    ("pictures", "Pictures"),
    ("outlook", "How long ageing parts may go on"),
    ("terms", "Terms and cautions"),
    ("record", "The record, entry by entry"),
    ("seal", "The seal, and how to check it"),
)


def language_of(letter: Letter) -> str:
    """The code of the letter's language (ISO 639-1)."""
    return letter.language[:2]


def tongue_of(letter: Letter) -> Tongue:
    """The letter's language for the sentences of its pages; the texts of packs are in the letter already."""
    return Tongue(language_of(letter), {})


def sections_of(letter: Letter) -> dict[str, str]:
    """Anchors and headings of the parts that the letter has, in its language."""
    absent = {name for name, there in (("form", letter.form), ("outlook", letter.outlook)) if not there}
    return {anchor: tongue_of(letter).say(heading) for anchor, heading in SECTIONS if anchor not in absent}


def open_groups(letter: Letter) -> tuple[tuple[str, tuple[OpenEnd, ...]], ...]:
    """What is still open by sort, in the order of the letter; the sort as a heading."""
    groups = groupby(letter.open_ends, key=lambda end: end.sort)
    return tuple((tongue_of(letter).say(sort.capitalize()), tuple(ends)) for sort, ends in groups)


def _with_findings(letter: Letter) -> set[int]:
    return {number for finding in letter.findings for number in finding.pictures}


def shutoff_pictures(letter: Letter) -> tuple[int, ...]:
    """Pictures of where to turn things off that no finding shows."""
    shown = _with_findings(letter)
    return tuple(number for number in letter.glance.shutoff_pictures if number not in shown)


def other_pictures(letter: Letter) -> tuple[int, ...]:
    """Pictures that stand neither with a finding nor with the shutoffs."""
    shown = _with_findings(letter) | set(letter.glance.shutoff_pictures)
    return tuple(picture.number for picture in letter.pictures if picture.number not in shown)
