"""Does a number only say more of what was told just before: how large a fault is, how cold it was when nothing was run?"""

from __future__ import annotations

from decimal import Decimal

from witnessmark.listening.drafts import Draft
from witnessmark.listening.statement import Statement
from witnessmark.listening.terms import members

__all__ = ["tells_more"]

#: Seconds from what was told to its size.
_WITHIN = 10.0
_LENGTHS = frozenset({"[in_i]", "[ft_i]", "[yd_i]", "[mil_i]", "[sft_i]", "[sin_i]", "cm", "mm", "m"})
#: How far a mark, a crack or a hole goes; without such a word a length may be a reading of its own ("wood's tight | two inches").
_SPREAD = frozenset({"across", "wide", "long", "diameter", "square", "around"})
#: Words beside a size, above the small words of the language.
_BESIDE = frozenset({"across", "wide", "long", "deep", "tall", "high", "thick", "looks", "look", "like", "around", "diameter", "square", "each",
                     "way", "maybe", "say", "about", "so", "call", "it", "is", "that", "there", "total", "gap", "size", "big",
                     "roughly", "give", "take", "at", "most", "or", "good", "least", "easy", "easily", "well", "yeah", "just", "steps"})  # fmt: skip


def tells_more(st: Statement, new: Draft, old: Draft) -> bool:
    """Whether *new*, the only draft of the statement, is a number that belongs to *old*, which has none yet.

    "It has a stain | about three feet across": the size of the stain. "I won't run the heat | it's ninety one out":
    why it was not run.
    """
    if (
        new.act != "read"
        or old.value is not None
        or not isinstance(new.value, Decimal)
        or st.start - old.start > _WITHIN
    ):
        return False
    if old.act == "skipped":
        return new.measure == "outdoor-temperature"
    if (
        not _SPREAD & set(st.norms)
        or old.act != "saw"
        or old.condition != "adverse"
        or new.unit not in _LENGTHS
        or st.named
        or st.instruments
    ):
        return False
    small = (
        _BESIDE | members("clauses", "prepositions") | members("clauses", "adverbs") | members("clauses", "determiners")
    )
    named = {i for n, _ in st.mentions for i in range(n.start, n.end)}
    numbers = {i for q in st.quantities for i in range(q.start, q.end)}
    return all(w in small or i in numbers or i in named for i, w in enumerate(st.norms))
