"""What lies near to plumbing, as far as the record tells.

A component counts as near when a reading of its distance to water is within what the law names, or when no reading says
and it is in a place that has plumbing: of a sort that has it as a rule (``Sort.water``), or where a fixture was recorded
(``Kind.water``). So one is asked for once too often rather than missed.
"""

from __future__ import annotations

from fractions import Fraction

from witnessmark.journal.acts import Read
from witnessmark.journal.fold import Fact
from witnessmark.judging.scene import Scene
from witnessmark.packs.model import Subject
from witnessmark.problems import Refusal
from witnessmark.units import exact

__all__ = ["is_fact_near", "is_near", "near_places"]

_MEASURE = "distance-to-water"


def near_places(scene: Scene) -> frozenset[str]:
    """The places that have plumbing, by their sort or by what was recorded in them."""
    home, packs = scene.house, scene.packs
    sorts = {sort.id for sort in packs.sorts.values() if sort.water}
    kinds = {kind.id for kind in packs.kinds.values() if kind.water}
    found = {place.id for place in home.places.values() if place.sort in sorts}
    found |= {c.place for c in home.components.values() if c.place and c.kind in kinds}
    return frozenset(found)


def _feet(scene: Scene, component: str) -> Fraction | None:
    """The shortest distance to water read at a component, in feet."""
    found = []
    for reading in scene.readings:
        if reading.body.measure == _MEASURE and reading.fact.component == component:
            try:
                found += [exact(reading.low, "[ft_i]")] if reading.low is not None else []
            except Refusal:
                continue
    return min(found, default=None)


def is_near(scene: Scene, subject: Subject, component: str) -> bool:
    """Whether a component lies as near as the subject asks (always, where it asks nothing)."""
    if not subject.near:
        return True
    read = _feet(scene, component)
    if read is not None and subject.within:
        return read <= Fraction(subject.within)
    known = scene.house.components.get(component)
    return known is not None and (known.place is None or known.place in near_places(scene))


def is_fact_near(scene: Scene, subject: Subject, fact: Fact) -> bool:
    """Whether a fact is about something as near as the subject asks."""
    if not subject.near:
        return True
    if isinstance(fact.body, Read) and fact.body.measure == _MEASURE:
        return False  # a distance read tells where it is, and tests nothing
    if fact.component is not None and fact.component in scene.house.components:
        return is_near(scene, subject, fact.component)
    return scene.house.place_of(fact) in near_places(scene)
