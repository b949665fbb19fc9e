"""What was run, how each was left, and what closed it.

A ``stopped`` that names its ``ran`` (``of``) closes that one. Without it, in this order: the newest open run of the
same component and part; of the same component when the stop or the run names no part; of the same kind and part in
the same place, where not both name a component; and, when one of the two has no place, the only open run of the
kind. A stop never closes a run that came after it, unless it names it.

A setting has one value at a time: a run that leaves a component's part ``changed`` takes over an older such run,
and what was found first stays what has to be restored. Two things left *on* are never taken for one.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from datetime import datetime

from witnessmark.journal.acts import Ran, Stopped
from witnessmark.journal.fold import Fact, Record
from witnessmark.views.house import House, house
from witnessmark.views.moments import instant
from witnessmark.views.states import leaves_something, same_state

__all__ = ["Run", "running"]


@dataclass(frozen=True, slots=True)
class Run:
    """One ``ran`` and what became of it.

    Attributes:
        fact: the ``ran``.
        body: its body.
        kind: kind of what was run; empty when unknown.
        place: id of the place; None when unknown.
        found: how it was found, in words, from the first run of a setting that was changed more than once.
        since: instant it was run, None when its time cannot be read.
        leaves: it was left running, open, filled, unlatched, tripped or at another setting.
        stopped: the ``stopped`` that closed it.
        restated: the last ``stopped`` about it, which says how it stands now; the same one where there is only one.
        taken_over: the later ``ran`` that changed the same setting again.
    """

    fact: Fact
    body: Ran
    kind: str
    place: str | None
    found: str | None
    since: datetime | None
    leaves: bool
    stopped: Fact | None = None
    restated: Fact | None = None
    taken_over: Fact | None = None

    @property
    def open(self) -> bool:
        """Left so, and neither stopped nor taken over."""
        return self.leaves and self.stopped is None and self.taken_over is None


#: Stands for "whichever part" and "whichever place" in the keys of ``_Open``.
_ANY = "\0any"


class _Open:
    """Runs without a stop yet, newest last, under every key by which a stop may look for them.

    Closed runs are only dropped when they come to the top of a stack, so that the whole stays linear.
    """

    def __init__(self) -> None:
        self.closed_by: dict[str, Fact] = {}
        self._closed: dict[tuple[str, str | None], Run] = {}
        self.taken_by: dict[str, Fact] = {}
        self._stacks: dict[tuple[str | bool | None, ...], list[tuple[int, Run]]] = {}
        self._alive: dict[tuple[str | bool | None, ...], int] = {}
        self._count = 0

    def add(self, run: Run) -> None:
        self._count += 1
        part, component = run.body.part, run.fact.component
        keys: list[tuple[str | bool | None, ...]] = []
        if component:
            keys += [(component, part), (component, _ANY)]
        if run.kind:
            bare = not component
            keys += [(bare, run.kind, run.place, part), (bare, run.kind, run.place, _ANY), (bare, run.kind, _ANY, _ANY)]
            self._alive[bare, run.kind] = self._alive.get((bare, run.kind), 0) + 1
        for key in keys:
            self._stacks.setdefault(key, []).append((self._count, run))

    def _gone(self, run: Run) -> None:
        if run.kind:
            self._alive[not run.fact.component, run.kind] -= 1

    def close(self, run: Run, by: Fact) -> None:
        self.closed_by[run.fact.id] = by
        self.remember(run)
        self._gone(run)

    def remember(self, run: Run) -> None:
        """Keep in mind the run last closed on a component's part, for stops that find nothing open."""
        if run.fact.component:
            self._closed[run.fact.component, run.body.part] = run

    def last_closed(self, stop: Fact, part: str | None) -> Run | None:
        """The run last closed there: a stop that finds nothing open says anew how that one stands."""
        return self._closed.get((stop.component, part)) if stop.component else None

    def take_over(self, run: Run, by: Fact) -> None:
        self.taken_by[run.fact.id] = by
        self._gone(run)

    def _top(self, *keys: tuple[str | bool | None, ...]) -> Run | None:
        """The newest run still open under any of the keys."""
        newest: tuple[int, Run] | None = None
        for key in keys:
            stack = self._stacks.get(key, [])
            while stack and (stack[-1][1].fact.id in self.closed_by or stack[-1][1].fact.id in self.taken_by):
                stack.pop()
            if stack and (newest is None or stack[-1][0] > newest[0]):
                newest = stack[-1]
        return newest[1] if newest else None

    def newest_of(self, component: str | None, part: str | None) -> Run | None:
        """The newest open run of this very component and part."""
        return self._top((component, part)) if component else None

    def match(self, stop: Fact, kind: str, place: str | None, part: str | None) -> Run | None:
        """The open run that a stop without ``of`` closes."""
        loosely = _ANY if part is None else None
        own = self.newest_of(stop.component, part)
        if own is None and stop.component:
            own = self._top((stop.component, loosely))
        if own is not None or not kind:
            return own
        bares = (True,) if stop.component else (True, False)
        here = self._top(*[(bare, kind, place, part) for bare in bares])
        here = here or self._top(*[(bare, kind, place, loosely) for bare in bares])
        if here is not None or sum(self._alive.get((bare, kind), 0) for bare in bares) != 1:
            return here
        only = self._top(*[(bare, kind, _ANY, _ANY) for bare in bares])
        fits = only is not None and (part is None or only.body.part in {None, part})
        return only if fits and only is not None and (place is None or only.place is None) else None


def running(record: Record, home: House | None = None) -> tuple[Run, ...]:
    """Every ``ran`` of *record*, in order, with what closed it. Linear in the facts.

    *home* is the house of the same record, where the caller has it already.
    """
    home = home or house(record)
    still = _Open()
    runs: list[Run] = []
    named: dict[str, Fact] = {}
    last: dict[str, Fact] = {}
    for fact in record.facts:
        body = fact.body
        if isinstance(body, Stopped) and body.of:
            named.setdefault(body.of, fact)
    for fact in record.facts:
        body = fact.body
        if isinstance(body, Ran):
            found = body.found
            if body.left == "changed":
                before = still.newest_of(fact.component, body.part)
                if before is not None and before.body.left == "changed":
                    still.take_over(before, fact)
                    found = before.found or found
            leaves = leaves_something(body.left) and not same_state(body.left, found)
            run = Run(fact, body, home.kind_of(fact), home.place_of(fact), found, instant(fact.at), leaves)
            runs.append(run)
            if leaves and fact.id not in named:
                still.add(run)
            elif leaves:
                still.remember(run)
        elif isinstance(body, Stopped):
            if body.of:
                last[body.of] = fact
                continue
            run_meant = still.match(fact, home.kind_of(fact), home.place_of(fact), body.part)
            if run_meant is not None:
                still.close(run_meant, fact)
            else:
                run_meant = still.last_closed(fact, body.part)
            if run_meant is not None:
                last[run_meant.fact.id] = fact
    return tuple(
        replace(
            run,
            stopped=named.get(run.fact.id) or still.closed_by.get(run.fact.id),
            restated=last.get(run.fact.id),
            taken_over=still.taken_by.get(run.fact.id),
        )
        for run in runs
    )
