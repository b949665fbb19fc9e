"""The rulebooks of Texas and New York as shipped: every row of the law is there, with how sure we are, and it counts.

Sources: 22 TAC 535.222, 535.223 and 535.227 to 535.233 (texreg.sos.state.tx.us); 19 NYCRR 197-4 and 197-5
(regulations.justia.com) and Real Property Law 444-b and 444-g (lexace.ai, law.justia.com). What is recalled is told by its
tag, in the packs and here.
"""

from dataclasses import replace
from datetime import date
from functools import cache

import pytest

from record_builder import Visit, after
from witnessmark import packs
from witnessmark.journal.acts import Absent, Arrived, Found, Identified, Listed, Placed, Ran, Read, Saw, Skipped
from witnessmark.journal.job import Job
from witnessmark.judging import DutyCoverage, standing
from witnessmark.judging.deadline import Anchors, deadlines
from witnessmark.judging.departures import departures
from witnessmark.judging.item_states import item_states
from witnessmark.judging.observed import observed
from witnessmark.judging.scene import Scene, gather
from witnessmark.judging.statements import statements
from witnessmark.packs import rulebook_for
from witnessmark.packs.law import Duty, Rulebook
from witnessmark.packs.model import Packs

TX = Job(
    "job", rulebook="us.tx.535-r", date="2026-02-03", year_built=1996, attached_garage=True, fuels=("natural gas",)
)
NY = Job("job", rulebook="us.ny.197", date="2026-02-03", year_built=1948, attached_garage=False, fuels=("oil",))


@cache
def shipped() -> Packs:
    return packs.read()


def book(job: Job) -> Rulebook:
    return shipped().rulebooks[job.rulebook]


def duty(job: Job, name: str) -> Duty:
    return next(row for row in book(job).duties if row.id == name)


def covered(visit: Visit, job: Job, name: str) -> DutyCoverage:
    rows = standing(visit.record(), shipped(), job, after(600)).duties
    return next(row for row in rows if row.duty.id == name)


def scene(visit: Visit, job: Job) -> Scene:
    return gather(visit.record(), shipped(), job, after(600))


def rows(prefix: str, *ranges: tuple[int, int]) -> set[str]:
    return {f"{prefix}-{n:03}" for first, last in ranges for n in range(first, last + 1)}


#: How the text of each row is known; where a row rests on two texts, the weaker.
TAGS = {
    "seen": rows("TX", (5, 5), (7, 15), (17, 17), (20, 25), (44, 49), (60, 63), (73, 77))
    | rows("NY", (1, 6), (8, 8), (11, 12), (22, 27), (35, 39), (41, 43)),
    "seen-copy": rows("TX", (53, 56)) | rows("NY", (7, 7), (13, 15)),
    "memory": rows(
        "TX", (1, 4), (6, 6), (16, 16), (18, 19), (26, 43), (50, 52), (57, 59), (64, 72), (78, 78)
    ) | rows("NY", (16, 21), (28, 33)),
    "memory?": rows("TX", (79, 79)) | rows("NY", (9, 10), (34, 34), (40, 40)),
}  # fmt: skip


@pytest.mark.parametrize(("job", "prefix", "last"), [(TX, "TX", 79), (NY, "NY", 43)])
def test_every_row_of_the_law_is_a_duty_with_its_tag(job: Job, prefix: str, last: int) -> None:
    found = {row.id: row for row in book(job).duties}
    assert rows(prefix, (1, last)) <= found.keys()
    for name, row in found.items():
        number = name[:6]
        assert number in rows(prefix, (1, last)), name
        assert number in TAGS[row.provenance.tag], f"{name}: {row.provenance.tag}"
        assert row.section.startswith(("22 TAC 535.2", "19 NYCRR 197-", "Real Property Law 444-")), name
        assert row.provenance.source.startswith(row.section), name


