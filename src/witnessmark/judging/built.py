"""In which year a component was built, as far as the record and the job say.

The latest counts: the house, an alteration whose words name the component's kind, or a year that was identified on
the component itself. What was put in later had to meet what was in force then.
"""

from __future__ import annotations

import re

from witnessmark.journal.acts import Identified
from witnessmark.journal.fold import Fact
from witnessmark.judging.scene import Scene

__all__ = ["year_of"]

_YEAR = re.compile(r"(?<![0-9])(1[6-9][0-9]{2}|20[0-9]{2})(?![0-9])")
_MADE = frozenset({"made", "installed", "built", "year", "replaced"})


def _names(scene: Scene, fact: Fact) -> list[str]:
    kind = scene.packs.kinds.get(scene.house.kind_of(fact))
    label = scene.house.label_of(fact) if fact.component else ""
    names = [label if label != fact.component else ""] + ([kind.name, kind.plural, *kind.spoken] if kind else [])
    return [name.lower() for name in names if name]


def year_of(scene: Scene, fact: Fact) -> int | None:
    """The year that what *fact* is about was built, altered or made; None when nobody has said."""
    years = [scene.job.year_built] if scene.job.year_built is not None else []
    if scene.job.altered:
        names = [re.compile(rf"\b{re.escape(name)}\b") for name in _names(scene, fact)]
        years += [a.year for a in scene.job.altered if any(name.search(a.what.lower()) for name in names)]
    component = scene.house.components.get(fact.component) if fact.component else None
    for one in component.facts if component else ():
        body = one.body
        if isinstance(body, Identified) and body.attribute in _MADE and body.part == getattr(fact.body, "part", None):
            years += [int(year) for year in _YEAR.findall(body.value)[:1]]
    return max(years, default=None)
