"""Which words does a statement deny, and which does it only look for?

Negation follows ConText (Harkema et al., Journal of Biomedical Informatics 42, 2009): a trigger opens a scope that runs
to a word that ends it or to the end of the statement; phrases that only look like a negation open none. Two scopes on
one word cancel out.
"""

from __future__ import annotations

from collections.abc import Sequence
from collections.abc import Set as AbstractSet
from dataclasses import dataclass

from witnessmark.listening.numerals import number_words
from witnessmark.listening.terms import cues, members

__all__ = ["Denial", "denial"]

#: How far a denial reaches at most.
_FARTHEST = 10
#: Prepositions that carry a denied noun on: "no signs of leaking", "no issues with it".
_CARRY = frozenset({"of", "or", "nor", "any", "with"})
_PERSONS = frozenset({"i", "we", "you", "he", "she"})
_COPULAS = frozenset({"is", "are", "was", "were", "'s"})
_NOTICED = frozenset(
    {"see", "sign", "signs", "evidence", "indication", "indications", "think", "believe", "say", "show"}
)


@dataclass(frozen=True, slots=True)
class Denial:
    """Positions that are ``denied``, positions only looked for or warded off (``sought``), and the triggers found.

    A trigger is ``(start, end, of a verb)``.
    """

    denied: frozenset[int]
    sought: frozenset[int]
    triggers: tuple[tuple[int, int, bool], ...]

    def at(self, start: int) -> bool:
        """Whether the word at *start* is denied."""
        return start in self.denied


def _triggers(norms: Sequence[str]) -> list[tuple[int, int, bool]]:
    never = {i for a, b, _ in cues("denial", "pseudo").find(norms) for i in range(a, b)}
    counts = number_words()
    never |= {
        i for i in range(1, len(norms) - 1) if norms[i] == "no" and norms[i - 1] in counts and norms[i + 1] in counts
    }
    found = [(a, b, False) for a, b, _ in cues("denial", "of_nouns").find(norms) if a not in never]
    taken = {i for a, b, _ in found for i in range(a, b)} | never
    found += [(a, b, True) for a, b, _ in cues("denial", "of_verbs").find(norms) if a not in taken]
    return sorted(found)


def _noun_scope(norms: Sequence[str], at: int, names: AbstractSet[int], words: AbstractSet[int]) -> set[int]:
    """What "no", "without" and the like deny: the noun with what belongs to it, and what is said of it."""
    scope: set[int] = set()
    stops, verbs = members("denial", "ends"), members("clauses", "auxiliaries")
    prepositions = members("clauses", "prepositions") - _CARRY
    inside, named = True, False
    for i in range(at, min(len(norms), at + _FARTHEST)):
        word = norms[i]
        if (
            word in stops
            or (word in _PERSONS and i > at)
            or (word in {"it", "they", "there"} and norms[i + 1 : i + 2] and norms[i + 1] in verbs)
        ):
            break
        if word == "and" and i + 1 < len(norms) and i + 1 not in words:
            break
        if word in {"no", "not"} and i > at:
            break
        if word in {"or", "nor"}:
            inside = True
            continue
        if word in verbs and i > at:
            if norms[i + 1 : i + 2] in (["a"], ["an"], ["the"]) and word in _COPULAS:
                break
            inside = True
        elif word in prepositions and not (
            word in {"in", "on", "up", "out", "through", "over", "down", "off", "around"} and i in words
        ):
            inside = False
        if i in names:
            if (
                not inside
                and named
                and i - 1 not in names
                and norms[i - 1] not in prepositions | members("clauses", "determiners")
            ):
                break
            if inside and named and i - 1 not in names and norms[i - 1] not in {"of", "or", "the", "a"}:
                break  # "no handrail | loose steps"
            named = True
        if inside:
            scope.add(i)
    return scope


def _verb_scope(norms: Sequence[str], at: int, words: AbstractSet[int]) -> set[int]:
    """What "not", "never", "fails to" deny: the rest of what is said, up to a word that ends it."""
    scope: set[int] = set()
    stops, verbs = members("denial", "ends"), members("clauses", "auxiliaries")
    for i in range(at, min(len(norms), at + _FARTHEST)):
        word = norms[i]
        if word in stops or (i > at and (word in _PERSONS or word in {"no", "not"})):
            break
        if word == "and" and (i + 1 not in words or norms[i + 1].endswith("s")):
            break
        if word in verbs and i > at + 1:
            break
        if word == "that" and i > at and norms[i - 1] not in _NOTICED:
            break
        scope.add(i)
    return scope


def denial(norms: Sequence[str], names: AbstractSet[int], words: AbstractSet[int]) -> Denial:
    """The scopes of a statement. *names* are positions inside names of components, *words* where good or bad words stand."""
    triggers = _triggers(norms)
    denied: set[int] = set()
    for _, end, of_verb in triggers:
        denied ^= _verb_scope(norms, end, words) if of_verb else _noun_scope(norms, end, names, words)
    if any(w in {"free", "none"} for w in norms):
        # "rust free"; where "free" itself belongs to a good word ("swings free") nothing is denied
        denied |= {i - 1 for i, w in enumerate(norms) if i and w == "free" and i - 1 in words and i not in words}
    sought: set[int] = set()
    for _, end, _ in cues("denial", "sought").find(norms):
        sought |= _noun_scope(norms, end, frozenset(), words)
    for start, _, _ in cues("denial", "mended").find(norms):
        sought |= set(range(start))
    for _, end, _ in cues("denial", "asked").find(norms):
        sought |= set(range(end, len(norms)))
    for at, word in enumerate(norms):
        if word in members("denial", "seeking"):
            apart = next((i for i in range(at + 2, min(at + 7, len(norms))) if norms[i] == "for"), None)
            if apart is not None:
                sought |= _noun_scope(norms, apart + 1, frozenset(), words)  # "check the toilet for leaks"
    return Denial(frozenset(denied), frozenset(sought), tuple(triggers))
