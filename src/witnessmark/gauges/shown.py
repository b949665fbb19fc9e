"""An answer and a gauge as they are shown: lines of words for a person, plain data for a program."""

from __future__ import annotations

import typing
from decimal import Decimal
from typing import Any, get_args, get_origin

from witnessmark.gauges.answer import Also, Answer, Outside, Source
from witnessmark.gauges.gauge import Gauge, Input, row_inputs
from witnessmark.gauges.typed import is_row
from witnessmark.units import Quantity, as_difference, convert, dimension, parse_quantity, say
from witnessmark.units.names import printed

__all__ = ["answer_as_data", "answer_in_lines", "inputs_in_lines", "range_of", "short"]

#: Figures shown of a computed value; the data keep all that there are.
_FIGURES = 4


def short(value: Decimal, unit: str) -> str:
    """A number with its unit as a person reads it: computed digits cut to four figures, whole numbers kept.

    >>> short(Decimal("9.24185"), "%"), short(Decimal("1152"), "[sin_i]"), short(Decimal("0.375"), "[in_i]")
    ('9.242 %', '1152 sq in', '3/8 in')
    """
    places = max(0, _FIGURES - 1 - value.adjusted()) if value else 0
    exponent = value.as_tuple().exponent
    if isinstance(exponent, int) and -exponent > places and (value * 16) % 1:
        value = value.quantize(Decimal(1).scaleb(-places))
        value = value.quantize(Decimal(1)) if value == value.to_integral_value() else value.normalize()
    return say(Quantity(value, unit or "1"))


def range_of(one: Input) -> str:
    """The valid range of an input in words, in the unit of its example; empty where the source states none.

    >>> from witnessmark.gauges.wood import wood_emc
    >>> from witnessmark.gauges.gauge import of
    >>> range_of(of(wood_emc).inputs[0])
    '29.84 to 270.1 °F'
    """
    asked = one.asked
    low, high, unit = asked.lowest or asked.least, asked.highest or asked.most, asked.unit
    if one.type is Quantity and asked.example and not one.many:
        as_typed = parse_quantity(asked.example).unit
        as_typed = as_difference(as_typed) if dimension(unit) == "temperature difference" else as_typed
        if as_typed != unit and dimension(as_typed) == dimension(unit):
            low, high = (None if bound is None else _near(bound, unit, as_typed) for bound in (low, high))
            unit = as_typed
    return _range(low, high, unit)


def _near(bound: str, unit: str, wanted: str) -> str:
    return short(convert(Quantity(Decimal(bound), unit), wanted).value, "1")


def _range(low: object, high: object, unit: str) -> str:
    name = "" if unit in {"", "1"} else " " + printed(unit)
    if low is not None and high is not None:
        return f"{low} to {high}{name}"
    if low is not None:
        return f"from {low}{name}"
    return f"up to {high}{name}" if high is not None else ""


def _kind(one: Input) -> str:
    if one.asked.choices:
        return "one of " + ", ".join(map(str, one.asked.choices))
    if get_origin(one.type) is typing.Literal:
        return "one of " + ", ".join(map(str, get_args(one.type)))
    if is_row(one.type):
        columns = (column.name + ("?" if column.optional else "") for column in row_inputs(one.type))
        return "rows of " + ", ".join(columns)
    if one.type is bool:
        return "yes or no"
    if one.type in {int, Decimal}:
        return ("whole number" if one.type is int else "number") + (f", {range_of(one)}" if range_of(one) else "")
    if one.type is Quantity:
        name, limits = _called(one), range_of(one)
        kind = f"in {name} or another unit of its kind" if name else "a number"
        return f"{kind}; {limits}" if limits else kind
    return {"date": "date as 2024-05-31", "datetime": "time as 2024-05-31T08:00"}.get(one.type.__name__, "words")


def _called(one: Input) -> str:
    """The unit an input is read in, as its example writes it."""
    if one.asked.example and not one.many:
        return printed(parse_quantity(one.asked.example).unit).replace("each", "")
    return "" if one.asked.unit == "1" else printed(one.asked.unit)


def inputs_in_lines(inputs: tuple[Input, ...], *, indent: str = "") -> list[str]:
    """What a gauge takes, an input a paragraph: name, what it is, its form and range, how it is measured.

    >>> from witnessmark.gauges import find
    >>> inputs_in_lines(find("wood-emc").inputs)[0]
    'temperature: temperature of the air'
    """
    lines = []
    for one in inputs:
        left_out = " (may be left out)" if one.optional and one.default is None else ""
        given = f" ({_plain(one.default)} if left out)" if one.optional and one.default is not None else ""
        several = " (several, parted by commas)" if one.many and not is_row(one.type) else ""
        lines.append(f"{indent}{one.name}: {one.asked.what}{left_out}{given}")
        lines.append(f"{indent}    {_kind(one)}{several}")
        if one.asked.how:
            lines.append(f"{indent}    {one.asked.how}")
        if one.asked.example and not is_row(one.type):
            lines.append(f"{indent}    such as {one.name}={one.asked.example}")
        if is_row(one.type):
            lines += inputs_in_lines(row_inputs(one.type), indent=indent + "    ")
    return lines


