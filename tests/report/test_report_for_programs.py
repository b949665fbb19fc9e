"""What the report gives to other programs: its data under a published schema, tables, and a calendar."""

from __future__ import annotations

import csv
import io
import json
from dataclasses import replace
from datetime import date, timedelta
from pathlib import Path

import jsonschema  # type: ignore[import-untyped] # its stubs are a package of their own
import pytest
import vobject  # type: ignore[import-untyped] # it ships no types

from record_builder import Visit
from report.small_visit import JOB, given, letter_of
from witnessmark.journal.acts import Found
from witnessmark.report import Letter, report_bytes
from witnessmark.report.reminders import reminders
from witnessmark.report.schema import SCHEMA_NAME, report_schema
from witnessmark.report.tables import readings_table, repairs_table

DOCS = Path(__file__).resolve().parents[2] / "docs" / "schema"


@pytest.fixture
def letter(tmp_path: Path) -> Letter:
    return letter_of(given(tmp_path))


def test_the_schema_is_itself_valid_and_published() -> None:
    schema = json.loads(report_schema())
    jsonschema.Draft202012Validator.check_schema(schema)
    assert (DOCS / SCHEMA_NAME).read_bytes() == report_schema(), "run `make docs`"


def test_every_report_fits_the_schema_and_a_wrong_one_does_not(letter: Letter) -> None:
    check = jsonschema.Draft202012Validator(json.loads(report_schema()))
    data = json.loads(report_bytes(letter))
    check.validate(data)
    spoilt: list[dict[str, object]] = [{"version": 1}, {"stakes": None}, {"surprise": 1}, {"opening": {}}]
    for spoil in spoilt:
        assert not check.is_valid({**data, **spoil}), spoil


def rows(table: bytes) -> list[dict[str, str]]:
    return list(csv.DictReader(io.StringIO(table.decode("utf-8-sig"), newline="")))


def test_readings_stand_in_a_table_with_time_and_limit(letter: Letter) -> None:
    found = rows(readings_table(letter))
    assert len(found) == len(letter.readings) > 0
    for row, reading in zip(found, letter.readings, strict=True):
        assert (row["Value"], row["Entry"]) == (reading.value, reading.entry)
        assert row["Time"].startswith(JOB.date)


def test_findings_stand_in_a_table_and_no_cell_is_a_formula(tmp_path: Path) -> None:
    visit = Visit()
    for words in ("=cmd|' /C calc'!A0", "+1", "@SUM(1)", "-2+3", "-5", 'plain, with "quotes"\nand a line'):
        visit.add(Found(words, seen=words, do=words, stake="people", urgency="soon"))
    found = rows(repairs_table(letter_of(replace(given(tmp_path), record=visit.record()))))
    titles = {row["Title"] for row in found}
    assert "'=cmd|' /C calc'!A0" in titles
    assert "-5" in {row["What to do"].rstrip(".") for row in found}, "a number is a number"
    assert not [cell for row in found for cell in row.values() if cell[:1] in {"=", "+", "@"}]


def test_the_calendar_is_read_by_another_library(letter: Letter) -> None:
    # vobject, a library of others, reads RFC 5545 strictly.
    (calendar,) = vobject.readComponents(reminders(letter).decode("utf-8"))
    urgencies = {finding.urgency for finding in letter.findings}
    events = calendar.contents["vevent"]
    assert len(events) == len(urgencies)
    for event in events:
        assert event.dtstart.value > date.fromisoformat(JOB.date)
        assert event.dtend.value - event.dtstart.value == timedelta(1)
        assert "suggestion" in event.description.value
        assert event.uid.value
    told = " ".join(event.description.value for event in events)
    assert all(finding.title in told for finding in letter.findings)


def test_the_calendar_is_the_same_for_the_same_letter_and_lines_are_short(letter: Letter) -> None:
    once = reminders(letter)
    assert once == reminders(letter)
    assert once.endswith(b"END:VCALENDAR\r\n")
    assert all(len(line) <= 75 for line in once.split(b"\r\n")), "RFC 5545 section 3.1: lines of at most 75 octets"


def test_without_findings_the_calendar_is_empty(tmp_path: Path) -> None:
    empty = letter_of(replace(given(tmp_path), record=Visit().record()))
    (calendar,) = vobject.readComponents(reminders(empty).decode("utf-8"))
    assert "vevent" not in calendar.contents
