"""What each later edition of an issued report changed against the one before, and why.

A seal names the last entry of every device. Whatever a device wrote after that, up to the next seal, came in between.
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

from witnessmark.journal.acts import Accepted, Amended, Dropped, Found, Sealed
from witnessmark.journal.entry import Entry
from witnessmark.journal.fold import Record
from witnessmark.report.clock import Clock
from witnessmark.report.letter import Edition, Statement
from witnessmark.report.naming import Names, capital, sentence
from witnessmark.views.deliveries import deliveries, is_delivery

__all__ = ["deliveries_of", "editions_of"]

#: Acts that say something about other entries; what they do stands with those.
_ABOUT_OTHERS = (Accepted, Amended, Dropped, Sealed)


def _title(record: Record, entry: str) -> str | None:
    """The title of a finding as first recorded; None for an entry that is no finding."""
    known = record.entries.get(entry)
    if known is None or not isinstance(known.body, Found):
        return None
    return known.body.title or known.body.seen


def _between(record: Record, before: Sealed, until: Entry | None) -> list[Entry]:
    """What was written after the seal *before*, and not after the entry *until*, by when it was logged."""
    known = {head.device: head.n for head in before.heads}
    rows = [
        entry
        for entry in record.entries.values()
        if entry.n > known.get(entry.device, 0)
        and not isinstance(entry.body, Sealed)
        and not is_delivery(entry, record.entries)
        and (until is None or (entry.logged, entry.id) <= (until.logged, until.id))
    ]
    return sorted(rows, key=lambda entry: (entry.logged, entry.id))


def _changes(record: Record, rows: list[Entry], names: Names) -> Iterator[Statement]:
    say = names.tongue.say
    accepted = {of for entry in rows if isinstance(entry.body, Accepted) for of in entry.body.of}
    counts = {fact.id for fact in record.facts}
    others = 0
    for entry in rows:
        body = entry.body
        if isinstance(body, Found) and entry.id in counts:
            yield Statement(
                say("Finding added: {title}.", title=capital(body.title or body.seen).rstrip(".")), (entry.id,)
            )
        elif isinstance(body, Amended) and (title := _title(record, body.of)) is not None:
            why = sentence(body.why or say("no reason was recorded"))
            yield Statement(
                say("Finding changed: {title}. {why}", title=capital(title).rstrip("."), why=why), (body.of,)
            )
        elif isinstance(body, Dropped) and (title := _title(record, body.of)) is not None:
            why = sentence(body.why or say("no reason was recorded"))
            yield Statement(
                say("Finding withdrawn: {title}. {why}", title=capital(title).rstrip("."), why=why), (body.of,)
            )
        elif not isinstance(body, _ABOUT_OTHERS) and entry.id in counts:
            others += 1
    # A finding drafted before the seal and accepted after it is new to the reader.
    for of in sorted(accepted - {entry.id for entry in rows}):
        if of in counts and (title := _title(record, of)) is not None:
            yield Statement(say("Finding added: {title}.", title=capital(title).rstrip(".")), (of,))
    if others:
        yield Statement(say("Other entries recorded since: {count}.", count=others))


def deliveries_of(record: Record, names: Names, clock: Clock) -> tuple[Statement, ...]:
    """To whom each earlier edition was delivered, and when it was opened."""
    say = names.tongue.say
    rows = []
    for row in deliveries(record):
        words = "Edition {edition} was delivered {when}{whom}{how}." if row.state == "delivered" else (
            "Edition {edition} was opened {when}{whom}{how}."
        )  # fmt: skip
        gaps = {
            "edition": row.edition,
            "when": clock.say(row.fact.at, seconds=False),
            "whom": say(" to {whom}", whom=row.whom) if row.whom and row.state == "delivered" else
                    say(" by {whom}", whom=row.whom) if row.whom else "",
            "how": f" ({row.how})" if row.how else "",
        }  # fmt: skip
        rows.append(Statement(say(words, **gaps), (row.fact.id,)))
    return tuple(rows)


def editions_of(record: Record, edition: tuple[int, str] | None, names: Names, clock: Clock) -> tuple[Edition, ...]:
    """Every edition after the first, oldest first.

    *edition* is number and reason of the one this letter is issued as, whose seal is not in *record*; None for a draft.
    """
    sealed: list[tuple[Sealed, Entry]] = sorted(
        ((entry.body, entry) for entry in record.entries.values() if isinstance(entry.body, Sealed)),
        key=lambda row: (row[1].logged, row[1].id),
    )
    rows = []
    for (before, _), (body, entry) in pairwise(sealed):
        changes = tuple(_changes(record, _between(record, before, entry), names))
        rows.append(Edition(body.edition, clock.say(entry.at, seconds=False), sentence(body.why or ""), changes))
    if sealed and edition is not None and edition[0] > sealed[-1][0].edition:
        changes = tuple(_changes(record, _between(record, sealed[-1][0], None), names))
        rows.append(Edition(edition[0], "", sentence(edition[1]), changes))
    return tuple(rows)
