"""What the law wants in the report, later editions, second looks and the outlook, with the shipped packs.

The rulebooks carry their own sources and how each text was read; here only their way into the letter is tested.
"""

from __future__ import annotations

from datetime import timedelta
from pathlib import Path

import pytest

from record_builder import START, Visit, after
from witnessmark import packs as packs_
from witnessmark.journal.acts import (
    Amended,
    Arrived,
    Dropped,
    Found,
    Head,
    Identified,
    Left,
    Listed,
    Placed,
    Saw,
    Sealed,
    Settled,
    Skipped,
    Took,
)
from witnessmark.journal.job import Job
from witnessmark.judging import standing
from witnessmark.packs.model import Packs
from witnessmark.report import Letter, compose, report_hash


@pytest.fixture(scope="module")
def shipped() -> Packs:
    return packs_.read()


def visit() -> Visit:
    made = Visit()
    made.add(Arrived(), 0)
    made.add(Placed("kitchen", "kitchen"), 1, place="kitchen")
    made.add(Listed("range", "range"), 2, place="kitchen", component="range")
    made.add(Listed("dishwasher", "dishwasher"), 3, place="kitchen", component="dishwasher")
    made.add(Listed("water-heater", "water heater"), 4, place="garage", component="heater")
    made.add(Saw("no anti-tip bracket", "adverse"), 5, component="range")  # e006
    made.add(
        Found("Range can tip", rests_on=("e006",), stake="people", urgency="now", kind="range"), 6, component="range"
    )
    made.add(Skipped(reason="stored-items", what="dishwasher"), 7, component="dishwasher")
    made.add(Identified("made", "2009", kind="water-heater"), 8, component="heater")
    made.add(Left(), 60)
    return made


def letter(made: Visit, packs: Packs, rulebook: str, seal: Sealed | None = None, **facts: object) -> Letter:
    job = Job("0199e000-0000-7000-8000-000000000001", date=START.date().isoformat(), rulebook=rulebook, year_built=1985)
    job = Job(**{**{f: getattr(job, f) for f in job.__slots__}, **facts})
    record = made.record()
    files = {"a" * 64: Path("/nowhere/a.jpg"), "b" * 64: Path("/nowhere/b.jpg")}
    stands = standing(record, packs, job, after(120))
    return compose(job, record, packs, stands, media=files.get, issued=START + timedelta(days=1), seal=seal)


def test_items_stand_under_the_laws_own_words_and_codes(shipped: Packs) -> None:
    made = letter(visit(), shipped, "us.tx.535-r")
    said = {row.item: (row.word, row.code) for row in made.items}
    assert said["Range"] == ("Deficient", "D")
    assert said["Dishwasher"] == ("Not Inspected", "NI")
    assert said["Water heater"] == ("Inspected", "I")
    assert all(row.rests_on for row in made.items)
    assert letter(visit(), shipped, "us.wa.308-408c").items == (), "this law has no word for what is in order"


def test_items_come_in_the_order_of_the_law(shipped: Packs) -> None:
    made = letter(visit(), shipped, "us.tx.535-r")
    book = shipped.rulebooks["us.tx.535-r"]
    first = list(dict.fromkeys(duty.system for duty in book.duties))
    order = [row.system for row in made.items]
    assert order == sorted(order, key=first.index)


def test_texts_of_the_law_are_printed_only_when_it_wants_them(shipped: Packs) -> None:
    book = shipped.rulebooks["us.ny.197"]
    wanted = {duty.mandatory_text for duty in book.duties if duty.mandatory_text and duty.verb != "contract"}
    made = letter(visit(), shipped, "us.ny.197")
    assert {row.text for row in made.law_texts} <= wanted
    everything = {row.text for name in shipped.rulebooks for row in letter(visit(), shipped, name).law_texts}
    assert everything, "at least one law wants a text in this report"


def test_the_summary_of_a_law_takes_in_the_findings_it_lists_and_no_others(shipped: Packs) -> None:
    made = letter(visit(), shipped, "us.nc.11-08")
    assert made.law_summary is not None
    assert made.law_summary.findings == (1,)
    assert letter(visit(), shipped, "us.wa.308-408c").law_summary is None


def test_the_day_it_is_due_is_counted(shipped: Packs) -> None:
    # 22 TAC 535.222(a), recalled: two days. The visit is on 2026-02-03; payment is not known, so the day is not either.
    (line,) = [line for line in letter(visit(), shipped, "us.tx.535-r").law if "due" in line]
    assert "once known" in line
    days = [line for name in shipped.rulebooks for line in letter(visit(), shipped, name).law if "due on" in line]
    assert any("February" in line and "2026" in line for line in days)


def test_what_was_left_out_is_held_against_the_laws_list(shipped: Packs) -> None:
    (row,) = letter(visit(), shipped, "us.tx.535-r").left_out
    assert (row.what, row.listed) == ("Dishwasher", True)
    assert row.owed, "the client was not told"
    told = visit()
    told.add(Settled(of=("e008",), with_whom="the client", how="told on site"), 50)
    assert letter(told, shipped, "us.tx.535-r").left_out[0].owed == ""