@pytest.mark.parametrize("job", [TX, NY])
def test_what_can_be_counted_is_counted(job: Job) -> None:
    on_site = {"inspect", "describe", "report_def", "operate", "test", "enter", "verify", "state_method"}
    for row in book(job).duties:
        if row.verb in on_site and row.modality == "shall":
            assert row.tracked, row.id
        if row.verb in {"notreq", "define", "contract", "content", "deliver", "retain", "ethics"}:
            assert not row.tracked, row.id


def test_the_books_say_what_was_recalled_and_from_when_they_count() -> None:
    for job in (TX, NY):
        assert "recalled" in book(job).note.lower()
        assert "checked against the text of the law" in book(job).note
    # That the standards count from 1 February 2022 is from memory; section 222 counts from 11 June 2023 (read).
    assert rulebook_for(shipped(), TX.rulebook, "2022-01-31") is None
    early = rulebook_for(shipped(), TX.rulebook, "2023-06-10")
    assert early is not None
    assert not {"TX-073", "TX-074"} & {row.id for row in early.duties}
    assert {"TX-073", "TX-074"} <= {row.id for row in book(TX).duties}


class TestTexas:
    def test_up_to_four_units_new_or_not_and_the_particular_goes_first(self) -> None:
        # 22 TAC 535.223(1), 535.227(b) and (e).
        law = book(TX)
        assert (law.max_units, law.new_construction, law.specific_first) == (4, True, True)

    def test_static_pressure_is_a_fact_to_report_with_80_psi(self) -> None:
        # 22 TAC 535.231(a)(1)(A)(iii) and (B)(ii).
        row = duty(TX, "TX-060")
        assert [(n.op, n.value, n.unit) for n in row.numeric] == [("<=", "80", "[psi]")]
        assert [s.measures for s in row.subjects if s.measures] == [("water-pressure",)]
        assert row.verb == "report"

    @pytest.mark.parametrize(
        ("psi", "verdict"), [("64", "within"), ("80", "within"), ("80.5", "beyond"), ("35", "within")]
    )
    def test_the_pressure_against_the_law_of_texas(self, psi: str, verdict: str) -> None:
        # The text in force has no lower limit; that of 2009 had 40 psi (an unofficial copy).
        visit = Visit()
        visit.add(Read("water-pressure", psi, "[psi]", kind="hose-bib"))
        judged = standing(visit.record(), shipped(), TX, after(600)).readings
        found = {row.criterion.id: row.verdict for row in judged if row.criterion}
        assert found["water-pressure-high-tx"] == verdict

    @pytest.mark.parametrize(
        ("anchors", "due"),
        [
            # Paid on Monday 4 May 2026, inspected on Wednesday; inspected on Monday, paid on Thursday; agreed in writing.
            (Anchors(completion=date(2026, 5, 6), payment=date(2026, 5, 4)), date(2026, 5, 8)),
            (Anchors(completion=date(2026, 5, 4), payment=date(2026, 5, 7)), date(2026, 5, 9)),
            (Anchors(date(2026, 5, 4), date(2026, 5, 4), date(2026, 5, 12), waived=True), date(2026, 5, 12)),
            (Anchors(date(2026, 5, 4), date(2026, 5, 4), date(2026, 5, 12)), date(2026, 5, 6)),
            (Anchors(completion=date(2026, 5, 4)), None),
            # Two days before New Year's Day: a holiday counts as a day.
            (Anchors(date(2026, 12, 30), date(2026, 12, 30)), date(2027, 1, 1)),
        ],
    )
    def test_two_days_from_payment_or_completion(self, anchors: Anchors, due: date | None) -> None:
        # 22 TAC 535.222(a), Texas Register of 9 June 2023.
        assert deadlines(book(TX), anchors).due == due

    def test_the_reasons_to_depart_are_a_closed_list(self) -> None:
        # 22 TAC 535.227(f)(1): agreed, not qualified, conditions, hazard or damage (read); common element (recalled).
        rule = book(TX).departure
        assert rule is not None
        assert {"client-agreed", "not-qualified", "unsafe", "would-damage", "common-element"} <= set(rule.reasons)
        assert not {"dark", "not-needed", "other", "outside-standard", "not-operated"} & set(rule.reasons)
        assert set(rule.reasons) <= set(book(TX).reasons)
        assert "earliest practical opportunity" in rule.notice
        assert "before the inspection" in rule.before_visit

    @pytest.mark.parametrize("reason", ["dark", "not-needed", "other"])
    def test_what_is_not_on_the_list_excuses_nothing(self, reason: str) -> None:
        for row in book(TX).duties:
            if not row.tracked or row.modality != "shall" or reason in row.reasons:
                continue
            visit = Visit()
            visit.add(Skipped(reason=reason, words="no time", duty=row.id))
            assert covered(visit, TX, row.id).status in {"open", "not asked"}, row.id

    def test_a_departure_told_before_the_visit_needs_no_further_notice(self) -> None:
        visit = Visit()
        visit.add(Skipped("the appliances", "client-agreed"), 1)
        visit.add(Arrived(), 2)
        visit.add(Skipped("the attic", "small-opening"), 3)
        visit.add(Skipped("the crawl space", "dark"), 4)
        found = {row.what: row for row in departures(scene(visit, TX))}
        assert [(row.listed, row.noticed) for row in found.values()] == [(True, True), (True, False), (False, False)]
        assert not found["the appliances"].words
        assert "earliest practical opportunity" in found["the attic"].words

    @pytest.mark.parametrize(
        ("method", "reason", "status"),
        [
            ("walked on the roof", "", "met"),
            ("from the ground", "", "open"),
            ("from a ladder at the eaves", "wet", "excused"),
            ("with a drone", "brittle", "excused"),
            ("with a drone", "dark", "open"),
            ("", "unsafe", "excused"),
        ],
    )
    def test_the_roof_from_its_surface(self, method: str, reason: str, status: str) -> None:
        # 22 TAC 535.228(c), recalled.
        visit = Visit()
        visit.add(Placed("Roof", "roof"), place="roof")
        if method:
            visit.add(Identified("method", method), place="roof")
        if reason:
            visit.add(Skipped("walking", reason, words="as said"), place="roof")
        assert covered(visit, TX, "TX-028").status == status

    def test_the_foundation_needs_an_opinion_not_only_a_type(self) -> None:
        # 22 TAC 535.228(a)(1)(A) and (B).
        visit = Visit()
        visit.add(Listed("slab", "Slab"), component="slab")
        visit.add(Identified("foundation-type", "slab on grade"), component="slab")
        visit.add(Saw("no cracks", "sound"), component="slab")
        assert covered(visit, TX, "TX-021").status == "open"
        assert covered(visit, TX, "TX-022").status == "met"
        visit.add(Identified("condition-word", "no deficiency seen"), component="slab")
        assert covered(visit, TX, "TX-021").status == "met"

    @pytest.mark.parametrize(
        ("value", "verdict"), [("324.9", "beyond"), ("325", "within"), ("375", "within"), ("376", "beyond")]
    )
    def test_an_oven_is_off_by_more_than_25_degrees(self, value: str, verdict: str) -> None:
        # 22 TAC 535.232, recalled: more than 25 °F at 350 °F.
        visit = Visit()
        visit.add(Listed("range", "Range"), component="range")
        visit.add(Read("oven-temperature", value, "[degF]", part="oven"), component="range")
        judged = standing(visit.record(), shipped(), TX, after(600)).readings
        assert {r.criterion.id: r.verdict for r in judged if r.criterion}["oven-at-350-tx"] == verdict
        assert covered(visit, TX, "TX-070").status == "met"
        assert [(n.value, n.unit) for n in duty(TX, "TX-070").numeric] == [("25", "[degF]{difference}")]

    def test_photo_eyes_are_measured_or_missing(self) -> None:
        # 22 TAC 535.232, recalled; 16 CFR 1211 has the same 6 in.
        for body in (Read("photo-eye-height", "9", "[in_i]"), Absent("garage-door-opener", "photo-eye", adverse=True)):
            visit = Visit()
            visit.add(Listed("garage-door-opener", "Opener"), component="opener")
            visit.add(Ran("opened and closed"), component="opener")
            assert covered(visit, TX, "TX-071-photo-eyes").status == "open"
            visit.add(body, component="opener")
            assert covered(visit, TX, "TX-071-photo-eyes").status == "met"

    @pytest.mark.parametrize(("outdoor", "status"), [("59", "not asked"), ("60", "open")])
    def test_cooling_is_not_run_below_sixty(self, outdoor: str, status: str) -> None:
        # 22 TAC 535.230, recalled.
        visit = Visit()
        visit.add(Arrived(outdoor=outdoor, outdoor_unit="[degF]"))
        visit.add(Listed("air-conditioner", "Outdoor unit"), component="ac")
        assert covered(visit, TX, "TX-057-operate").status == status
        assert covered(visit, TX, "TX-057").status == "open"

    def test_the_numbers_for_crawl_spaces_and_attics(self) -> None:
        # 22 TAC 535.228(a)(2)(A), read: 18 in; 24 in wide and 18 in high. 535.228(d), recalled: 22 by 30 in; 30 in.
        assert [(n.quantity, n.value) for n in duty(TX, "TX-025").numeric] == [
            ("headroom", "18"), ("width of the access opening", "24"), ("height of the access opening", "18"),
        ]  # fmt: skip
        assert [n.value for n in duty(TX, "TX-034").numeric] == ["22", "30", "30"]

    def test_gas_duties_are_not_asked_where_nothing_burns(self) -> None:
        job = replace(TX, fuels=("electricity",), attached_garage=False)
        for name in ("TX-051-co", "TX-055-gas", "TX-067", "TX-068"):
            assert covered(Visit(), job, name).status == "not asked"
            assert covered(Visit(), TX, name).status != "not asked" or name == "TX-055-gas"

    def test_optional_systems_are_by_agreement_and_never_open(self) -> None:
        # 22 TAC 535.233, recalled; an unofficial copy of the section agrees.
        row = duty(TX, "TX-072")
        assert (row.by_agreement, row.modality, row.tracked) == (True, "may", False)
        visit = Visit()
        visit.add(Listed("swimming-pool", "Pool"), component="pool")
        asked = standing(visit.record(), shipped(), TX, after(600)).duties
        assert "TX-072" not in {row.duty.id for row in asked}

    def test_the_form_gives_each_item_one_of_four_words(self) -> None:
        # Form REI 7-6 (recalled): inspected, not inspected, not present, deficient.
        assert {w.code: w.needs for w in book(TX).condition_words} == {
            "I": "",
            "NI": "reason",
            "NP": "",
            "D": "finding",
        }
        visit = Visit()
        for name in ("range", "sink", "furnace"):
            visit.add(Listed(name, name), component=name)
        visit.add(Saw("works", "sound"), component="range")
        visit.add(Found("Leak"), component="sink")
        visit.add(Skipped("", "unsafe"), component="furnace")
        found = {row.component: row.word.code if row.word else "" for row in item_states(scene(visit, TX))}
        assert found == {"range": "I", "sink": "D", "furnace": "NI"}

    def test_the_text_of_the_form_is_wanted_word_for_word_in_ten_points(self) -> None:
        # 22 TAC 535.223(2) and (3)(B).
        (told,) = statements(scene(Visit(), TX))
        assert (told.duty.id, told.verbatim, told.min_pt) == ("TX-076", True, 10)
        assert "not part of this rulebook" in told.text


