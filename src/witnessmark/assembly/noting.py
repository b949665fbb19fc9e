"""A note as a person writes it, ``key=value``, to the body of an act."""

from __future__ import annotations

import dataclasses
import types
import typing
from collections.abc import Callable, Mapping
from dataclasses import dataclass

from witnessmark.assembly import messages
from witnessmark.journal.acts import ACTS, BODIES, Body, Count
from witnessmark.journal.fold import Record
from witnessmark.problems import Refusal
from witnessmark.units import parse_quantity

__all__ = ["ENTRY_FIELDS", "Note", "fields_of", "read_note"]

#: What every entry can say beside its act's own fields.
ENTRY_FIELDS = ("place", "component", "at", "media")

#: Written by other commands only: a replacement body, and a seal over everything.
_NOT_BY_HAND = {
    "amended": "use act=… with the new fields, see `note --fields amended`",
    "sealed": "use `report --issue`",
}

#: Fields that name other entries; short forms of ids are completed.
_REFERENCES = frozenset({"of", "again", "rests_on", "speaks_of"})


@dataclass(frozen=True, slots=True)
class Note:
    """An act's body and the entry's own fields, ready for a pen."""

    body: Body
    place: str | None = None
    component: str | None = None
    at: str | None = None
    media: tuple[str, ...] = ()


def _body_class(act: str, where: str) -> type[Body]:
    versions = sorted(v for name, v in BODIES if name == act)
    if not versions:
        raise Refusal(messages.NOT_AN_ACT.at(where, f"{act!r}; the acts are {', '.join(ACTS)}"))
    return BODIES[act, versions[-1]]


def fields_of(act: str) -> dict[str, str]:
    """The fields of an act and the form each takes, in words.

    Raises:
        Refusal: WM902 for an act that does not exist.
    """
    hints = typing.get_type_hints(_body_class(act, "note"))
    return {name: _form(hint) for name, hint in hints.items()}


def _plain(hint: object) -> object:
    """The hint without its ``None``."""
    if isinstance(hint, types.UnionType) or typing.get_origin(hint) is typing.Union:
        kept = [arg for arg in typing.get_args(hint) if arg is not types.NoneType]
        return kept[0] if len(kept) == 1 else hint
    return hint


def _form(hint: object) -> str:
    match _plain(hint):
        case t if t is bool:
            return "yes or no"
        case t if t is int:
            return "a whole number"
        case t if t is Count:
            return "checked/of/adverse, for example 6/6/2"
        case t if typing.get_origin(t) is tuple:
            return "words, separated by commas"
        case _:
            return "words"


def _value(hint: object, text: str, where: str) -> object:
    hint = _plain(hint)
    if hint is bool:
        if text.lower() in {"yes", "true", "1"}:
            return True
        if text.lower() in {"no", "false", "0"}:
            return False
        raise Refusal(messages.NOT_A_VALUE.at(where, f"{text!r}: write yes or no"))
    if hint is int:
        if not text.isdecimal():
            raise Refusal(messages.NOT_A_VALUE.at(where, f"{text!r}: write a whole number"))
        return int(text)
    if hint is Count:
        return _count(text, where)
    if typing.get_origin(hint) is tuple:
        return tuple(part.strip() for part in text.split(",") if part.strip())
    return text


def _count(text: str, where: str) -> Count:
    parts = text.split("/")
    if not 1 <= len(parts) <= 3 or not all(part.isdecimal() or part == "" for part in parts) or not parts[0]:  # noqa: PLR2004 - three numbers
        raise Refusal(messages.NOT_A_VALUE.at(where, f"{text!r}: write checked/of/adverse, for example 6/6/2"))
    numbers = [int(part) if part else None for part in parts] + [None, None]
    return Count(numbers[0] or 0, numbers[1], numbers[2] or 0)


