"""How an entry is put into a sentence, and what is never claimed."""

from dataclasses import replace
from datetime import UTC, datetime
from pathlib import Path

import pytest

from record_builder import Visit
from report.small_visit import PACKS, given, letter_of
from witnessmark.journal.acts import Read, Skipped, Took
from witnessmark.judging.model import Running
from witnessmark.report.clock import Clock
from witnessmark.report.naming import names_of, sentence
from witnessmark.report.wording import join, measured, reason_words


@pytest.mark.parametrize(
    ("body", "said"),
    [
        (Skipped("attic", "blocked"), "stored items were in the way"),
        (Skipped("attic", "blocked", "boxes up to the hatch"), "stored items were in the way (boxes up to the hatch)"),
        (Skipped("attic", "blocked", "items stored were in the way"), "items stored were in the way"),
        (Skipped("i can not see the back wall", "", "i can't see the back wall"), ""),
        (Skipped("attic", "", "the hatch is painted shut."), "the hatch is painted shut"),
        (Skipped("attic", "no-such-reason"), "no such reason"),
        (Skipped("attic"), ""),
    ],
)
def test_a_reason_is_said_once(body: Skipped, said: str) -> None:
    assert reason_words(body, names_of(Visit().record(), PACKS)) == said


@pytest.mark.parametrize(
    ("body", "said"),
    [
        (Read("x", "5.25", "[in_i]"), "5 1/4 in"),
        (Read("x", "14", "%", high="16"), "14 % to 16 %"),
        (Read("x", "14", "%", about=True), "about 14 %"),
        (Read("x", "lots", "[psi]"), "lots [psi]"),
        (Read("x", "NaN", ""), "NaN"),
        (Read("x", "", ""), ""),
    ],
)
def test_readings_stand_as_they_were_read(body: Read, said: str) -> None:
    assert measured(body) == said


def test_rows_of_words_and_sentences() -> None:
    assert [join([]), join(["a"]), join(["a", "", "b"]), join(("a", "b", "c"))] == ["", "a", "a and b", "a, b and c"]
    assert sentence("  i'm not going in: i can't see (i) or vi  ") == "I'm not going in: I can't see (i) or vi."
    assert sentence("") == ""


def test_times_of_another_day_or_zone_say_so() -> None:
    clock = Clock(
        datetime(2026, 2, 3, tzinfo=UTC).date(), datetime.fromisoformat("2026-02-03T00:00:00-08:00").utcoffset()
    )
    assert clock.say("2026-02-03T00:05:09-08:00") == "12:05:09 am"
    assert clock.say("2026-02-03T12:00:00-08:00", seconds=False) == "12:00 pm"
    assert clock.say("2026-02-04T09:00:00-08:00") == "9:00:00 am on February 4, 2026"
    assert clock.say("2026-02-03T09:00:00-07:00") == "9:00:00 am (UTC−07:00)"
    assert clock.say("no time") == "no time"


def test_a_picture_nobody_described_is_not_described(tmp_path: Path) -> None:
    some = given(tmp_path)
    facts = tuple(
        replace(fact, body=replace(fact.body, shows=None)) if isinstance(fact.body, Took) else fact
        for fact in some.record.facts
    )
    letter = letter_of(replace(some, record=replace(some.record, facts=facts)))
    assert letter.pictures[0].caption == "Taken with this entry: Drip at the trap nut."


def test_what_was_left_so_by_agreement_is_not_called_open(tmp_path: Path) -> None:
    some = given(tmp_path, blocked=False)
    row = Running("e004", "sink: filled, left so by agreement with the owner", "filled", some.standing.at)
    letter = letter_of(replace(some, standing=replace(some.standing, running=(row,))))
    (sink,) = letter.operations
    assert (
        sink.outcome == "So it stood when this letter was written: sink: filled, left so by agreement with the owner."
    )
    assert not sink.open
