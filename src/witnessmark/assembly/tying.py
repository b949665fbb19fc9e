"""Which statement a picture belongs to, whichever of the two came in first.

The tie is a guess by time, so it is a draft: it never says what a picture shows. Only a person can.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from datetime import datetime, timedelta

from witnessmark.journal.acts import Absent, Amended, Saw, Took
from witnessmark.journal.entry import Entry, Source
from witnessmark.journal.fold import Fact, Record
from witnessmark.journal.moment import instant
from witnessmark.journal.pen import Pen

__all__ = ["TIED", "spoken_of", "tie_pictures"]

#: The rule that a tie names as its source.
TIED = "tied by time"
#: A picture belongs to what was said at most this long before or after it was taken.
_WITHIN = timedelta(seconds=12)
#: Of two statements, one about something adverse is preferred unless it is this much further away.
_PREFERENCE = timedelta(seconds=4)
#: What has no picture of its own: where one is and what there is, and other pictures.
_NOT_SHOWN = frozenset({"placed", "listed", "took"})


def spoken_of(at: datetime, record: Record) -> Fact | None:
    """The statement a picture taken at this moment belongs to, if any was made around it."""
    best: tuple[timedelta, str, Fact] | None = None
    for fact in (*record.facts, *record.drafts):
        if fact.source.sort != "speech" or fact.act in _NOT_SHOWN:
            continue
        away = abs(instant(fact.at) - at)
        if away > _WITHIN:
            continue
        if isinstance(fact.body, (Saw, Absent)) and _is_adverse(fact.body):
            away -= _PREFERENCE
        if best is None or (away, fact.id) < best[:2]:
            best = (away, fact.id, fact)
    return best[2] if best else None


def tie_pictures(record: Record, pen: Pen) -> Iterator[Entry]:
    """Drafts that tie the pictures of *record* that speak of nothing yet to what was said around them.

    Each is an amendment of the ``took``, with its place and component taken from the statement where it had none. A
    picture for which such a draft waits already, or that was settled or named otherwise, is left alone.
    """
    waiting = {fact.body.of for fact in record.drafts if isinstance(fact.body, Amended)}
    for fact in (*record.facts, *record.drafts):
        body = fact.body
        if not isinstance(body, Took) or body.speaks_of or fact.amended_by or fact.id in waiting:
            continue
        about = spoken_of(instant(fact.at), record)
        if about is None:
            continue
        tied = Amended(
            of=fact.id,
            why=TIED,
            act="took",
            v=fact.v,
            body=replace(body, speaks_of=(about.id,)),
            place=fact.place or about.place,
            component=fact.component or about.component,
        )
        source = Source("program", file=body.name or None, rule=TIED)
        yield pen.write(tied, at=fact.at, media=fact.media, source=source, draft=True)


def _is_adverse(body: Saw | Absent) -> bool:
    return body.adverse is True if isinstance(body, Absent) else body.state == "adverse"
