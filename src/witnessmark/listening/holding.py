"""Which words of operating belong together, though a statement seemed to begin between them?"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache

from witnessmark.listening.clauses import Clause, Mark
from witnessmark.listening.grammar import GRAMMAR
from witnessmark.listening.held_numbers import set_after, wants_more
from witnessmark.listening.state_cuts import state_cuts
from witnessmark.listening.terms import cues, members
from witnessmark.listening.words import Token

__all__ = ["held"]

#: What makes a guess of the statement it ends.
_HEDGES = (("i", "think"), ("i", "guess"), ("i", "believe"), ("i", "suppose"), ("i", "bet"), ("i", "would", "guess"), ("i", "would", "say"),
           ("i", "would", "bet"), ("i", "do", "believe"), ("i", "am", "guessing"), ("i", "am", "thinking"), ("i", "figure"))  # fmt: skip
_KNOWING = frozenset({"say", "tell", "know", "sure", "certain", "see", "check", "wonder"})
_COMES = frozenset({"in", "out", "down", "through", "coming", "leaking", "getting", "running", "dripping", "water"})
_MAY_BE = (["could", "be"], ["might", "be"], ["may", "be"])
_LEADS, _ABOUT = (
    frozenset({"maybe", "perhaps", "possibly", "probably"}),
    frozenset({"maybe", "about", "roughly", "around", "probably", "only"}),
)


def hedge_at(norms: Sequence[str], at: int) -> int | None:
    """The end of a hedge that begins at *at*: "i think"; None where there is none."""
    return next((at + len(h) for h in _HEDGES if tuple(norms[at : at + len(h)]) == h), None)


def _ends_with_hedge(norms: Sequence[str], cut: int) -> int | None:
    """The end of the hedge at *cut* when no statement follows it there: "off the strainer | i think | paper towel around it"."""
    end = hedge_at(norms, cut)
    if end is None or end >= len(norms):
        return None
    after = norms[end : end + _NO_VERB]
    if after[0] in _NEGATIVE:
        return end  # "i'd guess | can't see them"
    subject = after[0] in GRAMMAR.subjects | GRAMMAR.determiners | {"so", "you", "we"} or after[0] in GRAMMAR.aux
    return None if subject or set(after) & (GRAMMAR.aux | GRAMMAR.verbs | GRAMMAR.doing) else end


#: Words without a verb after a hedge that belongs to what stands before it.
_NO_VERB = 5
_NEGATIVE = frozenset({"can", "could", "did", "no", "not"})
#: How far a particle stands from its verb ("get the shower and the sink going").
_APART = 7
#: Words that end what a verb takes.
_STOPS = frozenset({"and", "but", "it", "then", "so", "i", "we", "is", "are"})
_PUT_BACK = frozenset({"on", "in", "together", "up", "off", "down", "to"})
#: What is said of a thing just switched off, as a statement of its own.
_OFF_ALONE = (("off", "with", "that"), ("off", "with", "it"), ("off", "it", "goes"), ("and", "off"))
#: What a "shut off" is part of the name of.
_SHUTOFFS = frozenset({"valve", "valves", "handle", "handles", "lever", "key", "wheel", "switch"})
#: A rest so short belongs to the words before it.
_SHORT = 2


@lru_cache(maxsize=1)
def _particles() -> dict[str, frozenset[tuple[str, ...]]]:
    """The particles of verbs of operating that may stand apart from them."""
    found: dict[str, set[tuple[str, ...]]] = {}
    for sort in ("on", "off", "open"):
        for words, _ in cues("operations", sort):
            if len(words) > 1 and words[0] not in {"is", "are", "was", "'s", "back", "everything", "going"}:
                found.setdefault(words[0], set()).add(words[1:])
    return {verb: frozenset(rows) for verb, rows in found.items()}


def _completes(norms: Sequence[str], start: int, cut: int) -> int:
    """How many words at *cut* are the particle of a verb of operating before it; 0 for none."""
    for at in range(cut - 1, max(start, cut - _APART) - 1, -1):
        for particle in _particles().get(norms[at], ()):
            if tuple(norms[cut : cut + len(particle)]) == particle and cut - at > 1:
                return len(particle)
    return 0


@dataclass(frozen=True, slots=True)
class _Named:
    """Where components and quantities begin, where components and places end (with where they begin); the statements' edges."""

    starts: frozenset[int]
    quantities: frozenset[int]
    ends: dict[int, int]
    places: dict[int, int]
    cuts: frozenset[int]


