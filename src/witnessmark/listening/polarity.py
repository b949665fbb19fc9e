"""Which words of a statement say that something is wrong, and which that it is as it should be?

Three sorts of evidence: the words of ``polarity.toml``, each turned round where it is denied; words made by rule
("unfastened", "too low"); and what a thing does not do or was not done to it ("won't latch", "never strapped").
"""

from __future__ import annotations

from dataclasses import replace
from functools import lru_cache

from witnessmark.listening.denial import Denial, denial
from witnessmark.listening.made_senses import failing, is_graded, made, several
from witnessmark.listening.phrases import Phrases
from witnessmark.listening.sense import BE, SPEAKERS, Sense, fault_roots, is_wrong, made_wrong
from witnessmark.listening.statement import Statement
from witnessmark.listening.terms import cues

__all__ = ["Sense", "fault_roots", "is_wrong", "senses"]


@lru_cache(maxsize=1)
def _table() -> Phrases[tuple[str, str]]:
    lists = [
        ("none", "not_adverse"),
        ("none", "not_sound"),
        ("wrong", "adverse"),
        ("right", "sound"),
        ("fitted", "fitted"),
    ]
    return Phrases((words, (sort, text)) for sort, name in lists for words, text in cues("conditions", name))


def senses(st: Statement) -> tuple[list[Sense], Denial]:
    """Everything in the statement that judges, in the order of its words, and its denials."""
    norms = st.norms
    rows = [(a, b, *payload) for a, b, payload in _table().find(norms)]
    harmless = {i for a, b, sort, _ in rows if sort == "none" for i in range(a, b)}
    blocked = _blocked(st, rows)
    spots = frozenset(i for a, b, sort, _ in rows if sort in {"wrong", "right"} for i in range(a, b))
    named = {i for n, _ in st.mentions for i in range(n.start, n.end)} - spots
    found = denial(norms, named, spots | {i for i, w in enumerate(norms) if made_wrong(w)})
    found = _answered(norms, found, {i for a, b, _, _ in rows if b - a > 1 for i in range(a, b)})
    own = _owned(rows, found)
    found_here: list[Sense] = []
    for a, b, sort, text in rows:
        if sort == "none" or blocked.intersection(range(a, b)) or a in found.sought:
            continue
        if text in {"gap", "gaps"} and _is_measured(st, b):
            continue
        denied = (a in found.denied) != (a in own)
        if denied and sort == "right" and norms[0] in {"no", "nope"} and set(norms[1:a]) & {"is", "are", "'s", "looks"}:
            denied = False  # "no, the third one's straight"
        if sort == "right" and b - a == 1 and (is_graded(norms, a) or _how_much(norms, a)):
            continue  # "a bit tight" is wrong, "tight" is right
        if sort == "fitted" and norms[a].endswith("ing") and a and norms[a - 1] in {"in", "for", "by", "of", "to"}:
            continue  # "not in cooling"
        done = _by_speaker(norms, a) and (b - a == 1 or norms[a].endswith(("ed", "ing")))
        if (sort == "wrong" and not done) or (text == "reversed" and _CROSSED & set(norms)):
            found_here.append(Sense(a, b, text, wrong=True, denied=denied))
        elif (sort == "right" and (denied or _says(st, a, b, text))) or (
            sort == "fitted" and (denied or _is_fitted(st, a, b, text))
        ):
            found_here.append(Sense(a, b, text, wrong=False, denied=denied))
    taken = {i for s in found_here for i in range(s.start, s.end)} | harmless
    found_here += [s for s in made(st, found) if taken.isdisjoint(range(s.start, s.end))]
    spans = {i for s in found_here for i in range(s.start, s.end)}
    found_here += [s for s in failing(st, found) if spans.isdisjoint(range(s.end - 1, s.end))]
    if not found_here:
        found_here += several(st, found)
    found_here.sort(key=lambda s: s.start)
    return found_here, found


_NOPE = frozenset({"nope", "none", "no", "nah", "never"})


def _answered(norms: list[str], found: Denial, inside: set[int]) -> Denial:
    """What a "no" at the end denies: "smell, nope, none"."""
    end = len(norms)
    while end and norms[end - 1] in _NOPE and end - 1 not in inside:
        end -= 1
    return found if end in {0, len(norms)} else replace(found, denied=found.denied ^ frozenset(range(end)))


