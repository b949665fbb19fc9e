"""Duties: what meets each verb, what excuses, how far each extent reaches, what is asked at all."""

from dataclasses import replace

import pytest

from record_builder import Visit, after
from small_packs import duty, job_packs
from witnessmark.journal.acts import (
    Absent,
    Arrived,
    Body,
    Count,
    Found,
    Identified,
    Listed,
    Placed,
    Ran,
    Read,
    Saw,
    Settled,
    Skipped,
    Took,
)
from witnessmark.journal.job import Job
from witnessmark.judging import DutyCoverage, standing
from witnessmark.packs.model import Duty, Subject

JOB = Job("job", rulebook="us.test", date="2026-02-03")
RANGE = Subject("the range", ("range",))


def cover(visit: Visit, row: Duty, job: Job = JOB, reasons: tuple[str, ...] = ()) -> DutyCoverage:
    (covered,) = standing(visit.record(), job_packs(row, reasons=reasons), job, after(60)).duties
    return covered


def with_range(*bodies: Body) -> Visit:
    visit = Visit()
    visit.add(Placed("Kitchen", "kitchen"), place="k")
    visit.add(Listed("range", "Range"), place="k", component="r")
    for body in bodies:
        visit.add(body, component="r")
    return visit


MATERIAL = replace(RANGE, attributes=("material",))


@pytest.mark.parametrize(
    ("verb", "subject", "body", "status"),
    [
        ("inspect", RANGE, Saw("works", "sound"), "met"),
        ("inspect", RANGE, Ran("oven"), "met"),
        ("inspect", RANGE, Read("x", "1", "A"), "met"),
        ("inspect", RANGE, Identified("make", "Acme"), "met"),
        ("inspect", RANGE, Found("t"), "met"),
        ("inspect", RANGE, Took(name="p.jpg"), "open"),
        ("inspect", replace(RANGE, part="oven"), Saw("works"), "open"),
        ("inspect", replace(RANGE, part="oven"), Saw("works", part="oven"), "met"),
        ("describe", MATERIAL, Identified("material", "steel"), "met"),
        ("describe", MATERIAL, Identified("material", " "), "open"),
        ("describe", MATERIAL, Identified("make", "Acme"), "open"),
        ("describe", MATERIAL, Saw("steel", "sound"), "open"),
        ("describe", RANGE, Saw("worn but works", "sound"), "met"),
        ("report", RANGE, Saw("present"), "met"),
        ("operate", RANGE, Ran("oven"), "met"),
        ("operate", RANGE, Saw("clean"), "open"),
        ("operate", RANGE, Saw("heats", "sound"), "met"),
        ("test", RANGE, Read("volts", "120", "V"), "met"),
        ("verify", RANGE, Saw("bracket", count=Count(1, 1)), "met"),
        ("verify", RANGE, Identified("make", "Acme"), "open"),
        ("probe", RANGE, Saw("firm", "sound"), "met"),
        ("state_method", RANGE, Identified("method", "from the ground"), "met"),
        ("state_method", RANGE, Identified("make", "Acme"), "open"),
        ("state_method", RANGE, Saw("looked at", "sound"), "open"),
        ("advise", RANGE, Found("t"), "met"),
        ("advise", RANGE, Saw("worn", "adverse"), "open"),
        ("advise", RANGE, Saw("fine", "sound"), "met"),
    ],
)  # fmt: skip
def test_what_meets_which_verb(verb: str, subject: Subject, body: Body, status: str) -> None:
    assert cover(with_range(body), duty("T-1", verb, subject)).status == status


def test_met_by_which_entries() -> None:
    visit = with_range(Saw("works", "sound"), Ran("oven"))
    assert cover(visit, duty("T-1", "inspect", RANGE)).entries == ("e003", "e004")