def _unfinished(norms: Sequence[str], before: int, cut: int, named: _Named) -> bool:
    """Whether the words before *cut* want what comes after it: "i shut off | the breaker", "maybe | thirty inches"."""
    starts, ends = named.starts, named.ends
    last = norms[cut - 1]
    if (
        cut in starts
        and last in GRAMMAR.adjectives
        and norms[cut - 2 : cut - 1] in (["the"], ["a"], ["this"], ["that"])
        and norms[cut - 3 : cut - 2] not in (["at"], ["in"], ["from"], ["to"])
    ):
        return True  # "the back | hose bib", but "it rubs at the top | ceiling has a ring"
    mine = norms[before] in {"i", "we"} and cut - before <= _FEW_WORDS
    if (
        mine
        and last in _PUT_BACK
        and norms[cut] in GRAMMAR.determiners
        and norms[cut - 2] not in {"it", "that", "them"}
    ):
        return cut - 2 not in ends  # "i shut off | the breaker"
    topic = cut in ends or last == "one" or (norms[cut - 2] in {"that", "the"} and cut > 1)
    if norms[cut] in {"i", "we"} and topic and _wants_topic(norms, cut):
        return True  # "that bib | i left going"
    if (
        norms[before] in {"i", "we"}
        and cut - before == _SHORT
        and last.endswith("ed")
        and norms[cut] in GRAMMAR.determiners
    ):
        return True  # "i jumped | the thermostat up"
    hedge = hedge_at(norms, cut)
    if hedge and (hedge == len(norms) or norms[hedge] in GRAMMAR.prepositions | {"about", "around"}):
        return norms[hedge : hedge + 1] != ["in"] or cut - before > 1  # "there's rot | i think at the bottom"
    led = (last in _LEADS and cut - before == 1) or (norms[cut - 2 : cut] in _MAY_BE and cut - before == _SHORT)
    if led and norms[cut] in {"it", "they", "that", "this", "he", "she", "the"}:
        return True  # "maybe | it goes out with the range hood"
    if norms[cut - 2 : cut] in (["is", "there"], ["are", "there"]) and norms[cut] in {
        "another",
        "any",
        "a",
        "some",
        "more",
    }:
        return True  # "is there | another tank"
    place = named.places.get(cut, 0)
    if cut in starts and place and norms[place - 1] in GRAMMAR.determiners and cut - before > _SHORT:
        name = next((e for e, b in ends.items() if b == cut), cut)
        if name == len(norms) or name in named.cuts:
            return True  # "running water at the hall bath | sink"
    if norms[cut - 2 : cut] in (["back", "on"], ["back", "to"]) and cues("operations", "modes_back").at(norms, cut):
        return True  # "back on | auto"
    if last in {"is", "are", "'s", "was"} and norms[cut].endswith("ing") and cut not in starts:
        return True  # "sink's | draining good"
    if norms[cut] == "if" and (last in _KNOWING or norms[cut - 2 : cut] in (["tell", "you"], ["say", "for"])):
        return True  # "can't say | if it's dead"
    if norms[cut] == "from" and last in _COMES:
        return True  # "water's getting in | from the door or the unit above"
    if last in _ABOUT and cut in named.quantities and cut - before > 1:
        return True  # "it's maybe | thirty inches"
    after = norms[cut : cut + 2]
    joint = next((e for e in (ends.get(cut),) if e is not None), None)
    if (
        joint is not None
        and after[0] == "and"
        and (two := next((m for m in (cut + 1, cut + 2) if m in starts), None)) is not None
    ):
        end = next((e for e, b in ends.items() if b == two), two)
        if norms[end : end + 1] in (["are"], ["were"], ["both"]):
            return True  # "oven | and dishwasher are both off"
    return (
        last in _RUNS and after[0] in _IN and len(after) > 1 and (cut + 1 in starts or after[1] in GRAMMAR.determiners)
    )  # "the water running | in the kitchen sink"