def _owned(rows: list[tuple[int, int, str, str]], found: Denial) -> frozenset[int]:
    """Positions denied by nothing but a trigger inside a longer judging phrase just before: undone there.

    "Not ideal" is wrong by itself; it denies nothing after it.
    """
    undone: set[int] = set()
    for a, b, sort, _ in rows:
        if sort == "wrong" and b - a > 1 and any(a <= s < b for s, _, _ in found.triggers):
            undone |= {i for i in found.denied if i >= b}
    return frozenset(undone)


def _blocked(st: Statement, rows: list[tuple[int, int, str, str]]) -> frozenset[int]:
    """Positions that judge nothing: inside names and values, and in the name of what is measured or operated."""
    real = any(q.form not in {"bare", "count"} for q in st.quantities)
    judging = {i for a, b, sort, _ in rows if sort in {"wrong", "right"} and b - a > 1 for i in range(a, b)}
    measured = (
        {i for a, b, _ in st.scene.lexicon.measures.find(st.stems) for i in range(a, b)} - judging if real else set()
    )
    wrong = {(a, b) for a, b, sort, _ in rows if sort == "wrong"}
    faults = {i for n, _ in st.mentions if (n.start, n.end) in wrong for i in range(n.start, n.end)}
    values = {i for v in st.values if v.end - v.start > 1 for i in range(v.start, v.end)}
    meters = {i for a, b in st.instruments if b - a > 1 for i in range(a, b)}
    # "is off level" is no switching: a fault of two words holds against a verb of operating inside it
    off = {i for a, b, sort, _ in rows if sort == "wrong" and b - a > 1 and st.norms[a] == "off" for i in range(a, b)}
    return (st.masked - frozenset(faults)) | measured | values | meters | (frozenset(st.operated) - off)


def _how_much(norms: list[str], at: int) -> bool:
    """Whether "good" only says how much a fault goes on: "it wobbles pretty good"."""
    return norms[at] == "good" and at > 1 and norms[at - 1] in {"pretty", "real"} and is_wrong(norms[at - 2])


#: What is crossed when it is "reversed"; a door that reversed did as it should.
_CROSSED = frozenset({"hot", "cold", "neutral", "natural", "polarity", "wired", "wires", "plumbed", "leads"})
#: Fitted words that say something only when they are denied.
_ONLY_DENIED = frozenset({"enough", "rated", "up to", "required", "allowed", "permitted", "accessible", "visible from", "installed",
                          "moving", "turning", "spinning", "closing", "flowing", "heating", "cooling", "lined", "supported",
                          "connected", "hot enough"})  # fmt: skip


def _is_fitted(st: Statement, a: int, b: int, text: str) -> bool:
    """Whether a participle says that a thing is as it should be: after "is", or alone."""
    if text in _ONLY_DENIED:
        return text in {"supported", "connected", "lined"} and any(w in BE for w in st.norms[max(0, a - 3) : a])
    alone = a == st.opening() and len(st.norms) == b
    return alone or any(w in BE for w in st.norms[max(0, a - 3) : a])


def _is_measured(st: Statement, end: int) -> bool:
    """Whether the noun that ends here is given a size: "the gap's a quarter"."""
    return st.norms[end : end + 1] in (["is"], ["are"], ["'s"]) and any(end < q.start <= end + 2 for q in st.quantities)


def _by_speaker(norms: list[str], at: int) -> bool:
    """Whether the speaker did it: "i plugged", "i have plugged"."""
    before = norms[max(0, at - 3) : at]
    while before and before[-1] in {"have", "had", "just", "then", "also", "already", "am", "was"}:
        before.pop()
    return bool(before) and before[-1] in SPEAKERS


def _says(st: Statement, a: int, b: int, text: str) -> bool:
    """Whether a word for what is right judges, and is no filler or part of a name."""
    norms = st.norms
    if text in {"okay", "ok", "alright", "all right"} and a == 0:
        return False
    if b - a > 1:
        return st.named or text not in {"is running", "are running"}
    before = norms[a - 1] if a else ""
    if a == 0 and len(norms) > b:
        return False
    if before == "the" and b < len(norms):
        return False
    after_name = any(n.end == a for n, _ in st.mentions) and b == len(norms)
    if text in {"even", "flat"} and not set(norms[max(0, a - 3) : a]) & BE and not after_name:
        return False
    if text == "reversed" and before in {"is", "are", "'s", "was", "were"}:
        return False
    return before not in SPEAKERS
