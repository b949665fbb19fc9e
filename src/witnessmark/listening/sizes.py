"""Does a number only say more of what was told just before: how large a fault is, how many were tried, to what it was set?"""

from __future__ import annotations

from decimal import Decimal

from witnessmark.listening.counts import told_count
from witnessmark.listening.drafts import Draft
from witnessmark.listening.statement import Statement
from witnessmark.listening.terms import members

__all__ = ["set_to", "tells_more", "times"]

#: Seconds from what was told to its size.
_WITHIN = 10.0
_LENGTHS = frozenset({"[in_i]", "[ft_i]", "[yd_i]", "[mil_i]", "[sft_i]", "[sin_i]", "cm", "mm", "m"})
#: How far a mark, a crack or a hole goes; without such a word a length may be a reading of its own ("wood's tight | two inches").
_SPREAD = frozenset({"across", "wide", "long", "diameter", "square", "around"})
#: Words beside a size, above the small words of the language.
_BESIDE = frozenset({"across", "wide", "long", "deep", "tall", "high", "thick", "looks", "look", "like", "around", "diameter", "square", "each",
                     "way", "maybe", "say", "about", "so", "call", "it", "is", "that", "there", "total", "gap", "size", "big",
                     "roughly", "give", "take", "at", "most", "or", "good", "least", "easy", "easily", "well", "yeah", "just", "steps"})  # fmt: skip


def times(st: Statement, old: Draft) -> Decimal | None:
    """How many were operated just before, where the statement only says that: "i tried | three of the eight"."""
    if old.value is not None or old.act != "ran" or st.start - old.start > _WITHIN or st.instruments:
        return None
    told = told_count(st)
    said = st.norms[: st.opening()] if told is None else [*st.norms[: told.start], *st.norms[told.end :]]
    small = members("clauses", "conjunctions") | {
        "all",
        "of",
        "the",
        "them",
        "em",
        "those",
        "these",
        "so",
        "yep",
        "yeah",
        "okay",
        "in",
    }
    named = {w for n, _ in st.mentions for w in st.norms[n.start : n.end]}
    if told is None or (told.number == 1 and told.whole is None) or not all(w in small or w in named for w in said):
        return None
    return Decimal(told.number)


#: Seconds from an act to what was set by it.
_SET = 6.0


def set_to(st: Statement, old: Draft) -> tuple[Decimal, str | None] | None:
    """To what that was set which was just operated: "putting the thermostat up | to eighty", "that's on bake at three fifty"."""
    if old.act not in {"ran", "stopped"} or old.value is not None or st.start - old.start > _SET:
        return None
    if st.named and st.thing is not None and st.thing.kind != old.kind:
        return None
    for q in st.quantities:
        before = st.norms[q.start - 1] if q.start else ""
        lead = st.norms[: max(0, q.start - 1)]
        if (
            q.form == "bare"
            and q.unit is None
            and before in {"to", "at", "for"}
            and q.value >= _DEGREES
            and len(lead) <= _LEAD
        ):
            if all(w in _SETTING or w in members("clauses", "prepositions") for w in lead):
                return q.value, None
        elif (
            q.unit == "[degF]"
            and before in {"to", "at", "for"}
            and len(lead) <= _LEAD
            and all(w in _SETTING for w in lead)
        ):
            return q.value, q.unit
    return None


#: A setting of a thermostat, an oven or a heater is no smaller, in degrees Fahrenheit; words before it.
_DEGREES, _LEAD = Decimal(40), 6
_SETTING = frozenset({"it", "is", "that", "and", "set", "on", "bake", "heat", "cool", "broil", "back", "up", "down", "i", "put", "so", "turned",
                      "from", "the", "high", "low", "medium", "auto", "wash", "went", "all", "way"})  # fmt: skip


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
