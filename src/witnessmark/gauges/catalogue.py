"""Which gauges there are, and one of them evaluated by its name."""

from __future__ import annotations

import difflib
import importlib
from collections.abc import Mapping

from witnessmark.gauges.answer import Answer, Limit
from witnessmark.gauges.gauge import REGISTERED, Gauge
from witnessmark.gauges.messages import MISSING_INPUT, NO_SUCH_GAUGE, NO_SUCH_INPUT
from witnessmark.gauges.typed import typed
from witnessmark.problems import Refusal

__all__ = ["FAMILIES", "evaluate", "find", "gauges"]

#: The families, in the order in which they are listed, with what each is about.
FAMILIES = {
    "wood": "Moisture in wood and materials",
    "air": "Air, surfaces and mould",
    "infrared": "Infrared pictures",
    "water": "Water, waste and hot water",
    "fuel": "Fuel, combustion and moving air",
    "electrical": "Electrical",
    "building": "Building",
    "movement": "Movement of the house",
    "radon": "Radon",
    "age": "Age of parts",
    "sampling": "How many were looked at",
}


def gauges() -> dict[str, Gauge]:
    """Every gauge by name, family by family.

    >>> "wood-emc" in gauges()
    True
    """
    for family in FAMILIES:
        importlib.import_module(f"witnessmark.gauges.{family}")
    order = list(FAMILIES)
    return dict(sorted(REGISTERED.items(), key=lambda item: (order.index(item[1].family), item[0])))


def find(name: str) -> Gauge:
    """The gauge of this name; refuses a name that there is not (WM001).

    >>> find("wood-emc").family
    'wood'
    """
    known = gauges()
    if name not in known:
        near = difflib.get_close_matches(name, known, n=3, cutoff=0.5)
        raise Refusal(NO_SUCH_GAUGE.at(repr(name), f"did you mean {' or '.join(near)}?" if near else ""))
    return known[name]


def evaluate(name: str, given: Mapping[str, object], limit: Limit | None = None) -> Answer:
    """The answer of a gauge to inputs as typed (text) or as values, held against *limit* where one is given.

    Refuses unknown names (WM001, WM002), missing inputs (WM003) and what cannot be read.

    >>> str(evaluate("wood-emc", {"temperature": "70F", "humidity": "50%"}).value)[:4]
    '9.24'
    """
    one = find(name)
    inputs = {each.name: each for each in one.inputs}
    values: dict[str, object] = {}
    for key, value in given.items():
        plain = key.replace("-", "_")
        if plain not in inputs:
            near = difflib.get_close_matches(plain, inputs, n=1)
            meant = f"did you mean {near[0]}? " if near else ""
            raise Refusal(NO_SUCH_INPUT.at(f"{name}: {key!r}", f"{meant}it takes {', '.join(inputs)}"))
        values[plain] = typed(inputs[plain], value) if isinstance(value, str) else value
    for each in one.inputs:
        if not each.optional and each.name not in values:
            such = f", such as {each.name}={each.asked.example}" if each.asked.example else ""
            raise Refusal(MISSING_INPUT.at(f"{name}: {each.name}", each.asked.what + such))
    answer = one.function(**values)
    return answer if limit is None else answer.against(limit)
