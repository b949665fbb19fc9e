"""What was operated, and how was it left?"""

from __future__ import annotations

from dataclasses import dataclass, replace
from functools import lru_cache
from itertools import pairwise

from witnessmark.listening.drafts import Draft
from witnessmark.listening.focus import Thing
from witnessmark.listening.places import named_place
from witnessmark.listening.statement import Statement
from witnessmark.listening.terms import cues, members
from witnessmark.listening.words import root
from witnessmark.packs.model import Procedure

__all__ = ["Operation", "left_off", "operated", "operation"]

#: How far its particle stands from a verb ("turn the hall thermostat back up").
_APART = 6
#: Forms that are an act only when somebody is said to do it.
_BARE = frozenset({"drain", "run", "test", "close", "open", "start", "fill", "light", "flush", "push", "press", "turn", "switch",
                   "pull", "take", "try", "leave", "plug", "flip", "kick", "crank", "bump", "get", "have", "cycle", "lit"})  # fmt: skip
#: After these, "off" or "back" only begins a place.
_PLACING = frozenset(
    {"the", "its", "here", "there", "a", "of", "by", "center", "about", "that", "when", "outside", "where"}
)
#: Verbs whose "off" keeps its meaning before another thing ("the cover off the panel").
_TAKING_OFF = frozenset({"take", "taking", "took", "pull", "pulling", "pulled", "pop", "popped", "popping"})
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
            apart = size == 1 and at > verb + 1 and st.norms[verb] not in _TAKING_OFF
            phrase = (
                apart and after in {"the", "a", "that", "this", "my"} and particle[0] in {"on", "off", "up", "down"}
            )
            if not phrase or at == verb + 1:
                return at + size
        several = st.norms[at] == "and" and st.norms[at + 1 : at + 2] in (["the"], ["a"], ["my"], ["this"], ["that"])
        if st.norms[at] in {"and", "but"} | members("clauses", "auxiliaries") and at > verb + 1 and not several:
            return None
    return None


def operation(st: Statement) -> Operation | None:
    """The first act of operating that the speaker tells of in the statement, or a state that ends one ("oven is off")."""
    norms = st.norms
    for at, word in enumerate(norms):
        if word == "off" and _component_before(st, at) and norms[at + 1 : at + 2] in ([], ["now"], ["again"]):
            return Operation("off", at, at + 1, "off")
        if (
            word == "back"
            and _component_before(st, at)
            and norms[at + 1 : at + 2] in (["on"], ["in"], ["up"], ["together"])
        ):
            return Operation("off", at, at + 2, f"back {norms[at + 1]}")
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
            before = norms[at - 1] if at else ""
            passive = sort == "off" and before in {"is", "are", "'s", "was", "been"} and bool(st.mentions)
            gerund = word.endswith("ing") and (at == 0 or at == st.opening() or _component_before(st, at))
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
            if word == "left" and norms[at + 1 : at + 2] not in (["it"], ["them"], ["that"], ["the"], ["this"]):
                continue  # "left rear burner"
            if "since" in norms[:at] or (
                particle == ("off",) and norms[end : end + 1] in (["valve"], ["valves"], ["switch"], ["is"], ["are"])
            ):
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
            if gerund or plain or planned or coming or passive:
                return Operation(sort, at, end, " ".join((word, *particle)))
    return None


def _is_noun_phrase_off(st: Statement, end: int) -> bool:
    """Whether "off" or "back" only begins a place ("is off the wall", "is back here")."""
    after = st.norms[end] if end < len(st.norms) else ""
    number = any(q.start == end + 1 for q in st.quantities)
    return (after == "to" and not number) or after in _PLACING


def _component_before(st: Statement, at: int) -> bool:
    return any(c.end == at for c in st.components)


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
_LEFT = {"on": "on", "filled": "on", "changed": "on"}


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


def _act(st: Statement, found: Operation, thing: Thing) -> Draft:
    what = st.said(st.opening())
    why = f"operated: '{found.words}'"
    if found.sort == "off":
        return st.draft("stopped", what, why, thing, left="off", leaves="off")
    procedure = _procedure(st, thing)
    leaves = _leaves(st, found, procedure)
    setting = next((f"{q.value} {q.unit or ''}".strip() for q in st.quantities if q.start >= found.start), None)
    return st.draft(
        "ran", what, why, thing, left=_LEFT.get(leaves), leaves=leaves, setting=setting,
        procedure=procedure.id if procedure else None,
    )  # fmt: skip


def _leaves(st: Statement, found: Operation, procedure: Procedure | None) -> str:
    """How what was operated is left, in the words of ``ran``: by the verb, and by its procedure where that leaves more."""
    words = set(found.words.split())
    if st.cue("operations", "as_found"):
        return "as found"
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
    return "as found" if leaves in {"open", "unlatched"} and not _stays_open(procedure, words) else leaves


def _stays_open(procedure: Procedure | None, words: set[str]) -> bool:
    """Whether what was opened has to be put back: it was taken off, unlocked or left so, or is being opened just now.

    A door or a refrigerator that was opened in passing is closed again without a word.
    """
    if "opening" in words:
        return procedure is not None and bool(procedure.put_back)
    return bool(
        words & {"off", "removed", "removing", "left", "leaving", "propped", "unlocked", "unlatched", "unscrewed"}
    )
