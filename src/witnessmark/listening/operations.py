"""What was operated, and how was it left?"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from decimal import Decimal
from itertools import pairwise

from witnessmark.listening.counts import told_count
from witnessmark.listening.drafts import Draft
from witnessmark.listening.focus import Thing
from witnessmark.listening.grammar import GRAMMAR
from witnessmark.listening.lexicon import Meaning
from witnessmark.listening.naming import Named
from witnessmark.listening.operating import Operation, operation, operations_in
from witnessmark.listening.places import named_place
from witnessmark.listening.procedures import opening_of, procedure_of
from witnessmark.listening.quantities import Quantity
from witnessmark.listening.statement import Statement
from witnessmark.listening.terms import cues, members
from witnessmark.packs.model import Procedure

__all__ = ["denies_reset", "left_off", "operated"]


def _object(st: Statement, found: Operation) -> Thing | None:
    """What is operated, when it stands in a place phrase after the verb ("hot water at the kitchen sink")."""
    before = st.subject is not None and st.subject.start < found.start
    if (st.named and not before) or {"it", "them", "that"} & set(st.norms[found.start + 1 : found.start + 3]):
        return None
    after = [
        (n, m) for n, m in st.mentions
        if n.start > found.start and not {"to", "by", "with"} & set(st.norms[found.start : n.start])
        and not (before and {"in", "at", "on", "from", "of"} & set(st.norms[found.end : n.start]))
    ]  # fmt: skip
    if not after:
        return None
    named, meaning = after[0]
    place = named_place(st.norms, st.stems, st.scene.lexicon, named.start, named.end) or st.scene.place
    return st.scene.thing(meaning, place)


def _of_water(st: Statement, found: Operation) -> Thing | None:
    """Where "water on" runs: at what was spoken of lately that water is drawn at; a thing of its own where that is unknown."""
    word = st.norms[found.start - 1] if found.start else ""
    if word == "hose":
        return st.scene.unknown(("hose",))
    if st.named or word != "water":
        return None
    lately = [st.scene.focus, *reversed(st.scene.recent[-_LATELY:])]
    for thing in lately:
        row = st.scene.lexicon.kind(thing.kind) if thing else None
        if row is not None and row.water:
            return thing
    return st.scene.unknown(("water",))


#: Things spoken of so lately that water may run at them.
_LATELY = 4
#: Words between two things of one act: "and the".
_AND_THE = 2
_LEFT = {"on": "on", "filled": "on", "changed": "on", "open": "on", "unlatched": "on"}


def operated(st: Statement) -> list[Draft]:
    """Drafts for what the speaker operated: ``ran`` with how it was left, or ``stopped``; one for each thing named."""
    found = operation(st)
    if found is None:
        return []
    thing = _object(st, found) or _of_water(st, found) or st.thing
    if thing is None or (st.cue("operations", "devices_on") and found.sort != "off"):
        return []
    started = _started_by(st, found, thing)
    if started is not None:
        st.operated = tuple(range(found.start, found.end))
        return [_act(st, replace(found, sort="on"), started)]
    trips = "trip" in found.words
    if found.sort == "momentary" and not trips and any(a > found.start for a, _ in st.instruments):
        return []  # "tested it with the meter" is a measurement
    st.operated = tuple(range(found.start, found.end))
    made = [_act(st, found, one) for one in (thing, *_joined(st, found, thing))]
    return [*made, *(_act(st, other, one) for other, one in _others(st, found, thing))]


_SWITCHES = frozenset({"switch", "button", "remote"})


def _started_by(st: Statement, found: Operation, thing: Thing) -> Thing | None:
    """What a switch started, in the same statement: "i hit the switch and the fireplace lit"."""
    came = cues("operations", "came_on").first(st.norms, found.end)
    if found.sort != "momentary" or came is None or not _SWITCHES & set(st.norms[found.start : came[0]]):
        return None
    if {"not", "never"} & set(st.norms[found.end : came[1]]):
        return None
    named = [m for n, m in st.mentions if found.end <= n.start < came[0] and m.kind != thing.kind]
    target = st.scene.thing(named[0], thing.place) if named else st.scene.focus
    rows = st.scene.lexicon.procedures.get((target.kind or "") if target else "", ())
    mine = target is not None and target.kind == thing.kind
    return target if not mine and any(row.leaves == "on" for row, _ in rows) else None


def _own(st: Statement, act: Operation) -> tuple[Named, Meaning] | None:
    """The thing named right after an act, with nothing but articles and the like between."""
    inner = GRAMMAR.determiners | GRAMMAR.adjectives | {"back", "up", "down", "off", "on"}
    return next(
        ((n, m) for n, m in st.mentions if n.start > act.start and set(st.norms[act.end : n.start]) <= inner), None
    )


def _others(st: Statement, first: Operation, thing: Thing) -> list[tuple[Operation, Thing]]:
    """Later acts of the statement that are done to another thing, named after them ("pulled the plug and shut the door")."""
    made: list[tuple[Operation, Thing]] = []
    for act in operations_in(st):
        own = _own(st, act) if act.start >= first.end and not act.state and act.sort in {"on", "off"} else None
        if own is not None and own[1].kind != thing.kind:
            st.operated = (*st.operated, *range(act.start, act.end))
            made.append((act, st.scene.thing(own[1], thing.place)))
    return made


def left_off(st: Statement, stopped: Draft) -> Draft | None:
    """What "cover's off" means of something that did not run: a part that was taken off, when a procedure says it has to go back."""
    procedure = opening_of(st, st.thing)
    if procedure is None or procedure.leaves != "open" or not procedure.put_back or "off" not in st.norms:
        return None
    return replace(stopped, act="ran", left=None, leaves="open", procedure=procedure.id)


def _joined(st: Statement, found: Operation, thing: Thing) -> list[Thing]:
    """The other things that the same act is done to ("the shower and the sink")."""
    made: list[Thing] = []
    for (one, _), (other, meaning) in pairwise(st.mentions):
        between = st.norms[one.end : other.start]
        if (
            (one.start > found.start or (other.end == found.start and st.norms[found.start] in {"are", "were"}))
            and between
            and between[0] == "and"
            and len(between) <= _AND_THE
            and meaning.kind != thing.kind
        ):
            made.append(st.scene.thing(meaning, thing.place))
    return made


def _ends(st: Statement, found: Operation, thing: Thing) -> bool:
    """Whether what was done is undone, or ends by itself, in the same statement ("flushed it and it stopped")."""
    for other in operations_in(st):
        if other.sort == "off" and other.start >= found.end:
            own = _own(st, other)
            if own is None or thing.kind == own[1].kind:
                return True
    if cues("operations", "there_and_back").first(st.norms, found.start):
        return True
    ended = cues("operations", "ended").first(st.norms, found.end)
    return ended is not None and ended[1] - ended[0] < len(st.norms)


def _set_to(st: Statement, found: Operation) -> Quantity | None:
    """What it was set to, or how many were operated ("bumped it up to seventy two", "tested all five")."""
    forms = {"bare", "quantity", "count"}
    counted = next((q for q in st.quantities if q.end == found.start and q.form in forms and q.unit is None), None)
    return counted or next((q for q in st.quantities if q.start >= found.start and q.form in forms), None)


def _act(st: Statement, found: Operation, thing: Thing) -> Draft:
    what = st.said(st.opening())
    why = f"operated: '{found.words}'"
    to = _set_to(st, found)
    value: dict[str, object] = {}
    if to is not None:
        value = {"value": to.value, "unit": to.unit or ("1" if to.form == "count" else None)}
    elif (many := told_count(st)) is not None:
        value = {"value": Decimal(many.number), "unit": "1"}  # "filled both bowls"
    again = found.sort == "off" and cues("operations", "there_and_back").first(st.norms, found.start) is not None
    if again:
        return st.draft("ran", what, why, thing, left="off", leaves="as found", **value)
    if found.sort == "off":
        return st.draft("stopped", what, why, thing, left="off", leaves="off", **value)
    procedure = procedure_of(st, thing)
    ends = _ends(st, found, thing)
    leaves = "as found" if ends else _leaves(st, found, procedure, thing)
    left = "off" if ends else "on" if found.sort == "open" else _LEFT.get(leaves)
    setting = f"{to.value} {to.unit or ''}".strip() if to is not None else None
    return st.draft(
        "ran", what, why, thing, left=left, leaves=leaves, setting=setting,
        procedure=procedure.id if procedure else None, **value,
    )  # fmt: skip


def _leaves(st: Statement, found: Operation, procedure: Procedure | None, thing: Thing) -> str:
    """How what was operated is left, in the words of ``ran``: by the verb, and by its procedure where that leaves more."""
    words = set(found.words.split())
    if st.cue("operations", "as_found"):
        return "as found"
    if found.sort == "momentary" and _goes_on(st, found, procedure):
        return procedure.leaves if procedure is not None else "on"
    if found.sort == "momentary":
        return "tripped" if words & {"tripped", "tripping"} and _stays_tripped(st, procedure) else "as found"
    leaving = found.words.split()[0] in members("operations", "leaving")
    if found.sort == "open":
        return _opened(st, procedure, thing, words, told=found.state or leaving)
    rows = st.scene.lexicon.procedures.get(thing.kind or "", ())
    if found.words in {"plugged in", "plug in"} and thing.kind and not any(row.leaves == "on" for row, _ in rows):
        return "as found"
    leaves = found.sort
    if words & {"fill", "filling", "filled", "standing", "stopper", "plug", "stoppered"}:
        leaves = "filled"
    elif words & {"up", "down", "set", "setting", "bump", "bumped", "to"} and "on" not in words:
        leaves = "changed"
    if procedure is not None and procedure.leaves not in {"as found", "open", "unlatched"}:
        leaves = procedure.leaves
    elif leaves == "changed" and procedure is None:
        leaves = _set_leaves(st, thing)
    return leaves


def _set_leaves(st: Statement, thing: Thing) -> str:
    """What setting a thing leaves, by the procedures of its kind: an oven that is set is on."""
    rows = st.scene.lexicon.procedures.get(thing.kind or "", ())
    every = {row.leaves for row, _ in rows} - {"as found", "open"}
    return "on" if every == {"on"} else "changed"


def _opened(st: Statement, procedure: Procedure | None, thing: Thing, words: set[str], *, told: bool) -> str:
    """How what was opened is left: a hatch stays open; a door or refrigerator opened in passing is closed without a word."""
    leaves = "open"
    procedure = procedure if procedure is not None and procedure.leaves == "tripped" else opening_of(st, thing)
    words = words | {w for act in operations_in(st) if act.sort == "open" for w in act.words.split()}
    if procedure is not None and procedure.leaves in {"open", "unlatched", "tripped"}:
        leaves = procedure.leaves
    if told:
        return "tripped" if "tripped" in words else "unlatched" if words & {"unlocked", "unlatched"} else leaves
    row = st.scene.lexicon.kind(thing.kind)
    part = thing.part is not None and leaves == "open" and procedure is not None
    stays = leaves == "open" and procedure is not None and row is not None and row.system not in _IN_PASSING
    return leaves if part or stays or _stays_open(procedure, words) else "as found"


#: Systems of things that are opened in passing, many of them on a visit.
_IN_PASSING = frozenset({"interior", "appliances"})


def _stays_tripped(st: Statement, procedure: Procedure | None) -> bool:
    """Whether what was tripped stays so: nothing says that it was reset, or it is said that it does not."""
    if procedure is None or procedure.leaves != "tripped":
        return False
    return "reset" not in st.norms or denies_reset(st.norms)


def denies_reset(norms: Sequence[str]) -> bool:
    """Whether it is told that something does not reset."""
    at = next((i for i, w in enumerate(norms) if w in {"reset", "resets", "resetting"}), None)
    return at is not None and bool({"not", "never", "no"} & set(norms[max(0, at - 4) : at]))


def _goes_on(st: Statement, found: Operation, procedure: Procedure | None) -> bool:
    """Whether a thing that was run goes on: its procedure leaves it so, and it was begun before, or runs a cycle."""
    if (
        procedure is None
        or procedure.leaves not in {"on", "filled"}
        or found.words.split()[0] not in {"ran", "run", "running"}
    ):
        return False
    if procedure.leaves == "filled" and any(q.unit in {"h", "min"} for q in st.quantities):
        return True
    return bool({"before", "cycle", "rinse", "still", "while", "short", "quick"} & set(st.norms))


def _stays_open(procedure: Procedure | None, words: set[str]) -> bool:
    """Whether what was opened has to be put back: it was taken off, unlocked or left so, or is being opened just now.

    A door or a refrigerator that was opened in passing is closed again without a word.
    """
    if "opening" in words:
        return procedure is not None and bool(procedure.put_back)
    return bool(
        words & {"off", "removed", "removing", "left", "leaving", "propped", "unlocked", "unlatched", "unscrewed"}
    )
