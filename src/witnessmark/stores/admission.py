"""Which entries of a batch a store takes: the same rules for every store, decided before anything is written."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import NamedTuple, Protocol

from witnessmark.journal.codec import to_line
from witnessmark.journal.entry import NO_PREVIOUS, Entry
from witnessmark.problems import Problem, Refusal
from witnessmark.stores import messages
from witnessmark.stores.lines import LONGEST_LINE

__all__ = ["Admitted", "Index", "Kept", "admit"]


class Admitted(NamedTuple):
    """An entry that is new to the store, and its line (without newline)."""

    entry: Entry
    line: bytes


class Kept(Protocol):
    """What must be known of the entries already kept. Damaged lines are not kept entries."""

    def job(self) -> str | None:
        """The job of the entries, None while there are none."""

    def hash_of(self, entry_id: str) -> str | None:
        """The hash of the entry with this id, or None."""

    def at_position(self, device: str, n: int) -> str | None:
        """The id of the entry that was first to take this place in the device's chain, or None."""


class Index:
    """``Kept`` in memory."""

    def __init__(self) -> None:
        self._job: str | None = None
        self._hashes: dict[str, str] = {}
        self._positions: dict[tuple[str, int], str] = {}
        self._heads: dict[str, tuple[int, str]] = {}

    def add(self, entries: Iterable[Entry]) -> None:
        """Count these as kept. Of an id that comes twice, the first holds."""
        for entry in entries:
            if entry.id in self._hashes:
                continue
            self._job = self._job or entry.job
            self._hashes[entry.id] = entry.hash
            self._positions.setdefault((entry.device, entry.n), entry.id)
            if entry.n > self.head(entry.device)[0]:
                self._heads[entry.device] = (entry.n, entry.hash)

    def job(self) -> str | None:
        """The job of the entries, or None."""
        return self._job

    def hash_of(self, entry_id: str) -> str | None:
        """The hash of the entry, or None."""
        return self._hashes.get(entry_id)

    def at_position(self, device: str, n: int) -> str | None:
        """The id of the first entry at that place, or None."""
        return self._positions.get((device, n))

    def head(self, device: str) -> tuple[int, str]:
        """Count and hash of the device's last entry; of a fork, the one that came first."""
        return self._heads.get(device, (0, NO_PREVIOUS))


def admit(entries: Sequence[Entry], kept: Kept, where: str, *, forks: bool) -> list[Admitted]:
    """The entries of the batch that are new, in order, with their lines.

    An entry that is kept already (same id, same hash) is passed over, and so is one that the batch repeats. Gaps in a
    device's chain are taken: in a merge the missing entries may come later, and ``chain.check_chains`` shows them.

    Args:
        entries: the batch.
        kept: what the store holds.
        where: names the store in refusals.
        forks: take an entry whose place in its device's chain is held by another one. For bringing in another copy of
            the record; ``chain.check_chains`` then reports the fork. Without it such an entry is refused, so that two
            programs writing for one device at once cannot fork its chain.

    Raises:
        Refusal: WM320 to WM324, and WM205 or WM210 from the codec, with one problem for each entry that cannot be
            taken. Then none of the batch may be taken.
    """
    batch = Index()
    admitted: list[Admitted] = []
    problems: list[Problem] = []
    for entry in entries:
        held = kept.hash_of(entry.id) or batch.hash_of(entry.id)
        if held is not None and held == entry.hash:
            continue
        problem = _objection(entry, held, kept, batch, where, forks=forks)
        if problem is None:
            try:
                line = to_line(entry)
            except Refusal as refusal:
                problems += refusal.problems
                continue
            if len(line) <= LONGEST_LINE:
                admitted.append(Admitted(entry, line))
                batch.add([entry])
                continue
            problem = messages.ENTRY_TOO_LONG.at(
                where, f"{len(line):,} bytes, at most {LONGEST_LINE:,}", entries=(entry.id,)
            )
        problems.append(problem)
    if problems:
        raise Refusal(*problems)
    return admitted


def _objection(entry: Entry, held: str | None, kept: Kept, batch: Index, where: str, *, forks: bool) -> Problem | None:
    if not entry.hash:
        return messages.NO_HASH.at(where, f"entry {entry.id}", entries=(entry.id,))
    if held is not None:
        return messages.ID_TAKEN.at(
            where, f"entry {entry.id}: kept with hash {held}, offered with {entry.hash}", entries=(entry.id,)
        )
    job = kept.job() or batch.job()
    if job is not None and entry.job != job:
        return messages.OTHER_JOB.at(
            where, f"entry {entry.id} is of job {entry.job}, kept are those of {job}", entries=(entry.id,)
        )
    if not forks:
        first = kept.at_position(entry.device, entry.n) or batch.at_position(entry.device, entry.n)
        if first is not None:
            return messages.POSITION_TAKEN.at(
                where, f"entry {entry.n} of device {entry.device} is {first}", entries=(entry.id, first)
            )
    return None
