"""Judging with the packs as shipped: published limits, every procedure, every duty of the Washington rulebook."""

from collections import Counter
from dataclasses import replace
from decimal import Decimal
from functools import cache

import pytest

from record_builder import Visit, after
from witnessmark import packs
from witnessmark.journal.acts import Absent, Arrived, Identified, Listed, Placed, Ran, Read, Saw, Skipped, Stopped
from witnessmark.journal.job import Job
from witnessmark.judging import DutyCoverage, JudgedReading, Standing, standing
from witnessmark.packs.model import Duty, Packs, Subject

JOB = Job("job", rulebook="us.wa.308-408c", date="2026-02-03", year_built=2015, attached_garage=True)


@cache
def shipped() -> Packs:
    return packs.read()


def stand(visit: Visit, job: Job = JOB) -> Standing:
    return standing(visit.record(), shipped(), job, after(600))


def covered(visit: Visit, duty: str, job: Job = JOB) -> DutyCoverage:
    return next(row for row in stand(visit, job).duties if row.duty.id == duty)


def judged(measure: str, value: str, unit: str, kind: str) -> dict[str, JudgedReading]:
    visit = Visit()
    visit.add(Read(measure, value, unit, kind=kind))
    return {row.criterion.id: row for row in stand(visit).readings if row.criterion}


@pytest.mark.parametrize(
    ("kind", "measure", "unit", "within", "beyond"),
    [
        # IRC 2018 R311.7.5.1 and R311.7.5.2: riser at most 7 3/4 in (196 mm), tread at least 10 in (254 mm).
        ("stair", "riser-height", "[in_i]", "7.75", "7.8125"),
        ("stair", "riser-height", "mm", "196", "197"),
        ("stair", "tread-depth", "[in_i]", "10", "9.9375"),
        ("stair", "tread-depth", "mm", "254", "253"),
        # IRC 2018 R311.7.2: headroom 6 ft 8 in; R311.7.8.1: handrail 34 to 38 in.
        ("stair", "headroom", "[ft_i]", "6.75", "6.6"),
        ("stair", "handrail-height", "[in_i]", "38", "38.5"),
        # IRC 2018 R312.1.3: a 4 in sphere does not pass.
        ("deck", "baluster-gap", "[in_i]", "3.9375", "4.25"),
        # IRC 2018 R310.2: width 20 in, height 24 in, area 5.7 ft2, sill at most 44 in.
        ("window", "opening-width", "[in_i]", "20", "19.5"),
        ("window", "opening-height", "[in_i]", "24", "23.5"),
        ("window", "opening-area", "[sin_i]", "820.8", "480"),
        ("window", "sill-height", "[in_i]", "44", "45"),
        # NEC 2017 110.26(A): 36 in deep, 30 in wide, 6 ft 6 in high.
        ("service-panel", "panel-clearance", "[in_i]", "36", "34"),
        ("service-panel", "panel-width", "[in_i]", "30", "29.5"),
        ("service-panel", "panel-headroom", "[ft_i]", "6.5", "6.4"),
        # UPC 2018 608.2: static pressure at most 80 psi, which is 551.58 kPa.
        ("hose-bib", "water-pressure", "[psi]", "80", "80.5"),
        ("hose-bib", "water-pressure", "kPa", "551.5", "551.6"),
        # 16 CFR 1211 and UL 325: photo eye at most 6 in above the floor.
        ("garage-door-opener", "photo-eye-height", "[in_i]", "6", "6.25"),
        # IRC 2018 P2804.6.1: the discharge pipe ends at most 6 in above the floor.
        ("water-heater", "discharge-height", "[in_i]", "6", "9"),
        # EPA, A Citizen's Guide to Radon: act at 4 pCi/L, consider from 2 pCi/L (74 Bq/m3).
        ("house", "radon", "pCi/L", "1.9", "4"),
        ("house", "radon", "Bq/m3", "73", "148"),
        # 40 CFR 50.8: 9 ppm over eight hours.
        ("furnace", "co-ppm", "[ppm]", "9", "10"),
    ],
)
def test_published_limits(kind: str, measure: str, unit: str, within: str, beyond: str) -> None:
    assert {row.verdict for row in judged(measure, within, unit, kind).values()} == {"within"}
    assert "beyond" in {row.verdict for row in judged(measure, beyond, unit, kind).values()}


def test_every_shipped_limit_turns_at_its_own_value() -> None:
    step = Decimal("0.0001")
    for row in shipped().criteria.values():
        if row.jurisdiction not in {None, "us.wa"}:
            continue  # holds only where another state's rulebook is in force
        ends = [(row.op, Decimal(row.value))]
        if row.op == "between":
            ends = [(">=", Decimal(row.value)), ("<=", Decimal(row.high or ""))]
        for op, value in ends:
            inner = value + (-step if op.startswith("<") else step)
            outer = value + (step if op.startswith("<") else -step)
            expected = {str(inner): "within", str(outer): "beyond", str(value): "within" if "=" in op else "beyond"}
            for text, verdict in expected.items():
                visit = Visit()
                kind = row.kinds[0] if row.kinds else None
                visit.add(Read(row.measure, text, row.unit, part=row.part, kind=kind))
                found = {r.criterion.id: r.verdict for r in stand(visit).readings if r.criterion}
                assert found[row.id] == verdict, f"{row.id}: {text} {row.unit}"


