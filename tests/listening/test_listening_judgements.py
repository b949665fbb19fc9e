"""What is wrong, right, missing, doubted, not done and only taught, on sentences made up for each class of language.

Negation, its scopes and its end follow ConText (Harkema et al., Journal of Biomedical Informatics 42, 2009) and NegEx
(Chapman et al., Journal of Biomedical Informatics 34, 2001); the sentences are ours.
"""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

import pytest

from witnessmark.listening import Draft, Heard
from witnessmark.listening.denial import denial
from witnessmark.listening.inflection import forms, plural
from witnessmark.listening.polarity import is_wrong
from witnessmark.packs.model import Packs

if TYPE_CHECKING:
    from listening.conftest import Hear


def judged(heard: Heard) -> set[str]:
    """How the drafts judge: adverse, sound, absent (judging nothing), doubted, skipped."""
    found = set()
    for draft in heard.drafts:
        if draft.act in {"saw", "absent"}:
            found.add(draft.condition or "absent")
        elif draft.act in {"doubted", "skipped"}:
            found.add(draft.act)
    return found


def only(heard: Heard) -> Draft:
    (draft,) = heard.drafts
    return draft


# ---- Words made by rule ----


@pytest.mark.parametrize(
    ("verb", "made"),
    [
        ("leak", ["leak", "leaks", "leaking", "leaked"]), ("drip*", ["drip", "drips", "dripping", "dripped"]),
        ("crumble", ["crumble", "crumbles", "crumbling", "crumbled"]), ("bulge", ["bulge", "bulges", "bulging", "bulged"]),
        ("corrode", ["corrode", "corrodes", "corroding", "corroded"]), ("scratch", ["scratch", "scratches", "scratching", "scratched"]),
    ],
)  # fmt: skip
def test_forms_of_a_verb(verb: str, made: list[str]) -> None:
    assert list(forms(verb)) == made


def test_forms_of_a_verb_with_its_particle() -> None:
    assert list(forms("rot* through", present=False)) == ["rotting through", "rotted through"]
    assert list(forms("fall off", present=False)) == ["falling off", "fell off", "fallen off"]
    assert plural("box") == "boxes"


@pytest.mark.parametrize(
    "word", ["rusted", "unfastened", "misrouted", "unsupported", "overdriven", "wobbly", "makeshift"]
)
def test_a_word_that_says_wrong(word: str) -> None:
    assert is_wrong(word)


@pytest.mark.parametrize("word", ["unfinished", "unvented", "united", "overhead", "understood", "good", "window"])
def test_a_word_that_only_looks_so(word: str) -> None:
    assert not is_wrong(word)


# ---- Scopes of negation ----


@pytest.mark.parametrize(
    ("said", "word", "denied"),
    [
        ("no rust or corrosion on the cabinet", "corrosion", True),
        ("not loose but rusted", "rusted", False),
        ("not loose but rusted", "loose", True),
        ("no signs of past or active leaks", "leaks", True),
        ("without sticking or binding", "binding", True),
        ("free of cracks", "cracks", True),
        ("not only cracked", "cracked", False),
        ("no doubt it leaks", "leaks", False),
        ("never leaked because it was capped", "capped", False),
        ("not without leaks", "leaks", False),
        ("three no four are cracked", "cracked", False),
    ],
)
def test_where_a_denial_reaches(said: str, word: str, denied: bool) -> None:
    norms = said.split()
    at = norms.index(word)
    judging = frozenset(i for i, w in enumerate(norms) if is_wrong(w))
    assert (at in denial(norms, frozenset(), judging).denied) is denied


# ---- Something wrong ----

