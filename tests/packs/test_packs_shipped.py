"""The shipped packs keep the laws of packs, and agree with published limits, years and duties."""

import json
from collections.abc import Iterator
from dataclasses import fields
from fractions import Fraction
from pathlib import Path
from typing import Any

import pytest

from witnessmark import units
from witnessmark.packs import ambiguities, check, eras_of, in_force, read, rulebook_for
from witnessmark.packs.model import TAGS, Criterion, Packs, Provenance
from witnessmark.units import Quantity

TABLES = Path(__file__).parent / "tables"
BOOK = "us.wa.308-408c"


def table(name: str) -> Any:
    return json.loads((TABLES / name).read_text(encoding="utf-8"))


LIMITS, YEARS, DUTIES = table("limits.json"), table("years-built.json"), table("us-wa-duties.json")


@pytest.fixture(name="packs", scope="module")
def _packs() -> Packs:
    return read()


def every_row(packs: Packs) -> Iterator[tuple[str, Any]]:
    for field in fields(packs):
        rows = getattr(packs, field.name)
        if field.name not in {"files", "overrides"}:
            for row in rows.values():
                yield field.name, row
                for duty in getattr(row, "duties", ()):
                    yield "duties", duty


def test_nothing_is_wrong_with_them() -> None:
    assert [str(p) for p in check()] == []


def test_every_row_says_where_it_comes_from(packs: Packs) -> None:
    paths = {f.path for f in packs.files}
    for name, row in every_row(packs):
        provenance: Provenance = row.provenance
        assert provenance.tag in TAGS, f"{name} {row.id}"
        assert provenance.in_force, f"{name} {row.id}"
        assert provenance.file in paths
        assert provenance.source.strip()
        assert not provenance.source.startswith("each row"), f"{name} {row.id} names no source of its own"


def test_a_source_that_is_none_says_so(packs: Packs) -> None:
    for name, row in every_row(packs):
        if name in {"frames", "translations"}:
            continue  # wording is our own; its source says so
        nameless = row.provenance.source == "common practice, no source"
        assert nameless == (row.provenance.tag == "common practice, no source"), f"{name} {row.id}"


def test_there_is_enough_for_a_whole_house(packs: Packs) -> None:
    counts = {field.name: len(getattr(packs, field.name)) for field in fields(packs) if field.name != "overrides"}
    least = {
        "kinds": 160, "measures": 80, "attributes": 60, "sorts": 35, "reasons": 40, "cautions": 18, "trades": 30,
        "criteria": 55, "eras": 38, "rulebooks": 1,
    }  # fmt: skip
    assert {name: count for name, count in least.items() if counts[name] < count} == {}


def test_every_measure_keeps_its_plausible_range(packs: Packs) -> None:
    for measure in packs.measures.values():
        assert measure.low is not None, measure.id
        assert measure.high is not None, measure.id


def test_cautions_open_nothing(packs: Packs) -> None:
    for caution in packs.cautions.values():
        first = caution.words.split(". ")
        assert not any(s.lower().startswith(("open ", "relight ", "turn on ", "repair ", "remove ")) for s in first)


@pytest.mark.parametrize("row", LIMITS["rows"], ids=lambda r: r["id"])
def test_limits_are_as_published(packs: Packs, row: dict[str, str]) -> None:
    held = packs.criteria[row["id"]]
    assert (held.op, held.value, held.high, held.unit) == (row["op"], row["value"], row.get("high"), row["unit"])
    assert held.document == row["document"]
    assert row["section"] in held.section
    assert held.edition
    assert held.provenance.tag == row["tag"]


def within(held: Criterion, reading: str, unit: str) -> bool:
    value, low = units.exact(Quantity(Fraction(reading), unit), held.unit), Fraction(held.value)  # type: ignore[arg-type]  # exact takes what Fraction takes
    if held.op == "between":
        assert held.high is not None
        return low <= value <= Fraction(held.high)
    return {"<=": value <= low, "<": value < low, ">=": value >= low, ">": value > low}[held.op]


@pytest.mark.parametrize("row", LIMITS["checks"], ids=lambda r: f"{r['id']}-{r['reading']}{r['unit']}")
def test_readings_fall_where_the_published_examples_put_them(packs: Packs, row: dict[str, Any]) -> None:
    assert within(packs.criteria[row["id"]], row["reading"], row["unit"]) is row["within"]


