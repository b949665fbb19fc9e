"""How many of how many does a statement speak of? "Two of the six", "both", "caps two split", "in three places"."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal

from witnessmark.journal.acts import Count
from witnessmark.listening.drafts import Draft
from witnessmark.listening.grammar import GRAMMAR
from witnessmark.listening.modes import is_requirement
from witnessmark.listening.quantities import Quantity
from witnessmark.listening.statement import Statement
from witnessmark.listening.terms import members

__all__ = ["PLACES", "Told", "counted", "number_of", "told_count"]

#: More are not counted in passing.
_MOST, _MOST_ALONE = 1000, 30
_BOTH = 2
#: What "both" is said of that is no pair of things.
_SIDES = frozenset({"sides", "ends", "directions", "ways", "hands", "sets", "floors", "sided", "of"})
#: Words that may open a statement before a number that stands for things gone unsaid: "the other two are fine", "i count four".
_BEFORE = frozenset({"the", "these", "those", "other", "all", "only", "got", "has", "have", "another", "about", "maybe", "i", "we", "count",
                     "counted", "there", "is", "are", "it", "see", "found", "just", "at", "least", "with", "tested", "tried", "and", "that",
                     "out", "of", "my", "ones", "any", "in"})  # fmt: skip
#: After such a number the thing that it numbers, or its size, would stand: none of it is a count.
_NOT_AFTER = frozenset({"inch", "foot", "amp", "point", "oclock", "way", "ways", "story", "stories", "wire", "prong", "pole", "tab", "car", "ply",
                        "thirty", "hundred", "thousand", "times", "years", "minutes", "days", "by", "over", "flush"})  # fmt: skip
#: Places that are counted: "in two spots".
PLACES = frozenset(
    {
        "spots",
        "places",
        "joints",
        "locations",
        "corners",
        "areas",
        "rooms",
        "spot",
        "place",
        "sections",
        "boards",
        "bays",
    }
)
#: Nouns that are no number of things.
_NO_THINGS = frozenset({"people", "folks", "kids", "guys", "times", "minutes", "hours", "days", "years", "weeks", "months", "reasons", "ways",
                        "steps", "questions", "dogs", "cats", "seconds", "bucks", "dollars", "guesses", "cars", "chances", "options"})  # fmt: skip


@dataclass(frozen=True, slots=True)
class Told:
    """A count told in words *start* to *end*: ``number`` of ``whole`` (None when that is not told)."""

    number: int
    whole: int | None
    start: int
    end: int


def _whole(quantity: Quantity) -> bool:
    return quantity.unit is None and quantity.value == quantity.value.to_integral_value() and 0 < quantity.value < _MOST


def told_count(st: Statement) -> Told | None:
    """The count that the statement tells of what it is about, or None."""
    for at, word in enumerate(st.norms):
        if word == "both" and (
            at + 1 == len(st.norms) or st.norms[at + 1] not in _SIDES or st.norms[at + 2 : at + 3] in (["them"], ["em"])
        ):
            return Told(_BOTH, _BOTH, at, at + 1)
        if word == "neither" and at <= st.opening():
            return Told(_BOTH, _BOTH, at, at + 1)
    numbers = [q for q in st.quantities if _whole(q) and q.form in {"bare", "count"}]
    for q in numbers:
        number = int(q.value)
        if q.form == "count":
            return Told(number, int(q.second) if q.second is not None else None, q.start, q.end)
        if st.norms[q.end : q.end + 1] and st.norms[q.end] in _NOT_AFTER:
            continue
        every = q.start > 0 and st.norms[q.start - 1] == "all"
        alone = q.start <= st.opening() or (number > 1 and (_opens(st, q) or _follows(st, q)))
        if _before_name(st, q) or (number <= _MOST_ALONE and alone):
            return Told(number, number if every else None, q.start, q.end)
    placed = [q for q in numbers if st.norms[q.end : q.end + 1] and st.norms[q.end] in PLACES]
    return Told(int(placed[0].value), None, placed[0].start, placed[0].end) if len(placed) == 1 else None


def _before_name(st: Statement, quantity: Quantity) -> bool:
    """Whether it counts what is named right after it: "two loose hangers"."""
    if st.subject is not None and quantity.end <= st.subject.start <= quantity.end + 2:
        between = set(st.norms[quantity.end : st.subject.start])
        return not between & (members("clauses", "prepositions") | {"the"})
    return any(
        n.start == quantity.end and (quantity.value == 1 or st.norms[n.end - 1].endswith("s")) for n, _ in st.mentions
    )


def _opens(st: Statement, quantity: Quantity) -> bool:
    """Whether it opens the statement and stands for things that go unsaid: "two stuffed with rags", "the other two"."""
    return all(w in _BEFORE or i < st.opening() for i, w in enumerate(st.norms[: quantity.start]))


def _follows(st: Statement, quantity: Quantity) -> bool:
    """Whether it stands right after the name of what it counts: "caps two split", "outlets four good"."""
    before = st.norms[quantity.start - 1] if quantity.start else ""
    if (
        before.endswith("s")
        and before not in GRAMMAR.verbs | GRAMMAR.aux
        and any(n.end == quantity.start - 1 for n, _ in st.mentions)
    ):
        return True  # "cabinet screws two missing"
    return any(
        n.end == quantity.start and (st.norms[n.end - 1].endswith("s") or n == st.subject) for n, _ in st.mentions
    )


def counted(st: Statement, *, adverse: bool = True) -> Count | None:
    """How many were looked at, of how many, and how many of them are wrong."""
    told = told_count(st)
    if told is None:
        return None
    checked = told.whole if adverse and told.whole else told.number
    return Count(checked, told.whole, told.number if adverse else 0)


def number_of(st: Statement) -> list[Draft]:
    """A description of how many there are, where that is what the statement tells: "there's four zone valves", "two flues"."""
    if st.thing is None or is_requirement(st):
        return []
    for q in st.quantities:
        if not _whole(q) or q.form not in {"bare", "count"} or q.second is not None or not _tells_number(st, q):
            continue
        value = Decimal(int(q.value))
        return [st.draft("identified", f"number: {value}", "number of them", attribute="number", value=value, unit="1")]
    return []


def _tells_number(st: Statement, q: Quantity) -> bool:
    """Whether the statement is about this number of things: little else is said."""
    after = st.norms[q.end :]
    if after in (
        ["total"],
        ["in", "all"],
        ["all", "told"],
        ["altogether"],
        ["of", "them"],
        ["i", "can", "see"],
        ["that", "i", "can", "see"],
    ):
        return q.form == "count" or q.value > 1 or after[-1:] == ["see"]
    lead = [
        w
        for w in st.norms[st.opening() : q.start]
        if w not in {"just", "only", "about", "the", "maybe", "a", "total", "of"}
    ]
    exists = lead[-2:] in (["there", "is"], ["there", "are"], ["i", "count"], ["it", "has"], ["i", "see"], ["i", "counted"]) or lead[-1:] in (
        ["got"], ["count"], ["has"], ["counted"]
    )  # fmt: skip
    if q.form == "count":
        # counted aloud; "there are four of them"
        after = after[1:] if after[:1] in (["them"], ["em"], ["those"], ["these"]) else after
        return after[:1] in ([], ["in"]) and (q.start <= st.opening() or (exists and q.value > 1))
    named = next((n for n, _ in st.mentions if q.end <= n.start <= q.end + 1), None)
    if named is not None:
        noun = named.end
    elif (
        after
        and after[0].isalpha()
        and after[0].endswith("s")
        and after[0] not in _NO_THINGS | GRAMMAR.aux | GRAMMAR.verbs
    ):
        noun = q.end + 1
    elif exists and not after and q.value > 1:
        return True  # "i count six"
    else:
        return q.value > 1 and _named_before(st, q) and _little(st.norms[q.end :])
    if q.value == 1 and not (exists and lead[:1] == ["there"]):
        return False
    if q.value > 1 and not st.norms[noun - 1].endswith("s"):
        return False
    rest = st.norms[noun:]
    return (exists or not lead) and _little(rest) if named is None else (exists or (not lead and _little(rest)))


def _named_before(st: Statement, q: Quantity) -> bool:
    """Whether the things are named in the plural right before the number: "star bolts three in a row", "downspouts front two"."""
    beside = members("clauses", "sides") | members("clauses", "locatives") | {"is", "are"}
    return any(
        st.norms[n.end - 1].endswith("s") and (n.end == q.start or (n.end + 1 == q.start and st.norms[n.end] in beside))
        for n, _ in st.mentions
    )


def _little(rest: list[str]) -> bool:
    """Whether the rest of the statement only says where."""
    if not rest:
        return True
    small = members("clauses", "prepositions") | members("clauses", "adverbs") | {"and", "both", "each"}
    return rest[0] in small and len(rest) < 6  # noqa: PLR2004 - "in a row at the second floor" is cut before
