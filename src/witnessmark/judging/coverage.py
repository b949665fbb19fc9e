"""Which duties of the rulebook in force are met, excused, open or not asked, and by which entries.

Each subject of a duty is looked at in its extent: ``all`` asks for every listed component of its kinds (and for the
full count where one was given), or for every place of its sorts where it names no kinds; ``one_per_room`` for one in
every habitable room, and in any other place that has one; ``one_per_place`` for one in every place of its sorts;
``one_per_habitable_room`` for one in every habitable room and nowhere else; ``one_per_side`` for one on every outside
face; ``representative`` and ``none`` for at least one. ``enter`` asks for every place of its sorts. A subject
``near`` plumbing asks only for what lies near it, and, where no single one was listed, for a full count in every
place that has plumbing. A duty that lists excuses for another method is met by its default method alone. A subject is *met*
when all that is asked was done, *excused* when the rest was lawfully skipped, else *open*. An optional subject is
*not asked* while nothing of its kinds (or no place of its sorts) is in the house.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from witnessmark.journal.acts import Absent, Saw
from witnessmark.journal.fold import Fact
from witnessmark.judging.evidence import Evidence, accepts, evidence_of, is_about
from witnessmark.judging.excuses import Skips, excuses_for, skips_of
from witnessmark.judging.method import by_default_method
from witnessmark.judging.model import DutyCoverage, SubjectCoverage
from witnessmark.judging.near import is_fact_near, is_near, near_places
from witnessmark.judging.scene import Scene
from witnessmark.judging.when import holds
from witnessmark.packs.model import Duty, Subject
from witnessmark.views.house import Place

__all__ = ["coverage"]


@dataclass(frozen=True, slots=True)
class _Ground:
    """What coverage is computed on."""

    scene: Scene
    evidence: Evidence
    skips: Skips


@dataclass(frozen=True, slots=True)
class _Target:
    """One thing asked for: a component, a place, or (both None) anything of the subject. ``name`` for the reader."""

    name: str
    component: str | None = None
    place: str | None = None


def _candidates(ground: _Ground, duty: Duty, subject: Subject) -> list[Fact]:
    """The facts that meet a subject, whatever they are asked of, in the record's order."""
    evidence = ground.evidence
    if subject.kinds:
        pools = [evidence.by_kind.get(kind, []) for kind in dict.fromkeys(subject.kinds)]
    elif subject.sorts:
        pools = [evidence.by_sort.get(sort, []) for sort in dict.fromkeys(subject.sorts)]
    else:
        pools = [list(evidence.facts)]
    unrestricted = not (subject.kinds or subject.sorts or subject.attributes or subject.measures)
    kinds = ground.scene.packs.kinds
    met: list[Fact] = []
    for pool in pools:
        for fact in pool:
            if unrestricted:
                kind = kinds.get(ground.scene.house.kind_of(fact))
                if kind is not None and duty.system and kind.system != duty.system:
                    continue
            if not is_fact_near(ground.scene, subject, fact):
                continue
            if accepts(fact, duty.verb, subject, evidence.present) and is_about(ground.scene, fact, subject, duty.verb):
                met.append(fact)
    return met


def _sides(ground: _Ground) -> Iterator[Place]:
    for place in ground.scene.house.places.values():
        if place.declared and (place.sort == "outside-face" or (place.side and place.sort == "")):
            yield place


def _rooms(ground: _Ground, subject: Subject, *, habitable_only: bool) -> Iterator[Place]:
    scene = ground.scene
    having = {c.place for c in scene.house.components.values() if c.declared and c.kind in subject.kinds}
    having = set() if habitable_only else having
    for place in scene.house.places.values():
        sort = scene.packs.sorts.get(place.sort)
        if sort is not None and sort.outside:
            continue
        habitable = place.habitable if place.habitable is not None else sort is not None and sort.habitable
        if (place.declared and habitable) or place.id in having:
            yield place


def _targets(ground: _Ground, duty: Duty, subject: Subject) -> list[_Target]:
    """What is asked for, one by one; a single target for the whole where nothing in particular is."""
    scene = ground.scene
    found: list[_Target] = []
    if duty.verb == "enter" or (duty.extent == "all" and subject.sorts and not subject.kinds):
        found = [_Target(p.name, place=p.id) for p in scene.house.places.values() if p.sort in subject.sorts]
    elif duty.extent == "all" and subject.kinds:
        found = [
            _Target(c.label, component=c.id)
            for c in scene.house.components.values()
            if c.declared
            and c.kind in subject.kinds
            and (not subject.sorts or _sort_at(scene, c.place) in subject.sorts)
            and is_near(scene, subject, c.id)
        ]
        found += _near_without_any(ground, subject)
    elif duty.extent in {"one_per_room", "one_per_habitable_room"}:
        only = duty.extent == "one_per_habitable_room"
        found = [_Target(p.name, place=p.id) for p in _rooms(ground, subject, habitable_only=only)]
    elif duty.extent == "one_per_place":
        found = [
            _Target(p.name, place=p.id) for p in scene.house.places.values() if p.declared and p.sort in subject.sorts
        ]
    elif duty.extent == "one_per_side":
        found = [_Target(p.name, place=p.id) for p in _sides(ground)]
    return found or [_Target("")]


