"""What has been operated so far, and which of it does this statement speak of?

Long because every way a thing is stopped, left or started again is weighed against the same list of what runs.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from witnessmark.listening.beside import Item
from witnessmark.listening.drafts import Draft
from witnessmark.listening.focus import Thing, part_of
from witnessmark.listening.grammar import GRAMMAR
from witnessmark.listening.ledger import WILL_NOT_RESET, after, still_on
from witnessmark.listening.operating import is_fitting
from witnessmark.listening.operations import denies_reset, left_off, operated
from witnessmark.listening.statement import Statement
from witnessmark.listening.states import COVERS, names_supply
from witnessmark.listening.terms import cues, members
from witnessmark.listening.words import Word, phrase, quoted

__all__ = ["Devices"]

#: Seconds within which "cover's back on" repeats "putting the cover back on", and "it" is what was operated.
_AGAIN = 30.0
#: Seconds within which "i set it to" speaks of what was just switched on.
_SETTING = 10.0


#: Acts looked back at for what was done just now.
_FEW = 12
#: Things spoken of so lately that a switch may run them.
_FEW_THINGS = 3
_SWITCHES = frozenset({"switch", "button", "remote"})
#: Seconds within which "they're all off" and "i'll leave that" speak of what was operated before.
_THESE, _LEFT_WITHIN = 90.0, 45.0
#: Seconds within which a stop that names nothing ("shut it off") can be of what was started, though it is not in focus.
_LATELY = 75.0
#: Words of handing something back.
_BACK = frozenset({"back", "reset", "resetting", "returned", "relit", "again"})


class Devices:
    """What was operated, in order, over the items of a narration; ``done`` is what was drafted of it.

    ``joined`` is the last statement that only said more of what was operated before it.
    """

    def __init__(self, items: list[Item], spoken: Sequence[Word]) -> None:
        self.items = items
        self.spoken = spoken
        self.done: list[Draft] = []
        self.running: list[Draft] = []
        self.joined: Statement | None = None

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
        these = st.cue("operations", "stop_these")
        if these is not None and not (st.named and "both" in these[2]):
            return self._these_stopped(st, both="both" in these[2])
        made = operated(st)
        if not made:
            self._came_on(st)
            self._restored(st)
            return (
                _let_out(st, running)
                or _stays_tripped(st)
                or _ended(st, running, self.done[-1:])
                or _still(st, running)
                or _stays(st)
            )
        if made[0].act == "ran":
            made = [self._left_of(st, made[0]), *made[1:]]
            if self._set_after(made[0]) or self._left_after(st, made[0]):
                self.joined = st
                return []
            return made
        return self._stopped(st, made, running)

    def _these_stopped(self, st: Statement, *, both: bool) -> list[Draft]:
        """A stop of the things run last: "they're all off", of the burners; "both off", of two things or of both of one."""
        lately = [d for d in self.done[-_FEW:] if d.act == "ran" and st.start - d.start < _THESE]
        if not lately:
            return []
        kinds = list(dict.fromkeys(d.kind for d in reversed(lately) if d in self.running))
        last = lately[-1]
        pair = both and len(kinds) > 1 and not {"both", "two"} & set(last.text.lower().split())
        wanted = set(kinds[:2]) if pair else {last.kind}
        stops = [run for run in self.running if run.kind in wanted and run.leaves in {"on", "filled", "changed"}] or [
            last
        ]
        return [
            st.draft("stopped", st.said(st.opening()), "these stopped", part_of(run), left="off", leaves="off")
            for run in stops
        ]

    def _left_of(self, st: Statement, draft: Draft) -> Draft:
        """What "left it on" is said of: what the statement before names that can be on, where the thing in focus can not."""
        verb = draft.why.split("'")[1].split()[0] if "'" in draft.why else ""
        here = draft.kind is None or _runs(st, Thing(draft.kind, None, "", draft.place, draft.kind))
        if verb not in members("operations", "leaving") or draft.leaves != "on" or st.named or here or not self.items:
            return draft
        before = self.items[-1].statement
        things = [st.scene.thing(meaning, draft.place) for _, meaning in before.mentions]
        thing = next((t for t in reversed(things) if _runs(st, t)), None)
        return draft if thing is None else _moved(draft, before.draft("ran", "", "", thing))

    def _left_after(self, st: Statement, draft: Draft) -> bool:
        """Whether "i'll leave that so" only says how what was just operated is left; that is said of it then."""
        if draft.why.split("'")[1].split()[0] not in members("operations", "leaving"):
            return False
        last = next((d for d in reversed(self.done[-_FEW:]) if not st.named or d.kind == draft.kind), None)
        if last is None or last.act != "ran" or st.start - last.start > _LEFT_WITHIN:
            return False
        item = next((i for i in self.items if any(d is last for d in i.drafts)), None)
        if not st.named and last in self.running and _one_system(st, last, draft):
            return True
        strange = st.scene.lexicon.kind(draft.kind)
        if item is None or (draft.kind != last.kind and (st.named or (strange is not None and strange.operated))):
            return False
        if last in self.running:
            return True
        leaves = draft.leaves if draft.leaves not in {None, "as found"} else "on"
        new = replace(last, left="on", leaves=leaves, end=draft.end, last=draft.last,
                      text=quoted(self.spoken, last.first, draft.last))  # fmt: skip
        self._replace(item, last, new)
        return True

    def _stopped(self, st: Statement, made: list[Draft], running: Sequence[Draft]) -> list[Draft]:
        """A stop, of the thing that ran where the words leave open which; none where nothing ran."""
        first = made[0]
        lately = {d.kind for d in self.done[-_FEW:] if st.start - d.start < _AGAIN} | {d.kind for d in running}
        if not st.named and first.kind not in lately:
            first = _of_running(st, first, running)
        if "'switch down'" in first.why:
            last = self.done[-1] if self.done and st.start - self.done[-1].start < _THESE else None
            return [_moved(first, last)] if last is not None and last.act == "ran" else []
        drains = set(first.why.split("'")[1].split()) & _RUNS_OUT if "'" in first.why else set()
        if (
            drains
            and not {"i", "we"} & set(st.norms)
            and any(r.kind == first.kind and r.leaves == "on" for r in running)
        ):
            return []  # "dishwasher's draining": its cycle goes on
        filled = [run for run in running if run.leaves == "filled"]
        if filled and ("plug" in first.why or "stopper" in first.why):
            first = _moved(first, filled[-1])  # "pulled the plug there": of the bowl that was filled
        same = [d for d in self.done if d.kind == first.kind]
        if st.named and not any(run.kind == first.kind for run in running):
            first = _called(st, first, running)
            same = [d for d in self.done if d.kind == first.kind]
        begins = st.norms[st.opening()]
        stated = not {"i", "we"} & set(st.norms) and begins not in GRAMMAR.taking and not begins.endswith("ing")
        ran = bool(same) and same[-1].act == "ran"
        lid = "off" in st.norms and "back" not in st.norms and first.part is not None and bool(COVERS & set(st.norms))
        lid = lid and not (ran and same[-1].part == first.part)
        if stated and (not ran or lid):
            said = {st.norms[n.end - 1] for n, _ in st.mentions}
            named = [run for run in running if said & set(run.label.split())]
            if named:
                return [_moved(first, named[-1])]  # "fan's off", of the ceiling fan that was turned on
            if COVERS & set(st.norms) and (opened := left_off(st, first)) is not None:
                return [opened]
            again = bool(same) and st.start - same[-1].start < _AGAIN
            if "back" not in st.norms or again:
                return []
        shut = names_supply(st) and not stated and not any(run.kind == first.kind for run in running)
        if (
            shut
            and not set(first.why.split("'")[1].split()) & _BACK
            and not (ran and st.start - same[-1].start < _THESE)
        ):
            return [replace(first, act="ran", leaves="changed"), *made[1:]]  # "shut the valve": it was found open
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
        self.swap(old, new)

    def swap(self, old: Draft, new: Draft) -> None:
        """Take *new* for *old* among what was done, where it is one of them."""
        if any(d is old for d in self.done):
            self.done = [new if d is old else d for d in self.done]
            self.running = still_on(self.done)

    def _set_after(self, draft: Draft) -> bool:
        """Whether "i set it to three fifty" only tells to what the oven, just said to be on, was set."""
        last = self._latest_run(_SETTING, draft.start)
        if last is None or draft.value is None or last[1].kind != draft.kind:
            return False
        if last[1].value is not None or last[1].leaves != "on":
            return False
        new = replace(last[1], value=draft.value, unit=draft.unit, setting=draft.setting, end=draft.end, last=draft.last,
                      text=quoted(self.spoken, last[1].first, draft.last))  # fmt: skip
        self._replace(last[0], last[1], new)
        return True

    def _came_on(self, st: Statement) -> None:
        """What a switch or button started is what was operated: "hit the switch | fireplace came on"."""
        last = self._latest_run(_SETTING, st.start)
        if last is None or last[1].leaves != "as found" or not _SWITCHES & set(phrase(last[1].text)):
            return
        started = cues("operations", "came_on").first(st.norms)
        things = [st.thing, *reversed(st.scene.recent[-_FEW_THINGS:])]
        thing = next(
            (t for t in things if t is not None and not _SWITCHES & set(t.label.split()) and _runs(st, t)), None
        )
        if thing is None or started is None or "not" in st.norms:
            return
        new = _moved(replace(last[1], left="on", leaves="on"), st.draft("ran", "", "", thing))
        self._replace(last[0], last[1], new)

    def _restored(self, st: Statement) -> None:
        """What came back to its state by itself ("tripped it, it reset", "flushed it and it stopped")."""
        last = self._latest_run(_AGAIN, st.start)
        if last is None or last[1].leaves not in {"as found", "tripped"} or last[1].why == WILL_NOT_RESET:
            return
        if denies_reset(st.norms) and {"trips", "tripped", "tripping", "test"} & {*st.norms, *phrase(last[1].text)}:
            self._replace(last[0], last[1], replace(last[1], left="off", leaves="tripped", why=WILL_NOT_RESET))
            return
        if st.named and st.thing and st.thing.kind != last[1].kind:
            return
        if st.cue("operations", "restored") or st.cue("operations", "ended"):
            self._replace(last[0], last[1], replace(last[1], left="off", leaves="as found"))


def _runs(st: Statement, thing: Thing) -> bool:
    """Whether a procedure leaves a thing on."""
    return any(row.leaves == "on" for row, _ in st.scene.lexicon.procedures.get(thing.kind or "", ()))


def _one_system(st: Statement, one: Draft, other: Draft) -> bool:
    """Whether two things are one system that starts by itself: the thermostat and its furnace."""
    rows = [st.scene.lexicon.kind(d.kind) for d in (one, other)]
    return all(row is not None and row.system in {"heating", "cooling"} for row in rows)


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


def _ended(st: Statement, running: Sequence[Draft], last: Sequence[Draft]) -> list[Draft]:
    """What ended by itself ("it ran and shut off by itself"), when it was running."""
    if (
        st.thing is None
        or st.cue("operations", "ended") is None
        or {"i", "we", "not", "still", "should"} & set(st.norms)
    ):
        return []
    if any(is_fitting(st.norms, at) for at in range(len(st.norms))):
        return []
    run = next((run for run in reversed(running) if run.kind == st.thing.kind), None)
    if run is None and not st.named:
        run = next((run for run in reversed(running) if run.leaves in {"on", "filled"} and run in last), None)
        run = run if run is not None and st.start - run.start < _THESE else None
    if run is None:
        return []
    return [_moved(st.draft("stopped", st.said(st.opening()), "ended by itself", left="off", leaves="off"), run)]


#: What lets the water of a filled bowl go.
_LETS = (["letting", "it"], ["let", "it"], ["let", "them"], ["letting", "them"], ["letting", "that"], ["let", "that"])
_GO = frozenset({"go", "out", "drain", "down", "empty", "loose"})
_RUNS_OUT = frozenset({"drains", "drained", "draining", "drain", "emptied", "empties", "emptying"})


def _let_out(st: Statement, running: Sequence[Draft]) -> list[Draft]:
    """A stop of what was filled, when its water is let go ("letting it go now") or runs out ("drains slow")."""
    filled = [run for run in running if run.leaves == "filled"]
    if not filled or {"not", "if"} & set(st.norms):
        return []
    run = next((r for r in reversed(filled) if st.thing is not None and r.kind == st.thing.kind), None)
    at = next((i for i in range(len(st.norms) - 1) if st.norms[i : i + 2] in _LETS), None)
    if at is not None and _GO & set(st.norms[at + 2 : at + 4]):
        run = run or filled[-1]
    elif run is None or not any(w in _RUNS_OUT and i not in st.masked for i, w in enumerate(st.norms)):
        return []
    return [_moved(st.draft("stopped", st.said(st.opening()), "let out", left="off", leaves="off"), run)]


def _stays(st: Statement) -> list[Draft]:
    """What is left where it is for days ("it stays until thursday")."""
    at = next((i for i, w in enumerate(st.norms[:-1]) if w in {"stays", "staying"}), None)
    if (
        at is None
        or not {"until", "till"} & set(st.norms[at + 1 : at + 4])
        or st.thing is None
        or "not" in st.norms[:at]
    ):
        return []
    return [st.draft("ran", st.said(st.opening()), "stays", left="on", leaves="on")]


def _stays_tripped(st: Statement) -> list[Draft]:
    """What trips and does not reset is left without power."""
    if not denies_reset(st.norms) or not {"trips", "tripped", "trip"} & set(st.norms) or st.thing is None:
        return []
    rows = st.scene.lexicon.procedures.get(st.thing.kind or "", ())
    if not any(procedure.leaves == "tripped" for procedure, _ in rows):
        return []
    return [st.draft("ran", st.said(st.opening()), WILL_NOT_RESET, left="off", leaves="tripped")]


def _still(st: Statement, running: Sequence[Draft]) -> list[Draft]:
    """What is said to run still, though nothing of it runs by what was heard: "dishwasher's still filling"."""
    if st.thing is None or not st.named or "still" not in st.norms or not st.cue("operations", "devices_on"):
        return []
    row = st.scene.lexicon.kind(st.thing.kind)
    rows = st.scene.lexicon.procedures.get(st.thing.kind or "", ())
    leaves = next((procedure.leaves for procedure, _ in rows if procedure.leaves in {"on", "filled"}), None)
    by_itself = row is None or row.system in {"heating", "cooling"} or st.thing.part is not None
    if leaves is None or by_itself or any(run.kind == st.thing.kind for run in running):
        return []
    return [st.draft("ran", st.said(st.opening()), "still runs", left="on", leaves=leaves)]


def _moved(stop: Draft, run: Draft) -> Draft:
    """*stop* of the thing of *run*."""
    return replace(stop, kind=run.kind, part=run.part, label=run.label, place=run.place, component=run.component)


def _draws_water(st: Statement, run: Draft) -> bool:
    """Whether water is drawn at what runs: a sink, not a dishwasher."""
    row = st.scene.lexicon.kind(run.kind)
    return row is None or row.system == "plumbing"


def _called(st: Statement, stop: Draft, running: Sequence[Draft]) -> Draft:
    """*stop* of what runs under the same name: "the stairs", of the attic stairs that were pulled down."""
    said = {st.norms[n.end - 1] for n, _ in st.mentions}
    if said & _NAMELESS:
        return stop
    run = next((r for r in reversed(running) if said and said <= {*phrase(r.text), *r.label.split()}), None)
    return _moved(stop, run) if run is not None and run.part is None else stop


#: Names of so many things that they tell nothing.
_NAMELESS = frozenset({"door", "light", "switch", "valve"})


def _of_running(st: Statement, stop: Draft, running: Sequence[Draft]) -> Draft:
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
    rows = st.scene.lexicon.procedures.get(stop.kind or "", ())
    switch = bool(_SWITCHES & set(stop.label.split()))
    if (
        "water" not in phrase(stop.text)
        and not switch
        and any(row.leaves in {"on", "filled", "changed"} for row, _ in rows)
    ):
        return stop  # what is in focus can be stopped itself: "all four zones heat, turned off again"
    lately = [r for r in running if r.leaves in fits and stop.start - r.start < _LATELY]
    if "water" in phrase(stop.text):
        lately = [r for r in lately if _draws_water(st, r)]
    run = lately[-1] if lately else None
    return stop if run is None else _moved(stop, run)