WRONG = [
    # what has been done to it, what it is
    "the sink is cracked", "the sink's loose", "window is busted", "deck is rickety", "the deck's toast", "this window has had it",
    "furnace is shot", "window is on its last legs", "the furnace has seen better days", "furnace is past its life",
    "the deck is in rough shape", "the sink is filthy", "window is fogged", "the deck feels spongy", "deck has rotted",
    # nouns with nothing more
    "couple of cracks in the sink", "some rust on the furnace", "hairline crack at the corner of the window",
    "little bit of rot on the deck", "mouse droppings by the furnace", "standing water under the sink", "mold around the window",
    "nest in the furnace", "water stains under the sink", "efflorescence by the window",
    # what it does not do, what was not done
    "the sink isn't draining", "the window won't latch", "window doesn't close all the way", "window will not stay up",
    "the furnace won't fire", "furnace didn't respond", "the deck was never bolted", "deck isn't fastened", "sink is not secured",
    "the sink was never caulked", "they never flashed the deck", "they didn't caulk the window", "i can't get the window to open",
    "can't get the furnace to light", "window refuses to open", "furnace stopped working",
    # how it was made
    "makeshift repair on the sink", "improper connection at the sink", "sink is plumbed backwards", "the window is in upside down",
    "furnace is wired wrong", "handyman special on the deck", "the sink is held together with duct tape", "the deck is miswired",
    "window is unsealed", "hot and cold are reversed at the sink",
    # measures of it
    "deck's too low", "sink's a little loose", "the window is too close to the tub", "more rust than i'd like on the furnace",
    "the deck is lower than it should be", "the sink barely drains", "hardly any water at the sink", "not much pressure at the sink",
    "only one bolt on the deck", "only two of the four windows open", "half of the windows don't work",
    # what it needs
    "window needs to be replaced", "the deck could use some work", "furnace wants to be replaced", "deck is due for replacement",
    "the window needs paint",
    # double denial, and what only looks like a denial
    "not only is the sink cracked", "the deck isn't without rot", "no doubt the window is cracked",
    # moisture, heat, pests
    "the window's wet", "deck is damp underneath", "there's condensation on the window", "furnace smells", "furnace is scorched",
    "ants in the sink", "wasps in the furnace",
]  # fmt: skip


@pytest.mark.parametrize("said", WRONG)
def test_said_to_be_wrong(hear: Hear, said: str) -> None:
    assert judged(hear(said)) == {"adverse"}


# ---- Something as it should be ----

RIGHT = [
    "the deck does not sway", "deck doesn't bounce at all", "sink doesn't leak", "the window isn't cracked or loose",
    "no rust to speak of on the furnace", "no cracks in the sink", "i don't see any cracks in the window", "didn't see any leaks at the sink",
    "there's no evidence of leaking at the sink", "no signs of active leaks at the sink", "the sink is free of stains",
    "nothing wrong with the furnace", "can't complain about the deck", "the deck is not a problem", "no issues with the sink",
    "no complaints on the deck", "the window never leaked", "furnace is without rust", "the deck is solid", "deck is holding up well",
    "window opens and closes fine", "the furnace fires right up", "sink drains fine", "furnace is doing its job", "window looks great",
    "the deck is like new", "sink's in good shape", "nothing loose on the deck", "the deck is bolted", "the window is right where it should be",
    "both windows work", "none of the windows leak", "the deck isn't unsafe", "window doesn't stick", "furnace did come on",
]  # fmt: skip


@pytest.mark.parametrize("said", RIGHT)
def test_said_to_be_right(hear: Hear, said: str) -> None:
    assert judged(hear(said)) == {"sound"}


# ---- Neither ----

NEITHER = [
    "checked for leaks at the sink", "we looked for rust on the furnace", "the window is in the bedroom", "unfinished deck",
    "caulking keeps the water from getting in behind the tub", "furnace is in the attic", "there's a tub",
]  # fmt: skip


@pytest.mark.parametrize("said", NEITHER)
def test_judges_nothing(hear: Hear, said: str) -> None:
    assert not judged(hear(said)) & {"adverse", "sound"}


def test_reversing_is_right_of_a_door_and_wrong_of_a_faucet(hear: Hear, shipped: Packs) -> None:
    assert judged(hear("garage door reversed on contact", using=shipped)) == {"sound"}
    assert judged(hear("faucet is reversed", using=shipped)) == {"adverse"}


def test_two_things_in_one_breath_are_judged_apart(hear: Hear) -> None:
    heard = hear("no cracks that i can see window will not stay up", place="deck")
    assert [(d.kind, d.condition) for d in heard.drafts if d.kind] == [("window", "adverse")]
    both = hear("the window drags but it latches")
    assert judged(both) == {"adverse", "sound"}


# ---- Conditions of the packs ----


def test_a_denial_in_a_condition_is_the_same_denial(hear: Hear, small: Packs) -> None:
    """ "No smoke alarm" is not heard in a statement that denies something else."""
    other = hear("smoke detector has no rust in the primary bedroom")
    assert all(d.condition_id != "smoke.none" for d in other.drafts)
    row = replace(
        small.conditions["deck.gap"], id="deck.loose", name="deck not bolted", spoken=("deck is not bolted",), part=None
    )
    using = replace(small, conditions={**small.conditions, row.id: row})
    assert [d.condition_id for d in hear("the deck is not bolted", using=using).drafts] == ["deck.loose"]
    assert [d.condition_id for d in hear("the deck is bolted not cracked", using=using).drafts] == [None]


