"""The listener's own words, read once from ``terms.toml``; what is wrong and right, from ``polarity.toml``."""

from __future__ import annotations

import tomllib
from functools import lru_cache
from importlib.resources import files
from typing import Any

from witnessmark.listening.inflection import forms, plural
from witnessmark.listening.phrases import Phrases
from witnessmark.listening.words import phrase

__all__ = ["corrections", "cues", "listed", "members", "own_words"]


_DOES = ("does", "do", "did")
#: "Kicked right on", "lights right off": what answers at once.
_ANSWERS = ("kicked", "kicks", "fired", "fires", "came", "comes", "lit", "lights", "started", "starts", "turned", "turns", "goes",
            "went", "spun", "spins", "drains", "drained", "closed", "closes", "opened", "opens", "shut", "shuts", "heats", "popped")  # fmt: skip
_WAYS = ("on", "up", "off", "away", "out", "down")
_FAILS = ("does not", "do not", "did not", "will not", "would not")


#: "Drain well", "looks good": of one thing and of several.
_DOING = ("drains", "drain", "works", "work", "looks", "look", "runs", "run", "opens", "open", "closes", "close", "pulls", "pull", "heats",
          "heat", "cools", "cool", "flushes", "flush", "sounds", "sound", "feels", "feel", "seems", "seem", "tests", "test", "checks",
          "spins", "spin", "slides", "slide", "latches", "latch", "locks", "lock", "fits", "fit", "seals", "seal", "drained", "worked",
          "ran", "flushed", "pulled", "tested", "opened", "closed", "operates", "operate", "operated", "functions", "function")  # fmt: skip
_WELL = ("well", "fine", "good", "great", "okay", "ok", "nice", "smooth", "smoothly", "properly", "correctly", "perfectly", "quick",
         "quickly", "easy", "easily", "freely", "tight", "solid", "normal", "normally", "alright", "like new", "just fine", "pretty good",
         "real good", "real well", "very well", "fast")  # fmt: skip
#: "Rusted right through", "pulled clean out".
_FULLY = ("right", "clean", "completely", "all the way", "totally", "partly", "partially", "clear", "way")
_TO_THE_END = frozenset({"out", "off", "through", "away", "apart", "down", "loose", "over", "in", "up"})


def _sound(right: dict[str, list[str]], works: list[str]) -> list[str]:
    """All phrases for what is as it should be, those made by rule among them."""
    made = [f"{do} {verb}" for do in _DOES for verb in works] + [
        f"{verb} right {way}" for verb in _ANSWERS for way in _WAYS
    ]
    phrases = right["phrases"] + [f"{verb} {well}" for verb in _DOING for well in _WELL]
    return made + right["adjectives"] + right["adverbs"] + right["forms"] + phrases


def _parts_with_way(text: str) -> bool:
    """Whether a phrase is a verb with its particle."""
    verb, _, way = text.partition(" ")
    return way in _TO_THE_END and verb.endswith(("ed", "ing", "en", "ll", "wn", "ke", "re", "rn"))


def _read(name: str) -> dict[str, dict[str, Any]]:
    return tomllib.loads(files("witnessmark.listening").joinpath(name).read_text(encoding="utf-8"))


@lru_cache(maxsize=1)
def _tables() -> dict[str, dict[str, Any]]:
    tables = _read("terms.toml")
    polarity = _read("polarity.toml")
    wrong, right = polarity["wrong"], polarity["right"]
    adverse = [form for verb in wrong["verbs"] for form in forms(verb)]
    adverse += [form for verb in wrong["done"] for form in forms(verb, present=False)]
    adverse += [form for noun in wrong["nouns"] for form in (noun, plural(noun))]
    adverse += wrong["forms"] + wrong["adjectives"] + wrong["adverbs"] + wrong["phrases"]
    adverse += [text.replace(" ", f" {how} ") for text in adverse if _parts_with_way(text) for how in _FULLY]
    adverse += [text.replace(" its ", " their ") for text in wrong["phrases"] if " its " in text]
    adverse += [f"{fails} {verb}" for fails in _FAILS for verb in polarity["works"]["verbs"]]
    tables["conditions"] |= {
        "adverse": list(dict.fromkeys(adverse)),
        "sound": list(dict.fromkeys(_sound(right, polarity["works"]["verbs"]))),
        "fitted": polarity["fitted"]["words"],
    }
    tables |= {
        "neutral": polarity["neutral"],
        "works": polarity["works"],
        "denial": polarity["denial"],
        "absence": polarity["absence"],
    }
    return tables


@lru_cache(maxsize=256)
def cues(table: str, name: str) -> Phrases[str]:
    """The phrases of one list, each standing for itself."""
    return Phrases((phrase(text), text) for text in _tables()[table][name])


@lru_cache(maxsize=256)
def members(table: str, name: str) -> frozenset[str]:
    """The single words of one list."""
    return frozenset(text for text in _tables()[table][name] if " " not in text)


@lru_cache(maxsize=256)
def listed(table: str, name: str) -> frozenset[str]:
    """All entries of one list as they are written, phrases too."""
    return frozenset(_tables()[table][name])


#: Tables of words that can also be misheard names.
_COMMON = frozenset({"corrections", "neutral", "denial", "absence", "works"})


@lru_cache(maxsize=1)
def own_words() -> frozenset[str]:
    """Every word of every list but the corrections: words that need no repair."""
    lists = [texts for name, table in _tables().items() if name not in _COMMON for texts in table.values()]
    return frozenset(word for texts in lists for text in texts for word in phrase(text))


@lru_cache(maxsize=1)
def corrections() -> Phrases[str]:
    """What recognisers make of general words, and what was said."""
    return Phrases((phrase(heard), str(said)) for heard, said in _tables()["corrections"].items())
