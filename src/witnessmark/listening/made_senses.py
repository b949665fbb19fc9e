"""What judges by the make of a statement: "too low", "won't latch", "never strapped", "both open", "somebody cut it"."""

from __future__ import annotations

from collections.abc import Iterator
from functools import lru_cache

from witnessmark.listening.denial import Denial
from witnessmark.listening.inflection import plural
from witnessmark.listening.phrases import Phrases
from witnessmark.listening.sense import BE, SPEAKERS, Sense, is_wrong, made_wrong
from witnessmark.listening.statement import Statement
from witnessmark.listening.terms import members

__all__ = ["failing", "is_graded", "made", "several"]

_DO = frozenset({"does", "do", "did", "will", "would", "can", "could", "to"})
#: Adverbs between "not" and what is denied.
_BETWEEN = frozenset({"even", "really", "quite", "always", "ever", "actually", "fully", "completely", "properly", "all", "the",
                      "way", "just", "be", "been", "being", "very", "so", "currently", "seem", "appear", "want", "to", "that", "particularly", "terribly", "exactly"})  # fmt: skip
_GETTING = frozenset(
    {
        "get",
        "getting",
        "go",
        "going",
        "come",
        "coming",
        "stay",
        "staying",
        "make",
        "making",
        "seem",
        "gone",
        "put",
        "run",
    }
)
#: What a thing that does not "get" or "go" fails to reach.
_REACHED = frozenset({"hot", "warm", "cold", "cool", "on", "off", "up", "down", "out", "in", "all", "anywhere", "far", "past", "back",
                      "through", "open", "closed", "shut", "together", "lit", "enough", "any", "water", "air", "power", "outside",
                      "contact", "over", "under", "deep", "high", "low", "away", "around", "into", "below", "above", "very",
                      "full", "tight", "wide", "home", "behind", "green", "blue", "dry", "straight", "level", "much"})  # fmt: skip
_PARTICIPLES = frozenset({"hung", "set", "cut", "run", "put", "built", "done", "laid", "tied", "bound", "driven", "sunk", "shut",
                          "made", "dug", "kept", "hidden", "held", "bent", "fed", "brought", "lit", "thrown", "sewn", "given"})  # fmt: skip
#: Where it ought to be and is not: "isn't over the post".
_OUGHT = frozenset(
    {"over", "under", "behind", "into", "through", "above", "below", "against", "past", "onto", "underneath", "beyond"}
)
_AFTER_TOO = frozenset({"so", "and", "but", "i", "it", "the", "a", "we", "that", "this", "is", "are", "in", "on", "at", "there", "by",
                        "they", "with", "no", "not", "for", "of", "because", "bad", "or", "when", "as", "these", "those", "one",
                        "here", "up", "down", "over", "if", "all", "my", "then", "where", "which", "okay", "good", "just", "worried",
                        "concerned", "picky", "crazy", "much", "from", "has", "looks"})  # fmt: skip
_SLIGHTLY = ("a little", "a bit", "a little bit", "kind of", "sort of", "slightly", "somewhat", "awfully", "awful", "way", "pretty",
             "really", "very", "fairly", "quite", "a touch", "a tad", "a hair", "real", "super", "kinda", "extremely", "mighty", "terribly", "pretty darn", "so")  # fmt: skip
_GRADED = frozenset({"low", "high", "short", "close", "tight", "warm", "hot", "steep", "thin", "shallow", "narrow", "light", "stiff",
                     "sparse", "skimpy", "open", "marginal", "off", "stubborn", "touchy", "sharp", "rough", "tired", "dated",
                     "deep", "wide", "cold", "heavy", "choppy", "ratty", "crunchy", "hard", "tall", "small", "big", "cool", "slow",
                     "dim", "dark", "loud", "long", "soft", "flat", "large", "far", "near", "weak", "faint", "fast", "strong",
                     "sticky", "greasy", "moist", "tippy", "uneven"})  # fmt: skip
#: Said alone of what was just told, too much or too little of it: "thirty four high. Low."
_ALONE = frozenset(
    {"low", "high", "short", "tall", "slow", "weak", "thin", "shallow", "warm", "narrow", "steep", "marginal", "tepid"}
)
#: Too little of it, however strongly it is put: "real low", "very thin".
_POOR = frozenset({"low", "short", "thin", "shallow", "sparse", "skimpy", "narrow", "stiff", "marginal"})
_ONLY_SLIGHTLY = frozenset({"a little", "a bit", "a little bit", "kind of", "sort of", "slightly", "somewhat", "awfully", "awful", "way",
                            "a touch", "a tad", "a hair"})  # fmt: skip


