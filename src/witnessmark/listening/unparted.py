"""Where can no statement begin? After a word that has to be followed, or before one that ends what was said.

Cuts come from rules and from a learned model that both look at little. What is said here holds against them, since
nobody ends a statement with "the", "of" or "it has got", and "front | one's leaning" is one thing.
"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

from witnessmark.listening.clauses import Clause
from witnessmark.listening.grammar import GRAMMAR
from witnessmark.listening.sense import is_wrong
from witnessmark.listening.terms import members
from witnessmark.listening.words import Token

__all__ = ["unparted"]

#: Something has to follow these.
_OPEN = frozenset({"the", "a", "an", "my", "your", "its", "their", "our", "his", "of", "from", "into", "toward", "towards", "with",
                   "till", "until", "and", "or", "very", "real", "than", "onto", "every"})  # fmt: skip
_MODAL = frozenset({"could", "can", "would", "will", "should", "might", "must", "may"})
_HAS = frozenset({"has", "have", "'s", "is", "are", "i", "we", "they"})
#: Which one of several is meant: these belong to the "one" after them.
_WHICH = frozenset({"far", "other", "big", "little", "small", "same", "new", "old", "left", "right", "front", "rear", "back", "middle",
                    "north", "east", "south", "west", "top", "bottom", "neither", "each", "either", "this", "that", "last", "next",
                    "outside", "inside", "upper", "lower", "near", "corner", "end", "long", "short", "hot", "cold"})  # fmt: skip
#: Answers, and states that are told by themselves ("running on high").
_AFTER_IS = frozenset({"no", "yeah", "yep", "running", "going", "filling"})
_IS = frozenset({"is", "are", "'s", "was", "were"})
_COPULAS = frozenset({"is", "'s", "was", "has", "looks"})
_HERE = frozenset({"here", "there"})
_TO_HERE = frozenset({"up", "down", "out", "over", "back", "in"})
_BEFORE_HERE = frozenset({"in", "at", "by", "on", "along", "under"})


def unparted(found: Sequence[Clause], tokens: Sequence[Token]) -> list[Clause]:
    """The statements without the cuts that cannot be; one before a "though" that ends what was said falls after it."""
    if not found:
        return []
    norms = [t.norm for t in tokens]
    made: set[int] = set()
    for cut in (clause.start for clause in found):
        if not cut or tokens[cut - 1].hard:
            made.add(cut)
        elif norms[cut] == "though" and _ends(norms, cut):
            made.add(cut + 1)
        elif not _held(norms, cut):
            made.add(cut)
    edges = [*sorted(cut for cut in made if cut < found[-1].end), found[-1].end]
    return [Clause(a, b) for a, b in pairwise(edges)]


def _ends(norms: Sequence[str], at: int) -> bool:
    """Whether "though" ends what was said, and opens nothing: no subject follows."""
    after = norms[at + 1] if at + 1 < len(norms) else ""
    return after not in GRAMMAR.subjects | GRAMMAR.determiners


def _held(norms: Sequence[str], cut: int) -> bool:
    before, word = norms[cut - 1], norms[cut]
    earlier = norms[cut - 2] if cut > 1 else ""
    after = norms[cut + 1] if cut + 1 < len(norms) else ""
    if before in _OPEN and not (before in {"and", "or"} and word in GRAMMAR.subjects):
        return True
    subject = word in GRAMMAR.personal | {"it", "there", "that", "this", "no", "and", "but", "so"}
    if before in _IS and word not in GRAMMAR.subjects | GRAMMAR.conjunctions | _AFTER_IS:
        return True  # "return duct's | ductboard"
    if before in _MODAL and earlier in GRAMMAR.subjects and not subject:
        return norms[cut - 3 : cut - 2] not in (
            ["like"],
            ["as"],
            ["way"],
            ["where"],
            ["than"],
        )  # "like it should | trap none"
    if before == "got" and earlier in _HAS and not subject:
        return True
    if word in {"pretty", "real"} and after in {"good", "bad", "hard", "much"} and is_wrong(before):
        return True  # "it wobbles | pretty good"
    if word == "one" and after in _COPULAS:
        return before in _WHICH or before in members("names", "ordinals")
    if word in _TO_HERE and after in _HERE:
        third = norms[cut + 2] if cut + 2 < len(norms) else ""
        return third in _BEFORE_HERE
    return False
