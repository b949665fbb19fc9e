"""What belongs in the summary that a law asks for, and whether it must be there."""

from __future__ import annotations

from dataclasses import dataclass

from witnessmark.journal.acts import Found
from witnessmark.judging.item_states import item_states
from witnessmark.judging.observed import observed
from witnessmark.judging.scene import Scene

__all__ = ["Summarised", "summary"]


@dataclass(frozen=True, slots=True)
class Summarised:
    """What a summary takes in: entries of findings, whether it must be there, and the statement it opens with."""

    required: bool
    entries: tuple[str, ...]
    statement: str
    words: str


def summary(scene: Scene) -> Summarised | None:
    """What belongs in the summary the rulebook asks for; None where it asks for none.

    Findings go in when the state of what they stand on is one the law lists, and no other finding does.
    """
    rule = scene.rulebook.summary if scene.rulebook else None
    if rule is None:
        return None
    states = {state.component: state.means for state in item_states(scene)}
    entries = tuple(
        fact.id
        for fact in scene.record.facts
        if isinstance(fact.body, Found)
        and (not rule.means or states.get(fact.component or "", "deficient") in rule.means)
    )
    systems = len(observed(scene))
    required = rule.from_systems is None or systems >= rule.from_systems
    return Summarised(required, entries, rule.statement, rule.words)
