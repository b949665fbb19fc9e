"""Which acceptances, removals and amendments take effect, and on what.

These three acts name other entries, and may be named themselves: a removal can be removed, an amendment amended, a
drafted removal accepted. Whether one takes effect depends only on those that name it, so they are settled from the
last to name back to the first named. Entries that name each other in a circle have no first and take no effect.
"""

from __future__ import annotations

import heapq
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from datetime import timedelta
from typing import Final

from witnessmark.journal import messages
from witnessmark.journal.acts import Accepted, Amended, Dropped, Sealed
from witnessmark.journal.entry import Entry
from witnessmark.journal.moment import since_epoch
from witnessmark.problems import Message

__all__ = ["NAMING", "Effects", "effects_of"]

#: The bodies that act on other entries and are no facts themselves.
NAMING: Final = (Accepted, Dropped, Amended)
_FIXED: Final = (Accepted, Dropped, Sealed)

_Key = tuple[timedelta, str]


@dataclass(slots=True)
class Effects:
    """What takes effect.

    Attributes:
        accepted: of each entry accepted, the first acceptance in effect.
        dropped: of each entry dropped, the first removal in effect.
        amendments: of each entry amended, the amendments in effect; each after those it knows of, otherwise in the
            order of (logged instant, id). The last holds.
        conflicts: of each entry amended in ignorance, the amendments that no other one knows of, in that order.
        waiting: of each entry that takes no or not all of its effect, why.
    """

    accepted: dict[str, Entry] = field(default_factory=dict)
    dropped: dict[str, Entry] = field(default_factory=dict)
    amendments: dict[str, list[Entry]] = field(default_factory=dict)
    conflicts: dict[str, tuple[str, ...]] = field(default_factory=dict)
    waiting: dict[str, Message] = field(default_factory=dict)


def effects_of(entries: Mapping[str, Entry]) -> Effects:
    """The effects within a set of entries by id; the same whatever the order of the mapping."""
    naming = {id_: entry for id_, entry in entries.items() if type(entry.body) in NAMING}
    effects = Effects()
    if not naming:
        return effects
    order = _bases_first(naming)
    for id_ in naming.keys() - set(order):
        effects.waiting[id_] = messages.CIRCLE
    roots = _find_roots(order, entries, effects)
    _settle(order, naming, roots, effects)
    for root, amendments in effects.amendments.items():
        if len(amendments) > 1:
            effects.amendments[root], heads = _in_order(amendments, naming)
            if len(heads) > 1:
                effects.conflicts[root] = heads
    return effects


def _named(entry: Entry) -> tuple[str, ...]:
    body = entry.body
    if isinstance(body, Accepted):
        return body.of
    if isinstance(body, Dropped | Amended):
        return (body.of,)
    return ()


def _key(entry: Entry) -> _Key:
    return since_epoch(entry.logged), entry.id


def _bases_first(naming: Mapping[str, Entry]) -> list[str]:
    """Ids of the naming entries, each after those it names; without those in or behind a circle."""
    open_bases: dict[str, int] = {}
    namers: dict[str, list[str]] = {}
    for id_, entry in naming.items():
        bases = {base for base in _named(entry) if base in naming}
        open_bases[id_] = len(bases)
        for base in bases:
            namers.setdefault(base, []).append(id_)
    order = [id_ for id_, count in open_bases.items() if not count]
    for id_ in order:  # grows while it is walked
        for namer in namers.get(id_, ()):
            open_bases[namer] -= 1
            if not open_bases[namer]:
                order.append(namer)
    return order


def _find_roots(order: list[str], entries: Mapping[str, Entry], effects: Effects) -> dict[str, str]:
    """Of each amendment that can take effect, the entry it amends in the end; notes why others wait."""
    roots: dict[str, str] = {}
    for id_ in order:
        entry = entries[id_]
        body = entry.body
        if any(base not in entries for base in _named(entry)):
            effects.waiting[id_] = messages.BASE_MISSING
        elif isinstance(body, Accepted):
            if entry.source.sort == "program":
                effects.waiting[id_] = messages.NOT_A_PERSON
        elif isinstance(body, Amended):
            base = entries[body.of]
            root = roots.get(base.id) if isinstance(base.body, Amended) else base.id
            if root is None:
                effects.waiting[id_] = effects.waiting[base.id]
            elif (
                body.body is None or isinstance(body.body, (*_FIXED, Amended)) or isinstance(entries[root].body, _FIXED)
            ):
                effects.waiting[id_] = messages.CANNOT_AMEND
            else:
                roots[id_] = root
    return roots


def _settle(order: list[str], naming: Mapping[str, Entry], roots: Mapping[str, str], effects: Effects) -> None:
    """Namers before what they name, let each entry that counts take its effect."""
    for id_ in reversed(order):
        entry = naming[id_]
        if id_ in effects.dropped or (entry.draft and id_ not in effects.accepted):
            continue
        body = entry.body
        if isinstance(body, Accepted):
            if entry.source.sort != "program":
                for base in body.of:  # those that have arrived; for the others it waits
                    _keep_first(effects.accepted, base, entry)
        elif isinstance(body, Dropped):
            _keep_first(effects.dropped, body.of, entry)
        elif id_ in roots:
            effects.amendments.setdefault(roots[id_], []).append(entry)


def _keep_first(table: dict[str, Entry], base: str, entry: Entry) -> None:
    held = table.get(base)
    if held is None or _key(entry) < _key(held):
        table[base] = entry


def _in_order(amendments: list[Entry], naming: Mapping[str, Entry]) -> tuple[list[Entry], tuple[str, ...]]:
    """The amendments of one entry, each after those it knows of, and those that no other knows of.

    An amendment knows of the one it names, and of the one its device wrote before it.
    """
    by_id = {entry.id: entry for entry in amendments}
    knows: dict[str, set[str]] = {id_: set(_nearest_named(by_id[id_], by_id, naming)) for id_ in by_id}
    last: dict[str, Entry] = {}
    for entry in sorted(amendments, key=lambda entry: (entry.device, entry.n, entry.id)):
        before = last.get(entry.device)
        if before is not None and before.n < entry.n:
            knows[entry.id].add(before.id)
        last[entry.device] = entry
    known = set[str]().union(*knows.values())

    known_by: dict[str, list[str]] = {}
    for id_, ones in knows.items():
        for one in ones:
            known_by.setdefault(one, []).append(id_)
    left = {id_: len(ones) for id_, ones in knows.items()}
    ready = [_key(by_id[id_]) for id_, count in left.items() if not count]
    heapq.heapify(ready)
    order: list[Entry] = []
    while ready:
        _, id_ = heapq.heappop(ready)
        order.append(by_id[id_])
        for later in known_by.get(id_, ()):
            left[later] -= 1
            if not left[later]:
                heapq.heappush(ready, _key(by_id[later]))
    if len(order) < len(amendments):
        # One names what its own device wrote later: a forged or damaged chain. Time alone decides.
        order = sorted(amendments, key=_key)
    return order, tuple(entry.id for entry in order if entry.id not in known)


def _nearest_named(entry: Entry, in_effect: Mapping[str, Entry], naming: Mapping[str, Entry]) -> Iterator[str]:
    """The amendment in effect that the entry names, be it through others that are no longer in effect."""
    body = entry.body
    while isinstance(body, Amended):
        if body.of in in_effect:
            yield body.of
            return
        base = naming.get(body.of)
        if base is None:
            return
        body = base.body