def is_graded(norms: list[str], at: int) -> bool:
    """Whether the word is one of degree after "a bit", "kind of" and the like: too much of it."""
    if norms[at] not in _GRADED:
        return False
    return any(" ".join(norms[at - n : at]) in _ONLY_SLIGHTLY for n in (1, 2, 3) if at >= n)


@lru_cache(maxsize=1)
def _slightly() -> Phrases[str]:
    return Phrases((tuple(text.split()), text) for text in _SLIGHTLY)


#: Adjectives that say too little of it when nothing follows: "that's thin".
_FLAT = frozenset(
    {"thin", "sparse", "skimpy", "short", "shallow", "marginal", "stiff", "scant", "bare", "spotty", "patchy", "low"}
)
_AFTER_FLAT = frozenset(
    {"there", "here", "at", "by", "in", "over", "on", "along", "up", "around", "and", "too", "for", "near"}
)
_MAKES_SOUND = frozenset(
    {"did", "does", "not", "to", "a", "the", "that", "make", "makes", "no", "weird", "this", "any", "some", "will"}
)
_NOTHING_AT = frozenset(
    {"at", "on", "in", "around", "here", "there", "under", "behind", "above", "below", "along", "inside", "up", "down"}
)


def _only_so_much(st: Statement, at: int) -> bool:
    """Whether "only" says that there is too little: "is only about two inches", "only one screw"."""
    norms = st.norms
    start = at + 1 + (norms[at + 1 : at + 2] in (["about"], ["got"], ["maybe"], ["like"]))
    quantity = next((q for q in st.quantities if q.start in {start, start + 1}), None)
    if (
        quantity is None
        or quantity.form == "count"
        or norms[quantity.end : quantity.end + 1] in (["of"], ["story"], ["bathroom"])
    ):
        return False
    if not at:
        return quantity.form == "bare" and quantity.value <= 3 and quantity.end < len(norms)  # noqa: PLR2004 - "only one screw"
    return norms[at - 1] in BE | {"has", "have", "got", "there"} and (quantity.form != "bare" or quantity.value <= 3)  # noqa: PLR2004 - "only one screw"


def made(st: Statement, found: Denial) -> Iterator[Sense]:
    """What is wrong by the make of its words: "too low", "a little short", "unfastened"."""
    norms = st.norms
    for i, word in enumerate(norms):
        if i in st.masked:
            continue
        if word == "too" and i + 1 < len(norms) and norms[i + 1] not in _AFTER_TOO and norms[i + 1].isalpha():
            yield Sense(i, i + 2, f"too {norms[i + 1]}", wrong=True, denied=i in found.denied)
        elif (made_wrong(word) and i not in found.sought) or (
            word in _FLAT and i and norms[i - 1] in BE and (i + 1 == len(norms) or norms[i + 1] in _AFTER_FLAT)
        ):
            yield Sense(i, i + 1, word, wrong=True, denied=i in found.denied)
        elif word == "only" and _only_so_much(st, i):
            yield Sense(i, i + 1, "only", wrong=True, denied=i in found.denied)
    if (
        norms[st.opening()] == "nothing"
        and norms[st.opening() + 1 : st.opening() + 2]
        and norms[st.opening() + 1] in _NOTHING_AT
    ):
        yield Sense(st.opening(), st.opening() + 1, "nothing", wrong=False)
    if norms[-1] in {"right", "hard"} and len(norms) > 1 and norms[-2] in BE | {"looks", "look", "all"}:
        yield Sense(len(norms) - 1, len(norms), norms[-1], wrong=False, denied=len(norms) - 1 in found.denied)
    if norms[-1] == "dark" and len(norms) > 1 and norms[-2] in BE and st.named:
        yield Sense(len(norms) - 1, len(norms), "dark", wrong=True, denied=len(norms) - 1 in found.denied)
    if norms[-1] == "sound" and len(norms) > 1 and norms[-2] not in _MAKES_SOUND:
        yield Sense(len(norms) - 1, len(norms), "sound", wrong=False, denied=len(norms) - 1 in found.denied)
    for i, word in enumerate(norms[:-2]):
        if word == "nice" and norms[i + 1] == "and" and norms[i + 2].isalpha() and i + 2 not in st.masked:
            yield Sense(i, i + 3, f"nice and {norms[i + 2]}", wrong=False, denied=i in found.denied)
    yield from _botched(st)
    yield from _but_not(st)
    opening = st.opening()
    if opening + 1 == len(norms) and norms[opening] in _ALONE:
        yield Sense(opening, opening + 1, norms[opening], wrong=True)
    if norms[opening] in {"bit", "little"} and opening + 2 == len(norms) and norms[-1] in _GRADED:
        yield Sense(opening, len(norms), f"{norms[opening]} {norms[-1]}", wrong=True)
    for a, b, text in _slightly().find(norms):
        graded = _GRADED if text in _ONLY_SLIGHTLY else _POOR
        if b < len(norms) and norms[b] in graded and b not in st.masked:
            yield Sense(a, b + 1, f"{text} {norms[b]}", wrong=True, denied=a in found.denied)
    if len(norms) > 1 and norms[-1] == "reversed" and norms[-2] in {"is", "are", "'s"}:
        yield Sense(len(norms) - 1, len(norms), "reversed", wrong=True, denied=len(norms) - 1 in found.denied)


