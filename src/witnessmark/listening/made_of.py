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
#: A name with little beside it; words from "is" to what it is.
_FEW_WORDS, _NEAR = 5, 4
#: A material and what is of it are at least so many words.
_TOGETHER_WITH = 2
#: What begins with these was spoken of before.
_KNOWN = frozenset({"the", "that", "this", "those", "these", "no", "one", "another"})
_COPULAS = frozenset({"is", "are", "'s", "was", "were", "looks"})
#: After these a material says where something is or goes, not what it is.
_WHERE = frozenset({"on", "in", "at", "under", "behind", "by", "to", "near", "from", "through", "into", "over", "of", "with", "between",
                    "against", "without", "no", "not", "any", "than"})  # fmt: skip


def made_of(st: Statement, judging: AbstractSet[int] = frozenset()) -> list[Draft]:
    """One description, when the statement names or goes on about a thing and says little else than what it is of.

    *judging* are positions of words that judge: those describe nothing.
    """
    if st.thing is None or {"i", "we", "you"} & set(st.norms):
        return []
    long = len(st.norms) > _MOST_WORDS
    for attribute in ("material", "type"):
        for start, _, text in _said(st, "materials" if attribute == "material" else "manners"):
            before = start
            while before and st.norms[before - 1] in members("clauses", "determiners"):
                before -= 1
            if before and st.norms[before - 1] in _WHERE:
                continue
            if (
                st.subject is not None
                and st.subject.start <= start < st.subject.end
                and (judging or not _all_there_is(st, start))
            ):
                continue  # "concrete floor is …": a part of its name
            if long and not _just_after_copula(st, start):
                continue
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


def _all_there_is(st: Statement, start: int) -> bool:
    """Whether a material in a name is what is told: "they're block walls", "overhead drop", "black iron all through"."""
    if any(w in _COPULAS for w in st.norms[:start]):
        return True
    if len(st.norms) - st.opening() < _TOGETHER_WITH or st.norms[st.opening()] in _KNOWN:
        return False  # "cartridge", "the black plastic": a name and no more
    verbs = members("clauses", "auxiliaries") | members("clauses", "verbs") | GRAMMAR.doing
    return len(st.norms) <= _FEW_WORDS and not any(
        w in verbs or w in _WHERE - {"on", "in", "at", "of"} for w in st.norms
    )


def _just_after_copula(st: Statement, start: int) -> bool:
    """Whether "is" stands so near before that the rest of a longer statement does not matter: "is the old steel kind up …"."""
    return any(w in _COPULAS for w in st.norms[max(0, start - _NEAR) : start])


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
