"""Where does a statement go on though it seemed to end, because a number in it wants its verb, its noun or its unit?"""

from __future__ import annotations

from collections.abc import Sequence

from witnessmark.listening.counts import PLACES
from witnessmark.listening.grammar import GRAMMAR
from witnessmark.listening.numerals import may_begin, number_words, numeral
from witnessmark.listening.said_units import ONE_OF

__all__ = ["set_after", "wants_more"]

#: After these a noun has to follow.
_OPEN = frozenset(
    {
        (a, b)
        for a in ("of", "on", "in", "to", "at", "from", "by", "under", "off", "with", "over", "behind")
        for b in ("the", "my", "your")
    }
    | {("of", "a")}
)
_COUNTING = frozenset({"of", "them", "em", "the", "other", "those", "these", "all", "and", "but", "where", "so", "with", "which", "only",
                       "it", "is", "there", "are", "just", "more"})  # fmt: skip
#: A statement that only says how many has no more words.
_FEW = 6
_LACKING = frozenset(
    {"lost", "losing", "missing", "lacks", "lacking", "has", "have", "had", "needs", "wants", "got", "off", "out"}
)
_NEAREST = frozenset({"closest", "nearest", "farthest", "furthest", "upstairs", "downstairs", "main", "only"})
_SAYING = frozenset({"reads", "says", "shows", "read", "showed"})
_ROUGHLY = frozenset(
    {"maybe", "about", "around", "roughly", "probably", "say", "like", "almost", "nearly", "just", "only"}
)
_MADE = frozenset(
    {"made", "built", "manufactured", "installed", "replaced", "pumped", "serviced", "cleaned", "tested", "done", "new"}
)
_ONES = frozenset({"that", "which"})


def wants_more(norms: Sequence[str], before: int, cut: int, starts: frozenset[int]) -> bool:
    """Whether no statement ends before *cut*, where the one that it would end began at *before*."""
    last, following = norms[cut - 1], norms[cut]
    said = norms[before:cut]
    if tuple(norms[cut - 2 : cut]) in _OPEN:
        return True  # "two of the | screws in it"
    if last in {"these", "those"} and norms[cut - 2] in {"of", "on", "in", "at"} and cut in starts:
        return True  # "at the bottom of these | stairs"
    if (following in _ONES or (following in {"i", "we"} and not {"it", "is"} & set(said))) and _only_counts(said):
        return True  # "two of them | i could not get to", "it is two | that are leaning"
    if following in _SAYING and cut + 1 < len(norms) and _number(norms[cut + 1]):
        return len(said) < _FEW and not set(said) & GRAMMAR.aux  # "meter on the stain | reads fourteen"
    if following not in GRAMMAR.subjects | _TAKEN_BACK and _partitive(said):
        return True  # "two of the hinge | bolts are missing"
    if last in {"in", "from"} and norms[cut - 2] in _MADE and _number(following):
        return True  # "made in | oh nine"
    if following == "in" and cut + 2 < len(norms) and norms[cut + 1] in _NUMBERS and norms[cut + 2] in PLACES:
        return True  # "grout is missing | in two spots"
    if following in {"its", "their"} and last in _LACKING:
        return True  # "has lost | its mortar"
    described = norms[cut - 2] in {"the", "my"} and last in _NEAREST
    if cut in starts and described:
        return True  # "at the closest | register"
    if _number(following) and last == "good" and norms[cut - 2] == "a" and len(said) < _FEW:
        return True  # "a good | quarter inch"
    if (
        last in _ROUGHLY
        and len(said) == 1
        and (_number(following) or (following in {"a", "an"} and norms[cut + 1 : cut + 2] and norms[cut + 1] in ONE_OF))
    ):
        return True  # "maybe | two inches"
    return (
        cut in starts and may_begin(last) and last != "a" and "of" in norms[cut - 3 : cut - 1]
    )  # "two of the six | windows"


def set_after(norms: Sequence[str], before: int, cut: int) -> int | None:
    """Where a cut belongs that falls between an act and what was set by it: "the thermostat back | to sixty six"."""
    if list(norms[cut : cut + 1]) != ["to"] or norms[cut - 1] not in {"back", "up", "down"} or cut + 1 >= len(norms):
        return None
    number = numeral(norms, cut + 1) if _number(norms[cut + 1]) else None
    return number.end if number is not None and _SETS & set(norms[before:cut]) else None


_SETS = frozenset({"set", "turned", "put", "putting", "thermostat", "stat", "dial", "bumped", "heat", "cooling", "it"})


def _number(word: str) -> bool:
    return may_begin(word) and word not in {"a", "an", "r"}


def _only_counts(words: Sequence[str]) -> bool:
    """Whether the words only say how many, in no unit."""
    return bool(set(words) & _NUMBERS) and len(words) < _FEW and all(w in _NUMBERS or w in _COUNTING for w in words)


def _partitive(words: Sequence[str]) -> bool:
    """Whether the words are "two of the …" with a noun that may go on, and no verb yet."""
    at = next((i for i, w in enumerate(words[:3]) if w in _NUMBERS), None)
    if (
        at is None
        or list(words[at + 1 : at + 2]) != ["of"]
        or words[at + 2 : at + 3] not in (["the"], ["those"], ["these"], ["my"])
    ):
        return False
    rest = words[at + 3 :]
    done = GRAMMAR.aux | GRAMMAR.verbs | GRAMMAR.plural | GRAMMAR.doing | GRAMMAR.taking
    if set(rest) <= _NUMBERS or set(words) & done or any(w.endswith("ed") for w in words):
        return False
    return len(rest) <= _NOUN


#: Numbers, without the units that are words of numbers too; words of a noun.
_NUMBERS = number_words() - {
    "inch",
    "inches",
    "feet",
    "foot",
    "percent",
    "degrees",
    "degree",
    "amp",
    "amps",
    "volts",
    "gallon",
    "gallons",
}
_NOUN = 2
_TAKEN_BACK = frozenset({"no", "wait", "sorry", "actually", "and", "but", "which", "so"})
