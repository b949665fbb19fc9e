"""Which texts the law wants in the report of this visit, in substance or word for word."""

from __future__ import annotations

from dataclasses import dataclass

from witnessmark.judging.scene import Scene
from witnessmark.judging.when import decided, holds
from witnessmark.packs.law import Duty

__all__ = ["Statement", "statements"]


@dataclass(frozen=True, slots=True)
class Statement:
    """A text that the law wants in the report: in substance or word for word, in what size of type, and why now."""

    duty: Duty
    text: str
    verbatim: bool
    min_pt: int | None
    why: str


def statements(scene: Scene) -> tuple[Statement, ...]:
    """The texts the rulebook wants in the report of this visit, in its order.

    Texts of the agreement (``contract``) are not for the report. A text that belongs to a trigger (``text_when``) is wanted only when something recorded pulls it.
    """
    found = []
    for duty in scene.rulebook.duties if scene.rulebook else ():
        if duty.mandatory_text and duty.verb != "contract" and decided(scene, duty.text_when):
            _, why = holds(scene, duty.text_when)
            found.append(Statement(duty, duty.mandatory_text, duty.verbatim, duty.min_pt, why))
    return tuple(found)
