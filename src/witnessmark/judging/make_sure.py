"""Make sure: what the inspector doubted and has not settled, seen for sure or excused (``views.doubts``)."""

from __future__ import annotations

from collections.abc import Iterator

from witnessmark.judging.model import LooseEnd
from witnessmark.judging.scene import Scene
from witnessmark.views.moments import instant

__all__ = ["make_sure"]


def make_sure(scene: Scene) -> Iterator[LooseEnd]:
    """The loose ends *make sure*, in the order they were opened."""
    for doubt in scene.doubts:
        if doubt.closed_by is not None:
            continue
        fact = doubt.fact
        thing = scene.where(fact)
        about = doubt.about if doubt.about in scene.facts else None
        said = doubt.words or "in doubt"
        yield LooseEnd(
            sort="make sure",
            key=f"make sure {fact.id}",
            words=f"{thing}: not sure: {said}" if thing else f"not sure: {said}",
            entries=(fact.id, about) if about else (fact.id,),
            place=scene.house.place_of(fact),
            component=fact.component,
            opened=instant(fact.at),
            next="Look again and record what is seen for sure, settle it with the reason, or say why it was not inspected.",
        )
