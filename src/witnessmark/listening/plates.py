"""Which model or serial number is being spelled out? Letters, digits, tens, ``double``, ``dash``, the letter alphabet."""

from __future__ import annotations

from collections.abc import Sequence

from witnessmark.listening.numerals import numeral
from witnessmark.listening.repair import LETTERS
from witnessmark.listening.said_units import unit_after

__all__ = ["spelled"]

_DIGITS = {"zero": "0", "oh": "0", "one": "1", "two": "2", "three": "3", "four": "4", "five": "5", "six": "6",
           "seven": "7", "eight": "8", "nine": "9", "niner": "9"}  # fmt: skip
_TEENS = {"ten": "10", "eleven": "11", "twelve": "12", "thirteen": "13", "fourteen": "14", "fifteen": "15",
          "sixteen": "16", "seventeen": "17", "eighteen": "18", "nineteen": "19"}  # fmt: skip
_TENS = {"twenty": "2", "thirty": "3", "forty": "4", "fifty": "5", "sixty": "6", "seventy": "7", "eighty": "8",
         "ninety": "9"}  # fmt: skip
#: The spelling alphabet of the International Civil Aviation Organization, Annex 10, volume II, chapter 5.
_ALPHABET = {w: w[0] for w in (
    "alpha", "alfa", "bravo", "charlie", "delta", "echo", "foxtrot", "golf", "hotel", "india", "juliet", "kilo", "lima",
    "mike", "november", "oscar", "papa", "quebec", "romeo", "sierra", "tango", "uniform", "victor", "whiskey", "xray",
    "yankee", "zulu")}  # fmt: skip
_REPEATS = {"double": 2, "triple": 3}
#: Written letters that are common words: read as letters only between others.
_WORDS = frozenset({"a", "i", "are", "you", "see", "be", "why", "oh", "to", "for", "sea", "eye", "tea", "pea", "bee"})
_LEAD = frozenset({"number", "no", "is", "num", "of", "the", "says", "'s"})
_LEAST = 2


def _one(words: Sequence[str], index: int, *, first: bool = False) -> tuple[int, str] | None:
    word = words[index]
    if word in _REPEATS and index + 1 < len(words):
        repeated = _one(words, index + 1)
        return (repeated[0], repeated[1] * _REPEATS[word]) if repeated and len(repeated[1]) == 1 else None
    if word in {"dash", "hyphen", "minus"}:
        return index + 1, "-"
    if word in {"capital", "letter"} and index + 1 < len(words):
        return _one(words, index + 1)
    if word in {"slash", "stroke"}:
        return index + 1, "/"
    if word == "double" and index + 2 < len(words):
        return None
    if word in _DIGITS:
        return index + 1, _DIGITS[word]
    if word in _TEENS:
        return index + 1, _TEENS[word]
    if word in _TENS:
        following = _DIGITS.get(words[index + 1]) if index + 1 < len(words) and words[index + 1] != "oh" else None
        if following and following != "0":
            return index + 2, _TENS[word] + following
        return index + 1, _TENS[word] + "0"
    if word == "hundred":
        return index + 1, "00"
    if word == "thousand":
        return index + 1, "000"
    if len(word) == 1 and word.isalnum():
        return _as_in(words, index + 1), word.upper()
    if word in _ALPHABET:
        return index + 1, _ALPHABET[word].upper()
    if word in LETTERS:
        return _as_in(words, index + 1), LETTERS[word].upper()
    if word.isalpha() and first and len(word) < 4 and not set(word) & set("aeiouy"):  # noqa: PLR2004 - "CB", "NMX"
        return index + 1, word.upper()
    if any(c.isdecimal() for c in word) and word.isalnum():
        return index + 1, word.upper()
    return None


def _as_in(words: Sequence[str], end: int) -> int:
    """The end of "as in larry", "like boy", "for bravo" after a letter, or *end*."""
    for said in (("as", "in"), ("like", "in"), ("as",), ("like",), ("for",)):
        at = end + len(said)
        if tuple(words[end:at]) == said and at < len(words) and words[at].isalpha() and len(words[at]) > 2:  # noqa: PLR2004 - a word
            return at + 1
    return end


def _is_amount(words: Sequence[str], index: int) -> bool:
    """Whether an amount begins here that is no part of a number spelled out ("three one forty gallon")."""
    read = numeral(words, index)
    if read is None or (words[index] in _DIGITS and read.end > index + 1):
        return False
    return unit_after(words, read.end, form=read.form) is not None


def spelled(words: Sequence[str], index: int, hard: Sequence[bool] | None = None) -> tuple[int, int, str] | None:
    """The number spelled out from *index* on, as (start, end, text); None when fewer than two characters are.

    Words such as ``is`` and ``number`` before it are passed over. *hard* marks words after which a statement ends.

    >>> spelled("number is cue jay three six four one nine two two".split(), 0)
    (2, 11, 'QJ3641922')
    """
    start = index
    while start < len(words) and words[start] in _LEAD:
        start += 1
    at, text, solid = start, "", (start, "")
    while at < len(words) and not _is_amount(words, at):
        found = _one(words, at, first=not text)
        if found is None:
            break
        word, at, text = words[at], found[0], text + found[1]
        if word not in _WORDS:
            solid = (at, text)
        if hard is not None and hard[at - 1]:
            solid = (at, text)
            break
    end, text = solid
    text = text.strip("-/")
    return (start, end, text) if len(text) >= _LEAST and any(c.isdecimal() for c in text) else None
