"""Why was it not done? Reasons that stand in the statement before or after a limitation."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from witnessmark.listening.drafts import Draft
from witnessmark.listening.limits import reason_in
from witnessmark.listening.statement import Statement
from witnessmark.listening.words import Word, quoted

__all__ = ["Item", "give_reasons"]


@dataclass(slots=True)
class Item:
    """A statement and what was drafted from it; ``mode`` when it was set aside."""

    statement: Statement
    drafts: list[Draft]
    mode: str | None = None


def give_reasons(items: Sequence[Item], spoken: Sequence[Word]) -> None:
    """Complete each limitation from the statements beside it, and take out what was drafted from its reason alone."""
    for index, item in enumerate(items):
        for place, draft in enumerate(item.drafts):
            if draft.act != "skipped":
                continue
            made = draft
            if index + 1 < len(items) and made.reason is None:
                made = _reasoned(made, items[index + 1], spoken, after=True)
            if index and made.reason is None:
                made = _reasoned(made, items[index - 1], spoken, after=False)
            if index:
                made = _measured(made, item, items[index - 1], spoken)
            item.drafts[place] = made


def _joined(draft: Draft, other: Statement, spoken: Sequence[Word]) -> Draft:
    first = min(draft.first, other.tokens[0].first)
    last = max(draft.last, other.tokens[-1].last)
    return replace(
        draft, start=min(draft.start, other.start), end=max(draft.end, other.end), first=first, last=last,
        text=quoted(spoken, first, last), what=f"{draft.what}: {other.said(other.opening())}",
    )  # fmt: skip


def _reasoned(draft: Draft, other: Item, spoken: Sequence[Word], *, after: bool) -> Draft:
    st = other.statement
    reason = reason_in(st) if other.mode is None else None
    about_other = st.named and st.thing is not None and st.thing.kind not in {draft.kind, None} and not after
    if reason is None or about_other or any(d.act not in {"saw", "identified"} for d in other.drafts):
        return draft
    other.drafts.clear()
    return replace(_joined(draft, st, spoken), reason=reason, why=f"{draft.why}; reason beside it")


def _measured(draft: Draft, item: Item, before: Item, spoken: Sequence[Word]) -> Draft:
    """A reading that is the reason: "it's 58 degrees out, so I'm not going to run it"."""
    so = item.statement.norms[:1] == ["so"]
    if draft.value is not None or not so or before.mode is not None or [d.act for d in before.drafts] != ["read"]:
        return draft
    reading = before.drafts.pop()
    return replace(_joined(draft, before.statement, spoken), value=reading.value, unit=reading.unit)
