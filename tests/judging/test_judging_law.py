"""What laws ask beyond duties: days of delivery, the method wanted, what lies near plumbing, what the report must hold."""

from dataclasses import replace
from datetime import date, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from record_builder import Visit, after
from small_packs import SOURCE, duty, job_packs
from witnessmark.journal.acts import (
    Absent,
    Arrived,
    Count,
    Found,
    Identified,
    Listed,
    Placed,
    Read,
    Saw,
    Settled,
    Skipped,
)
from witnessmark.journal.job import Job
from witnessmark.judging import standing, under_each
from witnessmark.judging.code_claims import code_claims
from witnessmark.judging.deadline import Anchors, deadlines, federal_holidays
from witnessmark.judging.departures import departures
from witnessmark.judging.item_states import item_states
from witnessmark.judging.law_summary import summary
from witnessmark.judging.observed import observed
from witnessmark.judging.scene import Scene, gather
from witnessmark.judging.statements import statements
from witnessmark.packs.law import ConditionWord, Delivery, Departure, Duty, Rulebook, Subject, Summary
from witnessmark.packs.model import Packs

JOB = Job("job", rulebook="us.test", date="2026-02-03", year_built=1990)

#: 22 TAC 535.222(a): two days from full payment, or from completion where it was paid before (read in copies).
TEXAS = Delivery(
    2, "calendar", "later of payment and completion", "535.222(a)", "seen", "within two days", waivable=True
)
#: NCGS 143-151.58: by the date in the agreement, else within three business days (read in copies).
CAROLINA = (
    Delivery(0, "calendar", "agreed date", "143-151.58(a)", "seen", "by the date in the agreement"),
    Delivery(3, "business", "completion", "143-151.58(a)", "seen", "within three business days"),
)


def book(*deliveries: Delivery, **more: object) -> Rulebook:
    made = Rulebook("us.test", "Test", "us.tx", "a law", "2000-01-01", "", (), SOURCE, deliveries=deliveries)
    return replace(made, **more)  # type: ignore[arg-type]  # test rows


MONDAY = date(2026, 5, 4)
WEDNESDAY, THURSDAY, FRIDAY = (MONDAY + timedelta(n) for n in (2, 3, 4))


@pytest.mark.parametrize(
    ("rules", "anchors", "due"),
    [
        ((TEXAS,), Anchors(completion=WEDNESDAY, payment=MONDAY), FRIDAY),
        ((TEXAS,), Anchors(completion=MONDAY, payment=THURSDAY), date(2026, 5, 9)),
        ((TEXAS,), Anchors(completion=MONDAY), None),
        ((TEXAS,), Anchors(MONDAY, THURSDAY, FRIDAY, waived=True), FRIDAY),
        (CAROLINA, Anchors(completion=THURSDAY), date(2026, 5, 12)),
        (CAROLINA, Anchors(completion=MONDAY, agreed=FRIDAY), FRIDAY),
        ((), Anchors(completion=MONDAY), None),
        # Thanksgiving (fourth Thursday of November, 5 U.S.C. 6103) is no business day.
        (CAROLINA, Anchors(completion=date(2026, 11, 25)), date(2026, 12, 1)),
    ],
)
def test_the_day_a_report_is_due(rules: tuple[Delivery, ...], anchors: Anchors, due: date | None) -> None:
    found = deadlines(book(*rules), anchors)
    assert found.due == due
    assert found.words


def test_federal_holidays_of_a_year() -> None:
    # Office of Personnel Management, federal holidays 2027 (recalled): Juneteenth on Friday 18, Independence Day on
    # Monday 5 July, Christmas on Friday 24.
    assert {date(2027, 6, 18), date(2027, 7, 5), date(2027, 12, 24), date(2027, 11, 25)} <= federal_holidays(2027)
    # New Year's Day 2028 is a Saturday: observed on Friday 31 December 2027.
    assert date(2027, 12, 31) in federal_holidays(2027)
    assert date(2026, 5, 25) in federal_holidays(2026)


