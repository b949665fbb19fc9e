"""One statement with what it names, what it is about and where: what the rules look at."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field
from functools import cache
from typing import Any

from witnessmark.listening.drafts import Draft
from witnessmark.listening.focus import Scene, Thing
from witnessmark.listening.lexicon import Meaning
from witnessmark.listening.naming import Named, Plate, Value
from witnessmark.listening.places import Place
from witnessmark.listening.quantities import Quantity
from witnessmark.listening.terms import cues, members
from witnessmark.listening.words import Token, Word, root

__all__ = ["Statement"]


@cache
def _small() -> frozenset[str]:
    """Words before what a statement begins with."""
    return members("clauses", "conjunctions") | {"okay", "ok", "now", "yeah", "yep", "well", "alright", "oh", "just", "also",
                                                 "again", "wait", "no", "sorry"}  # fmt: skip


@cache
def _passed_over() -> frozenset[str]:
    """Words between "i" and the verb that is the speaker's."""
    return members("clauses", "adverbs") | {"am", "are", "have", "had", "going", "to", "do", "did", "was", "will", "can", "could",
                                            "would", "and", "not", "so", "be", "but", "okay", "then", "go", "ahead", "able",
                                            "were", "now", "yeah", "alright", "just", "while", "because", "well"}  # fmt: skip


def _opening(norms: Sequence[str]) -> int:
    """Where a statement begins after openers and conjunctions; a "no" that opens it is its own."""
    at, small = 0, _small()
    while at < len(norms) - 1 and norms[at] in small and not (norms[at] == "no" and not at):
        at += 1
    return at


@dataclass(slots=True)
class Statement:
    """A statement. Positions are counted within it; ``first`` and ``last`` are indexes into the narration's words.

    ``thing`` is what it is about (None when nothing is in focus), ``named`` whether it names that itself,
    ``mentions`` every component it names with its likeliest meaning, ``masked`` the positions inside names,
    ``operated`` those of a verb of operating. ``fresh``: a full stop or a pause stands before it. ``referred``: it names
    nothing, and means something spoken of before the focus.
    """

    tokens: Sequence[Token]
    words: Sequence[Word]
    scene: Scene
    components: list[Named]
    values: list[Value]
    plates: list[Plate]
    quantities: list[Quantity]
    instruments: list[tuple[int, int]]
    norms: list[str] = field(default_factory=list)
    stems: list[str] = field(default_factory=list)
    roots: list[str] = field(default_factory=list)
    masked: frozenset[int] = frozenset()
    thing: Thing | None = None
    named: bool = False
    subject: Named | None = None
    mentions: list[tuple[Named, Meaning]] = field(default_factory=list)
    place: Place | None = None
    operated: tuple[int, ...] = ()
    fresh: bool = False
    referred: bool = False
    rules: list[str] = field(default_factory=list)
    opens: int = 0

    def __post_init__(self) -> None:
        self.norms = [t.norm for t in self.tokens]
        self.stems = [t.stem for t in self.tokens]
        self.roots = [root(t.norm) for t in self.tokens]
        self.masked = frozenset(i for c in self.components for i in range(c.start, c.end))
        self.opens = _opening(self.norms)

    @property
    def start(self) -> float:
        """Seconds: the line in which it begins."""
        return self.words[self.tokens[0].first].start

    @property
    def end(self) -> float:
        """Seconds: the end of the line in which it ends."""
        return self.words[self.tokens[-1].last].end

    def cue(self, table: str, name: str, start: int = 0) -> tuple[int, int, str] | None:
        """The first phrase of a term list in the statement."""
        return cues(table, name).first(self.norms, start)

    def begins(self, table: str, name: str) -> tuple[int, str] | None:
        """The phrase of a term list with which the statement begins, small words before it passed over."""
        at = self.opening()
        return cues(table, name).at(self.norms, at) if at < len(self.norms) else None

    def opening(self) -> int:
        """Where the statement begins after openers and conjunctions."""
        return self.opens

    def speaker(self, index: int) -> bool:
        """Whether the verb at *index* is the speaker's: "i" or "we" before it, or nothing."""
        before = self.norms[:index]
        for word in reversed(before):
            if word in {"i", "we"}:
                return True
            if word not in _passed_over():
                return False
        return True

    def slice_text(self, start: int = 0, end: int | None = None) -> str:
        """The words as recognised, from one position to another."""
        last = self.tokens[(len(self.tokens) if end is None else end) - 1].last
        return " ".join(w.text for w in self.words[self.tokens[start].first : last + 1])

    def said(self, start: int = 0, end: int | None = None) -> str:
        """The words as repaired, contractions opened: for ``what``."""
        return " ".join(self.norms[start:end])

    def at(self, start: int, end: int) -> dict[str, Any]:
        """The fields of a draft that rests on the words from *start* to *end* alone."""
        first, last = self.tokens[start].first, self.tokens[end - 1].last
        return {"start": self.words[first].start, "end": self.words[last].end, "first": first, "last": last,
                "text": self.slice_text(start, end)}  # fmt: skip

    def draft(self, act: str, what: str, why: str, thing: Thing | None = None, **more: Any) -> Draft:  # noqa: ANN401 - fields of Draft
        """A draft about *thing* (what the statement is about when not given) resting on the whole statement."""
        about_ = thing or self.thing or self.scene.unknown(("something",))
        return Draft(
            start=self.start,
            end=self.end,
            act=act,
            label=about_.label,
            what=what,
            text=self.slice_text(),
            why="; ".join([*self.rules, why]),
            place=about_.place,
            component=about_.key,
            first=self.tokens[0].first,
            last=self.tokens[-1].last,
            kind=about_.kind,
            part=about_.part,
            **more,
        )
