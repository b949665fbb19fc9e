"""What was observed, said positively, for a law that wants to be told what was looked at."""

from __future__ import annotations

from dataclasses import dataclass

from witnessmark.journal.acts import Found, Identified, Ran, Read, Saw
from witnessmark.judging.scene import Scene
from witnessmark.packs.terms import SYSTEMS

__all__ = ["Observed", "observed"]


@dataclass(frozen=True, slots=True)
class Observed:
    """What was observed of one system: the names of its kinds, and the entries that show it."""

    system: str
    words: str
    kinds: tuple[str, ...]
    entries: tuple[str, ...]


def observed(scene: Scene) -> tuple[Observed, ...]:
    """What was observed, system by system: every kind that was seen, run, read or described. Systems in their order."""
    kinds: dict[str, dict[str, list[str]]] = {}
    for fact in scene.record.facts:
        if not isinstance(fact.body, Saw | Ran | Read | Identified | Found):
            continue
        row = scene.packs.kinds.get(scene.house.kind_of(fact))
        if row is not None:
            kinds.setdefault(row.system, {}).setdefault(row.id, []).append(fact.id)
    return tuple(
        Observed(system, words, tuple(kinds[system]), tuple(e for ids in kinds[system].values() for e in ids))
        for system, words in SYSTEMS.items()
        if system in kinds
    )
