"""Any inputs that a gauge states it can take, drawn from its own description."""

from __future__ import annotations

import datetime as dt
import typing
from decimal import Decimal
from typing import Any, get_args, get_origin

from hypothesis import strategies as st

from witnessmark.gauges import Gauge, Input
from witnessmark.gauges.gauge import row_inputs
from witnessmark.gauges.typed import is_row
from witnessmark.units import Quantity

__all__ = ["inputs_for"]


def _decimals(one: Input, places: int) -> st.SearchStrategy[Decimal]:
    asked = one.asked
    low = Decimal(asked.lowest or asked.least or "0")
    high = Decimal(asked.highest or asked.most or max(low * 2, low + 1000))
    return st.decimals(low, high, allow_nan=False, allow_infinity=False, places=places)


def _one(one: Input) -> st.SearchStrategy[Any]:
    if one.asked.choices:
        return st.sampled_from(one.asked.choices)
    if get_origin(one.type) is typing.Literal:
        return st.sampled_from(get_args(one.type))
    if is_row(one.type):
        return st.builds(one.type, **{each.name: _maybe(each) for each in row_inputs(one.type)})
    if one.type is Quantity:
        return _decimals(one, 4).map(lambda value: Quantity(value, one.asked.unit))
    if one.type is Decimal:
        return _decimals(one, 4)
    if one.type is int:
        return _decimals(one, 0).map(int)
    if one.type is bool:
        return st.booleans()
    if one.type is dt.date:
        return st.dates(dt.date(1900, 1, 1), dt.date(2100, 1, 1))
    if one.type is dt.datetime:
        return st.datetimes(dt.datetime(1990, 1, 1), dt.datetime(2100, 1, 1))  # noqa: DTZ001 - bounds only
    return st.text(max_size=12)


def _maybe(one: Input) -> st.SearchStrategy[Any]:
    drawn = st.lists(_one(one), min_size=1, max_size=12).map(tuple) if one.many else _one(one)
    return st.one_of(st.just(one.default), drawn) if one.optional else drawn


@st.composite
def inputs_for(draw: st.DrawFn, one: Gauge) -> dict[str, Any]:
    """Values for every input of the gauge, each inside its stated range."""
    return {each.name: draw(_maybe(each)) for each in one.inputs}
