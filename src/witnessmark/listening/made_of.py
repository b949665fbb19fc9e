"""What is a thing made of, or of what manner, where the packs ask nothing about it: "driveway's asphalt", "ducts flex".

The words are of the language (``terms.toml``, ``identities.materials`` and ``manners``), not of any kind. What is
drafted is a description in the words used; nothing is judged.
"""

from __future__ import annotations

from collections.abc import Set as AbstractSet

from witnessmark.listening.drafts import Draft
from witnessmark.listening.grammar import GRAMMAR
from witnessmark.listening.statement import Statement
from witnessmark.listening.terms import cues, members

__all__ = ["made_of"]

#: A description in passing is short; in longer statements a material only says of what something else is told.
_MOST_WORDS = 9
_COPULAS = frozenset({"is", "are", "'s", "was", "were", "looks"})
#: After these a material says where something is or goes, not what it is.
_WHERE = frozenset({"on", "in", "at", "under", "behind", "by", "to", "near", "from", "through", "into", "over", "of", "with", "between",
                    "against", "without", "no", "not", "any", "than"})  # fmt: skip


def made_of(st: Statement, judging: AbstractSet[int] = frozenset()) -> list[Draft]:
    """One description, when the statement names or goes on about a thing and says little else than what it is of.

    *judging* are positions of words that judge: those describe nothing.
    """
    if st.thing is None or len(st.norms) > _MOST_WORDS or {"i", "we", "you"} & set(st.norms):
        return []
    for attribute in ("material", "type"):
        for start, _, text in _said(st, "materials" if attribute == "material" else "manners"):
            before = start
            while before and st.norms[before - 1] in members("clauses", "determiners"):
                before -= 1
            if before and st.norms[before - 1] in _WHERE:
                continue
            if st.subject is not None and st.subject.start <= start < st.subject.end:
                continue  # "concrete floor is …": a part of its name
            if start in judging:
                continue
            if not _predicate(st, start):
                continue
            return [
                st.draft(
                    "identified", f"{attribute}: {text}", f"{attribute} said", st.thing, attribute=attribute, value=text
                )
            ]
    return []


def _said(st: Statement, name: str) -> list[tuple[int, int, str]]:
    """The phrases of a list that are in the statement, longest first at each place."""
    found = []
    table = cues("identities", name)
    at = 0
    while at < len(st.norms):
        hit = table.at(st.norms, at)
        if hit is None:
            at += 1
            continue
        found.append((at, hit[0], " ".join(st.norms[at : hit[0]])))
        at = hit[0]
    return found


def _predicate(st: Statement, start: int) -> bool:
    """Whether what stands at *start* is said of the subject: after "is", after the name, or as all there is."""
    before = [w for w in st.norms[:start] if w not in members("clauses", "adverbs") | members("clauses", "determiners")]
    if any(w in _COPULAS for w in before):
        return True
    verbs = members("clauses", "auxiliaries") | members("clauses", "verbs") | GRAMMAR.doing
    return not any(w in verbs for w in st.norms)
