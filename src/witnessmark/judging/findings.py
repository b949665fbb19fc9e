"""Findings drafted for what is open to write up. The engine drafts; the inspector decides.

Facts of the same kind in the same place (or, without a kind, of the same component) and the same condition make one
draft: what was said and what was measured of it, and two windows of one room that stick alike. Its four parts come from the condition of the packs that the facts name, else from the condition that the limit
of a reading names, else it is a plain draft of the words that were recorded, without a judgement of its own.
"""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field

from witnessmark.journal.acts import Absent, Read, Saw
from witnessmark.journal.fold import Fact
from witnessmark.judging.limits import cited, limit_of, spoken
from witnessmark.judging.model import DraftFinding, JudgedReading, LooseEnd
from witnessmark.judging.scene import Scene
from witnessmark.packs.model import Condition
from witnessmark.views.readings import Reading

__all__ = ["draft"]


#: What a draft says where no condition of the packs says more.
_NO_WORDS = "This was recorded as a defect, without words that say what was seen."
_WHY = "This was seen as a defect at the inspection; its cause and extent were not determined."
_IF_LEFT = "What follows if it is left depends on its cause."
_DO = "Have it evaluated by someone licensed for this work, and follow their advice."


_WORD = re.compile(r"[a-z0-9/.']*[a-z0-9]")


@dataclass(slots=True)
class _Group:
    """Facts that make one draft."""

    facts: list[Fact] = field(default_factory=list)
    evidence: list[str] = field(default_factory=list)
    readings: list[tuple[Reading, JudgedReading]] = field(default_factory=list)


def _sentence(text: str) -> str:
    plain = text.strip()
    if not plain:
        return ""
    return plain[0].upper() + plain[1:] + ("" if plain[-1] in ".!?" else ".")


def _absence(scene: Scene, fact: Fact, body: Absent) -> Condition | None:
    """The packs' condition of this kind, or part, not being there."""
    kind = scene.house.kind_of(fact)
    rows = [c for c in scene.packs.conditions.values() if c.absence and kind in c.kinds and c.part == body.part]
    return rows[0] if len(rows) == 1 else None


def _condition(scene: Scene, fact: Fact, readings: Iterable[JudgedReading]) -> Condition | None:
    conditions = scene.packs.conditions
    named = conditions.get(getattr(fact.body, "condition", None) or "")
    if named is not None:
        return named
    for row in readings:
        limited = conditions.get((row.criterion.condition if row.criterion else None) or "")
        if limited is not None:
            return limited
    return _absence(scene, fact, fact.body) if isinstance(fact.body, Absent) else None


def _words(scene: Scene, fact: Fact) -> str:
    body = fact.body
    part = scene.part_name(scene.house.kind_of(fact), getattr(body, "part", None))
    if isinstance(body, Absent):
        name = part or scene.name_of(fact) or "it"
        return f"{name}: {body.what}" if body.what else f"{name} was looked for and is not there"
    if isinstance(body, Saw):
        count = ""
        if body.count is not None:
            of = f" of {body.count.of}" if body.count.of is not None else ""
            count = f" ({body.count.adverse} of {body.count.checked} looked at{of and f', {body.count.of} in all'})"
        text = body.what + count
    else:
        text = str(getattr(body, "shows", None) or ("damage in a photo" if not isinstance(body, Read) else ""))
    return f"{part}: {text}" if part and text and part.lower() not in text.lower() else text


def _read(reading: Reading, row: JudgedReading) -> str:
    """What was read, which limit it is beyond, with its source and force."""
    if row.criterion is None:
        return _sentence(row.words)
    limit = f"the limit is {limit_of(row.criterion)} ({cited(row.criterion)})"
    return _sentence(f"{spoken(reading)} was read; {limit}. {row.force}")


def _names(scene: Scene, condition: Condition) -> str:
    return " ".join(scene.kind_name(kind) for kind in condition.kinds)


def _adds(text: str, known: str) -> bool:
    """Whether words say anything that the condition's own words do not; numbers always do.

    >>> _adds("Smoke alarm: no smoke alarm.", "Smoke alarm missing. No smoke alarm was found.")
    False
    >>> _adds("Hangers on the left rusted.", "Joist hangers are rusted.")
    True
    """
    have = set(_WORD.findall(known.lower()))
    return any(word not in have for word in _WORD.findall(text.lower()))


