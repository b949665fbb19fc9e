"""Entries that a person writes: one note, or a table of readings taken over whole."""

from __future__ import annotations

import csv
import io
from collections.abc import Mapping
from pathlib import Path

from witnessmark.assembly import messages
from witnessmark.assembly.jobs import OpenJob
from witnessmark.assembly.noting import Note, read_note
from witnessmark.journal.acts import Body, Listed, Placed, Read
from witnessmark.journal.entry import Entry, Source
from witnessmark.journal.messages import IN_THE_FUTURE
from witnessmark.journal.moment import instant
from witnessmark.journal.pen import Pen
from witnessmark.packs.model import Packs
from witnessmark.problems import Problem, Refusal
from witnessmark.stores.recording import record as record_entries
from witnessmark.stores.refusing import reading
from witnessmark.units import Quantity, convert, parse_quantity
from witnessmark.views import house

__all__ = ["note_entry", "note_readings"]

_NEEDED = ("at", "place", "component", "kind", "measure", "value", "unit")
_MAY = ("part", "spot", "instrument", "high")
_LARGEST_TABLE = 8 << 20


def note_entry(
    job: OpenJob, packs: Packs, act: str, said: Mapping[str, str], *, by: str | None = None, device: str = "desk"
) -> tuple[list[Entry], list[Problem]]:
    """Record one act; returns the entry and what is worth knowing about it.

    Raises:
        Refusal: numbers WM902 to WM906 and WM913; nothing is recorded then.
    """
    note = read_note(act, said, job.record())
    _known(note.body, packs, f"note {act}")
    written: list[Entry] = []

    def write(n: int, prev: str) -> list[Entry]:
        # Called again when another command took this place in the device's chain first.
        written[:] = [_write(job.pen_at(n, prev, by, device), note)]
        return written

    record_entries(job.journal, device, write)
    late = [
        IN_THE_FUTURE.at(f"entry {entry.id}", f"it says {entry.at}", entries=(entry.id,))
        for entry in written
        if instant(entry.at) > job.now()
    ]
    return written, [*late, *job.journal.set_aside]


def _write(pen: Pen, note: Note) -> Entry:
    return pen.write(note.body, at=note.at, place=note.place, component=note.component, media=note.media)


def _known(body: Body, packs: Packs, where: str) -> None:
    """Refuse ids that no pack knows: they could be neither judged nor explained."""
    for field, table in (
        ("kind", packs.kinds),
        ("measure", packs.measures),
        ("condition", packs.conditions),
        ("procedure", packs.procedures),
        ("reason", packs.reasons),
        ("sort", packs.sorts if isinstance(body, Placed) else {}),
    ):
        value = getattr(body, field, None)
        if value and table and value not in table:
            import difflib

            close = difflib.get_close_matches(value, table, n=5, cutoff=0.4) or sorted(table)[:8]
            raise Refusal(messages.NO_SUCH_PACK_ID.at(f"{where} {field}", f"{value!r}; perhaps {', '.join(close)}"))


def note_readings(
    job: OpenJob, packs: Packs, table: Path, *, by: str | None = None, device: str = "meter"
) -> list[Entry]:
    """Record a CSV table of readings, all of it or none. Places and components not yet known are listed first.

    Raises:
        Refusal: WM907 with file and line, or a number of the stores when the file cannot be read.
    """
    with reading(table):
        if table.stat().st_size > _LARGEST_TABLE:
            raise Refusal(messages.BAD_TABLE.at(str(table), "it is larger than 8 MB"))
        content = table.read_bytes()
    try:
        text = content.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        raise Refusal(messages.BAD_TABLE.at(str(table), f"byte {error.start} is not UTF-8; save it as UTF-8")) from None
    rows = csv.DictReader(io.StringIO(text, newline=""), restkey="", strict=True)
    try:
        _check_headings(rows.fieldnames or (), table)
        bodies = [_row(row, packs, f"{table}:{rows.line_num}") for row in rows]
    except csv.Error as error:
        raise Refusal(messages.BAD_TABLE.at(f"{table}:{rows.line_num}", str(error))) from None
    known = house(job.record())
    pen = job.pen(by, device)
    entries: list[Entry] = []
    places, components = set(known.places), set(known.components)
    source = Source("import", file=table.name)
    for at, place, component, body in bodies:
        if place and place not in places:
            places.add(place)
            sort = place if place in packs.sorts else "room"
            entries.append(pen.write(Placed(place.replace("-", " "), sort), at=at, place=place, source=source))
        if component and component not in components:
            components.add(component)
            kind = body.kind or ""
            label = packs.kinds[kind].name if kind in packs.kinds else component
            entries.append(
                pen.write(Listed(kind, label), at=at, place=place or None, component=component, source=source)
            )
        entries.append(pen.write(body, at=at, place=place or None, component=component or None, source=source))
    job.keep(entries)
    return entries


def _check_headings(headings: object, table: Path) -> None:
    given = [str(name) for name in headings] if isinstance(headings, (list, tuple)) else []
    missing = [name for name in _NEEDED if name not in given]
    strange = [name for name in given if name not in (*_NEEDED, *_MAY)]
    if missing or strange:
        facts = "; ".join(
            part
            for part in (
                f"missing: {', '.join(missing)}" if missing else "",
                f"not known: {', '.join(strange)}" if strange else "",
                f"the headings are {', '.join((*_NEEDED, *_MAY))}",
            )
            if part
        )
        raise Refusal(messages.BAD_TABLE.at(f"{table}:1", facts))


def _row(row: Mapping[str | None, str | None], packs: Packs, where: str) -> tuple[str, str, str, Read]:
    said = {
        str(key): (value or "").strip() for key, value in row.items() if key is not None and not isinstance(value, list)
    }
    measure = packs.measures.get(said["measure"])
    if measure is None:
        raise Refusal(messages.BAD_TABLE.at(where, f"no measure {said['measure']!r}; `witnessmark packs` lists them"))
    if said["kind"] and said["kind"] not in packs.kinds:
        raise Refusal(messages.BAD_TABLE.at(where, f"no kind {said['kind']!r}"))
    try:
        instant(said["at"])
        quantity = parse_quantity(said["value"] + said["unit"])
        convert(quantity, measure.unit)
        high = parse_quantity(said["high"] + said["unit"]) if said.get("high") else None
    except Refusal as refusal:
        raise Refusal(messages.BAD_TABLE.at(where, "see the message beside it"), *refusal.problems) from None
    return said["at"], said["place"], said["component"], _reading(said, quantity, high)


def _reading(said: Mapping[str, str], quantity: Quantity, high: Quantity | None) -> Read:
    return Read(
        measure=said["measure"],
        value=str(quantity.value),
        unit=quantity.unit,
        high=None if high is None else str(high.value),
        part=said.get("part") or None,
        kind=said["kind"] or None,
        spot=said.get("spot") or None,
        instrument=said.get("instrument") or None,
    )
