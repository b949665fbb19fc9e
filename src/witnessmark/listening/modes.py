"""How is a statement meant? As seen and done here and now, or as a what-if, teaching, a question, hearsay, chatter."""

from __future__ import annotations

from witnessmark.listening.statement import Statement
from witnessmark.listening.terms import cues, members

__all__ = ["hearsay", "is_requirement", "mode"]


def _supposes(st: Statement) -> bool:
    """Whether a condition opens the statement that does not merely ask ("not sure if")."""
    found = cues("scopes", "conditionals").first(st.norms)
    while found:
        start, end, words = found
        if words != "if":
            return words != "unless" or start == 0
        before = st.norms[start - 1] if start else ""
        if st.norms[start : end + 1] == ["if", "you"] and cues("scopes", "pointing").at(st.norms, start):
            return False
        if before not in members("scopes", "asking"):
            return start <= st.opening() + 1 or before == "what"
        found = cues("scopes", "conditionals").first(st.norms, end)
    return False


def _teaches(st: Statement) -> bool:
    pointing = cues("scopes", "pointing").first(st.norms)
    found = cues("scopes", "teaching").first(st.norms)
    while found:
        start, end, words = found
        if not (pointing and pointing[0] <= start < pointing[1]) and not (
            words == "normally" and st.norms[-1] == "normally"
        ):
            return True
        found = cues("scopes", "teaching").first(st.norms, end)
    generic = st.begins("scopes", "generic")
    return bool(generic) and any(w in {"will", "can", "tend", "usually", "always", "would", "are"} for w in st.norms)


def _asks(st: Statement) -> bool:
    if st.tokens[-1].question:
        return True
    return st.begins("scopes", "questions") is not None


def _chats(st: Statement) -> bool:
    return st.cue("scopes", "small_talk") is not None and not st.mentions and not st.quantities


def hearsay(st: Statement) -> bool:
    """Whether somebody else said it."""
    return st.cue("scopes", "hearsay") is not None


def is_requirement(st: Statement) -> bool:
    """Whether it says how something ought to be."""
    found = st.cue("scopes", "requirements")
    if found is None:
        return False
    return not set(st.norms[found[1] : found[1] + 2]) & {"good", "fine", "okay", "able", "fun", "nice"}


def _is_fragment(st: Statement) -> bool:
    """Whether a statement has no verb of its own and no "no" that would deny what was supposed."""
    verbs = members("clauses", "auxiliaries") | members("clauses", "verbs") | members("clauses", "plural_verbs")
    small = len(st.norms) <= 8  # noqa: PLR2004 - "melted plastic up on top here"
    return (
        small
        and st.opening() == 0
        and not set(st.norms) & (verbs | {"no", "i", "we"})
        and not st.quantities
        and not st.plates
    )


def mode(st: Statement, before: str | None) -> str | None:
    """``hypothetical``, ``teaching``, ``question``, ``small talk``, or None for a statement of what is.

    *before* is the mode of the statement just before it: what follows from a what-if is one too, as long as it says
    would, will, can, or speaks of "you".
    """
    if _supposes(st):
        return "hypothetical"
    at = st.opening()
    follows = before in {"hypothetical", "teaching"}
    if follows:
        first = st.norms[at : at + 4]
        verb = set(first) & {"would", "will", "could", "may", "might"}
        if (verb and set(first) & {"you", "it", "they", "there", "that", "this", "people", "well"}) or first[:1] in (
            ["you"], ["people"], ["most"]) or cues("scopes", "teaching").at(st.norms, at):  # fmt: skip
            return before
    if follows and not st.fresh and _is_fragment(st):
        return before
    if _teaches(st):
        return "teaching"
    if _asks(st):
        return "question"
    if _chats(st):
        return "small talk"
    would = [i for i, w in enumerate(st.norms) if w == "would"]
    if would and not st.cue("conditions", "adverse", max(0, would[0] - 1)) and not st.cue("doubts", "cues"):
        nearby = st.norms[max(0, would[0] - 2) : would[0]]
        if set(nearby) & {"you", "it", "they", "that", "this", "there"}:
            return "hypothetical"
    return None
