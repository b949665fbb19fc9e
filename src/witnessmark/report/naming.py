"""What places, components and kinds are called in a report."""

from __future__ import annotations

import re
from dataclasses import dataclass

from witnessmark.journal.acts import Absent
from witnessmark.journal.fold import Fact, Record
from witnessmark.packs import SYSTEMS
from witnessmark.packs.model import Packs
from witnessmark.report.tongue import ENGLISH, Tongue
from witnessmark.views import House, house

__all__ = ["WHOLE_HOUSE", "Names", "capital", "names_of", "sentence", "system_heading"]

WHOLE_HOUSE = "The house as a whole"

#: A recogniser writes the first person small.
_LONE_I = re.compile(r"(?<![\w(.'’-])i(?=(?:['’](?:m|ve|d|ll))?(?:[\s,.;:!?]|$))")
_CLOSERS = ".!?…:;”\"')"


def capital(text: str) -> str:
    """The text with its first letter large.

    >>> capital("water heater")
    'Water heater'
    """
    return text[:1].upper() + text[1:]


def sentence(text: str) -> str:
    """The text as a sentence: a large first letter and a full stop, unless it ends otherwise.

    >>> sentence("drip at the trap nut")
    'Drip at the trap nut.'
    >>> sentence("yes i'm sure i saw it, part (i)")
    "Yes I'm sure I saw it, part (i)"
    """
    text = capital(_LONE_I.sub("I", text.strip()))
    return text if not text or text[-1] in _CLOSERS else text + "."


def system_heading(system: str) -> str:
    """The heading of a system, or of what else a duty can concern."""
    return SYSTEMS.get(system) or capital(_plain(system)) or "General"


def _plain(slug: str) -> str:
    return slug.replace("-", " ").replace("_", " ").strip()


@dataclass(frozen=True, slots=True)
class Names:
    """Names of one record: its places and components, and the kinds of the packs."""

    house: House
    packs: Packs
    tongue: Tongue = ENGLISH

    def place(self, place: str | None) -> str:
        """The name of a place; its id in words when nobody named it; empty for none."""
        known = self.house.places.get(place or "")
        name = _plain(place or "") if known is None or known.name == place else known.name
        sort = self.packs.sorts.get(known.sort if known else place or "")
        return self.tongue.row("sort", sort.id, "name", name) if sort and sort.name.lower() == name.lower() else name

    def system(self, system: str) -> str:
        """The heading of a system, in the language of the report."""
        return self.tongue.say(system_heading(system))

    def place_of(self, fact: Fact) -> str:
        """The name of the place a fact belongs to: its own, else its component's."""
        return self.place(self.house.place_of(fact))

    def kind(self, kind: str | None) -> str:
        """The name of a kind, in plain words."""
        known = self.packs.kinds.get(kind or "")
        return self.tongue.row("kind", known.id, "name", known.name) if known else _plain(kind or "")

    def part(self, kind: str | None, part: str | None) -> str:
        """The name of a part of a kind."""
        known = self.packs.kinds.get(kind or "")
        return next((p.name for p in known.parts if p.id == part), _plain(part or "")) if known else _plain(part or "")

    def component(self, component: str | None, kind: str | None = None) -> str:
        """What a component is called: its own label, else the name of its kind, and its number."""
        known = self.house.components.get(component or "")
        if known is None:
            return self.kind(kind)
        if known.label != known.id:
            return known.label
        name = self.kind(known.kind or kind) or _plain(known.id)
        return f"{name} {known.number}" if known.number else name

    def subject(self, fact: Fact) -> str:
        """The component a fact is about, and the part of it; empty when it names neither."""
        kind = self.house.kind_of(fact)
        name = self.component(fact.component, kind)
        part = self.part(kind, getattr(fact.body, "part", None))
        if part and name and part.lower() not in name.lower():
            return f"{name}, {part}"
        return name or part

    def system_of(self, fact: Fact) -> str:
        """The system of the kind a fact is about; empty when not known."""
        kind = self.packs.kinds.get(self.house.kind_of(fact))
        return kind.system if kind else ""

    def absent(self, body: Absent) -> str:
        """What was looked for and is not there."""
        kind, part = self.kind(body.kind), self.part(body.kind, body.part)
        return f"{kind}, {part}" if kind and part else kind or part or "component"


def names_of(record: Record, packs: Packs, tongue: Tongue = ENGLISH) -> Names:
    """The names that a record gives to its places and components."""
    return Names(house(record), packs, tongue)
