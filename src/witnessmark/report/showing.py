"""Which files of the record can be shown, what each shows, and which entries each belongs to."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass
from pathlib import Path

from witnessmark.journal.acts import Absent, Identified, Read, Saw, Took
from witnessmark.journal.fold import Fact, Record
from witnessmark.problems import Problem
from witnessmark.report.clock import Clock
from witnessmark.report.letter import FiledMedium, Picture
from witnessmark.report.messages import FILE_MISSING, NOT_DISPLAYABLE
from witnessmark.report.naming import Names, capital, sentence
from witnessmark.report.wording import telling
from witnessmark.views import Medium
from witnessmark.views import media as media_of

__all__ = ["Showing", "showing_of"]

_DISPLAYABLE = {".jpg", ".jpeg", ".png", ".webp"}
_DISPLAYABLE_MIME = {"image/jpeg", "image/png", "image/webp"}
_SORTS = {
    "photo": "photo",
    "thermal": "thermal picture",
    "document": "document",
    "video": "video",
    "voice": "recording",
}
#: A picture without words of its own is told by at most this many entries that speak of it.
_MOST_WORDS = 2


@dataclass(frozen=True, slots=True)
class Showing:
    """Pictures by number, files told in words, and the numbers of the pictures of each entry."""

    pictures: tuple[Picture, ...]
    filed: tuple[FiledMedium, ...]
    by_entry: Mapping[str, tuple[int, ...]]
    problems: tuple[Problem, ...]

    def of(self, entries: Iterable[str]) -> tuple[int, ...]:
        """Numbers of the pictures that belong to any of the entries, in order."""
        return tuple(sorted({number for entry in entries for number in self.by_entry.get(entry, ())}))


def _caption(medium: Medium, speaking: list[Fact], names: Names) -> str:
    if medium.body and medium.body.shows:
        return sentence(medium.body.shows)
    if medium.body and medium.body.sort not in {"photo", "thermal"}:
        return ""  # what is said in a recording stands with the entries drawn from it
    told = [telling(fact, names) for fact in speaking if isinstance(fact.body, Saw | Absent | Read | Identified)]
    words = " ".join(list(dict.fromkeys(told))[:_MOST_WORDS])
    # Nobody said what the picture shows, only what it was taken for; a caption must not claim more.
    return names.tongue.say("Taken with this entry: {words}", words=words) if words else ""


def _why_filed(body: Took | None, path: Path | None, stand_in: Path | None) -> str:
    """Why a file cannot be shown; empty when it can."""
    if stand_in is not None:
        return ""
    if path is None:
        return "the file is not among the media of the job"
    mime = body.mime if body else ""
    suffix = Path(body.name).suffix.lower() if body and body.name else path.suffix.lower()
    if mime in _DISPLAYABLE_MIME or (not mime and suffix in _DISPLAYABLE):
        return ""
    return f"a file of this sort ({mime or suffix or 'unknown'}) is not shown on a page"


def _ordered(record: Record) -> list[tuple[Fact, Medium, list[Fact]]]:
    """Each file once, by time: the fact that brought it (else the first that names it), and the facts it belongs to."""
    facts = {fact.id: fact for fact in record.facts}
    order = {fact.id: i for i, fact in enumerate(record.facts)}
    rows = []
    seen: set[str] = set()
    for medium in media_of(record):
        speaking = [facts[entry] for entry in medium.spoken_of_by if entry in facts]
        first = medium.took or next(iter(speaking), None)
        if first is not None and medium.sha256 not in seen:
            seen.add(medium.sha256)
            rows.append((first, medium, speaking))
    return sorted(rows, key=lambda row: (order[row[0].id], row[1].sha256))


def showing_of(
    record: Record,
    names: Names,
    clock: Clock,
    media: Callable[[str], Path | None],
    pictures: Mapping[str, Path],
) -> Showing:
    """Sort the files of the record into pictures and files told in words, in order of time."""
    shown: list[Picture] = []
    filed: list[FiledMedium] = []
    by_entry: dict[str, list[int]] = {}
    problems: list[Problem] = []
    for first, medium, speaking in _ordered(record):
        sha, body = medium.sha256, medium.body
        name = (body.name if body else "") or sha[:12] or "a file without a name"
        sort = body.sort if body else "photo"
        place = names.place_of(first) or next((names.place_of(fact) for fact in speaking if names.place_of(fact)), "")
        time, words = clock.say(first.at), _caption(medium, speaking, names)
        path, stand_in = media(sha) if sha else None, pictures.get(sha)
        why = _why_filed(body, path, stand_in)
        usable = stand_in or path
        if why or usable is None:
            if path is None or sort in {"photo", "thermal"}:
                message = FILE_MISSING if path is None else NOT_DISPLAYABLE
                problems.append(message.at(name, why, entries=(first.id,)))
            filed.append(FiledMedium(name, sort, words, sha, time, first.entry.device, first.id, why))
            continue
        number = len(shown) + 1
        where = f", {place}" if place else ""
        alt = f"{capital(names.tongue.say(_SORTS.get(sort, 'picture')))}{where}, {time}: "
        alt += words or names.tongue.say("{name}; the record does not say what it shows.", name=name)
        shown.append(
            Picture(number, sha, name, sort, words, alt, place, first.at, time, first.entry.device, first.id, usable)
        )
        for entry in dict.fromkeys((first.id, *medium.spoken_of_by)):
            by_entry.setdefault(entry, []).append(number)
    return Showing(tuple(shown), tuple(filed), {entry: tuple(ns) for entry, ns in by_entry.items()}, tuple(problems))
