"""Is the speaker unsure, and of what? Also what settles an earlier doubt."""

from __future__ import annotations

from typing import Any

from witnessmark.listening.drafts import Draft
from witnessmark.listening.modes import hearsay
from witnessmark.listening.statement import Statement
from witnessmark.listening.terms import cues

__all__ = ["doubted", "settles"]


#: Before a number these only mean "about".
_ABOUT = frozenset({"maybe", "i would say", "probably", "i guess", "i would guess", "likely", "i think", "guessing", "possibly",
                    "i am guessing", "i figure", "i would call", "perhaps", "most likely", "i want to say", "i think it",
                    "i think that", "i am thinking", "could be", "might be"})  # fmt: skip


def _cue(st: Statement) -> tuple[int, int, str] | None:
    never = [(a, b) for a, b, _ in cues("doubts", "never").find(st.norms)]
    for start, end, words in cues("doubts", "cues").find(st.norms):
        if words in _ABOUT and any(
            end <= q.start <= end + 2 and q.form != "year" and q.unit != "a" for q in st.quantities
        ):
            continue  # "maybe thirty inches" is about thirty
        if not any((a <= start and end <= b) or a <= start < b for a, b in never):
            return start, end, words
    return None


def doubted(st: Statement) -> Draft | None:
    """A draft for what the speaker is not sure of, or has only been told."""
    found = _cue(st)
    told = hearsay(st)
    if found is None and not told:
        return None
    year = next((q for q in st.quantities if q.form == "year"), None)
    age = next((q for q in st.quantities if q.unit == "a"), None)
    more: dict[str, Any] = {}
    if year is not None:
        more = {"attribute": "made", "value": year.value, "unit": "a"}
    elif age is not None:
        more = {"attribute": "age", "value": age.value, "unit": "a"}
    else:
        other = next((q for q in st.quantities if q.form == "quantity"), None)
        if other is not None:
            more = {"value": other.value, "unit": other.unit}
    what = ("said by somebody else: " if told else "") + st.said(st.opening())
    why = "hearsay" if told else f"doubt: '{found[2] if found else ''}'"
    return st.draft("doubted", what, why, condition="unclear", sure=False, **more)


def settles(st: Statement) -> bool:
    """Whether the statement decides what was in doubt."""
    return st.cue("doubts", "settled") is not None and _cue(st) is None
