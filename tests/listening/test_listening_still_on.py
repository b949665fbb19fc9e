"""How things are started, left, come back to and stopped, in many words: what is still on at the end.

Sentences written by us; common practice, no source. ``*`` stands for any one thing: which one is meant is not tested here.

Long because it is a table: a thing left on that is lost is the worst error, and people say it in many ways.
"""

from __future__ import annotations

from typing import Any

import pytest

from witnessmark.listening import Line, Narration, listen
from witnessmark.packs.model import Packs

_TOLD: list[tuple[tuple[str, ...], list[str]]] = [
    (("filling the tub in the hall bath",), ["bathtub"]),
    (("hall bath", "tub's filling now"), ["bathtub"]),
    (("i've got the stopper down in the tub and the water running",), ["bathtub"]),
    (("plugged the tub and i'm letting it fill",), ["bathtub"]),
    (("put the stopper in the tub and opened both taps",), ["bathtub"]),
    (("filled the tub to the overflow", "let it out", "drains fast"), []),
    (("filling the tub", "popped the stopper it drains"), []),
    (("filled the tub", "letting it drain now"), []),
    (("filled the tub", "it's going down now"), []),
    (("filled the tub", "tub's empty"), []),
    (("tub is full i'm letting it out",), []),
    (("plugged the sink and filled it to the overflow",), ["sink"]),
    (("left bowl is plugged and filling",), ["sink"]),
    (("both bowls filled", "pulled both stoppers", "no leaks under"), []),
    (("filled the sink", "opened the drain", "runs out quick"), []),
    (("kitchen sink hot side wide open",), ["sink"]),
    (("kitchen sink hot side wide open", "closed it again"), []),
    (("i've got the water running in the kitchen sink", "dishwasher has no air gap"), ["sink"]),
    (("water's on at the laundry sink", "okay water's off"), []),
    (("shower's running in the primary bath",), ["shower"]),
    (("i'll leave the shower run for fifteen minutes to load the pan",), ["shower"]),
    (("shower's on", "killed the shower", "pan is dry below"), []),
    (("turned on the shower both heads", "shower off"), []),
    (("plugged the shower drain and i'm filling the pan",), ["shower"]),
    (("hot water tap running",), ["faucet"]),
    (("dishwasher is on the short cycle",), ["dishwasher"]),
    (("threw the dishwasher on a quick wash",), ["dishwasher"]),
    (("put the dishwasher on rinse and hold",), ["dishwasher"]),
    (("dishwasher started",), ["dishwasher"]),
    (("started the dishwasher", "dishwasher's still going"), ["dishwasher"]),
    (("started the dishwasher", "dishwasher is still filling i can hear it"), ["dishwasher"]),
    (("started the dishwasher", "dishwasher finished no leaks"), []),
    (("started the dishwasher", "dishwasher has run through and it's dry underneath"), []),
    (("started the dishwasher", "the dishwasher cycle ended", "nothing on the floor"), []),
    (("dishwasher's running", "canceled it and drained it"), []),
    (("started the dishwasher", "oven off"), ["dishwasher"]),
    (("running the dishwasher", "i'll come back to that"), ["dishwasher"]),
    (("oven set to three fifty",), ["range"]),
    (("set the oven for four hundred on bake",), ["range"]),
    (("oven's preheating",), ["range"]),
    (("put the oven on bake at three fifty",), ["range"]),
    (("oven on bake three fifty",), ["range"]),
    (("oven on bake three fifty", "thermometer reads three forty", "oven off"), []),
    (("set the oven to three fifty", "oven's off now"), []),
    (("set the oven at three twenty five", "turned the oven back off"), []),
    (("kitchen range", "all four burners on", "front left doesn't light"), ["range"]),
    (("kitchen range", "all four burners on", "front left doesn't light", "all burners off"), []),
    (("lit all four burners", "they're all off again"), []),
    (("burners all lit and shut off again",), []),
    (("range hood fan on high",), ["range-hood"]),
    (("range hood on both speeds and off",), []),
    (("bath fan on",), ["exhaust-fan"]),
    (("bath fan switched on pulls the tissue",), ["exhaust-fan"]),
    (("bath fan on not much pull", "switch is down again"), []),
    (("turned the bath fan on", "fan off"), []),
    (("i left the bath fan going",), ["exhaust-fan"]),
    (("flipped the fan on it's noisy", "flipped it back off"), []),
    (("ceiling fan's on high and it wobbles",), ["ceiling-fan"]),
    (("ceiling fan on low medium high and off",), []),
    (("raised the thermostat to seventy four",), ["thermostat"]),
    (("thermostat in the hall i bumped it up to eighty",), ["thermostat"]),
    (("dropped the thermostat to sixty five to call for cooling",), ["thermostat"]),
    (("set the thermostat to cool at sixty eight",), ["thermostat"]),
    (("thermostat set cooling to seventy",), ["thermostat"]),
    (("switched the thermostat over to emergency heat",), ["thermostat"]),
    (("put the thermostat in heat and cranked it up",), ["thermostat"]),
    (("thermostat called for heat at seventy five",), ["thermostat"]),
    (("raised the thermostat to seventy four", "furnace fires", "put it back to sixty eight"), []),
    (("raised the thermostat to seventy four", "furnace fires", "thermostat's back where they had it"), []),
    (("turned the thermostat up to eighty", "thermostat back on auto"), []),
    (("thermostat up to seventy five", "set it back down to sixty two"), []),
    (("thermostat pushed to seventy six", "returned it to sixty five"), []),
    (("i've got the furnace running",), ["furnace"]),
    (("started zone three on the sprinklers",), ["irrigation"]),
    (("ran all six sprinkler zones", "clock's back on auto"), []),
    (("front hose bib wide open",), ["hose-bib"]),
    (("opened the back hose bib and let it run",), ["hose-bib"]),
    (("opened both hose bibs and let em rip",), ["hose-bib"]),
    (("opened the hose bib", "shut the hose bib"), []),
    (("hose bib on and off no leak at the stem",), []),
    (("cracked open the hose bib and left it dripping for the draw down",), ["hose-bib"]),
    (("generator started and i'm letting it run",), ["generator"]),
    (("started the generator",), ["generator"]),
    (("started the generator", "ran fine", "generator's off"), []),
    (("generator fired up on the first try", "shut it down"), []),
    (("garage door is open",), ["garage-door"]),
    (("i ran the garage door up and i'm leaving it up for the light",), ["garage-door"]),
    (("left the garage door open",), ["garage-door"]),
    (("opened the garage door", "closed the garage door"), []),
    (("garage door went up and came back down",), []),
    (("ran the garage door up and down",), []),
    (("left the garage door up", "garage door's down"), []),
    (("attic hatch is open",), ["attic-access"]),
    (("opened the attic hatch",), ["attic-access"]),
    (("pushed the attic hatch up out of the way",), ["attic-access"]),
    (("popped the hatch", "insulation is about ten inches"), ["attic-access"]),
    (("opened the attic hatch", "closed the hatch behind me"), []),
    (("popped the attic hatch", "hatch is back in place"), []),
    (("pulled down the attic ladder",), ["attic-ladder"]),
    (("attic stairs are down",), ["attic-ladder"]),
    (("pulled the attic stairs down", "folded the stairs back up"), []),
    (("attic ladder's down", "attic ladder's back up"), []),
    (("left the window open to air it out",), ["window"]),
    (("opened the bedroom window and propped it",), ["window"]),
    (("opened the window", "shut the window"), []),
    (("opened the bedroom window", "closed and locked it again"), []),
    (("tried three windows they open and close",), []),
    (("crawl hatch is off",), ["crawl-access"]),
    (("took the crawl hatch off",), ["crawl-access"]),
    (("pulled the crawl space hatch", "crawl hatch is back on"), []),
    (("took the dead front off the main panel",), ["service-panel"]),
    (("panel cover's off",), ["service-panel"]),
    (("took the panel cover off", "cover's back on with all its screws"), []),
    (("dead front off", "no double taps", "dead front's back on"), []),
    (("tripped the gfci at the vanity and it won't reset",), ["gfci"]),
    (("pushed the test button on the gfci it tripped and won't reset",), ["gfci"]),
    (("tripped the gfci at the sink", "reset fine"), []),
    (("gfci tripped and reset",), []),
    (("tripped the gfci", "left it tripped"), ["gfci"]),
    (("turned the main breaker off", "i'm leaving it off"), ["service-panel"]),
    (("i shut off the breaker for the dryer and left it off",), ["service-panel"]),
    (("turned the breaker off", "breaker's back on"), []),
    (("flipped the breaker off and back on",), []),
    (("i shut the gas valve at the dryer",), ["*"]),
    (("turned the water heater gas valve to pilot",), ["*"]),
    (("turned the water heater gas control to pilot", "set it back to hot"), []),
    (("lifted the sump float pump kicked on", "let go and it quit"), []),
    (("sump started when i lifted the float and quit when i let go",), []),
    (("poured a bucket in the sump pit pump kicked on and shut off",), []),
    (("jetted tub filled and the jets are on",), ["whirlpool-tub"]),
    (("filled the jetted tub over the jets and ran it", "jets off", "drained the tub"), []),
    (("dryer's running on high",), ["clothes-dryer"]),
    (("started the dryer",), ["clothes-dryer"]),
    (("started the dryer", "gets hot", "dryer's off"), []),
    (("dryer on for five minutes heats up", "stopped it"), []),
    (("started the washer on rinse",), ["clothes-washer"]),
    (("started the washer on rinse", "washer's done it spun out"), []),
    (("washer filled and drained and stopped",), []),
    (("opened the damper and left it open",), ["fireplace"]),
    (("damper's open i'll leave it so we can look later",), ["fireplace"]),
    (("damper opens and closes",), []),
    (("opened the damper", "closed the damper"), []),
    (("gas fireplace on at the wall switch",), ["gas-fireplace"]),
    (("hit the switch and the gas fireplace lit", "switched it off"), []),
    (("gas fireplace lit right up and off again",), []),
    (("gas logs are lit",), ["gas-logs"]),
    (("lit the gas logs", "gas logs off"), []),
    (("car charger switched on i left it that way",), ["ev-charger"]),
    (("flipped the pool pump to manual",), ["swimming-pool"]),
    (("pool pump's running on manual",), ["swimming-pool"]),
    (("flipped the pool pump to manual", "back on auto"), []),
    (("pool light on", "pool light off"), []),
    (("put the softener in bypass",), ["water-treatment"]),
    (("put the softener in bypass", "softener's back in service"), []),
    (("microwave running with a cup of water",), ["microwave"]),
    (("cup of water in the microwave for a minute came out hot",), []),
    (("disposal's on",), ["disposer"]),
    (("disposal on hums and off",), []),
    (("ran the disposal", "sounds fine"), []),
    (("turned the garage heater dial up",), ["room-heater"]),
    (("turned the garage heater up", "dial's back to zero"), []),
    (("whole house fan is on with two windows open",), ["whole-house-fan"]),
    (("attic light is on",), ["light-fixture"]),
    (("left the crawl space light on",), ["light-fixture"]),
    (("attic light on", "attic light off coming down"), []),
    (("porch light on and off",), []),
    (("left the refrigerator door open",), ["*"]),
    (("opened the refrigerator", "thirty eight inside"), []),
    (("propped the bulkhead open with a brick",), ["basement-entrance"]),
    (("wedged the bulkhead door open", "pulled the brick and shut the bulkhead"), []),
    (("left the back door unlocked",), ["exterior-door"]),
    (("unlocked the back door", "locked it again"), []),
    (("toilet flushed twice and it shut off",), []),
    (("toilet's still running won't shut off i closed the valve",), ["*"]),
    (("turned the ac on", "turned the ac off"), []),
    (("turned the ac on",), ["air-conditioner"]),
    (("shower's running", "bath fan's on", "everything's off in here"), []),
    (("oven on", "dishwasher going"), ["range", "dishwasher"]),
    (("oven on", "dishwasher going", "killed the oven"), ["dishwasher"]),
    (("oven on", "dishwasher going", "oven and dishwasher are both off"), []),
    (("i turned on the hot at the kitchen sink", "i'll kill that on the way out"), ["sink"]),
    (("running water at the hall bath sink", "i'll shut that off later"), ["sink"]),
    (("running water at the hall bath sink", "don't let me forget that sink"), ["sink"]),
    (("running water at the hall bath sink", "remind me to shut it off", "shut the sink off"), []),
    (("fan's running already they left it on",), []),
    (("oven works on bake",), []),
    (("you should leave the fan on for twenty minutes after a shower",), []),
    (("if the pump is running all the time the float is stuck",), []),
    (("i'm not going to turn the oven on",), []),
    (("i couldn't turn the furnace on",), []),
    (("the light is on the left side of the door",), []),
    (("there's a switch on the wall for the disposal",), []),
]  # fmt: skip


