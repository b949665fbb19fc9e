"""The laws of Florida, North Carolina and Washington, and the baseline: every row there, and what is hard in each holds.

The tables of rows were compiled row by row from the texts named in the rulebooks, before the rulebooks were written: the
row's number, what it asks, how its text is known, and the keys of the copies read.
Long because the rows of three laws are printed whole.
"""

from dataclasses import replace
from datetime import date
from functools import cache

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from record_builder import Visit, after
from witnessmark import packs
from witnessmark.journal.acts import Absent, Count, Found, Identified, Listed, Placed, Ran, Read, Saw, Skipped
from witnessmark.journal.job import Job
from witnessmark.judging import DutyCoverage, standing, under_each
from witnessmark.judging.code_claims import code_claims
from witnessmark.judging.deadline import Anchors, deadlines
from witnessmark.judging.item_states import item_states
from witnessmark.judging.law_summary import summary
from witnessmark.judging.scene import Scene, gather
from witnessmark.judging.statements import statements
from witnessmark.packs.model import Duty, Packs, Rulebook

FLORIDA, CAROLINA, WASHINGTON, BASELINE = "us.fl.61-30", "us.nc.11-08", "us.wa.308-408c", "baseline"

#: 61-30.101 and .801 to .812, Florida Administrative Code; sections 468.8321 and 468.8323, Florida Statutes. FL-036 says
#: that nothing was found.
FL_ROWS = """
    001 define seen F5; 002 define seen F1; 003 define seen F1; 004 define seen F1; 005 define seen F5;
    006 define memory?; 007 report seen F1; 008 inspect seen F1; 009 content seen F1; 010 content seen F1;
    011 contract seen F1; 012 content memory; 013 contract memory F3; 014 inspect memory; 015 probe memory;
    016 notreq memory?; 017 inspect memory; 018 report memory?; 019 inspect seen F2; 020 notreq seen F2;
    021 inspect seen F2; 022 notreq seen F2; 023 notreq seen F2; 024 inspect memory; 025 notreq memory;
    026 inspect memory; 027 inspect seen F3; 028 operate seen F3; 029 inspect seen F3; 030 notreq seen F3;
    031 notreq seen F3; 032 inspect seen F4; 033 notreq seen F4; 034 inspect memory; 035 notreq memory;
    036 retain+deliver memory?
"""
#: 11 NCAC 08 .1101 to .1116; G.S. 143-151.45 and .58. Row 053 was read later in a text of 2005 (C12).
NC_ROWS = """
    001 define seen C11; 002 define seen-copy; 003 define memory; 004 contract seen C1; 005 inspect seen C1;
    006 content seen C1; 007 content seen C1; 008 content seen C1; 009 content seen C1; 010 content seen C1;
    011 content seen C10; 012 content seen C10; 013 content memory C10; 014 deliver seen C10; 015 report seen C1;
    016 notreq seen C2; 017 notreq seen C2; 018 inspect+describe seen-copy; 019 probe seen-copy;
    020 enter seen-copy; 021 state_method seen-copy; 022 report seen-copy; 023 inspect memory; 024 inspect seen C3;
    025 describe+state_method seen C3; 026 notreq seen C3; 027 inspect seen C4; 028 describe seen C4;
    029 operate seen C4; 030 notreq seen C4; 031 inspect seen C5; 032 operate seen C5; 033 test seen C5;
    034 operate seen C5; 035 describe seen C5; 036 report seen C5; 037 report+test seen C5; 038 notreq memory C5;
    039 inspect seen C6; 040 describe+operate seen C6; 041 state_method seen C6; 042 notreq seen C6;
    043 inspect seen C7; 044 describe+operate seen C7; 045 notreq seen C7; 046 inspect seen C8;
    047 operate+report seen C8; 048 notreq seen C8; 049 inspect seen C9; 050 describe seen C9; 051 inspect seen C9;
    052 notreq seen C9; 053 operate seen C12; 054 ethics memory; 055 retain memory?
"""


