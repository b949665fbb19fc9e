"""What repeats or turns round the judgement before it: "same on the south side", "this one doesn't"."""

from __future__ import annotations

from collections.abc import Sequence

from witnessmark.listening.beside import Item
from witnessmark.listening.drafts import Draft
from witnessmark.listening.statement import Statement
from witnessmark.listening.terms import cues, members

__all__ = ["echoed"]

#: How many statements back the judgement stands.
_BACK = 3
_LONGEST = 9
_ENDS = frozenset({"not", "never"})
_OTHER = frozenset({"one", "other", "others", "two", "three", "rest", "these", "those", "this", "that", "here", "it", "they", "left",
                    "right", "front", "back", "both"})  # fmt: skip


def echoed(st: Statement, items: Sequence[Item]) -> list[Draft]:
    """Drafts of a statement that says only that it is the same, or the opposite, of what was judged just before."""
    if len(st.norms) > _LONGEST:
        return []
    before = next(
        (d for i in reversed(items[-_BACK:]) if i.mode is None for d in reversed(i.drafts) if _judges(d)), None
    )
    if before is None:
        return []
    same = cues("conditions", "same").first(st.norms)
    if same is not None and not members("scopes", "negations") & set(st.norms):
        return [_like(st, before, before.condition, f"'{same[2]}'")]
    opening = st.norms[st.opening()] if st.norms else ""
    elliptic = st.norms[-1] in _ENDS and st.norms[-2:-1] and st.norms[-2] in members("clauses", "auxiliaries")
    if elliptic and (set(st.norms) & _OTHER or st.named) and opening not in {"i", "we", "you"}:
        other = "sound" if before.condition == "adverse" else "adverse"
        return [_like(st, before, other, f"'{st.norms[-2]} not', after {before.why}")]
    return []


def _judges(draft: Draft) -> bool:
    return draft.condition in {"adverse", "sound"}


def _like(st: Statement, before: Draft, condition: str | None, why: str) -> Draft:
    thing = st.thing
    same = thing is not None and thing.kind == before.kind
    return st.draft(
        "saw",
        before.what if condition == before.condition else f"not {before.what}",
        why,
        thing,
        condition=condition,
        condition_id=before.condition_id if condition == "adverse" and condition == before.condition and same else None,
    )
