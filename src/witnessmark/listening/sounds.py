"""How a word sounds, coarsely, so that ``so fit`` can be seen to be ``soffit``.

Consonants fall into classes that recognisers confuse (voiced and unvoiced, all sibilants); vowels are left out. The
classes are our own; the idea is that of Soundex (US patent 1,261,167, 1918). Used only to compare words spoken side
by side with a phrase of the packs, behind a second comparison of the spelling.
"""

from __future__ import annotations

from difflib import SequenceMatcher
from functools import lru_cache

__all__ = ["close_in_spelling", "sound"]

_PAIRS = (
    ("tch", "S"), ("dge", "S"), ("dg", "S"), ("sch", "SK"), ("ch", "S"), ("sh", "S"), ("ph", "F"), ("gh", ""),
    ("ck", "K"), ("wr", "R"), ("kn", "N"), ("qu", "K"), ("x", "KS"), ("th", "T"), ("wh", ""), ("mb", "M"),
    ("ci", "S"), ("ce", "S"), ("cy", "S"), ("ge", "S"), ("gi", "S"), ("si", "S"), ("ti", "T"), ("ng", "N"),
)  # fmt: skip
_SINGLE = {
    "b": "P", "p": "P", "d": "T", "t": "T", "g": "K", "k": "K", "c": "K", "q": "K", "f": "F", "v": "F", "s": "S",
    "z": "S", "j": "S", "l": "L", "r": "R", "m": "M", "n": "N",
}  # fmt: skip


@lru_cache(maxsize=20_000)
def sound(word: str) -> str:
    """Classes of the consonants of a word, in order, doubled letters once, a stop after another consonant at the end left out.

    >>> sound("soffit"), sound("so") + sound("fit"), sound("joist"), sound("choice"), sound("ledger"), sound("leisure")
    ('SFT', 'SFT', 'SS', 'SS', 'LSR', 'LSR')
    """
    classes: list[str] = []
    index, vowel_between = 0, True
    while index < len(word):
        letters, made = next(
            (pair for pair in _PAIRS if word.startswith(pair[0], index)), (word[index], _SINGLE.get(word[index], ""))
        )
        for one in made:
            if vowel_between or not classes or classes[-1] != one:
                classes.append(one)
            vowel_between = False
        if not made or (len(letters) > 1 and letters[-1] in "aeiouy"):
            vowel_between = True
        index += len(letters)
    if len(classes) > 2 and classes[-1] in "TK" and word[-1] in "tdk" and word[-2] not in "aeiouyc":  # noqa: PLR2004
        classes.pop()
    if classes[-2:] == ["T", "T"]:
        classes.pop()  # "corroded" ends as "owed" does
    return "".join(classes)


@lru_cache(maxsize=20_000)
def close_in_spelling(one: str, other: str, least: float) -> bool:
    """Whether two spellings agree at least so far (0 to 1, ratio of common letters)."""
    # The letters they have in common, in whatever order, bound the ratio; most pairs fall here.
    enough = least * (len(one) + len(other)) / 2 - 1e-9  # rounding must not decide
    if min(len(one), len(other)) < enough or sum(min(one.count(c), other.count(c)) for c in set(one)) < enough:
        return False
    return SequenceMatcher(None, one, other).ratio() >= least