def _wants_topic(norms: Sequence[str], cut: int) -> bool:
    """Whether what the speaker left or turned, from *cut*, is what was named just before: nothing is named after the verb."""
    at = cut + 1 + (norms[cut + 1 : cut + 2] in (["am"], ["have"], ["had"], ["was"], ["will"]))
    return norms[at : at + 1] != [] and norms[at] in _DONE and norms[at + 1 : at + 2] != [] and norms[at + 1] in _STATES


_DONE = frozenset(
    {
        "left",
        "leaving",
        "leave",
        "turned",
        "switched",
        "started",
        "got",
        "have",
        "had",
        "put",
        "set",
        "opened",
        "closed",
        "shut",
    }
)
_STATES = frozenset(
    {"on", "off", "going", "running", "up", "open", "back", "down", "full", "standing", "filled", "lit"}
)


def _topic(norms: Sequence[str], cut: int, ends: dict[int, int]) -> list[int]:
    """Where the thing begins of which it is told at *cut* how it was left: "didn't lift it | left one i'm leaving up"."""
    bare = norms[cut - 1] == "one" or (cut > 1 and norms[cut - 2] in {"that", "the"})
    at = ends.get(cut, cut - 1 if bare else cut)
    small = GRAMMAR.determiners | GRAMMAR.adjectives
    while 0 < at < cut and norms[at - 1] in small:
        at -= 1
    return [at] if 0 < at < cut else []


#: "I turned it on" has so many words before what it is done to.
_FEW_WORDS = 4
_RUNS, _IN = frozenset({"running", "going"}), frozenset({"in", "at", "from"})


def held(
    found: Sequence[Clause], tokens: Sequence[Token], marks: Sequence[Mark], operable: frozenset[int] = frozenset()
) -> list[Clause]:
    """The statements, a particle given back to its verb, "back on" to the thing before it, "off with that" on its own.

    *operable* are the positions where names of things that are operated begin: "disposer on" is a statement of its own.
    """
    if not found:
        return []
    norms = [t.norm for t in tokens]
    ends = {m.end: m.start for m in marks if m.sort == "component"}
    starts = frozenset(m.start for m in marks if m.sort == "component")
    edges = [clause.start for clause in found]
    named = _Named(starts, frozenset(m.start for m in marks if m.sort == "quantity"), ends,
                   {m.end: m.start for m in marks if m.sort == "place"}, frozenset(c.start for c in found))  # fmt: skip
    last = found[-1].end
    made: list[int] = []
    for index, cut in enumerate(edges):
        before = made[-1] if made else 0
        if not index or tokens[cut - 1].hard:
            made.append(cut)
            continue
        end = edges[index + 1] if index + 1 < len(edges) else last
        if wants_more(norms, before, cut, starts):
            continue
        if norms[cut] in _SHUTOFFS and norms[max(cut - 2, 0) : cut] == ["shut", "off"]:
            continue  # "shut off | valve is right at the meter" would tell of something that was shut off
        if _unfinished(norms, before, cut, named):
            continue
        mode = cues("operations", "modes").at(norms, cut) if norms[cut - 1] in {"on", "to", "in"} else None
        if mode is not None and members("operations", "moving") & set(norms[before:cut]):
            made.append(mode[0])  # "i put it on manual | zone three is running"
            continue
        if norms[cut] in _SAYS and norms[cut - 1] in members("scopes", "sources"):
            start = _sayer(norms, before, cut)
            if start > before:
                made.append(start)  # "i don't inspect those | your agent said the roof was five years old"
            continue
        hedged = _ends_with_hedge(norms, cut)
        if hedged is not None and cut - before > _SHORT - 1:
            made.append(hedged)
            continue
        size = _completes(norms, before, cut)
        setting = set_after(norms, before, cut + size)
        if setting is not None:
            made.append(setting)
            continue
        if size:
            if end - cut - size > _SHORT and norms[cut + size] not in _IN:
                made.append(cut + size)
        elif (
            norms[cut] == "back"
            and norms[cut + 1 : cut + 2]
            and norms[cut + 1] in _PUT_BACK
            and ends.get(cut, before) > before
        ):
            made.append(ends[cut])
        else:
            made.append(cut)
    apart = [at for cut in edges if _wants_topic(norms, cut) for at in _topic(norms, cut, ends)]
    apart += [at for at in state_cuts(norms, marks, operable) if not tokens[at - 1].hard]
    apart += _back_to(norms)
    apart += _guesses(norms, named, set(edges)) + _asked(norms, ends)
    cuts = sorted({*made, *_alone(norms), *_reset_alone(norms, starts), *apart})
    return [Clause(a, b) for a, b in zip(cuts, [*cuts[1:], last], strict=True) if a < b]


