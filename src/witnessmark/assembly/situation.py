"""A situation as a person of the trade writes it: a house, acts in order, and what must come of them."""

from __future__ import annotations

import tomllib
from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import UTC, date, datetime
from typing import Any

from witnessmark.assembly import messages
from witnessmark.assembly.noting import read_note
from witnessmark.journal.acts import BODIES, Body, Listed, Placed
from witnessmark.journal.entry import NO_PREVIOUS, Entry, Source
from witnessmark.journal.fold import fold
from witnessmark.journal.job import Job
from witnessmark.packs.model import Packs
from witnessmark.problems import Refusal

__all__ = ["EXPECTED", "Situation", "read_situation"]

_TOP = {
    "title": str, "rulebook": str, "rulebooks": list, "date": (str, date), "source": str, "house": dict, "act": list,
    "expect": dict,
}  # fmt: skip
_HOUSE = {
    "year_built": int, "foundation": str, "fuels": list, "attached_garage": bool, "occupied": bool, "places": dict,
    "things": dict, "storeys": str,
}  # fmt: skip
#: What a situation can expect; each is checked only where it is given.
EXPECTED = {
    **dict.fromkeys(("met", "excused", "open", "not_asked", "still_on", "look_again", "put_back", "make_sure", "write_up",
                     "findings", "statements", "observed", "summary"), list),
    **dict.fromkeys(("readings", "departures", "deadline"), dict), "name_it": int, "code_claims": int, "at": str,
}  # fmt: skip
_IN_WORDS = {
    str: "text in quotes",
    list: "a list of texts",
    dict: "a table",
    int: "a whole number",
    bool: "true or false",
}
_ACTS = {cls: key for key, cls in BODIES.items()}
_REFERRING = frozenset({"of", "again", "rests_on", "speaks_of"})


@dataclass(frozen=True, slots=True)
class Situation:
    """A situation read: the job, the entries, the laws it is held against, the moment of judging, what must come out."""

    path: str
    title: str
    source: str
    job: Job
    rulebooks: tuple[str, ...]
    entries: tuple[Entry, ...]
    at: datetime
    expect: Mapping[str, Any] = field(default_factory=dict)


class _Writer:
    """Writes entries in order; ids are the acts' own names, or counted."""

    def __init__(self, path: str, day: str) -> None:
        self.path, self.day = path, day
        self.entries: list[Entry] = []

    def add(
        self,
        body: Body,
        at: str,
        place: str | None,
        component: str | None,
        *,
        name: str = "",
        media: tuple[str, ...] = (),
    ) -> None:
        act, v = _ACTS[type(body)]
        n = len(self.entries) + 1
        self.entries.append(
            Entry(
                id=name or f"a{n:03}",
                job="situation",
                by="inspector",
                device="desk",
                n=n,
                prev=NO_PREVIOUS,
                at=at,
                logged=at,
                act=act,
                v=v,
                body=body,
                place=place,
                component=component,
                media=media,
                source=Source(),
                draft=False,
                hash=f"{n:064x}",
            )
        )

    def moment(self, clock: object, where: str) -> str:
        try:
            return datetime.fromisoformat(f"{self.day}T{clock}").replace(tzinfo=UTC).isoformat()
        except ValueError:
            raise Refusal(
                messages.BAD_SITUATION.at(where, f"at is {clock!r}; write the time of day, such as 09:10")
            ) from None


def _said(value: object) -> str:
    if isinstance(value, bool):
        return "yes" if value else "no"
    return ",".join(map(str, value)) if isinstance(value, list) else str(value)


def _known(table: Mapping[str, object], allowed: Mapping[str, Any], where: str) -> None:
    """Refuse a key that is not *allowed*, or whose value is of another shape."""
    for key, value in table.items():
        if key not in allowed:
            raise Refusal(messages.BAD_SITUATION.at(where, f"{key!r}; allowed: {', '.join(sorted(allowed))}"))
        shape = allowed[key]
        fits = type(value) is shape if shape in {int, bool} else isinstance(value, shape)
        if fits and shape is list and key != "act":
            fits = all(isinstance(one, str) for one in value)  # type: ignore[attr-defined]  # a list, looked at just above
        if fits and key in {"places", "things", "readings", "deadline"}:
            fits = all(isinstance(one, str | date | bool) for one in value.values())  # type: ignore[attr-defined]  # a table
        if not fits:
            raise Refusal(
                messages.BAD_SITUATION.at(where, f"{key} is {value!r:.60}; write {_IN_WORDS.get(shape, 'a date')}")
            )


