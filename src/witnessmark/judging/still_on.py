"""Still on: what was left running, open, filled, unlatched, tripped or at another setting, and not stopped.

It closes with a ``stopped`` for it, or a ``settled`` about it that says with whom it was agreed to leave it so. While
something is still on, having to put it back is part of that one loose end; *put back* begins where it ends.
"""

from __future__ import annotations

from collections.abc import Iterator
from datetime import timedelta

from witnessmark.judging.model import LooseEnd, Running
from witnessmark.judging.scene import Scene
from witnessmark.packs.model import Procedure
from witnessmark.views.procedures import followed
from witnessmark.views.running import Run

__all__ = ["now_running", "still_on"]

_LONGEST = timedelta(days=366)
_HOW_LEFT = {
    "on": "on", "open": "open", "filled": "filled", "unlatched": "unlatched", "tripped": "tripped",
    "changed": "at another setting",
}  # fmt: skip


def _agreed(scene: Scene, run: Run) -> str:
    """With whom it was agreed to leave this on; empty when with nobody."""
    names = (body.with_whom for _, body in scene.decisions.about(run.fact.id, "still on"))
    return next((name.strip() for name in names if name and name.strip()), "")


def procedure_of(scene: Scene, run: Run) -> Procedure | None:
    """The procedure that a run followed."""
    return followed(run.body, run.kind, scene.packs, scene.procedures)


def _left(run: Run) -> str:
    how = _HOW_LEFT.get(run.body.left, run.body.left)
    return f"{how} ({run.body.setting})" if run.body.setting and run.body.setting.lower() != how else how


def _thing(scene: Scene, run: Run) -> str:
    return scene.where(run.fact) or run.body.what or "something"


def now_running(scene: Scene) -> tuple[Running, ...]:
    """Everything that nobody has stopped, oldest first; what was agreed to stay so is still running, and says so."""
    rows: list[Running] = []
    for run in scene.runs:
        if not run.open or run.since is None:
            continue
        agreed = _agreed(scene, run)
        words = f"{_thing(scene, run)}: {_left(run)}" + (f", left so by agreement with {agreed}" if agreed else "")
        rows.append(Running(run.fact.id, words, run.body.left, run.since, run.place, run.fact.component))
    return tuple(rows)


def still_on(scene: Scene) -> Iterator[LooseEnd]:
    """The loose ends *still on*, oldest first."""
    for run in scene.runs:
        if not run.open or _agreed(scene, run):
            continue
        procedure = procedure_of(scene, run)
        minutes = procedure.at_most if procedure else None
        by = None
        if minutes is not None and run.since is not None:
            by = run.since + min(timedelta(minutes=max(0, minutes)), _LONGEST)
        found = f"It was found {run.found}. " if run.found else ""
        how = f"{procedure.put_back.rstrip('.')}. " if procedure and procedure.put_back else ""
        since = f" since {run.since:%H:%M}" if run.since else ""
        late = by is not None and scene.now > by
        over = f", longer than the {minutes} minutes it may be left" if late else ""
        kind = scene.packs.kinds.get(run.kind)
        yield LooseEnd(
            sort="still on",
            key=f"still on {run.fact.id}",
            words=f"{_thing(scene, run)}: still {_left(run)}{since}{over}",
            entries=(run.fact.id,),
            place=run.place,
            component=run.fact.component,
            opened=run.since,
            latest=by,
            late=late,
            next=f"{found}{how}Record that it is put back, or with whom it was agreed to leave it so.",
            cautions=(procedure.cautions if procedure and procedure.cautions else kind.cautions if kind else ()),
        )