#: What somebody did that was a help.
_HELPED = frozenset({"replaced", "updated", "added", "upgraded", "repaired", "fixed", "insulated", "cleaned", "serviced", "installed",
                     "finished", "remodeled", "improved", "redid", "called", "asked", "told", "said", "mentioned", "opened", "turned",
                     "needed", "wanted", "tried", "checked", "tested", "looked", "rebuilt", "reinforced", "sistered", "rewired",
                     "refinished", "painted", "lived", "stayed", "moved", "labeled", "marked", "used to"})  # fmt: skip
_DID = frozenset(
    {"cut", "ran", "put", "stuck", "left", "broke", "hung", "built", "tied", "drove", "set", "made", "glued", "shoved"}
)


_WHERE_NOT = frozenset({"from", "on", "at", "in", "when", "with", "by", "for", "the", "all", "if", "this", "that"})


def _but_not(st: Statement) -> Iterator[Sense]:
    """What is excepted from what works: "works from the top but not from the bottom"."""
    norms = st.norms
    for i in range(len(norms) - 2):
        if norms[i] == "but" and norms[i + 1] == "not" and norms[i + 2] in _WHERE_NOT:
            yield Sense(i + 1, i + 2, f"{norms[i]} not", wrong=True)


def _botched(st: Statement) -> Iterator[Sense]:
    """What "somebody" did, when it was no repair: told because it is wrong."""
    norms = st.norms
    for i, word in enumerate(norms[:-1]):
        done = norms[i + 1]
        if word in {"somebody", "someone"} and (done in _DID or (done.endswith("ed") and done not in _HELPED)):
            yield Sense(i, i + 2, f"{word} {done}", wrong=True)


def failing(st: Statement, found: Denial) -> Iterator[Sense]:
    """What a thing does not do or what was not done to it."""
    norms = st.norms
    for start, end, of_verb in found.triggers:
        if not of_verb or end >= len(norms) or start in found.denied:
            continue
        got = _not_got(norms, end)
        if got:
            yield Sense(start, got, " ".join(norms[start:got]), wrong=True)
            continue
        if any(w in SPEAKERS for w in norms[max(0, start - 3) : start]):
            continue
        at = end
        while at < len(norms) - 1 and norms[at] in _BETWEEN:
            at += 1
        word = norms[at]
        before = norms[start - 1] if start else ""
        text = " ".join([*([before] if before in _DO | BE else []), *norms[start : at + 1]])
        if not word.isalpha() or (at in st.masked and before not in _DO):
            continue
        if is_wrong(word) or is_wrong(plural(word)):
            if before in _DO:
                yield Sense(at, at + 1, word, wrong=True, denied=True)  # "does not rock"
        elif word in _YIELDS and before in _DO:
            firm = bool(_PUSHED & set(norms)) or not _is_operated(st)
            yield Sense(at, at + 1, word, wrong=True, denied=firm)
        elif _lacks(st, before, start, at):
            yield Sense(start, at + 1, text, wrong=True)


#: Not to do this is firm, of a thing that is to stand still; stuck, of one that is to move.
_YIELDS = frozenset({"move", "budge", "give", "wiggle", "shift", "flex"})
_PUSHED = frozenset(
    {"pushed", "push", "shook", "leaned", "rocked", "kicked", "tugged", "shake", "lean", "stomped", "jumped"}
)


#: What is turned by hand, and stuck when it does not move.
_TURNED = frozenset(
    {
        "valve",
        "stop",
        "handle",
        "lever",
        "knob",
        "stem",
        "shutoff",
        "shutoffs",
        "switch",
        "crank",
        "latch",
        "bolt",
        "lock",
    }
)


