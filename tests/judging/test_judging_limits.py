"""Readings against limits: values and their sources beside each check."""

import pytest

from record_builder import Visit, after
from small_packs import job_packs
from witnessmark.journal.acts import Body, Identified, Listed, Read
from witnessmark.journal.job import Alteration, Job
from witnessmark.judging import JudgedReading, standing

JOB = Job("job", rulebook="us.test", date="2026-02-03", year_built=2010)


def judge(*bodies: Body, job: Job = JOB, kind: str = "stair", label: str = "Main stair") -> tuple[JudgedReading, ...]:
    visit = Visit()
    visit.add(Listed(kind, label), component="c")
    for body in bodies:
        visit.add(body, component="c")
    return standing(visit.record(), job_packs(), job, after(60)).readings


def verdict(measure: str, value: str, unit: str, high: str | None = None) -> str:
    (row,) = judge(Read(measure, value, unit, high))
    return row.verdict


@pytest.mark.parametrize(
    ("measure", "value", "unit", "expected"),
    [
        # IRC 2018 R311.7.5.1: riser at most 7 3/4 in (196 mm); 7 13/16 in and 7.8 in fail.
        ("riser-height", "7.75", "[in_i]", "within"),
        ("riser-height", "7.8125", "[in_i]", "beyond"),
        ("riser-height", "7.8", "[in_i]", "beyond"),
        ("riser-height", "196.85", "mm", "within"),
        ("riser-height", "196.86", "mm", "beyond"),
        # IRC 2018 R311.7.8.1: handrail 34 to 38 in; 33.5 fails, 34 and 38 pass, 38.5 fails.
        ("handrail-height", "33.5", "[in_i]", "beyond"),
        ("handrail-height", "34", "[in_i]", "within"),
        ("handrail-height", "38", "[in_i]", "within"),
        ("handrail-height", "38.5", "[in_i]", "beyond"),
        # IRC 2018 R312.1.3: a 4 in sphere does not pass; exactly 4 in lets it pass.
        ("baluster-gap", "3.9375", "[in_i]", "within"),
        ("baluster-gap", "4", "[in_i]", "beyond"),
        ("baluster-gap", "4.0", "[in_i]", "beyond"),
        ("baluster-gap", "101.6", "mm", "beyond"),
    ],
)
def test_published_limits(measure: str, value: str, unit: str, expected: str) -> None:
    assert verdict(measure, value, unit) == expected


def test_temperature_in_either_scale() -> None:
    # UPC 2018 408.3: 120 °F at a tap, which is 48.888… °C.
    assert verdict("water-temperature", "48.8", "Cel") == "within"
    assert verdict("water-temperature", "48.9", "Cel") == "beyond"


def test_a_difference_of_temperatures_is_not_a_temperature() -> None:
    # 14 to 22 °F across a coil is 7.8 to 12.2 °C (common practice, no source).
    assert verdict("temperature-split", "10", "Cel") == "within"
    assert verdict("temperature-split", "13", "Cel{difference}") == "beyond"
    assert verdict("temperature-split", "18", "[degF]") == "within"


def test_a_slope_read_as_an_angle() -> None:
    # 2 in 12 is 9.46°.
    assert verdict("roof-pitch", "9.5", "deg") == "within"
    assert verdict("roof-pitch", "9.4", "deg") == "beyond"
    assert verdict("roof-pitch", "89.9", "deg") == "cannot compare"


@pytest.mark.parametrize(("low", "high", "expected"), [
    ("34", "38", "within"), ("33", "36", "beyond"), ("36", "39", "beyond"), ("39", "36", "beyond"),
])  # fmt: skip
def test_a_range_is_judged_by_its_worse_end(low: str, high: str, expected: str) -> None:
    assert verdict("handrail-height", low, "[in_i]", high) == expected


@pytest.mark.parametrize(
    ("value", "unit", "why"),
    [
        ("62", "[psi]", "measure different things"),
        ("36", "", "the reading has no unit"),
        ("36", "cubit", "not known"),
        ("high", "[in_i]", "not a number"),
        ("NaN", "[in_i]", "not a number"),
        ("", "[in_i]", "not a number"),
    ],
)
def test_what_cannot_be_compared_says_why(value: str, unit: str, why: str) -> None:
    (row,) = judge(Read("handrail-height", value, unit))
    assert row.verdict == "cannot compare"
    assert why in row.words


def test_without_a_limit_it_says_so() -> None:
    (row,) = judge(Read("crack-width", "1/8", "[in_i]"), Read())[:1]
    assert (row.verdict, row.criterion) == ("no criterion", None)


def test_words_name_limit_document_edition_and_section() -> None:
    (row,) = judge(Read("riser-height", "7.8125", "[in_i]", about=True))
    assert row.words == (
        "about 7 13/16 in is beyond the limit, at most 7 3/4 in. A riser is at most 7 3/4 in high (International "
        "Residential Code, 2018, R311). A must where this document was adopted."
    )


class TestMust:
    def must(self, *bodies: Body, job: Job) -> tuple[bool, str]:
        rows = judge(*bodies, Read("riser-height", "8", "[in_i]"), job=job)
        return rows[-1].must, rows[-1].words

    def test_what_was_built_before_is_recommended(self) -> None:
        must, words = self.must(job=Job("job", rulebook="us.test", date="2026-02-03", year_built=1962))
        assert not must
        assert "Not yet required when this was built (1962)" in words
        assert "Recommended today" in words

    def test_an_unknown_year_is_no_must(self) -> None:
        must, words = self.must(job=Job("job", rulebook="us.test", date="2026-02-03"))
        assert not must
        assert "When this was built is not known" in words

    def test_an_alteration_of_this_kind_counts(self) -> None:
        old = Job("job", rulebook="us.test", date="2026-02-03", year_built=1962)
        for what, expected in (("stair rebuilt", True), ("kitchen", False), ("upstairs bath", False)):
            job = Job("job", rulebook="us.test", date=old.date, year_built=1962, altered=(Alteration(what, 2015),))
            assert self.must(job=job)[0] is expected

    def test_a_year_identified_on_the_component_counts(self) -> None:
        old = Job("job", rulebook="us.test", date="2026-02-03", year_built=1962)
        assert self.must(Identified("made", "March 2015"), job=old)[0]
        assert not self.must(Identified("serial", "2015"), job=old)[0]

    def test_a_guide_is_never_a_must(self) -> None:
        rows = judge(Read("water-pressure", "30", "[psi]"))
        by_id = {row.criterion.id: row for row in rows if row.criterion}
        # 22 TAC 535.231: report above 80 psi.
        assert (by_id["pressure"].verdict, by_id["pressure"].must) == ("within", True)
        assert (by_id["pressure-guide"].verdict, by_id["pressure-guide"].must) == ("beyond", False)
        assert "Recommended, not required." in by_id["pressure-guide"].words
        assert "by the law in force here" in by_id["pressure"].words

    def test_the_law_of_another_place_does_not_apply(self) -> None:
        rows = judge(Read("water-pressure", "90", "[psi]"), job=Job("job", date="2026-02-03"))
        assert [row.criterion.id for row in rows if row.criterion] == ["pressure-guide"]

    def test_a_limit_no_longer_in_force_does_not_apply(self) -> None:
        job = Job("job", rulebook="us.test", date="2009-06-01")
        assert len(judge(Read("water-temperature", "130", "[degF]"), job=job)) == 2
        assert len(judge(Read("water-temperature", "130", "[degF]"))) == 1
