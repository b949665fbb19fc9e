"""Which unit do the words after a number name? Units as they are spoken and written in the trade."""

from __future__ import annotations

from collections.abc import Sequence
from functools import lru_cache

from witnessmark.listening.phrases import Phrases
from witnessmark.listening.words import phrase
from witnessmark.units.names import NAMES

__all__ = ["ONE_OF", "unit_after"]

#: Names of units that are common words, read as units only when written, never when spoken.
_NOT_SPOKEN = frozenset({"in", "m", "a", "s", "d", "h", "f", "c", "v", "w", "n", "l", "g", "k", "ins", "deg", "thou",
                         "bar", "sec", "secs", "second", "seconds", "each", "ea", "fourth", "pa", "lb/h", "ton"})  # fmt: skip
#: How units are spoken beside their names; common practice, no source.
_SPOKEN = {
    "[degF]": ("degrees", "degree", "degrees f", "degs"),
    "Cel": ("degrees celsius",),
    "[in_i]": ("inche", "inchs"),
    "[in_i]/[ft_i]": ("inch per foot", "inches per foot", "inch a foot", "inches a foot", "inch to the foot",
                      "inches to the foot", "inch to a foot", "in twelve pitch", "over twelve"),
    "[in_i'H2O]": ("inches of water column", "inch of water column", "inch water column", "inches w c", "inches of w c",
                   "inch w c", "water column", "inches of column"),
    "[sft_i]": ("square feet", "square foot", "squares feet", "square ft"),
    "[cft_i]/min": ("c f m", "cubic feet a minute", "cfms"),
    "[cft_i]/h": ("c f h", "cubic feet an hour"),
    "[Btu_IT]/h": ("btu", "btus", "b t u", "b t us", "btu an hour", "btus an hour", "btus per hour", "b t u an hour",
                   "btuh", "btu in", "btu input"),
    "12000.[Btu_IT]/h": ("tons", "ton"),
    "[gal_us]": ("gallon",),
    "[gal_us]/min": ("gallon a minute", "gallon per minute", "g p m", "gallons minute"),
    "[psi]": ("pounds of pressure", "pound of pressure", "p s i", "psi g"),
    "V": ("volt",), "A": ("amps", "amp"), "mA": ("milliamps", "milli amps"), "kV.A": ("kva", "k v a"),
    "kW": ("kilowatt", "k w"), "Ohm": ("ohms",), "W": ("watts",),
    "[ppm]": ("part per million", "p p m", "parts a million"),
    "[HP]": ("horse", "horse power", "horse motor"),
    "um": ("micron", "microns"), "[mil_i]": ("mil", "mils"),
    "[sft_i].[degF].h/[Btu_IT]": ("r value",),
    "pCi/L": ("picocuries", "picocurie"),
    "s": ("seconds",), "dB": ("decibels",), "[mi_i]/h": ("miles an hour",),
    "mK": ("milli kelvin", "m k"), "mrad": ("milli radians", "mrads", "m rad"),
}  # fmt: skip
#: Single letters stuck to a written number.
_LETTERS = {"f": "[degF]", "a": "A", "v": "V"}
#: After these "14 in" is inches, not a place.
_SIZED = frozenset({"wide", "high", "long", "deep", "tall", "thick", "on", "diameter", "by", "x"})
#: Units of which one is said as "an inch", "a foot": their words, never those of time.
ONE_OF = {"inch": "[in_i]", "foot": "[ft_i]", "degree": "[degF]", "yard": "[yd_i]", "gallon": "[gal_us]"}


@lru_cache(maxsize=1)
def _names() -> Phrases[str]:
    rows = [(phrase(text), code) for code, texts in _SPOKEN.items() for text in texts]
    for code, names in NAMES.items():
        for name in names:
            words = phrase(name)
            spoken = name.replace(" ", "").replace("/", "").isalpha() and name.lower() not in _NOT_SPOKEN
            if words and spoken and len(name) > 1 and "." not in name:
                rows.append((words, code))
    return Phrases(rows)


def unit_after(words: Sequence[str], index: int, *, form: str) -> tuple[int, str] | None:
    """End and UCUM code of the unit at *index*, after a number of the given form.

    >>> unit_after("of an inch wide".split(), 0, form="fraction")
    (3, '[in_i]')
    """
    at = index
    if form == "fraction" and at < len(words) and words[at] in {"of", "a", "an"}:
        at += 1  # "an eighth of an inch", "half an inch"
        if at < len(words) and words[at] in {"a", "an"}:
            at += 1
    elif form == "lot" and words[at : at + 1] == ["of"]:
        at += 1  # "a couple of inches"
    elif words[at : at + 1] in (["or"], ["some"], ["odd"], ["plus"]) and words[at] != "or":
        at += 1  # "twenty some feet"
    elif words[at : at + 2] == ["or", "so"]:
        at += 2  # "forty or so degrees"
    if at >= len(words):
        return None
    found = _names().at(words, at)
    if found is None and words[at] in _LETTERS and form == "digits":
        return at + 1, _LETTERS[words[at]]
    if found is None and words[at] == "in" and form == "digits" and (at + 1 == len(words) or words[at + 1] in _SIZED):
        return at + 1, "[in_i]"
    if found is None and words[at] == "parts" and words[at + 1 : at + 2] not in (["of"], ["are"], ["is"]):
        return at + 1, "[ppm]"  # "zero parts"
    return found
