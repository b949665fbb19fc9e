"""The pen writes entries that chain, and stands still when it refuses."""

from datetime import UTC, datetime, timedelta

import pytest

from witnessmark.journal.acts import (
    Accepted,
    Amended,
    Body,
    Dropped,
    Found,
    Head,
    Ran,
    Read,
    Saw,
    Settled,
    Took,
)
from witnessmark.journal.chain import check_chains
from witnessmark.journal.entry import NO_PREVIOUS, Source
from witnessmark.journal.identity import is_id, new_id
from witnessmark.journal.moment import EPOCH, instant
from witnessmark.journal.pen import Pen
from witnessmark.problems import Refusal

NOON = datetime(2026, 3, 14, 12, tzinfo=UTC)


def pen() -> Pen:
    return Pen(new_id(), "I. Example", "phone", 0, NO_PREVIOUS, now=lambda: NOON)


def test_entries_chain_and_carry_what_was_said() -> None:
    writer = pen()
    first = writer.write(Saw("crack", "adverse"), place="hall", source=Source("speech", words="a crack"), draft=True)
    second = writer.write(Read("width", "0.25", "[in_i]"), at=NOON - timedelta(minutes=5), media=("ab" * 32,))
    assert (first.n, first.prev, second.n, second.prev) == (1, NO_PREVIOUS, 2, first.hash)
    assert (writer.n, writer.prev) == (2, second.hash)
    assert (first.act, first.v, first.draft, first.place, first.at) == ("saw", 1, True, "hall", first.logged)
    assert instant(second.at) == NOON - timedelta(minutes=5)
    assert instant(second.logged) == NOON
    assert is_id(first.id)
    assert first.id < second.id
    assert int(first.id[:8] + first.id[9:13], 16) == (NOON - EPOCH) / timedelta(milliseconds=1)
    assert check_chains([first, second], now=NOON) == []


def test_a_pen_goes_on_where_the_device_stood() -> None:
    writer = pen()
    first = writer.write(Saw())
    again = Pen(writer.job, writer.by, writer.device, first.n, first.hash)
    assert check_chains([first, again.write(Saw())]) == []


A = "017f22e2-79b0-7cc3-98c4-dc0c0c07398f"


@pytest.mark.parametrize(
    ("body", "said"),
    [
        (Saw(state="bad"), "saw.state allows sound, adverse, unclear"),
        (Saw(again="yesterday"), "saw.again allows ids"),
        (Ran(left="running"), "ran.left allows as found, on"),
        (Took("film"), "took.sort allows photo"),
        (Found(stake="money"), "found.stake allows people"),
        (Found(urgency="tomorrow"), "found.urgency allows now"),
        (Settled((A,), ("loose",)), "settled.ends allows still on"),
        (Read("t", "hot", "Cel"), "read.value allows a decimal number"),
        (Read("t", "1,5", "Cel"), "read.value allows a decimal number"),
        (Accepted(), "accepted.of must name"),
        (Dropped(), "dropped.of must name"),
        (Amended(A), "amended.body must say"),
        (Amended(A, act="saw", body=Saw(state="bad")), "saw.state allows"),
        (Saw(what=3), "body.what allows text"),  # type: ignore[arg-type] # what a caller may get wrong
        (Saw("\ud800"), "surrogate"),
        (Head("phone", 1, "x"), "a Head is no act"),
    ],
)
def test_what_the_record_has_no_meaning_for_is_refused(body: Body, said: str) -> None:
    writer = pen()
    with pytest.raises(Refusal) as caught:
        writer.write(body)
    assert said in caught.value.problems[0].detail
    assert (writer.n, writer.prev) == (0, NO_PREVIOUS)


@pytest.mark.parametrize("at", ["2026-03-14T09:00:00", "", "noon"])
def test_a_time_without_offset_is_refused(at: str) -> None:
    with pytest.raises(Refusal):
        pen().write(Saw(), at=at)
    with pytest.raises(Refusal):
        pen().write(Saw(), at=datetime(2026, 3, 14))  # noqa: DTZ001 - that it has no offset is what is refused


def test_negative_readings_are_numbers() -> None:
    assert pen().write(Read("temperature", "-12.5", "Cel", high="+3")).n == 1