def _near_without_any(ground: _Ground, subject: Subject) -> list[_Target]:
    """The places with plumbing in which nothing of a subject near plumbing was listed one by one."""
    if not subject.near:
        return []
    home = ground.scene.house
    having = {c.place for c in home.components.values() if c.declared and c.kind in subject.kinds}
    places = [home.places[p] for p in sorted(near_places(ground.scene) - having) if p in home.places]
    return [_Target(p.name, place=p.id) for p in places if not subject.sorts or p.sort in subject.sorts]


def _sort_at(scene: Scene, place: str | None) -> str:
    known = scene.house.places.get(place or "")
    return known.sort if known else ""


def _complete(fact: Fact) -> bool:
    """Whether a fact that counts covers the whole set."""
    count = fact.body.count if isinstance(fact.body, Saw) else None
    return count is None or count.of is None or count.checked >= count.of


class _Met:
    """The facts that fit a subject, found by what they are about, so that each target is looked up once."""

    def __init__(self, ground: _Ground, facts: list[Fact], *, whole: bool) -> None:
        self._home = ground.scene.house
        self._facts = facts
        self._whole = whole
        self._by_id = {fact.id: fact for fact in facts}
        self._component: dict[str, list[str]] = {}
        self._place: dict[str, list[str]] = {}
        self._counted: list[Fact] = []
        for fact in facts:
            if fact.component is not None:
                self._component.setdefault(fact.component, []).append(fact.id)
            elif isinstance(fact.body, Saw) and fact.body.count is not None and _complete(fact):
                self._counted.append(fact)
            place = self._home.place_of(fact)
            if place is not None:
                self._place.setdefault(place, []).append(fact.id)

    def about(self, target: _Target) -> list[str]:
        """Ids of the facts about a target. A full count without a component speaks for each in its place."""
        if target.component is not None:
            place = self._home.components[target.component].place
            counted = [f.id for f in self._counted if self._home.place_of(f) in {None, place}]
            return self._component.get(target.component, []) + counted
        if target.place is not None:
            return [i for i in self._place.get(target.place, []) if not self._whole or _complete(self._by_id[i])]
        return [fact.id for fact in self._facts if not self._whole or _complete(fact)]


def _here(ground: _Ground, subject: Subject, *, places: bool) -> bool:
    """Whether anything of an optional subject is in the house."""
    if not subject.kinds:
        return places
    if not subject.sorts:
        return bool(set(subject.kinds) & ground.evidence.present)
    return any((kind, sort) in ground.evidence.present_at for kind in subject.kinds for sort in subject.sorts)


def _asked(ground: _Ground, duty: Duty, subject: Subject) -> str:
    """Why an optional subject, or a place that the job rules out, is not asked for; empty when it is."""
    scene = ground.scene
    if subject.when:
        asked, why = holds(scene, subject.when)
        if not asked:
            return why
    places = [p for p in scene.house.places.values() if p.sort in subject.sorts]
    if subject.optional and not _here(ground, subject, places=bool(places)):
        return "nothing of the kind was recorded in the house"
    foundation = (scene.job.foundation or "").lower()
    if duty.verb == "enter" and not places and foundation:
        sorts = [
            scene.packs.sorts[s] for s in subject.sorts if s in {"crawl-space", "basement"} and s in scene.packs.sorts
        ]
        named = any(word in foundation for sort in sorts for word in (sort.name, *sort.spoken))
        if sorts and len(sorts) == len(subject.sorts) and not named:
            return f"the job says that the foundation is {scene.job.foundation}"
    return ""


def _absent(ground: _Ground, names: set[str]) -> list[Fact]:
    """``absent`` facts that say there is none of these kinds, or no place of these sorts."""
    return [f for f in ground.evidence.facts if isinstance(f.body, Absent) and f.body.kind in names and not f.body.part]


