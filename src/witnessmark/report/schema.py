"""JSON Schema (2020-12) of ``report.json``, made from the rows of the letter so that it cannot drift from them."""

from __future__ import annotations

import dataclasses
import inspect
import json
import re
import types
import typing
from pathlib import Path
from typing import Any, Final

from witnessmark.report.data import FORMAT, NOT_DATA, VERSION
from witnessmark.report.letter import Letter

__all__ = ["SCHEMA_NAME", "report_schema"]

Schema = dict[str, Any]  # a JSON document: any value may stand in it

SCHEMA_NAME = f"report-v{VERSION}.schema.json"
_PLAIN: Final[dict[type, Schema]] = {
    str: {"type": "string"},
    int: {"type": "integer"},
    bool: {"type": "boolean"},
}


def _of(hint: object, known: dict[str, Schema]) -> Schema:
    if isinstance(hint, type) and hint in _PLAIN:
        return dict(_PLAIN[hint])
    if isinstance(hint, types.UnionType):
        return {"anyOf": [_of(one, known) for one in typing.get_args(hint)]}
    if hint is types.NoneType:
        return {"type": "null"}
    arguments = typing.get_args(hint)
    if typing.get_origin(hint) is tuple:
        if len(arguments) == 2 and arguments[1] is Ellipsis:  # noqa: PLR2004 - tuple of one sort
            return {"type": "array", "items": _of(arguments[0], known)}
        items = [_of(one, known) for one in arguments]
        return {"type": "array", "prefixItems": items, "minItems": len(items), "items": False}
    if isinstance(hint, type) and dataclasses.is_dataclass(hint):
        if hint.__name__ not in known:
            known[hint.__name__] = {}
            known[hint.__name__] = _row(hint, known)
        return {"$ref": f"#/$defs/{hint.__name__}"}
    raise TypeError(f"no schema for {hint!r}")


def _row(row: type, known: dict[str, Schema], skip: frozenset[str] = frozenset()) -> Schema:
    hints = typing.get_type_hints(row)
    names = [f.name for f in dataclasses.fields(row) if f.name not in skip and hints[f.name] is not Path]
    said = " ".join(re.sub(r"\s+", " ", (inspect.getdoc(row) or "").split("\n\n")[0]).split()).replace("``", "")
    return {
        "type": "object",
        "description": said,
        "properties": {name: _of(hints[name], known) for name in names},
        "required": names,
        "additionalProperties": False,
    }


def report_schema() -> bytes:
    """The schema as it is published."""
    known: dict[str, Schema] = {}
    whole = _row(Letter, known, NOT_DATA)
    whole["properties"] = {"format": {"const": FORMAT}, "version": {"const": VERSION}, **whole["properties"]}
    whole["required"] = ["format", "version", *whole["required"]]
    text = {
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        "title": "Witnessmark report as data",
        **whole,
        "$defs": dict(sorted(known.items())),
    }
    return (json.dumps(text, indent=1, ensure_ascii=False) + "\n").encode("utf-8")
