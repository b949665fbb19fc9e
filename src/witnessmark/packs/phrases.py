"""Which rows a spoken phrase may mean."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from types import MappingProxyType

from witnessmark.packs.messages import SAID_OF_TWO
from witnessmark.packs.model import Packs
from witnessmark.problems import Problem

__all__ = ["Candidate", "ambiguities", "plain", "spoken_index"]

_GAPS = re.compile(r"[^\w'%/]+")


@dataclass(frozen=True, slots=True)
class Candidate:
    """A row a phrase may mean.

    ``sort`` is ``kind``, ``part``, ``sort``, ``attribute``, ``value``, ``measure``, ``reason``, ``condition`` or
    ``procedure``; ``id`` the row's id; ``of`` the kind of a part, or the attribute of a value.
    """

    sort: str
    id: str
    of: str | None = None


def plain(phrase: str) -> str:
    """A phrase as the index holds it: lower case, words apart by one space, punctuation gone.

    >>> plain("T&P  discharge-pipe.")
    't p discharge pipe'
    """
    return _GAPS.sub(" ", phrase.lower()).strip()


def _said(packs: Packs) -> Iterator[tuple[str, Candidate]]:
    for kind in packs.kinds.values():
        for phrase in (*kind.spoken, kind.plural):
            yield phrase, Candidate("kind", kind.id)
        for part in kind.parts:
            for phrase in part.spoken:
                yield phrase, Candidate("part", part.id, kind.id)
    for sort in packs.sorts.values():
        for phrase in sort.spoken:
            yield phrase, Candidate("sort", sort.id)
    for attribute in packs.attributes.values():
        for phrase in attribute.spoken:
            yield phrase, Candidate("attribute", attribute.id)
        for value in attribute.values:
            for phrase in value.spoken:
                yield phrase, Candidate("value", value.id, attribute.id)
    for name, table in (("measure", packs.measures), ("reason", packs.reasons), ("condition", packs.conditions)):
        for row in table.values():
            for phrase in row.spoken:
                yield phrase, Candidate(name, row.id)
    for procedure in packs.procedures.values():
        for phrase in procedure.said:
            yield phrase, Candidate("procedure", procedure.id)


def spoken_index(packs: Packs) -> Mapping[str, tuple[Candidate, ...]]:
    """Every phrase of the packs (as ``plain`` gives it) with all it may mean, in the order of the packs."""
    index: dict[str, dict[Candidate, None]] = {}
    for phrase, candidate in _said(packs):
        key = plain(phrase)
        if key:
            index.setdefault(key, {})[candidate] = None
    return MappingProxyType({phrase: tuple(found) for phrase, found in index.items()})


def ambiguities(packs: Packs) -> list[Problem]:
    """A note (not a failure) for each phrase that is said of two kinds or more, naming them."""
    notes = []
    for phrase, found in spoken_index(packs).items():
        kinds = [c.id for c in found if c.sort == "kind"]
        if len(kinds) > 1:
            files = dict.fromkeys(packs.kinds[k].provenance.file for k in kinds)
            notes.append(SAID_OF_TWO.at(", ".join(files), f"{phrase!r}: {', '.join(kinds)}"))
    return notes