def _is_operated(st: Statement) -> bool:
    if st.subject is not None and _TURNED & set(st.norms[st.subject.start : st.subject.end]):
        return True
    row = st.scene.lexicon.kind(st.thing.kind) if st.thing is not None else None
    return row is not None and bool(row.operated)


def _does(st: Statement, found: Denial) -> Iterator[Sense]:
    """What a thing does as it should, told plainly: "it locks too", "louvers open with it", "doorbell rings"."""
    norms = st.norms
    works = members("works", "verbs")
    ends = {n.end for n, _ in st.mentions}
    for i in range(1, len(norms)):
        one = norms[i] in _third() and i not in st.masked
        last = i + 1 == len(norms) and i in ends  # "doors latch": a name too, but what they do here
        many = norms[i] in works and norms[i - 1].endswith("s") and (i not in st.masked or last)
        subject = i in ends or norms[i - 1] in {"it", "they", "one", "both", "here", "there", "ones"}
        if (
            not (subject and (one or many or (norms[i] in works and norms[i - 1] in {"they", "both"})))
            or i in found.denied
        ):
            continue
        if (
            i + 1 == len(norms) or norms[i + 1] in {"too", "also", "again", "now", "okay", "with", "by", "and"}
        ) and not any(w in SPEAKERS for w in norms[:i]):
            yield Sense(i, i + 1, norms[i], wrong=False)
            return


@lru_cache(maxsize=1)
def _third() -> frozenset[str]:
    return frozenset(plural(v) for v in members("works", "verbs")) | {"rings", "rolls", "glides", "slides"}


def several(st: Statement, found: Denial) -> Iterator[Sense]:
    """What all, both or none of several things do: "both open", "none of them light"."""
    norms = st.norms
    yield from _does(st, found)
    several = next((i for i, w in enumerate(norms) if w in {"all", "both", "each", "every", "everything"}), None)
    none = next(
        (a for a, b, of_verb in found.triggers if not of_verb and norms[a] in {"none", "neither", "nothing", "no"}),
        None,
    )
    start = several if several is not None else none
    if start is None or any(w in SPEAKERS for w in norms):
        return
    works = members("works", "verbs")
    for i in range(start + 1, len(norms)):
        if norms[i] not in works or norms[i - 1] in _DO | {"not", "the", "a", "an"} or i in st.masked:
            continue
        if several is not None and i not in found.denied:
            yield Sense(i, i + 1, norms[i], wrong=False)
        elif several is None and i in found.denied and i == len(norms) - 1:
            yield Sense(i, i + 1, norms[i], wrong=False, denied=True)


def _lacks(st: Statement, before: str, start: int, at: int) -> bool:
    """Whether not to do, or not to have been done, what the word at *at* says is a failure."""
    norms, word = st.norms, st.norms[at]
    following = norms[at + 1] if at + 1 < len(norms) else ""
    trigger = norms[start]
    if word in _GETTING:
        return following in _REACHED and before != "'s"
    if word in members("neutral", "participles") or word in members("conditions", "sound"):
        return False
    done = (word.endswith("ed") and len(word) > 4) or word in _PARTICIPLES  # noqa: PLR2004 - "red", "bed"
    verb = before in _DO or trigger in {
        "fails",
        "failed",
        "fail",
        "refuses",
        "refused",
        "no",
        "quit",
        "stopped",
        "ceased",
        "hardly",
    }
    if verb:
        return word not in members("neutral", "verbs") and not word.endswith("ly")
    if done:
        return True
    if word.endswith("ing"):
        return word not in {"going", "doing", "getting", "using", "looking", "touching", "hitting", "rubbing", "dumping", "seeing", "missing", "saying", "wearing",
                            "including", "trying", "planning", "worth", "anything", "expecting", "asking", "hanging",
                            "making", "taking", "thinking", "something", "thing", "kidding", "existing"}  # fmt: skip
    return before in BE and word in _OUGHT and bool(following)


def _not_got(norms: list[str], at: int) -> int | None:
    """Where "(can not) get it to latch", "get it open" ends, after a denial of the speaker's."""
    if norms[at : at + 1] != ["get"] or norms[at + 1 : at + 2] not in (["it"], ["them"], ["that"], ["this"], ["the"]):
        return None
    for i in range(at + 2, min(len(norms), at + 6)):
        if norms[i] in {
            "to",
            "open",
            "closed",
            "shut",
            "lit",
            "going",
            "off",
            "on",
            "started",
            "running",
            "loose",
            "out",
        }:
            return min(len(norms), i + 1 + (norms[i] == "to"))
    return None