def _reference(text: str, record: Record, where: str) -> str:
    if text in record.entries:
        return text
    found = [entry for entry in record.entries if len(text) >= 4 and (entry.endswith(text) or entry.startswith(text))]  # noqa: PLR2004 - shorter is a guess
    if len(found) == 1:
        return found[0]
    message = messages.UNSURE_ENTRY if found else messages.NO_SUCH_ENTRY
    raise Refusal(message.at(where, f"{text!r}" + (f" matches {len(found)}" if found else "")))


def _references(value: object, record: Record, where: str) -> object:
    if isinstance(value, tuple):
        return tuple(_reference(part, record, where) for part in value)
    return _reference(value, record, where) if isinstance(value, str) else value


def read_note(act: str, said: Mapping[str, str], record: Record) -> Note:
    """The note that *said* spells out for an act, with the entries it names looked up in the record.

    ``read`` takes ``value=118F`` for value and unit together; ``accepted`` takes ``of=all`` for every open draft.

    Raises:
        Refusal: WM902 to WM906, or a number of the units, naming the field and the form it takes.
    """
    where = f"note {act}"
    if act in _NOT_BY_HAND and "body" in said:
        raise Refusal(messages.NOT_A_FIELD.at(where, _NOT_BY_HAND[act]))
    if act == "sealed":
        raise Refusal(messages.NOT_AN_ACT.at(where, _NOT_BY_HAND[act]))
    if act == "amended":
        return _amended(said, record)
    cls = _body_class(act, where)
    hints = typing.get_type_hints(cls)
    own: dict[str, str] = {}
    fields: dict[str, object] = {}
    for key, text in said.items():
        if key in ENTRY_FIELDS:
            own[key] = text
        elif key in hints:
            if key == "of" and text == "all" and act == "accepted":
                fields[key] = tuple(fact.id for fact in record.drafts)
                continue
            value = _value(hints[key], text, f"{where} {key}")
            fields[key] = _references(value, record, f"{where} {key}") if key in _REFERENCES else value
        else:
            allowed = ", ".join([*hints, *ENTRY_FIELDS])
            raise Refusal(messages.NOT_A_FIELD.at(f"{where} {key}", f"its fields are {allowed}"))
    if act == "read" and "value" in said and "unit" not in said:
        quantity = parse_quantity(said["value"])
        fields |= {"value": str(quantity.value), "unit": quantity.unit}
    make: Callable[..., Body] = cls
    return _note(make(**fields), own)


def _note(body: Body, own: Mapping[str, str]) -> Note:
    media = tuple(part.strip() for part in own.get("media", "").split(",") if part.strip())
    return Note(body, own.get("place"), own.get("component"), own.get("at"), media)


def _amended(said: Mapping[str, str], record: Record) -> Note:
    """``of=ID why=… field=…``: the entry as it now holds, with the given fields changed."""
    from witnessmark.journal.acts import Amended

    where = "note amended"
    if "of" not in said or "why" not in said:
        raise Refusal(messages.NOT_A_FIELD.at(where, "it needs of=ID and why=…, then the fields that change"))
    target = _reference(said["of"], record, f"{where} of")
    fact = next((f for f in (*record.facts, *record.drafts) if target in (f.id, *f.amended_by)), None)
    if fact is None:
        raise Refusal(messages.NO_SUCH_ENTRY.at(f"{where} of", f"{said['of']!r} is not an entry that holds"))
    changed = {k: v for k, v in said.items() if k not in {"of", "why"}}
    new = read_note(fact.act, changed, record)
    own_keys = {key for key in changed if key not in ENTRY_FIELDS} | ({"unit"} if "value" in changed else set())
    values = {key: getattr(new.body, key) for key in own_keys if hasattr(new.body, key)}
    body = dataclasses.replace(fact.body, **values)
    place = new.place if "place" in said else fact.place
    component = new.component if "component" in said else fact.component
    return Note(Amended(fact.id, said["why"], fact.act, fact.v, body, place, component, new.at), place, component)
