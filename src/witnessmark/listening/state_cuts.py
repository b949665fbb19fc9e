"""Where does the state of an operated thing begin and end as a statement: "| disposer on | grinds | off | cord has …"?"""

from __future__ import annotations

from collections.abc import Sequence

from witnessmark.listening.grammar import GRAMMAR
from witnessmark.listening.sense import is_wrong
from witnessmark.listening.syntax import Mark

__all__ = ["state_cuts"]

_STATES = frozenset({"on", "off", "going", "running"})
#: With these after it, a state goes on, or was only the beginning of a place.
_GOES_ON = frozenset({"now", "high", "low", "medium", "full", "again", "too", "and", "bake", "broil", "both", "with", "but", "for", "at",
                      "to", "in", "the", "a", "an", "that", "this", "these", "those", "its", "top", "one", "each", "either", "all", "any",
                      "every", "by", "from", "i", "we", "so", "while", "when", "because", "since", "downstairs", "upstairs", "first",
                      "still", "outside", "back", "here", "there", "my", "your", "it", "of", "or", "side", "center", "about",
                      "where", "is", "are", "was", "down", "up", "along", "under", "over", "into", "through", "behind",
                      "between", "across", "around", "above", "below", "until", "till", "only", "right", "left", "front",
                      "rear", "their", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten",
                      "already", "as", "not", "fine", "good", "well"})  # fmt: skip
#: Before the name of a thing these hold it: nothing begins there.
_HOLDS = frozenset({"the", "a", "an", "of", "and", "or", "not", "no", "with", "without", "by", "to", "for", "in", "at", "on", "from",
                    "near", "behind", "under", "over", "is", "are", "was", "were", "be", "than", "if", "when", "that",
                    "which", "your", "my", "their", "this", "these", "those", "every", "any", "each", "all", "both",
                    "turn", "turned", "turning", "shut", "switch", "switched", "left", "leave", "leaving", "got", "get",
                    "have", "had", "has", "kept", "keep", "off", "see", "saw", "run", "put", "take", "took", "pull",
                    "pulled", "flip", "flipped", "cut", "set", "kill", "killed", "start", "started", "so", "but"})  # fmt: skip
#: Words within which the "off" of what is on stands.
_OFF_WITHIN = 7


def state_cuts(norms: Sequence[str], marks: Sequence[Mark], operable: frozenset[int]) -> list[int]:
    """Where the statements "NAME on", "NAME off" begin and end, for names at *operable*, and the "off" that answers an "on"."""
    found: list[int] = []
    ends = {mark.end for mark in marks}
    by_start = {mark.start: mark for mark in marks}
    for mark in marks:
        if mark.start not in operable or mark.sort != "component" or norms[mark.end : mark.end + 1] == []:
            continue
        at = mark.end + (norms[mark.end] == "both")
        if at >= len(norms) or norms[at] not in _STATES or norms[at : at + 2] == ["running", "on"]:
            continue
        begin = mark.start
        while begin and norms[begin - 1] in _BEFORE_NAMES:
            begin -= 1
        after = norms[at + 1] if at + 1 < len(norms) else ""
        named = by_start.get(at + 1) if at + 1 in operable else None
        again = named is not None and norms[named.end : named.end + 1] != [] and norms[named.end] in _STATES
        closed = _is_closed(norms[at], after) or again
        told = begin > 1 and norms[begin - 1] in _STATES and begin - 1 in ends
        if begin and norms[begin - 1] in _HOLDS and not told:
            continue
        if begin and (closed or after in {"", "now", "and", "again", "both"}) and _is_whole(norms, begin, ends):
            found.append(begin)
        if closed:
            found.append(at + 1)
        if norms[at] == "on" and (closed or after in {"high", "low", "and"}):
            found += _answered(norms, at + 1)
    return found


_AFTER = frozenset({"no", "not", "nothing", "off", "both", "let", "left", "leaving", "letting", "leave"})


def _is_closed(state: str, after: str) -> bool:
    """Whether a state ends before the word after it: that is a verb, or judges, or denies."""
    if not after or after in _GOES_ON - {"both", "not"}:
        return False
    return state == "off" or after in GRAMMAR.verbs | _AFTER or is_wrong(after)


def _is_whole(norms: Sequence[str], begin: int, ends: set[int]) -> bool:
    """Whether the words before a name do not belong to it: a name ends there, or something that is said of one."""
    before = norms[begin - 1]
    said = GRAMMAR.verbs | GRAMMAR.adverbs | GRAMMAR.locatives | GRAMMAR.particles | GRAMMAR.judging
    return begin in ends or before in said or is_wrong(before) or before in _STATES or before.endswith(("ed", "ing"))


#: Rooms and sides named before a thing.
_BEFORE_NAMES = frozenset({"front", "back", "left", "right", "upper", "lower", "main", "hot", "cold", "other", "big", "little", "upstairs",
                    "downstairs", "outside", "first", "second", "third", "rear", "overhead",
                    "bath", "hall", "kitchen", "attic", "porch", "garage", "laundry", "basement", "bedroom", "primary", "half",
                    "vestibule", "closet", "exhaust", "ceiling"})  # fmt: skip


def _answered(norms: Sequence[str], start: int) -> list[int]:
    """Where the lone "off" stands that ends what was just said to be on."""
    for at in range(start, min(start + _OFF_WITHIN, len(norms))):
        if norms[at] in {"on", "i"}:
            return []
        if norms[at] == "off":
            alone = norms[at + 1 : at + 2] == [] or norms[at + 1] not in _GOES_ON - {"now", "again", "and", "with"}
            verb = norms[at - 1] in GRAMMAR.phrasal | {
                "falls",
                "comes",
                "came",
                "fell",
                "peels",
                "shuts",
                "goes",
                "runs",
                "cuts",
                "took",
                "it",
            }
            begin = at - 1 if norms[at - 1] == "and" else at
            again = at + 1 + (norms[at + 1 : at + 2] in (["now"], ["again"]))
            return (
                [begin, again] if alone and not verb and again < len(norms) else [begin] if alone and not verb else []
            )
    return []