class TestAbsence:
    @pytest.mark.parametrize("verb", ["inspect", "describe", "report", "operate", "test", "verify"])
    def test_absent_meets_while_nothing_of_the_kind_is_there(self, verb: str) -> None:
        visit = Visit()
        visit.add(Absent("range"))
        assert cover(visit, duty("T-1", verb, RANGE)).status == "met"

    def test_absent_of_one_kind_does_not_stand_for_another_that_is_there(self) -> None:
        visit = with_range()
        visit.add(Absent("dishwasher"))
        both = Subject("cooking and washing", ("range", "dishwasher"))
        assert cover(visit, duty("T-1", "inspect", both)).status == "open"
        assert cover(visit, duty("T-1", "report", both)).status == "met"

    def test_absent_of_anything_does_not_meet_a_subject_without_kinds(self) -> None:
        visit = Visit()
        visit.add(Absent("range"))
        subject = Subject("overhead or underground", attributes=("service-entry",))
        assert cover(visit, duty("T-1", "describe", subject)).status == "open"

    def test_a_missing_part_is_a_look_at_the_part(self) -> None:
        visit = with_range(Absent(part="oven"))
        assert cover(visit, duty("T-1", "inspect", replace(RANGE, part="oven"))).status == "met"


class TestExcuses:
    def test_a_lawful_reason_excuses_and_is_told(self) -> None:
        row = cover(with_range(Skipped(reason="no-access")), duty("T-1", "inspect", RANGE))
        assert (row.status, row.subjects[0].why) == ("excused", "no access was provided")
        assert row.entries == ("e003",)

    def test_a_reason_the_duty_does_not_allow_excuses_nothing(self) -> None:
        visit = with_range(Skipped(reason="no-access"))
        row = cover(visit, duty("T-1", "inspect", RANGE, reasons=("unsafe",)))
        assert row.status == "open"
        assert row.subjects[0].why == (
            "nothing recorded; skipped, but the reason given, no access was provided (no-access), is not one that "
            "excuses here; allowed: unsafe"
        )

    def test_the_rulebook_s_reasons_hold_where_the_duty_lists_none(self) -> None:
        visit = with_range(Skipped(reason="no-access"))
        assert cover(visit, duty("T-1", "inspect", RANGE), reasons=("unsafe",)).status == "open"
        assert cover(visit, duty("T-1", "inspect", RANGE), reasons=("no-access",)).status == "excused"

    @pytest.mark.parametrize(("reason", "words", "status"), [
        ("other", None, "open"), ("other", "the cat slept on it", "excused"), ("whim", "whim", "open"), ("", None, "open"),
    ])  # fmt: skip
    def test_a_reason_must_be_known_and_other_needs_words(self, reason: str, words: str | None, status: str) -> None:
        visit = with_range(Skipped(reason=reason, words=words))
        assert cover(visit, duty("T-1", "inspect", RANGE)).status == status

    def test_doing_it_goes_before_an_excuse(self) -> None:
        visit = with_range(Skipped(reason="no-access"), Saw("works", "sound"))
        assert cover(visit, duty("T-1", "inspect", RANGE)).status == "met"

    def test_naming_the_duty_excuses_every_subject(self) -> None:
        visit = Visit()
        visit.add(Skipped(reason="unsafe", duty="T-1"))
        assert cover(visit, duty("T-1", "inspect", RANGE, Subject("sinks", ("sink",)))).status == "excused"
        assert cover(visit, duty("T-2", "inspect", RANGE)).status == "open"

    def test_a_skipped_part_does_not_excuse_the_whole(self) -> None:
        visit = with_range(Skipped(reason="unsafe", part="oven"))
        assert cover(visit, duty("T-1", "inspect", RANGE)).status == "open"
        assert cover(visit, duty("T-1", "inspect", replace(RANGE, part="oven"))).status == "excused"

    def test_a_whole_place_left_out_excuses_what_is_only_found_there(self) -> None:
        visit = Visit()
        visit.add(Placed("Crawl space", "crawl-space"), place="c")
        visit.add(Skipped("crawl space", reason="no-access", whole=True), place="c")
        row = duty("T-1", "inspect", Subject("joists", ("joist",)))
        assert cover(visit, row).status == "excused"
        assert cover(visit, duty("T-2", "inspect", RANGE)).status == "open"
        visit.add(Placed("Second crawl space", "crawl-space"), place="c2")
        assert cover(visit, row).status == "open"

    def test_a_decision_excuses_only_where_any_reason_will_do(self) -> None:
        visit = Visit()
        visit.add(Settled(duty="T-1", how="left out by written agreement"))
        assert cover(visit, duty("T-1", "inspect", RANGE)).status == "excused"
        assert cover(visit, duty("T-1", "inspect", RANGE, reasons=("unsafe",))).status == "open"


