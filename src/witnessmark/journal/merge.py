"""One record from several copies of it: a union, the same whatever the order in which the copies came."""

from __future__ import annotations

from collections.abc import Iterable

from witnessmark.journal import messages
from witnessmark.journal.entry import Entry
from witnessmark.journal.moment import since_epoch
from witnessmark.problems import Problem

__all__ = ["merge"]


def merge(*copies: Iterable[Entry]) -> tuple[list[Entry], list[Problem]]:
    """The union of the copies by id, in the order of (logged instant, id, hash), and what does not fit together.

    Two different entries of one id are both kept, side by side, and told as WM230. Merging again changes nothing.
    """
    kept: dict[str, list[Entry]] = {}
    for copy in copies:
        for entry in copy:
            same_id = kept.setdefault(entry.id, [])
            if entry not in same_id:
                same_id.append(entry)
    problems: list[Problem] = []
    for id_, same_id in kept.items():
        if len(same_id) > 1:
            hashes = ", ".join(sorted(entry.hash[:12] for entry in same_id))
            problems.append(messages.SAME_ID.at(f"entry {id_}", f"hashes {hashes}", entries=(id_,)))
    merged = [entry for same_id in kept.values() for entry in same_id]
    merged.sort(key=_order)
    problems.sort(key=lambda problem: problem.entries)
    return merged, problems


def _order(entry: Entry) -> tuple[object, ...]:
    # Entries that are alike up to their hash are forged; repr keeps their order the same on every machine.
    return since_epoch(entry.logged), entry.id, entry.hash, _Lazy(entry)


class _Lazy:
    """Compares by ``repr``, which is worked out only when everything before it was equal."""

    __slots__ = ("entry",)

    def __init__(self, entry: Entry) -> None:
        self.entry = entry

    def __eq__(self, other: object) -> bool:
        return isinstance(other, _Lazy) and self.entry == other.entry

    def __hash__(self) -> int:
        return hash(self.entry)

    def __lt__(self, other: _Lazy) -> bool:
        return repr(self.entry) < repr(other.entry)