class TestNewYork:
    def test_a_house_never_lived_in_is_outside_the_law(self) -> None:
        # Real Property Law 444-b(6).
        assert (book(NY).max_units, book(NY).new_construction) == (4, False)

    def test_what_was_observed_is_listed(self) -> None:
        # Real Property Law 444-b(4) and 444-g(3); 19 NYCRR 197-4.6(c).
        assert book(NY).observed_listed
        assert not book(TX).observed_listed
        visit = Visit()
        visit.add(Placed("Basement", "basement"), place="b")
        visit.add(Listed("boiler", "Boiler"), place="b", component="boiler")
        visit.add(Listed("sump-pump", "Sump"), place="b", component="sump")
        visit.add(Saw("dry", "sound"), component="boiler")
        visit.add(Skipped("", "locked"), component="sump")
        assert [(row.system, row.kinds) for row in observed(scene(visit, NY))] == [("heating", ("boiler",))]

    def test_clauses_in_six_points_belong_to_the_agreement_not_to_the_report(self) -> None:
        # 19 NYCRR 197-4.2(a), an unofficial copy.
        row = duty(NY, "NY-007")
        assert (row.verb, row.verbatim, row.min_pt) == ("contract", True, 6)
        assert statements(scene(Visit(), NY)) == ()

    @pytest.mark.parametrize(
        ("completed", "due"),
        [
            (date(2026, 5, 4), date(2026, 5, 11)),
            (date(2026, 5, 8), date(2026, 5, 15)),
            (date(2026, 11, 24), date(2026, 12, 2)),
        ],
    )
    def test_five_business_days_from_completion(self, completed: date, due: date) -> None:
        # Real Property Law 444-g(3). Thanksgiving 2026 is on 26 November (5 U.S.C. 6103).
        assert deadlines(book(NY), Anchors(completion=completed)).due == due

    def test_appliances_pests_and_gauges_are_not_asked_for(self) -> None:
        # 19 NYCRR 197-5.16(b) to (d).
        kinds = {
            kind for row in book(NY).duties if row.tracked for subject in row.subjects for kind in subject.kinds
        } - {"dishwasher", "range-hood", "dryer-duct"}  # cross connections and exhaust, not the appliance
        systems = {shipped().kinds[kind].system for kind in kinds}
        assert "appliances" not in systems
        assert not {"wood-pests", "suspect-material", "surface-growth"} & kinds
        assert {duty(NY, name).modality for name in ("NY-036", "NY-037", "NY-038")} == {"not_required"}

    def test_smoke_and_carbon_monoxide_alarms_present_or_absent(self) -> None:
        # 19 NYCRR 197-5.9(b)(4).
        visit = Visit()
        visit.add(Saw("in the hall", "sound", kind="smoke-alarm"))
        assert covered(visit, NY, "NY-026-alarms").status == "open"
        visit.add(Absent("co-alarm", adverse=True))
        assert covered(visit, NY, "NY-026-alarms").status == "met"

    def test_a_sample_is_enough_where_the_law_says_representative(self) -> None:
        # 19 NYCRR 197-5.9(a)(6) and (7); Texas names no sample, so there it is every one.
        visit = Visit()
        for name in ("r1", "r2"):
            visit.add(Listed("receptacle", name), component=name)
        visit.add(Saw("tested", "sound"), component="r1")
        for job, name, status in ((NY, "NY-025", "met"), (TX, "TX-050", "open")):
            row = next(s for s in covered(visit, job, name).subjects if "receptacle" in s.words)
            assert row.status == status

    def test_each_habitable_room_has_its_source_of_heat(self) -> None:
        # 19 NYCRR 197-5.10, recalled.
        visit = Visit()
        for place, sort in (("k", "kitchen"), ("b", "bedroom"), ("h", "hall")):
            visit.add(Placed(sort, sort), place=place)
        visit.add(Saw("warm", "sound", kind="radiator"), place="k")
        assert covered(visit, NY, "NY-028-rooms").status == "open"
        visit.add(Absent("heat-source", adverse=True), place="b")
        assert covered(visit, NY, "NY-028-rooms").status == "met"