@given(st.dates(date(2000, 1, 1), date(2100, 1, 1)), st.integers(1, 30))
def test_business_days_are_never_weekend_or_holiday_and_grow(start: date, count: int) -> None:
    rule = Delivery(count, "business", "completion", "s", "seen", "w")
    due = deadlines(book(rule), Anchors(completion=start)).due
    assert due is not None
    assert due.weekday() < 5
    assert due not in federal_holidays(due.year)
    later = deadlines(book(replace(rule, count=count + 1)), Anchors(completion=start)).due
    assert later is not None
    assert later > due


ROOF = Subject("the roof", sorts=("roof",), attributes=("method",))
WALK = duty("T-1", "enter", ROOF, extent="all", default_method="walked on the roof", method_reasons=("unsafe",))


def roof(*methods: str, reason: str = "") -> str:
    visit = Visit()
    visit.add(Placed("Roof", "roof"), place="roof")
    for method in methods:
        visit.add(Identified("method", method), place="roof")
    if reason:
        visit.add(Skipped("walking on it", reason), place="roof")
    (row,) = standing(visit.record(), job_packs(WALK), JOB, after(60)).duties
    return row.status


@pytest.mark.parametrize(
    ("methods", "reason", "status"),
    [
        (("walked on the roof",), "", "met"),
        (("from the ground", "walked on the roof"), "", "met"),
        (("from the ground",), "unsafe", "excused"),
        (("from the ground",), "", "open"),
        (("from the ground",), "no-access", "open"),
        ((), "unsafe", "excused"),
        ((), "", "open"),
    ],
)
def test_another_way_needs_a_lawful_reason(methods: tuple[str, ...], reason: str, status: str) -> None:
    assert roof(*methods, reason=reason) == status


OUTLETS = Subject("receptacles near plumbing", ("receptacle",), near="plumbing", within="6")


def outlets(visit: Visit, row: Duty | None = None) -> str:
    packs = job_packs(row or duty("T-1", "test", OUTLETS, extent="all"))
    (covered,) = standing(visit.record(), packs, JOB, after(60)).duties
    return covered.status


def kitchen_and_bedroom() -> Visit:
    visit = Visit()
    visit.add(Placed("Kitchen", "kitchen"), place="k")
    visit.add(Placed("Bedroom", "bedroom"), place="b")
    return visit


class TestNearPlumbing:
    def test_every_listed_one_near_plumbing_is_asked_and_no_other(self) -> None:
        visit = kitchen_and_bedroom()
        visit.add(Listed("receptacle", "left of the sink"), place="k", component="k.1")
        visit.add(Listed("receptacle", "by the range"), place="k", component="k.2")
        visit.add(Listed("receptacle", "by the bed"), place="b", component="b.1")
        visit.add(Saw("tested", "sound"), component="k.1")
        assert outlets(visit) == "open"
        visit.add(Saw("tested", "sound"), component="k.2")
        assert outlets(visit) == "met"

    def test_one_that_was_measured_farther_off_is_not_asked(self) -> None:
        visit = kitchen_and_bedroom()
        for name in ("k.1", "k.2"):
            visit.add(Listed("receptacle", name), place="k", component=name)
        visit.add(Saw("tested", "sound"), component="k.1")
        visit.add(Read("distance-to-water", "73", "[in_i]"), component="k.2")
        assert outlets(visit) == "met"
        visit.add(Read("distance-to-water", "6", "[ft_i]"), component="k.2")
        assert outlets(visit) == "open"

    def test_without_a_list_a_full_count_in_each_place_is_needed(self) -> None:
        visit = kitchen_and_bedroom()
        visit.add(Saw("tested", "sound", kind="receptacle", count=Count(3, 5)), place="k")
        assert outlets(visit) == "open"
        visit.add(Saw("tested", "sound", kind="receptacle", count=Count(5, 5)), place="k")
        assert outlets(visit) == "met"

    def test_a_sink_makes_any_place_one_with_plumbing(self) -> None:
        visit = kitchen_and_bedroom()
        visit.add(Listed("sink", "Sink"), place="b", component="b.sink")
        visit.add(Saw("tested", "sound", kind="receptacle", count=Count(5, 5)), place="k")
        assert outlets(visit) == "open"


def test_one_in_each_habitable_room_and_nowhere_else() -> None:
    heat = duty("T-1", "verify", Subject("a heat source", ("furnace",)), extent="one_per_habitable_room")
    visit = kitchen_and_bedroom()
    visit.add(Placed("Hall", "hall"), place="h")
    visit.add(Listed("furnace", "in the hall"), place="h", component="h.f")
    for place in ("k", "b"):
        visit.add(Saw("register blows warm", "sound", kind="furnace"), place=place)
    assert outlets(visit, heat) == "met"


