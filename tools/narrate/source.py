"""Reads a written walk-through: one statement a line, with the records that it should give.

The form of a source, line by line (blank lines and lines with ``#`` say nothing):

``> words``
    a statement, as it is said;
``= kind | component | what | value | unit | state | flags``
    a record that the statement above gives; trailing fields may be left out. ``kind`` may be ``defect/doubt``: the first
    is meant, the others count too. ``state`` is ``running`` or ``off``. Flags: ``left`` (still running at the end),
    ``open`` (a doubt that nothing settles);
``~ words``
    teaching, a requirement or a what-if: whatever is drafted from inside is false;
``- words``
    talk that gives nothing;
``x words``
    a statement that is taken back later: a record of it is false;
``...``
    a pause of some seconds.

In the words ``[[right words|wrong words]]`` are words that the recogniser gets wrong: ``[[gfci|gee f see eye]]``.
Each line is a statement of its own: where one ends and the next begins is what a boundary of clauses means.
"""

from __future__ import annotations

import re
from dataclasses import dataclass, field
from decimal import Decimal
from pathlib import Path
from typing import Any

__all__ = ["KINDS", "Said", "WrongSourceError", "read_source"]

KINDS = ("defect", "fine", "operated", "measured", "identified", "described", "limited", "doubt")
_SORTS = {">": "said", "~": "hypothetical", "-": "talk", "x": "taken back"}
_WRONG = re.compile(r"\[\[([^|\]]+)\|([^|\]]+)\]\]")
_FIELDS = 7


class WrongSourceError(Exception):
    """A line of a source that cannot be read."""


@dataclass(frozen=True)
class Said:
    """One line that was said.

    ``sort`` is said, hypothetical, talk or taken back; ``words`` is what the recogniser made of it; ``wrong`` pairs right
    and wrong words; ``records`` are the records expected, without times; ``after`` is whether a pause stands before it.
    """

    sort: str
    words: str
    wrong: tuple[tuple[str, str], ...] = ()
    records: tuple[dict[str, Any], ...] = ()
    paused: bool = field(default=False)


def _number(text: str) -> int | float | str | None:
    if not text:
        return None
    try:
        exact = Decimal(text)
    except ArithmeticError:
        return text
    return int(exact) if exact == exact.to_integral_value() else float(exact)


def _record(text: str, where: str) -> dict[str, Any]:
    fields = [f.strip() for f in text.split("|")]
    if not 3 <= len(fields) <= _FIELDS:
        raise WrongSourceError(f"{where}: a record is kind | component | what | value | unit | state | flags")
    fields += [""] * (_FIELDS - len(fields))
    kinds, component, what, value, unit, state, flags = fields
    first, *others = kinds.split("/")
    for kind in (first, *others):
        if kind not in KINDS:
            raise WrongSourceError(f"{where}: {kind!r} is no kind of record; they are {', '.join(KINDS)}")
    if state not in {"", "running", "off"}:
        raise WrongSourceError(f"{where}: the state after is running or off, not {state!r}")
    for flag in flags.split():
        if flag not in {"left", "open"}:
            raise WrongSourceError(f"{where}: a flag is left or open, not {flag!r}")
    if not component or not what:
        raise WrongSourceError(f"{where}: the record names no component, or not what about it")
    row: dict[str, Any] = {
        "kind": first,
        "component": component,
        "what": what,
        "value": _number(value),
        "unit": unit or None,
        "state_after": state or None,
    }
    if others:
        row["kind_also_ok"] = others
    if flags:
        row["flags"] = flags.split()
    return row


def read_source(path: Path) -> list[Said]:
    """The lines of a source in order.

    Raises:
        WrongSourceError: with file and line, for what is not in the form above.
    """
    said: list[Said] = []
    paused = False
    for number, line in enumerate(path.read_text(encoding="utf-8").splitlines(), 1):
        text = line.strip()
        where = f"{path.name}, line {number}"
        if not text or text.startswith("#"):
            continue
        if text == "...":
            paused = True
        elif text[0] == "=":
            if not said or said[-1].sort != "said":
                raise WrongSourceError(f"{where}: a record without a statement (>) above it")
            last = said[-1]
            said[-1] = Said(last.sort, last.words, last.wrong, (*last.records, _record(text[1:], where)), last.paused)
        elif text[0] in _SORTS and text[1:2] == " ":
            words = text[2:].strip()
            wrong = tuple((right.strip(), bad.strip()) for right, bad in _WRONG.findall(words))
            heard = _WRONG.sub(lambda m: m.group(2), words).lower()
            heard = re.sub(r"[^a-z0-9'\s]", " ", heard)
            said.append(Said(_SORTS[text[0]], " ".join(heard.split()), wrong, (), paused))
            paused = False
        else:
            raise WrongSourceError(f"{where}: a line begins with >, =, ~, -, x or is three dots")
    return said
