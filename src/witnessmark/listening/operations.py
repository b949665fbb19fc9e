"""What was operated, and how was it left?"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

from witnessmark.listening.drafts import Draft
from witnessmark.listening.focus import Thing
from witnessmark.listening.places import named_place
from witnessmark.listening.statement import Statement
from witnessmark.listening.terms import cues, members
from witnessmark.listening.words import root
from witnessmark.packs.model import Procedure

__all__ = ["Operation", "operated", "operation"]

#: How far its particle stands from a verb ("turn the hall thermostat back up").
_APART = 6
#: Forms that are an act only when somebody is said to do it.
_BARE = frozenset({"drain", "run", "test", "close", "open", "start", "fill", "light", "flush", "push", "press", "turn", "switch",
                   "pull", "take", "try", "leave", "plug", "flip", "kick", "crank", "bump", "get", "have", "cycle", "lit"})  # fmt: skip
_SORTS = ("off", "open", "on", "momentary")


@dataclass(frozen=True, slots=True)
class Operation:
    """An act of operating: ``sort`` is on, open, off or momentary; positions of verb and end of particle."""

    sort: str
    start: int
    end: int
    words: str


@lru_cache(maxsize=1)
def _table() -> dict[str, list[tuple[tuple[str, ...], str]]]:
    """Verb: its particles (may stand apart) and what it leaves, the longest particles first."""
    table: dict[str, list[tuple[tuple[str, ...], str]]] = {}
    for sort in _SORTS:
        for words, _ in cues("operations", sort):
            table.setdefault(words[0], []).append((words[1:], sort))
    for rows in table.values():
        rows.sort(key=lambda row: -len(row[0]))
    return table


def _particle(st: Statement, verb: int, particle: tuple[str, ...]) -> int | None:
    """The end of the particle that belongs to the verb, right after it or after its object."""
    size = len(particle)
    for at in range(verb + 1, min(verb + 2 + _APART, len(st.norms) - size + 1)):
        if tuple(st.norms[at : at + size]) == particle:
            after = st.norms[at + size] if at + size < len(st.norms) else ""
            phrase = (
                size == 1
                and at > verb + 1
                and after in {"the", "a", "that", "this", "my"}
                and particle[0] in {"on", "off", "up", "down"}
            )
            if not phrase or at == verb + 1:
                return at + size
        if st.norms[at] in {"and", "but"} | members("clauses", "auxiliaries") and at > verb + 1:
            return None
    return None


def operation(st: Statement) -> Operation | None:
    """The first act of operating that the speaker tells of in the statement, or a state that ends one ("oven is off")."""
    norms = st.norms
    for at, word in enumerate(norms):
        for particle, sort in _table().get(word, ()):
            if particle == () and (at in st.masked or any(v.start <= at < v.end for v in st.values)):
                continue
            end = at + 1 if not particle else _particle(st, at, particle)
            if end is None:
                continue
            if word in {"is", "are", "was", "'s"} and end != at + 1 + len(particle):
                continue
            state = word in {"is", "are", "was", "'s", "everything", "back"}
            if word == "back" and (not at or norms[at - 1] not in {"is", "are", "'s"}):
                continue
            if state:
                if sort == "off" and not _is_noun_phrase_off(st, end):
                    return Operation(sort, at, end, " ".join((word, *particle)))
                continue
            gerund = word.endswith("ing") and (at == 0 or at == st.opening() or _component_before(st, at))
            before = norms[at - 1] if at else ""
            plain = st.speaker(at) and before not in {
                "to",
                "the",
                "a",
                "will",
                "would",
                "could",
                "can",
                "not",
                "never",
                "been",
            }
            planned = before == "to" and "going" in norms[:at] and sort in {"on", "off"}
            coming = particle == ("off",) and word == "coming"
            if word in _BARE and not any(w in {"i", "we"} for w in norms[:at]):
                continue
            if word in {"start", "starting"} and norms[at + 1 : at + 2] in (
                ["with"],
                ["at"],
                ["in"],
                ["out"],
                ["outside"],
            ):
                continue
            if word in {"drained", "stopped", "closed", "opened", "ran", "tripped", "reset"} and _component_before(
                st, at
            ):
                continue  # the device did it: a response, not an act
            if gerund or plain or planned or coming:
                return Operation(sort, at, end, " ".join((word, *particle)))
    return None


def _is_noun_phrase_off(st: Statement, end: int) -> bool:
    """Whether "off" or "back" only begins a place ("is off the wall", "is back here")."""
    after = st.norms[end] if end < len(st.norms) else ""
    return after in {
        "the",
        "its",
        "here",
        "there",
        "a",
        "of",
        "to",
        "by",
        "in",
        "center",
        "about",
        "that",
        "when",
        "outside",
        "where",
    }


def _component_before(st: Statement, at: int) -> bool:
    return any(c.end == at for c in st.components)


def _procedure(st: Statement, thing: Thing | None) -> Procedure | None:
    if thing is None or thing.kind is None:
        return None
    rows = st.scene.lexicon.procedures.get(thing.kind, ())
    own = frozenset(st.roots) | {root(w) for w in thing.label.split()}
    best: tuple[int, Procedure] | None = None
    for procedure, forms in rows:
        for said in forms:
            if said.roots <= own and (best is None or len(said.roots) > best[0]):
                best = (len(said.roots), procedure)
    return best[1] if best else None


def _object(st: Statement, found: Operation) -> Thing | None:
    """What is operated, when it stands in a place phrase after the verb ("hot water at the kitchen sink")."""
    if st.named or {"it", "them", "that"} & set(st.norms[found.start + 1 : found.start + 3]):
        return None
    after = [(n, m) for n, m in st.mentions if n.start > found.start and "to" not in st.norms[found.start : n.start]]
    if not after:
        return None
    named, meaning = after[0]
    place = named_place(st.norms, st.stems, st.scene.lexicon, named.start, named.end) or st.scene.place
    return st.scene.thing(meaning, place)


_LEFT = {"on": "on", "filled": "on", "changed": "on"}


def operated(st: Statement) -> Draft | None:
    """A draft for what the speaker operated: ``ran`` with how it was left, or ``stopped``."""
    found = operation(st)
    if found is None:
        return None
    thing = _object(st, found) or st.thing
    if thing is None or (st.cue("operations", "devices_on") and found.sort != "off"):
        return None
    if found.sort == "momentary" and any(a > found.start for a, _ in st.instruments):
        return None  # "tested it with the meter" is a measurement
    st.operated = tuple(range(found.start, found.end))
    what = st.said(st.opening())
    why = f"operated: '{found.words}'"
    if found.sort == "off":
        return st.draft("stopped", what, why, thing, left="off", leaves="off")
    procedure = _procedure(st, thing)
    leaves = {"on": "on", "open": "open", "momentary": "as found"}[found.sort]
    if found.words.startswith(("fill", "filling")):
        leaves = "filled"
    if (
        any(w in found.words.split() for w in ("up", "down", "set", "setting", "bump", "bumped"))
        and "on" not in found.words.split()
    ):
        leaves = "changed"
    if procedure is not None and leaves != "as found" and procedure.leaves != "as found":
        leaves = procedure.leaves
    if leaves == "open" and not _stays_open(st, procedure, found):
        leaves = "as found"
    if st.cue("operations", "as_found"):
        leaves = "as found"
    setting = next((f"{q.value} {q.unit or ''}".strip() for q in st.quantities if q.start >= found.start), None)
    return st.draft(
        "ran", what, why, thing, left=_LEFT.get(leaves), leaves=leaves, setting=setting,
        procedure=procedure.id if procedure else None,
    )  # fmt: skip


def _stays_open(st: Statement, procedure: Procedure | None, found: Operation) -> bool:
    """Whether what was opened has to be put back: its procedure says so, it was taken off, or it was left so."""
    if procedure is not None:
        return procedure.leaves in {"open", "unlatched", "tripped"} and bool(procedure.put_back)
    words = set(found.words.split())
    return bool(
        words & {"off", "removed", "removing", "left", "leaving", "propped", "unlocked", "unlatched", "unscrewed"}
    )
