"""Is it about this house, here and now? What is foretold, advised, told of other houses, or follows from what was supposed."""

from __future__ import annotations

from collections.abc import Sequence

from witnessmark.listening.grammar import GRAMMAR
from witnessmark.listening.sense import is_wrong
from witnessmark.listening.statement import Statement
from witnessmark.listening.terms import cues

__all__ = ["follows", "sets_aside", "states_fact"]

#: What one is told to do, or not to: "you don't run it below sixty", "change that filter every ninety days".
_DOING = frozenset({"run", "use", "put", "paint", "store", "leave", "close", "block", "walk", "cut", "touch", "plug", "light", "burn",
                    "pour", "let", "turn", "mix", "hang", "stack", "climb", "stand", "step", "drive", "park", "throw", "keep",
                    "change", "clean", "drain", "replace", "seal", "check", "test", "call", "get", "have", "make", "open", "shut",
                    "reset", "flush", "trim", "wash", "remove", "add", "buy", "install", "pull", "push", "start", "write",
                    "look", "watch", "remember", "plan", "budget", "ask", "tell", "consider", "never", "always"})  # fmt: skip
#: How often, or when, something is to be done.
_OFTEN = frozenset({"every", "once", "twice", "when", "before", "after", "whenever", "until", "unless", "if", "always", "never", "each",
                    "regularly", "annually", "yearly", "monthly", "so", "or", "and"})  # fmt: skip
#: What is foretold of.
_THINGS_TO_COME = (("by", "spring"), ("by", "fall"), ("by", "winter"), ("by", "summer"), ("next", "winter"), ("next", "year"), ("next", "spring"),
                   ("next", "summer"), ("next", "fall"), ("some", "day"), ("before", "long"), ("sooner", "or"), ("down", "the", "road"),
                   ("years", "from", "now"), ("year", "from", "now"), ("in", "time"), ("over", "time"), ("in", "years"))  # fmt: skip
_SOON = frozenset({"someday", "eventually", "soon", "again", "anyway", "tomorrow"})
_SUBJECTS = frozenset(
    {
        "it",
        "that",
        "this",
        "they",
        "those",
        "these",
        "the",
        "a",
        "somebody",
        "someone",
        "anything",
        "there",
        "he",
        "she",
    }
)
_BE = frozenset({"is", "are", "was", "were", "'s", "looks", "look", "seems"})
_SEEN = frozenset({"saw", "had", "found", "seen", "knew", "watched", "lost", "did", "inspected"})
#: A clause of so many words can be nothing but the condition.
_CONDITION_LONGEST = 14
_PREPOSITIONS = frozenset({"from", "against", "into", "onto", "behind", "without", "instead", "rather", "plus"})
#: What ought to be, after which it can be told how it is.
_OUGHT = frozenset(
    {
        "should",
        "ought",
        "supposed",
        "normally",
        "usually",
        "code",
        "limit",
        "wants",
        "want",
        "requires",
        "minimum",
        "maximum",
    }
)
_CONTRAST = frozenset({"it", "they", "this", "these", "that", "those", "there", "here"})


def sets_aside(st: Statement) -> str | None:
    """``teaching`` or ``hypothetical`` for what is advised, foretold, or told of other houses; None for what is here."""
    norms, at = st.norms, st.opening()
    if _is_advice(norms, at) or _is_of_others(st, at):
        return "teaching"
    if (
        norms[at : at + 1] == ["should"]
        and norms[at + 1 : at + 2]
        and norms[at + 1] in _SUBJECTS
        and not st.tokens[-1].question
    ):
        return "hypothetical"  # "should that fail"
    first = norms[at : at + 1]
    verbs = GRAMMAR.verbs | GRAMMAR.plural
    if first == ["without"] and any(w in verbs or w in {"would", "will", "can"} for w in norms[at + 3 :]):
        return "hypothetical"  # "without that strap an earthquake tips it over"
    otherwise = norms[0] == "otherwise" or norms[:2] == ["or", "else"]
    if otherwise and not _BE & set(norms) and not st.cue("conditions", "sound"):
        return "hypothetical"
    return "hypothetical" if _is_foretold(st, at) else None


def _is_advice(norms: Sequence[str], at: int) -> bool:
    """Whether somebody is told what to do, any time: no subject, or "you"."""
    word, after = norms[at], norms[at + 1 : at + 3]
    if word == "you" and after in (["do", "not"], ["can", "not"], ["did", "not"]) and norms[at + 3 : at + 4]:
        return norms[at + 3] in _DOING and norms[at + 1] != "did"
    if word in {"do", "never", "always"} and norms[at + 1 : at + 2] and (word != "do" or after[0] in {"not", "it"}):
        rest = set(norms[at + 1 : at + 4])
        return bool(rest & (_DOING | {"ever"})) and not {"know", "see", "think"} & rest
    if word == "to" and norms[at + 1 : at + 2] and norms[at + 1] in _DOING:
        return True  # "to shut it off you turn this"
    if word in _DOING - {
        "open",
        "light",
        "clean",
        "cut",
        "start",
        "reset",
        "test",
        "drain",
        "look",
        "shut",
        "put",
        "let",
    } or (
        word in {"clean", "drain", "test", "reset", "open", "light"}
        and after[:1] in (["it"], ["that"], ["them"], ["those"], ["a"], ["your"])
    ):
        taken = GRAMMAR.determiners | {"it", "them", "out", "up", "anything", "everything"}
        often = (
            after[:1] and after[0] in taken and [w for w in norms[at + 1 :] if w in _OFTEN - {"and", "or", "so", "if"}]
        )
        return bool(often) and not {"i", "we", "will", "my"} & set(norms)
    return False


