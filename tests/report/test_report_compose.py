"""What the letter says: everything of the record, in the order of the report, each statement on its entries."""

import json
from dataclasses import fields, is_dataclass, replace
from pathlib import Path

import pytest

from report.small_visit import ISSUED, JOB, given, letter_of
from witnessmark.journal.acts import Found, Head, PackUsed, Sealed
from witnessmark.journal.fold import fold
from witnessmark.problems import Problem
from witnessmark.report import compose, report_bytes, report_hash, write_json
from witnessmark.report.letter import Letter

GOLDEN = Path(__file__).with_name("golden") / "report.json"
SEAL = Sealed(
    root="ab" * 32, heads=(Head("phone", 27, "cd" * 32, 1),), packs=(PackUsed("xx", "1", "ef" * 32),), facts="12" * 32,
    report="34" * 32, key="56" * 32, signature="78" * 64, edition=2, why="a misreading was put right",
)  # fmt: skip


@pytest.fixture
def letter(tmp_path: Path) -> Letter:
    return letter_of(given(tmp_path))


def sealed(tmp_path: Path, *, blocked: bool = False) -> Letter:
    some = given(tmp_path, blocked=blocked)
    return compose(
        some.job, some.record, some.packs, some.standing, media=some.files.get, issued=ISSUED,
        pictures=some.pictures, seal=SEAL, verification=(),
    )  # fmt: skip


def texts(value: object) -> list[str]:
    if isinstance(value, str):
        return [value]
    if isinstance(value, tuple):
        return [text for item in value for text in texts(item)]
    if is_dataclass(value) and not isinstance(value, type):
        return [t for field in fields(value) for t in texts(getattr(value, field.name))]
    return []


def test_the_opening_says_who_where_when_for_whom_and_under_which_law(letter: Letter) -> None:
    said = " ".join(paragraph.text for paragraph in letter.opening.paragraphs)
    assert "1 Teasel Row on Tuesday, February 3, 2026, from 9:00 am to 10:30 am" in said
    assert "UTC−08:00" in said
    assert "31 °F outdoors" in said
    assert "XX 1" in said
    assert (letter.opening.client, letter.opening.inspector) == ("Noa Fernsby", "Odd Quayle")


def test_findings_come_by_stake_then_urgency(tmp_path: Path) -> None:
    some = given(tmp_path)
    template = next(fact for fact in some.record.facts if isinstance(fact.body, Found))
    mixed = [
        ("upkeep", "now"),
        ("people", "watch"),
        ("building", "now"),
        ("people", "now"),
        ("", ""),
        ("function", "soon"),
    ]
    assert isinstance(template.body, Found)
    made = tuple(
        replace(template, id=f"f{i}", body=replace(template.body, title=f"{s} {u}", stake=s, urgency=u))
        for i, (s, u) in enumerate(mixed)
    )
    letter = letter_of(replace(some, record=replace(some.record, facts=some.record.facts + made)))
    order = [(finding.stake, finding.urgency) for finding in letter.findings]
    assert order == [
        ("people", "now"), ("people", "soon"), ("people", "watch"), ("building", "now"), ("function", "soon"),
        ("function", "plan"), ("upkeep", "now"), ("", ""),
    ]  # fmt: skip
    assert [finding.number for finding in letter.findings] == list(range(1, 9))
    assert letter.findings[-1].sentence == "What is at stake was not said; how soon was not said."


def test_a_finding_has_four_parts_in_words_and_its_evidence(letter: Letter) -> None:
    scald, drip = letter.findings
    assert (scald.seen, scald.why, scald.if_left, scald.do) == (
        "138 °F at the tap.", "It scalds.", "A burn.", "Have it set lower.",
    )  # fmt: skip
    assert scald.by == "a licensed plumber"
    assert scald.sentence == "People are at stake; deal with it soon."
    assert drip.pictures == (1,)
    rows = {row.entry: row for row in letter.evidence}
    assert rows["e007"].limits == (
        "139 °F is beyond the limit, at most 120 °F (An Invented Code, 2020, 7.1). (Recalled, check the text.)",
    )
    assert rows["e006"].quoted == "there's a drip right at the nut"
    assert rows["e006"].how == "said aloud at 8:50 to 8:54 of talk.vtt"


