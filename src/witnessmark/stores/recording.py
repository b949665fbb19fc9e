"""Adding entries for a device for which another program may be writing at the same moment."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import Final

from witnessmark.journal.entry import Entry
from witnessmark.journal.ports import JournalStore
from witnessmark.problems import Refusal
from witnessmark.stores import messages

__all__ = ["record"]

#: Each time one is too late another writer has got its entries in, so this many mean a very busy device.
_TRIES: Final = 200


def record(store: JournalStore, device: str, write: Callable[[int, str], Sequence[Entry]]) -> Sequence[Entry]:
    """Keep what *write* makes after the device's last entry, and return it.

    *write* gets the count and hash of that entry (as a ``Pen`` takes them) and gives the entries of one batch. If
    another writer was faster it is called again with the new last entry.

    Raises:
        Refusal: whatever ``JournalStore.append`` refuses, except that the position was taken meanwhile.
    """
    for _ in range(_TRIES - 1):
        entries = write(*store.head(device))
        try:
            store.append(entries)
        except Refusal as refusal:
            if any(problem.message is not messages.POSITION_TAKEN for problem in refusal.problems):
                raise
        else:
            return entries
    entries = write(*store.head(device))
    store.append(entries)
    return entries
