"""Is everything in a job folder still what was kept, and does it match what was sealed?

Reads every byte once. Media are hashed in threads of their own while the journal is read.
"""

from __future__ import annotations

import time
from collections import defaultdict
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass
from datetime import datetime
from pathlib import Path

from witnessmark.journal import messages as journal_messages
from witnessmark.journal.acts import Sealed
from witnessmark.journal.chain import check_chains
from witnessmark.journal.entry import Entry
from witnessmark.journal.job_codec import facts_hash, job_from_toml
from witnessmark.journal.seal import check_seal
from witnessmark.problems import Problem, Refusal
from witnessmark.stores import messages
from witnessmark.stores.hashing import Hashed, hashing
from witnessmark.stores.job_file import FACTS, read_facts
from witnessmark.stores.journal_file import JOURNAL, TORN_FILES, read_journal, require_folder
from witnessmark.stores.media import MEDIA, LocalMedia, altered, missing
from witnessmark.stores.media_names import hash_in_name

__all__ = ["Verification", "verify_folder"]


@dataclass(frozen=True, slots=True)
class Verification:
    """What a check of a whole job folder gave.

    Attributes:
        problems: exactly what does not match; empty when everything is as it was kept and sealed.
        notes: what is worth knowing and breaks nothing: media that no entry names, stray files, torn lines that were
            moved out of the journal, acts of newer releases, and where an earlier seal or another version of a pack differs.
        entries: good entries in the journal.
        seals: seals among them.
        media: kept files that were hashed.
        size: bytes read, in the journal, the facts and the media.
        seconds: how long it took.
    """

    problems: tuple[Problem, ...]
    notes: tuple[Problem, ...]
    entries: int
    seals: int
    media: int
    size: int
    seconds: float

    @property
    def sound(self) -> bool:
        """Whether there is no problem."""
        return not self.problems


class _Findings:
    """Problems and notes as they turn up."""

    def __init__(self) -> None:
        self.problems: list[Problem] = []
        self.notes: list[Problem] = []


def verify_folder(
    path: Path,
    packs_hashes: Mapping[str, str] | None = None,
    progress: Callable[[int, int], None] | None = None,
    *,
    packs_versions: Mapping[str, str] | None = None,
    now: datetime | None = None,
) -> Verification:
    """Re-hash and check everything in the job folder; changes nothing.

    Args:
        path: the job folder.
        packs_hashes: SHA-256 (hex) by id of the packs that are here, to be held against the last seal; None leaves
            packs out.
        progress: called now and then with the bytes done and the bytes in all.
        packs_versions: version by id of the packs that are here. With it, a pack that is here in another version than
            was sealed is a note; without, every difference is a problem.
        now: the moment after which nothing can have happened yet (WM224); not checked when None.

    Raises:
        Refusal: there is no job folder (WM301). Everything else is told in the result.
    """
    started = time.perf_counter()
    require_folder(path)
    found = _Findings()
    media = LocalMedia(path / MEDIA)
    files = _media_files(media, found)
    sizes = {file: _size(file) for file in files}
    total = sum(sizes.values()) + _size(path / JOURNAL) + _size(path / FACTS)
    with hashing(files) as results:
        facts = _facts(path, found)
        entries, read = _journal(path, found, now)
        found.notes += [
            messages.SET_ASIDE.at(str(path / JOURNAL), f"in {torn.name}") for torn in sorted(path.glob(TORN_FILES))
        ]
        seals = _seals(entries, facts, packs_hashes, packs_versions, found)
        read += len(facts or b"")
        hashed = []
        for result in results:
            if progress is not None:
                progress(read, total)
            read += result.size
            hashed.append(result)
    if progress is not None:
        progress(read, total)
    _media(entries, media.folder, hashed, found)
    return Verification(
        problems=tuple(found.problems),
        notes=tuple(found.notes),
        entries=len(entries),
        seals=seals,
        media=len(hashed),
        size=read,
        seconds=time.perf_counter() - started,
    )