# ---- Absence ----


@pytest.mark.parametrize(
    ("said", "expected"),
    [
        # the packs expect it, or its absence cannot wait
        ("no handrail on the stairs", "adverse"), ("no smoke alarm in this bedroom", "adverse"), ("junction box with no cover", "adverse"),
        # the words say that it belongs there
        ("the cap is missing on the chimney", "adverse"), ("the gutter has no downspout", "adverse"), ("panel cover's gone", "adverse"),
        # the packs know it as something to plan for: only where the statement says of what it is missing
        ("no drip edge", "absent"), ("no baffles", "absent"), ("roof has no drip edge", "adverse"), ("no baffles in the attic", "adverse"),
        # nothing calls for it
        ("no basement", "absent"), ("no fireplace", "absent"), ("house has no basement", "absent"),
    ],
)  # fmt: skip
def test_absence_matters_where_the_thing_belongs(hear: Hear, shipped: Packs, said: str, expected: str) -> None:
    assert judged(hear(said, using=shipped)) == {expected}


def test_an_answer_of_no_tells_an_absence(hear: Hear, shipped: Packs) -> None:
    assert judged(hear("smoke alarm up here there isn't one", using=shipped, place="hall")) == {"adverse"}
    assert judged(hear("handrail on the stairs no", using=shipped)) == {"adverse"}


# ---- Same, and opposite ----


def test_the_same_again_and_the_opposite(hear: Hear) -> None:
    assert [d.condition for d in hear("this window is cracked", "same on the other side").drafts] == [
        "adverse",
        "adverse",
    ]
    assert [d.condition for d in hear("this window is cracked", "that one isn't").drafts] == ["adverse", "sound"]
    assert [d.condition for d in hear("this window works", "that one doesn't").drafts] == ["sound", "adverse"]


# ---- Doubts ----

DOUBTS = [
    "i'm not sure the furnace is bonded", "not certain whether the deck is bolted", "can't tell if that window is original",
    "could be asbestos on the furnace", "possibly a leak behind the tub", "i suspect the deck was added later",
    "hard to say if the sink is original", "i wonder if the tub was leaking", "no idea what's behind the furnace",
    "may or may not be a sink drain there", "it's anyone's guess whether the deck is bolted", "can't rule out mold behind the tub",
    "i assume the furnace vents outside", "presumably the deck is bolted", "jury's still out on the furnace",
    "i need to verify the age of the furnace", "remind me to check the sink", "note to self check the furnace",
    "i can't confirm the furnace is grounded", "might need a new furnace", "probably an old sink",
]  # fmt: skip


@pytest.mark.parametrize("said", DOUBTS)
def test_a_doubt_stays_to_be_made_sure_of(hear: Hear, said: str) -> None:
    heard = hear(said)
    assert "doubted" in judged(heard)
    assert len(heard.make_sure) == 1


@pytest.mark.parametrize(
    "said",
    ["the sink is maybe thirty inches wide", "no leaks as far as i can tell at the sink", "i think that's everything", "you may want to paint the deck"],
)  # fmt: skip
def test_what_is_no_doubt(hear: Hear, said: str) -> None:
    assert "doubted" not in judged(hear(said))


HEARSAY = [
    ("seller says the deck is five years old", "the seller"), ("the neighbor mentioned the tub leaked", "the neighbor"),
    ("owner told me the furnace was replaced", "the owner"), ("according to the listing the deck is new", "the listing"),
    ("they claim the furnace was serviced", None), ("the tenant reports the sink backs up", "the tenant"),
    ("disclosure lists the deck as ten years old", "the disclosure"),
]  # fmt: skip


@pytest.mark.parametrize(("said", "by"), HEARSAY)
def test_hearsay_is_said_by_whom_it_was_said(hear: Hear, said: str, by: str | None) -> None:
    heard = hear(said)
    assert judged(heard) == {"doubted"}
    assert f"said by {by or 'somebody else'}" in only(heard).what


def test_what_is_seen_stands_beside_the_doubt_about_its_cause(hear: Hear) -> None:
    heard = hear("there's a stain by the window might be an old leak")
    assert judged(heard) == {"adverse", "doubted"}


