"""Which ``skipped`` excuses which subject of a duty, and whether its reason is a lawful one.

Lawful are the reasons the duty lists, else those its rulebook lists, else any reason of the packs; ``other`` needs its
words. A reason that is not lawful excuses nothing, and the reader is told so. Where any reason will do, a ``settled``
that names the duty and says why excuses as well.

What a ``skipped`` covers: the duty it names; else the component it stands on; else its kind (in its place, when it
has one); else, when it says that the whole place was left out, whatever is in that place, and kinds that are usually
found only in places that were all left out.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from witnessmark.journal.acts import Settled, Skipped
from witnessmark.journal.fold import Fact
from witnessmark.judging.scene import Scene
from witnessmark.packs.model import Duty, Subject

__all__ = ["Excuse", "Skips", "excuses_for", "skips_of"]


#: A longer list of lawful reasons is not spelt out in a sentence.
_MOST_NAMED = 10


@dataclass(frozen=True, slots=True)
class Excuse:
    """A ``skipped`` (or ``settled``) that concerns a subject: lawful or not, and its reason in words."""

    fact: Fact
    lawful: bool
    words: str


@dataclass(frozen=True, slots=True)
class Skips:
    """The ``skipped`` facts by the duty they name, by kind, and those of a place as such, by the place."""

    by_duty: Mapping[str, list[Fact]] = field(default_factory=dict)
    by_kind: Mapping[str, list[Fact]] = field(default_factory=dict)
    by_place: Mapping[str, list[Fact]] = field(default_factory=dict)


def skips_of(scene: Scene) -> Skips:
    """Index the ``skipped`` facts of the scene."""
    by_duty: dict[str, list[Fact]] = {}
    by_kind: dict[str, list[Fact]] = {}
    by_place: dict[str, list[Fact]] = {}
    for fact in scene.record.facts:
        body = fact.body
        if not isinstance(body, Skipped):
            continue
        kind, place = scene.house.kind_of(fact), scene.house.place_of(fact)
        if body.duty:
            by_duty.setdefault(body.duty, []).append(fact)
        elif kind:
            by_kind.setdefault(kind, []).append(fact)
        elif place:
            by_place.setdefault(place, []).append(fact)
    return Skips(by_duty, by_kind, by_place)


def _lawful(scene: Scene, duty: Duty, body: Skipped) -> tuple[bool, str]:
    row = scene.packs.reasons.get(body.reason)
    words = (body.words or "").strip() or (row.words if row else body.reason or body.what)
    listed = duty.method_reasons or duty.reasons or (scene.rulebook.reasons if scene.rulebook else ())
    if listed:
        lawful = body.reason in listed
    elif scene.packs.reasons:
        lawful = row is not None and (body.reason != "other" or bool((body.words or body.what).strip()))
    else:
        lawful = bool(body.reason.strip() or words.strip())
    if lawful:
        return True, words
    given = f"{words} ({body.reason})" if words and body.reason and words != body.reason else words or "none"
    allowed = ", ".join(listed) if 0 < len(listed) <= _MOST_NAMED else "a reason of the packs" if not listed else ""
    rule = f"; allowed: {allowed}" if allowed else ""
    return False, f"skipped, but the reason given, {given}, is not one that excuses here{rule}"


def _excuse(scene: Scene, duty: Duty, fact: Fact) -> Excuse | None:
    body = fact.body
    if isinstance(body, Skipped):
        return Excuse(fact, *_lawful(scene, duty, body))
    if isinstance(body, Settled) and body.how.strip() and not duty.reasons:
        return Excuse(fact, lawful=True, words=body.how.strip())
    return None


def _part_fits(fact: Fact, part: str | None) -> bool:
    own = getattr(fact.body, "part", None)
    return own is None or own == part


def _skips_of_place(skips: Skips, place: str, subject: Subject) -> list[Fact]:
    """The skips of a place as such that concern a subject: for one with kinds, only that of the whole place."""
    return [
        f for f in skips.by_place.get(place, []) if not subject.kinds or (isinstance(f.body, Skipped) and f.body.whole)
    ]


def _places_left_out(scene: Scene, skips: Skips, subject: Subject) -> list[Fact]:
    """Skips of places, where every place in which the subject is (or its kinds usually are) was left out."""
    kinds = scene.packs.kinds
    sorts = set(subject.sorts) or {s for kind in subject.kinds if kind in kinds for s in kinds[kind].sorts}
    left_out = [
        _skips_of_place(skips, place.id, subject) for place in scene.house.places.values() if place.sort in sorts
    ]
    return [fact for facts in left_out for fact in facts] if left_out and all(left_out) else []


def excuses_for(
    scene: Scene,
    skips: Skips,
    duty: Duty,
    subject: Subject,
    *,
    component: str | None = None,
    place: str | None = None,
) -> list[Excuse]:
    """The excuses for a subject, for one *component* of it, or for it in one *place*. Lawful ones first."""
    home = scene.house
    found: list[Fact] = []
    for fact in skips.by_duty.get(duty.id, []):
        kind = home.kind_of(fact)
        if (not kind or not subject.kinds or kind in subject.kinds) and _part_fits(fact, subject.part):
            found.append(fact)
    for kind in subject.kinds:
        found += [
            fact
            for fact in skips.by_kind.get(kind, [])
            if _part_fits(fact, subject.part) and (not subject.sorts or home.sort_of(fact) in {"", *subject.sorts})
        ]
    wanted = component and home.components[component].place
    if component is not None:
        found = [f for f in found if f.component in {None, component} and home.place_of(f) in {None, wanted}]
    elif place is not None:
        found = [f for f in found if home.place_of(f) in {None, place}]
    here = wanted if component is not None else place
    if here is not None:
        found += _skips_of_place(skips, here, subject)
    elif not found:
        found = _places_left_out(scene, skips, subject)
    found += scene.decisions.by_duty.get(duty.id, [])
    once = {fact.id: fact for fact in found}.values()
    excuses = [excuse for excuse in (_excuse(scene, duty, fact) for fact in once) if excuse]
    return sorted(excuses, key=lambda excuse: not excuse.lawful)
