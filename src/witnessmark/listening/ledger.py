"""What was started and not stopped?"""

from __future__ import annotations

from collections.abc import Sequence

from witnessmark.listening.drafts import Draft
from witnessmark.listening.terms import cues
from witnessmark.listening.words import phrase

__all__ = ["WILL_NOT_RESET", "after", "still_on"]


#: Acts that leave as it is what runs already.
_KEEPS = ("leave", "leaving", "left", "let ", "letting", "keep")
#: Why a device stays tripped.
WILL_NOT_RESET = "will not reset"
_NOT = frozenset({"not", "never", "no"})
#: Acts that put something back without shutting it off.
_RETURNS = ("reset", "back on", "put back", "back in", "back together", "screwed")


def _closes(stop: Draft, run: Draft) -> int:
    """How well a stop fits a run: 0 not at all, higher is better."""
    if any(f"'{word}" in stop.why for word in _RETURNS) and run.leaves in {"on", "filled"}:
        return 0  # a reset or a cover put back shuts nothing off
    if run.why == WILL_NOT_RESET and "'reset" in stop.why:
        return 0  # another one was reset
    if stop.part and run.part and stop.part != run.part:
        return 1 if run.leaves == "filled" and stop.component == run.component else 0  # the stopper drains the bowl
    if stop.component == run.component:
        return 3 if stop.part == run.part else 2
    return 1 if stop.kind is not None and stop.kind == run.kind else 0


def _hands_back(stop: Draft, run: Draft) -> int:
    """1 where a setting is handed back ("back up to one ten"): its device may go by another name."""
    return int(
        run.leaves == "changed" and any(f"'back {to}'" in stop.why for to in ("to", "up", "down", "at", "on auto"))
    )


def still_on(drafts: Sequence[Draft]) -> list[Draft]:
    """The drafts of things left running, open, filled, unlatched, tripped or at another setting, in order.

    A stop closes the newest run of the same component and part; else of the same component; else of the same kind
    in another place. A setting changed twice is open once.
    """
    running: list[Draft] = []
    for draft in drafts:
        running = after(running, draft)
    return running


def after(running: list[Draft], draft: Draft) -> list[Draft]:
    """What still runs after one more draft."""
    goes_on = draft.act == "ran" and draft.leaves == "on" and any(f"'{verb}" in draft.why for verb in _KEEPS)
    if goes_on and any(r.kind == draft.kind and r.leaves == draft.leaves for r in running):
        return running  # "leaving it to finish", of what was started before
    if draft.act == "ran" and draft.leaves not in {None, "as found"}:
        kept = [
            r
            for r in running
            if not (r.component == draft.component and r.part == draft.part and r.leaves == draft.leaves)
            or (r.why == WILL_NOT_RESET and draft.why != WILL_NOT_RESET)
        ]
        return [*kept, draft]
    if not running:
        return running
    if draft.act in {"ran", "saw"}:
        tripped = any(r.leaves == "tripped" and r.component == draft.component for r in running)
        if tripped and {"reset", "resets"} & set(phrase(draft.text)) and not _NOT & set(phrase(draft.text)):
            return [
                r
                for r in running
                if not (r.leaves == "tripped" and r.component == draft.component and r.why != WILL_NOT_RESET)
            ]
    return _stopped(running, draft) if draft.act == "stopped" else running


def _stopped(running: list[Draft], stop: Draft) -> list[Draft]:
    said = phrase(stop.text)
    if cues("operations", "put_back_all").first(said):
        return []
    if cues("operations", "stop_all").first(said):
        return [r for r in running if r.leaves not in {"on", "filled"}]
    ranked = [(_closes(stop, run) or _hands_back(stop, run), index) for index, run in enumerate(running)]
    best = max(ranked)
    return [r for index, r in enumerate(running) if index != best[1]] if best[0] else running