def test_everything_cited_stands_among_the_entries_once_with_time_and_device(letter: Letter) -> None:
    numbers = letter.numbers
    assert sorted(numbers.values()) == list(range(1, len(letter.evidence) + 1))
    cited = {entry for finding in letter.findings for entry in finding.rests_on}
    cited |= {
        entry for system in letter.duties for duty in system.duties for s in duty.subjects for entry in s.rests_on
    }
    cited |= {picture.entry for picture in letter.pictures} | {row.entry for row in letter.readings}
    assert cited <= set(numbers)
    assert all(row.clock and row.device and row.by for row in letter.evidence)
    assert [row.at for row in letter.evidence] == sorted(row.at for row in letter.evidence)


def test_what_was_seen_and_needed_nowhere_is_still_told(letter: Letter) -> None:
    words = {row.entry: row.words for row in letter.evidence}
    assert words["e018"] == "Two windows open and close. Two of five looked at; none fell short."
    assert "e025" not in words  # a draft nobody accepted
    assert "e020" in words  # dropped, but a finding cites it


def test_what_was_dropped_or_amended_says_so(letter: Letter) -> None:
    rows = {row.entry: row for row in letter.evidence}
    assert rows["e020"].standing == "No longer counts: it was a shadow."
    assert rows["e007"].words == "Water temperature 139 °F."
    assert rows["e007"].changes == ("Amended 10:02:00 am by A. Example: misread.",)


def test_citing_an_amendment_is_citing_the_entry(tmp_path: Path) -> None:
    some = given(tmp_path)
    facts = tuple(
        replace(fact, body=replace(fact.body, rests_on=("e024",)))
        if isinstance(fact.body, Found) and fact.id == "e022"
        else fact
        for fact in some.record.facts
    )
    letter = letter_of(replace(some, record=replace(some.record, facts=facts)))
    assert letter.findings[0].rests_on == ("e007",)


def test_an_entry_that_is_not_there_is_named_as_missing(tmp_path: Path) -> None:
    some = given(tmp_path)
    facts = tuple(
        replace(fact, body=replace(fact.body, rests_on=("nowhere",))) if isinstance(fact.body, Found) else fact
        for fact in some.record.facts
    )
    letter = letter_of(replace(some, record=replace(some.record, facts=facts)))
    assert {row.entry: row.standing for row in letter.evidence}["nowhere"] == "Missing."
    assert "WM807" in {problem.number for problem in letter.problems}


def test_duties_stand_in_the_order_of_the_law_with_status_and_sureness(letter: Letter) -> None:
    duties = [duty for system in letter.duties for duty in system.duties]
    assert [(duty.section, duty.status) for duty in duties] == [("1(a)", "met"), ("1(b)", "open")]
    assert duties[0].note == "recalled, check the text"
    assert duties[1].note == ""
    assert [(row.section, row.text) for row in letter.law_texts] == [("1(b)", "Words the law fixes.")]
    assert [(s.status, s.how) for s in duties[0].subjects] == [
        ("met", "operated, seen and measured"), ("excused", "not inspected"),
    ]  # fmt: skip
    assert {row.why for row in letter.not_asked} == {"No cooling.", "Nothing of the kind was recorded."}
    assert [duty.words for duty in letter.beyond_visit] == ["Never: hide a defect.", "Deliver the report in time."]
    assert [duty.words for duty in letter.not_required] == ["Move stored items."]


def test_what_was_run_tells_each_time_until_it_was_put_back(letter: Letter) -> None:
    (sink,) = letter.operations
    assert [step.clock for step in sink.steps] == ["9:03:00 am", "9:08:00 am", "9:09:00 am"]
    assert sink.outcome == "Put back."
    assert [row.text for row in letter.as_found] == ["Kitchen sink: tap opened."]


def test_what_was_not_inspected_and_what_was_in_doubt(letter: Letter) -> None:
    assert [row.text for row in letter.not_inspected] == ["Kitchen: north wall, because stored items were in the way."]
    assert [row.text for row in letter.doubts] == [
        "Kitchen: whether the stain is old. Settled: looked again: dry.",
    ]


def test_the_house_at_a_glance(letter: Letter) -> None:
    assert ("Built", "1961") in letter.glance.facts
    (shutoff,) = letter.glance.shutoffs
    assert (shutoff.component, shutoff.place) == ("Main water shutoff", "kitchen")
    assert shutoff.says == ("date of manufacture: 1999, about 27 years old then",)


