"""By what a reader can choose findings on the page: place, stake, urgency and trade, as they occur in the letter."""

from __future__ import annotations

from witnessmark.packs.model import STAKES, URGENCIES
from witnessmark.report.contents import tongue_of
from witnessmark.report.letter import Letter
from witnessmark.report.naming import capital

__all__ = ["Choice", "choices_of"]

#: Name of the field, its heading, the words for "any", and the values with their words.
Choice = tuple[str, str, str, tuple[tuple[str, str], ...]]


def choices_of(letter: Letter) -> tuple[Choice, ...]:
    """The four choices; each offers only what the letter holds, in the order the letter has it."""
    findings = letter.findings
    places = [finding.place for finding in sorted(findings, key=lambda f: _place_order(letter).get(f.number, 0))]
    trades = sorted({finding.by for finding in findings if finding.by})
    stakes = [stake for stake in STAKES if any(finding.stake == stake for finding in findings)]
    urgencies = [urgency for urgency in URGENCIES if any(finding.urgency == urgency for finding in findings)]
    say = tongue_of(letter).say
    return (
        (
            "place", say("Place"), say("everywhere"),
            tuple((place, capital(place)) for place in dict.fromkeys(places) if place),
        ),
        ("stake", say("What is at stake"), say("anything"), tuple((stake, say(stake)) for stake in stakes)),
        ("urgency", say("How soon"), say("any time"), tuple((urgency, say(urgency)) for urgency in urgencies)),
        ("trade", say("By whom"), say("anyone"), tuple((trade, trade) for trade in trades)),
    )  # fmt: skip


def _place_order(letter: Letter) -> dict[int, int]:
    return {number: i for i, place in enumerate(letter.places) for number in place.findings}