def test_texas_limits_stay_in_texas_and_washington_ones_in_washington(packs: Packs) -> None:
    for held in packs.criteria.values():
        if "Texas Administrative" in held.document:
            assert held.jurisdiction == "us.tx"
        elif "Washington" in held.document:
            assert held.jurisdiction == "us.wa"
        else:
            assert held.jurisdiction is None


def test_a_limit_leads_to_a_condition_of_its_own_kinds(packs: Packs) -> None:
    for held in packs.criteria.values():
        if held.condition is not None:
            assert set(held.kinds) <= set(packs.conditions[held.condition].kinds), held.id


def test_a_model_code_is_a_must_only_from_a_year_on(packs: Packs) -> None:
    for held in packs.criteria.values():
        if held.force == "law" and "International Residential" in held.document:
            assert held.built_from is not None, held.id


@pytest.mark.parametrize("row", YEARS["rows"], ids=lambda r: r["id"])
def test_years_are_as_compiled(packs: Packs, row: dict[str, Any]) -> None:
    era = packs.eras[row["id"]]
    assert (era.built_from, era.built_to) == (row["first"], row["last"])


def test_no_other_years(packs: Packs) -> None:
    assert set(packs.eras) == {row["id"] for row in YEARS["rows"]}


@pytest.mark.parametrize("row", YEARS["checks"], ids=lambda r: str(r["year"]))
def test_a_house_of_that_year(packs: Packs, row: dict[str, Any]) -> None:
    shown = {era.id for era in eras_of(packs, row["year"])}
    assert set(row["shown"]) <= shown
    assert not set(row["not_shown"]) & shown


@pytest.mark.parametrize("row", DUTIES["rows"], ids=lambda r: r["id"])
def test_every_duty_of_washington_is_there(packs: Packs, row: dict[str, Any]) -> None:
    duties = {duty.id: duty for duty in packs.rulebooks[BOOK].duties}
    held = duties[row["id"]]
    # A duty that asks for several things stands as several rows: WA-037, WA-037-operate.
    family = [d for d in duties.values() if d.id == row["id"] or d.id.startswith(row["id"] + "-")]
    verbs = {d.verb for d in family}
    wanted = set(row["verb"].split("+"))
    if held.refer_to:  # reported with its advice, in one text
        assert wanted <= {"report", "advise"}
        assert wanted & verbs
    else:
        assert wanted <= verbs
    for duty in family:
        assert duty.provenance.tag == row["tag"], duty.id
        assert duty.section.startswith("WAC " + row["section"].split("(")[0])
        for key in row["keys"]:
            assert key in duty.provenance.source, duty.id


def test_no_duty_of_washington_beyond_the_list(packs: Packs) -> None:
    known = {row["id"] for row in DUTIES["rows"]}
    assert {duty.id[:6] for duty in packs.rulebooks[BOOK].duties} == known


def test_tracked_duties_can_be_met_and_excused(packs: Packs) -> None:
    book = packs.rulebooks[BOOK]
    methods = {value.id for value in packs.attributes["method"].values}
    assert book.reasons
    assert "other" not in book.reasons
    for duty in book.duties:
        if duty.modality != "shall":
            assert not duty.tracked
        if duty.tracked:
            assert all(s.words for s in duty.subjects)
            assert all(s.kinds or s.attributes or s.sorts for s in duty.subjects), duty.id
        if duty.default_method:
            assert duty.default_method in methods, duty.id


def test_the_numbers_of_the_crawl_space_rule(packs: Packs) -> None:
    duty = next(d for d in packs.rulebooks[BOOK].duties if d.id == "WA-020")
    assert [(n.op, n.value, n.unit) for n in duty.numeric] == [
        ("<", "18", "[in_i]"), ("<", "24", "[in_i]"), ("<", "18", "[in_i]"), ("<", "12", "[in_i]"),
    ]  # fmt: skip


def test_washington_is_in_force_today(packs: Packs) -> None:
    book = rulebook_for(packs, BOOK, "2026-10-14")
    assert book is not None
    assert len(book.duties) == len(packs.rulebooks[BOOK].duties)
    assert rulebook_for(packs, BOOK, "2009-04-19") is None
    assert len(in_force(packs.kinds.values(), "2026-10-14")) == len(packs.kinds)


def test_words_said_of_two_kinds_stay_few(packs: Packs) -> None:
    notes = ambiguities(packs)
    assert len(notes) < len(packs.kinds)