def _back_to(norms: Sequence[str]) -> list[int]:
    """Where "back on auto" begins after another setting: "flipped it to manual | back on auto"."""
    modes, back = cues("operations", "modes"), cues("operations", "modes_back")
    return [
        at for at in range(1, len(norms) - 2)
        if norms[at] == "back" and norms[at + 1] in {"on", "to"} and back.at(norms, at + 2) and modes.at(norms, at - 1, at)
    ]  # fmt: skip


def _guesses(norms: Sequence[str], named: _Named, edges: set[int]) -> list[int]:
    """Where a guess ends that begins a statement and tells nothing: "could be | rafters are two by six"."""
    found: list[int] = []
    for at in edges:
        end = at + _SHORT if norms[at : at + _SHORT] in _MAY_BE else None
        if end is not None and end in named.starts:
            name = next((e for e, b in named.ends.items() if b == end), end)
            found += [end] if norms[name : name + 1] and norms[name] in GRAMMAR.aux else []
    return found


#: Words within which the "or" of a question stands.
_OR_WITHIN = 8


def _asked(norms: Sequence[str], ends: dict[int, int]) -> list[int]:
    """Where the speaker's own question begins: "alligator cracks over here | is that just age or is the base gone"."""
    found: list[int] = []
    for at in range(1, len(norms) - 2):
        if norms[at] not in {"is", "are", "was"} or norms[at + 1] not in {
            "that",
            "this",
            "it",
            "those",
            "these",
            "they",
        }:
            continue
        before = norms[at - 1]
        if (before in GRAMMAR.locatives or at in ends) and "or" in norms[at + 3 : at + _OR_WITHIN]:
            found.append(at)
    return found


_SAYS = frozenset({"said", "says", "told", "tells", "claims", "claimed", "mentioned", "swears", "thinks"})


def _sayer(norms: Sequence[str], before: int, cut: int) -> int:
    """Where the one begins who says what stands at *cut*."""
    at = cut - 1
    return at - 1 if at > before and norms[at - 1] in {"your", "the", "my", "his", "her", "their", "our"} else at


def _reset_alone(norms: Sequence[str], starts: frozenset[int]) -> list[int]:
    """Where "reset" stands by itself, between what is judged and the next thing: "the rest went dead good | reset | island has"."""
    return [
        cut for at, word in enumerate(norms[:-1]) if word == "reset" and at and norms[at - 1] in GRAMMAR.judging | {"okay", "dead"}
        and (at + 1 in starts or norms[at + 1] in GRAMMAR.determiners) for cut in (at, at + 1)
    ]  # fmt: skip


def _alone(norms: Sequence[str]) -> list[int]:
    """Where "off with that" begins, and where it ends."""
    found: list[int] = []
    for at, word in enumerate(norms):
        if word not in {"off", "and"}:
            continue
        for said in _OFF_ALONE:
            end = at + len(said)
            if tuple(norms[at:end]) != said or not at or norms[at - 1] == "on":
                continue
            if said[0] != "and" or norms[end : end + 1] not in (["on"], ["the"], ["of"], ["to"], ["a"]):
                found += [at, end] if end < len(norms) else [at]
                break
    return found
