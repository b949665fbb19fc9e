"""Which acts meet which verb of the law, and which of a duty's subjects they are about.

Only what counts is looked at: drafts, amendments' earlier wordings and dropped entries are not facts. A photo alone
meets nothing; the entry that speaks of it does.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field

from witnessmark.journal.acts import (
    Absent,
    Arrived,
    Doubted,
    Found,
    Identified,
    Left,
    Listed,
    Placed,
    Ran,
    Read,
    Saw,
    Sealed,
    Settled,
    Skipped,
    Stopped,
    Took,
)
from witnessmark.journal.fold import Fact
from witnessmark.judging.scene import Scene
from witnessmark.packs.model import Subject

__all__ = ["Evidence", "accepts", "evidence_of", "is_about"]

_INSPECT = (Saw, Ran, Read, Identified, Absent, Found)
_OPERATE = (Ran, Read)
_ABSENT_IS_THE_REPORT = frozenset({"report", "report_def", "verify", "advise"})
#: Methods that are no entering: looking in is not going in.
_NOT_INSIDE = re.compile(
    r"\b(not entered|in part|partly|part of it|hatch|opening|from (the )?(access|ladder|doorway|ground|door|edge|eave)|head and shoulders)\b",
    re.IGNORECASE,
)
#: Acts that do not show that anyone was there: they are written down anywhere.
_ANYWHERE = (Placed, Listed, Skipped, Settled, Found, Arrived, Left, Sealed, Took, Doubted, Absent)


@dataclass(frozen=True, slots=True)
class Evidence:
    """The facts that can meet a duty, by kind and by the sort of their place, and which kinds are in the house.

    ``present``: kinds of which something was listed, seen, run, read or identified, and the sorts of its places (an
    attic is a kind too). ``present_at``: the same with the sort of the place where it is.
    """

    facts: tuple[Fact, ...] = ()
    by_kind: Mapping[str, list[Fact]] = field(default_factory=dict)
    by_sort: Mapping[str, list[Fact]] = field(default_factory=dict)
    present: frozenset[str] = frozenset()
    present_at: frozenset[tuple[str, str]] = frozenset()


def evidence_of(scene: Scene) -> Evidence:
    """Index the facts of the scene."""
    by_kind: dict[str, list[Fact]] = {}
    by_sort: dict[str, list[Fact]] = {}
    home = scene.house
    sorts = {place.id: place.sort for place in home.places.values()}
    at = {(c.kind, sorts.get(c.place or "", "")) for c in home.components.values() if c.declared and c.kind}
    at |= {(sort, sort) for sort in sorts.values() if sort}
    facts: list[Fact] = []
    for fact in scene.record.facts:
        body = fact.body
        if isinstance(body, Took | Skipped | Settled | Doubted | Placed | Listed | Arrived | Left | Sealed):
            continue
        facts.append(fact)
        kind, sort = home.kind_of(fact), home.sort_of(fact)
        if kind:
            by_kind.setdefault(kind, []).append(fact)
            if not isinstance(body, Absent):
                at.add((kind, sort))
        if sort:
            by_sort.setdefault(sort, []).append(fact)
    return Evidence(tuple(facts), by_kind, by_sort, frozenset(kind for kind, _ in at), frozenset(at))


def _part_fits(fact: Fact, part: str | None, verb: str) -> bool:
    own = getattr(fact.body, "part", None)
    if isinstance(fact.body, Found):
        return True
    if isinstance(fact.body, Absent):
        # Without the whole there is no part; a part that is missing was looked for, but describes no whole.
        return own is None or own == part or (part is None and verb != "describe")
    return part is None or own == part


def _states(fact: Fact, subject: Subject) -> bool:
    """Whether the fact states what the subject asks to be stated: one of its attributes, or one of its measures."""
    if not subject.attributes and not subject.measures:
        return True
    body = fact.body
    if isinstance(body, Identified):
        return body.attribute in subject.attributes and bool(body.value.strip())
    if isinstance(body, Read):
        return body.measure in subject.measures or body.measure in subject.attributes
    return isinstance(body, Absent)


def is_about(scene: Scene, fact: Fact, subject: Subject, verb: str) -> bool:
    """Whether a fact is about a subject: its kind, part, sort of place, attribute and measure all fit."""
    kind = scene.house.kind_of(fact)
    if subject.kinds and kind not in subject.kinds:
        return False
    if subject.sorts and scene.house.sort_of(fact) not in subject.sorts:
        return False
    return _part_fits(fact, subject.part, verb) and _states(fact, subject)


def accepts(fact: Fact, verb: str, subject: Subject, present: Iterable[str]) -> bool:
    """Whether an act is of the sort that meets a verb.

    ``absent`` meets any while nothing of the subject's kinds is *present*. To describe is to state an attribute where
    the duty names attributes, and to state what was observed where it names none.
    """
    body = fact.body
    if isinstance(body, Absent):
        if not subject.kinds:
            return False
        return verb in _ABSENT_IS_THE_REPORT or body.part is not None or not set(subject.kinds) & set(present)
    if verb == "describe" and (subject.attributes or subject.measures):
        return isinstance(body, Identified | Read)
    if verb in {"operate", "test", "verify"}:
        stated = isinstance(body, Saw) and (body.state in {"sound", "adverse"} or body.count is not None)
        return isinstance(body, _OPERATE) or stated
    if verb == "enter":
        outside = isinstance(body, Identified) and body.attribute == "method" and bool(_NOT_INSIDE.search(body.value))
        return not outside and not isinstance(body, _ANYWHERE)
    if verb == "state_method":
        return isinstance(body, Identified) and (body.attribute == "method" or bool(subject.attributes))
    if verb == "probe":
        return isinstance(body, Ran | Read | Saw)
    if verb == "advise":
        return isinstance(body, Found) or (isinstance(body, Saw) and body.state == "sound")
    return isinstance(body, (*_INSPECT, Stopped) if verb == "report" else _INSPECT)