@cache
def shipped() -> Packs:
    return packs.read()


def book(name: str) -> Rulebook:
    return shipped().rulebooks[name]


def job(name: str, **more: object) -> Job:
    return replace(Job("job", rulebook=name, date="2026-05-04"), **more)  # type: ignore[arg-type]  # test rows


def duty(name: str, wanted: str) -> Duty:
    return next(d for d in book(name).duties if d.id == wanted)


def scene(visit: Visit, name: str, **more: object) -> Scene:
    return gather(visit.record(), shipped(), job(name, **more), after(600))


def covered(visit: Visit, name: str, wanted: str, **more: object) -> DutyCoverage:
    rows = standing(visit.record(), shipped(), job(name, **more), after(600)).duties
    return next(row for row in rows if row.duty.id == wanted)


def rows_of(state: str, table: str) -> list[tuple[str, set[str], str, list[str]]]:
    found = []
    for row in table.replace("\n", " ").split(";"):
        number, verbs, tag, *keys = row.split()
        found.append((f"{state}-{number}", set(verbs.split("+")), tag, keys[0].split(",") if keys else []))
    return found


ROWS = [(FLORIDA, *row) for row in rows_of("FL", FL_ROWS)] + [(CAROLINA, *row) for row in rows_of("NC", NC_ROWS)]


@pytest.mark.parametrize(("name", "wanted", "verbs", "tag", "keys"), ROWS, ids=[row[1] for row in ROWS])
def test_every_row_is_there_with_its_verbs_and_its_tag(
    name: str, wanted: str, verbs: set[str], tag: str, keys: list[str]
) -> None:
    family = [d for d in book(name).duties if d.id == wanted or d.id.startswith(wanted + "-")]
    assert wanted in {d.id for d in family}
    assert verbs <= {d.verb for d in family}
    assert {d.provenance.tag for d in family} == {tag}
    assert all(any(key in d.provenance.source for d in family) for key in keys)


@pytest.mark.parametrize(("name", "first", "last"), [(FLORIDA, "FL", 36), (CAROLINA, "NC", 55), (WASHINGTON, "WA", 48)])
def test_no_row_is_made_up_and_none_is_missing(name: str, first: str, last: int) -> None:
    found = {d.id[:6] for d in book(name).duties}
    assert found == {f"{first}-{number:03}" for number in range(1, last + 1)}


def test_the_baseline_has_each_row_of_the_common_core_and_names_laws_it_is_drawn_from() -> None:
    made = book(BASELINE)
    assert made.baseline
    assert {d.id[:6] for d in made.duties} == {f"BL-{number:03}" for number in range(1, 20)}
    for row in made.duties:
        assert row.provenance.tag == "computed"
        states = [state for state in ("TX", "NY", "FL", "NC", "WA") if f"{state} " in row.provenance.source]
        assert len(states) >= 3 or row.id == "BL-003-observed", row.id
    assert not [b for b in shipped().rulebooks.values() if b.baseline and b.id != BASELINE]


def test_what_is_recalled_says_so_in_its_source() -> None:
    for name in (FLORIDA, CAROLINA):
        for row in book(name).duties:
            if row.provenance.tag.startswith("memory"):
                assert "recalled" in row.provenance.source or "found" in row.provenance.source, row.id
            assert "recalled" not in row.provenance.source or row.provenance.tag.startswith("memory"), row.id
        assert "recalled" in book(name).note


def test_every_tracked_duty_asks_for_something_the_record_can_say() -> None:
    for name in (FLORIDA, CAROLINA, WASHINGTON, BASELINE):
        for row in book(name).duties:
            assert row.tracked <= (row.modality == "shall"), row.id
            for subject in row.subjects:
                assert subject.kinds or subject.attributes or subject.sorts, row.id
            if row.default_method:
                assert row.default_method in {value.id for value in shipped().attributes["method"].values}, row.id


# ---------------------------------------------------------------- FL-003: one in each room, one on each side