@pytest.mark.parametrize(("lines", "open_"), _TOLD, ids=[" / ".join(lines) for lines, _ in _TOLD])
def test_what_is_left_on_or_open(hear: Any, shipped: Packs, lines: tuple[str, ...], open_: list[str]) -> None:
    heard = hear(*lines, using=shipped)
    left = sorted(row.draft.kind or row.draft.label for row in heard.still_on)
    assert left == sorted(open_) or (open_ == ["*"] and len(left) == 1)


#: Stretches of talk without marks, and what is left at their end.
_STRETCHES: list[tuple[str, list[str]]] = [
    (
        (
            "okay upstairs hall bath i'm going to start with the tub stopper's down hot and cold both running "
            "toilet flushes good refills and stops sink in here drips at the handle fan's loud but it pulls tub's "
            "about half full i'll shut that off and let it sit while i do the bedrooms"
        ),
        ["bathtub"],
    ),
    (
        (
            "laundry next washer's on a quick cycle it's filling no pan under it dryer i've got it going on timed "
            "dry vent hose is kinked behind it gas shutoff is there okay dryer's off it was heating fine"
        ),
        ["clothes-washer"],
    ),
    (
        (
            "kitchen i turned the oven on bake three fifty all four burners light dishwasher i started on the "
            "rinse cycle disposal works ran the hot side it gets to one twenty two range hood fan works light's "
            "burned out shut the water off oven's at three forty good oven's off"
        ),
        ["dishwasher"],
    ),
    (
        (
            "garage right door opener works it reverses on the eyes left door i ran up by hand and it's staying "
            "open for now heater in here hangs from the ceiling turned it up and it fired turned it back down"
        ),
        ["garage-door"],
    ),
    (
        (
            "furnace is a ninety percent i jumped the thermostat up to seventy six came on in about a minute "
            "burners are clean blower's a little dirty i'll let it run while i look at the ducts"
        ),
        ["thermostat"],
    ),
    (
        (
            "attic hatch in the closet i popped it and set it on the shelf insulation's about eight inches bath "
            "fan dumps right in here lights work i'll close that up when i come down"
        ),
        ["attic-access"],
    ),
    (
        (
            "panel's in the basement a two hundred amp took the cover off no doubles one breaker's warm copper "
            "branch wiring cover's back on with all six screws main was on when i got here"
        ),
        [],
    ),
    (
        (
            "outside hose bib in back i opened it up good pressure no leak at the stem shut it off the one in "
            "front won't turn sprinkler clock's set to auto i put it on manual zone three is running now two "
            "heads don't pop up"
        ),
        ["irrigation"],
    ),
    (
        (
            "gfci by the sink trips and won't reset so everything on this wall is dead gfci in the garage trips "
            "and resets exterior one tripped with my tester reset it"
        ),
        ["gfci"],
    ),
    (
        (
            "living room fireplace damper was closed i opened it looks clean up there i'll leave it open so you "
            "can see gas valve for the log lighter is on the floor didn't touch it ceiling fan wobbles on high "
            "and off"
        ),
        ["fireplace"],
    ),
    (
        (
            "crawl space door's off i'm going in vapor barrier's torn duct's down in the back joist is cracked "
            "coming out and the door's back on"
        ),
        [],
    ),
    (
        (
            "ac it's seventy two out so i dropped it to sixty five supply's at fifty four return's seventy one "
            "that's good set it back to seventy four"
        ),
        [],
    ),
    (
        (
            "generator out back ran it under load for five minutes and shut it down transfer switch works it's "
            "back to auto"
        ),
        [],
    ),
    (
        (
            "bedroom windows i opened two of the three the one by the closet won't stay up propped it with a "
            "stick left it like that smoke alarm chirps ceiling fan on low fine on high fine turned it off"
        ),
        ["window"],
    ),
    (
        (
            "half bath sink i plugged it and it's filling overflow works trap's dry underneath fan light combo "
            "works pulled the stopper it drains slow"
        ),
        [],
    ),
    ("i killed the breaker for the disposal so i could look under there wire nut's loose turned it back on", []),
    (
        (
            "water heater's set way up i didn't touch it shut the water off at the main to see if it holds it "
            "does main's still off i'll turn it on when we leave"
        ),
        ["*"],
    ),
    (
        (
            "pool pump's off i turned it on at the timer prime took a while heater fired turned the heater off "
            "pump's going"
        ),
        ["swimming-pool"],
    ),
    (
        (
            "back at the kitchen faucet's leaking at the base microwave ran a cup of water it's hot garbage "
            "disposer seized hit the reset still hums so no good off dishwasher's latch is broken couldn't run it"
        ),
        [],
    ),
    (
        (
            "thermostat upstairs is set at sixty eight i pushed it up to seventy five to call for heat downstairs "
            "one i left alone boiler fired circulator's running baseboard in the hall is getting hot i'll drop "
            "that back when we're done"
        ),
        ["thermostat"],
    ),
    (
        (
            "alright garage first opener left side up and down fine both beams work right side same deal i'm "
            "leaving the right door up so we can get the ladder out water heater's in the corner"
        ),
        ["*"],
    ),
    (
        (
            "bath two filling the sink to the overflow tub's filling too toilet's fine window's stuck sink's "
            "draining good tub i'm leaving full to see if it drops"
        ),
        ["bathtub"],
    ),
    (
        (
            "dining room chandelier dimmer buzzes lights off outlet by the window dead patio slider rolls hard "
            "latch works opened the window over the sink and it fell shut"
        ),
        [],
    ),
    (
        (
            "up on the roof hose is running on the valley to see if it leaks below shingles are twelve years old "
            "or so pipe boot's cracked"
        ),
        ["*"],
    ),
    (
        (
            "we're in the utility room furnace switch was off i flipped it on and it lit right up filter's dirty "
            "condensate pump hums i set the stat to seventy three"
        ),
        ["furnace", "thermostat"],
    ),
    (
        (
            "stove gas igniters all click front right won't light i've got the oven heating to four hundred "
            "broiler works vent hood blows back in the room oven got to three ninety turned it off"
        ),
        [],
    ),
    (
        (
            "outside spigots two of em front one's fine back one i cracked open and it drips inside the wall so i "
            "shut it right back off deck light's on a photocell"
        ),
        [],
    ),
    (
        (
            "washer hooked up i started a rinse and spin dryer heats shut it off laundry sink drains slow trap "
            "leaks washer's on its last spin now okay it stopped"
        ),
        [],
    ),
    (
        (
            "attic's through the garage ceiling ladder's down i left it down whole house fan i switched on from "
            "the hall it shakes the whole ceiling shut it down gable vent's blocked"
        ),
        ["attic-ladder"],
    ),
    (
        (
            "jacuzzi tub filled it past the jets hit the button on the deck nothing gfci for it's in the closet "
            "it was tripped i reset it and now she runs jets off draining it now"
        ),
        [],
    ),
    (
        (
            "crawlspace hatch is in the closet floor pulled it up light switch works down there light's on okay "
            "i'm out hatch is down and the light's off"
        ),
        [],
    ),
    (
        (
            "water softener i bumped it into bypass to check the pressure sixty two it's back in service sediment "
            "filter's black"
        ),
        [],
    ),
    (
        (
            "first floor ac i set the thermostat down to sixty eight compressor kicked on i'll check it again on "
            "the way out second floor's a separate unit same thing set that to sixty eight too"
        ),
        ["thermostat"],
    ),
    (("gas fireplace flipped the switch it lit glass is dirty remote works too switched it off pilot stays lit"), []),
    (
        (
            "service disconnect outside's a two hundred i pulled the cover off the subpanel in the garage "
            "neutrals are bonded in there cover's on again"
        ),
        [],
    ),
    (
        (
            "well pump's on a breaker i turned the hose on in the yard ran it for thirty minutes pressure never "
            "dropped below forty hose is off tank's waterlogged"
        ),
        [],
    ),
]
#: Words in a caption, in turn.
_IN_A_CAPTION = (9, 12, 7, 11, 8, 10)