def _house(writer: _Writer, house: Mapping[str, Any], packs: Packs, where: str) -> None:
    start = writer.moment("00:00", where)
    places: Mapping[str, str] = house.get("places", {})
    for place, sort in places.items():
        if sort not in packs.sorts:
            raise Refusal(messages.BAD_SITUATION.at(where, f"no sort of place {sort!r}"))
        writer.add(Placed(place, sort), start, place, None, name=f"place.{place}")
    for thing, words in house.get("things", {}).items():
        kind, _, place = (part.strip() for part in str(words).partition(" at "))
        if kind not in packs.kinds or (place and place not in places):
            raise Refusal(
                messages.BAD_SITUATION.at(where, f"{thing} is {words!r}: no kind {kind!r}, or no place {place!r}")
            )
        writer.add(Listed(kind, packs.kinds[kind].name), start, place or None, thing, name=f"thing.{thing}")


#: Fields of an act that name rows of the packs, and the table that has them.
_NAMES = {
    "condition": "conditions",
    "kind": "kinds",
    "measure": "measures",
    "reason": "reasons",
    "procedure": "procedures",
}


def _act(writer: _Writer, row: object, number: int, packs: Packs) -> None:
    where = f"{writer.path}: [[act]] number {number}"
    if not isinstance(row, dict) or not all(isinstance(row.get(key, ""), str) for key in ("place", "thing", "name")):
        raise Refusal(messages.BAD_SITUATION.at(where, "write a table, with place, thing and name as text"))
    fields: dict[str, Any] = dict(row)
    act, at = fields.pop("act", None), writer.moment(fields.pop("at", "00:00"), where)
    place, component, name = fields.pop("place", None), fields.pop("thing", None), fields.pop("name", "")
    media = tuple(map(str, fields.pop("media", ())))
    if not isinstance(act, str):
        raise Refusal(messages.BAD_SITUATION.at(where, "act is missing"))
    for name_of, table in _NAMES.items():
        if name_of in fields and str(fields[name_of]) not in getattr(packs, table):
            raise Refusal(messages.BAD_SITUATION.at(where, f"no {name_of} {fields[name_of]!r} in the packs"))
    record = fold(writer.entries) if _REFERRING & fields.keys() else fold(())
    try:
        note = read_note(act, {key: _said(value) for key, value in fields.items()}, record)
    except Refusal as refusal:
        raise Refusal(*(p.message.at(f"{where}, {p.where}", p.detail) for p in refusal.problems)) from None
    writer.add(note.body, at, place, component, name=name, media=media)


def _days(asked: Mapping[str, Any], where: str) -> None:
    for key, text in asked.items():
        try:
            known = key == "waived" or not text or bool(date.fromisoformat(str(text)))
        except ValueError:
            known = False
        if not known or key not in {"paid", "completed", "agreed", "due", "waived"}:
            raise Refusal(
                messages.BAD_SITUATION.at(where, f"{key} = {text!r}; write paid, completed, agreed, due as dates")
            )


def read_situation(path: str, text: bytes, packs: Packs) -> Situation:
    """The situation that a file states.

    Raises:
        Refusal: WM916 with the place and the right form; WM902 to WM906 for an act that cannot be.
    """
    try:
        table = tomllib.loads(text.decode("utf-8"))
    except (ValueError, RecursionError) as why:
        raise Refusal(messages.BAD_SITUATION.at(path, str(why))) from None
    _known(table, _TOP, path)
    house, expect, day = table.get("house", {}), table.get("expect", {}), str(table.get("date", ""))
    _known(house, _HOUSE, f"{path}: [house]")
    _known(expect, EXPECTED, f"{path}: [expect]")
    try:
        date.fromisoformat(day)
    except ValueError:
        raise Refusal(messages.BAD_SITUATION.at(path, f"date is {day!r}; write it as 2026-05-04")) from None
    if not str(table.get("title", "")).strip() or not expect:
        raise Refusal(messages.BAD_SITUATION.at(path, "title and [expect] must be there"))
    rulebooks = tuple(table.get("rulebooks", [table["rulebook"]] if table.get("rulebook") else []))
    _days(expect.get("deadline", {}), f"{path}: [expect.deadline]")
    for name in rulebooks:
        if name not in packs.rulebooks:
            raise Refusal(messages.BAD_SITUATION.at(path, f"no rulebook {name!r}"))
    writer = _Writer(path, day)
    _house(writer, house, packs, f"{path}: [house]")
    for number, row in enumerate(table.get("act", []), 1):
        _act(writer, row, number, packs)
    job = Job(
        "situation", rulebook=rulebooks[0] if rulebooks else "", date=day, year_built=house.get("year_built"),
        foundation=house.get("foundation"), occupied=house.get("occupied"), fuels=tuple(house.get("fuels", ())),
        attached_garage=house.get("attached_garage"), storeys=house.get("storeys"),
    )  # fmt: skip
    last = expect.get("at") or (writer.entries[-1].at[11:19] if writer.entries else "00:00")
    at = datetime.fromisoformat(writer.moment(last, path))
    return Situation(
        path, str(table["title"]), str(table.get("source", "")), job, rulebooks, tuple(writer.entries), at, expect
    )
