"""The texts of a condition, cut for reading tests, and what listening makes of a sentence said in a place."""

from __future__ import annotations

import re
from collections.abc import Iterator

from witnessmark.listening import Line, Narration, listen
from witnessmark.packs.model import Condition, Packs, Translation

__all__ = ["PROMESAS", "english", "heard", "sentences", "texts"]

PROMESAS = re.compile(
    r"\b(segur[oa]s?|seguramente|garantiza\w*|garantías?|promet\w*|cumple con|conforme al código|en regla)\b",
    re.IGNORECASE,
)
_SENTENCE = re.compile(r"(?<=[.!?])\s+")


def texts(row: Condition | Translation) -> tuple[str, ...]:
    """The four texts that a client reads."""
    return row.observation, row.implication, row.if_left, row.do


def english(row: Condition) -> tuple[str, ...]:
    """The four, with the reason for its stake and urgency and what shows it."""
    return (*texts(row), row.because, row.evidence)


def sentences(text: str) -> Iterator[str]:
    """The sentences of a text."""
    yield from _SENTENCE.split(text)


def heard(packs: Packs, place: str, words: str) -> set[str]:
    """The conditions that one sentence, said in a place with nothing before it, is heard as; empty ids for unnamed faults."""
    drafts = listen(Narration("one sentence", (Line(0.0, 4.0, words),)), packs, place=place).drafts
    return {draft.condition_id or "" for draft in drafts if draft.condition == "adverse"}
