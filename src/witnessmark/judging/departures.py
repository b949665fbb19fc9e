"""What was left out, held against the law's closed list of reasons and the notice it wants given."""

from __future__ import annotations

from dataclasses import dataclass

from witnessmark.journal.acts import Arrived, Settled, Skipped
from witnessmark.judging.scene import Scene

__all__ = ["Departed", "departures"]


@dataclass(frozen=True, slots=True)
class Departed:
    """Something left out: the entry, what, why, whether the reason is on the law's closed list, and the notice owed."""

    entry: str
    what: str
    reason: str
    listed: bool
    noticed: bool
    words: str


def departures(scene: Scene) -> tuple[Departed, ...]:
    """Everything skipped, held against the rulebook's closed list of reasons and the notice it asks for."""
    rule = scene.rulebook.departure if scene.rulebook else None
    told = {
        entry for f in scene.record.facts if isinstance(f.body, Settled) and f.body.with_whom for entry in f.body.of
    }
    arrived = min((f.at for f in scene.record.facts if isinstance(f.body, Arrived)), default="")
    found = []
    for fact in scene.record.facts:
        body = fact.body
        if not isinstance(body, Skipped):
            continue
        reason = scene.packs.reasons.get(body.reason)
        words = body.words or (reason.words if reason else body.reason)
        listed = rule is None or not rule.reasons or body.reason in rule.reasons
        noticed = fact.id in told or bool(arrived and fact.at < arrived)
        owed = "" if rule is None or noticed else rule.notice
        found.append(Departed(fact.id, body.what or scene.where(fact), words, listed, noticed, owed))
    return tuple(found)