def test_a_representative_number_in_florida_is_one_per_room_and_one_per_side() -> None:
    # 61-30.101, F.A.C., as quoted beside rule 61-30.801.
    assert [(n.op, n.value) for n in duty(FLORIDA, "FL-003").numeric] == [(">=", "1"), (">=", "1")]
    assert duty(FLORIDA, "FL-017-rooms").extent == "one_per_room"
    assert duty(FLORIDA, "FL-029").extent == "one_per_room"
    assert duty(FLORIDA, "FL-032-sides").extent == "one_per_side"


@settings(max_examples=40, deadline=None)
@given(st.lists(st.booleans(), min_size=1, max_size=6))
def test_a_window_in_each_room_and_in_no_fewer(looked: list[bool]) -> None:
    visit = Visit()
    for number, seen in enumerate(looked):
        visit.add(Placed(f"Bedroom {number}", "bedroom"), place=f"b{number}")
        if seen:
            visit.add(Saw("opens and latches", "sound", kind="window"), place=f"b{number}")
    assert covered(visit, FLORIDA, "FL-029").status == ("met" if all(looked) else "open")


@settings(max_examples=40, deadline=None)
@given(st.lists(st.sampled_from(["seen", "excused", "left"]), min_size=1, max_size=5))
def test_cladding_on_each_side_seen_or_excused(sides: list[str]) -> None:
    visit = Visit()
    for number, how in enumerate(sides):
        visit.add(Placed(f"Side {number}", "outside-face"), place=f"s{number}")
        if how == "seen":
            visit.add(Saw("whole", "sound", kind="stucco"), place=f"s{number}")
        elif how == "excused":
            visit.add(Skipped("the wall", "vegetation", kind="stucco"), place=f"s{number}")
    expected = "open" if "left" in sides else "excused" if "excused" in sides else "met"
    assert covered(visit, FLORIDA, "FL-032-sides").status == expected


def test_the_end_of_service_life_is_a_ground_in_florida_and_has_its_own_word() -> None:
    # 61-30.801(1), F.A.C.: significantly deficient or at the end of their service lives.
    words = {word.means: word.words for word in book(FLORIDA).condition_words}
    assert words["end of life"] == "at the end of its service life"
    assert words["deficient"] == "significantly deficient"
    visit = Visit()
    visit.add(Listed("water-heater", "Water heater"), component="w")
    assert covered(visit, FLORIDA, "FL-007-end-of-life").status == "not asked"
    old = visit.add(Saw("made in 2003, rusty", "adverse", condition="water-heater.aged"), component="w")
    assert covered(visit, FLORIDA, "FL-007-end-of-life").status == "open"
    visit.add(Found("At the end of its service life", rests_on=(old,)), component="w")
    assert covered(visit, FLORIDA, "FL-007-end-of-life").status == "met"


# ---------------------------------------------------------------- NC-033: all near plumbing, in the garage, outside


@settings(max_examples=60, deadline=None)
@given(st.lists(st.tuples(st.integers(0, 120), st.booleans()), min_size=1, max_size=6))
def test_receptacles_within_six_feet_of_plumbing_are_all_tested(receptacles: list[tuple[int, bool]]) -> None:
    # 11 NCAC 08 .1110(a)(6): 6 ft, which is 72 in.
    visit = Visit()
    visit.add(Placed("Kitchen", "kitchen"), place="k")
    near: list[bool] = []
    for number, (inches, tested) in enumerate(receptacles):
        visit.add(Listed("receptacle", f"Receptacle {number}"), place="k", component=f"r{number}")
        visit.add(Read("distance-to-water", str(inches), "[in_i]"), component=f"r{number}")
        if tested:
            visit.add(Saw("polarity and ground are right", "sound"), component=f"r{number}")
        near += [tested] * (inches <= 72)
    status = covered(visit, CAROLINA, "NC-033").status
    if near:
        assert status == ("met" if all(near) else "open")
    else:
        assert status == "open"  # nothing tested that lies near: the kitchen is still asked for


