"""What settles an earlier doubt: an answer, what was found since, what was measured or read off."""

from __future__ import annotations

from collections.abc import Sequence

from witnessmark.listening.doubts import cue_of_doubt
from witnessmark.listening.drafts import Draft
from witnessmark.listening.grammar import GRAMMAR
from witnessmark.listening.sense import is_wrong
from witnessmark.listening.statement import Statement
from witnessmark.listening.terms import members
from witnessmark.listening.words import root

__all__ = ["answers", "confirms", "found_out", "settled_by", "settles"]


def settles(st: Statement) -> bool:
    """Whether the statement decides what was in doubt."""
    return st.cue("doubts", "settled") is not None and cue_of_doubt(st) is None


_CONFIRMING = frozenset(
    {"yeah", "yep", "yes", "yup", "okay", "ok", "nope", "no", "indeed", "definitely", "sure", "alright", "actually"}
)


def answers(st: Statement) -> bool:
    """Whether a statement begins as an answer does ("yeah", "nope") and is sure."""
    return not _CONFIRMING.isdisjoint(st.norms[:2]) and cue_of_doubt(st) is None


def confirms(st: Statement, doubt: Draft) -> bool:
    """Whether an answer settles a doubt in its own words: "yeah, the flue is lined"."""
    small = members("clauses", "determiners") | members("clauses", "auxiliaries") | members("clauses", "subjects")
    named = {i for n, _ in st.mentions for i in range(n.start, n.end)}
    said = {root(w) for i, w in enumerate(st.norms) if i not in named and w not in small | _CONFIRMING and len(w) > 2}  # noqa: PLR2004 - "it"
    return bool(said & {root(w) for w in doubt.what.split()})


def settled_by(doubt: Draft, drafts: Sequence[Draft]) -> bool:
    """Whether what was measured or read off since answers a doubt: its year, or the number that was not sure."""
    for draft in drafts:
        if draft.component != doubt.component or not draft.sure or draft.act not in {"identified", "read"}:
            continue
        if draft.attribute in {"made", "age"} and (doubt.attribute in {"made", "age"} or _asks_age(doubt)):
            return True
        if draft.act == "read" and doubt.unit is not None and draft.unit == doubt.unit and doubt.attribute is None:
            return True
    return False


def _asks_age(doubt: Draft) -> bool:
    words = {root(w) for w in doubt.what.split()}
    return bool(words & {"age", "old", "year", "date", "original", "new"})


#: Seconds within which what was found out answers a doubt without naming its thing.
_SOON = 20.0
#: Words after "it is" that say what it is.
_PREDICATE = 3
#: Words that say nothing of what was in doubt.
_EMPTY = frozenset({"just", "only", "then", "that", "this", "they", "there", "here", "now", "really", "actually", "maybe", "probably",
                    "think", "guess", "might", "could", "know", "tell", "sure", "look", "looks", "thing", "said", "says", "what",
                    "one", "been", "with", "from", "somebody", "else", "right", "back", "like", "some", "into", "whether"})  # fmt: skip
_YES = frozenset({"yeah", "yep", "yes", "yup"})


def _content(words: Sequence[str]) -> set[str]:
    """The roots of the words that say something, "un-" left out."""
    small = GRAMMAR.determiners | GRAMMAR.aux | GRAMMAR.subjects | GRAMMAR.prepositions | _EMPTY
    return {root(w.removeprefix("un")) for w in words if w not in small and len(w) > 2}  # noqa: PLR2004 - "it"


def found_out(st: Statement, doubt: Draft) -> bool:
    """Whether a statement made soon after a doubt answers it: "yep, wet", "it's rot", "so just a bulb".

    What somebody else said is answered only by what was seen in its own words.
    """
    if cue_of_doubt(st) is not None or st.start - doubt.end > _SOON:
        return False
    same = not st.named or (st.thing is not None and st.thing.kind == doubt.kind)
    open_ = _content(doubt.what.split())
    at = st.opening()
    if "hearsay" in doubt.why:
        return same and {"none", "not", "no"} & set(st.norms) != set() and "see" in st.norms
    yes = st.norms[0] in _YES or st.norms[:2] == ["so", "yes"]
    if yes and same and (_content(st.norms) & open_ or any(is_wrong(w) for w in st.norms)):
        return True
    if st.norms[at : at + 2] not in (["it", "is"], ["that", "is"], ["they", "are"]) or "not" in st.norms:
        return False
    return bool(_content(st.norms[at + 2 : at + 2 + _PREDICATE]) & open_)
