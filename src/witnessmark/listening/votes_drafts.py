"""What may be drafted where the rules are silent: from the vote, when it is sure enough."""

from __future__ import annotations

from collections.abc import Sequence

from witnessmark.listening.beside import Item
from witnessmark.listening.drafts import Draft
from witnessmark.listening.statement import Statement
from witnessmark.listening.votes import Vote, stored_weights, vote
from witnessmark.listening.votes_features import features

__all__ = ["before", "draft_of", "voted"]

#: How sure the vote must be before it drafts, found by leaving out one narration at a time: only what is never wrong more
#: often than the rules are. Of silent statements it called adverse or sound, fewer than one in three were.
_SURE = {"off": 0.65, "identified": 0.85}
#: The maker's name follows one of these.
_BEFORE_NAMES = frozenset({"is", "a", "an", "by", "'s"})
#: What is not stopped now: left so, to be stopped later, or found so.
_NOT_STOPPED = frozenset(
    {"will", "would", "later", "leaving", "leave", "left", "was", "were", "not", "never", "should", "if", "still"}
)


def before(items: Sequence[Item]) -> str | None:
    """What the statement before was, by its first draft."""
    if not items:
        return None
    last = items[-1]
    if last.mode is not None:
        return "talk" if last.mode == "small talk" else "aside"
    if not last.drafts:
        return "talk"
    return _label(last.drafts[0])


def _label(draft: Draft) -> str:
    if draft.act in {"ran", "stopped"}:
        return draft.left or "operated"
    if draft.act == "identified":
        return "identified" if draft.attribute in {"make", "model", "serial", "made"} else "described"
    return {"read": "measured", "skipped": "limited", "doubted": "doubt"}.get(draft.act, draft.condition or "talk")


def voted(st: Statement, items: Sequence[Item]) -> Vote:
    """The vote on a statement that follows *items*."""
    return vote(features(st, before(items)), stored_weights())


def draft_of(st: Statement, found: Vote) -> Draft | None:
    """The draft that a vote gives, when it is sure enough and gives any."""
    if found.share < _SURE.get(found.label, 2.0):
        return None
    why = f"vote {found.share:.2f}"
    if found.label == "identified":
        return _make(st, why)
    if _NOT_STOPPED & set(st.norms):
        return None
    return st.draft("stopped", st.said(st.opening()), why, left="off", leaves="off")


def _make(st: Statement, why: str) -> Draft | None:
    """The name at the end of "it's a …": the maker, where no number and no component is said there."""
    at = max((i for i, w in enumerate(st.norms[:-1]) if w in _BEFORE_NAMES), default=None)
    ends_named = bool(st.components) and st.components[-1].end == len(st.norms)
    if at is None or st.thing is None or st.quantities or ends_named:
        return None
    name = st.slice_text(at + 1)
    return st.draft("identified", f"make {name}", why, attribute="make", value=name)