@pytest.mark.parametrize(
    "after", ["okay yeah the furnace is bonded", "confirmed the furnace is bonded", "turns out the furnace is bonded"]
)
def test_a_doubt_that_is_settled(hear: Hear, after: str) -> None:
    assert hear("not sure the furnace is bonded").make_sure
    assert hear("not sure the furnace is bonded", after).make_sure == ()


def test_a_year_read_off_settles_a_doubted_age(hear: Hear) -> None:
    heard = hear("the furnace might be ten years old", "it was made in two thousand eighteen")
    assert heard.make_sure == ()
    other = hear("the furnace might be ten years old", "the window is cracked")
    assert len(other.make_sure) == 1


# ---- Limits ----

LIMITS = [
    "couldn't see behind the furnace", "the furnace was not run", "windows weren't checked", "i did not test the furnace",
    "too cold to run the furnace", "deck is too low to get under", "too tight to get behind the furnace", "wasn't able to open the window",
    "i'm not going to touch the furnace", "i elected not to run the furnace", "no access to the tub",
    "could only see part of the deck", "boxes are blocking the furnace", "the window is hidden by shelving", "storage keeps me from seeing the tub",
    "the furnace is beyond my reach", "i had to stop halfway under the deck", "owner asked me not to run the tub",
]  # fmt: skip


@pytest.mark.parametrize("said", LIMITS)
def test_what_was_not_done(hear: Hear, said: str) -> None:
    assert judged(hear(said)) == {"skipped"}


@pytest.mark.parametrize(
    "said", ["the furnace is blocked with leaves", "can't get the window open", "sink is buried in dirt"]
)
def test_a_fault_is_no_limit(hear: Hear, said: str) -> None:
    assert judged(hear(said)) == {"adverse"}


def test_the_reason_stands_with_the_limit(hear: Hear) -> None:
    assert only(hear("furnace closet is locked so i couldn't get to the furnace")).reason == "locked"


# ---- Taken back ----


@pytest.mark.parametrize(
    "words", ["scratch that", "strike that", "i take that back", "forget i said that", "my mistake"]
)
def test_taking_back_takes_exactly_the_last(hear: Hear, words: str) -> None:
    heard = hear("the window is cracked", "the sink leaks", words)
    assert [d.kind for d in heard.drafts] == ["window"]
    assert [row.reason for row in heard.set_aside] == ["corrected"]


def test_never_mind_it_is_fine(hear: Hear) -> None:
    heard = hear("the furnace might be disconnected", "never mind it's fine")
    assert [d.condition for d in heard.drafts] == ["sound"]
    assert heard.make_sure == ()


# ---- Set aside ----

ASIDE = [
    "normally you'd want a pan under the furnace", "if this was leaking you'd see rust on the furnace", "what if the sink leaks",
    "a lot of these old furnaces crack", "you'll want to keep the sink clean", "say you leave it on the furnace will crack",
    "a good furnace will last you twenty years", "so a gfci senses when the current leaks", "typically the pan catches any leak",
    "suppose the sink failed the deck would rot", "had it been leaking the deck would be black", "had it been cracked you would see it",
    "nobody gets to cut a deck joist", "anything over a hundred and twenty will scald", "code wants a handrail on the deck",
    "furnaces like this usually last about twenty years", "is the window cracked?", "when these fail they usually leak from the bottom",
]  # fmt: skip


@pytest.mark.parametrize("said", ASIDE)
def test_what_is_only_taught_or_supposed(hear: Hear, said: str) -> None:
    heard = hear(said)
    assert heard.drafts == ()
    assert heard.set_aside


@pytest.mark.parametrize(
    "after",
    [
        "and it would be all over the window",
        "then the sink would leak",
        "so you don't get rot",
        "and it's always a sunday night",
    ],
)
def test_what_goes_on_with_it(hear: Hear, after: str) -> None:
    assert hear("normally you'd want a pan under the furnace", after).drafts == ()


@pytest.mark.parametrize(
    "after", ["this one is cracked", "the sink leaks", "here it's loose", "but the furnace is rusted"]
)
def test_what_is_there_is_not_swallowed(hear: Hear, after: str) -> None:
    assert judged(hear("normally you'd want a pan under the furnace", after)) == {"adverse"}


def test_a_thing_that_was_only_taught_can_be_missing(hear: Hear, shipped: Packs) -> None:
    heard = hear("normally you'd want a pan under the water heater", "there isn't one", using=shipped)
    assert [(d.kind, d.part, d.condition) for d in heard.drafts] == [("water-heater", "pan", "adverse")]
