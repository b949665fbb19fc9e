"""What judges: words that say that something is wrong or right, and words that are made to say so."""

from __future__ import annotations

from dataclasses import dataclass

from witnessmark.listening.terms import cues, members
from witnessmark.listening.words import root

__all__ = ["BE", "SPEAKERS", "Sense", "fault_roots", "is_wrong", "made_wrong"]

#: Who speaks, and to whom.
SPEAKERS = frozenset({"i", "we", "you"})
#: Verbs that say what something is.
BE = frozenset(
    {"is", "are", "was", "were", "'s", "be", "been", "being", "got", "gets", "looks", "look", "seems", "feels"}
)
#: "uncovered", "misaligned"; and words that only begin so.
_PREFIXES = ("un", "mis", "over", "under")
_HARMLESS_UN = frozenset({"unfinished", "unvented", "unfaced", "unfurnished", "unconditioned", "unheated", "unoccupied", "unused",
                          "unlimited", "unrelated", "undated", "united", "uncoated", "unaffected", "unexpected", "unchanged",
                          "undisturbed", "unimpressed", "unobstructed", "undamaged", "untreated", "overhead", "understood",
                          "undermounted", "overlapped", "undiluted", "unneeded", "overlooked", "undecided", "undetermined",
                          "underlined", "overall", "oversized", "unreinforced", "overlaid", "unplugged",
                          "unscrewed", "unlocked", "unlatched", "unhooked", "unfolded", "unloaded", "missed",
                          "undercounted", "uninterested", "unopened", "untested", "uninspected", "unbelieved"})  # fmt: skip
_UN_LONGEST = 7


@dataclass(frozen=True, slots=True)
class Sense:
    """Words from *start* to *end* that judge. ``wrong``: what they say by themselves; ``denied``: turned round."""

    start: int
    end: int
    text: str
    wrong: bool
    denied: bool = False

    @property
    def adverse(self) -> bool:
        """Whether, taken with its denial, it says that something is wrong."""
        return self.wrong != self.denied

    @property
    def why(self) -> str:
        """For the draft: the words that decided it."""
        if self.denied:
            return f"no '{self.text}'" if self.wrong else f"not '{self.text}'"
        return f"'{self.text}'"


def is_wrong(word: str) -> bool:
    """Whether a word by itself says that something is wrong, or is made so by rule.

    >>> is_wrong("rusted"), is_wrong("unfastened"), is_wrong("unfinished"), is_wrong("misrouted")
    (True, True, False, True)
    """
    return word in members("conditions", "adverse") or made_wrong(word)


def fault_roots(words: list[str]) -> frozenset[str]:
    """The roots of all words that stand in a phrase for something wrong."""
    found = {root(words[i]) for a, b, _ in cues("conditions", "adverse").find(words) for i in range(a, b)}
    return frozenset(found | {root(w) for w in words if made_wrong(w)})


def made_wrong(word: str) -> bool:
    """Whether a word is made to say so: a participle with un-, mis-, over- or under-."""
    if not word.startswith(_PREFIXES) or not word.endswith("ed") or word in _HARMLESS_UN:
        return False
    return len(word) > _UN_LONGEST
