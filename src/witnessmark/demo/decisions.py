"""What the invented inspector decides: read from ``visit/decisions.toml`` and turned into notes.

A decision names entries by when they were said and by a few of their words, because ids differ each time the demo is
built.
"""

from __future__ import annotations

import tomllib
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from datetime import datetime, timedelta
from pathlib import Path

from witnessmark.journal.fold import Fact, Record
from witnessmark.journal.moment import instant

__all__ = ["Decision", "Pick", "pick", "read_decisions"]

#: How far from the stated moment an entry may lie.
_NEAR = timedelta(seconds=20)


@dataclass(frozen=True, slots=True)
class Pick:
    """Names entries: ``near`` minutes:seconds into the narration, an act, and words that they contain."""

    near: str
    act: str = ""
    words: str = ""


@dataclass(frozen=True, slots=True)
class Decision:
    """One note: when, which act, its fields, and the entries it refers to.

    ``phase`` is ``on site`` (before leaving) or ``at the desk``; ``refer`` the field that takes the picked entries.
    """

    phase: str
    act: str
    at: str
    said: Mapping[str, str]
    of: tuple[Pick, ...] = ()
    refer: str = "of"


def read_decisions(path: Path) -> list[Decision]:
    """The decisions of a file, in its order."""
    table = tomllib.loads(path.read_text(encoding="utf-8"))
    return [
        Decision(
            phase=row["phase"],
            act=row["act"],
            at=row["at"],
            said=row.get("said", {}),
            of=tuple(Pick(**named) for named in row.get("of", ())),
            refer=row.get("refer", "of"),
        )
        for row in table["decision"]
    ]


def moment(began: datetime, clock: str) -> datetime:
    """The moment that lies minutes:seconds after the recording began."""
    minutes, seconds = clock.split(":")
    return began + timedelta(minutes=int(minutes), seconds=int(seconds))


def _candidates(record: Record) -> Iterable[Fact]:
    yield from record.facts
    yield from record.drafts


def pick(record: Record, named: Pick, began: datetime) -> list[Fact]:
    """The entries a decision names; none when the listening no longer yields them."""
    around = moment(began, named.near)
    return [
        fact
        for fact in _candidates(record)
        if abs(instant(fact.at) - around) <= _NEAR
        and (not named.act or fact.act == named.act)
        and named.words in (fact.source.words or getattr(fact.body, "name", "") or "")
        and (fact.act == named.act or fact.act not in {"placed", "listed"})
    ]
