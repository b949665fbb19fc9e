"""Put back: what was stopped but does not stand again as it was found.

It opens when the last ``stopped`` about a run states a state, and that state does not restore what was found (the
set-point it had, closed for what was left open, latched for what was left unlatched …). A ``stopped`` that states no
state means put back: that is what the act records. It closes with a ``stopped`` or a ``settled`` that gives the state
as found, or a ``settled`` that gives none or says with whom it was agreed.

Decided here: one run gives one loose end at a time. While it is still on, *still on* alone is shown; once it is
stopped, *put back* alone.
"""

from __future__ import annotations

from collections.abc import Iterator

from witnessmark.journal.acts import Stopped
from witnessmark.judging.model import LooseEnd
from witnessmark.judging.scene import Scene
from witnessmark.judging.still_on import procedure_of
from witnessmark.views.moments import instant
from witnessmark.views.running import Run
from witnessmark.views.states import contradicts, restores

__all__ = ["put_back"]


def _as_found(run: Run, state: str | None) -> bool:
    if state is None or not state.strip():
        return True
    return restores(state, run.found) if run.found else not contradicts(state, run.body.left)


def _settled(scene: Scene, run: Run) -> bool:
    return any(
        _as_found(run, body.state) or (body.with_whom and body.with_whom.strip())
        for _, body in scene.decisions.about(run.fact.id, "put back")
    )


def put_back(scene: Scene) -> Iterator[LooseEnd]:
    """The loose ends *put back*, oldest first."""
    for run in scene.runs:
        stop = run.restated
        if not run.leaves or run.taken_over is not None or stop is None or not isinstance(stop.body, Stopped):
            continue
        if _as_found(run, stop.body.state) or _settled(scene, run):
            continue
        procedure = procedure_of(scene, run)
        how = f"{procedure.put_back.rstrip('.')}. " if procedure and procedure.put_back else ""
        was = f"was found {run.found}" if run.found else f"was left {run.body.left}"
        thing = scene.where(run.fact) or run.body.what or "something"
        kind = scene.packs.kinds.get(run.kind)
        yield LooseEnd(
            sort="put back",
            key=f"put back {run.fact.id}",
            words=f"{thing}: {was} and now stands {stop.body.state}",
            entries=(run.fact.id, stop.id),
            place=run.place,
            component=run.fact.component,
            opened=instant(stop.at),
            next=f"{how}Record the state it stands in once it is as found, or with whom it was agreed to leave it so.",
            cautions=(procedure.cautions if procedure and procedure.cautions else kind.cautions if kind else ()),
        )