def scene(visit: Visit, packs: Packs, job: Job = JOB) -> Scene:
    return gather(visit.record(), packs, job, after(60))


def with_book(**more: object) -> Packs:
    packs = job_packs()
    return replace(packs, rulebooks={"us.test": replace(packs.rulebooks["us.test"], **more)})  # type: ignore[arg-type]  # test rows


def test_a_visit_is_held_against_several_laws_at_once() -> None:
    packs = job_packs(duty("T-1", "inspect", Subject("the range", ("range",))))
    other = replace(packs.rulebooks["us.test"], id="us.other", duties=(WALK,))
    packs = replace(packs, rulebooks={**packs.rulebooks, "us.other": other})
    visit = kitchen_and_bedroom()
    visit.add(Listed("range", "Range"), place="k", component="r")
    visit.add(Saw("works", "sound"), component="r")
    found = under_each(visit.record(), packs, JOB, after(60), ("us.test", "us.other", "us.none"))
    assert {name: [row.status for row in rows] for name, rows in found.items()} == {
        "us.test": ["met"], "us.other": ["open"], "us.none": [],
    }  # fmt: skip


def test_a_text_is_wanted_when_its_trigger_holds() -> None:
    rule = duty("T-1", "report", mandatory_text="Words of the law.", verbatim=True, min_pt=10, text_when="has range")
    visit = kitchen_and_bedroom()
    assert statements(scene(visit, job_packs(rule))) == ()
    visit.add(Listed("range", "Range"), place="k", component="r")
    (told,) = statements(scene(visit, job_packs(rule)))
    assert (told.text, told.verbatim, told.min_pt) == ("Words of the law.", True, 10)


def test_what_was_observed_is_said_positively() -> None:
    visit = kitchen_and_bedroom()
    visit.add(Listed("range", "Range"), place="k", component="r")
    visit.add(Listed("furnace", "Furnace"), component="f")
    seen = visit.add(Saw("works", "sound"), component="r")
    (row,) = observed(scene(visit, job_packs()))
    assert (row.system, row.kinds, row.entries) == ("appliances", ("range",), (seen,))


def test_departures_are_held_against_the_closed_list_and_the_notice() -> None:
    rule = Departure("a closed list", "227(f)", "seen", ("unsafe",), "at the earliest practical opportunity")
    visit = Visit()
    before = visit.add(Skipped("the attic", "unsafe"), 1)
    visit.add(Arrived(), 2)
    late = visit.add(Skipped("the crawl space", "no-access"), 3)
    found = {row.entry: row for row in departures(scene(visit, with_book(departure=rule)))}
    assert (found[before].listed, found[before].noticed, found[before].words) == (True, True, "")
    assert (found[late].listed, found[late].noticed) == (False, False)
    assert found[late].words == "at the earliest practical opportunity"
    visit.add(Settled((late,), how="told", with_whom="the client"), 4)
    assert {row.entry: row.noticed for row in departures(scene(visit, with_book(departure=rule)))}[late]


WORDS = (
    ConditionWord("Inspected", "inspected", "form", "memory", "I"),
    ConditionWord("Not inspected", "not inspected", "form", "memory", "NI"),
    ConditionWord("Deficient", "deficient", "form", "memory", "D", "finding"),
)


def test_the_laws_own_words_for_each_item_and_its_summary() -> None:
    visit = kitchen_and_bedroom()
    for name in ("range", "sink", "furnace", "deck"):
        visit.add(Listed(name, name), place="k", component=name)
    visit.add(Saw("works", "sound"), component="range")
    visit.add(Saw("leaks", "adverse"), component="sink")
    visit.add(Skipped("", "unsafe"), component="furnace")
    leak = visit.add(Found("Leak"), component="sink")
    packs = with_book(condition_words=WORDS, summary=Summary("s", "158", "seen", ("deficient",), from_systems=1))
    found = {row.component: row for row in item_states(scene(visit, packs))}
    codes = {name: row.word.code if row.word else "" for name, row in found.items()}
    assert codes == {"range": "I", "sink": "D", "furnace": "NI", "deck": "NI"}
    made = summary(scene(visit, packs))
    assert made is not None
    assert made.entries == (leak,)
    assert made.required
    assert summary(scene(visit, job_packs())) is None


