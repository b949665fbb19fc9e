"""What was operated and how it was left, and the ledger at the end (sentences written by us; common practice, no source)."""

from __future__ import annotations

from typing import Any

import pytest

from witnessmark.packs.model import Packs


@pytest.fixture(scope="module")
def tell(hear: Any, shipped: Packs) -> Any:
    """Hear lines with the shipped packs: (acts with how they were left, labels still on)."""

    def telling(*lines: str) -> tuple[list[tuple[str, str | None]], list[str]]:
        heard = hear(*lines, using=shipped)
        acts = [(d.act, d.left) for d in heard.drafts if d.act in {"ran", "stopped"}]
        return acts, [row.draft.kind or row.draft.label for row in heard.still_on]

    return telling


@pytest.mark.parametrize(
    ("lines", "open_"),
    [
        (("i turned the oven on",), ["range"]),
        (("i turned the oven on", "oven's off"), []),
        (("i turned the oven on", "turned it back off"), []),
        (("kitchen range", "oven's on i set it to three fifty"), ["range"]),
        (("i turned the thermostat up to seventy five",), ["thermostat"]),
        (("i turned the thermostat up to seventy five", "thermostat's back to sixty eight"), []),
        (("i turned the thermostat up to seventy five", "turned the thermostat back down"), []),
        (("i bumped the thermostat up", "furnace fired right up", "thermostat back to sixty two"), []),
        (("i'm filling the tub",), ["bathtub"]),
        (("i'm filling the tub", "tub is draining now"), []),
        (("i'm filling the tub", "i pulled the plug"), []),
        (("i turned the ceiling fan on", "fan's off"), []),
        (("ceiling fan on high", "doesn't wobble", "and off"), []),
        (("i started the dishwasher",), ["dishwasher"]),
        (("i started the dishwasher", "dishwasher's done"), []),
        (("i left the bath fan running",), ["exhaust-fan"]),
        (("i took the panel cover off", "panel cover's back on"), []),
        (("i took the panel cover off",), ["service-panel"]),
        (("i turned the oven on", "i turned the ceiling fan on", "shut everything off"), []),
        (("i turned the oven on", "i turned the ceiling fan on", "i put everything back"), []),
        (("i turned the oven on", "i turned the ceiling fan on", "oven's off"), ["ceiling-fan"]),
        (("i tested the outlet", "tripped it", "i reset it"), []),
        (("the toilet", "i flushed it and it refilled and stopped by itself"), []),
        (("i opened the window", "i closed the window"), []),
        (("i ran the garbage disposal", "sounds good"), []),
        (("porch light i switched on and it comes on",), ["light-fixture"]),
        (("the washer", "i ran it warm in a minute and switched it back off"), []),
        (("i'm going to get the oven going first",), ["range"]),
        (("i've got the shower and the sink going right now",), ["shower", "sink"]),
        (("i've got the shower and the sink going right now", "shower's off", "sink's off"), []),
        (("hot water running at the kitchen sink", "shut that water back off"), []),
        (("i turned the thermostat up to seventy five", "south face shut off valve is right at the meter"), ["thermostat"]),
        (("i turned the ceiling fan on", "main shut off valve is here at the front wall"), ["ceiling-fan"]),
        (("i turned the ceiling fan on", "handle on the gas shut off is missing"), ["ceiling-fan"]),
        (("i turned the ceiling fan on", "shut off is a gate valve by the heater"), ["ceiling-fan"]),
        (("i turned the ceiling fan on", "shut off the ceiling fan"), []),
    ],
)  # fmt: skip
def test_what_is_still_on(tell: Any, lines: tuple[str, ...], open_: list[str]) -> None:
    assert sorted(tell(*lines)[1]) == sorted(open_)


@pytest.mark.parametrize(
    ("line", "left"),
    [
        ("i turned the oven on", "on"), ("i switched the ceiling fan on", "on"), ("i opened the window", "on"),
        ("i flushed the toilet and it stopped by itself", "off"), ("i tested the smoke alarm", None),
        ("i set the thermostat to seventy two", "on"), ("i turned the shower off", "off"), ("i shut the shower off", "off"),
        ("i closed the window", "off"), ("i ran the disposal", None), ("i pushed the test button on the smoke alarm", None),
    ],
)  # fmt: skip
def test_how_it_was_left(tell: Any, line: str, left: str | None) -> None:
    acts, _ = tell(line)
    assert [how for _, how in acts] == [left]


@pytest.mark.parametrize(
    "line",
    ["paint is off the wall by the window", "the left rear burner is stained", "shut off is a ball valve", "water is running down the wall",
     "there is a gutter running along the front", "the light on the porch is loose", "the valve is back here behind the washer",
     "they had the oven on when i got here should be off", "the oven turned off", "you should turn the fan on once a month"],
)  # fmt: skip
def test_what_was_not_operated(tell: Any, line: str) -> None:
    assert [a for a in tell(line)[0] if a[1] == "on"] == []


def test_what_it_was_set_to_is_kept(hear: Any, shipped: Packs) -> None:
    (draft,) = [d for d in hear("oven's on i set it to three fifty", using=shipped).drafts if d.act == "ran"]
    assert draft.value == 350


def test_how_many_were_operated(hear: Any, shipped: Packs) -> None:
    drafts = hear("receptacles in the dining room", "i tested all five of them", using=shipped).drafts
    assert [d.value for d in drafts if d.act == "ran"] == [5]