def test_the_rule_of_receptacles_keeps_its_number_and_its_exception() -> None:
    rule = duty(CAROLINA, "NC-033")
    assert (rule.extent, rule.subjects[0].near, bool(rule.subjects[0].but)) == ("all", "plumbing", True)
    assert next((n.op, n.value, n.unit) for n in rule.numeric) == ("<=", "6", "[ft_i]")
    assert {duty(CAROLINA, f"NC-033-{where}").extent for where in ("garage", "outside")} == {"all"}


@pytest.mark.parametrize(("count", "status"), [(Count(6, 6), "met"), (Count(4, 6), "open"), (Count(6, None), "met")])
def test_a_count_speaks_for_a_kitchen_when_it_is_full(count: Count, status: str) -> None:
    visit = Visit()
    visit.add(Placed("Kitchen", "kitchen"), place="k")
    visit.add(Saw("tested", "sound", kind="receptacle", count=count), place="k")
    assert covered(visit, CAROLINA, "NC-033").status == status


@settings(max_examples=40, deadline=None)
@given(st.lists(st.sampled_from(["register", "absent", "nothing"]), min_size=1, max_size=5))
def test_heat_in_each_habitable_room(rooms: list[str]) -> None:
    # 11 NCAC 08 .1111(a): an installed heat source in each habitable space.
    visit = Visit()
    visit.add(Placed("Bath", "bathroom"), place="bath")
    for number, what in enumerate(rooms):
        visit.add(Placed(f"Bedroom {number}", "bedroom"), place=f"b{number}")
        if what == "register":
            visit.add(Saw("warm air", "sound", kind="register"), place=f"b{number}")
        elif what == "absent":
            visit.add(Absent("heat-source", adverse=True), place=f"b{number}")
    assert covered(visit, CAROLINA, "NC-039-rooms").status == ("open" if "nothing" in rooms else "met")


@pytest.mark.parametrize(
    ("fuels", "garage", "status"),
    [
        (("electricity",), False, "not asked"),
        (("electricity",), True, "open"),
        (("natural gas",), False, "open"),
        ((), None, "open"),
    ],
)
def test_carbon_monoxide_alarms_are_asked_for_with_fuel_or_a_garage(
    fuels: tuple[str, ...], garage: bool | None, status: str
) -> None:
    # 11 NCAC 08 .1110(d). What nobody said is asked once too often.
    assert covered(Visit(), CAROLINA, "NC-037-co", fuels=fuels, attached_garage=garage).status == status
    assert covered(Visit(), BASELINE, "BL-012-co", fuels=fuels, attached_garage=garage).status == status


# ---------------------------------------------------------------- NC-011, NC-012, NC-013: summary and claims of code

#: G.S. 143-151.58(a1), as the state's licensing board prints it on its page of statutes and rules (ncosfm.gov).
STATEMENT = (
    "This summary page is not the entire report. The complete report may include additional information of interest or "
    "concern to you. It is strongly recommended that you promptly read the complete report. For information regarding the "
    "negotiability of any item in this report under the real estate purchase contract, contact your North Carolina real "
    "estate agent or an attorney."
)


def three_systems() -> Visit:
    visit = Visit()
    for kind in ("sink", "range", "furnace"):
        visit.add(Listed(kind, kind), component=kind)
        visit.add(Saw("works", "sound"), component=kind)
    return visit


def test_the_statement_of_the_summary_is_word_for_word_from_three_systems_on() -> None:
    rule = book(CAROLINA).summary
    assert rule is not None
    assert (rule.from_systems, rule.verbatim, rule.statement) == (3, True, STATEMENT)
    two, three = Visit(), three_systems()
    for kind in ("sink", "range"):
        two.add(Saw("works", "sound", kind=kind))
    assert [s.duty.id for s in statements(scene(two, CAROLINA))] == []
    (told,) = statements(scene(three, CAROLINA))
    assert (told.duty.id, told.text, told.verbatim) == ("NC-011", STATEMENT, True)
    made = [summary(scene(visit, CAROLINA)) for visit in (two, three)]
    assert [m.required for m in made if m] == [False, True]


