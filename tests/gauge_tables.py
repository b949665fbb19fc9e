"""Published values and what the gauges make of them: reading the rows of tests/tables/*.json and checking one."""

from __future__ import annotations

import importlib
import json
from dataclasses import dataclass
from decimal import Decimal
from pathlib import Path
from typing import Any

from witnessmark.gauges import Answer, evaluate
from witnessmark.problems import Refusal
from witnessmark.units import Quantity, convert

__all__ = ["BASES", "Row", "check", "rows"]

TABLES = Path(__file__).resolve().parent / "tables"
BASES = ("seen", "seen in a copy", "calculated", "memory", "common practice, no source")


@dataclass(frozen=True)
class Row:
    """One check value: where it is published, what is asked of which gauge, what must come out, how closely."""

    file: str
    id: str
    source: dict[str, str]
    body: dict[str, Any]


def rows() -> list[Row]:
    """Every row of every table."""
    found = []
    for file in sorted(TABLES.glob("*.json")):
        table = json.loads(file.read_text(encoding="utf-8"))
        found += [
            Row(file.name, body["id"], {**table["source"], **body.get("source", {})}, body) for body in table["rows"]
        ]
    return found


def _number(value: object) -> Decimal:
    return value if isinstance(value, Decimal) else Decimal(str(value))


def _near(have: object, want: str, tolerance: str) -> bool:
    wanted = Decimal(want)
    share = tolerance.endswith("%")
    room = abs(wanted) * Decimal(tolerance[:-1]) / 100 if share else Decimal(tolerance)
    return abs(_number(have) - wanted) <= room


def _picked(answer: Answer, key: str, unit: str) -> object:
    if key == "value":
        assert answer.value is not None, "no value"
        return convert(Quantity(answer.value, answer.unit), unit).value if unit else answer.value
    if key == "outside":
        return sorted({one.what.split("[")[0] for one in answer.outside_range})
    if key == "verdict":
        return answer.verdict and answer.verdict.outcome
    if key == "words":
        return answer.words
    one = next(each for each in answer.also if each.name == key)
    if unit and one.unit and isinstance(one.value, Decimal):
        return convert(Quantity(one.value, one.unit), unit).value
    return one.value


def check(row: Row) -> None:
    """Assert that what the row asks comes out as published."""
    body = row.body
    tolerance = body.get("tolerance", "0")
    if "function" in body:
        module, name = body["function"].split(":")
        have: object = getattr(importlib.import_module(module), name)(**body["given"])
        for key, want in body["expect"].items():
            assert key == "value"
            good = (
                _near(have, want, tolerance)
                if isinstance(want, str) and isinstance(have, int | float | Decimal) and not isinstance(have, bool)
                else have == want
            )
            assert good, f"{row.id}: {have} is not {want} ± {tolerance}"
        return
    if "refused" in body:
        try:
            answer = evaluate(body["gauge"], body["given"])
        except Refusal as refusal:
            assert refusal.problems[0].number == body["refused"], str(refusal)  # noqa: PT017 - a row names the number
            return
        raise AssertionError(f"{row.id}: answered {answer.value} {answer.words}")
    answer = evaluate(body["gauge"], body["given"])
    for key, want in body.get("expect", {}).items():
        each = body.get("tolerances", {}).get(key, tolerance)
        unit = body.get("units", {}).get(key, body.get("unit", "") if key == "value" else "")
        have = _picked(answer, key, unit)
        if key == "words":
            assert want in str(have), f"{row.id}: {have!r} does not say {want!r}"
        elif isinstance(have, Decimal) and not isinstance(want, bool):
            assert _near(have, want, each), f"{row.id}: {key} {have} is not {want} ± {each}"
        else:
            assert have == want, f"{row.id}: {key} {have!r} is not {want!r}"
    for key, wrong in body.get("disagrees", {}).items():
        have = _picked(answer, key, body.get("unit", "") if key == "value" else "")
        agrees = _near(have, wrong, tolerance) if isinstance(have, Decimal) else have == wrong
        assert not agrees, f"{row.id}: {key} {have} agrees with a value known to be wrong or of another source"
