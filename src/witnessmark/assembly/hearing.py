"""A narration into the journal: drafts for what was said, with the places and components it names."""

from __future__ import annotations

import mimetypes
from collections.abc import Callable
from datetime import datetime, timedelta
from decimal import Decimal, InvalidOperation
from pathlib import Path

from witnessmark.assembly import messages
from witnessmark.assembly.jobs import OpenJob
from witnessmark.assembly.talk import Talk, read_talk
from witnessmark.assembly.tying import tie_pictures
from witnessmark.journal.acts import Absent, Listed, Placed, Read, Took
from witnessmark.journal.entry import Entry, Source
from witnessmark.journal.fold import Record, fold
from witnessmark.journal.moment import instant
from witnessmark.listening import Draft, Heard, listen, to_body
from witnessmark.packs.model import Packs
from witnessmark.problems import Problem, Refusal
from witnessmark.speech import Transcript
from witnessmark.suggesting import Endpoint, ask_endpoint, together
from witnessmark.units import Quantity, convert
from witnessmark.views import House, house

__all__ = ["hear", "hear_into"]

Tell = Callable[[int, int], None]

#: A reading spoken this close to the same reading in the record is the same one, said aloud.
_SAME_READING = timedelta(minutes=3)


def hear(
    talk: Talk, packs: Packs, *, place: str | None = None, endpoint: Endpoint | None = None, tell: Tell | None = None
) -> Heard:
    """What a narration says; nothing is kept. With an *endpoint*, what its model suggests stands among it, checked."""
    heard = listen(talk.narration, packs, place=place)
    if endpoint is None:
        return heard
    return together(heard, ask_endpoint(talk.narration, packs, heard, endpoint, tell=tell))


def hear_into(
    job: OpenJob,
    packs: Packs,
    file: Path,
    *,
    began: str | None,
    talk: Talk | None = None,
    heard: Heard | None = None,
    place: str | None = None,
    device: str = "recorder",
    by: str | None = None,
) -> tuple[Heard, list[Entry], list[Problem]]:
    """Put the drafts of a narration into the journal, all or none.

    *talk* is the narration of *file*, and *heard* what it says, where the caller has them. A recording is kept among the
    media with its transcript. A reading that is in the record already (same measure and value, within three minutes) is
    not drafted twice. A picture that is in the job and speaks of nothing yet is tied to what was said around it, as a
    draft.

    Raises:
        Refusal: WM911 without the moment the recording began, or a number of the listening or the speech.
    """
    if began is None:
        raise Refusal(messages.AUDIO_TIMES.at(str(file)))
    start = instant(began)
    talk = talk or read_talk(file)
    heard = heard or hear(talk, packs, place=place)
    record = job.record()
    home = house(record)
    pen = job.pen(by, device)
    entries: list[Entry] = []
    places, components = set(home.places), set(home.components)
    media = _recording(job, file, talk.transcript, record) if talk.transcript else ()
    if media:
        took = Took("voice", file.name, mimetypes.guess_type(file.name)[0] or "")
        entries.append(pen.write(took, at=start, media=media, source=Source("import", file=file.name)))
    for draft in heard.drafts:
        at = start + timedelta(seconds=float(draft.start))
        source = _source(file, draft)
        body = to_body(draft)
        if isinstance(body, Read) and _is_recorded(body, at, record):
            continue
        here = None if draft.place.sort == "house" else draft.place.key
        if here and here not in places:
            places.add(here)
            placed = Placed(draft.place.name, draft.place.sort)
            entries.append(pen.write(placed, at=at, place=here, source=source, draft=True))
        gone = isinstance(body, Absent) and not body.part  # what is not there is no component of the house
        component = None if gone and draft.component not in components else _component(draft, home)
        if component and component not in components:
            components.add(component)
            listed = Listed(draft.kind or "", draft.label)
            entries.append(pen.write(listed, at=at, place=here, component=component, source=source, draft=True))
        entries.append(pen.write(body, at=at, place=here, component=component, source=source, draft=True))
    whole = fold([*record.entries.values(), *entries])
    entries += tie_pictures(whole, pen)
    job.keep(entries)
    return heard, entries, []


def _recording(job: OpenJob, file: Path, transcript: Transcript, record: Record) -> tuple[str, ...]:
    """The hashes under which the recording and its transcript are kept; none when the job has the recording already."""
    if any(transcript.sha256 in entry.media for entry in record.entries.values()):
        return ()
    return job.media.put_file(file), job.media.put(transcript.as_json_lines().encode("utf-8"))


def _source(file: Path, draft: Draft) -> Source:
    return Source("speech", file.name, f"{draft.start:.1f}", f"{draft.end:.1f}", draft.text, draft.why)


def _component(draft: Draft, home: House) -> str | None:
    """The component the draft is about: one that is listed under the same key, else a new one of a known kind."""
    if draft.component in home.components:
        return draft.component
    return draft.component if draft.kind else None


def _is_recorded(body: Read, at: datetime, record: Record) -> bool:
    for fact in record.facts:
        if isinstance(fact.body, Read) and fact.body.measure == body.measure and _same(fact.body, body):
            when = instant(fact.at)
            if abs(when - at) <= _SAME_READING:
                return True
    return False


def _same(one: Read, other: Read) -> bool:
    try:
        mine, theirs = Quantity(Decimal(one.value), one.unit), Quantity(Decimal(other.value), other.unit)
        return abs(convert(mine, theirs.unit).value - theirs.value) < Decimal("0.05")
    except (InvalidOperation, Refusal):
        return False
