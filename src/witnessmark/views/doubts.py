"""What the inspector was not sure of, and what made it sure.

A doubt is opened by ``doubted``, and by a ``saw`` that is not sure (``sure`` false, or state ``unclear``). It is
closed by a ``settled`` about it (or about the entry it doubts), and by what comes later on the same component and
part, or of the same kind and part in the same place where neither names a component (a doubt that names neither stands where the entry it doubts does): a ``saw`` that is sure, a
``skipped``, and, for a doubt about an attribute, an ``identified`` of that attribute.
"""

from __future__ import annotations

from dataclasses import dataclass

from witnessmark.journal.acts import Doubted, Identified, Saw, Skipped
from witnessmark.journal.fold import Fact, Record
from witnessmark.views.decisions import Decisions, decisions
from witnessmark.views.house import House, house

__all__ = ["Doubt", "doubts"]


@dataclass(frozen=True, slots=True)
class Doubt:
    """One doubt: the fact that opened it, what it is about in words, and the fact that closed it, if any."""

    fact: Fact
    words: str
    about: str | None
    closed_by: Fact | None


_Spot = tuple[str | None, str, str | None, str | None]


def _spot(fact: Fact, home: House, part: str | None) -> _Spot | None:
    """Where the thing meant is: the component and part, or the kind, place and part; None when neither is known."""
    if fact.component:
        return fact.component, "", None, part
    kind = home.kind_of(fact)
    return (None, kind, home.place_of(fact), part) if kind else None


def unsure(body: Saw) -> bool:
    """Whether a ``saw`` leaves open what was seen."""
    return not body.sure or body.state == "unclear"


class _Waiting:
    """Doubts without an answer yet, by where they are and which attribute they are about."""

    def __init__(self) -> None:
        self._spots: dict[_Spot, dict[str | None, list[Fact]]] = {}

    def add(self, spot: _Spot, attribute: str | None, doubt: Fact) -> None:
        self._spots.setdefault(spot, {}).setdefault(attribute, []).append(doubt)

    def answered_by(self, fact: Fact, home: House) -> list[Fact]:
        """The doubts that *fact* answers; they wait no longer."""
        body = fact.body
        if not isinstance(body, Saw | Skipped | Identified) or (isinstance(body, Saw) and unsure(body)):
            return []
        spot = _spot(fact, home, body.part)
        if spot is None or spot not in self._spots:
            return []
        if isinstance(body, Identified):
            return self._spots[spot].pop(body.attribute, []) if body.attribute else []
        return [doubt for doubts in self._spots.pop(spot).values() for doubt in doubts]


def doubts(record: Record, home: House | None = None, settled: Decisions | None = None) -> tuple[Doubt, ...]:
    """Every doubt of *record*, in order. Linear in the facts.

    *home* and *settled* are the house and the decisions of the same record, where the caller has them already.
    """
    home = home or house(record)
    settled = settled or decisions(record)
    closes: dict[str, Fact] = {}
    waiting = _Waiting()
    opened: list[tuple[Fact, str, str | None]] = []
    doubted = {f.body.of for f in record.facts if isinstance(f.body, Doubted) and f.body.of}
    named = {fact.id: fact for fact in record.facts if fact.id in doubted} if doubted else {}
    for fact in record.facts:
        body = fact.body
        closes.update((doubt.id, fact) for doubt in waiting.answered_by(fact, home))
        if isinstance(body, Doubted):
            opened.append((fact, body.what, body.of))
        elif isinstance(body, Saw) and unsure(body):
            opened.append((fact, body.what, None))
        else:
            continue
        spot = _spot(fact, home, body.part)
        doubted_fact = named.get(body.of or "") if isinstance(body, Doubted) else None
        if spot is None and doubted_fact is not None:
            spot = _spot(doubted_fact, home, body.part or getattr(doubted_fact.body, "part", None))
        if spot is not None:
            waiting.add(spot, body.attribute if isinstance(body, Doubted) else None, fact)
    found: list[Doubt] = []
    for fact, words, about in opened:
        decided = settled.about(fact.id, "make sure") or (settled.about(about, "make sure") if about else [])
        found.append(Doubt(fact, words, about, decided[0][0] if decided else closes.get(fact.id)))
    return tuple(found)