def test_the_summary_takes_what_fails_and_leaves_out_what_works() -> None:
    visit = three_systems()
    drip = visit.add(Saw("drips at the trap", "adverse"), component="sink")
    leak = visit.add(Found("Leak", rests_on=(drip,)), component="sink")
    made = summary(scene(visit, CAROLINA))
    assert made is not None
    assert made.entries == (leak,)
    words = {row.component: row.word.words if row.word else "" for row in item_states(scene(visit, CAROLINA))}
    assert words == {"sink": "does not function as intended", "range": "", "furnace": ""}
    unsure = Visit()
    unsure.add(Listed("furnace", "Furnace"), component="f")
    unsure.add(Saw("flame is yellow, I think", "adverse", sure=False), component="f")
    (row,) = item_states(scene(unsure, CAROLINA))
    assert row.word is not None
    assert row.word.words == "appears not to function as intended"


@pytest.mark.parametrize(
    ("words", "built", "missing"),
    [
        ("The guard is lower than the residential building code asks.", None, 2),
        ("The guard is lower than the residential building code asks in R312.1.2.", None, 1),
        ("The guard is lower than the residential building code asks in R312.1.2.", 2011, 0),
        ("The guard is 30 in high.", None, None),
    ],
)
def test_a_claim_of_code_rests_on_a_date_and_a_section(words: str, built: int | None, missing: int | None) -> None:
    # G.S. 143-151.58(a2); no other of these laws asks for it.
    visit = Visit()
    visit.add(Found("Low guard", words))
    found = code_claims(scene(visit, CAROLINA, year_built=built))
    assert [len(claim.missing) for claim in found] == ([] if missing is None else [missing])
    assert code_claims(scene(visit, FLORIDA, year_built=built)) == ()


@pytest.mark.parametrize(
    ("anchors", "due"),
    [
        (Anchors(completion=date(2026, 5, 7)), date(2026, 5, 12)),  # Thursday: Friday, Monday, Tuesday
        (Anchors(completion=date(2026, 5, 4), agreed=date(2026, 5, 8)), date(2026, 5, 8)),
        (Anchors(completion=date(2026, 5, 21)), date(2026, 5, 27)),  # Memorial Day, 25 May 2026, 5 U.S.C. 6103
        (Anchors(), None),
    ],
)
def test_the_days_of_north_carolina(anchors: Anchors, due: date | None) -> None:
    assert deadlines(book(CAROLINA), anchors).due == due


def test_laws_without_a_time_of_delivery_say_so() -> None:
    for name in (FLORIDA, BASELINE):
        found = deadlines(book(name), Anchors(completion=date(2026, 5, 7)))
        assert found.due is None
        assert "agreement" in found.words
    agreed = Anchors(completion=date(2026, 5, 7), agreed=date(2026, 5, 9))
    assert deadlines(book(WASHINGTON), agreed).due == date(2026, 5, 9)


# ---------------------------------------------------------------- WA-022, WA-031, WA-016, WA-020, WA-035


@pytest.mark.parametrize(
    ("method", "reason", "washington", "others"),
    [
        ("walked on the roof", "", "met", "met"),
        ("from the ground", "", "open", "met"),
        ("from the ground", "dark", "open", "met"),
        ("from a ladder at the eaves", "too-steep", "excused", "met"),
        ("", "", "open", "open"),
    ],
)
def test_walking_on_the_roof_is_asked_in_washington_and_telling_the_method_everywhere(
    method: str, reason: str, washington: str, others: str
) -> None:
    visit = Visit()
    visit.add(Placed("Roof", "roof"), place="r")
    if method:
        visit.add(Identified("method", method), place="r")
    if reason:
        visit.add(Skipped("walking on the roof", reason), place="r")
    names = (WASHINGTON, FLORIDA, CAROLINA, BASELINE)
    found = under_each(visit.record(), shipped(), job(WASHINGTON), after(600), names)
    got = {row.duty.id: row.status for rows in found.values() for row in rows}
    assert got["WA-022"] == washington
    assert {got[name] for name in ("FL-024-method", "NC-025-method", "BL-007-method")} == {others}


