"""Limits that hold only in some places, and limits that say since when and where they are asked for."""

from dataclasses import replace

from record_builder import Visit, after
from small_packs import small_packs
from witnessmark.journal.acts import Placed, Read
from witnessmark.journal.job import Job
from witnessmark.judging import standing

JOB = Job("job", date="2026-02-03", year_built=1962)


def judged(place: str | None, **more: object) -> list[str]:
    packs = small_packs()
    row = replace(packs.criteria["tap"], where=("kitchen",), **more)  # type: ignore[arg-type]  # test rows
    packs = replace(packs, criteria={"tap": row})
    visit = Visit()
    visit.add(Placed("Kitchen", "kitchen"), place="k")
    visit.add(Placed("Attic", "attic"), place="a")
    visit.add(Read("water-temperature", "130", "[degF]", kind="sink"), place=place)
    return [f"{r.verdict}: {r.words}" for r in standing(visit.record(), packs, JOB, after(9)).readings]


def test_a_limit_for_some_places_is_not_held_against_others() -> None:
    assert judged("k")[0].startswith("beyond")
    assert judged("a")[0].startswith("no criterion")
    assert judged(None)[0].startswith("beyond"), "where the place is not known, the limit is held against the reading"


def test_the_first_edition_and_the_adoption_are_told() -> None:
    (words,) = judged("k", first_edition="IRC 2000", adopted="2004-07-01", built_from=2000, force="law")
    assert "Not yet required when this was built (1962)" in words
    assert "(here from 2004-07-01), first in IRC 2000" in words