def _captions(text: str) -> tuple[Line, ...]:
    """The words in captions of four seconds that end anywhere."""
    words = text.split()
    made: list[Line] = []
    while words:
        size = _IN_A_CAPTION[len(made) % len(_IN_A_CAPTION)]
        made.append(Line(4.0 * len(made), 4.0 * len(made) + 4.0, " ".join(words[:size])))
        words = words[size:]
    return tuple(made)


@pytest.mark.parametrize(("text", "open_"), _STRETCHES, ids=[text[:40] for text, _ in _STRETCHES])
def test_what_is_left_at_the_end_of_a_stretch_of_talk(shipped: Packs, text: str, open_: list[str]) -> None:
    heard = listen(Narration("test", _captions(text)), shipped)
    left = sorted(row.draft.kind or row.draft.label for row in heard.still_on)
    assert left == sorted(open_) or (open_ == ["*"] and len(left) == 1)


#: How a thing was left, by words that leave the speaker out.
_LEFT = [
    ("turned the knob to high burner glows", "on"),
    ("sink hot full on cold full on", "on"),
    ("cracked the bib open", "on"),
    ("hooked the hose up and turned it on", "on"),
    ("swung the damper open", "on"),
    ("pulled the stairs down they're solid", "on"),
    ("shut the bulkhead", "off"),
    ("put the stat to cool at sixty", "on"),
    ("stat's back down to sixty eight", "off"),
    ("stat back where i found it", "off"),
    ("hood light and fan both on", "on"),
    ("hood off", "off"),
    ("dryer tumbling on high heat", "on"),
    ("washer finished spinning and shut off", "off"),
    ("sprayer on", "on"),
    ("shower valve on full", "on"),
    ("shut the shower down", "off"),
    ("tub spout running", "on"),
    ("plug pulled on the sink", "off"),
    ("poured a bucket in the pit it came on and shut off", "off"),
    ("jets on", "on"),
    ("jets shut off", "off"),
    ("space heater cranked up", "on"),
    ("baseboard turned up it's getting warm", "on"),
    ("baseboard turned back down", "off"),
    ("wall heater on low", "on"),
    ("ac called for cooling", "on"),
    ("whole house fan switched on", "on"),
    ("attic fan turned on at the stat", "on"),
    ("breaker switched off", "off"),
    ("breaker back on", "off"),
    ("dead front back on six screws", "off"),
    ("window cranked open", "on"),
    ("clock back to auto", "off"),
    ("pool pump switched on", "on"),
    ("pool light off", "off"),
    ("disposal on it hums", "on"),
    ("disposal off", "off"),
    ("compactor cycled", "off"),
    ("ice maker switched on", "on"),
    ("instant hot on", "on"),
    ("radiant loop turned up", "on"),
    ("humidifier switched on", "on"),
    ("humidifier off again", "off"),
    ("central vac switched on", "on"),
    ("central vac off", "off"),
    ("porch lights on", "on"),
    ("porch lights off", "off"),
]


@pytest.mark.parametrize(("said", "left"), _LEFT)
def test_how_it_was_left_where_nobody_is_named(shipped: Packs, said: str, left: str) -> None:
    lines = (Line(0.0, 4.0, "okay next."), Line(4.0, 9.0, f"{said}."), Line(9.0, 12.0, "floor is level."))
    heard = listen(Narration("test", lines), shipped)
    assert [d.left for d in heard.drafts if d.act in {"ran", "stopped"}][-1:] == [left]
