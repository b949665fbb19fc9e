"""Write up: what a client must be told and no finding tells yet.

Opened by an adverse ``saw`` or ``absent``, a photo of damage that no adverse fact carries (``views.adverse``), and a
reading beyond a limit. Closed by a ``found`` that rests on it, or a ``settled`` about it that gives the reason. A
reading beyond several limits is one loose end.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from witnessmark.judging.model import JudgedReading, LooseEnd
from witnessmark.judging.scene import Scene
from witnessmark.views.adverse import reasoned_dismissal
from witnessmark.views.moments import instant

__all__ = ["write_up"]

_NEXT = "Write a finding that rests on it, or settle it with the reason why it is none."


def _stated(scene: Scene) -> Iterator[LooseEnd]:
    for row in scene.adverse:
        if row.dealt_with_by is not None or row.carried_by is not None:
            continue
        thing = scene.where(row.fact)
        words = f"{thing}: {row.words}" if thing and row.words else thing or row.words or "adverse"
        kind = scene.packs.kinds.get(scene.house.kind_of(row.fact))
        yield LooseEnd(
            sort="write up",
            key=f"write up {row.fact.id}",
            words=words,
            entries=(row.fact.id, *row.evidence),
            place=scene.house.place_of(row.fact),
            component=row.fact.component,
            opened=instant(row.fact.at),
            next=_NEXT,
            cautions=kind.cautions if kind else (),
        )


def _beyond(scene: Scene, judged: Sequence[JudgedReading]) -> Iterator[LooseEnd]:
    rows: dict[str, list[JudgedReading]] = {}
    for row in judged:
        if row.verdict == "beyond":
            rows.setdefault(row.entry, []).append(row)
    for entry, beyond in rows.items():
        if entry in scene.found or reasoned_dismissal(scene.decisions, entry):
            continue
        fact = scene.facts[entry]
        thing = scene.where(fact)
        words = " ".join(row.words for row in beyond)
        cautions = dict.fromkeys(c for row in beyond if row.criterion for c in row.criterion.cautions)
        yield LooseEnd(
            sort="write up",
            key=f"write up {entry}",
            words=f"{thing}: {words}" if thing else words,
            entries=(entry,),
            place=scene.house.place_of(fact),
            component=fact.component,
            opened=instant(fact.at),
            next=_NEXT,
            cautions=tuple(cautions),
        )


def write_up(scene: Scene, judged: Sequence[JudgedReading]) -> Iterator[LooseEnd]:
    """The loose ends *write up*: what was seen, missed or photographed, then readings beyond their limits."""
    yield from _stated(scene)
    yield from _beyond(scene, judged)
