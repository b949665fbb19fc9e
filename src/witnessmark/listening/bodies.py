"""Drafts as the journal keeps them: the body of each, and the places and components they need."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal

from witnessmark.journal.acts import (
    Absent,
    Body,
    Doubted,
    Identified,
    Listed,
    Placed,
    Ran,
    Read,
    Saw,
    Skipped,
    Stopped,
)  # fmt: skip
from witnessmark.listening.drafts import Draft, Heard

__all__ = ["ComponentEntry", "PlaceEntry", "components", "places", "to_body"]


@dataclass(frozen=True, slots=True)
class PlaceEntry:
    """A place to draft: its key, when it was first spoken of (seconds), its body."""

    key: str
    start: float
    body: Placed


@dataclass(frozen=True, slots=True)
class ComponentEntry:
    """A component to draft: its key, its place's key, when it was first spoken of (seconds), its body."""

    key: str
    place: str
    start: float
    body: Listed


def _decimal(value: Decimal | str | None) -> str:
    if isinstance(value, Decimal):
        text = format(value, "f")
        return text.rstrip("0").rstrip(".") if "." in text else text
    return value or ""


def to_body(draft: Draft) -> Body:
    """The body of the act that a draft proposes. A capacity read off a plate is a description; a count stays a count."""
    part, kind = draft.part, draft.kind
    match draft.act:
        case "ran":
            return Ran(draft.what, part, kind, draft.procedure, draft.leaves or "as found", None, draft.setting)
        case "stopped":
            return Stopped(draft.what, part, kind, None, "as found")
        case "read" if draft.attribute is None:
            high = _decimal(draft.high) or None
            return Read(
                draft.measure or "", _decimal(draft.value), draft.unit or "", high, part, kind, None, None, draft.about
            )
        case "read" | "identified":
            return Identified(draft.attribute or "", _decimal(draft.value), draft.unit, part, kind)
        case "skipped":
            return Skipped(draft.what, draft.reason or "", draft.text, part, kind)
        case "doubted":
            return Doubted(draft.what, None, draft.attribute, part, kind)
        case "absent":
            return Absent(kind or "", part, draft.what, draft.condition == "adverse", draft.condition_id)
        case _:
            return Saw(draft.what, draft.condition, part, kind, draft.condition_id, draft.sure, draft.count)


def places(heard: Heard) -> tuple[PlaceEntry, ...]:
    """The places the drafts speak of, in the order in which they come up. The house as a whole is not one of them."""
    found: dict[str, PlaceEntry] = {}
    for draft in heard.drafts:
        place = draft.place
        if place.sort != "house" and place.key not in found:
            side = next((w for w in place.name.split() if w in {"north", "south", "east", "west", "front", "back", "rear",
                                                               "left", "right"}), None)  # fmt: skip
            found[place.key] = PlaceEntry(place.key, draft.start, Placed(place.name, place.sort, side=side))
    return tuple(found.values())


def components(heard: Heard) -> tuple[ComponentEntry, ...]:
    """The components the drafts speak of, in order. What is only said to be absent is not listed."""
    found: dict[str, ComponentEntry] = {}
    for draft in heard.drafts:
        if draft.kind is None or draft.component in found or (draft.act == "absent" and draft.part is None):
            continue
        place = draft.place.key
        label = draft.component.partition(".")[2].replace("-", " ")
        found[draft.component] = ComponentEntry(draft.component, place, draft.start, Listed(draft.kind, label))
    return tuple(found.values())
