"""Inputs as they are typed: text to the value that a gauge takes."""

from __future__ import annotations

import csv
import datetime as dt
import inspect
import io
import typing
from decimal import Decimal, InvalidOperation
from typing import Any, get_args, get_origin

from witnessmark.gauges.gauge import Input, row_inputs
from witnessmark.gauges.messages import CANNOT_READ, MISSING_INPUT, NO_SUCH_INPUT
from witnessmark.problems import Refusal
from witnessmark.units import Quantity, parse_quantity

__all__ = ["is_row", "typed"]

_YES = {"yes": True, "true": True, "y": True, "no": False, "false": False, "n": False}


def typed(one: Input, text: str) -> object:
    """The value of one input from its text.

    Several values are parted by commas, semicolons or lines; rows are lines (or parts between semicolons) of cells
    parted by commas, with or without a first line of column names. Refuses what cannot be read (WM007), a number
    without its unit (WM102), a unit that is not known (WM103) and columns that do not exist (WM002).

    >>> from witnessmark.gauges import find
    >>> typed(find("wood-emc").inputs[0], "70F")
    Quantity(value=Decimal('70'), unit='[degF]')
    """
    if not one.many:
        return _one(one, text.strip(), one.name)
    if is_row(one.type):
        return _rows(one, text)
    parts = [part.strip() for line in text.replace(";", "\n").splitlines() for part in line.split(",")]
    return tuple(_one(one, part, f"{one.name}[{at}]") for at, part in enumerate(filter(None, parts), 1))


def is_row(kind: Any) -> bool:  # noqa: ANN401 - any annotation
    """Whether an input is a table of rows: its type is a dataclass of columns, not a quantity.

    >>> is_row(Quantity)
    False
    """
    return inspect.isclass(kind) and kind is not Quantity and hasattr(kind, "__dataclass_fields__")


def _rows(one: Input, text: str) -> tuple[object, ...]:
    columns = {column.name: column for column in row_inputs(one.type)}
    lines = [
        [cell.strip() for cell in line]
        for line in csv.reader(io.StringIO(text.replace(";", "\n")), skipinitialspace=True)
        if any(cell.strip() for cell in line)
    ]
    head = [cell.lower().replace(" ", "_") for cell in lines[0]] if lines else []
    named = any(cell in columns for cell in head)
    if named:
        for cell in head:
            if cell not in columns:
                raise Refusal(NO_SUCH_INPUT.at(f"{one.name}: column {cell!r}", f"columns are {', '.join(columns)}"))
        lines = lines[1:]
    order = head if named else list(columns)
    made = []
    for at, line in enumerate(lines, 1):
        where = f"{one.name}[{at}]"
        if len(line) > len(order):
            raise Refusal(CANNOT_READ.at(where, f"{len(line)} cells for the columns {', '.join(order)}"))
        cells = {name: cell for name, cell in zip(order, line, strict=False) if cell}
        for column in columns.values():
            if column.name not in cells and not column.optional:
                raise Refusal(MISSING_INPUT.at(f"{where}.{column.name}", column.asked.what))
        made.append(one.type(**{n: _one(columns[n], cell, f"{where}.{n}") for n, cell in cells.items()}))
    return tuple(made)


def _one(one: Input, text: str, where: str) -> object:
    kind, such = one.type, f"such as {one.name}={one.asked.example}" if one.asked.example else one.asked.what
    if kind is Quantity:
        try:
            return parse_quantity(text)
        except Refusal as refusal:
            problem = refusal.problems[0]
            raise Refusal(problem.message.at(f"{where}={text!r}", such)) from None
    if get_origin(kind) is typing.Literal:
        for choice in get_args(kind):
            if str(choice).lower() == text.lower():
                return choice
        return text
    try:
        if kind is bool:
            return _YES[text.lower()]
        if kind is int:
            return int(text)
        if kind is Decimal:
            return Decimal(text)
        if kind is dt.date:
            return dt.date.fromisoformat(text)
        if kind is dt.datetime:
            return dt.datetime.fromisoformat(text)
    except (KeyError, ValueError, InvalidOperation):
        raise Refusal(CANNOT_READ.at(f"{where}={text!r}", such)) from None
    return text
