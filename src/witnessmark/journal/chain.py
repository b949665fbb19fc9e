"""Whether the chains are whole: each device's entries counted without gap, each naming the one before it.

A chain is the entries of one device in the order of ``n``. Where the device was restored from a backup it may fork:
two entries then hold one position, and either branch goes on by ``prev``.
"""

from __future__ import annotations

from collections import Counter, defaultdict
from collections.abc import Iterable, Mapping, Sequence
from datetime import datetime

from witnessmark.journal import messages
from witnessmark.journal.codec import hash_of
from witnessmark.journal.entry import NO_PREVIOUS, Entry
from witnessmark.journal.merge import merge
from witnessmark.journal.moment import instant
from witnessmark.problems import Problem, Refusal

__all__ = ["check_chains", "positions"]


def positions(entries: Iterable[Entry]) -> dict[str, dict[int, list[Entry]]]:
    """The entries by device and by their position on it, in order; a position held twice is a fork."""
    found: dict[str, dict[int, list[Entry]]] = defaultdict(dict)
    for entry in sorted(entries, key=lambda entry: (entry.device, entry.n, entry.hash)):
        found[entry.device].setdefault(entry.n, []).append(entry)
    return dict(found)


def check_chains(entries: Iterable[Entry], now: datetime | None = None, *, rehash: bool = True) -> list[Problem]:
    """Everything that is wrong with the entries as a record; empty when all is well.

    Re-hashes every entry, unless *rehash* is False because they were just read from their lines, which checks each
    hash (``from_line``). Tells of changed content (WM223), two entries of one id (WM230), positions missing (WM220)
    or held twice (WM221) on a device, entries that do not follow the one before (WM222), more than one job (WM225)
    and, given *now*, entries that say they happened later (WM224). The order of the entries does not matter.
    """
    merged, problems = merge(entries)
    changed = [problem for entry in merged if rehash and (problem := _content(entry)) is not None]
    problems += changed
    for device, chain in positions(merged).items():
        problems += _gaps(device, chain)
        problems += _forks(device, chain)
        problems += _links(device, chain)
    problems += _jobs(merged)
    if now is not None:
        unsound = {id_ for problem in changed for id_ in problem.entries}
        problems += [
            messages.IN_THE_FUTURE.at(f"entry {entry.id}", f"it says {entry.at}", entries=(entry.id,))
            for entry in merged
            if entry.id not in unsound and instant(entry.at) > now
        ]
    return problems


def _content(entry: Entry) -> Problem | None:
    where = f"entry {entry.id}, {entry.act}, number {entry.n} of {entry.device}"
    try:
        own = hash_of(entry)
    except Refusal as refusal:
        return messages.CONTENT_CHANGED.at(where, refusal.problems[0].detail, entries=(entry.id,))
    if own != entry.hash:
        return messages.CONTENT_CHANGED.at(
            where, f"it holds {entry.hash}, its content gives {own}", entries=(entry.id,)
        )
    return None


def _gaps(device: str, chain: Mapping[int, Sequence[Entry]]) -> list[Problem]:
    problems: list[Problem] = []
    last, before = 0, ""
    for n, held in chain.items():
        if n > last + 1:
            which = f"number {n - 1}" if n == last + 2 else f"numbers {last + 1} to {n - 1}"
            around = (before, held[0].id) if before else (held[0].id,)
            between = f"after {before} and before {held[0].id}" if before else f"before {held[0].id}"
            problems.append(messages.CHAIN_GAP.at(f"device {device}", f"{which}, {between}", entries=around))
        last, before = n, held[0].id
    return problems


def _forks(device: str, chain: Mapping[int, Sequence[Entry]]) -> list[Problem]:
    problems: list[Problem] = []
    for n, held in chain.items():
        # Only where branches part: where more entries stand than before, or two follow the same one.
        if len(held) > len(chain.get(n - 1, held[:1])) or len({entry.prev for entry in held}) < len(held):
            ids = tuple(entry.id for entry in held)
            problems.append(messages.CHAIN_FORK.at(f"device {device}, number {n}", ", ".join(ids), entries=ids))
    return problems


def _links(device: str, chain: Mapping[int, Sequence[Entry]]) -> list[Problem]:
    problems: list[Problem] = []
    for n, held in chain.items():
        if n > 1 and n - 1 not in chain:
            continue  # told as a gap
        before = {entry.hash for entry in chain[n - 1]} if n > 1 else {NO_PREVIOUS}
        problems += [
            messages.CHAIN_BROKEN.at(
                f"entry {entry.id}, {entry.act}, number {n} of {device}",
                f"it follows {entry.prev}, the one before it is {' or '.join(sorted(before))}",
                entries=(entry.id, *(one.id for one in chain.get(n - 1, ()))),
            )
            for entry in held
            if entry.prev not in before
        ]
    return problems


def _jobs(entries: Sequence[Entry]) -> list[Problem]:
    jobs = Counter(entry.job for entry in entries)
    if len(jobs) <= 1:
        return []
    main, _ = jobs.most_common(1)[0]
    return [
        messages.OTHER_JOB.at(f"job {job}", f"{count} entries among those of job {main}", entries=_of_job(entries, job))
        for job, count in sorted(jobs.items())
        if job != main
    ]


def _of_job(entries: Sequence[Entry], job: str) -> tuple[str, ...]:
    return tuple(entry.id for entry in entries if entry.job == job)
