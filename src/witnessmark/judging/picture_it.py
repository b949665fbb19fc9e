"""Picture it: something adverse was said and no picture shows it.

A client, and whoever reads the report in five years, believes a picture sooner than a sentence, and it can be taken
only while one is there. So this asks for one and keeps nothing from being issued. Closed by a picture (or thermal
frame, or film) that speaks of the entry, by a finding that rests on both it and a picture, or by a ``settled``.
"""

from __future__ import annotations

from collections.abc import Iterator

from witnessmark.journal.acts import Found, Took
from witnessmark.judging.model import LooseEnd
from witnessmark.judging.scene import Scene
from witnessmark.views.moments import instant

__all__ = ["picture_it"]

_PICTURES = frozenset({"photo", "thermal", "video"})


def picture_it(scene: Scene) -> Iterator[LooseEnd]:
    """The loose ends *picture it*, in the order of the adverse facts. Linear in the facts."""
    pictures = {
        m.took.id for m in scene.media if m.took is not None and m.body is not None and m.body.sort in _PICTURES
    }
    pictured = {
        entry
        for m in scene.media
        if m.took is None or m.took.id in pictures
        for entry in m.spoken_of_by
    }  # fmt: skip
    for row in scene.adverse:
        fact, dealt = row.fact, row.dealt_with_by
        if isinstance(fact.body, Took) or row.evidence or fact.id in pictured or fact.media:
            continue
        if scene.decisions.about(fact.id, "picture it"):
            continue
        if dealt is not None and _shown_by(dealt.body, pictures):
            continue
        if dealt is not None and not isinstance(dealt.body, Found):
            continue  # dismissed with a reason: nothing is left to show
        thing = scene.where(fact)
        yield LooseEnd(
            sort="picture it",
            key=f"picture it {fact.id}",
            words=f"{thing}: {row.words}" if thing and row.words else thing or row.words or "adverse",
            entries=(fact.id,),
            place=scene.house.place_of(fact),
            component=fact.component,
            opened=instant(fact.at),
            next="Take a picture of it while you are there, name one that shows it, or settle it.",
        )


def _shown_by(body: object, pictures: set[str]) -> bool:
    return isinstance(body, Found) and not pictures.isdisjoint(body.rests_on)
