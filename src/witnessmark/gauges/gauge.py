"""What makes a function a gauge: its name, sources, range, known error, and what it must never be used to claim."""

from __future__ import annotations

import functools
import inspect
import types
import typing
from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from decimal import Decimal
from typing import Annotated, Any, ParamSpec, get_args, get_origin

from witnessmark.gauges.answer import Answer, Outside, Source, Uncertainty
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.messages import CANNOT_BE, MISSING_INPUT, NOT_A_CHOICE, WRONG_DIMENSION
from witnessmark.problems import Refusal
from witnessmark.units import Quantity, as_difference, convert, dimension, say

__all__ = ["REGISTERED", "Gauge", "Input", "gauge", "of", "row_inputs"]

_P = ParamSpec("_P")


@dataclass(frozen=True, slots=True)
class Input:
    """One parameter of a gauge: its name, what is asked, its plain type, whether it may be left out, its default."""

    name: str
    asked: Asked
    type: Any
    many: bool
    optional: bool
    default: object = None


@dataclass(frozen=True, slots=True)
class Gauge:
    """A gauge: the function with what must be known about it.

    Attributes:
        name: as typed in the command ("wood-emc").
        family: the group it belongs to ("wood").
        title: what it answers, as a short phrase.
        function: called with keyword or positional arguments, gives an `Answer`.
        inputs: what it asks for, in order.
        unit, gives: unit and meaning of the value; unit empty where the answer is words.
        sources: formula, tables, limits.
        error: known error, in words.
        never: what the answer must never be used to claim.
        cautions: shown with every answer.
        example: inputs as typed, used in the help, the docs and the tests.
    """

    name: str
    family: str
    title: str
    function: Callable[..., Answer]
    inputs: tuple[Input, ...]
    unit: str
    gives: str
    sources: tuple[Source, ...]
    error: str
    never: str
    cautions: tuple[str, ...]
    example: Mapping[str, str]


#: Every gauge by name, filled as the families are imported; `catalogue.gauges` imports them all.
REGISTERED: dict[str, Gauge] = {}
_COLUMNS: dict[Any, tuple[Input, ...]] = {}


def of(function: Callable[..., Answer]) -> Gauge:
    """The description of a gauge function, as the decorator made it.

    >>> from witnessmark.gauges.wood import wood_emc
    >>> of(wood_emc).name
    'wood-emc'
    """
    return typing.cast("Gauge", function.__gauge__)  # type: ignore[attr-defined]  # set by the decorator below


def _inputs(function: Callable[..., Any]) -> tuple[Input, ...]:
    hints = typing.get_type_hints(function, include_extras=True)
    found = []
    for name, parameter in inspect.signature(function).parameters.items():
        found.append(_input(name, hints[name], parameter.default, optional=parameter.default is not parameter.empty))
    return tuple(found)


def _input(name: str, hint: object, default: object, *, optional: bool) -> Input:
    if get_origin(hint) is not Annotated:
        raise TypeError(f"{name} is not Annotated with what is asked")
    plain, asked = get_args(hint)[:2]
    if get_origin(plain) in {typing.Union, types.UnionType}:
        plain = next(one for one in get_args(plain) if one is not type(None))
    many = get_origin(plain) is tuple
    return Input(name, asked, get_args(plain)[0] if many else plain, many, optional, default if optional else None)


def row_inputs(row: Any) -> tuple[Input, ...]:  # noqa: ANN401 - any frozen dataclass
    """The columns of a row class: a frozen dataclass whose fields are ``Annotated[..., Asked(...)]``.

    >>> row_inputs(dataclass(frozen=True)(type("Empty", (), {"__annotations__": {}})))
    ()
    """
    if row not in _COLUMNS:
        hints, parameters = typing.get_type_hints(row, include_extras=True), inspect.signature(row).parameters
        _COLUMNS[row] = tuple(
            _input(name, hints[name], one.default, optional=one.default is not inspect.Parameter.empty)
            for name, one in parameters.items()
        )
    return _COLUMNS[row]


def _number(value: object) -> Decimal | None:
    if isinstance(value, Quantity):
        return value.value
    return Decimal(value) if isinstance(value, int | Decimal) and not isinstance(value, bool) else None


def _in_unit(value: object, asked: Asked, where: str) -> object:
    """The value in the unit that the formula works in."""
    if not isinstance(value, Quantity):
        return value
    want, have = dimension(asked.unit), dimension(value.unit)
    if want == "temperature difference" and have == "temperature":
        value = Quantity(value.value, as_difference(value.unit))
        have = want
    if want != have:
        example = f"; such as {where}={asked.example}" if asked.example else ""
        raise Refusal(WRONG_DIMENSION.at(where, f"{say(value)} is {have}, needed is {want}{example}"))
    return convert(value, asked.unit)


