"""Which second looks were asked for by what was run, in which window, and which look met each.

A later ``saw`` meets it: one that names the ``ran`` (``again``), or one of the component that was run (or, where the
procedure names kinds, of any of those), in the same place where the procedure says *here*. A look before the window
opens does not meet it; a look after it has closed does, and is told as late.
"""

from __future__ import annotations

import heapq
from collections.abc import Mapping
from dataclasses import dataclass, replace
from datetime import datetime, timedelta

from witnessmark.journal.acts import Ran, Saw
from witnessmark.journal.fold import Fact, Record
from witnessmark.packs.model import LookAgain, Packs, Procedure
from witnessmark.views.house import House, house
from witnessmark.views.moments import instant
from witnessmark.views.procedures import by_kind, followed

__all__ = ["Look", "looks"]


@dataclass(frozen=True, slots=True)
class Look:
    """One second look that was asked for.

    Attributes:
        ran: the fact that asked for it.
        procedure: the procedure it followed.
        asked: what is asked, where and why.
        opened, earliest, latest: when it was run, and the window.
        by: the ``saw`` that met it, None while none has.
        late: that look came after the window.
    """

    ran: Fact
    procedure: Procedure
    asked: LookAgain
    opened: datetime
    earliest: datetime
    latest: datetime
    by: Fact | None = None
    late: bool = False


def _minutes(count: int) -> timedelta:
    """Minutes as a span; a pack's number beyond any visit is cut to a year."""
    return timedelta(minutes=max(0, min(count, 525_600)))


def _keys(fact: Fact, kind: str, place: str | None, asked: LookAgain) -> list[tuple[str, str, str | None]]:
    """Under which (sort of key, name, place) a look at the right thing is found."""
    where = place if asked.here else None
    scope = "kind here" if asked.here and place is not None else "kind"
    if asked.kinds:
        return [(scope, name, where) for name in asked.kinds]
    if fact.component:
        return [("component", fact.component, None), ("bare here", kind, place)]
    return [(scope, kind, where)] if kind else []


def looks(
    record: Record,
    packs: Packs,
    home: House | None = None,
    kinds: Mapping[str, tuple[Procedure, ...]] | None = None,
) -> tuple[Look, ...]:
    """Every second look that the runs of *record* ask for, in order, with what met it.

    *home* is the house of the same record and *kinds* ``procedures.by_kind`` of the same packs, where the caller has
    them already. A run whose time cannot be read asks for none.
    """
    home = home or house(record)
    kinds = by_kind(packs) if kinds is None else kinds
    open_looks: list[Look] = []
    waiting: dict[tuple[str, str, str | None], list[tuple[datetime, int]]] = {}
    by_ran: dict[str, int] = {}
    met: dict[int, Fact] = {}
    for fact in record.facts:
        body = fact.body
        if isinstance(body, Ran):
            kind, opened = home.kind_of(fact), instant(fact.at)
            procedure = followed(body, kind, packs, kinds)
            asked = procedure.look_again if procedure else None
            if procedure is None or asked is None or opened is None:
                continue
            index = len(open_looks)
            earliest, latest = opened + _minutes(asked.earliest), opened + _minutes(asked.latest)
            open_looks.append(Look(fact, procedure, asked, opened, earliest, latest))
            by_ran[fact.id] = index
            for key in _keys(fact, kind, home.place_of(fact), asked):
                heapq.heappush(waiting.setdefault(key, []), (earliest, index))
        elif isinstance(body, Saw):
            seen = instant(fact.at)
            named = by_ran.get(body.again or "")
            if named is not None and seen is not None and open_looks[named].earliest <= seen:
                met.setdefault(named, fact)
            kind, place = home.kind_of(fact), home.place_of(fact)
            keys = [("kind", kind, None), ("kind here", kind, place)] if kind else []
            keys.append(("component", fact.component, None) if fact.component else ("bare here", kind, place))
            for key in keys:
                queue = waiting.get(key)
                while queue and seen is not None and queue[0][0] <= seen:
                    _, index = heapq.heappop(queue)
                    met.setdefault(index, fact)
    return tuple(_answered(look, met.get(index)) for index, look in enumerate(open_looks))


def _answered(look: Look, by: Fact | None) -> Look:
    seen = instant(by.at) if by is not None else None
    if by is None or seen is None:
        return look
    return replace(look, by=by, late=seen > look.latest)
