"""What was operated, and how was it left?"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from functools import lru_cache
from itertools import pairwise

from witnessmark.listening.drafts import Draft
from witnessmark.listening.focus import Thing
from witnessmark.listening.places import named_place
from witnessmark.listening.quantities import Quantity
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
_BE = frozenset({"is", "are", "was", "'s", "were"})
_NOT_DONE = frozenset({"to", "the", "a", "will", "would", "could", "can", "not", "never", "been", "should", "might"})
#: What may follow "off" where that is all that is said.
_OFF_WITH: tuple[list[str], ...] = (
    [],
    ["now"],
    ["again"],
    ["with", "that"],
    ["with", "it"],
    ["it", "goes"],
    ["that", "goes"],
    ["with", "them"],
)
#: Words after "light on" and, of a longer list, after "ac is on".
_ON_NOW = frozenset({"now", "high", "low", "medium", "full", "again", "too", "and"})
_ON_THERE = frozenset(
    {"downstairs", "upstairs", "i", "for", "that", "so", "first", "since", "already", "because", "still", "outside"}
)
#: Parts of which "on" is no state of running.
_COVERS = frozenset(
    {"cover", "covers", "lid", "cap", "plate", "door", "panel", "screen", "filter", "trim", "guard", "grille", "hood"}
)
#: Verbs that something is done to when they follow its name with a particle ("charger switched on").
_DONE_TO = frozenset({"switched", "turned", "flipped", "bumped", "cranked", "shut", "popped", "taken", "pulled", "folded",
                      "buttoned", "closed", "screwed"})  # fmt: skip
#: Verbs that tell what a thing did, after its name.
_BY_ITSELF = frozenset({"drained", "stopped", "closed", "opened", "ran", "tripped", "reset", "shut", "turned", "filled", "started",
                        "runs", "lit", "cycled", "flushed", "emptied"})  # fmt: skip
_DIRECTIONS = frozenset({"end", "down", "into", "under", "along", "across", "to", "through", "from", "parallel", "over", "behind",
                         "up", "between", "past", "toward", "towards", "trim", "board", "length", "out"})  # fmt: skip
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
            for verb in (words[0], "'s", "are") if words[0] == "is" else (words[0],):
                if (words[1:], sort) not in table.setdefault(verb, []):
                    table[verb].append((words[1:], sort))
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
    return next(_operations(st), None)


def _operations(st: Statement) -> Iterator[Operation]:
    acted = False
    for at, word in enumerate(st.norms):
        found = _state_of(st, at) or _handed_back(st, at)
        if found is not None:
            yield found
            continue
        for particle, sort in _table().get(word, ()):
            act = _act_at(st, at, particle, sort, acted=acted)
            if act is not None:
                acted = True
                yield act
                break


def _state_of(st: Statement, at: int) -> Operation | None:
    """A state told of a thing without a verb of doing: "light off", "off with that", "ac's on downstairs"."""
    norms, word = st.norms, st.norms[at]
    after = norms[at + 1 : at + 2]
    if word == "off" and _component_before(st, at) and after in ([], ["now"], ["again"], ["and"], ["too"]):
        return Operation("off", at, at + 1, "off")
    if word == "off" and at == st.opening() and norms[at + 1 :] in _OFF_WITH:
        return Operation("off", at, at + 1, "off")
    start = at - 1 if at and norms[at - 1] in _BE else at
    plain = start == at
    if word != "on" or not _component_before(st, start) or not _is_operated(st) or st.norms[start - 1] in _COVERS:
        return None
    if after == [] or after[0] in (_ON_NOW if plain else _ON_NOW | _ON_THERE):
        return Operation("on", start, at + 1, "on")
    return None


def _handed_back(st: Statement, at: int) -> Operation | None:
    """What was put back as it was: "stat back to sixty eight", "cover back on", "back up to one ten"."""
    if st.norms[at] != "back" or not (_component_before(st, at) or at == st.opening()):
        return None
    rest = st.norms[at + 1 : at + 3]
    number = any(at < q.start <= at + 3 for q in st.quantities)
    if (
        _component_before(st, at)
        and rest[:1] in (["on"], ["in"], ["up"], ["together"], ["down"], ["off"])
        and not (len(rest) > 1 and rest[1] in _PLACING)
    ):
        return Operation("off", at, at + 2, f"back {rest[0]}")
    if rest[:1] in (["to"], ["up"], ["down"], ["at"]) and number:
        return Operation("off", at, at + 2, f"back {rest[0]}")
    if rest in (["to", "normal"], ["to", "auto"], ["on", "auto"], ["to", "where"], ["how", "it"], ["where", "it"]):
        return Operation("off", at, at + 2, f"back {rest[0]}")
    return None


def _act_at(st: Statement, at: int, particle: tuple[str, ...], sort: str, *, acted: bool) -> Operation | None:
    """The act of one verb with one of its particles, when it is the speaker's and done."""
    norms, word = st.norms, st.norms[at]
    if particle == () and (at in st.masked or any(v.start <= at < v.end for v in st.values)):
        return None
    end = at + 1 if not particle else _particle(st, at, particle)
    if end is None:
        return None
    made = Operation(sort, at, end, " ".join((word, *particle)))
    if word in _BE and end != at + 1 + len(particle):
        return None
    if word == "back" and (not at or norms[at - 1] not in _BE):
        return None
    if word in _BE or word in {"everything", "back"}:
        return made if sort in {"off", "on"} and not _is_noun_phrase_off(st, end) else None
    joined = acted and norms[at - 1] in {"and", "then"}  # "ran it and switched it off"
    return made if (joined or _is_done(st, made, particle)) and not _is_other(st, made, particle) else None


