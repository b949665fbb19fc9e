"""Does a new statement begin before this word? A small model beside the rules, learned from text that we wrote.

An averaged perceptron (Freund and Schapire, "Large margin classification using the perceptron algorithm", 1999; Collins
2002) adds up weights of what stands around a place: the words, their classes, what the packs name there, where the rules of
``clauses`` would cut, how long it is since they did, and where captions break. It only adds cuts to those of the rules; it
takes none away. ``boundaries.json`` holds the weights, with the hash of the text they were learned from;
``tools/train_boundaries`` makes it again, the same to the byte.
"""

from __future__ import annotations

import json
from collections.abc import Collection, Iterator, Sequence
from dataclasses import dataclass
from functools import cache, lru_cache
from itertools import repeat
from pathlib import Path

from witnessmark.listening.grammar import GRAMMAR
from witnessmark.listening.syntax import Mark
from witnessmark.listening.words import Token

__all__ = ["WEIGHTS", "Around", "familiar", "features", "model_cuts", "word_class"]

WEIGHTS = Path(__file__).with_name("boundaries.json")
#: Distances since the last cut are told apart up to so many words.
_FAR, _NEAR = 9, 5
#: How far back and ahead a name and a verb are looked for.
_BACK, _AHEAD, _AHEAD_VERB = 8, 4, 5
#: Words that are one statement where marks or pauses stand around them.
_ONE_STATEMENT = 8
#: Classes of words that may be the verb of a statement.
_VERBAL = frozenset("XVdg")


@lru_cache(maxsize=20_000)
def word_class(word: str) -> str:
    """One letter for what a word does: the closed classes of the language first, then its ending.

    >>> [word_class(word) for word in ("it", "is", "painting", "12", "and")]
    ['P', 'X', 'g', '0', 'C']
    """
    if not word:
        return "#"
    for letter, members in _classes():
        if word in members:
            return letter
    if any(sign.isdigit() for sign in word):
        return "0"
    for ending, letter in (("ing", "g"), ("ed", "d"), ("ly", "y"), ("s", "s")):
        if word.endswith(ending):
            return letter
    return "o"


@cache
def _classes() -> tuple[tuple[str, frozenset[str]], ...]:
    return (
        ("P", GRAMMAR.personal | {"it", "there", "this", "that", "these", "those"}),
        ("X", GRAMMAR.aux),
        ("N", frozenset({"not", "no", "never", "nothing", "none"})),
        ("C", GRAMMAR.conjunctions),
        ("S", GRAMMAR.subordinators | GRAMMAR.conditionals),
        ("D", GRAMMAR.determiners),
        ("T", GRAMMAR.particles),
        ("I", GRAMMAR.prepositions),
        ("L", GRAMMAR.locatives),
        ("A", GRAMMAR.adverbs),
        ("V", GRAMMAR.verbs | GRAMMAR.doing),
        ("J", GRAMMAR.judging),
        ("Q", GRAMMAR.quantifiers),
    )


@dataclass(frozen=True, slots=True)
class Around:
    """What the model looks at: the tokens, what is named in them, where the rules cut, and in which line each stands.

    ``lines`` gives the caption line of each token, ``pace`` the seconds a word of each line.
    """

    tokens: Sequence[Token]
    marks: Sequence[Mark]
    rules: Collection[int]
    lines: Sequence[int]
    pace: Sequence[float]


def features(around: Around) -> Iterator[tuple[int, list[str]]]:
    """For each place where a statement may begin, what is true of it. A place is the index of the token after it."""
    norms = [token.norm for token in around.tokens]
    size = len(norms)
    words = ["", "", *norms, "", ""]  # two beyond each end
    kinds = [word_class(word) for word in words]
    starts, ends, inside = _named(around.marks)
    things = [starts.get(i, "-").startswith("co") for i in range(size + _AHEAD)]
    verbs = [kind in _VERBAL for kind in kinds[2:]] + [False] * _AHEAD_VERB
    rules = around.rules
    last = 0
    for i in range(1, size):
        if i - 1 in rules:
            last = i - 1
        if i in inside:
            continue  # nothing begins inside a name or a quantity
        a, b, c, d = words[i], words[i + 1], words[i + 2], words[i + 3]
        ka, kb, kc, kd, ke = kinds[i : i + 5]
        here, ended, following = starts.get(i, "-"), ends.get(i, "-"), starts.get(i + 1, "-")
        cut = "R" if i in rules else "r"
        since = max(last, i - _BACK)
        parts = f"{+any(things[since:i])}{+any(verbs[since:i])}{+any(things[i : i + _AHEAD])}{+any(verbs[i : i + _AHEAD_VERB])}"
        found = [
            f"a{c}", f"b{b}", f"c{d}", f"d{a}", f"e{b}|{c}", f"f{c}|{d}", f"g{kb}{kc}{kd}", f"h{ka}{kb}{kc}{kd}", f"i{kb}{kc}",
            f"j{kc}{kd}{ke}", f"k{kb}|{c}", f"l{b}|{kc}", f"m{ended}{here}{kc}", f"n{here}{kb}",
            f"o{ended}{here}{following}{kb}{kc}", f"p{ended}|{c}", f"q{here}|{b}", cut, f"s{cut}{kb}{kc}", f"t{cut}{here}{ended}",
            "u" if i + 1 in rules else "v", "w" if i - 1 in rules else "x", f"y{min(i - last, _FAR)}",
            f"z{min(i - last, _NEAR)}{cut}", f"A{parts}", f"B{parts}{here}",
        ]  # fmt: skip
        line = around.lines[i - 1]
        if around.lines[i] != line:
            found += ["E", f"F{_paced(around.pace[line])}"]
        yield i, found


def _named(marks: Sequence[Mark]) -> tuple[dict[int, str], dict[int, str], set[int]]:
    """What is named where each name begins and ends, and the places inside names."""
    starts: dict[int, str] = {}
    ends: dict[int, str] = {}
    inside: set[int] = set()
    for mark in marks:
        sort = mark.sort[:2] + ("w" if mark.weak else "")
        starts.setdefault(mark.start, sort)
        ends[mark.end] = sort
        inside.update(range(mark.start + 1, mark.end))
    return starts, ends, inside


def _paced(seconds: float) -> int:
    """How slowly a line was spoken, in four steps: a slow one held a pause."""
    return sum(seconds >= step for step in (0.42, 0.5, 0.65))


@cache
def _weights() -> tuple[dict[str, int], int]:
    kept = json.loads(WEIGHTS.read_text(encoding="utf-8"))
    return kept["weights"], kept["above"]


@cache
def familiar() -> frozenset[str]:
    """Words seen often in the talk that was learned from: the everyday words of a visit."""
    return frozenset(name[1:] for name in _weights()[0] if name[0] in "bc" and name[1:].isalpha())


def model_cuts(around: Around) -> list[int]:
    """The places at which the model begins a new statement, in order."""
    weights, above = _weights()
    get, nothing = weights.get, repeat(0)
    short = _short_runs(around.tokens)
    return [place for place, found in features(around) if place not in short and sum(map(get, found, nothing)) > above]


def _short_runs(tokens: Sequence[Token]) -> set[int]:
    """Places in runs between marks or pauses that are no longer than a statement: whoever set those knew better."""
    inside: set[int] = set()
    begin = 0
    for index, token in enumerate(tokens):
        if token.hard or index + 1 == len(tokens):
            if index + 1 - begin <= _ONE_STATEMENT:
                inside.update(range(begin, index + 1))
            begin = index + 1
    return inside
