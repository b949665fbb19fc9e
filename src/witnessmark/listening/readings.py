"""What was measured, of what, in which unit?"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from decimal import Decimal

from witnessmark.listening.bare import is_warm, temperature_told
from witnessmark.listening.drafts import Draft
from witnessmark.listening.focus import Thing
from witnessmark.listening.quantities import Quantity
from witnessmark.listening.statement import Statement
from witnessmark.listening.unsaid import same_dimension, with_unit
from witnessmark.listening.words import root
from witnessmark.packs.model import Measure

__all__ = ["is_told", "measure_of", "read"]

_TIMES = frozenset({"min", "h", "s", "d", "wk", "mo", "a", "ms"})
_NEAR = 6
#: A reading said so many seconds after its statement began rests on the words around it alone, this many before it.
_LATE, _LEAD = 2.0, 4
#: Words before a bare number that is a reading.
_TOLD = frozenset({"is", "are", "was", "at", "says", "reads", "of", "about", "around", "only", "reading", "and", "got", "to", "a",
                   "s", "'s", "than", "shows", "measured", "measures", "like", "say", "showing", "read", "came", "get", "getting",
                   "just", "exactly", "almost", "maybe", "said", "pushing", "under", "over"})  # fmt: skip
#: What a probe does in so far.
_INTO = frozenset({"goes", "went", "go", "sinks", "sank", "pokes", "poked", "pushes", "pushed", "slid", "slides"})
#: Words before a length over which something else was measured.
_OVER = frozenset({"first", "over", "every", "next", "last", "per", "each"})
_COMMON = frozenset({"height", "width", "of", "the", "air", "above", "between", "depth", "length", "in", "at", "level"})
#: Seconds within which a bare number is read like the one before it.
_INHERIT = 12.0
#: Seconds within which "one eighteen now" is the same measured again.
_AGAIN = 30.0
#: Words that show another of the same: "the bottom one is six and a quarter".
_ANOTHER = frozenset({"one", "other", "next", "bottom", "top", "here", "there", "rest", "left", "right", "second", "first",
                      "last", "third", "end", "another", "over", "side", "middle", "others", "upper", "lower"})  # fmt: skip


def measure_of(st: Statement, quantity: Quantity, thing: Thing | None) -> Measure | None:
    """The measure that a quantity is a reading of: one named near it and fitting its unit, else the likeliest of the kind."""
    lexicon = st.scene.lexicon
    row = lexicon.kind(thing.kind) if thing else None
    of_kind = row.measures if row else ()
    best: tuple[float, Measure] | None = None
    for start, end, ids in lexicon.measures.find(st.stems):
        for id_ in ids:
            measure = lexicon.packs.measures[id_]
            unit = quantity.unit
            if measure.unit == "1":
                continue  # how many there are describes, and is no reading
            if unit is not None and not same_dimension(unit, measure.unit):
                continue
            if unit is None and start == quantity.end and st.norms[start].endswith("s"):
                continue  # "three risers" counts them
            if unit is None and not _plausible(measure, quantity.value):
                continue
            others = [q for q in st.quantities if q is not quantity and q.start <= end and start <= q.end]
            if others and not (start <= quantity.end and quantity.start <= end):
                continue  # "wide" belongs to the number before it
            if unit is None and start < quantity.start and quantity.start - end > _NEAR:
                continue
            gap = start - quantity.end if start >= quantity.end else quantity.start - end
            if gap > _NEAR and id_ not in of_kind:
                continue
            weight = 4.0 - 0.3 * max(gap, 0) + (2.0 if id_ in of_kind else 0.0) + 0.5 * (end - start)
            weight += 0.5 if start >= quantity.end else 0.0
            if best is None or weight > best[0]:
                best = (weight, measure)
    if best is not None:
        return (
            best[1] if best[1].id in of_kind or thing is None else _own(best[1], thing, of_kind, lexicon.packs.measures)
        )
    by_first = _by_first_word(st, quantity, of_kind)
    if by_first is not None:
        return by_first
    return _of_kind(st, quantity, thing, of_kind)


def _own(named: Measure, thing: Thing, of_kind: tuple[str, ...], measures: Mapping[str, Measure]) -> Measure:
    """The measure of the kind that is the one named ("height") of the part spoken of ("handrail height"); else the one named."""
    said = {root(w) for w in thing.label.split()}
    own = [
        m for id_ in of_kind if (m := measures.get(id_)) is not None and m.name.split()[-1:] == named.name.split()[-1:]
    ]
    own = [m for m in own if {root(w) for w in m.name.split()[:-1]} & said]
    return own[0] if len(own) == 1 else named


def _by_first_word(st: Statement, quantity: Quantity, of_kind: tuple[str, ...]) -> Measure | None:
    """The measure whose name begins with the word that the number is said of ("supply was fifty five", "return 74")."""
    at = quantity.start - 1
    while at > 0 and st.norms[at] in {"is", "was", "about", "at", "around", "'s", "reads", "says", "a", "of"}:
        at -= 1
    after = quantity.end
    while after < len(st.norms) - 1 and st.norms[after] in {"in", "on", "at", "the"}:
        after += 1
    named = st.norms[at] if at >= 0 and at not in st.masked else ""
    follows = st.norms[after] if after > quantity.end + 1 else ""  # "seventy one on the return"
    rows = st.scene.lexicon.packs.measures
    found = [
        m for m in rows.values() if _plausible(m, quantity.value) and m.unit != "1"
        and (m.name.split()[0] == named or (m.name.split()[0] == follows and m.unit == "[degF]"))
    ]  # fmt: skip
    found = [m for m in found if quantity.unit is None or same_dimension(quantity.unit, m.unit)]
    return next((m for m in found if m.id in of_kind), found[0] if len(found) == 1 else None)


def _of_kind(st: Statement, quantity: Quantity, thing: Thing | None, of_kind: tuple[str, ...]) -> Measure | None:
    """A measure of the kind: the one whose name shares most words with the statement, else the only one that fits.

    Not by the unit alone where a part is spoken of: the height of a relief pipe is not that of the burner.
    """
    if thing is None:
        return None
    packs = st.scene.lexicon.packs
    said = {root(w) for w in st.norms}
    if quantity.unit is not None:
        row = packs.kinds.get(thing.kind or "")
        said |= {root(w) for w in thing.label.split()} - {
            root(w) for w in (row.name.split() if row and thing.part else ())
        }
    ranked: list[tuple[int, Measure]] = []
    for id_ in of_kind:
        measure = packs.measures.get(id_)
        if measure is None or (quantity.unit is not None and not same_dimension(quantity.unit, measure.unit)):
            continue
        shared = len({root(w) for w in measure.name.split() if w not in _COMMON} & said)
        if _plausible(measure, quantity.value):
            ranked.append((shared, measure))
    ranked.sort(key=lambda row: -row[0])
    if ranked and ranked[0][0] and (quantity.unit is not None or len(ranked) == 1 or ranked[1][0] < ranked[0][0]):
        return ranked[0][1]
    # "two inches of water" is no headroom
    of_something = st.norms[quantity.end : quantity.end + 1] == ["of"] and not any(
        quantity.end < n.start <= quantity.end + 3 for n, _ in st.mentions
    )
    if quantity.unit is not None and len(ranked) == 1 and thing.part is None and not of_something:
        return ranked[0][1]
    return None


def _plausible(measure: Measure, value: Decimal) -> bool:
    low = Decimal(measure.low) if measure.low else None
    high = Decimal(measure.high) if measure.high else None
    return (low is None or value >= low) and (high is None or value <= high)


def _is_reading(st: Statement, quantity: Quantity, index: int) -> bool:
    if quantity.form not in {"quantity", "bare"} or quantity.unit == "a":
        return False
    if any(v.start <= quantity.start < v.end for v in st.values):
        return False  # "three tab shingles"
    before = st.norms[quantity.start - 1] if quantity.start else ""
    if quantity.unit in _TIMES:
        return _timed(st) and "couple" not in st.norms[quantity.start : quantity.end]
    if quantity.unit is None:
        if st.norms[quantity.start : quantity.end] == ["one"] and quantity.end < len(st.norms):
            return False  # "one drains slow"
        if before in {"count", "counted"}:
            return False
        if st.norms[quantity.end : quantity.end + 1] in (["that"], ["which"], ["who"], ["more"]):
            return False  # "it is two that are leaning"
        if index and st.quantities[index - 1].end == quantity.start and st.quantities[index - 1].form == "bare":
            return True  # "sixteen | twenty six at the rotten one"
        return before in _TOLD or quantity.start <= st.opening() or quantity.end == len(st.norms)
    # "three inches in the first four feet": the second says over what length
    beside = any(q.end == quantity.start - 1 for q in st.quantities) and before in {"in", "over", "for", "within"}
    return not (index and (before in _OVER or beside))


def _timed(st: Statement) -> bool:
    """Whether a time is what was measured: a measure of time is named ("drained in two minutes")."""
    measures = st.scene.lexicon.packs.measures
    if {"took", "takes", "needed", "needs"} & set(st.norms):
        return True
    return any(measures[i].unit in _TIMES for _, _, ids in st.scene.lexicon.measures.find(st.stems) for i in ids)


def _is_size(st: Statement, quantity: Quantity) -> bool:
    """Whether a quantity belongs to the thing named after it ("half inch plywood", "a six inch duct"): no reading.

    A capacity or a rating said so ("a fifty gallon water heater") is one, for its measure is known.
    """
    return any(v.start == quantity.end for v in st.values) and quantity.unit in {"[in_i]", "[mil_i]"}


def _aside(st: Statement, quantity: Quantity, *, told: bool) -> bool:
    """Whether a quantity whose measure is not known only says where, how far or how old."""
    before = st.norms[quantity.start - 1] if quantity.start else ""
    into = before == "in" and quantity.start > 1 and st.norms[quantity.start - 2] in _INTO
    if quantity.unit == "a" or before in _OVER or (before in {"in", "within", "for", "from"} and not told and not into):
        return True
    after = st.norms[quantity.end : quantity.end + 1]
    if after == ["of"] and quantity.unit in {"[in_i]", "[ft_i]"}:
        return False  # "half an inch of it standing"
    if after == ["from"] and before in {"is", "are", "'s", "measures", "sits", "stands", "runs"}:
        return False  # "the flue is half an inch from that rafter"
    return after in (["from"], ["away"], ["ago"], ["of"], ["ladder"], ["section"], ["or"])


def _inherits(st: Statement, quantity: Quantity, previous: Draft | None) -> bool:
    """Whether a bare number is another reading like the one before it ("the bottom one is six", "out at fifty eight")."""
    if (
        previous is None
        or previous.unit is None
        or previous.unit in _TIMES
        or quantity.form != "bare"
        or not isinstance(previous.value, Decimal)
    ):
        return False
    again = st.norms[quantity.end : quantity.end + 1] == ["now"]
    if (
        st.start - previous.end > (_AGAIN if again else _INHERIT)
        or not previous.value / 3 < quantity.value < previous.value * 3
    ):
        return False
    if any(n.start == quantity.end for n, _ in st.mentions) or previous.unit == "1":
        return False  # "three breakers"
    told = quantity.start <= st.opening() or quantity.end == len(st.norms) or st.norms[quantity.start - 1] in _TOLD
    rest = len(st.norms) - (quantity.end - quantity.start)
    another = bool(_ANOTHER & set(st.norms)) or rest < 3 or again  # noqa: PLR2004 - "and sixty eight", "out at fifty eight"
    return told and another


def _inherited(st: Statement, quantity: Quantity, previous: Draft) -> Measure | None:
    """The measure of the reading before, where the component is the same."""
    if previous.measure is None or (st.named and st.thing is not None and previous.kind != st.thing.kind):
        return None
    measure = st.scene.lexicon.packs.measures.get(previous.measure)
    return measure if measure is not None and _plausible(measure, quantity.value) else None


def _alike(st: Statement, quantity: Quantity, last: Quantity) -> bool:
    """Whether a bare number is one more reading like one before it in the statement."""
    before = st.norms[quantity.start - 1] if quantity.start else ""
    counts = any(n.start == quantity.end for n, _ in st.mentions)
    return (
        (before in {"and", "at", "then", "to", "is"} or last.end == quantity.start)
        and not counts
        and last.value / 3 < quantity.value < last.value * 3
    )


def is_told(st: Statement, quantity: Quantity) -> bool:
    """Whether a quantity whose measure is unknown is told as a reading, not in passing."""
    before = st.norms[quantity.start - 1] if quantity.start else ""
    spoken = any(
        b < len(st.norms) and st.norms[b] in {"says", "reads", "shows", "read", "said"} for _, b in st.instruments
    )
    return spoken or before in {
        "is",
        "are",
        "was",
        "about",
        "reads",
        "says",
        "got",
        "measures",
        "'s",
        "shows",
        "measured",
    }


def read(st: Statement, previous: Draft | None = None, before: Statement | None = None) -> list[Draft]:
    """Drafts for what the statement measures. A bare number is a reading when a measure is named beside it.

    *previous* is the last reading, which a bare number takes after within 12 s; *before* the statement before this one,
    which may have named the instrument.
    """
    lexicon = st.scene.lexicon
    drafts: list[Draft] = []
    pair = next((q for q in st.quantities if q.form == "pair"), None)
    last_unit: str | None = None
    last: tuple[Quantity, Measure | None] | None = None
    for index, quantity in enumerate(st.quantities):
        quantity = with_unit(st, quantity, before)  # noqa: PLW2901 - the unit that goes without saying
        named = quantity.unit is None and quantity.form == "bare" and _by_first_word(st, quantity, ()) is not None
        named = named or (quantity.unit is None and temperature_told(st, quantity, st.thing) is not None)
        if not (named or _is_reading(st, quantity, index)) or (pair is not None and pair.start < quantity.start):
            continue
        measure = measure_of(st, quantity, st.thing)
        if measure is None and quantity.unit is None and is_warm(st):
            measure = temperature_told(st, quantity, st.thing)
        if measure is None and quantity.unit is None and previous is not None and _inherits(st, quantity, previous):
            measure = _inherited(st, quantity, previous)
            quantity = replace(quantity, unit=previous.unit, form="quantity")  # noqa: PLW2901 - as before
        told = is_told(st, quantity)
        if measure is None and quantity.unit is None and last is not None and _alike(st, quantity, last[0]):
            measure = last[1]  # "seven and a quarter on most and eight and a half at the bottom"
            quantity = replace(quantity, unit=last[0].unit, form="quantity")  # noqa: PLW2901 - as the one before
        if measure is None and quantity.unit is None:
            measure = temperature_told(st, quantity, st.thing)
        if measure is None and (quantity.unit is None or _is_size(st, quantity) or _aside(st, quantity, told=told)):
            continue
        unit = quantity.unit or last_unit or (measure.unit if measure else None)
        if unit is None:
            continue
        if measure is not None and measure.unit.endswith("{difference}"):
            unit = measure.unit
        elif unit == "[degF]" and _is_slope(st):
            unit = "deg"
        last_unit, last = unit, (replace(quantity, unit=unit), measure)
        thing = st.thing
        if measure is not None and not st.named:
            thing = _measured_of_late(st, measure) or thing
        if thing is None and measure is not None:
            thing = _carrier(st, measure)
        name = measure.name if measure is not None else None
        row = lexicon.kind(thing.kind) if thing else None
        capacity = measure is not None and row is not None and measure.id in row.describe
        made = st.draft(
            "read", f"{name or 'reading'} {_plain(quantity.value)}", f"reading{', told' if told else ''}: {measure.id if measure else unit}", thing,
            quantity=name, measure=measure.id if measure else None, value=quantity.value, unit=unit, high=quantity.high,
            about=quantity.about, attribute=measure.id if capacity and measure is not None else None,
        )  # fmt: skip
        drafts.append(_narrowed(st, made, quantity))
    return drafts


def _narrowed(st: Statement, draft: Draft, quantity: Quantity) -> Draft:
    """*draft* with the words around its number alone, when a long statement began much before it was said."""
    start = max(0, quantity.start - _LEAD)
    if st.words[st.tokens[start].first].start - st.start <= _LATE:
        return draft
    return replace(draft, **st.at(start, min(len(st.tokens), quantity.end + 2)))


def _measured_of_late(st: Statement, measure: Measure) -> Thing | None:
    """The component spoken of last that this is measured at, when what is in focus is not ("118 at the supply")."""
    scene = st.scene
    for thing in [scene.focus, *reversed(scene.recent)]:
        row = scene.lexicon.kind(thing.kind) if thing else None
        if thing is not None and row is not None and measure.id in row.measures:
            st.thing, st.named = (thing, True) if thing is not scene.focus else (thing, st.named)
            return thing
    return None


def _plain(value: Decimal) -> str:
    return format(value.normalize(), "f")


def _is_slope(st: Statement) -> bool:
    return bool({"slope", "pitch", "angle"} & set(st.norms))


def _carrier(st: Statement, measure: Measure) -> Thing | None:
    """The only kind that this is measured at, when nothing is in focus."""
    kinds = [k for k in st.scene.lexicon.packs.kinds.values() if measure.id in k.measures]
    if len(kinds) != 1:
        return None
    return Thing(kinds[0].id, None, kinds[0].name, st.scene.place, kinds[0].id)
