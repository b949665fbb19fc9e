"""What is said to be there, and nothing more: "there's one drain", "closet has one louvered door", "sump in the corner"."""

from __future__ import annotations

from witnessmark.listening.drafts import Draft
from witnessmark.listening.grammar import GRAMMAR
from witnessmark.listening.statement import Statement
from witnessmark.listening.terms import members

__all__ = ["present"]

_IS, _HAS = frozenset({"is", "are", "'s"}), frozenset({"has", "have", "got"})
#: Words between "there is" and the name.
_BETWEEN = frozenset({"another", "also", "just", "only", "got", "its", "your", "older", "newer", "old", "new", "second", "third", "other",
                      "more", "single", "double", "little", "big", "small", "main", "separate", "same"})  # fmt: skip
#: A statement of what is there is short.
_MOST_WORDS = 12


def present(st: Statement) -> list[Draft]:
    """One description, when the statement says that a thing is there, or has one, and says no more of it."""
    if st.thing is None or not st.named or st.subject is None or len(st.norms) > _MOST_WORDS:
        return []
    if {"i", "we", "you", "he", "she", "if", "no", "not", "never", "should", "would"} & set(st.norms):
        return []
    at = st.opening()
    opens = st.norms[at : at + 2]
    if len(opens) == 2 and opens[0] in {"there", "it", "they"} and opens[1] in _IS | _HAS:  # noqa: PLR2004 - "there is"
        start = at + 2
        if opens[0] != "there" and not set(st.norms[at + 1 : at + 4]) & _HAS:
            return []
    else:
        return []
    between = st.norms[start : st.subject.start]
    small = (
        members("clauses", "determiners")
        | members("clauses", "adjectives")
        | members("clauses", "quantifiers")
        | _BETWEEN
        | _HAS
    )
    if any(word not in small for word in between if not _counted(st, word)):
        return []
    rest = st.norms[st.subject.end :]
    if any(word in GRAMMAR.aux | GRAMMAR.verbs for word in rest):
        return []
    return [
        st.draft(
            "identified",
            f"present: {' '.join(st.norms[start:])}",
            "said to be there",
            attribute="presence",
            value="present",
        )
    ]


def _counted(st: Statement, word: str) -> bool:
    return any(word in st.norms[q.start : q.end] for q in st.quantities)
