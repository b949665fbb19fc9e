"""Which words of a statement tell of operating something, and what do they leave: on, off, open, or as it was?"""

from __future__ import annotations

from collections.abc import Iterator
from functools import lru_cache

from witnessmark.listening.settings import left_at, moved_at
from witnessmark.listening.statement import Statement
from witnessmark.listening.states import BE, Operation, after_name, is_fitting, is_operated, state_at
from witnessmark.listening.terms import cues, members

__all__ = ["Operation", "is_fitting", "operation", "operations_in"]

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
_NOT_DONE = frozenset({"to", "the", "a", "will", "would", "could", "can", "not", "never", "been", "should", "might"})
#: Verbs that something is done to when they follow its name with a particle ("charger switched on").
_DONE_TO = frozenset({"switched", "turned", "flipped", "bumped", "cranked", "shut", "popped", "taken", "pulled", "folded", "buttoned",
                      "closed", "screwed", "called", "powered", "thrown", "raised", "lowered", "rolled", "slid", "lifted", "clicked",
                      "dialed", "fired", "plugged", "unplugged", "dropped"})  # fmt: skip
#: With these, whatever it is was operated.
_SWITCHED = frozenset(
    {"switched", "turned", "flipped", "powered", "clicked", "dialed", "thrown", "fired", "plugged", "unplugged"}
)
#: Verbs that tell what a thing did, after its name.
_BY_ITSELF = frozenset({"drained", "stopped", "closed", "opened", "ran", "tripped", "reset", "shut", "turned", "filled", "started",
                        "runs", "lit", "cycled", "flushed", "emptied"})  # fmt: skip
_DIRECTIONS = frozenset({"end", "down", "into", "under", "along", "across", "to", "through", "from", "parallel", "over", "behind",
                         "up", "between", "past", "toward", "towards", "trim", "board", "length", "out"})  # fmt: skip
_SORTS = ("off", "open", "on", "momentary")


#: Subjects other than the speaker.
_OTHERS = frozenset({"it", "they", "he", "she", "you", "which", "who", "that"})


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
        if is_fitting(st.norms, at):
            return None
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
    return next(operations_in(st), None)


def operations_in(st: Statement) -> Iterator[Operation]:
    """Every act or state of operating that is told, in order."""
    acted = False
    said = frozenset(st.norms)
    for at, word in enumerate(st.norms):
        found = state_at(st, at) or moved_at(st, at) or left_at(st, at)
        if found is not None:
            yield found
            continue
        for particle, sort in _table().get(word, ()):
            if particle and particle[0] not in said:
                continue
            act = _act_at(st, at, particle, sort, acted=acted)
            if (
                act is not None
                and sort == "off"
                and not particle
                and st.norms[at + 1 : at + 2]
                and _acts(st.norms[at + 1])
            ):
                acted = True
                break  # "closed, opened it": how it was found
            if act is not None:
                acted = True
                yield act
                break


def _acts(word: str) -> bool:
    return word.endswith("ed") and word in _table()


def _act_at(st: Statement, at: int, particle: tuple[str, ...], sort: str, *, acted: bool) -> Operation | None:
    """The act of one verb with one of its particles, when it is the speaker's and done."""
    norms, word = st.norms, st.norms[at]
    if is_fitting(norms, at):
        return None
    if particle == () and ((at in st.masked and len(norms) > 1) or any(v.start <= at < v.end for v in st.values)):
        return None
    end = at + 1 if not particle else _particle(st, at, particle)
    if end is None:
        return None
    made = Operation(sort, at, end, " ".join((word, *particle)))
    if word in BE and (end != at + 1 + len(particle) or (at and norms[at - 1] in {"i", "we", "they", "you"})):
        return None
    if word == "back" and (not at or norms[at - 1] not in BE):
        return None
    if word in BE or word in {"everything", "back"}:
        return made if sort in {"off", "on"} and not _is_noun_phrase_off(st, end) else None
    joined = acted and norms[at - 1] in {"and", "then", "closed", "shut", "locked"}  # "ran it and switched it off"
    return made if (joined or _is_done(st, made, particle)) and not _is_other(st, made, particle) else None


