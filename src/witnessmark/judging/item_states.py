"""The state of each component in the law's own words."""

from __future__ import annotations

from dataclasses import dataclass

from witnessmark.journal.acts import Absent, Found, Identified, Ran, Read, Saw, Skipped
from witnessmark.judging.scene import Scene
from witnessmark.packs.law import ConditionWord

__all__ = ["ItemState", "item_states"]


@dataclass(frozen=True, slots=True)
class ItemState:
    """A component under a law's own words: what its state means, the law's word (and code) for it, on which entries."""

    component: str
    kind: str
    label: str
    means: str
    word: ConditionWord | None
    entries: tuple[str, ...]


def _tells_of_a_fault(scene: Scene, body: Found) -> bool:
    """Whether a finding rests on anything that is wrong: all but one that rests on sound looks alone."""
    rests = [scene.facts[entry].body for entry in body.rests_on if entry in scene.facts]
    return not rests or not all(isinstance(one, Saw) and one.state == "sound" for one in rests)


def item_states(scene: Scene) -> tuple[ItemState, ...]:
    """Every listed component with its state in the law's own words: deficient, inspected, not inspected, not present.

    ``deficient`` where an adverse look or a finding of a fault stands on it, else ``not inspected`` where it was skipped and
    nothing else recorded, else ``inspected``. Absent kinds are ``not present``, or
    ``deficient`` where they should have been there.
    """
    words = {word.means: word for word in scene.rulebook.condition_words} if scene.rulebook else {}
    rows: dict[str, dict[str, list[str]]] = {}
    for fact in scene.record.facts:
        if fact.component is None:
            continue
        body, sorts = fact.body, rows.setdefault(fact.component, {})
        bad = (isinstance(body, Found) and _tells_of_a_fault(scene, body)) or (
            isinstance(body, Saw) and body.state == "adverse"
        )
        if bad:
            unsure = isinstance(body, Saw) and not body.sure
            sorts.setdefault("seems deficient" if unsure else "deficient", []).append(fact.id)
        elif isinstance(body, Skipped):
            sorts.setdefault("not inspected", []).append(fact.id)
        elif isinstance(body, Saw | Ran | Read | Identified | Found):
            sorts.setdefault("inspected", []).append(fact.id)
    order = ("deficient", "seems deficient", "inspected", "not inspected")
    found = []
    for component in scene.house.components.values():
        sorts = rows.get(component.id, {})
        means = next((state for state in order if state in sorts), "not inspected")
        known = words.get(means) or (words.get("deficient") if means == "seems deficient" else None)
        found.append(
            ItemState(component.id, component.kind, component.label, means, known, tuple(sorts.get(means, ())))
        )
    for fact in scene.record.facts:
        if isinstance(fact.body, Absent) and not fact.body.part:
            means = "deficient" if fact.body.adverse else "not present"
            known = words.get(means)
            name = scene.kind_name(fact.body.kind)
            found.append(ItemState(fact.component or "", fact.body.kind, name, means, known, (fact.id,)))
    return tuple(found)
