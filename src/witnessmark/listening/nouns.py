"""Which noun phrase is the subject, where the packs have no name for it?"""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache

from witnessmark.listening.grammar import GRAMMAR
from witnessmark.listening.numerals import number_words
from witnessmark.listening.places import places_in
from witnessmark.listening.sense import is_wrong
from witnessmark.listening.statement import Statement
from witnessmark.listening.terms import cues, members
from witnessmark.listening.words import stem

__all__ = ["Phrase", "noun_phrase", "stands_for_known"]

#: The longest noun phrase, in nouns; a longer run of strange words is no name.
_MOST = 4
#: Nouns have this many letters at least ("eye").
_SHORTEST = 3
#: What opens a statement that only says what is there.
_OPENINGS = (["there", "is"], ["there", "are"], ["there", "was"], ["there", "were"], ["i", "see"], ["i", "have"], ["we", "have"],
             ["i", "got"], ["we", "got"])  # fmt: skip


@dataclass(frozen=True, slots=True)
class Phrase:
    """A noun phrase: its nouns stand from *start* to *end*, the last one is what it is. ``bare``: nothing follows."""

    start: int
    end: int
    bare: bool


@cache
def _small() -> frozenset[str]:
    """Words that are no nouns: the closed classes, and verbs that are not used as names of things."""
    return (
        GRAMMAR.determiners
        | GRAMMAR.quantifiers
        | GRAMMAR.aux
        | GRAMMAR.prepositions
        | GRAMMAR.conjunctions
        | GRAMMAR.subordinators
        | GRAMMAR.conditionals
        | GRAMMAR.subjects
        | GRAMMAR.personal
        | GRAMMAR.adverbs
        | GRAMMAR.locatives
        | GRAMMAR.verbs
        | GRAMMAR.doing
        | GRAMMAR.happening
        | (GRAMMAR.adjectives - {"light", "top", "bottom"})
        | number_words()
        | members("names", "no_things")
        | members("scopes", "people")
        | members("scopes", "sources")
        | members("names", "ordinals")
        | members("names", "states")
    )


def _is_noun(st: Statement, at: int, taken: frozenset[int]) -> bool:
    word = st.norms[at]
    if at in st.masked:
        return True
    return (
        word.isalpha()
        and len(word) >= _SHORTEST
        and at not in taken
        and word not in _small()
        and not is_wrong(word)
        and word not in members("conditions", "sound")
        and not word.endswith(("ing", "ly"))
        and not (word.endswith("ed") and len(word) > _MOST)
    )


def _taken(st: Statement) -> frozenset[int]:
    """Positions inside values, numbers, plates, instruments, places, and phrases that judge."""
    spans = [(v.start, v.end) for v in st.values] + [(q.start, q.end) for q in st.quantities]
    spans += [(p.start, p.end) for p in st.plates] + st.instruments
    spans += [(a, b) for a, b, _ in places_in(st.norms, st.stems, st.scene.lexicon)]
    spans += [(a, b) for name in ("adverse", "sound") for a, b, _ in cues("conditions", name).find(st.norms)]
    return frozenset(i for a, b in spans for i in range(a, b))


def noun_phrase(st: Statement) -> Phrase | None:
    """The noun phrase with which the statement opens, or None where it opens with something else.

    It has to be followed by what can follow a subject: a verb, a judgement, a preposition, a number, or nothing.
    """
    norms, at = st.norms, st.opening()
    if norms[at : at + 2] in _OPENINGS:
        at += 2
    elif norms[at : at + 1] in (["no"], ["got"]):
        at += 1
    before = (
        GRAMMAR.determiners | GRAMMAR.adjectives | GRAMMAR.quantifiers | members("names", "ordinals") | number_words()
    )
    determined = False
    while at < len(norms) and norms[at] in before and at not in st.masked:
        determined = determined or norms[at] in GRAMMAR.determiners
        at += 1
    taken = _taken(st)
    end = at
    while end < len(norms) and _is_noun(st, end, taken):
        end += 1
    if end == at or end - at > _MOST + 1:
        return None
    if end < len(norms) and norms[end] in GRAMMAR.determiners and end - at > 1 and norms[end - 1].endswith("s"):
        end -= 1  # "the trunk touches the ground": a verb before its object
    if end == len(norms):
        return Phrase(at, end, bare=True)
    word = norms[end]
    follows = (
        word in GRAMMAR.aux
        or word in GRAMMAR.verbs
        or word in GRAMMAR.plural
        or word in GRAMMAR.prepositions
        or word in GRAMMAR.adverbs
        or word in GRAMMAR.determiners
        or word in GRAMMAR.conjunctions
        or word in GRAMMAR.happening
        or end in taken
        or is_wrong(word)
        or word in members("conditions", "sound")
        or word.endswith(("ing", "ed"))
        or word in members("names", "states")
        or word in number_words()
        or word in GRAMMAR.adjectives
    )
    verb = word in GRAMMAR.aux or word in GRAMMAR.verbs or end in taken or is_wrong(word)
    if not follows or not (determined or verb or end - at > 1 or norms[end - 1] not in GRAMMAR.taking):
        return None
    return Phrase(at, end, bare=False)


def stands_for_known(st: Statement, at: int) -> bool:
    """Whether the packs or the term lists know the word at a position."""
    known = st.scene.lexicon.known
    return stem(st.norms[at]) in known or st.norms[at] in known