def _is_done(st: Statement, act: Operation, particle: tuple[str, ...]) -> bool:
    """Whether the speaker did it, does it or is about to."""
    norms, at = st.norms, act.start
    word, before = norms[at], norms[at - 1] if at else ""
    passive = act.sort == "off" and before in {*BE, "been", "got"} and bool(st.mentions)
    gerund = word.endswith("ing") and (at in {0, st.opening()} or after_name(st, at) or before == "now")
    plain = st.speaker(at) and before not in _NOT_DONE
    planned = before == "to" and "going" in norms[:at] and act.sort in {"on", "off"}
    let = (
        before in {"me", "us"}
        and "let" in norms[:at]
        and word in {"get", "start", "turn", "fill", "run", "flip", "pop"}
    )
    handed = (
        (act.sort in {"on", "off"} or (act.sort == "open" and word in {"cranked", "slid", "pulled", "rolled"}))
        and (bool(particle) or word == "unplugged")
        and after_name(st, at)
        and word in _DONE_TO
        and (is_operated(st) or word in _SWITCHED)
    )
    opening = norms[st.opening()]
    chained = (
        before in {"and", "then"}
        and opening.endswith("ed")
        and st.speaker(st.opening())
        and not _OTHERS & set(norms[:at])
    )
    counted = act.sort == "momentary" and any(q.end == at for q in st.quantities) and word.endswith("ed")
    tested = (
        act.sort == "momentary"
        and {"tester", "test"} & set(norms[at + 1 : at + 5])
        and norms[at + 1 : at + 2] == ["with"]
    )
    counted = counted or bool(tested)
    coming = particle == ("off",) and word == "coming" and (after_name(st, at) or before in BE)
    if word == "coming":
        return coming
    return gerund or plain or planned or passive or handed or chained or let or counted


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
    if word in {"shut", "closed", "stopped"} and {"own", "itself"} & set(norms[at:]):
        return True  # "stays | shut on its own"
    if word in {"plugged", "plugging"} and particle[:1] == ("the",) and not _is_filled(st):
        return True
    if (
        word == "running"
        and at == st.opening()
        and not particle
        and len(norms) <= at + _ALONE
        and not _known_operated(st)
    ):
        return True  # "running now", of nothing that is run
    if word == "running" and "already" in norms[at + 1 : at + 3]:
        return True
    if word == "running" and ((after and after[0] in _DIRECTIONS) or (after_name(st, at) and not is_operated(st))):
        return True
    if word in {"set", "setting"} and (
        not is_operated(st) or not ({"to", "at", "for", "back"} & set(norms[at:]) or st.quantities)
    ):
        return True
    if word in {"filled", "filling", "fill"} and after in (["for"], ["with"], ["in"]) and particle == () and not said:
        return True
    return word in _BY_ITSELF and after_name(st, at) and not (particle and word in _DONE_TO)


#: "Running now" has so many words at most.
_ALONE = 2


def _known_operated(st: Statement) -> bool:
    """Whether the thing is one that is left running, and does not start and stop by itself as heating does."""
    row = st.scene.lexicon.kind(st.thing.kind) if st.thing and st.thing.kind else None
    rows = st.scene.lexicon.procedures.get(row.id, ()) if row is not None else ()
    by_itself = row is None or row.system in {"heating", "cooling"}
    return not by_itself and any(procedure.leaves in {"on", "filled"} for procedure, _ in rows)


def _is_filled(st: Statement) -> bool:
    rows = st.scene.lexicon.procedures.get((st.thing.kind or "") if st.thing else "", ())
    return any(row.leaves == "filled" for row, _ in rows)


def _is_noun_phrase_off(st: Statement, end: int) -> bool:
    """Whether "off" or "back" only begins a place ("is off the wall", "is back here")."""
    after = st.norms[end] if end < len(st.norms) else ""
    number = any(q.start == end + 1 for q in st.quantities)
    return (after == "to" and not number) or after in _PLACING
