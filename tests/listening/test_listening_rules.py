"""Each rule of the listener on sentences that show it; small packs made by hand, so that nothing else helps."""

from __future__ import annotations

from decimal import Decimal
from typing import TYPE_CHECKING

import pytest

from witnessmark.listening import Draft, Heard

if TYPE_CHECKING:
    from listening.conftest import Hear


def told(heard: Heard) -> list[tuple[str, str | None, str | None, str | None]]:
    return [(d.act, d.kind, d.part, d.condition) for d in heard.drafts]


def only(heard: Heard) -> Draft:
    (draft,) = heard.drafts
    return draft


# What is wrong, and what is as it should be


@pytest.mark.parametrize("said", ["the sink is cracked", "the sink leaks", "there's rust on the sink", "sink won't drain",
                                  "the sink isn't fastened", "the sink needs to be replaced"])  # fmt: skip
def test_something_wrong(hear: Hear, said: str) -> None:
    assert told(hear(said)) == [("saw", "sink", None, "adverse")]


@pytest.mark.parametrize("said", ["the sink looks good", "sink is solid", "no leaks at the sink", "sink works fine",
                                  "i don't see any cracks in the sink", "the sink isn't loose"])  # fmt: skip
def test_something_sound(hear: Hear, said: str) -> None:
    assert told(hear(said)) == [("saw", "sink", None, "sound")]


def test_negation_ends_with_its_statement(hear: Hear) -> None:
    heard = hear("no leaks at the sink the window is cracked")
    assert told(heard) == [("saw", "sink", None, "sound"), ("saw", "window", None, "adverse")]


def test_a_condition_of_the_packs_is_named(hear: Hear) -> None:
    draft = only(hear("on the deck the balusters are too far apart"))
    assert (draft.condition_id, draft.what) == ("deck.gap", "openings in the guard too wide")


def test_absence_counts_only_where_the_packs_expect_the_thing(hear: Hear) -> None:
    expected = only(hear("there's no smoke detector in the primary bedroom"))
    assert (expected.act, expected.condition, expected.condition_id) == ("absent", "adverse", "smoke.none")
    assert expected.as_json()["act"] == "saw"
    other = only(hear("there's no deck"))
    assert (other.act, other.condition) == ("absent", None)
    assert other.as_json()["act"] == "absent"


def test_missing_is_always_wrong(hear: Hear) -> None:
    draft = only(hear("the filter is missing"))
    assert (draft.act, draft.kind, draft.part, draft.condition) == ("absent", "furnace", "filter", "adverse")


def test_how_many_of_how_many(hear: Hear) -> None:
    draft = only(hear("two of the six windows are cracked"))
    assert draft.count is not None
    assert (draft.count.checked, draft.count.of, draft.count.adverse) == (6, 6, 2)
    assert draft.value == Decimal(2)


def test_a_requirement_makes_what_went_before_wrong(hear: Hear) -> None:
    heard = hear("balusters are five inches apart", "they should be four or less")
    assert [(d.act, d.condition) for d in heard.drafts] == [("read", None), ("saw", "adverse")]


# What was done


def test_running_until_stopped(hear: Hear) -> None:
    started = hear("i turned the furnace on")
    assert (only(started).act, only(started).left, [o.draft.kind for o in started.still_on]) == (
        "ran",
        "on",
        ["furnace"],
    )
    heard = hear("i turned the furnace on", "window is cracked", "the furnace is off now")
    assert [d.act for d in heard.drafts] == ["ran", "saw", "stopped"]
    assert heard.still_on == ()


def test_a_procedure_says_how_it_is_left(hear: Hear) -> None:
    heard = hear("filling the tub in the hall bath")
    draft = only(heard)
    assert (draft.leaves, draft.left, draft.procedure, draft.component) == (
        "filled",
        "on",
        "bathtub.fill",
        "hall-bath.bathtub",
    )
    assert [o.draft for o in heard.still_on] == [draft]


def test_one_act_on_two_things(hear: Hear) -> None:
    heard = hear("i've got the sink and the tub running", "tub's off")
    assert [(d.act, d.kind) for d in heard.drafts] == [("ran", "sink"), ("ran", "bathtub"), ("stopped", "bathtub")]
    assert [o.draft.kind for o in heard.still_on] == ["sink"]


def test_everything_off(hear: Hear) -> None:
    heard = hear("i turned the furnace on", "running the tub", "okay everything is off")
    assert [d.act for d in heard.drafts] == ["ran", "ran", "stopped", "stopped"]
    assert heard.still_on == ()


def test_a_particle_after_its_object(hear: Hear) -> None:
    assert only(hear("i shut the furnace back off")).act == "stopped"


def test_tried_for_a_moment(hear: Hear) -> None:
    draft = only(hear("i tested the smoke detector"))
    assert (draft.act, draft.left, draft.leaves) == ("ran", None, "as found")


# What was measured and what it is


def test_readings_with_their_measures(hear: Hear) -> None:
    heard = hear("furnace is here", "got a hundred and eighteen degrees at the supply")
    draft = next(d for d in heard.drafts if d.act == "read")
    assert (draft.value, draft.unit, draft.measure, draft.kind) == (Decimal(118), "[degF]", "supply", "furnace")


def test_a_reading_put_right(hear: Hear) -> None:
    heard = hear("balusters are five inches apart", "sorry six inches")
    assert [d.value for d in heard.drafts] == [Decimal(6)]
    assert [row.reason for row in heard.set_aside] == ["corrected"]


