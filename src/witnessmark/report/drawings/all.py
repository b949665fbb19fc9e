"""Every drawing of a letter, by the part of the letter it stands in."""

from __future__ import annotations

from collections.abc import Sequence

from witnessmark.journal.acts import Read
from witnessmark.journal.fold import Record
from witnessmark.judging.model import Standing
from witnessmark.report.drawings.bands import outlook_drawing
from witnessmark.report.drawings.levels import level_drawings
from witnessmark.report.drawings.moisture import moisture_drawings
from witnessmark.report.drawings.strip import strip_drawing
from witnessmark.report.drawings.visit import visit_drawing
from witnessmark.report.letter import Drawing, Outlook
from witnessmark.report.naming import Names

__all__ = ["drawings_of"]


def drawings_of(record: Record, names: Names, standing: Standing, outlook: Sequence[Outlook]) -> tuple[Drawing, ...]:
    """The visit in time, levels of floors, the outlook, and a strip for the first limit of each reading held against one."""
    made = [
        visit_drawing(record, names),
        *level_drawings(record, names),
        *moisture_drawings(record, names),
        outlook_drawing(outlook, names.tongue),
    ]
    bodies = {fact.id: fact.body for fact in record.facts}
    done: set[str] = set()
    # A reading beyond one limit and within another is drawn beside the one it is beyond.
    for row in sorted(standing.readings, key=lambda row: row.verdict != "beyond"):
        body = bodies.get(row.entry)
        if row.entry in done or not isinstance(body, Read) or body.high is not None:
            continue
        strip = strip_drawing(body.value, body.unit, row, names.tongue)
        if strip is not None:
            done.add(row.entry)
            made.append(strip)
    return tuple(one for one in made if one is not None)