def test_the_outlook_is_there_only_when_asked_for_and_never_one_year(shipped: Packs) -> None:
    assert letter(visit(), shipped, "us.wa.308-408c").outlook == ()
    rows = letter(visit(), shipped, "us.wa.308-408c", outlook=True).outlook
    assert rows
    assert {(row.component, row.age) for row in rows} == {("Water heater", START.year - 2009)}
    assert len({row.source for row in rows}) > 1, "each source stands for itself"
    assert all(row.rests_on == ("e009",) for row in rows)


def _sealed(made: Visit, edition: int, why: str | None = None) -> Sealed:
    n = len(made.entries)
    return Sealed(root="r", heads=(Head("phone", n, made.entries[-1].hash),), edition=edition, why=why)


def test_a_later_edition_says_what_changed_and_why(shipped: Packs) -> None:
    made = visit()
    first = _sealed(made, 1)
    made.add(first, 100)
    made.add(
        Amended(
            of="e007",
            why="the bracket was found behind it",
            act="found",
            body=Found("Range bracket not engaged", rests_on=("e006",)),
        ),
        110,
        component="range",
    )
    drip = made.add(Found("Tap drips", rests_on=("e009",)), 111)
    made.add(Saw("drips", "adverse"), 112)
    made.add(Dropped(of=drip, why="it was the neighbour's hose"), 113)
    lost = made.add(Found("Stain under the sink", rests_on=("e009",)), 114)
    seal = _sealed(made, 2, "a finding was put right")
    (edition,) = letter(made, shipped, "us.wa.308-408c", seal).editions
    assert (edition.number, edition.why) == (2, "A finding was put right.")
    said = [change.text for change in edition.changes]
    assert said[0] == "Finding changed: Range can tip. The bracket was found behind it."
    assert "Finding withdrawn: Tap drips. It was the neighbour's hose." in said
    assert "Finding added: Stain under the sink." in said
    assert "Finding added: Tap drips." not in said
    assert any(change.rests_on == (lost,) for change in edition.changes)
    assert said[-1] == "Other entries recorded since: 1."


def test_a_delivery_is_told_in_the_next_edition_and_changes_none(shipped: Packs) -> None:
    made = visit()
    seal = made.add(_sealed(made, 1), 100)
    sent = made.add(Settled(of=(seal,), state="delivered", with_whom="the client", how="by e-mail"), 110)
    made.add(Settled(of=(seal,), state="opened", with_whom="the client"), 115)
    told = letter(made, shipped, "us.wa.308-408c", _sealed(made, 2, "a stain"))
    assert [row.text for row in told.deliveries] == [
        "Edition 1 was delivered 10:50 am to the client (by e-mail).", "Edition 1 was opened 10:55 am by the client.",
    ]  # fmt: skip
    assert told.deliveries[0].rests_on == (sent,)
    assert told.editions[0].changes == (), "to deliver a report changes nothing in it"


def test_a_first_edition_and_a_draft_change_nothing(shipped: Packs) -> None:
    made = visit()
    assert letter(made, shipped, "us.wa.308-408c").editions == ()
    assert letter(made, shipped, "us.wa.308-408c", _sealed(made, 1)).editions == ()


def test_the_hash_that_is_sealed_is_that_of_the_letter_that_is_issued(shipped: Packs) -> None:
    made = visit()
    made.add(_sealed(made, 1), 100)
    made.add(Found("Stain", rests_on=("e009",)), 110)
    job = Job("0199e000-0000-7000-8000-000000000001", date=START.date().isoformat(), rulebook="us.wa.308-408c")
    record = made.record()
    stands = standing(record, shipped, job, after(120))
    seal = _sealed(made, 2, "a stain")
    before, after_ = (
        compose(job, record, shipped, stands, media=lambda _: None, issued=START, **how)
        for how in ({"edition": (2, "a stain")}, {"seal": seal})
    )
    assert report_hash(before) == report_hash(after_)


@pytest.mark.parametrize("answer", ["repaired", "not repaired", "cannot verify"])
def test_a_finding_looked_at_again_is_answered_with_its_evidence(shipped: Packs, answer: str) -> None:
    made = visit()
    made.add(Took("photo", "before.jpg", "image/jpeg", speaks_of=("e007",)), 9, media=("a" * 64,))
    answered = made.add(Settled(of=("e007",), state=answer, how="pulled it forward by hand"), 2000)
    made.add(Took("photo", "after.jpg", "image/jpeg", speaks_of=(answered,)), 2001, media=("b" * 64,))
    made_letter = letter(made, shipped, "us.wa.308-408c")
    (row,) = made_letter.answered
    assert (row.finding, row.answer, row.says) == (1, answer, "Pulled it forward by hand.")
    names = {picture.number: picture.name for picture in made_letter.pictures}
    assert [names[n] for n in row.before] == ["before.jpg"]
    assert [names[n] for n in row.after] == ["after.jpg"]
    assert answered in row.rests_on
    assert answered in {evidence.entry for evidence in made_letter.evidence}