def test_every_procedure_opens_what_it_leaves_and_asks_for() -> None:
    for procedure in shipped().procedures.values():
        visit = Visit()
        ran = visit.add(Ran(procedure.said[0] if procedure.said else "", procedure.part, procedure.kind, procedure.id,
                            procedure.leaves))  # fmt: skip
        expected = Counter(
            {"still on": int(procedure.leaves != "as found"), "look again": int(bool(procedure.look_again))}
        )
        found = Counter(end.sort for end in stand(visit).loose_ends if end.sort != "say why")
        assert found == +expected, procedure.id
        visit.add(Stopped(of=ran))
        if procedure.look_again:
            kind = procedure.look_again.kinds[0] if procedure.look_again.kinds else procedure.kind
            visit.add(Saw("dry", "sound", kind=kind), procedure.look_again.latest)
        assert {end.sort for end in stand(visit).loose_ends} == {"say why"}, procedure.id


def test_what_is_said_leads_to_the_procedure_meant() -> None:
    visit = Visit()
    filled = visit.add(Ran("filled the kitchen sink", left="filled", kind="sink"))
    visit.add(Ran("ran hot water at the kitchen sink", left="on", kind="sink"))
    ends = [end for end in stand(visit).loose_ends if end.sort == "look again"]
    assert [end.entries[0] for end in ends] == [filled]


def tracked() -> list[tuple[Job, Duty]]:
    """Every duty that is counted, of every rulebook, with a job under that law."""
    return [
        (replace(JOB, rulebook=book.id), duty)
        for book in shipped().rulebooks.values()
        for duty in book.duties
        if duty.tracked and duty.modality == "shall"
    ]


def meet(visit: Visit, duty: Duty, subject: Subject) -> None:
    """Record what the subject asks for, in the act that the verb names."""
    place = None
    if subject.sorts:
        place = f"place-{subject.sorts[0]}"
        visit.add(Placed(place, subject.sorts[0]), place=place)
    kind = subject.kinds[0] if subject.kinds else None
    component = None
    if kind:
        component = f"{kind}-{subject.part}"
        visit.add(Listed(kind, component), place=place, component=component)
    if subject.measures:
        body: Read | Identified | Ran | Saw = Read(subject.measures[0], "18", "[in_i]", part=subject.part)
    elif subject.attributes:
        way = duty.default_method.split(" or ")[0] if duty.method_reasons else "entered and traversed"
        body = Identified(subject.attributes[0], way, part=subject.part)
    elif duty.verb == "operate":
        body = Ran("by its controls", part=subject.part)
    else:
        body = Saw("looked at", "sound", part=subject.part)
    visit.add(body, place=place, component=component)


@pytest.mark.parametrize(("job", "duty"), tracked(), ids=[duty.id for _, duty in tracked()])
def test_every_tracked_duty_can_be_met_and_can_be_excused(job: Job, duty: Duty) -> None:
    met, skipped = Visit(), Visit()
    for visit in (met, skipped):
        visit.add(Arrived(outdoor="65", outdoor_unit="[degF]"))
        if duty.when.startswith("adverse"):
            visit.add(Saw("broken", "adverse", kind=duty.when.split()[1]), component="broken")
    for subject in duty.subjects:
        meet(met, duty, subject)
    reason = (duty.method_reasons or duty.reasons or shipped().rulebooks[job.rulebook].reasons)[0]
    skipped.add(Skipped(reason=reason, duty=duty.id))
    assert {s.status for s in covered(met, duty.id, job).subjects} == {"met"}
    assert covered(skipped, duty.id, job).status in {"excused", "not asked"}
    assert covered(Visit(), duty.id, job).status in {"open", "not asked"}


class TestWashington:
    def test_head_and_shoulders_in_the_hatch_is_not_entering(self) -> None:
        # WAC 308-408-010, definition of enter.
        visit = Visit()
        visit.add(Placed("Attic", "attic"), place="attic")
        visit.add(Identified("method", "head and shoulders in the hatch"), place="attic")
        assert covered(visit, "WA-014").subjects[0].status == "open"
        visit.add(Identified("method", "entered and traversed"), place="attic")
        assert covered(visit, "WA-014").status == "met"

    def test_a_low_crawl_space_is_a_lawful_reason_and_a_dark_one_is_none(self) -> None:
        # WAC 308-408C-070(2): headroom under 18 in below the joists.
        for reason, status in (("low-clearance", "excused"), ("dark", "open")):
            visit = Visit()
            visit.add(Placed("Crawl space", "crawl-space"), place="crawl")
            visit.add(Skipped("crawl space", reason=reason, whole=True), place="crawl")
            assert covered(visit, "WA-014").subjects[1].status == status

    def test_smoke_alarms_present_or_absent(self) -> None:
        # WAC 308-408C-140(1)(c).
        assert covered(Visit(), "WA-041").status == "open"
        for body in (Absent("smoke-alarm", adverse=True), Saw("one in the hall", "sound", kind="smoke-alarm")):
            visit = Visit()
            visit.add(body)
            assert covered(visit, "WA-041").status == "met"

    @pytest.mark.parametrize(("outdoor", "status"), [("59", "not asked"), ("60", "open")])
    def test_cooling_is_not_run_below_sixty(self, outdoor: str, status: str) -> None:
        # WAC 308-408C-130 as recalled; 22 TAC 535.230 has the same 60 °F.
        visit = Visit()
        visit.add(Arrived(outdoor=outdoor, outdoor_unit="[degF]"))
        visit.add(Listed("air-conditioner", "Outdoor unit"), component="ac")
        assert covered(visit, "WA-038-operate").status == status

    def test_without_a_garage_its_duties_are_not_asked(self) -> None:
        job = Job("job", rulebook="us.wa.308-408c", date="2026-02-03", attached_garage=False)
        assert covered(Visit(), "WA-048", job).status == "not asked"
