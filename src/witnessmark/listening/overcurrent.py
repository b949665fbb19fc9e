"""Is a breaker or fuse that is told with its wire, or with the most that a plate allows, too large?"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal

from witnessmark.gauges.electrical.calculating.ampacity_tables import small_conductor_cap
from witnessmark.listening.numerals import numeral
from witnessmark.listening.quantities import RATINGS, Quantity
from witnessmark.listening.statement import Statement

__all__ = ["Oversized", "ampere_told", "oversized"]

_SIZES = frozenset({"gauge", "wire", "awg", "copper", "aluminum", "conductor", "romex"})
_MOST = frozenset({"max", "maximum", "most", "allows", "allowed", "wants", "calls"})
#: What follows a rating that is said like a name: "a thirty on number twelve", "it's on a fifty".
_AFTER = frozenset(
    {"on", "with", "for", "and", "in", "feeding", "breaker", "fuse", "there", "so", "but", "though", "instead", "now"}
)
_SMALLEST = 15


@dataclass(frozen=True, slots=True)
class Oversized:
    """A rating in amperes that is larger than what stands beside it allows; ``over`` is one of the packs' ``LIMITS``."""

    amperes: Decimal
    allowed: Decimal
    over: str


def ampere_told(st: Statement, quantity: Quantity) -> bool:
    """Whether a bare number is a breaker's rating by the way it is said: "a thirty on number twelve", "it is on a fifty"."""
    if quantity.form != "bare" or quantity.value not in RATINGS or quantity.value < _SMALLEST or not quantity.start:
        return False
    after = st.norms[quantity.end : quantity.end + 1]
    if st.norms[quantity.start - 1] != "a" or (after and after[0] not in _AFTER):
        return False
    words = set(st.norms)
    on_a = st.norms[max(0, quantity.start - 2) : quantity.start] == ["on", "a"]
    return bool(words & {"slot", "breaker", "breakers", "fuse", "wire", "gauge", "amp", "panel", "number"}) or on_a


def _rating(st: Statement) -> Quantity | None:
    """The largest rating told in the statement."""
    told = [
        q
        for q in st.quantities
        if (q.unit == "A" and q.form == "quantity" and q.value in RATINGS) or ampere_told(st, q)
    ]
    return max(told, key=lambda q: q.value, default=None)


def _wire(st: Statement) -> str | None:
    """The size (AWG) of a small wire that is named: "number twelve wire", "fourteen gauge"."""
    for at, word in enumerate(st.norms):
        if word == "number" and at + 1 < len(st.norms):
            size = numeral(st.norms, at + 1)
            if size is not None and _is_small(size.value):
                return str(size.value)
        if word in _SIZES and at:
            for start in (at - 1, at - 2):
                size = numeral(st.norms, start) if start >= 0 else None
                if size is not None and size.end == at and _is_small(size.value):
                    return str(size.value)
    return None


def _is_small(size: Decimal) -> bool:
    """Whether a code limits the breaker of a copper wire of this size."""
    return small_conductor_cap(str(size), "copper") is not None


def oversized(st: Statement, before: Sequence[Statement] = ()) -> Oversized | None:
    """The rating in the statement that is too large for its wire, or above the most told in it or in those *before* it."""
    rating = _rating(st)
    if rating is None:
        return None
    wire = _wire(st)
    if wire is not None:
        allowed = small_conductor_cap(wire, "aluminum" if "aluminum" in st.norms else "copper")
        if allowed is not None and rating.value > allowed:
            return Oversized(rating.value, Decimal(allowed), "wire")
        return None
    said = [*before, st]
    if not ampere_told(st, rating) or not any(_MOST & set(one.norms) for one in said):
        return None
    limits = [
        q.value
        for one in said
        for q in one.quantities
        if q.value in RATINGS and q is not rating and q.unit in {"A", None}
    ]
    if limits and _SMALLEST <= limits[-1] < rating.value:
        return Oversized(rating.value, limits[-1], "plate")
    return None