def _what_is_missing(ground: _Ground, subject: Subject, missing: list[str], *, partly: bool) -> str:
    """Why a subject is open, in words that say what would meet it."""
    names = ", ".join(name for name in dict.fromkeys(missing) if name)
    packs = ground.scene.packs
    asked = [packs.attributes[n].name if n in packs.attributes else n for n in subject.attributes]
    asked += [packs.measures[n].name if n in packs.measures else n for n in subject.measures]
    stated = " or ".join(dict.fromkeys(asked))
    what = f"nothing recorded that states its {stated}" if stated else "nothing recorded"
    if partly and not names:
        what = "only a part was looked at"
    return f"{what}, for {names}" if names else what


def _ways(ground: _Ground, subject: Subject, target: _Target) -> list[Fact]:
    """What was stated of how a target was inspected, by whichever way."""
    home = ground.scene.house
    named = Subject(subject.words, subject.kinds, subject.part, ("method",), (), subject.sorts)
    facts = [f for f in ground.evidence.facts if is_about(ground.scene, f, named, "state_method")]
    if target.component is not None:
        return [f for f in facts if f.component == target.component]
    return [f for f in facts if target.place is None or home.place_of(f) == target.place]


def _subject(ground: _Ground, duty: Duty, subject: Subject) -> SubjectCoverage:
    why = _asked(ground, duty, subject)
    if why:
        return SubjectCoverage(subject.words, "not asked", (), why)
    facts = _candidates(ground, duty, subject)
    met: list[str] = []
    excused: list[str] = []
    reasons: list[str] = []
    missing: list[str] = []
    refused: list[str] = []
    whole = duty.extent == "all"
    about = _Met(ground, facts, whole=whole)
    for target in _targets(ground, duty, subject):
        done = about.about(target)
        if not done and duty.verb == "enter" and target.place is None:
            done = [fact.id for fact in _absent(ground, {*subject.sorts, *subject.kinds})]
        elif not done and duty.verb != "enter" and target.place is not None:
            done = [f.id for f in _absent(ground, set(subject.kinds)) if ground.scene.house.place_of(f) == target.place]
        excuses = excuses_for(ground.scene, ground.skips, duty, subject, component=target.component, place=target.place)
        lawful = [excuse for excuse in excuses if excuse.lawful]
        if duty.method_reasons:
            way = by_default_method(duty, _ways(ground, subject, target), excuses)
            (met if way.status == "met" else excused if way.status == "excused" else []).extend(way.entries)
            reasons += [f"{target.name}: {way.words}" if target.name else way.words] * (way.status == "excused")
            if way.status == "open":
                missing.append(target.name)
                refused += [way.words, *(excuse.words for excuse in excuses if not excuse.lawful)]
            continue
        # A space looked into but left out in part was not entered: there the excuse tells more than the look.
        if lawful and (not done or duty.verb == "enter"):
            excused += [excuse.fact.id for excuse in lawful]
            reasons += [f"{target.name}: {e.words}" if target.name else e.words for e in lawful]
        elif done:
            met += done
        else:
            missing.append(target.name)
            refused += [excuse.words for excuse in excuses]
    entries = tuple(dict.fromkeys(met + excused))
    if missing:
        what = _what_is_missing(ground, subject, missing, partly=whole and bool(facts))
        return SubjectCoverage(subject.words, "open", entries, "; ".join(dict.fromkeys([what, *refused])))
    if excused:
        return SubjectCoverage(subject.words, "excused", entries, "; ".join(dict.fromkeys(reasons)))
    return SubjectCoverage(subject.words, "met", entries)


def _duty(ground: _Ground, duty: Duty) -> DutyCoverage:
    asked, why = holds(ground.scene, duty.when)
    subjects = duty.subjects or (Subject(duty.words),)
    if not asked:
        rows = tuple(SubjectCoverage(subject.words, "not asked", (), why) for subject in subjects)
        return DutyCoverage(duty, "not asked", rows, why)
    rows = tuple(_subject(ground, duty, subject) for subject in subjects)
    statuses = {row.status for row in rows}
    status = next(s for s in ("open", "excused", "met", "not asked") if s in statuses)
    return DutyCoverage(duty, status, rows, why)


def coverage(scene: Scene) -> tuple[DutyCoverage, ...]:
    """Every tracked duty of the rulebook in force that says *shall*, in the rulebook's order; empty without one.

    To hold one visit against several rulebooks, ask for each with ``scene.under(rulebook)``.
    """
    if scene.rulebook is None:
        return ()
    ground = _Ground(scene, evidence_of(scene), skips_of(scene))
    return tuple(_duty(ground, duty) for duty in scene.rulebook.duties if duty.tracked and duty.modality == "shall")
