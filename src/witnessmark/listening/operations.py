"""What was operated, and how was it left?"""

from __future__ import annotations

from dataclasses import replace
from itertools import pairwise

from witnessmark.listening.drafts import Draft
from witnessmark.listening.focus import Thing
from witnessmark.listening.operating import Operation, operation, operations_in
from witnessmark.listening.places import named_place
from witnessmark.listening.quantities import Quantity
from witnessmark.listening.statement import Statement
from witnessmark.listening.terms import cues
from witnessmark.listening.words import root
from witnessmark.packs.model import Procedure

__all__ = ["left_off", "operated"]


def _procedure(st: Statement, thing: Thing | None) -> Procedure | None:
    if thing is None or thing.kind is None:
        return None
    rows = st.scene.lexicon.procedures.get(thing.kind, ())
    row = st.scene.lexicon.kind(thing.kind)
    own = frozenset(st.roots) | {root(w) for w in (row.name if row else thing.label).split()}
    best: tuple[int, Procedure] | None = None
    for procedure, forms in rows:
        for said in forms:
            if said.roots <= own and (best is None or len(said.roots) > best[0]):
                best = (len(said.roots), procedure)
    return best[1] if best else None


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


#: Words between two things of one act: "and the".
_AND_THE = 2
_LEFT = {"on": "on", "filled": "on", "changed": "on", "open": "on", "unlatched": "on"}


def operated(st: Statement) -> list[Draft]:
    """Drafts for what the speaker operated: ``ran`` with how it was left, or ``stopped``; one for each thing named."""
    found = operation(st)
    if found is None:
        return []
    thing = _object(st, found) or st.thing
    if thing is None or (st.cue("operations", "devices_on") and found.sort != "off"):
        return []
    if found.sort == "momentary" and any(a > found.start for a, _ in st.instruments):
        return []  # "tested it with the meter" is a measurement
    st.operated = tuple(range(found.start, found.end))
    return [_act(st, found, one) for one in (thing, *_joined(st, found, thing))]


def left_off(st: Statement, stopped: Draft) -> Draft | None:
    """What "cover's off" means of something that did not run: a part that was taken off, when a procedure says it has to go back."""
    procedure = _procedure(st, st.thing)
    if procedure is None or procedure.leaves != "open" or not procedure.put_back or "off" not in st.norms:
        return None
    return replace(stopped, act="ran", left=None, leaves="open", procedure=procedure.id)


def _joined(st: Statement, found: Operation, thing: Thing) -> list[Thing]:
    """The other things that the same act is done to ("the shower and the sink")."""
    made: list[Thing] = []
    for (one, _), (other, meaning) in pairwise(st.mentions):
        between = st.norms[one.end : other.start]
        if (
            one.start > found.start
            and between
            and between[0] == "and"
            and len(between) <= _AND_THE
            and meaning.kind != thing.kind
        ):
            made.append(st.scene.thing(meaning, thing.place))
    return made


def _ends(st: Statement, found: Operation) -> bool:
    """Whether what was done is undone, or ends by itself, in the same statement ("flushed it and it stopped")."""
    if any(other.sort == "off" and other.start >= found.end for other in operations_in(st)):
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
    value = {} if to is None else {"value": to.value, "unit": to.unit or ("1" if to.form == "count" else None)}
    if found.sort == "off":
        return st.draft("stopped", what, why, thing, left="off", leaves="off", **value)
    procedure = _procedure(st, thing)
    ends = _ends(st, found)
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
        trips = bool(words & {"tripped", "tripping"}) and "reset" not in st.norms
        return "tripped" if trips and procedure is not None and procedure.leaves == "tripped" else "as found"
    leaves = found.sort
    if words & {"fill", "filling", "filled"}:
        leaves = "filled"
    elif words & {"up", "down", "set", "setting", "bump", "bumped"} and "on" not in words:
        leaves = "changed"
    if procedure is not None and procedure.leaves != "as found":
        leaves = procedure.leaves
    part = leaves == "open" and thing.part is not None and procedure is not None and procedure.leaves == "open"
    return "as found" if leaves in {"open", "unlatched"} and not (part or _stays_open(procedure, words)) else leaves


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
