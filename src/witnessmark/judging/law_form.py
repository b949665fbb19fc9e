"""The items of the form that a law prescribes, each with the law's own words for its state."""

from __future__ import annotations

from dataclasses import dataclass

from witnessmark.journal.acts import Skipped
from witnessmark.judging.item_states import ItemState, item_states
from witnessmark.judging.scene import Scene
from witnessmark.packs.law import ConditionWord, FormItem

__all__ = ["FormState", "form_states"]


@dataclass(frozen=True, slots=True)
class FormState:
    """One item of the form: how it is to be marked, and the components (or missing kinds) that say so.

    ``marks`` in the law's order of its words; none where the record says nothing of the item.
    """

    item: FormItem
    marks: tuple[ConditionWord, ...]
    states: tuple[ItemState, ...]


def form_states(scene: Scene) -> tuple[FormState, ...]:
    """The form, item by item; nothing where the law prescribes none.

    What was inspected is marked so, beside deficient where anything in it is; what was only left out, not inspected; what was
    looked for and is not there, not present. Optional items of which the record says nothing are left out.
    """
    book = scene.rulebook
    if book is None or book.form is None:
        return ()
    by_kind = {kind: item for item in book.form_items for kind in item.kinds}
    by_system = {system: item for item in book.form_items for system in item.systems}
    held: dict[FormItem, list[ItemState]] = {item: [] for item in book.form_items}
    for state in (*item_states(scene), *_left_out(scene)):
        kind = scene.packs.kinds.get(state.kind)
        item = by_kind.get(state.kind) or (by_system.get(kind.system) if kind else None)
        if item is not None:
            held[item].append(state)
    rows = []
    for item, states in held.items():
        means = _means(states)
        if states or not item.optional:
            rows.append(
                FormState(item, tuple(word for word in book.condition_words if word.means in means), tuple(states))
            )
    return tuple(rows)


def _means(states: list[ItemState]) -> set[str]:
    """What an item as a whole is, from its parts: nothing where nothing was recorded of any."""
    told = {state.means for state in states if state.entries}
    marks = {"deficient"} if told & {"deficient", "seems deficient"} else set()
    # A kind that ought to be there and is not is deficient without having been inspected.
    seen = any(state.component and state.means in {"inspected", "deficient", "seems deficient"} for state in states)
    if seen:
        marks.add("inspected")
    elif "not inspected" in told:
        marks.add("not inspected")
    elif not marks and "not present" in told:
        marks.add("not present")
    return marks


def _left_out(scene: Scene) -> tuple[ItemState, ...]:
    """Kinds that were left out as a whole, without a component of them having been listed; a place by its sort."""
    rows = []
    for fact in scene.record.facts:
        body = fact.body
        if not isinstance(body, Skipped) or fact.component is not None:
            continue
        place = scene.house.places.get(fact.place or "")
        kind = body.kind or (place.sort if place and place.sort in scene.packs.kinds else "")
        if kind:
            rows.append(ItemState("", kind, scene.kind_name(kind), "not inspected", None, (fact.id,)))
    return tuple(rows)
