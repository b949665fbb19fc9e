"""JSON Schema (2020-12) of every act and version, made from the code so that it cannot drift from it.

Each schema describes one line of a journal whole: the fields of the entry and the body of one act. What a schema
cannot say (that the line is canonical, that its hash fits) its description says.
"""

from __future__ import annotations

import dataclasses
import inspect
import json
import re
import types
import typing
from collections.abc import Mapping
from typing import Any, Final

from witnessmark.journal.acts import BODIES, Amended
from witnessmark.journal.canonical import LARGEST_WHOLE
from witnessmark.journal.entry import SOURCES, Entry, Source
from witnessmark.journal.shapes import Field, shape_of

__all__ = ["schema_files", "schema_name", "schema_of"]

Schema = dict[str, Any]  # a JSON document: any value may stand in it

_HEX: Final[Schema] = {"type": "string", "pattern": "^[0-9a-f]{64}$"}
_TIME: Final[Schema] = {
    "type": "string",
    "format": "date-time",
    "pattern": "^(19|[2-9][0-9])[0-9]{2}-[0-9]{2}-[0-9]{2}T[0-9]{2}:[0-9]{2}:[0-9]{2}(\\.[0-9]{1,6})?"
    "(Z|[+-]([01][0-9]|2[0-3]):[0-5][0-9])$",
}
_NAME: Final[Schema] = {"type": "string", "minLength": 1}
_UUID: Final = "^[0-9a-f]{8}-[0-9a-f]{4}-%s[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$"
_COUNT: Final[Schema] = {"type": "integer", "minimum": 1, "maximum": LARGEST_WHOLE}

# What the fields of an entry allow beyond their type; the codec holds the same rules.
_ENTRY: Final[Mapping[str, Schema]] = {
    "id": {"type": "string", "pattern": _UUID % "7"},
    "job": {"type": "string", "pattern": _UUID % "[1-8]"},
    "by": _NAME,
    "device": _NAME,
    "n": _COUNT,
    "prev": _HEX,
    "at": _TIME,
    "logged": _TIME,
    "v": _COUNT,
    "place": _NAME,
    "component": _NAME,
    "media": {"type": "array", "minItems": 1, "items": _HEX},
    "source": {"$ref": "#/$defs/Source"},
    "draft": {"const": True},
    "hash": _HEX,
}


def schema_name(act: str, v: int) -> str:
    """The file name of the schema of an act and version."""
    return f"entry-{act}-v{v}.schema.json"


def schema_files() -> dict[str, bytes]:
    """Every schema as it is published, by its file name."""
    return {
        schema_name(act, v): (json.dumps(schema_of(act, v), indent=2, ensure_ascii=False) + "\n").encode()
        for act, v in BODIES
    }


def schema_of(act: str, v: int) -> Schema:
    """The JSON Schema of an entry with that act and version."""
    body = BODIES[act, v]
    definitions: dict[str, Schema] = {}
    _define(Source, definitions)
    _define(body, definitions)
    definitions["Source"]["properties"]["sort"] = {"enum": list(SOURCES), **_described(Source, "sort")}
    rules: dict[str, Schema] = {
        **_ENTRY, "act": {"const": act}, "v": {"const": v}, "body": {"$ref": f"#/$defs/{body.__name__}"}
    }  # fmt: skip
    properties: Schema = {}
    for field in dataclasses.fields(Entry):
        properties[field.name] = {**rules[field.name], **_described(Entry, field.name)}
    return {
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        "$id": f"urn:witnessmark:schema:entry:{act}:{v}",
        "title": f"Journal entry: {act}, version {v}",
        "description": f"{_summary(Entry)} A line is RFC 8785 canonical JSON; hash is the SHA-256 of the line without it.",
        "type": "object",
        "properties": properties,
        "required": [name for name in properties if name not in {"place", "component", "media", "draft"}],
        "additionalProperties": False,
        "$defs": dict(sorted(definitions.items())),
    }


def _define(cls: type[Any], definitions: dict[str, Schema]) -> None:
    """Add the schema of a record, and of the records in it."""
    if cls.__name__ in definitions:
        return
    definition: Schema = {"type": "object", "description": _summary(cls)}
    definitions[cls.__name__] = definition
    shape = shape_of(cls)
    definition["properties"] = {
        field.name: {**_of_field(field, definitions), **_described(cls, field.name)} for field in shape.fields
    }
    definition["required"] = [field.name for field in shape.fields if not field.silent]
    definition["additionalProperties"] = False
    if cls is Amended:
        _define_amended(definition, definitions)


def _define_amended(definition: Schema, definitions: dict[str, Schema]) -> None:
    """The body of an amendment is that of the act it states."""
    stated = [(act, v, cls) for (act, v), cls in BODIES.items() if cls is not Amended]
    for _, _, cls in stated:
        _define(cls, definitions)
    definition["properties"]["at"] = {**_TIME, **_described(Amended, "at")}
    definition["properties"]["v"] = dict(_COUNT)
    definition["properties"]["act"] = {"enum": [act for act, _, _ in stated]}
    definition["dependentRequired"] = {"body": ["act"]}
    definition["allOf"] = [
        {
            "if": {"properties": {"act": {"const": act}, "v": {"const": v}}, "required": ["act"]},
            "then": {"properties": {"body": {"$ref": f"#/$defs/{cls.__name__}"}}},
        }
        for act, v, cls in stated
    ]


def _of_field(field: Field, definitions: dict[str, Schema]) -> Schema:
    schema = _of_annotation(field.annotation, definitions)
    if not field.silent:
        return schema
    # A field that is written says something: its silent default cannot stand there.
    if field.default == "":
        return {**schema, "minLength": 1}
    if field.default == ():
        return {**schema, "minItems": 1}
    if field.default is False:
        return {"const": True}
    return schema


def _of_annotation(annotation: object, definitions: dict[str, Schema]) -> Schema:
    if annotation is str:
        return {"type": "string"}
    if annotation is int:
        return {"type": "integer", "minimum": 0, "maximum": LARGEST_WHOLE}
    if annotation is bool:
        return {"type": "boolean"}
    parts = [part for part in typing.get_args(annotation) if part is not types.NoneType and part is not Ellipsis]
    if typing.get_origin(annotation) is tuple:
        return {"type": "array", "items": _of_annotation(parts[0], definitions)}
    if len(parts) == 1:
        return _of_annotation(parts[0], definitions)
    if isinstance(annotation, type) and dataclasses.is_dataclass(annotation):
        _define(annotation, definitions)
        return {"$ref": f"#/$defs/{annotation.__name__}"}
    return {"type": "object"}


def _doc(cls: type[Any]) -> str:
    """The docstring with its margin taken away: newer releases of Python do so themselves, older ones do not."""
    return inspect.cleandoc(cls.__doc__ or "")


def _summary(cls: type[Any]) -> str:
    """The docstring up to its list of attributes, as running text."""
    text = _doc(cls).split("Attributes:")[0]
    return " ".join(text.replace("`", "").split())


_ATTRIBUTE: Final = re.compile(r"^ {4}(\w+(?:, \w+)*): (.*(?:\n {8}.*)*)", re.MULTILINE)


def _described(cls: type[Any], name: str) -> Schema:
    """The description of one field, where the docstring lists it."""
    for names, text in _ATTRIBUTE.findall(_doc(cls)):
        if name in names.split(", "):
            return {"description": " ".join(text.replace("`", "").split())}
    return {}
