"""Look again: a second look that a procedure asks for and that nobody has taken.

It closes with the look itself (``views.looks`` says which counts, and tells a late one as late), or with a
``settled`` about the run.
"""

from __future__ import annotations

from collections.abc import Iterator

from witnessmark.judging.model import LooseEnd
from witnessmark.judging.scene import Scene
from witnessmark.views.looks import Look

__all__ = ["look_again"]


def _sentence(look: Look, scene: Scene) -> str:
    zone = look.opened.tzinfo
    earliest, latest = (moment.astimezone(zone) for moment in (look.earliest, look.latest))
    late = " The time for it has passed: look now, and it will be told as late." if scene.now > look.latest else ""
    return (
        f"{look.asked.words.rstrip('.')}, between {earliest:%H:%M} and {latest:%H:%M}, and record what is seen.{late}"
    )


def look_again(scene: Scene) -> Iterator[LooseEnd]:
    """The loose ends *look again*, in the order they were opened."""
    for look in scene.looks:
        if look.by is not None or scene.decisions.about(look.ran.id, "look again"):
            continue
        thing = scene.where(look.ran) or look.procedure.name
        kind = scene.packs.kinds.get(look.procedure.kind)
        yield LooseEnd(
            sort="look again",
            key=f"look again {look.ran.id}",
            words=f"{thing}: {look.asked.words.rstrip('.')}, because {look.asked.why.rstrip('.')}"
            if look.asked.why
            else f"{thing}: {look.asked.words.rstrip('.')}",
            entries=(look.ran.id,),
            place=scene.house.place_of(look.ran),
            component=look.ran.component,
            opened=look.opened,
            earliest=look.earliest,
            latest=look.latest,
            late=scene.now > look.latest,
            next=_sentence(look, scene),
            cautions=look.procedure.cautions or (kind.cautions if kind else ()),
        )