class TestExtent:
    def test_all_asks_for_every_listed_component(self) -> None:
        visit = Visit()
        for name in ("a", "b", "c"):
            visit.add(Listed("receptacle", f"Receptacle {name}"), component=name)
        visit.add(Read("volts", "121", "V"), component="a")
        row = duty("T-1", "test", Subject("receptacles", ("receptacle",)), extent="all")
        covered = cover(visit, row)
        assert covered.subjects[0].why == "nothing recorded, for Receptacle b, Receptacle c"
        visit.add(Skipped(reason="no-access"), component="b")
        visit.add(Saw("grounded", "sound"), component="c")
        assert cover(visit, row).status == "excused"

    def test_all_is_not_met_by_a_count_of_a_part(self) -> None:
        row = duty("T-1", "test", Subject("receptacles", ("receptacle",)), extent="all")
        visit = Visit()
        visit.add(Saw("grounded", "sound", kind="receptacle", count=Count(5, 12)))
        assert cover(visit, row).subjects[0].why == "only a part was looked at"
        visit.add(Saw("grounded", "sound", kind="receptacle", count=Count(12, 12)))
        assert cover(visit, row).status == "met"

    def test_representative_is_at_least_one(self) -> None:
        visit = Visit()
        for name in ("a", "b"):
            visit.add(Listed("window", name), component=name)
        row = duty("T-1", "inspect", Subject("windows", ("window",)), extent="representative")
        assert cover(visit, row).status == "open"
        visit.add(Saw("slides", "sound"), component="b")
        assert cover(visit, row).status == "met"

    def test_one_per_room_asks_in_every_habitable_room(self) -> None:
        # Florida 61-30.101: one component per room inside.
        visit = Visit()
        for name, sort in (("Bed 1", "bedroom"), ("Bed 2", "bedroom"), ("Hall", "hall"), ("North", "outside-face")):
            visit.add(Placed(name, sort), place=name)
        row = duty("T-1", "inspect", Subject("windows", ("window",)), extent="one_per_room")
        visit.add(Saw("slides", "sound", kind="window"), place="Bed 1")
        assert cover(visit, row).subjects[0].why == "nothing recorded, for Bed 2"
        visit.add(Absent("window"), place="Bed 2")
        assert cover(visit, row).status == "met", "there is none in that room"
        visit.add(Listed("window", "Hall window"), place="Hall", component="hw")
        assert cover(visit, row).subjects[0].why == "nothing recorded, for Hall"
        visit.add(Skipped(reason="unsafe"), component="hw")
        assert cover(visit, row).status == "excused"

    def test_one_per_side_asks_on_every_face(self) -> None:
        visit = Visit()
        for name in ("north", "south"):
            visit.add(Placed(name, "outside-face", side=name), place=name)
        row = duty("T-1", "inspect", Subject("windows", ("window",)), extent="one_per_side")
        visit.add(Saw("painted", "sound", kind="window"), place="north")
        assert cover(visit, row).subjects[0].why == "nothing recorded, for south"


class TestEnter:
    ATTIC = duty("T-1", "enter", Subject("the attic", sorts=("attic",)))

    def attic(self) -> Visit:
        visit = Visit()
        visit.add(Placed("Attic", "attic"), place="a")
        return visit

    def test_anything_recorded_there_shows_that_the_inspector_was_in(self) -> None:
        visit = self.attic()
        assert cover(visit, self.ATTIC).status == "open"
        visit.add(Took(name="attic.jpg"), place="a")
        assert cover(visit, self.ATTIC).status == "open"
        visit.add(Saw("dry", "sound"), place="a")
        assert cover(visit, self.ATTIC).status == "met"

    def test_a_look_from_the_hatch_is_excused_not_met(self) -> None:
        # WAC 308-408-010: head and shoulders in the hatch is not entering.
        visit = self.attic()
        visit.add(Identified("method", "viewed from the hatch"), place="a")
        assert cover(visit, self.ATTIC).status == "open"
        visit.add(Saw("dry as far as seen", "sound"), place="a")
        visit.add(Skipped("beyond the hatch", reason="unsafe"), place="a")
        assert cover(visit, self.ATTIC).status == "excused"

    def test_every_such_place_is_asked_for(self) -> None:
        visit = self.attic()
        visit.add(Placed("Garage attic", "attic"), place="b")
        visit.add(Saw("dry", "sound"), place="a")
        assert cover(visit, self.ATTIC).subjects[0].why == "nothing recorded, for Garage attic"

    def test_where_there_is_none_it_must_be_said(self) -> None:
        visit = Visit()
        assert cover(visit, self.ATTIC).status == "open"
        visit.add(Absent("attic", what="cathedral ceilings throughout"))
        assert cover(visit, self.ATTIC).status == "met"

    def test_a_slab_has_no_crawl_space(self) -> None:
        row = duty("T-1", "enter", Subject("the crawl space", sorts=("crawl-space",)))
        assert cover(Visit(), row, replace(JOB, foundation="slab on grade")).status == "not asked"
        assert cover(Visit(), row, replace(JOB, foundation="crawl space")).status == "open"


