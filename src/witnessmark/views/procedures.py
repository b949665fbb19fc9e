"""Which procedure of the packs a ``ran`` followed.

The one it names; else, of those for its kind, the ones for its part (or for no part in particular), and among them
the one whose spoken phrases share most words with what was said. A procedure that asks for a second look wins a tie:
to ask once too often costs a glance, to ask too seldom costs a ceiling.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from functools import lru_cache

from witnessmark.journal.acts import Ran
from witnessmark.packs.model import Packs, Procedure

__all__ = ["by_kind", "followed"]

_WORD = re.compile(r"[a-z0-9]+")
_SHORTEST_STEM = 3
_STOP_WORDS = frozenset({"the", "a", "an", "it", "to", "of", "on", "in", "up", "and", "that", "this", "i", "is", "all"})


@lru_cache(maxsize=8192)
def _words(text: str) -> frozenset[str]:
    """The stems of the words of a phrase: enough to hold "filled" against "fill"."""
    stems = set()
    for word in _WORD.findall(text.lower()):
        if word in _STOP_WORDS:
            continue
        stem = word
        for ending in ("ning", "ing", "ned", "ed", "es", "s"):
            if word.endswith(ending) and len(word) - len(ending) >= _SHORTEST_STEM:
                stem = word[: -len(ending)]
                break
        stems.add(stem)
    return frozenset(stems)


def by_kind(packs: Packs) -> Mapping[str, tuple[Procedure, ...]]:
    """The procedures of each kind, in the packs' order."""
    kinds: dict[str, list[Procedure]] = {}
    for procedure in packs.procedures.values():
        kinds.setdefault(procedure.kind, []).append(procedure)
    return {kind: tuple(rows) for kind, rows in kinds.items()}


def _score(procedure: Procedure, body: Ran) -> tuple[float, bool, bool]:
    said = _words(f"{body.what} {body.setting or ''}")
    shared = 0.0
    for phrase in (*procedure.said, procedure.name):
        words = _words(phrase)
        if words:
            shared = max(shared, len(words & said) / len(words))
    return shared, procedure.leaves == body.left, procedure.look_again is not None


def followed(
    body: Ran, kind: str, packs: Packs, kinds: Mapping[str, tuple[Procedure, ...]] | None = None
) -> Procedure | None:
    """The procedure that a ``ran`` of this *kind* followed, None when the packs hold none for it.

    *kinds* is ``by_kind`` of the same packs, where the caller has it already.
    """
    if body.procedure:
        named = packs.procedures.get(body.procedure)
        if named is not None:
            return named
    rows = (by_kind(packs) if kinds is None else kinds).get(kind, ())
    fitting = [row for row in rows if row.part == body.part] or [row for row in rows if row.part is None]
    if not fitting:
        return None
    if len(fitting) == 1:
        return fitting[0]
    return max(fitting, key=lambda row: _score(row, body))
