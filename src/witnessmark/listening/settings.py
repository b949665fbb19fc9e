"""To which setting was a thing put ("flipped it to manual"), and in which state was it left ("i'll leave that run")?"""

from __future__ import annotations

from witnessmark.listening.statement import Statement
from witnessmark.listening.states import COVERS, Operation, after_name, is_operated
from witnessmark.listening.terms import cues, members

__all__ = ["left_at", "moved_at"]

#: How far the setting stands from its verb.
_WITHIN = 8
_TO = frozenset({"to", "in", "into", "on", "onto", "at"})
_NOT_DONE = frozenset(
    {"to", "the", "a", "would", "could", "can", "not", "never", "been", "should", "might", "they", "he", "she", "you"}
)
#: Words past which what follows belongs to something else.
_ENDS = frozenset({"and", "but", "i", "we", "is", "are", "was", "were", "if", "when", "because", "has", "have"})
#: Verbs that set anything, beside those that only raise or lower.
_SETS = frozenset({"set", "setting", "turned", "turning", "cranked", "dialed", "bumped"})
_PRONOUNS = frozenset({"it", "that", "them", "this", "those", "these", "both", "all"})
_NOBODY = frozenset({"me", "us", "you", "alone"})
#: After these a state only begins a place ("left it on the counter") or leaves a choice ("up to you").
_PLACING = frozenset({"the", "a", "an", "my", "your", "this", "that", "top", "to", "of", "there", "here"})


def _is_done(st: Statement, at: int) -> bool:
    before = st.norms[at - 1] if at else ""
    later = after_name(st, at) and (
        st.norms[at].endswith(("ed", "ing")) or (st.norms[at] == "set" and _sets_on(st, at))
    )
    return (st.speaker(at) or later) and before not in _NOT_DONE


def _sets_on(st: Statement, at: int) -> bool:
    """Whether "oven set to three fifty" tells what was done; of a thermostat it tells how it was found."""
    rows = st.scene.lexicon.procedures.get((st.thing.kind or "") if st.thing else "", ())
    return st.norms[at + 1 : at + 2] not in (["to"], ["at"]) or not any(row.leaves == "changed" for row, _ in rows)


def moved_at(st: Statement, at: int) -> Operation | None:
    """What was put to another setting, or back to its own, by the verb at *at*."""
    norms, word = st.norms, st.norms[at]
    if word not in members("operations", "moving") or at in st.masked or not _is_done(st, at):
        return None
    for i in range(at + 1, min(at + _WITHIN, len(norms) - 1)):
        if norms[i] in _ENDS:
            return None
        if norms[i] not in _TO:
            continue
        end = i + 1
        back = cues("operations", "modes_back").at(norms, end)
        mode = cues("operations", "modes").at(norms, end)
        number = next((q for q in st.quantities if q.start == end and q.form in {"bare", "quantity"}), None)
        if "back" in norms[at + 1 : i] and (back or mode or number):
            return Operation("off", at, end, "back to")
        if back and norms[i] != "at":
            return Operation("off", at, back[0], f"{word} to {back[1]}")
        if mode and norms[i] != "at":
            return Operation("on", at, mode[0], f"{word} to {mode[1]}")
        if number and norms[i] in {"to", "at"} and _is_adjusted(st, word):
            return Operation("on", at, end, f"{word} to")
    return None


def _is_adjusted(st: Statement, verb: str) -> bool:
    """Whether a number told of the thing can be what it was set to."""
    if st.thing is None or st.thing.kind is None:
        return verb not in {"ran", "run", "running", "spun"}
    rows = st.scene.lexicon.procedures.get(st.thing.kind, ())
    return any(row.leaves == "changed" or (row.leaves == "on" and verb in _SETS) for row, _ in rows)


def left_at(st: Statement, at: int) -> Operation | None:
    """What the speaker leaves running or open by the verb at *at*."""
    norms, word = st.norms, st.norms[at]
    if word not in members("operations", "leaving") or at in st.masked:
        return None
    after = norms[at + 1 : at + 2]
    if not after or after[0] in _NOBODY or not _leaves(st, at):
        return None
    meters = {i for a, b in st.instruments for i in range(a, b)}
    for i in range(at + 1, min(at + _WITHIN, len(norms))):
        if (norms[i] in _ENDS and i > at + 1) or i in meters:
            return None
        for sort, name in (("on", "left_running"), ("open", "left_open")):
            found = cues("operations", name).at(norms, i)
            if found is None or (norms[found[0] : found[0] + 1] and norms[found[0]] in _PLACING and found[0] == i + 1):
                continue
            if sort == "open" and not is_operated(st) and not COVERS & set(norms):
                continue
            return Operation(sort, at, found[0], f"{word} {found[1]}")
    return None


def _leaves(st: Statement, at: int) -> bool:
    """Whether it is the speaker who leaves or lets, now: not advice ("leave the fan on for an hour")."""
    norms, word = st.norms, st.norms[at]
    said = {"i", "we"} & set(norms[max(0, at - 5) : at])
    if {"they", "he", "she", "you", "never", "not", "would", "should"} & set(norms[max(0, at - 3) : at]):
        return False
    if said or word in {"leaving", "letting", "keeping"}:
        return True
    after = norms[at + 1 : at + 2]
    if word == "left":
        return at <= st.opening() and after[0] in _PRONOUNS | {"the", "all"}
    if (
        word == "let"
        and at
        and (after_name(st, at) or norms[at - 1] in {"and", "on", "then"})
        and after[0] in _PRONOUNS
    ):
        return True  # "shower on, let it run"
    meanwhile = {"till", "until", "while"} & set(norms[at:]) and {"i", "we"} & set(norms[at:])
    return at <= st.opening() and (after[0] in _PRONOUNS or bool(meanwhile))
