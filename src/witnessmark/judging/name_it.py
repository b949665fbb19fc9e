"""Name it: pictures, recordings and documents that no entry speaks of (``views.media``).

A photo of damage is not asked for here: until a finding or a dismissal refers to it, *write up* asks for it.
"""

from __future__ import annotations

from collections.abc import Iterator

from witnessmark.judging.model import LooseEnd
from witnessmark.judging.scene import Scene
from witnessmark.views.moments import instant

__all__ = ["name_it"]


def name_it(scene: Scene) -> Iterator[LooseEnd]:
    """The loose ends *name it*, in the order the media were taken; one for each ``took``."""
    asked: set[str] = set()
    for medium in scene.media:
        took, body = medium.took, medium.body
        if took is None or body is None or body.damage or not medium.unnamed or took.id in asked:
            continue
        asked.add(took.id)
        named = " ".join(filter(None, [body.sort, body.name])) or "file"
        thing = scene.where(took)
        shows = f": {body.shows}" if body.shows else ""
        yield LooseEnd(
            sort="name it",
            key=f"name it {took.id}",
            words=f"{named}{f' ({thing})' if thing else ''}{shows}: no entry speaks of it",
            entries=(took.id,),
            place=scene.house.place_of(took),
            component=took.component,
            opened=instant(took.at),
            next="Say which entry it belongs to, record what it shows, or settle it with the reason.",
        )
