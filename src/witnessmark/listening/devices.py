"""What has been operated so far, and which of it does this statement speak of?"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from witnessmark.listening.beside import Item
from witnessmark.listening.drafts import Draft
from witnessmark.listening.focus import part_of
from witnessmark.listening.grammar import GRAMMAR
from witnessmark.listening.ledger import after, still_on
from witnessmark.listening.operating import is_fitting
from witnessmark.listening.operations import left_off, operated
from witnessmark.listening.statement import Statement
from witnessmark.listening.words import Word, quoted

__all__ = ["Devices"]

#: Seconds within which "cover's back on" repeats "putting the cover back on", and "it" is what was operated.
_AGAIN = 30.0
#: Seconds within which "i set it to" speaks of what was just switched on.
_SETTING = 10.0


#: Acts looked back at for what was done just now.
_FEW = 12


class Devices:
    """What was operated, in order, over the items of a narration; ``done`` is what was drafted of it."""

    def __init__(self, items: list[Item], spoken: Sequence[Word]) -> None:
        self.items = items
        self.spoken = spoken
        self.done: list[Draft] = []
        self.running: list[Draft] = []

    def add(self, drafts: Sequence[Draft]) -> None:
        """Take in what was drafted of a statement."""
        for draft in drafts:
            if draft.act in {"ran", "stopped"}:
                self.done.append(draft)
                self.running = after(self.running, draft)

    def forget(self, drafts: Sequence[Draft]) -> None:
        """Take back what was drafted."""
        gone = {id(d) for d in drafts}
        if any(id(d) in gone for d in self.done):
            self.done = [d for d in self.done if id(d) not in gone]
            self.running = still_on(self.done)

    def heard(self, st: Statement) -> list[Draft]:
        """What was operated. "Everything is off" stops each thing that still runs; a state alone stops only what ran."""
        running = self.running
        if st.cue("operations", "put_back_all") or st.cue("operations", "stop_all"):
            return _all_stopped(st, running)
        made = operated(st)
        if not made:
            self._restored(st)
            return _ended(st, running)
        if made[0].act == "ran":
            return [] if self._set_after(made[0]) else made
        return self._stopped(st, made, running)

    def _stopped(self, st: Statement, made: list[Draft], running: Sequence[Draft]) -> list[Draft]:
        """A stop, of the thing that ran where the words leave open which; none where nothing ran."""
        first = made[0]
        lately = {d.kind for d in self.done[-_FEW:] if st.start - d.start < _AGAIN} | {d.kind for d in running}
        if not st.named and first.kind not in lately:
            first = _of_running(first, running)
        filled = [run for run in running if run.leaves == "filled"]
        if filled and ("plug" in first.why or "stopper" in first.why):
            first = _moved(first, filled[-1])  # "pulled the plug there": of the bowl that was filled
        same = [d for d in self.done if d.kind == first.kind]
        begins = st.norms[st.opening()]
        stated = not {"i", "we"} & set(st.norms) and begins not in GRAMMAR.taking and not begins.endswith("ing")
        ran = bool(same) and same[-1].act == "ran"
        if stated and not ran:
            said = {w for n, _ in st.mentions for w in st.norms[n.start : n.end]}
            named = [run for run in running if said & set(run.label.split())]
            if named:
                return [_moved(first, named[-1])]  # "fan's off", of the ceiling fan that was turned on
            if first.part and (opened := left_off(st, first)) is not None:
                return [opened]
            again = bool(same) and st.start - same[-1].start < _AGAIN
            if "back" not in st.norms or again:
                return []
        return [first, *made[1:]]

    def _latest_run(self, within: float, at: float) -> tuple[Item, Draft] | None:
        """The item and draft of what was operated last, when that was within so many seconds."""
        for item in reversed(self.items[-4:]):
            for draft in reversed(item.drafts):
                if draft.act in {"ran", "stopped"}:
                    return (item, draft) if draft.act == "ran" and at - draft.start <= within else None
        return None

    def _replace(self, item: Item, old: Draft, new: Draft) -> None:
        item.drafts = [new if d is old else d for d in item.drafts]
        self.done = [new if d is old else d for d in self.done]
        self.running = still_on(self.done)

    def _set_after(self, draft: Draft) -> bool:
        """Whether "i set it to three fifty" only tells to what the oven, just said to be on, was set."""
        last = self._latest_run(_SETTING, draft.start)
        if last is None or draft.value is None or last[1].kind != draft.kind:
            return False
        if last[1].why.split("; ")[-1] != "operated: 'on'":
            return False
        new = replace(last[1], value=draft.value, unit=draft.unit, setting=draft.setting, end=draft.end, last=draft.last,
                      text=quoted(self.spoken, last[1].first, draft.last))  # fmt: skip
        self._replace(last[0], last[1], new)
        return True

    def _restored(self, st: Statement) -> None:
        """What came back to its state by itself ("tripped it, it reset", "flushed it and it stopped")."""
        last = self._latest_run(_AGAIN, st.start)
        if last is None or last[1].leaves not in {"as found", "tripped"}:
            return
        if st.named and st.thing and st.thing.kind != last[1].kind:
            return
        if st.cue("operations", "restored") or st.cue("operations", "ended"):
            self._replace(last[0], last[1], replace(last[1], left="off", leaves="as found"))


def _all_stopped(st: Statement, running: Sequence[Draft]) -> list[Draft]:
    """A stop of each thing that runs: of all that is open too when everything was put back, of one place when it is told."""
    back = st.cue("operations", "put_back_all") is not None
    floor = next((w for w in st.norms if w in {"upstairs", "downstairs", "outside"}), None)
    return [
        st.draft("stopped", st.said(st.opening()), "everything stopped", part_of(run), left="off", leaves="off")
        for run in running
        if (back or run.leaves in {"on", "filled", "changed"}) and (floor is None or floor not in _LEVELS or _is_on(run, floor))
    ]  # fmt: skip


#: Levels that "everything off upstairs" leaves out, by their words.
_LEVELS = {"upstairs": ("basement", "crawl", "outside", "garage"), "downstairs": ("attic", "upstairs", "outside"),
           "outside": ("kitchen", "bath", "laundry", "attic", "basement", "bedroom")}  # fmt: skip


def _is_on(run: Draft, floor: str) -> bool:
    return not any(word in run.place.name for word in _LEVELS[floor])


def _ended(st: Statement, running: Sequence[Draft]) -> list[Draft]:
    """What ended by itself ("it ran and shut off by itself"), when it was running."""
    if st.thing is None or st.cue("operations", "ended") is None or {"i", "we"} & set(st.norms):
        return []
    if any(is_fitting(st.norms, at) for at in range(len(st.norms))):
        return []
    if not any(run.kind == st.thing.kind for run in running):
        return []
    return [st.draft("stopped", st.said(st.opening()), "ended by itself", left="off", leaves="off")]


def _moved(stop: Draft, run: Draft) -> Draft:
    """*stop* of the thing of *run*."""
    return replace(stop, kind=run.kind, part=run.part, label=run.label, place=run.place, component=run.component)


def _of_running(stop: Draft, running: Sequence[Draft]) -> Draft:
    """*stop* of the thing that was started last, when nothing of what is in focus runs ("shut that water back off")."""
    words = set(stop.why.partition("operated: ")[2].replace("'", " ").split())
    if words == {"off"} or {"go"} & words:
        return stop
    if words & {"drained", "draining", "drain", "out", "emptied"}:
        fits = {"filled"}
    elif words & {"off", "down", "kill", "killed", "stopped"}:
        fits = {"on", "filled", "changed"}
    elif words & {"closed", "closing", "close", "shut", "on", "together"}:
        fits = {"open", "unlatched", "on"}
    else:
        return stop
    run = next((r for r in reversed(running) if r.leaves in fits), None)
    if run is None:
        return stop
    return _moved(stop, run)