def _plain(value: object) -> str:
    if isinstance(value, bool):
        return "yes" if value else "no"
    return say(value) if isinstance(value, Quantity) else str(value)


def _outside(one: Outside) -> str:
    limits = _range(one.lowest, one.highest, one.given.unit)
    return f"{one.what} is {say(one.given)}; its source covers {limits}. {one.why}".rstrip()


def answer_in_lines(answer: Answer, about: Gauge | None = None) -> list[str]:
    """The answer for a person: the number first, then everything that must be known before it is used.

    >>> from witnessmark.gauges import evaluate, find
    >>> answer_in_lines(evaluate("wood-emc", {"temperature": "70F", "humidity": "50%"}), find("wood-emc"))[0]
    '9.242 % moisture content of wood in balance with the air, in % of its oven-dry mass'
    """
    lines = []
    if answer.value is not None:
        lines.append(f"{short(answer.value, answer.unit)} {about.gives if about else ''}".rstrip())
        if answer.uncertainty:
            lines.append(f"  {answer.uncertainty.words}")
    if answer.words:
        lines += ([""] if lines else []) + [answer.words]
    lines += [f"Outside the range: {_outside(one)}" for one in answer.outside_range]
    if answer.verdict:
        lines += ["", f"Held against {answer.verdict.source}", f"  {answer.verdict.words} ({answer.verdict.outcome})"]
    if answer.also:
        lines += ["", *(f"  {one.what}: {_told(one)}" for one in answer.also)]
    if answer.steps:
        lines += ["", "Step by step", *(f"  {one.what}: {short(one.value, one.unit)}" for one in answer.steps)]
    if answer.table and answer.table.rows:
        lines += ["", *_rows(answer)]
    lines += ["", *(f"Source: {source}" for source in answer.sources)]
    if about and about.never:
        lines.append(f"Never use this to claim {about.never}.")
    lines += [f"Caution: {caution}" for caution in answer.cautions]
    return lines


def _told(one: Also) -> str:
    if isinstance(one.value, bool):
        return "yes" if one.value else "no"
    return short(one.value, one.unit) if isinstance(one.value, Decimal) else one.value


def _rows(answer: Answer) -> list[str]:
    table = answer.table
    if table is None:
        return []
    head = [f"{name}, {printed(unit)}" if unit not in {"", "1"} else name for name, unit in table.columns]
    cells = [[short(cell, "1") if isinstance(cell, Decimal) else cell for cell in row] for row in table.rows]
    wide = [max(len(row[at]) for row in [head, *cells]) for at in range(len(head))]
    return [
        "  " + "  ".join(cell.ljust(width) for cell, width in zip(row, wide, strict=True)).rstrip()
        for row in [head, *cells]
    ]


def _source(source: Source) -> dict[str, str]:
    return {
        "document": source.document, "edition": source.edition, "place": source.place, "basis": source.basis,
    }  # fmt: skip


def _data(value: object) -> Any:  # noqa: ANN401 - plain data of any shape
    """Decimals as numbers: twelve figures pass through a float unchanged."""
    return (
        float(value)
        if isinstance(value, Decimal) and value % 1
        else int(value)
        if isinstance(value, Decimal)
        else value
    )


def answer_as_data(answer: Answer, about: Gauge) -> dict[str, Any]:
    """The answer as plain data for ``--json``; numbers in the units named beside them.

    >>> from witnessmark.gauges import evaluate, find
    >>> answer_as_data(evaluate("wood-emc", {"temperature": "70F", "humidity": "97%"}), find("wood-emc"))["unit"]
    '%'
    """
    sure, verdict, table = answer.uncertainty, answer.verdict, answer.table
    return {
        "gauge": answer.gauge,
        "value": _data(answer.value),
        "unit": answer.unit,
        "words": answer.words,
        "uncertainty": sure and {"plus_minus": _data(sure.plus_minus), "words": sure.words},
        "outside_range": [
            {
                "what": one.what, "given": _data(one.given.value), "unit": one.given.unit, "lowest": _data(one.lowest),
                "highest": _data(one.highest), "why": one.why,
            }
            for one in answer.outside_range
        ],
        "verdict": verdict and {"outcome": verdict.outcome, "words": verdict.words, "source": _source(verdict.source)},
        "sources": [_source(source) for source in answer.sources],
        "never": about.never,
        "cautions": list(answer.cautions),
        "also": {one.name: {"value": _data(one.value), "unit": one.unit, "what": one.what} for one in answer.also},
        "steps": [{"what": one.what, "value": _data(one.value), "unit": one.unit} for one in answer.steps],
        "table": table and {
            "columns": [{"name": name, "unit": unit} for name, unit in table.columns],
            "rows": [[_data(cell) for cell in row] for row in table.rows],
        },
    }  # fmt: skip