@pytest.mark.parametrize(
    ("words", "job", "missing"),
    [
        ("The guard is lower than the building code asks.", replace(JOB, year_built=None), 2),
        ("The guard is lower than IRC R312.1.2 asks.", replace(JOB, year_built=None), 1),
        ("The guard is lower than IRC R312.1.2 asks.", JOB, 0),
        ("The guard is 30 in high and wobbles.", JOB, None),
        ("The lock needs a code to open.", JOB, None),
    ],
)
def test_a_claim_of_code_needs_its_date_and_section(words: str, job: Job, missing: int | None) -> None:
    visit = Visit()
    visit.add(Found("Low guard", words))
    found = code_claims(scene(visit, with_book(code_claims="date and section"), job))
    assert [len(claim.missing) for claim in found] == ([] if missing is None else [missing])
    assert code_claims(scene(visit, job_packs(), job)) == ()


def test_one_in_each_place_of_a_sort_or_said_to_be_missing_there() -> None:
    rule = duty(
        "T-1", "report_def", Subject("smoke alarms", ("smoke-alarm",), sorts=("bedroom",)), extent="one_per_place"
    )
    visit = Visit()
    for name in ("b1", "b2"):
        visit.add(Placed(name, "bedroom"), place=name)
    visit.add(Saw("works", "sound", kind="smoke-alarm"), place="b1")
    assert outlets(visit, rule) == "open"
    visit.add(Absent("smoke-alarm"), place="b2")
    assert outlets(visit, rule) == "met"


def test_a_subject_can_have_a_condition_of_its_own() -> None:
    range_, drain = Subject("the range", ("range",)), Subject("its vent", ("vent-hood",), when="has range")
    rule = duty("T-1", "inspect", range_, drain)
    visit = Visit()
    visit.add(Absent("range"))
    (row,) = standing(visit.record(), job_packs(rule), JOB, after(60)).duties
    assert [subject.status for subject in row.subjects] == ["met", "not asked"]


def test_what_is_absent_is_not_present_or_deficient_in_the_laws_words() -> None:
    words = (*WORDS, ConditionWord("Not present", "not present", "form", "memory", "NP"))
    visit = kitchen_and_bedroom()
    visit.add(Absent("dishwasher"), place="k")
    visit.add(Absent("smoke-alarm", adverse=True), place="b")
    found = {
        row.kind: row.word.code if row.word else ""
        for row in item_states(scene(visit, with_book(condition_words=words)))
    }
    assert found == {"dishwasher": "NP", "smoke-alarm": "D"}


def test_texts_of_the_agreement_are_not_for_the_report() -> None:
    rule = duty("T-1", "contract", mandatory_text="Words of the agreement.")
    assert statements(scene(kitchen_and_bedroom(), job_packs(rule))) == ()


def test_a_finding_that_rests_on_a_sound_look_is_no_fault_for_the_summary() -> None:
    visit = kitchen_and_bedroom()
    for name in ("range", "furnace"):
        visit.add(Listed(name, name), place="k", component=name)
    fine = visit.add(Saw("runs; its filter is due", "sound"), component="furnace")
    bad = visit.add(Saw("does not heat", "adverse"), component="range")
    visit.add(Found("Filter due", rests_on=(fine,)), component="furnace")
    broken = visit.add(Found("Does not heat", rests_on=(bad,)), component="range")
    made = summary(scene(visit, with_book(summary=Summary("s", "158", "seen", ("deficient",)))))
    assert made is not None
    assert made.entries == (broken,)


def test_entered_in_part_is_not_entered() -> None:
    rule = duty("T-1", "enter", Subject("the attic", sorts=("attic",), attributes=("method",)), extent="all")
    visit = Visit()
    visit.add(Placed("Attic", "attic"), place="a")
    visit.add(Identified("method", "entered in part"), place="a")
    assert outlets(visit, rule) == "open"
    visit.add(Skipped("the far end", "unsafe"), place="a")
    assert outlets(visit, rule) == "excused"
