"""What house this is: its places and components, and which facts belong to each.

A place or component that facts name but nobody has placed or listed still appears, marked as not declared: nothing
that was seen hangs in the air. Where several entries place or list the same id, the last in order holds.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace

from witnessmark.journal.acts import Listed, Placed
from witnessmark.journal.fold import Fact, Record

__all__ = ["Component", "House", "Place", "house"]


@dataclass(frozen=True, slots=True)
class Place:
    """A room, an outside face, the roof, a space.

    Attributes:
        id: id of the place.
        name: its name; the id where nobody gave one.
        sort: place sort of the packs; empty when only named.
        within, storey, side, habitable: as placed.
        declared: a ``placed`` fact exists.
        facts: facts recorded there, in order, those of its components included.
    """

    id: str
    name: str
    sort: str = ""
    within: str | None = None
    storey: str | None = None
    side: str | None = None
    habitable: bool | None = None
    declared: bool = False
    facts: tuple[Fact, ...] = ()


@dataclass(frozen=True, slots=True)
class Component:
    """A component of the house.

    Attributes:
        id: id of the component.
        kind: kind of the packs, from ``listed`` or else from the first fact that names one; empty when none does.
        label: how it is called; the id where nobody gave one.
        number: its number among its like, where given.
        place: id of the place it is in, from ``listed`` or else from the first fact with a place.
        declared: a ``listed`` fact exists.
        facts: facts about it, in order.
    """

    id: str
    kind: str = ""
    label: str = ""
    number: int | None = None
    place: str | None = None
    declared: bool = False
    facts: tuple[Fact, ...] = ()


@dataclass(frozen=True, slots=True)
class House:
    """Places and components by id; ``loose`` are the facts with neither place nor component."""

    places: Mapping[str, Place] = field(default_factory=dict)
    components: Mapping[str, Component] = field(default_factory=dict)
    loose: tuple[Fact, ...] = ()

    def kind_of(self, fact: Fact) -> str:
        """The kind a fact is about: the one its body names, else its component's; empty when unknown."""
        named = getattr(fact.body, "kind", None)
        if named:
            return str(named)
        component = self.components.get(fact.component) if fact.component else None
        return component.kind if component else ""

    def place_of(self, fact: Fact) -> str | None:
        """Id of the place a fact belongs to: its own, else its component's."""
        if fact.place:
            return fact.place
        component = self.components.get(fact.component) if fact.component else None
        return component.place if component else None

    def sort_of(self, fact: Fact) -> str:
        """Sort of the place a fact belongs to; empty when unknown."""
        place = self.places.get(self.place_of(fact) or "")
        return place.sort if place else ""

    def label_of(self, fact: Fact) -> str:
        """How a fact's component is called; empty when it has none."""
        component = self.components.get(fact.component) if fact.component else None
        return component.label if component else ""


class _Gathered:
    """What is being gathered about one component."""

    __slots__ = ("facts", "kind", "listed", "place", "placed_by_listing")

    def __init__(self) -> None:
        self.facts: list[Fact] = []
        self.kind = ""
        self.listed: Fact | None = None
        self.place: str | None = None
        self.placed_by_listing: str | None = None


def _component(name: str, gathered: _Gathered) -> Component:
    place = gathered.placed_by_listing or gathered.place
    facts = tuple(gathered.facts)
    if gathered.listed is None or not isinstance(gathered.listed.body, Listed):
        return Component(name, gathered.kind, name, None, place, facts=facts)
    body = gathered.listed.body
    kind, label = body.kind or gathered.kind, body.label or name
    return Component(name, kind, label, body.number, place, declared=True, facts=facts)


def _place(name: str, placed: Fact | None, facts: list[Fact]) -> Place:
    if placed is None or not isinstance(placed.body, Placed):
        return Place(name, name, facts=tuple(facts))
    body = placed.body
    named = Place(name, body.name or name, body.sort, body.within, body.storey, body.side, body.habitable)
    return replace(named, declared=True, facts=tuple(facts))


def house(record: Record) -> House:
    """The places and components that the facts of *record* declare or name. Linear in the facts."""
    components: dict[str, _Gathered] = {}
    placed: dict[str, Fact | None] = {}
    homeless: list[Fact] = []
    for fact in record.facts:
        body = fact.body
        if fact.place is not None:
            if isinstance(body, Placed):
                placed[fact.place] = fact
            elif fact.place not in placed:
                placed[fact.place] = None
        name = fact.component
        if name is None:
            if fact.place is None:
                homeless.append(fact)
            continue
        gathered = components.get(name)
        if gathered is None:
            gathered = components[name] = _Gathered()
        gathered.facts.append(fact)
        if isinstance(body, Listed):
            gathered.listed = fact
            gathered.placed_by_listing = fact.place or gathered.placed_by_listing
        if gathered.place is None:
            gathered.place = fact.place
        if not gathered.kind:
            gathered.kind = getattr(body, "kind", None) or ""
    known = {name: _component(name, gathered) for name, gathered in components.items()}
    by_place: dict[str, list[Fact]] = {name: [] for name in placed}
    for fact in record.facts:
        where = fact.place
        if where is None and fact.component is not None:
            where = known[fact.component].place
        if where is not None:
            by_place[where].append(fact)
    return House({n: _place(n, placed[n], facts) for n, facts in by_place.items()}, known, tuple(homeless))
