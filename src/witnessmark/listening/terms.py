"""The listener's own words, read once from ``terms.toml``."""

from __future__ import annotations

import tomllib
from functools import lru_cache
from importlib.resources import files

from witnessmark.listening.phrases import Phrases
from witnessmark.listening.words import phrase

__all__ = ["corrections", "cues", "members", "own_words"]


@lru_cache(maxsize=1)
def _tables() -> dict[str, dict[str, list[str] | str]]:
    return tomllib.loads(files("witnessmark.listening").joinpath("terms.toml").read_text(encoding="utf-8"))


@lru_cache(maxsize=256)
def cues(table: str, name: str) -> Phrases[str]:
    """The phrases of one list, each standing for itself."""
    return Phrases((phrase(text), text) for text in _tables()[table][name])


@lru_cache(maxsize=256)
def members(table: str, name: str) -> frozenset[str]:
    """The single words of one list."""
    return frozenset(text for text in _tables()[table][name] if " " not in text)


@lru_cache(maxsize=1)
def own_words() -> frozenset[str]:
    """Every word of every list but the corrections: words that need no repair."""
    lists = [texts for name, table in _tables().items() if name != "corrections" for texts in table.values()]
    return frozenset(word for texts in lists for text in texts for word in phrase(text))


@lru_cache(maxsize=1)
def corrections() -> Phrases[str]:
    """What recognisers make of general words, and what was said."""
    return Phrases((phrase(heard), str(said)) for heard, said in _tables()["corrections"].items())