def test_pictures_have_words_and_files_that_cannot_be_shown_are_told(letter: Letter) -> None:
    assert [(p.name, p.sort) for p in letter.pictures] == [
        ("drip.jpg", "photo"), ("heat.tif", "thermal"), ("wall.jpg", "photo"),
    ]  # fmt: skip
    assert letter.pictures[0].alt == "Photo, kitchen, 9:09:30 am: Drip under the sink."
    assert letter.pictures[2].alt.endswith("the record does not say what it shows.")
    assert [(row.name, row.why) for row in letter.filed] == [
        ("talk.vtt", "a file of this sort (text/vtt) is not shown on a page"),
        ("gone.jpg", "the file is not among the media of the job"),
    ]
    assert [problem.number for problem in letter.problems] == ["WM801"]


def test_a_thermal_frame_without_a_stand_in_is_told_in_words(tmp_path: Path) -> None:
    letter = letter_of(given(tmp_path), pictures={})
    assert "heat.tif" in [row.name for row in letter.filed]
    assert "WM802" in [problem.number for problem in letter.problems]


def test_a_draft_says_how_many_things_are_open(letter: Letter, tmp_path: Path) -> None:
    assert letter.draft == "Draft: not issued. Two things are open."
    assert [(end.sort, end.note) for end in letter.open_ends] == [
        ("make sure", ""), ("say why", "recalled, check the text"),
    ]  # fmt: skip
    assert letter_of(given(tmp_path, blocked=False)).draft == "Draft: not issued. Nothing keeps it from being issued."
    assert sealed(tmp_path).draft == ""
    assert sealed(tmp_path, blocked=True).draft == letter.draft


def test_the_seal_holds_the_hash_of_the_data_without_changing_it(tmp_path: Path) -> None:
    issued = sealed(tmp_path)
    assert report_bytes(issued) == report_bytes(letter_of(given(tmp_path, blocked=False)))
    assert issued.seal.replaces == (
        "This is edition 2 of this report; it replaces the one before: a misreading was put right."
    )
    assert issued.seal.checked
    assert issued.seal.root == SEAL.root


def test_invented_is_said(letter: Letter, tmp_path: Path) -> None:
    assert "do not exist" in letter.invented
    assert letter_of(given(tmp_path, job=replace(JOB, invented=False))).invented == ""


def test_the_same_record_gives_the_same_letter(tmp_path: Path) -> None:
    one, other = given(tmp_path), given(tmp_path)
    shuffled = fold(reversed(list(other.record.entries.values())))
    assert report_bytes(letter_of(one)) == report_bytes(letter_of(replace(other, record=shuffled)))


def test_an_empty_record_is_a_letter_too(tmp_path: Path) -> None:
    some = given(tmp_path)
    standing = replace(some.standing, loose_ends=(), duties=(), readings=())
    bare = replace(JOB, client="", inspector="", address="", date="", rulebook="none")
    letter = letter_of(replace(some, job=bare, record=fold(()), standing=standing))
    assert letter.summary == "Nothing was written down as a finding."
    assert letter.evidence == ()
    assert [problem.number for problem in letter.problems] == ["WM806"]


def test_the_letter_never_says_that_anything_is_safe_or_complies(letter: Letter) -> None:
    own = [t.lower() for t in texts(letter) if t]
    assert not [t for t in own if "is safe" in t or "are safe" in t or "complies with code" in t]
    assert any("no statement that any part of the house is free of danger" in t for t in own)


def test_control_signs_are_left_out_and_named(tmp_path: Path) -> None:
    some = given(tmp_path, job=replace(JOB, client="Noa\u202e ybsnreF\x00\x07", inspector="Odd\r\nQuayle"))
    letter = letter_of(some)
    assert letter.opening.client == "Noa ybsnreF"
    assert letter.opening.inspector == "Odd\nQuayle"
    problems: list[Problem] = [problem for problem in letter.problems if problem.number == "WM805"]
    assert len(problems) == 1


def test_decomposed_letters_are_no_problem(tmp_path: Path) -> None:
    letter = letter_of(given(tmp_path, job=replace(JOB, client="Rene\u0301")))
    assert letter.opening.client == "René"
    assert "WM805" not in {problem.number for problem in letter.problems}


def test_the_data_are_as_published(letter: Letter, tmp_path: Path) -> None:
    # A change here changes what other programs read: add a version, or say so in the changelog.
    target = tmp_path / "out" / "report.json"
    assert write_json(letter, target) == ()
    assert target.read_bytes() == report_bytes(letter)
    data = json.loads(target.read_text(encoding="utf-8"))
    assert data == json.loads(GOLDEN.read_text(encoding="utf-8"))
    assert "seal" not in data
    assert str(tmp_path) not in target.read_text(encoding="utf-8")
    assert len(report_hash(letter)) == 64