def _checked(one: Input, value: object, where: str, outside: list[Outside]) -> object:
    asked = one.asked
    value = _in_unit(value, asked, where)
    allowed = asked.choices or (get_args(one.type) if get_origin(one.type) is typing.Literal else ())
    if allowed and value not in allowed:
        raise Refusal(NOT_A_CHOICE.at(where, f"{value!r}; one of {', '.join(map(str, allowed))}"))
    if inspect.isclass(one.type) and hasattr(one.type, "__dataclass_fields__") and one.type is not Quantity:
        changed = {
            column.name: _checked(column, getattr(value, column.name), f"{where}.{column.name}", outside)
            for column in row_inputs(one.type)
            if getattr(value, column.name) is not None
        }
        return replace(value, **changed)  # type: ignore[type-var]  # a row is a dataclass, looked at just above
    number = _number(value)
    if number is None:
        return value
    unit = asked.unit or "1"
    if (
        not number.is_finite()
        or (asked.least is not None and number < Decimal(asked.least))
        or (asked.most is not None and number > Decimal(asked.most))
    ):
        bounds = " and ".join(
            f"{word} {say(Quantity(Decimal(bound), unit))}"
            for word, bound in (("at least", asked.least), ("at most", asked.most))
            if bound is not None
        )
        raise Refusal(CANNOT_BE.at(where, f"{number} {asked.unit}; {asked.what} can be {bounds or 'a finite number'}"))
    low = None if asked.lowest is None else Decimal(asked.lowest)
    high = None if asked.highest is None else Decimal(asked.highest)
    if (low is not None and number < low) or (high is not None and number > high):
        outside.append(Outside(where, Quantity(number, unit), low, high))
    return value


def gauge(
    *,
    name: str,
    family: str,
    title: str,
    gives: str,
    sources: tuple[Source, ...],
    error: str,
    never: str,
    example: Mapping[str, str],
    unit: str = "",
    cautions: tuple[str, ...] = (),
) -> Callable[[Callable[_P, Answer]], Callable[_P, Answer]]:
    """Make a function a gauge.

    Before the function runs, every quantity is converted to the unit it asks for, values that cannot exist are
    refused (WM006), and values beyond the valid range are noted. After it, the answer gets the gauge's name, and its
    sources, cautions and known error where the function set none of its own; what was noted joins ``outside_range``.

    >>> from witnessmark.gauges.wood import wood_emc
    >>> wood_emc.__gauge__.unit
    '%'
    """

    def made(function: Callable[_P, Answer]) -> Callable[_P, Answer]:
        inputs = _inputs(function)
        signature = inspect.signature(function)

        @functools.wraps(function)
        def measured(*args: _P.args, **kwargs: _P.kwargs) -> Answer:
            bound = signature.bind_partial(*args, **kwargs)
            outside: list[Outside] = []
            for one in inputs:
                given = bound.arguments.get(one.name)
                if given is None:
                    if not one.optional:
                        raise Refusal(MISSING_INPUT.at(f"{name}: {one.name}", one.asked.what))
                    continue
                if one.many:
                    items = typing.cast("tuple[object, ...]", given)
                    bound.arguments[one.name] = tuple(
                        _checked(one, item, f"{one.name}[{at}]", outside) for at, item in enumerate(items, 1)
                    )
                else:
                    bound.arguments[one.name] = _checked(one, given, one.name, outside)
            answer = function(*bound.args, **bound.kwargs)
            verdict = answer.verdict
            if outside and verdict is not None and verdict.outcome == "within":
                told = "not decided: an input lies outside the range of the source"
                verdict = replace(verdict, outcome="undecided", words=f"{verdict.words.rstrip('.')}; {told}")
            return replace(
                answer,
                gauge=name,
                verdict=verdict,
                unit=answer.unit or (unit if answer.value is not None else ""),
                sources=answer.sources or sources,
                cautions=(*answer.cautions, *(c for c in cautions if c not in answer.cautions)),
                uncertainty=answer.uncertainty or (Uncertainty(error) if error else None),
                outside_range=(*outside, *answer.outside_range),
            )

        described = Gauge(name, family, title, measured, inputs, unit, gives, sources, error, never, cautions, example)
        known = REGISTERED.get(name)
        if known is not None and inspect.unwrap(known.function).__code__.co_filename != function.__code__.co_filename:
            raise ValueError(f"two gauges are called {name}")
        REGISTERED[name] = described
        measured.__gauge__ = described  # type: ignore[attr-defined]  # read back by `of`
        return measured

    return made
