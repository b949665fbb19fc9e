"""What one statement tells more than once, words for states over all trades, and cuts that cannot be."""

from __future__ import annotations

import pytest

from witnessmark.listening import Line, Narration, listen
from witnessmark.listening.clauses import Clause
from witnessmark.listening.unparted import unparted
from witnessmark.listening.words import tokens, words
from witnessmark.packs.model import Packs


def told(text: str, packs: Packs) -> list[tuple[str, str | None]]:
    """The act and the condition, or the attribute, of each draft."""
    heard = listen(Narration("test", (Line(0.0, 4.0, text),)), packs)
    return [(d.act, d.condition or d.attribute) for d in heard.drafts]


@pytest.mark.parametrize(
    "text",
    [
        "the wall paint is good a couple of nail pops",
        "gutters are clean and pitched wrong",
        "countertop is solid one chip at the corner",
        "the furnace looks good and the filter is dirty",
    ],
)
def test_what_turns_from_good_to_bad_tells_both(text: str, shipped: Packs) -> None:
    assert [c for _, c in told(text, shipped)] == ["sound", "adverse"]


@pytest.mark.parametrize("text", ["that's a pretty good crack in the slab", "the pipe sounds hollow like it ought to"])
def test_a_good_word_of_the_fault_itself_is_no_praise(text: str, shipped: Packs) -> None:
    assert len(told(text, shipped)) == 1


@pytest.mark.parametrize(
    ("text", "attribute"),
    [
        ("the downspout's cast iron split at the seam", "material"),
        ("skylight's plastic and it is cracked", "material"),
        ("the steps are bluestone and the top one is loose", "material"),
    ],
)
def test_what_is_described_before_a_fault_is_kept(text: str, attribute: str, shipped: Packs) -> None:
    found = told(text, shipped)
    assert ("identified", attribute) in found
    assert ("saw", "adverse") in found


@pytest.mark.parametrize("text", ["the copper pipe is corroded", "brick chimney has a crack", "the vinyl fence leans"])
def test_a_material_in_a_name_describes_nothing_beside_a_fault(text: str, shipped: Packs) -> None:
    assert "identified" not in {act for act, _ in told(text, shipped)}


@pytest.mark.parametrize(
    "text",
    [
        "the gutter is hanging on by a thread",
        "mortar has turned to sand",
        "deck boards are cupping",
        "the dryer sounds like a coffee grinder",
        "that faucet needs a new washer",
        "water heater's about done",
        "the roof seam is fishmouthed",
        "door's a bit tight",
        "closet door is kind of tall",
        "the outlet isn't ground it",
        "the tub drain's down to a trickle",
        "grout is full of pinholes",
    ],
)
def test_words_for_what_is_wrong(text: str, shipped: Packs) -> None:
    assert ("saw", "adverse") in told(text, shipped)


@pytest.mark.parametrize(
    "text",
    [
        "no complaints with the tub",
        "dishwasher does its thing",
        "the disposal hums along",
        "gate swings shut by itself",
        "outlets none dead",
        "the doors all swing and latch",
        "ledger is bolt it to the house",
        "cabinets hang true",
        "the damper swings free",
        "radiator warms right up",
    ],
)
def test_words_for_what_is_right(text: str, shipped: Packs) -> None:
    assert ("saw", "sound") in told(text, shipped)


@pytest.mark.parametrize(
    ("text", "value"),
    [
        ("the return duct is ductboard", "ductboard"),
        ("floor is lvp", "lvp"),
        ("front steps are bluestone", "bluestone"),
        ("driveway is as fault", "asphalt"),
    ],
)
def test_materials_of_all_trades(text: str, value: str, shipped: Packs) -> None:
    heard = listen(Narration("test", (Line(0.0, 4.0, text),)), shipped)
    assert any(d.act == "identified" and value in str(d.value) for d in heard.drafts)


@pytest.mark.parametrize(
    ("text", "cut"),
    [
        ("it has got two cracks", 3),
        ("the front one is leaning", 2),
        ("a box that i could reach", 5),
        ("leave it till it is hot", 3),
    ],
)
def test_nothing_begins_where_something_has_to_follow(text: str, cut: int) -> None:
    made = tokens(words((Line(0.0, 4.0, text),)))
    assert unparted([Clause(0, cut), Clause(cut, len(made))], made) == [Clause(0, len(made))]


def test_though_at_the_end_of_what_was_said_stays_with_it() -> None:
    made = tokens(words((Line(0.0, 4.0, "drips at the flange though two zones"),)))
    assert unparted([Clause(0, 4), Clause(4, 7)], made) == [Clause(0, 5), Clause(5, 7)]


def test_a_full_stop_is_never_undone() -> None:
    made = tokens(words((Line(0.0, 4.0, "it is on the. Wall is dry"),)))
    assert len(unparted([Clause(0, 4), Clause(4, 7)], made)) == 2


@pytest.mark.parametrize(
    ("tried", "condition"),
    [
        ("i flipped the switch for the yard light", "adverse"),
        ("i went over the gas piping with the sniffer", "sound"),
    ],
)
def test_nothing_answers_what_was_tried(tried: str, condition: str, shipped: Packs) -> None:
    heard = listen(Narration("test", (Line(0.0, 4.0, f"{tried}."), Line(4.0, 6.0, "nothing"))), shipped)
    assert heard.drafts[-1].condition == condition


def test_what_works_but_not_from_one_end_is_both(shipped: Packs) -> None:
    assert [c for _, c in told("the three way switch works from the top but not from the bottom", shipped)] == [
        "sound",
        "adverse",
    ]


@pytest.mark.parametrize(
    "text", ["the furnace is a condensing furnace", "wood burning fireplace", "line comes in from the street"]
)
def test_what_a_thing_is_or_whence_it_comes_is_no_fault_and_no_limit(text: str, shipped: Packs) -> None:
    assert not {("saw", "adverse"), ("skipped", None)} & set(told(text, shipped))


@pytest.mark.parametrize(
    ("text", "value"),
    [("they're block walls", "block"), ("overhead drop", "overhead"), ("hardwood in here", "hardwood")],
)
def test_a_material_in_a_name_is_told_where_nothing_else_is(text: str, value: str, shipped: Packs) -> None:
    heard = listen(Narration("test", (Line(0.0, 4.0, text),)), shipped)
    assert [d.value for d in heard.drafts if d.act == "identified"] == [value]
