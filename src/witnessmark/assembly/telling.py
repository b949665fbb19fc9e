"""A standing told: as plain data for other programs, and in words for a person."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from datetime import datetime

from witnessmark.journal.fold import Fact, Record
from witnessmark.judging.model import ENDS, DutyCoverage, LooseEnd, Standing
from witnessmark.packs.model import Packs
from witnessmark.views import house

__all__ = ["standing_as_json", "standing_in_words", "under_as_json", "under_in_words"]

#: What a reader is told beside a duty whose text was not read in the law itself.
_DOUBTFUL = {
    "memory": "recalled: check the text",
    "memory?": "recalled and doubtful: check the text",
    "seen-copy": "read in a copy: check the text",
}


def _text(moment: datetime | None) -> str | None:
    return None if moment is None else moment.isoformat()


def _end(end: LooseEnd) -> dict[str, object]:
    return {
        "sort": end.sort,
        "key": end.key,
        "words": end.words,
        "next": end.next,
        "entries": list(end.entries),
        "place": end.place,
        "component": end.component,
        "opened": _text(end.opened),
        "earliest": _text(end.earliest),
        "latest": _text(end.latest),
        "late": end.late,
        "duty": end.duty,
        "provenance": end.tag,
        "cautions": list(end.cautions),
    }


def _duty(row: DutyCoverage) -> dict[str, object]:
    return {
        "id": row.duty.id,
        "section": row.duty.section,
        "verb": row.duty.verb,
        "words": row.duty.words,
        "provenance": row.duty.provenance.tag,
        "status": row.status,
        "why": row.why,
        "entries": list(row.entries),
        "subjects": [
            {"words": s.words, "status": s.status, "entries": list(s.entries), "why": s.why} for s in row.subjects
        ],
    }


def standing_as_json(stands: Standing, record: Record, packs: Packs) -> dict[str, object]:
    """Everything a standing says, as plain data. Cautions are given once, in words, by id."""
    cautions = sorted({caution for end in stands.loose_ends for caution in end.cautions})
    return {
        "at": _text(stands.at),
        "running": [
            {
                "entry": run.entry,
                "words": run.words,
                "left": run.left,
                "since": _text(run.since),
                "place": run.place,
                "component": run.component,
            }
            for run in stands.running
        ],
        "loose_ends": [_end(end) for end in stands.loose_ends],
        "blocking": len(stands.blocking),
        "duties": [_duty(row) for row in stands.duties],
        "readings": [
            {
                "entry": row.entry,
                "verdict": row.verdict,
                "words": row.words,
                "must": row.must,
                "criterion": None if row.criterion is None else row.criterion.id,
            }
            for row in stands.readings
        ],
        "drafts": [_draft(fact) for fact in record.drafts],
        "waiting": [entry.id for entry in record.waiting],
        "cautions": {caution: packs.cautions[caution].words for caution in cautions if caution in packs.cautions},
    }


def under_as_json(laws: Mapping[str, Sequence[DutyCoverage]]) -> dict[str, object]:
    """The duties under each of several laws, as plain data."""
    return {name: [_duty(row) for row in rows] for name, rows in laws.items()}


def under_in_words(laws: Mapping[str, Sequence[DutyCoverage]]) -> Iterator[str]:
    """One line for each of several laws, then what is open under it."""
    for name, rows in laws.items():
        counts = Counter(row.status for row in rows)
        told = ", ".join(f"{counts[s]} {s}" for s in ("met", "excused", "open", "not asked") if counts[s])
        yield f"Under {name}: {told or 'no duty is counted, or it was not in force that day'}"
        for row in rows:
            if row.status == "open":
                note = f", {_DOUBTFUL[row.duty.provenance.tag]}" if row.duty.provenance.tag in _DOUBTFUL else ""
                yield f"  {row.duty.id} {row.duty.words} ({row.duty.section}{note})"


def _draft(fact: Fact) -> dict[str, object]:
    return {
        "id": fact.id,
        "act": fact.act,
        "at": fact.at,
        "place": fact.place,
        "component": fact.component,
        "words": _said(fact),
        "quoted": fact.source.words,
    }


def _said(fact: Fact) -> str:
    for field in ("what", "title", "shows", "label", "name", "attribute", "measure"):
        if value := getattr(fact.body, field, None):
            more = getattr(fact.body, "value", "") or ""
            return f"{value} {more} {getattr(fact.body, 'unit', '') or ''}".strip() if more else str(value)
    return fact.act


def _clock(moment: datetime | None) -> str:
    return "" if moment is None else f"{moment:%H:%M}"


def _window(end: LooseEnd) -> str:
    if end.earliest and end.latest:
        window = f" between {_clock(end.earliest)} and {_clock(end.latest)}"
    elif end.latest:
        window = f" by {_clock(end.latest)}"
    else:
        window = ""
    return window + (", and that time has passed" if end.late else "")


def standing_in_words(
    stands: Standing, record: Record, packs: Packs, *, duties: bool = False, drafts: bool = False
) -> Iterator[str]:
    """The lines a person reads: what is on, then the loose ends by sort, then the duties, then what to do."""
    home = house(record)
    yield f"Standing at {stands.at:%Y-%m-%d %H:%M}"
    yield ""
    if stands.running:
        yield "Now running or changed:"
        for run in stands.running:
            yield f"  {run.words} (since {_clock(run.since)})"
    else:
        yield "Nothing is left running."
    told: list[str] = []
    for sort in ENDS:
        ends = [end for end in stands.loose_ends if end.sort == sort]
        if not ends:
            continue
        yield ""
        yield f"{sort.capitalize()} ({len(ends)}):"
        nexts: list[str] = []
        for end in ends:
            place = home.places.get(end.place or "")
            name = place.name if place else end.place
            where = f", {name}" if name and name.lower() not in end.words.lower() else ""
            clock = _clock(end.opened)
            since = f", at {clock}" if clock and clock not in end.words else ""
            recalled = _DOUBTFUL.get(end.tag or "")
            yield f"  {end.words}{where}{since}{_window(end)}{f' ({recalled})' if recalled else ''}"
            if end.duty is None and end.next:
                yield f"      {end.next}"
            elif end.next not in nexts:
                nexts.append(end.next)
            told += [caution for caution in end.cautions if caution not in told]
        for line in nexts:
            yield f"      {line}"
    yield ""
    yield from _duties(stands, all_of_them=duties)
    if record.drafts:
        yield f"Drafts waiting for a person: {len(record.drafts)}"
        if drafts:
            for fact in record.drafts:
                yield f"  {fact.id[-8:]}  {fact.act:<11}{_said(fact)}"
    if record.waiting:
        yield f"Entries waiting for what they refer to: {len(record.waiting)}"
    if told:
        yield ""
        yield "Take care:"
        for caution in told:
            if caution in packs.cautions:
                yield f"  {packs.cautions[caution].words}"
    yield ""
    blocking = len(stands.blocking)
    yield (
        f"{blocking} of these keep the report from being issued."
        if blocking
        else "Nothing keeps the report from being issued."
    )


def _duties(stands: Standing, *, all_of_them: bool) -> Iterator[str]:
    counts = Counter(row.status for row in stands.duties)
    if not counts:
        yield "No rulebook is named for this job, so no duties are counted."
        return
    yield "Duties: " + ", ".join(
        f"{counts[status]} {status}" for status in ("met", "excused", "open", "not asked") if counts[status]
    )
    if all_of_them:
        for row in stands.duties:
            note = f", {_DOUBTFUL[row.duty.provenance.tag]}" if row.duty.provenance.tag in _DOUBTFUL else ""
            yield f"  {row.duty.id} {row.status:<10}{row.duty.words} ({row.duty.section}{note})"
            for subject in row.subjects:
                if subject.status == "open":
                    yield f"      open: {subject.words}"
