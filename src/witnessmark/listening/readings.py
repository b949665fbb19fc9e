"""What was measured, of what, in which unit?"""

from __future__ import annotations

from decimal import Decimal

from witnessmark.listening.drafts import Draft
from witnessmark.listening.focus import Thing
from witnessmark.listening.quantities import Quantity
from witnessmark.listening.statement import Statement
from witnessmark.packs.model import Measure
from witnessmark.problems import Refusal
from witnessmark.units import dimension

__all__ = ["measure_of", "read"]

_TIMES = frozenset({"min", "h", "s", "d", "wk", "mo", "a", "ms"})
_NEAR = 6


def _same_dimension(one: str, other: str) -> bool:
    if one.removesuffix("{difference}") == other.removesuffix("{difference}"):
        return True
    try:
        return dimension(one) == dimension(other)
    except Refusal:
        return False


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
            if unit is not None and not _same_dimension(unit, measure.unit):
                continue
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
        return best[1]
    if quantity.unit is None:
        return None
    fitting = [
        m for id_ in of_kind if (m := lexicon.packs.measures.get(id_)) and _same_dimension(quantity.unit, m.unit)
    ]
    plausible = [m for m in fitting if _plausible(m, quantity.value)]
    return (plausible or fitting or [None])[0]


def _plausible(measure: Measure, value: Decimal) -> bool:
    low = Decimal(measure.low) if measure.low else None
    high = Decimal(measure.high) if measure.high else None
    return (low is None or value >= low) and (high is None or value <= high)


def _is_reading(st: Statement, quantity: Quantity, index: int) -> bool:
    if quantity.form not in {"quantity", "bare"} or quantity.unit in _TIMES:
        return False
    before = st.norms[quantity.start - 1] if quantity.start else ""
    if quantity.unit is None:
        return before in {"is", "are", "was", "at", "says", "reads", "of", "about", "around", "only", "reading", "and", "got",
                          "to", "a", "s", "'s", "than", "shows", "measured", "measures", "like", ""}  # fmt: skip
    # "three inches in the first four feet": the second says over what length
    return not (index and before in {"first", "over", "every", "next", "last", "per"})


def read(st: Statement) -> list[Draft]:
    """Drafts for what the statement measures. A bare number is a reading when a measure is named beside it."""
    lexicon = st.scene.lexicon
    drafts: list[Draft] = []
    if any(q.form == "pair" for q in st.quantities):
        return drafts
    last_unit: str | None = None
    for index, quantity in enumerate(st.quantities):
        if not _is_reading(st, quantity, index):
            continue
        measure = measure_of(st, quantity, st.thing)
        if measure is None and quantity.unit is None:
            continue
        unit = quantity.unit or last_unit or (measure.unit if measure else None)
        if unit is None:
            continue
        if measure is not None and measure.unit.endswith("{difference}"):
            unit = measure.unit
        elif unit == "[degF]" and _is_slope(st):
            unit = "deg"
        last_unit = unit
        thing = st.thing
        if thing is None and measure is not None:
            thing = _carrier(st, measure)
        name = measure.name if measure is not None else None
        row = lexicon.kind(thing.kind) if thing else None
        capacity = measure is not None and row is not None and measure.id in row.describe
        drafts.append(
            st.draft(
                "read", f"{name or 'reading'} {_plain(quantity.value)}", f"reading: {measure.id if measure else unit}", thing,
                quantity=name, measure=measure.id if measure else None, value=quantity.value, unit=unit, high=quantity.high,
                about=quantity.about, attribute=measure.id if capacity and measure is not None else None,
            )
        )  # fmt: skip
    return drafts


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