def _seen(scene: Scene, group: _Group, condition: Condition | None) -> str:
    parts = [_sentence(condition.observation)] if condition else []
    said = [_sentence(_words(scene, fact)) for fact in group.facts]
    known = f"{condition.name} {condition.observation} {_names(scene, condition)}" if condition else ""
    parts += [text for text in dict.fromkeys(said) if text and text not in parts and _adds(text, known)]
    parts += [_read(reading, row) for reading, row in group.readings]
    return " ".join(parts) or _NO_WORDS


def _from_condition(condition: Condition) -> dict[str, str]:
    return {
        "title": _sentence(condition.name).rstrip("."),
        "why": condition.implication,
        "if_left": condition.if_left,
        "do": condition.do,
        "by": condition.by,
        "direct": condition.direct,
        "stake": condition.stake,
        "urgency": condition.urgency,
    }


def _usual_trade(scene: Scene, kind: str) -> str:
    """The trade that most of the packs' conditions of this kind name; empty when they name none."""
    named = Counter(c.by for c in scene.packs.conditions.values() if kind in c.kinds and c.by)
    return named.most_common(1)[0][0] if named else ""


def _title(scene: Scene, group: _Group) -> str:
    first = group.facts[0]
    name, said = scene.name_of(first), _words(scene, first)
    if group.readings and isinstance(first.body, Read):
        measure = scene.packs.measures.get(first.body.measure)
        said = f"{measure.name if measure else 'reading'} {spoken(group.readings[0][0])}"
    title = f"{name}: {said}" if name and said and name.lower() not in said.lower() else said or name or "Defect"
    return _sentence(title).rstrip(".")


def _plain(scene: Scene, group: _Group) -> dict[str, str]:
    """A draft of what was recorded, without a judgement of its own: what it means is left to the inspector."""
    limits = list(dict.fromkeys(row.criterion for _, row in group.readings if row.criterion is not None))
    return {
        "title": _title(scene, group),
        "why": " ".join(_sentence(limit.words) for limit in limits) or _WHY,
        "if_left": _IF_LEFT,
        "do": _DO,
        "by": _usual_trade(scene, scene.house.kind_of(group.facts[0])),
        "direct": "further evaluation",
        "stake": limits[0].stake if limits else "function",
        "urgency": limits[0].urgency if limits else "soon",
    }


def draft(scene: Scene, ends: Sequence[LooseEnd], judged: Sequence[JudgedReading]) -> tuple[DraftFinding, ...]:
    """One draft for each group of open *write up* loose ends, in the order they were opened."""
    beyond: dict[str, list[JudgedReading]] = {}
    for row in judged:
        if row.verdict == "beyond":
            beyond.setdefault(row.entry, []).append(row)
    read = {reading.fact.id: reading for reading in scene.readings}
    groups: dict[tuple[str, ...], tuple[_Group, Condition | None]] = {}
    for end in ends:
        fact = scene.facts.get(end.entries[0]) if end.sort == "write up" and end.entries else None
        if fact is None:
            continue
        readings = beyond.get(fact.id, [])
        condition = _condition(scene, fact, readings)
        kind = scene.house.kind_of(fact)
        spot = ("kind", kind, scene.house.place_of(fact) or "") if kind else ("component", fact.component or "")
        # Without a condition nothing says that two facts are the same trouble.
        what = condition.id if condition else f"fact {fact.id}"
        group, _ = groups.setdefault((*spot, what), (_Group(), condition))
        group.facts.append(fact)
        group.evidence += end.entries[1:]
        group.readings += [(read[fact.id], row) for row in readings]
    drafts: list[DraftFinding] = []
    for group, condition in groups.values():
        first = group.facts[0]
        parts = _from_condition(condition) if condition else _plain(scene, group)
        rests_on = tuple(dict.fromkeys([fact.id for fact in group.facts] + group.evidence))
        drafts.append(
            DraftFinding(
                rests_on=rests_on,
                seen=_seen(scene, group, condition),
                kind=scene.house.kind_of(first) or None,
                condition=condition.id if condition else None,
                place=scene.house.place_of(first),
                component=first.component,
                **parts,
            )
        )
    return tuple(drafts)
