"""Readings held against the limits that apply to them, one row for each limit.

A limit applies when it was in force on the day of the visit, in the rulebook's jurisdiction, to this measure, kind
and part, and to the sort of place where it names any. A range is judged by its worse end. Numbers are compared as exact fractions after conversion; what does not
convert is never compared. *Must* means that law or code in force when the thing was built or altered asks for it;
everything else is a recommendation, and says so.
"""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction

from witnessmark.judging.built import year_of
from witnessmark.judging.model import JudgedReading
from witnessmark.judging.scene import Scene
from witnessmark.packs import criteria_for, is_must
from witnessmark.packs.model import Criterion
from witnessmark.problems import Refusal
from witnessmark.units import Quantity, as_difference, as_slope, dimension, exact, known, say
from witnessmark.units.names import printed
from witnessmark.views.readings import Reading, number

__all__ = ["cited", "judge_readings", "limit_of", "spoken"]

_OPS = {"<=": "at most", "<": "less than", ">=": "at least", ">": "more than", "between": "between"}


def limit_of(criterion: Criterion) -> str:
    """The limit in words: ``at most 120 °F``, ``between 34 in and 38 in``.

    The number stands as the pack states it where it is no decimal.
    """
    low = number(criterion.value)
    first = say(Quantity(low, criterion.unit)) if low is not None else f"{criterion.value} {criterion.unit}"
    if criterion.op != "between":
        return f"{_OPS.get(criterion.op, criterion.op)} {first}"
    high = number(criterion.high)
    return f"between {first} and {say(Quantity(high, criterion.unit)) if high is not None else criterion.high}"


def cited(criterion: Criterion) -> str:
    """Document, edition and section of a limit."""
    return ", ".join(filter(None, [criterion.document, criterion.edition, criterion.section]))


def spoken(reading: Reading) -> str:
    """A reading as it was read, in words: ``about 118 °F``, ``34 to 36 in``."""
    about = "about " if reading.body.about else ""
    if reading.low is None:
        return f"{reading.body.value!r} {printed(reading.body.unit)}".strip()
    if reading.high is None:
        return about + say(reading.low)
    return f"{about}{format(reading.low.value, 'f')} to {say(reading.high)}"


def _in_unit(quantity: Quantity, criterion: Criterion, *, difference: bool) -> Fraction:
    """The reading's number in the limit's unit; refuses what does not convert."""
    if difference:
        quantity = Quantity(quantity.value, as_difference(quantity.unit))
    slope = None
    if known(quantity.unit) and known(criterion.unit) and dimension(quantity.unit) == "plane angle":
        slope = as_slope(quantity) if dimension(criterion.unit) == "ratio" else None
    return exact(slope or quantity, as_difference(criterion.unit) if difference else criterion.unit)


def _within(value: Fraction, op: str, low: Decimal, high: Decimal | None) -> bool | None:
    if op == "<=":
        return value <= Fraction(low)
    if op == "<":
        return value < Fraction(low)
    if op == ">=":
        return value >= Fraction(low)
    if op == ">":
        return value > Fraction(low)
    if op == "between" and high is not None:
        return Fraction(low) <= value <= Fraction(high)
    return None


def _force(criterion: Criterion, year: int | None, *, must: bool) -> str:
    adopted = "by the law in force here" if criterion.jurisdiction else "where this document was adopted"
    if criterion.adopted:
        adopted += f" (here from {criterion.adopted})"
    if criterion.first_edition:
        adopted += f", first in {criterion.first_edition}"
    if must:
        return f"A must {adopted}."
    if criterion.force != "law":
        return "Recommended, not required."
    since = f"it is a must {adopted} for what was built or altered from {criterion.built_from}"
    if year is None:
        return f"When this was built is not known; {since}. Recommended today."
    return f"Not yet required when this was built ({year}); {since}. Recommended today."


def _verdict(reading: Reading, criterion: Criterion, *, difference: bool) -> tuple[str, str]:
    """``within``, ``beyond`` or ``cannot compare``, and why not where it cannot."""
    low, high = number(criterion.value), number(criterion.high)
    if low is None:
        return "cannot compare", "the limit is not a number"
    if reading.low is None or (reading.body.high and reading.high is None):
        return "cannot compare", "the reading is not a number"
    ends = [end for end in (reading.low, reading.high) if end is not None]
    try:
        results = [_within(_in_unit(end, criterion, difference=difference), criterion.op, low, high) for end in ends]
    except Refusal as refused:
        problem = refused.problems[0]
        unit = "the reading has no unit" if not reading.body.unit else problem.message.what
        return "cannot compare", unit + (f" ({problem.detail})" if problem.detail else "")
    if None in results:
        return "cannot compare", "the limit is not of a form that can be compared"
    return ("within" if all(results) else "beyond"), ""


def _judged(scene: Scene, reading: Reading, criterion: Criterion, year: int | None) -> JudgedReading:
    measure = scene.packs.measures.get(reading.body.measure)
    units = (criterion.unit, measure.unit if measure else "")
    difference = any(unit.endswith("{difference}") for unit in units)
    verdict, why = _verdict(reading, criterion, difference=difference)
    must = is_must(criterion, year)
    said, limit = spoken(reading), limit_of(criterion)
    force = _force(criterion, year, must=must)
    rule = f"{criterion.words.rstrip('.')} ({cited(criterion)})."
    if verdict == "cannot compare":
        words = f"{said} cannot be compared with the limit, {limit}: {why}. {rule}"
    else:
        worse = " (a range is judged by its worse end)" if reading.high is not None else ""
        words = f"{said} is {verdict} the limit, {limit}{worse}. {rule} {force}"
    return JudgedReading(reading.fact.id, verdict, words, criterion, must, force)


def _none(scene: Scene, reading: Reading) -> JudgedReading:
    measure = scene.packs.measures.get(reading.body.measure)
    name = measure.name if measure else reading.body.measure or "this reading"
    thing = scene.name_of(reading.fact)
    return JudgedReading(
        reading.fact.id,
        "no criterion",
        f"{spoken(reading)}: the packs hold no limit for {name}{f' at {thing}' if thing else ''} that was in force.",
    )


def judge_readings(scene: Scene) -> tuple[JudgedReading, ...]:
    """Every reading against every limit that applies to it, in the order they were read; musts first."""
    place = scene.rulebook.jurisdiction if scene.rulebook else None
    judged: list[JudgedReading] = []
    chosen: dict[tuple[str, str, str | None, int | None], tuple[Criterion, ...]] = {}
    years: dict[tuple[str | None, str, str | None], int | None] = {}
    for reading in scene.readings:
        built = (reading.fact.component, reading.kind, reading.body.part)
        if built not in years:
            years[built] = year_of(scene, reading.fact)
        year = years[built]
        key = (reading.body.measure, reading.kind, reading.body.part, year)
        if key not in chosen:
            measure, kind, part, _ = key
            chosen[key] = criteria_for(
                scene.packs, measure, kind or None, part, scene.date, jurisdiction=place, built_year=year
            )
        sort = scene.house.sort_of(reading.fact)
        rows = tuple(row for row in chosen[key] if not row.where or not sort or sort in row.where)
        judged += [_judged(scene, reading, row, year) for row in rows] if rows else [_none(scene, reading)]
    return tuple(judged)