def _is_of_others(st: Statement, at: int) -> bool:
    """Whether it is a story of another house or another day: "i saw one of these blow up once"."""
    norms = st.norms
    if cues("scopes", "stories").first(norms):
        return True
    mine = {"i", "we"} & set(norms[at : at + 2])
    return bool(mine) and norms[-1] == "once" and bool(_SEEN & set(norms[at : at + 4]))


def _is_foretold(st: Statement, at: int) -> bool:
    """Whether it tells what will or would become of a thing."""
    norms = st.norms
    will = next((i for i, w in enumerate(norms) if w in {"will", "would"}), None)
    if will is None or {"i", "we", "not", "you"} & set(norms[max(at, will - 3) : will + 2]) or norms[:1] == ["if"]:
        return False
    verb = norms[will + 1] if will + 1 < len(norms) else ""
    if verb in {"be", "have", "call", "say", "need"} | GRAMMAR.adverbs and norms[will] == "would":
        return False
    later = any(tuple(norms[i : i + len(t)]) == t for t in _THINGS_TO_COME for i in range(len(norms)))
    span = "in" in norms and bool({"years", "year", "months", "winters"} & set(norms))
    if norms[will] == "would":
        return is_wrong(verb) or verb in GRAMMAR.plural
    return later or span or bool(_SOON & set(norms[will:])) or {"going", "someday"} <= set(norms)


def follows(st: Statement, earlier: Sequence[str], mode: str) -> bool:
    """Whether a statement without a pause before it only ends what was set aside before it (*earlier*, of *mode*)."""
    if st.fresh or not earlier:
        return False
    at, norms = st.opening(), st.norms
    first = next((i for i, w in enumerate(earlier) if w not in {"and", "but", "so", "now", "okay", "well", "or"}), 0)
    bare = len(earlier) <= _CONDITION_LONGEST and not {"would", "will", "can", "could", "then"} & set(
        earlier[first + 1 :]
    )
    opened = cues("scopes", "conditionals").at(earlier, first) is not None or (
        earlier[first] == "should" and mode == "hypothetical"
    )
    if mode == "hypothetical" and bare and opened:
        return not ({"i", "we", "here"} & set(norms[: at + 2]))
    if len(earlier) <= _OPENING_LONGEST and _opens_story(earlier):
        return True  # "what happens is the flashing | rusts through", "i had a house | last week where"
    if _sets_time(earlier) and not {"i", "we"} & set(norms[: at + 1]):
        return True  # "over time | the grout cracks and lets water in"
    if (
        norms[0] in {"and", "or", "then"}
        and mode == "hypothetical"
        and not {"i", "we", "here", "this", "these"} & set(norms)
    ):
        return not states_fact(st, earlier)
    past = {"was", "were", "had", "did"} & set(earlier) or any(w.endswith("ed") for w in earlier)
    if norms[0] == "and" and past and not {"i", "we", "here", "this", "these", "is", "are", "'s", "has"} & set(norms):
        return True  # "back in the seventies they used aluminum | and the connections burned"
    after = norms[at + 1] if at + 1 < len(norms) else ""
    return norms[at] in _PREPOSITIONS or (norms[at] == "right" and after in GRAMMAR.prepositions)


#: The longest opening of a story or an explanation.
_OPENING_LONGEST = 6


def _opens_story(words: Sequence[str]) -> bool:
    """Whether the words only open a story or an explanation."""
    told = cues("scopes", "stories").at(words, 0)
    explained = words[:2] in (
        ["what", "happens"],
        ["the", "reason"],
        ["the", "idea"],
        ["the", "point"],
        ["what", "usually"],
    )
    return explained or (told is not None and not {"was", "were", "is", "are"} & set(words))


#: The longest phrase that only says when.
_WHEN_LONGEST = 6


def _sets_time(words: Sequence[str]) -> bool:
    """Whether the words only say when, of any time ("over time", "in the winter"), perhaps with what is spoken of."""
    verbs = GRAMMAR.aux | GRAMMAR.verbs | GRAMMAR.plural | GRAMMAR.doing | GRAMMAR.happening
    return len(words) <= _WHEN_LONGEST and bool(cues("scopes", "any_time").first(words)) and not verbs & set(words)


def states_fact(st: Statement, earlier: Sequence[str]) -> bool:
    """Whether it says how it is, right after how it ought to be: "it's supposed to drain away | and it runs to the wall"."""
    norms = st.norms
    if not set(earlier) & _OUGHT or {"would", "will", "could", "can", "should", "you", "people"} & set(norms):
        return False
    return norms[0] in {"and", "but"} and len(norms) > 1 and norms[1] in _CONTRAST