def _media_files(media: LocalMedia, found: _Findings) -> list[Path]:
    try:
        everything = list(media.everything())
    except Refusal as refusal:
        found.problems += refusal.problems
        return []
    kept = [file for file in everything if hash_in_name(file) is not None]
    found.notes += [messages.STRAY_FILE.at(str(file)) for file in everything if hash_in_name(file) is None]
    return kept


def _size(file: Path) -> int:
    try:
        return file.stat().st_size
    except OSError:
        return 0  # only for the progress; reading it will tell


def _facts(path: Path, found: _Findings) -> bytes | None:
    try:
        facts = read_facts(path)
        job_from_toml(facts, str(path / FACTS))
    except Refusal as refusal:
        found.problems += refusal.problems
        return None
    return facts


def _journal(path: Path, found: _Findings, now: datetime | None) -> tuple[list[Entry], int]:
    try:
        result = read_journal(path)
    except Refusal as refusal:
        found.problems += refusal.problems
        return [], 0
    if result is None:
        found.problems.append(messages.NO_JOURNAL.at(str(path / JOURNAL)))
        return [], 0
    found.problems += result.problems
    found.notes += result.unread
    found.problems += check_chains(result.entries, now, rehash=False)  # reading its line has checked each hash
    return result.entries, result.size


def _seals(
    entries: list[Entry],
    facts: bytes | None,
    hashes: Mapping[str, str] | None,
    versions: Mapping[str, str] | None,
    found: _Findings,
) -> int:
    """Check every seal; facts and packs as they are now belong to the last one, and may differ from earlier ones."""
    seals = sorted(
        ((entry.body.edition, entry.logged, entry, entry.body) for entry in entries if isinstance(entry.body, Sealed)),
        key=lambda seal: seal[:2],
    )
    now = None if facts is None else facts_hash(facts)
    for number, (_, _, entry, sealed) in enumerate(seals, 1):
        last = number == len(seals)
        found.problems += check_seal(entry, entries, now if last else None, rehash=False)
        if last:
            _packs(entry, sealed, hashes, versions, found)
        elif now is not None and now != sealed.facts:
            detail = f"sealed {sealed.facts}, now {now}; a later seal stands"
            found.notes.append(journal_messages.SEAL_FACTS.at(f"seal {entry.id}", detail, entries=(entry.id,)))
    return len(seals)


def _packs(
    entry: Entry,
    sealed: Sealed,
    hashes: Mapping[str, str] | None,
    versions: Mapping[str, str] | None,
    found: _Findings,
) -> None:
    if hashes is None:
        return
    for pack in sealed.packs:
        where = f"seal {entry.id}, pack {pack.id}"
        here = hashes.get(pack.id)
        if here is None:
            found.problems.append(messages.PACK_NOT_HERE.at(where, f"version {pack.version}", entries=(entry.id,)))
        elif here != pack.hash:
            detail = f"sealed in version {pack.version} with {pack.hash}, here is {here}"
            other = versions is not None and versions.get(pack.id) != pack.version
            problem = messages.PACK_DIFFERS.at(where, detail, entries=(entry.id,))
            (found.notes if other else found.problems).append(problem)


def _media(entries: Iterable[Entry], folder: Path, hashed: Iterable[Hashed], found: _Findings) -> None:
    """Every file must be what its name states and every file that an entry names must be there."""
    named: dict[str, list[str]] = defaultdict(list)
    for entry in entries:
        for digest in entry.media:
            named[digest].append(entry.id)
    there = set()
    for result in hashed:
        stated = hash_in_name(result.path) or ""
        there.add(stated)
        ids = tuple(named.get(stated, ()))
        if result.error is not None:
            found.problems.append(messages.CANNOT_READ.at(str(result.path), str(result.error), entries=ids))
        elif result.digest != stated:
            found.problems.append(altered(result.path, result.digest, ids))
        elif not ids:
            found.notes.append(messages.MEDIA_EXTRA.at(str(result.path)))
    found.problems += [missing(folder, digest, tuple(ids)) for digest, ids in named.items() if digest not in there]