def _is_done(st: Statement, act: Operation, particle: tuple[str, ...]) -> bool:
    """Whether the speaker did it, does it or is about to."""
    norms, at = st.norms, act.start
    word, before = norms[at], norms[at - 1] if at else ""
    passive = act.sort == "off" and before in {*_BE, "been", "got"} and bool(st.mentions)
    gerund = word.endswith("ing") and (at in {0, st.opening()} or _component_before(st, at) or before == "now")
    plain = st.speaker(at) and before not in _NOT_DONE
    planned = before == "to" and "going" in norms[:at] and act.sort in {"on", "off"}
    let = (
        before in {"me", "us"}
        and "let" in norms[:at]
        and word in {"get", "start", "turn", "fill", "run", "flip", "pop"}
    )
    handed = (
        act.sort in {"on", "off"}
        and bool(particle)
        and _component_before(st, at)
        and word in _DONE_TO
        and _is_operated(st)
    )
    counted = act.sort == "momentary" and any(q.end == at for q in st.quantities) and word.endswith("ed")
    coming = particle == ("off",) and word == "coming" and (_component_before(st, at) or before in _BE)
    if word == "coming":
        return coming
    return gerund or plain or planned or passive or handed or let or counted


def _is_other(st: Statement, act: Operation, particle: tuple[str, ...]) -> bool:
    """Whether the words only look like an act: a place, a direction, what a device does by itself."""
    norms, at, end = st.norms, act.start, act.end
    word, after = norms[at], norms[at + 1 : at + 2]
    said = {"i", "we"} & set(norms[:at])
    if word in _BARE and not said and "let" not in norms[:at]:
        return True
    if word == "left" and (not after or after[0] not in {"it", "them", "that", "the", "this", "these", "those", "all", "both"}) and (
        "i" not in norms[:at]
    ):  # fmt: skip
        return True  # "left rear burner"
    if (
        "since" in norms[:at]
        or "right" in norms[at + 1 : end]
        or (word == "let" and after in (["me"], ["us"]))
        or (word == "shut" and after == ["off"] and not particle)
    ):
        return True
    if particle == ("off",) and norms[end : end + 1] in (["valve"], ["valves"], ["switch"], ["is"], ["are"]):
        return True
    if word in {"start", "starting"} and after in (["with"], ["at"], ["in"], ["out"], ["outside"], ["from"]):
        return True
    if word == "running" and (
        (after and after[0] in _DIRECTIONS) or (_component_before(st, at) and not _is_operated(st))
    ):
        return True
    if word in {"set", "setting"} and (
        not _is_operated(st) or not ({"to", "at", "for", "back"} & set(norms[at:]) or st.quantities)
    ):
        return True
    if word in {"filled", "filling", "fill"} and after in (["for"], ["with"], ["in"]) and particle == () and not said:
        return True
    return word in _BY_ITSELF and _component_before(st, at) and not (particle and word in _DONE_TO)


def _is_operated(st: Statement) -> bool:
    """Whether what the statement is about is a thing that is operated, by its pack; a strange thing may be."""
    row = st.scene.lexicon.kind(st.thing.kind) if st.thing and st.thing.kind else None
    return row is None or bool(row.operated)


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
    if any(other.sort == "off" and other.start >= found.end for other in _operations(st)):
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
