"""Which words tell the state a thing was put in, without a verb of doing: "light off", "hatch is open", "back to sixty eight"?"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from witnessmark.listening.grammar import GRAMMAR
from witnessmark.listening.procedures import procedure_of
from witnessmark.listening.statement import Statement
from witnessmark.listening.terms import cues, members

__all__ = ["BE", "Operation", "after_name", "is_fitting", "is_operated", "state_at"]

BE = frozenset({"is", "are", "was", "'s", "were"})
#: A state told of what was so before anybody came.
_FOUND_SO = frozenset({"already", "was", "were", "found", "always"})
#: After these, "off" or "back" only begins a place.
_PLACING = frozenset(
    {"the", "its", "here", "there", "a", "of", "by", "center", "about", "that", "when", "outside", "where"}
)
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
_ON_NOW = frozenset(
    {
        "now",
        "high",
        "low",
        "medium",
        "full",
        "again",
        "too",
        "and",
        "bake",
        "broil",
        "both",
        "with",
        "but",
        "hot",
        "cold",
    }
)
_ON_THERE = frozenset(
    {"downstairs", "upstairs", "i", "for", "that", "so", "first", "since", "because", "still", "outside"}
)
#: Small words between a name and the state told of it.
_BETWEEN = frozenset({"been", "all", "both", "now", "still", "back", "just"})
#: Parts of which "on" is no state of running, and of which "off" says that they were taken off.
COVERS = frozenset({"cover", "covers", "lid", "cap", "plate", "door", "panel", "screen", "filter", "trim", "guard", "grille", "hood",
                    "hatch", "scuttle", "front"})  # fmt: skip
#: Words between a faucet's name and "wide open"; what is said of a bowl that is plugged on purpose.
_SIDES = frozenset({"hot", "cold", "side", "sides", "handle", "handles", "tap", "taps", "water"})
_WET = frozenset({"filling", "fill", "filled", "water", "holding", "full"})
#: States beside on and off, and what may follow them.
_GOING, _OPEN = (
    frozenset({"going", "filling", "started", "running", "lit", "preheating", "plugged"}),
    frozenset({"open", "down", "up"}),
)
_SO = frozenset({"now", "and", "so", "for", "i", "again", "too", "okay", "but", "while", "in", "behind", "because"})
#: Words at which a state can be told at all.
_TELLING = _GOING | _OPEN | {"on", "off", "back", "switch", "in", "closed", "out", "pulled", "lifted", "popped"}
#: Systems whose equipment starts and stops by itself: that it is running says how it is found.
_BY_ITSELF = frozenset({"heating", "cooling"})


@dataclass(frozen=True, slots=True)
class Operation:
    """An act of operating: ``sort`` is on, open, off or momentary; positions of verb and end of particle.

    ``state``: told as a state, not as an act.
    """

    sort: str
    start: int
    end: int
    words: str
    state: bool = False


def state_at(st: Statement, at: int) -> Operation | None:
    """The state told of a thing at *at*, or what was put back as it was."""
    if st.norms[at] not in _TELLING:
        return None
    return _on_or_off(st, at) or _stoppered(st, at) or _told(st, at) or _handed_back(st, at) or _switched_down(st, at)


def _on_or_off(st: Statement, at: int) -> Operation | None:
    """A state told of a thing without a verb of doing: "light off", "off with that", "ac's on downstairs"."""
    norms, word = st.norms, st.norms[at]
    after = norms[at + 1 : at + 2]
    if word == "off" and after_name(st, at) and after in ([], ["now"], ["again"], ["and"], ["too"], ["with"]):
        return Operation("off", at, at + 1, "off", state=True)
    if word == "off" and at == st.opening() and norms[at + 1 :] in _OFF_WITH:
        return Operation("off", at, at + 1, "off", state=True)
    start = _subject_end(st, at)
    wet = start is not None and norms[start - 1] in {"water", "hose"}
    if word != "on" or start is None or norms[start - 1] in COVERS or not (is_operated(st) or wet or after == []):
        return None
    if (
        members("operations", "always_on") & set(norms[:at])
        or not _can_be_on(st)
        or {"was", "were"} & set(norms[start:at])
        or norms[0] == "its"
        or norms[at + 1 : at + 3] == ["and", "off"]
    ):
        return None
    plain = start == at
    switched = after == ["at"] and {"switch", "wall", "remote", "control"} & set(norms[at:])
    number = any(q.start <= at + 2 for q in st.quantities if q.start > at) and after[:1] in (["at"], ["for"], ["to"])
    mode = cues("operations", "modes").at([*norms, ""], at + 1 + (after == ["the"]))
    if after == [] or after[0] in (_ON_NOW if plain else _ON_NOW | _ON_THERE) or switched or number or mode:
        return Operation("on", start, at + 1, "on", state=True)
    return None


def _stoppered(st: Statement, at: int) -> Operation | None:
    """What holds water, or lets it go: "tub stopper's down", "plug's in", "stopper's up", "plug pulled"."""
    norms = st.norms
    out = norms[at] in {"up", "out", "pulled", "lifted", "popped", "open"} and at > 0
    if (
        out
        and norms[at - 1 - (norms[at - 1] in BE)] in {"stopper", "stoppers", "plug", "plugs"}
        and at <= st.opening() + _FIRST
    ):
        return Operation("off", at, at + 1, "pulled the plug", state=True)
    if norms[at] not in {"down", "in", "closed"} or norms[at + 1 : at + 2] not in ([], ["and"], ["now"], ["so"]):
        return None
    start = _subject_end(st, at)
    if (
        start is None
        or norms[start - 1] not in {"stopper", "stoppers", "plug", "plugs"}
        or not _leaves_some(st, {"filled"})
    ):
        return None
    return Operation("on", start, at + 1, "stopper down", state=True)


#: So early in a statement "plug pulled" is what it tells.
_FIRST = 4


def _leaves_some(st: Statement, leaves: set[str]) -> bool:
    """Whether a procedure of the thing leaves it so."""
    rows = st.scene.lexicon.procedures.get((st.thing.kind or "") if st.thing else "", ())
    return any(row.leaves in leaves for row, _ in rows)


def _can_be_on(st: Statement) -> bool:
    """Whether a thing can be left on: a strange one may be."""
    return st.thing is None or st.thing.kind is None or _leaves_some(st, {"on", "changed", "filled"})


def _switched_down(st: Statement, at: int) -> Operation | None:
    """What a switch runs is off: "switch is down again"."""
    rest = [w for w in st.norms[at + 1 : at + 5] if w not in {"is", "'s", "back"}]
    if st.norms[at] != "switch" or rest[:1] not in (["down"], ["off"]) or rest[1:2] not in ([], ["again"], ["now"]):
        return None
    return Operation("off", at, len(st.norms), "switch down", state=True)


def _subject_end(st: Statement, at: int) -> int | None:
    """Where the name ends of which a state is told at *at*, "is" and small words between passed over."""
    start = at
    sides = _SIDES | {"and", "full", "both"}
    if at and st.norms[at] == "on" and st.norms[at - 1] in sides:
        while start and st.norms[start - 1] in sides and not after_name(st, start):
            start -= 1
        if after_name(st, start):
            return start
        start = at
    while start and st.norms[start - 1] in _BETWEEN and not after_name(st, start):
        start -= 1
    if start and st.norms[start - 1] in BE:
        start -= 1
    while start and st.norms[start - 1] in _BETWEEN and not after_name(st, start):
        start -= 1
    return start if start and after_name(st, start) else None


def _told(st: Statement, at: int) -> Operation | None:
    """A state that its procedure knows: "hatch is open", "stairs are down", "dishwasher going", "faucet wide open"."""
    norms, word = st.norms, st.norms[at]
    if word not in _GOING | _OPEN or _FOUND_SO & set(norms):
        return None
    wet = _water_runs(st, at) if word in {"running", "going"} else None
    if wet is not None:
        return wet
    first = at - 1 if at and norms[at - 1] == "wide" else at
    if word == "plugged" and not _WET & set(norms[at:]):
        return None
    name = first
    while first < at and name and norms[name - 1] in _SIDES:
        name -= 1
    start = _subject_end(st, name)
    after = norms[at + 1 : at + 2]
    set_ = after == ["on"] and cues("operations", "modes").at([*norms, ""], at + 2) is not None
    if start is None or not (after == [] or after[0] in _SO or (word == "filling" and after == ["up"]) or set_):
        return None
    if st.subject is None or st.subject.end != start or _in_place_phrase(st, st.subject.start):
        return None  # "joints at the window are open"
    if after == ["and"] and norms[at + 2 : at + 3] and norms[at + 2] in {"close", "closes", "shut", "shuts", "closed"}:
        return None
    procedure = procedure_of(st, st.thing)
    row = st.scene.lexicon.kind(st.thing.kind) if st.thing else None
    if set_ and word == "running":
        return Operation("on", start, at + 1, "running", state=True)
    if procedure is None or row is None:
        return Operation("on", start, at + 1, "wide open", state=True) if first < at and row and row.water else None
    said = " ".join(norms[first : at + 1])
    if procedure.leaves in {"on", "filled", "changed"}:
        runs = word in _GOING or first < at
        alone = word == "running" and (start == at or row.system in _BY_ITSELF)
        return Operation("on", start, at + 1, said, state=True) if runs and not alone else None
    several = word == "open" and start == at and norms[start - 1].endswith("s")
    if procedure.leaves != "open" or word not in _OPEN or several:
        return None
    known = any(word in text.split() for text in procedure.said)
    return Operation("open", start, at + 1, said, state=True) if known else None


#: What may follow "water is running", and, of a hose, "hose is running" too; not where it ought not to run.
_WATER_AT = frozenset({"now", "and", "for", "so", "at", "while", "too", "again"})
_HOSE_AT = _WATER_AT | {"on", "in", "into", "over", "along", "up"}


def _water_runs(st: Statement, at: int) -> Operation | None:
    """Water or a hose that is let run: "hose is running on the valley", "water's running now for the pan test"."""
    start = _subject_end(st, at)
    if start is None or st.norms[start - 1] not in {"water", "hose"} or start - 1 in st.masked:
        return None
    after = st.norms[at + 1 : at + 2]
    if after and after[0] not in (_HOSE_AT if st.norms[start - 1] == "hose" else _WATER_AT):
        return None
    return Operation("on", start, at + 1, "running", state=True)


def _in_place_phrase(st: Statement, start: int) -> bool:
    at = start - 1
    while at >= 0 and st.norms[at] in GRAMMAR.determiners | GRAMMAR.adjectives:
        at -= 1
    return at >= 0 and st.norms[at] in GRAMMAR.prepositions - GRAMMAR.particles


def _handed_back(st: Statement, at: int) -> Operation | None:
    """What was put back as it was: "stat back to sixty eight", "cover back on", "back up to one ten"."""
    if st.norms[at] != "back" or not (after_name(st, at) or at == st.opening()):
        return None
    rest = st.norms[at + 1 : at + 3]
    number = any(at < q.start <= at + 3 for q in st.quantities)
    if (
        after_name(st, at)
        and rest[:1] in (["on"], ["in"], ["up"], ["together"], ["down"], ["off"])
        and not (len(rest) > 1 and rest[1] in _PLACING)
    ):
        return Operation("off", at, at + 2, f"back {rest[0]}")
    if rest[:1] in (["to"], ["up"], ["down"], ["at"]) and number:
        return Operation("off", at, at + 2, f"back {rest[0]}")
    if rest[:1] in (["to"], ["on"], ["in"], ["how"], ["where"]) and (
        rest in (["to", "where"], ["how", "it"], ["how", "they"], ["where", "it"], ["where", "they"])
        or cues("operations", "modes_back").at([*st.norms, ""], at + 2)
    ):
        return Operation("off", at, at + 2, f"back {rest[0]}")
    return None


#: What makes "shut off" the name of a fitting, before it and after it.
_A_FITTING = frozenset({"the", "a", "an", "main", "emergency"})
_FITTING_OF = frozenset({"valve", "valves", "handle", "handles", "lever", "key", "wheel", "switch", "is", "are", "was"})


def is_fitting(norms: Sequence[str], at: int) -> bool:
    """Whether "shut off" at *at* names a fitting ("shut off valve is at the meter"): nothing was shut off then."""
    return tuple(norms[at : at + 2]) == ("shut", "off") and (
        (at > 0 and norms[at - 1] in _A_FITTING) or (len(norms) > at + 2 and norms[at + 2] in _FITTING_OF)
    )


def is_operated(st: Statement) -> bool:
    """Whether what the statement is about is a thing that is operated, by its pack; a strange thing may be."""
    row = st.scene.lexicon.kind(st.thing.kind) if st.thing and st.thing.kind else None
    return row is None or bool(row.operated)


def after_name(st: Statement, at: int) -> bool:
    """Whether the name of a component ends at *at*, or "water" or "hose"."""
    return any(c.end == at for c in st.components) or (at > 0 and st.norms[at - 1] in {"water", "hose"})


def names_supply(st: Statement) -> bool:
    """Whether a breaker, a valve or the like is named, which is found one way and put another."""
    return bool(members("operations", "supplies") & set(st.norms))