class TestAsked:
    def test_optional_subjects_only_where_such_a_thing_is(self) -> None:
        row = duty("T-1", "inspect", replace(RANGE, optional=True))
        assert cover(Visit(), row).status == "not asked"
        assert cover(with_range(), row).status == "open"

    def test_optional_in_a_sort_of_place(self) -> None:
        subject = Subject("water", ("water-entry", "crawl-space"), sorts=("crawl-space",), optional=True)
        row = duty("T-1", "inspect", subject)
        assert cover(Visit(), row).status == "not asked"
        visit = Visit()
        visit.add(Placed("Crawl space", "crawl-space"), place="c")
        assert cover(visit, row).status == "open"
        visit.add(Absent("water-entry", what="dry"), place="c")
        assert cover(visit, row).status == "open", "the space is there; that it is dry is seen, not absent"
        visit.add(Saw("dry", "sound", kind="water-entry"), place="c")
        assert cover(visit, row).status == "met"

    @pytest.mark.parametrize(
        ("when", "job", "outdoor", "status"),
        [
            ("attached garage", replace(JOB, attached_garage=True), None, "open"),
            ("attached garage", replace(JOB, attached_garage=False), None, "not asked"),
            ("attached garage", JOB, None, "open"),
            ("fuel or attached garage", replace(JOB, fuels=("natural gas",), attached_garage=False), None, "open"),
            ("fuel or attached garage", replace(JOB, fuels=("electricity",), attached_garage=False), None, "not asked"),
            ("outdoor >= 60 degF", JOB, ("59.9", "[degF]"), "not asked"),
            ("outdoor >= 60 degF", JOB, ("60", "[degF]"), "open"),
            ("outdoor >= 60 degF", JOB, ("15.5", "Cel"), "not asked"),
            ("outdoor >= 60 degF", JOB, ("16", "Cel"), "open"),
            ("outdoor >= 60 degF", JOB, None, "open"),
            ("outdoor >= 60 degF", JOB, ("warm", "[degF]"), "open"),
            ("outdoor >= warm", JOB, ("60", "[degF]"), "open"),
            ("built before 1978", replace(JOB, year_built=1962), None, "open"),
            ("built before 1978", replace(JOB, year_built=1978), None, "not asked"),
            ("not occupied", replace(JOB, occupied=True), None, "not asked"),
            ("adverse joist", JOB, None, "not asked"),
            ("the moon is full", JOB, None, "open"),
        ],
    )
    def test_conditions(self, when: str, job: Job, outdoor: tuple[str, str] | None, status: str) -> None:
        visit = Visit()
        if outdoor:
            visit.add(Arrived(outdoor=outdoor[0], outdoor_unit=outdoor[1]))
        assert cover(visit, duty("T-1", "inspect", RANGE, when=when), job).status == status

    def test_what_cannot_be_decided_is_asked_and_says_so(self) -> None:
        row = cover(Visit(), duty("T-1", "inspect", RANGE, when="the moon is full"))
        assert row.why == "asked because nothing recorded decides: the moon is full"

    def test_only_tracked_duties_that_say_shall(self) -> None:
        packs = job_packs(
            duty("T-1", "inspect", RANGE, modality="not_required"),
            duty("T-2", "inspect", RANGE, tracked=False),
            duty("T-3", "inspect", RANGE),
        )
        rows = standing(Visit().record(), packs, JOB, after(0)).duties
        assert [row.duty.id for row in rows] == ["T-3"]
