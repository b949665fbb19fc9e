"""Drafted findings: what they say, what they rest on, and what is merged."""

from record_builder import Visit, after
from small_packs import job_packs
from witnessmark.journal.acts import Absent, Count, Found, Listed, Placed, Read, Saw, Took
from witnessmark.journal.job import Job
from witnessmark.judging import DraftFinding, draft_findings, standing

JOB = Job("job", rulebook="us.test", date="2026-02-03", year_built=2010)


def drafts(visit: Visit) -> tuple[DraftFinding, ...]:
    packs = job_packs()
    record = visit.record()
    return draft_findings(record, packs, standing(record, packs, JOB, after(60)))


def test_facts_of_one_component_and_condition_make_one_draft() -> None:
    visit = Visit()
    visit.add(Placed("Crawl space", "crawl-space"), place="c")
    visit.add(Listed("joist", "Joists"), place="c", component="j")
    first = visit.add(Saw("soft at the bath drain", "adverse", condition="rot"), component="j")
    second = visit.add(Saw("soft at the sill", "adverse", condition="rot"), component="j")
    photo = visit.add(Took(damage=True, speaks_of=(second,)), media=("a" * 64,))
    other = visit.add(Saw("notched", "adverse"), component="j")
    rot, notch = drafts(visit)
    assert rot.rests_on == (first, second, photo)
    assert rot.seen == "The wood is soft and decayed. Soft at the bath drain. Soft at the sill."
    assert (rot.title, rot.why, rot.if_left, rot.do, rot.by, rot.direct, rot.stake, rot.urgency) == (
        "Rotted wood", "Rotted wood carries less.", "It spreads and the member can fail.", "Have it repaired.",
        "carpenter", "repair", "building", "soon",
    )  # fmt: skip
    assert (rot.kind, rot.condition, rot.place, rot.component) == ("joist", "rot", "c", "j")
    assert (notch.rests_on, notch.title, notch.seen) == ((other,), "Joists: notched", "Notched.")
    assert all((notch.why, notch.if_left, notch.do)), "a plain draft still has its four parts"
    assert notch.by == "carpenter", "the trade most conditions of the kind name"


def test_a_reading_takes_the_condition_its_limit_names() -> None:
    visit = Visit()
    read = visit.add(Read("water-temperature", "131", "[degF]", kind="sink"), place="k")
    (draft,) = drafts(visit)
    assert (draft.condition, draft.rests_on, draft.urgency) == ("scald", (read,), "now")
    assert draft.seen == (
        "The water is hotter than the limit. 131 °F was read; the limit is at most 120 °F (International Residential "
        "Code, 2018, R311). A must where this document was adopted."
    )


def test_a_reading_without_a_condition_is_told_plainly() -> None:
    visit = Visit()
    visit.add(Listed("stair", "Cellar stair"), component="s")
    visit.add(Read("riser-height", "8.25", "[in_i]"), component="s")
    (draft,) = drafts(visit)
    assert draft.title == "Cellar stair: riser height 8 1/4 in"
    assert draft.stake == "people"
    assert draft.why == "A riser is at most 7 3/4 in high."


def test_what_is_missing_takes_the_condition_of_its_absence() -> None:
    visit = Visit()
    visit.add(Absent("stair", adverse=True), place="hall")
    (draft,) = drafts(visit)
    assert draft.condition == "no-handrail"
    assert draft.seen == "The stair has no handrail. Stair was looked for and is not there."


def test_counts_are_told() -> None:
    visit = Visit()
    visit.add(Saw("not grounded", "adverse", kind="receptacle", count=Count(12, 40, 3)))
    (draft,) = drafts(visit)
    assert draft.seen == "Not grounded (3 of 12 looked at, 40 in all)."


def test_what_is_written_up_is_not_drafted_again() -> None:
    visit = Visit()
    saw = visit.add(Saw("notched", "adverse", kind="joist"))
    assert len(drafts(visit)) == 1
    visit.add(Found("Notched joist", rests_on=(saw,)))
    assert drafts(visit) == ()


def test_a_defect_recorded_without_words_still_says_what_was_seen() -> None:
    visit = Visit()
    visit.add(Saw("", None, condition="a-condition-no-pack-has"), place="k", component="one")
    (draft,) = drafts(visit)
    assert draft.seen == "This was recorded as a defect, without words that say what was seen."
