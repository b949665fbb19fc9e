"""What a draft is called: by the whole and its part, by the speaker's own word, and by what the thing is on."""

from __future__ import annotations

import pytest

from witnessmark.listening import Line, Narration, listen
from witnessmark.listening.drafts import Draft
from witnessmark.packs.model import Packs


def _heard(using: Packs, *lines: str, place: str | None = None) -> tuple[Draft, ...]:
    timed = tuple(Line(3.0 * i, 3.0 * i + 3.0, text) for i, text in enumerate(lines))
    return listen(Narration("test", timed), using, place=place).drafts


@pytest.mark.parametrize(
    ("lines", "kind", "part"),
    [
        (("the air handler is level", "the door is dented"), "air-handler", "cabinet"),
        (("the heat pump is a northfield", "the fan is bent"), "heat-pump", "fan"),
        (("the skylight is double pane", "curb is rotted"), "skylight", "curb"),
        (("the septic tank was pumped last year", "the lid is cracked"), "septic-system", "lid"),
        (("the attic ladder is wood", "two of the treads are cracked"), "attic-ladder", "hinge"),
        (("refrigerant line is at the wall", "the insulation is torn"), "refrigerant-line", "insulation"),
    ],
)
def test_a_general_word_means_a_part_of_what_is_spoken_of(
    shipped: Packs, lines: tuple[str, ...], kind: str, part: str
) -> None:
    last = _heard(shipped, *lines)[-1]
    assert last.kind == kind
    known = {p.id for p in shipped.kinds[kind].parts}
    assert last.part in known
    assert part in known


@pytest.mark.parametrize(
    "words", ["the lid is cracked", "curb is rotted", "the treads are cracked", "the impeller is loose"]
)
def test_a_general_word_by_itself_names_no_kind_by_chance(shipped: Packs, words: str) -> None:
    kinds = {d.kind for d in _heard(shipped, words)}
    assert not kinds & {"septic-system", "skylight", "attic-ladder", "disposer"}


@pytest.mark.parametrize(
    ("lines", "words"),
    [
        (("the outlet is hot", "the cover is cracked"), {"outlet", "cover", "receptacle"}),
        (("the spigot works fine", "the handle is loose"), {"spigot", "handle", "hose", "bib"}),
        (("the trusses are two by four", "a plate is missing"), {"trusses", "plate", "framing"}),
        (("the stoop is brick", "the railing is loose"), {"stoop", "railing", "porch"}),
    ],
)
def test_the_speakers_word_for_a_kind_stays_with_its_parts(
    shipped: Packs, lines: tuple[str, ...], words: set[str]
) -> None:
    label = _heard(shipped, *lines)[-1].label
    assert words <= set(label.replace("(", "").replace(")", "").split())


@pytest.mark.parametrize(
    ("lines", "host"),
    [
        (("the window is a casement", "caulking is cracked"), "window"),
        (("the furnace is a hundred thousand btu", "the thermostat is dead"), "furnace"),
        (("the ceiling fan works fine", "the switch is loose"), "ceiling"),
        (("the chimney is brick", "the flashing is rusted"), "chimney"),
    ],
)
def test_a_coat_or_device_is_called_by_what_it_is_on(shipped: Packs, lines: tuple[str, ...], host: str) -> None:
    assert host in _heard(shipped, *lines)[-1].label.split()


@pytest.mark.parametrize(
    ("lines", "kind"),
    [
        (("the porch is concrete", "the guard on the deck is loose"), "deck"),
        (("the range works fine", "the door of the dishwasher is dented"), "dishwasher"),
    ],
)
def test_a_part_is_of_what_the_words_say_it_is_of(shipped: Packs, lines: tuple[str, ...], kind: str) -> None:
    assert _heard(shipped, *lines)[-1].kind == kind


@pytest.mark.parametrize(
    "words", ["drips at the flange", "leaks at the joint", "rubs at the top of the frame", "sticks at the track"]
)
def test_a_statement_that_opens_with_its_verb_goes_on_about_the_focus(shipped: Packs, words: str) -> None:
    (before, *_), last = _heard(shipped, "the fire damper is rusted"), _heard(shipped, "the faucet is loose", words)[-1]
    assert before.kind is not None
    assert last.kind == "faucet"


def test_a_side_said_in_a_room_is_no_place_outside(shipped: Packs) -> None:
    drafts = _heard(shipped, "okay living room", "south side", "the window is cracked")
    assert drafts[-1].place.sort == "living-room"


@pytest.mark.parametrize("words", ["that is the kitchen", "so that is the kitchen"])
def test_the_last_word_on_a_place_enters_none(shipped: Packs, words: str) -> None:
    drafts = _heard(shipped, "we are in the pantry", words, "the window is cracked")
    assert drafts[-1].place.sort == "pantry"
