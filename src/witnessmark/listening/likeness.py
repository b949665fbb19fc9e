"""How alike do two words sound? From 0 to 1, by an edit distance over sounds, with the spelling beside it.

A word is written by its sounds, roughly as English spells them; then the cheapest way from one row of sounds to the
other is found (Wagner and Fischer, "The string-to-string correction problem", Journal of the ACM 21, 1974), where what
recognisers take for each other costs less: voiced for unvoiced, one vowel for another. The costs are our own.
"""

from __future__ import annotations

from difflib import SequenceMatcher
from functools import lru_cache
from math import inf

__all__ = ["likeness"]

_SOUNDS = (
    ("tion", "Sn"), ("sion", "Sn"), ("tch", "C"), ("dge", "J"), ("sch", "sk"), ("ch", "C"), ("sh", "S"), ("ph", "f"),
    ("gh", ""), ("ck", "k"), ("wr", "r"), ("kn", "n"), ("qu", "kw"), ("x", "ks"), ("th", "T"), ("wh", "w"), ("mb", "m"),
    ("ce", "se"), ("ci", "si"), ("cy", "si"), ("ge", "Je"), ("gi", "Ji"), ("tu", "Cu"), ("ng", "n"), ("c", "k"),
    ("q", "k"), ("j", "J"),
)  # fmt: skip
_VOWELS = frozenset("aeiouy")
_ALIKE = ("pb", "td", "kg", "fv", "sz", "CJ", "CS", "JS", "sS", "zS", "Tf", "Td", "Tt", "mn", "lr", "Cs", "Js", "zJ")
_CLOSE = ("pt", "pk", "tk", "bd", "bg", "dg", "pf", "bv", "fs", "fh", "Ts", "tC", "dJ", "ts", "vw", "bm", "dn", "wr", "wl",
          "dl", "bf", "dk", "gt", "bt", "pd")  # fmt: skip
_COST = {frozenset(pair): 0.6 for pair in _CLOSE} | {frozenset(pair): 0.3 for pair in _ALIKE}
_ONE_VOWEL, _VOWEL_FOR_CONSONANT, _UNLIKE = 0.2, 1.2, 1.0
#: What it costs to leave out a vowel, a breath, any other sound.
_NO_VOWEL, _NO_BREATH, _NO_CONSONANT = 0.35, 0.4, 0.8
_BY_SOUND, _BY_SPELLING = 0.75, 0.25
_LETTERS_LEFT = 2


@lru_cache(maxsize=20_000)
def _sounds(word: str) -> str:
    """The sounds of a word, one sign each; vowels side by side count once, as do doubled letters."""
    made: list[str] = []
    at = 0
    while at < len(word):
        letters, sounds = next((row for row in _SOUNDS if word.startswith(row[0], at)), (word[at], word[at]))
        at += len(letters)
        for one in sounds:
            if not made or not (made[-1] == one or (one in _VOWELS and made[-1] in _VOWELS)):
                made.append(one)
    if len(made) > _LETTERS_LEFT and made[-1] == "e" and made[-2] not in _VOWELS:
        made.pop()  # "pipe"
    return "".join(made)


def _swap(one: str, other: str) -> float:
    if one == other:
        return 0.0
    vowels = (one in _VOWELS) + (other in _VOWELS)
    if vowels:
        return _ONE_VOWEL if vowels > 1 else _VOWEL_FOR_CONSONANT
    return _COST.get(frozenset((one, other)), _UNLIKE)


def _gap(one: str) -> float:
    return _NO_VOWEL if one in _VOWELS else _NO_BREATH if one in "hw" else _NO_CONSONANT


_LETTERS = "abcdefghijklmnopqrstuvwxyzCJST"
_SWAPS = {one: {other: _swap(one, other) for other in _LETTERS} for one in _LETTERS}
_GAPS = {one: _gap(one) for one in _LETTERS}


def _distance(one: str, other: str, most: float) -> float:
    """The cheapest way from one row of sounds to another; infinity as soon as it must cost more than *most*."""
    row = [0.0]
    for b in other:
        row.append(row[-1] + _GAPS[b])
    for a in one:
        before, swaps, gap = row, _SWAPS[a], _GAPS[a]
        last = before[0] + gap
        row = [last]
        for at, b in enumerate(other):
            last = min(before[at] + swaps[b], before[at + 1] + gap, last + _GAPS[b])
            row.append(last)
        if min(row) > most:
            return inf
    return row[-1]


@lru_cache(maxsize=20_000)
def _weight(sounds: str) -> float:
    return sum(0.5 if one in _VOWELS else 1.0 for one in sounds) or 1.0


def likeness(heard: str, word: str, least: float = 0.0) -> float:
    """How alike two words of the letters a to z are: 1.0 for the same, about 0.8 for one consonant taken for another.

    Below *least*, 0.0 may stand for it.

    >>> [round(likeness("burger", word), 2) for word in ("burner", "boiler")]
    [0.81, 0.68]
    """
    one, other = _sounds(heard), _sounds(word)
    longest = max(_weight(one), _weight(other))
    distance = _distance(
        one, other, longest * (1 - (least - _BY_SPELLING) / _BY_SOUND) + 1e-9
    )  # rounding must not decide
    if distance == inf:
        return 0.0
    alike = _BY_SOUND * (1 - distance / longest) + _BY_SPELLING * SequenceMatcher(None, heard, word).ratio()
    return max(0.0, alike)