@pytest.mark.parametrize(
    ("name", "wanted"), [(WASHINGTON, "WA-031"), (CAROLINA, "NC-036"), (FLORIDA, "FL-018"), (BASELINE, "BL-011")]
)
def test_solid_aluminum_pulls_its_text_and_copper_does_not(name: str, wanted: str) -> None:
    for value, told in (("aluminum, solid", [wanted]), ("copper, nonmetallic sheathed cable", []), ("", [])):
        visit = Visit()
        visit.add(Listed("branch-wiring", "Branch wiring"), component="w")
        if value:
            visit.add(Identified("branch-wiring", value), component="w")
        assert [s.duty.id for s in statements(scene(visit, name))] == told
        assert covered(visit, name, wanted).status == ("met" if value else "open")


def test_each_crawl_space_is_looked_at_for_water() -> None:
    # WAC 308-408C-070(1)(b).
    visit = Visit()
    for place in ("front", "back"):
        visit.add(Placed(place, "crawl-space"), place=place)
    visit.add(Saw("dry", "sound", kind="crawl-space"), place="front")
    assert covered(visit, WASHINGTON, "WA-016").status == "open"
    visit.add(Saw("dry", "sound", kind="crawl-space"), place="back")
    assert covered(visit, WASHINGTON, "WA-016").status == "met"


def test_a_crawl_space_entered_in_part_with_its_reason_is_excused_and_not_met() -> None:
    # WAC 308-408C-070(2): 12 in under the girders.
    visit = Visit()
    visit.add(Placed("Crawl space", "crawl-space"), place="c")
    visit.add(Identified("method", "entered in part"), place="c")
    visit.add(Skipped("the bay beyond the girder", "low-clearance"), place="c")
    assert covered(visit, WASHINGTON, "WA-014").subjects[1].status == "excused"


def test_a_panel_known_for_trouble_has_to_be_written_up() -> None:
    # WAC 308-408C-110(1)(h).
    visit = Visit()
    visit.add(Listed("service-panel", "Service panel"), component="p")
    assert covered(visit, WASHINGTON, "WA-035").status == "open"
    seen = visit.add(Saw("of a kind known for trouble", "adverse", condition="service-panel.history"), component="p")
    assert covered(visit, WASHINGTON, "WA-035").status == "met"
    assert covered(visit, WASHINGTON, "WA-035-advise").status == "open"
    visit.add(Found("Panel with a record of trouble", rests_on=(seen,)), component="p")
    assert covered(visit, WASHINGTON, "WA-035-advise").status == "met"


@pytest.mark.parametrize(
    ("name", "wanted"), [(WASHINGTON, "WA-029"), (FLORIDA, "FL-018-alarms"), (CAROLINA, "NC-037"), (BASELINE, "BL-012")]
)
def test_what_is_not_there_is_a_report_too(name: str, wanted: str) -> None:
    kind = duty(name, wanted).subjects[0].kinds[0]
    assert duty(name, wanted).absence_stated
    visit = Visit()
    assert covered(visit, name, wanted).status == "open"
    visit.add(Absent(kind, adverse=True))
    assert covered(visit, name, wanted).status == "met"


def test_all_fixtures_and_not_a_sample_are_operated_in_north_carolina() -> None:
    # 11 NCAC 08 .1109(c).
    visit = Visit()
    kinds = {"k.sink": "sink", "b.sink": "sink", "b.toilet": "toilet", "b.tub": "bathtub", "s.bib": "hose-bib"}
    for name, kind in kinds.items():
        visit.add(Listed(kind, name), component=name)
    for name in kinds:
        assert covered(visit, CAROLINA, "NC-029").status == "open"
        visit.add(Ran("by its handle"), component=name)
    assert covered(visit, CAROLINA, "NC-029").status == "met"