def test_the_plate(hear: Hear) -> None:
    heard = hear(
        "this is the furnace it's a calder",
        "model m i five oh three serial cue jay three six",
        "made in two thousand eight",
    )
    assert [(d.attribute, str(d.value)) for d in heard.drafts] == [
        ("make", "Calder"), ("model", "MI503"), ("serial", "QJ36"), ("made", "2008"),
    ]  # fmt: skip
    assert {d.kind for d in heard.drafts} == {"furnace"}


def test_a_description_the_packs_ask_for(hear: Hear) -> None:
    draft = only(hear("it's a gas furnace"))
    assert (draft.act, draft.attribute, draft.value) == ("identified", "fuel", "gas")


# What was not done, what is in doubt


def test_a_limitation_with_the_reason_beside_it(hear: Hear) -> None:
    draft = only(hear("couldn't get into the attic", "it's locked"))
    assert (draft.act, draft.reason) == ("skipped", "locked")
    assert draft.text == "couldn't get into the attic it's locked"


def test_looking_for_something_is_no_limitation(hear: Hear) -> None:
    assert "skipped" not in {d.act for d in hear("i couldn't see any cracks in the window").drafts}


def test_what_a_thing_does_not_do_is_no_limitation(hear: Hear) -> None:
    assert told(hear("the window did not open")) == [("saw", "window", None, "adverse")]


def test_doubt_stays_open(hear: Hear) -> None:
    heard = hear("there's a stain at the window", "could be from an old leak i'm not sure if it's active")
    assert [(d.act, d.sure) for d in heard.drafts] == [("saw", True), ("doubted", False)]
    assert [o.draft.kind for o in heard.make_sure] == ["window"]


def test_doubt_is_settled(hear: Hear) -> None:
    heard = hear("the window might be cracked", "yep it is the window is cracked")
    assert heard.make_sure == ()


def test_hearsay_is_doubt(hear: Hear) -> None:
    draft = only(hear("the seller says the furnace was made in two thousand ten"))
    assert (draft.act, draft.sure, draft.value) == ("doubted", False, Decimal(2010))


# What is set aside


@pytest.mark.parametrize(
    ("said", "reason"),
    [
        ("now if this was back drafting you would see rust on the furnace", "hypothetical"),
        ("what if the sink was leaking well you'd have a stain on the window", "hypothetical"),
        ("normally you'd want to get the furnace serviced every year", "teaching"),
        ("those old windows will leak on you", "teaching"),
        ("is that a crack in the window?", "question"),
        ("good morning how was the traffic", "small talk"),
        ("thanks for coming nice house", "small talk"),
    ],
)
def test_what_is_no_record(hear: Hear, said: str, reason: str) -> None:
    heard = hear(said)
    assert heard.drafts == ()
    assert {row.reason for row in heard.set_aside} == {reason}


def test_not_sure_if_supposes_nothing(hear: Hear) -> None:
    assert only(hear("i'm not sure if the window is cracked")).act == "doubted"


def test_scratch_that(hear: Hear) -> None:
    heard = hear("the window is cracked", "scratch that it's the sink that is cracked")
    assert [d.kind for d in heard.drafts] == ["sink"]
    assert [row.reason for row in heard.set_aside] == ["corrected"]


def test_wait_no(hear: Hear) -> None:
    heard = hear("one of the windows is loose wait no two of the windows are loose")
    assert [d.value for d in heard.drafts] == [Decimal(2)]
    assert heard.set_aside[0].text == "one of the windows is loose"


# What "it" is, where it is, what was misheard


def test_it_is_what_was_spoken_of(hear: Hear) -> None:
    heard = hear("the deck looks good", "it's cracked at the end")
    assert [d.kind for d in heard.drafts] == ["deck", "deck"]


def test_places(hear: Hear) -> None:
    heard = hear(
        "okay we're in the kitchen",
        "sink is cracked",
        "on to the hall bath",
        "sink is loose",
        "kitchen again",
        "sink leaks",
    )
    assert [d.component for d in heard.drafts] == ["kitchen.sink", "hall-bath.sink", "kitchen.sink"]
    assert [d.place.name for d in heard.drafts] == ["kitchen", "hall bath", "kitchen"]


def test_a_place_given_by_the_caller(hear: Hear) -> None:
    assert only(hear("sink is cracked", place="Hall bath")).component == "hall-bath.sink"


@pytest.mark.parametrize(
    ("said", "kind", "part"),
    [
        ("the fur nest is loose", "furnace", None), ("choice hangers are rusted", "deck", "hanger"),
        ("gee f see eye is cracked", "gfci", None), ("balla sters are loose", "deck", "baluster"),
    ],
)  # fmt: skip
def test_what_was_misheard(hear: Hear, said: str, kind: str, part: str | None) -> None:
    draft = only(hear(said))
    assert (draft.kind, draft.part) == (kind, part)
    assert draft.text == said, "the words stay as they were recognised"


def test_something_the_packs_do_not_know(hear: Hear) -> None:
    draft = only(hear("the dehumidifier is broken"))
    assert (draft.kind, draft.label) == (None, "dehumidifier")


def test_another_language_is_not_understood(hear: Hear) -> None:
    heard = hear(
        "das haus hat einen keller und der keller ist sehr feucht aber die heizung läuft noch ganz ordentlich sagt der besitzer"
    )
    assert heard.drafts == ()
    assert [p.number for p in heard.problems] == ["WM611"]


def test_nothing_said(hear: Hear) -> None:
    assert hear().drafts == ()
    assert hear("um", "uh").drafts == ()
