"""Whether the condition of a duty (``when``) holds for this job and house.

A small closed vocabulary, joined by ``and`` and ``or`` (``and`` binds closer), each term with an optional ``not``:

- ``fuel``: fuel is burned in the house (the job's fuels, a fuel that was identified);
- ``attached garage``: the job says so, or a garage was placed when the job does not say;
- ``occupied``: the job says so;
- ``outdoor >= 60 degF`` (``<=``, ``<``, ``>`` too): the outdoor temperature on arrival or as read;
- ``built from 1978``, ``built before 1978``: the job's year built;
- ``has KIND``, ``has SORT``: a component of the kind, or a place of the sort, is in the house; not, where one was
  recorded as absent;
- ``identified ATTRIBUTE as WORDS``: something was described so (``identified branch-wiring as aluminum``);
- ``systems >= 3``: so many systems were inspected;
- ``adverse KIND``, ``adverse CONDITION``: something adverse or doubted was recorded on the kind, or by that name.

A term that nothing in the record decides, and a term this release does not know, hold: a duty is asked once too
often rather than dropped in silence, and the reader is told why it is asked.
"""

from __future__ import annotations

import re

from witnessmark.journal.acts import Absent, Arrived, Doubted, Found, Identified, Ran, Read, Saw
from witnessmark.judging.scene import Scene
from witnessmark.problems import Refusal
from witnessmark.units import Quantity, exact, parse_quantity
from witnessmark.views.readings import number

__all__ = ["decided", "holds"]

_OUTDOOR = re.compile(r"outdoor\s*(>=|<=|>|<)\s*(.+)")
_BUILT = re.compile(r"built (from|before|since|after) ([0-9]{4})")
_IDENTIFIED = re.compile(r"identified ([a-z0-9-]+) as (.+)")
_SYSTEMS = re.compile(r"systems >= ([0-9]{1,2})")
_INSPECTED = (Saw, Ran, Read, Identified, Found)
_UNDECIDED = "asked because nothing recorded decides"
_NOT_FUEL = re.compile(r"\b(electric|electricity|none|solar)\b", re.IGNORECASE)


def _fuel(scene: Scene) -> bool | None:
    named = [fuel for fuel in scene.job.fuels if not _NOT_FUEL.search(fuel)]
    if named:
        return True
    identified = [
        fact.body.value
        for fact in scene.record.facts
        if isinstance(fact.body, Identified) and fact.body.attribute in {"fuel", "energy"} and fact.body.value
    ]
    if any(not _NOT_FUEL.search(value) for value in identified):
        return True
    return False if scene.job.fuels or identified else None


def _attached_garage(scene: Scene) -> bool | None:
    if scene.job.attached_garage is not None:
        return scene.job.attached_garage
    return True if any(place.sort == "garage" for place in scene.house.places.values()) else None


def _outdoor_readings(scene: Scene) -> list[Quantity]:
    found: list[Quantity] = []
    for fact in scene.record.facts:
        body = fact.body
        if isinstance(body, Arrived):
            text, unit = body.outdoor, body.outdoor_unit
        elif isinstance(body, Read) and body.measure == "outdoor-temperature":
            text, unit = body.value, body.unit
        else:
            continue
        value = number(text)
        if value is not None and unit:
            found.append(Quantity(value, unit))
    return found


def _outdoor(scene: Scene, op: str, limit: str) -> bool | None:
    """Whether any outdoor temperature of the visit satisfies the limit: it need be warm enough only once."""
    try:
        wanted = parse_quantity(limit)
        values = [exact(q, "K") - exact(wanted, "K") for q in _outdoor_readings(scene)]
    except Refusal:
        return None
    if not values:
        return None
    return any({">=": value >= 0, "<=": value <= 0, ">": value > 0, "<": value < 0}[op] for value in values)


def _has(scene: Scene, name: str) -> bool | None:
    known = name in scene.packs.kinds or name in scene.packs.sorts
    if any(c.kind == name for c in scene.house.components.values()) or any(
        place.sort == name for place in scene.house.places.values()
    ):
        return True
    absent = any(isinstance(f.body, Absent) and f.body.kind == name and not f.body.part for f in scene.record.facts)
    return None if known and not absent else False


def _adverse(scene: Scene, name: str) -> bool:
    for row in scene.adverse:
        body = row.fact.body
        if scene.house.kind_of(row.fact) == name or getattr(body, "condition", None) == name:
            return True
    return any(
        isinstance(doubt.fact.body, Doubted | Saw) and scene.house.kind_of(doubt.fact) == name for doubt in scene.doubts
    )


def _term(scene: Scene, term: str) -> bool | None:
    if term in {"fuel", "fuel burned"}:
        return _fuel(scene)
    if term == "attached garage":
        return _attached_garage(scene)
    if term == "occupied":
        return scene.job.occupied
    if found := _OUTDOOR.fullmatch(term):
        return _outdoor(scene, found[1], found[2])
    if found := _BUILT.fullmatch(term):
        if scene.job.year_built is None:
            return None
        year, limit = scene.job.year_built, int(found[2])
        return {"from": year >= limit, "since": year >= limit, "before": year < limit, "after": year > limit}[found[1]]
    if term.startswith("has "):
        return _has(scene, term[4:].strip())
    if found := _IDENTIFIED.fullmatch(term):
        return _identified(scene, found[1], found[2])
    if found := _SYSTEMS.fullmatch(term):
        return _systems(scene) >= int(found[1])
    if term.startswith("adverse "):
        return _adverse(scene, term[8:].strip())
    return None


def _identified(scene: Scene, attribute: str, words: str) -> bool:
    return any(
        isinstance(fact.body, Identified)
        and fact.body.attribute == attribute
        and re.search(rf"\b{re.escape(words)}\b", fact.body.value, re.IGNORECASE) is not None
        for fact in scene.record.facts
    )


def _systems(scene: Scene) -> int:
    kinds = (
        scene.packs.kinds.get(scene.house.kind_of(f)) for f in scene.record.facts if isinstance(f.body, _INSPECTED)
    )
    return len({kind.system for kind in kinds if kind is not None})


def decided(scene: Scene, when: str) -> bool:
    """Whether the condition holds and something recorded says so: for what must not be said on a guess."""
    held, why = holds(scene, when)
    return held and not why.startswith(_UNDECIDED)


def holds(scene: Scene, when: str) -> tuple[bool, str]:
    """Whether the condition holds, and in words why it was taken so; empty words when there is no condition.

    What cannot be decided holds.
    """
    plain = " ".join(when.split())
    if not plain:
        return True, ""
    undecided: list[str] = []
    any_holds = False
    for alternative in plain.split(" or "):
        all_hold = True
        for raw in alternative.split(" and "):
            negated = raw.startswith("not ")
            term = raw.removeprefix("not ").strip()
            value = _term(scene, term)
            if value is None:
                undecided.append(term)
            elif value == negated:
                all_hold = False
        any_holds = any_holds or all_hold
    if not any_holds:
        return False, f"not asked: {plain} does not hold here"
    if undecided:
        return True, f"{_UNDECIDED}: {', '.join(undecided)}"
    return True, f"asked because: {plain}"
