"""Teaching, advice, forecasts, what-ifs and stories give no drafts; things truly said in like words do.

Sentences written by us; common practice, no source.
"""

from __future__ import annotations

import pytest

from witnessmark.listening import Draft, Line, Narration, listen
from witnessmark.packs.model import Packs

_SET_ASIDE = [
    "you don't run the air conditioner when it's been under sixty outside or you slug the compressor",
    "you never want to paint over those vents",
    "never store anything within three feet of the furnace",
    "always leave the lid off when you do that",
    "don't ever close that damper while there's a fire in there",
    "keep the gutters clean and half your water problems go away",
    "change that filter every ninety days or the coil freezes up",
    "drain a gallon off the bottom once a year and it'll last you",
    "clean that every fall before you light the stove",
    "if that crack gets wider than a quarter inch call somebody",
    "if the pump quits this whole basement floods",
    "had that been leaking you'd see a white ring right there",
    "suppose the power goes out in a storm then the sump is dead",
    "let's say the valve sticks then the tank can burst",
    "what happens is the flashing rusts through and the water gets in behind the brick",
    "what usually goes first on these is the igniter",
    "what i'd do is seal that with a good caulk and paint it",
    "what they want is six feet between the outlets",
    "what you're looking for is a nice blue flame",
    "what that does is keep the rats out",
    "the idea there is the water runs off and not into the foundation",
    "the whole point of the expansion tank is when water heats up it swells",
    "the code wants thirty six inches in front of the panel",
    "the code these days calls for a gfci on every garage outlet",
    "code's four inches between balusters",
    "book says one inch clearance to anything that burns",
    "that's what the book calls for",
    "manufacturer wants eighteen inches off the floor",
    "two inches is what they want all the way around",
    "they want the vent ten feet from the window",
    "rule is ten four and ten",
    "every receptacle within six feet of water has to have that protection",
    "a deck like this should have a ledger bolted every sixteen inches",
    "a furnace this age is usually living on borrowed time",
    "a water heater gets maybe twelve years",
    "a good roof gets you twenty five years up here",
    "anything over a hundred and twenty will scald a kid",
    "nobody cleans those dryer vents and that's how fires start",
    "people put the soil right up against the siding and it rots",
    "people forget to shut the hose bibs off and they freeze and split",
    "most of these panels had breakers that wouldn't trip",
    "most roofers just caulk it and go",
    "a lot of these old houses have knob and tube hiding in the walls",
    "those brass valves break when you turn them",
    "once the seal goes the glass fogs up",
    "when those fail they flood the whole house",
    "as these get older the springs break",
    "over time the grout cracks and lets water in",
    "every few years you'd reseal those",
    "in the winter the ice backs up under the shingles",
    "in a hard freeze that pipe would split",
    "by rights it should be strapped every four feet",
    "i always tell people shut the main off when you go on vacation",
    "i tell everybody to test the smokes every month",
    "i saw one of these blow the door clean off once",
    "i had a house last week where the whole ceiling fell in",
    "i've seen those burn",
    "i've had them come apart in my hand",
    "i had a fella put his foot through one",
    "my brother in law lost a garage that way",
    "one time i found a snake in one of these",
    "the last house i did had the same panel and it was melted",
    "back in the seventies they used aluminum and the connections burned",
    "in those days they didn't put a vapor barrier down",
    "you'd have to cut the drywall to see if it's rotted",
    "you could lose a finger in that",
    "you'll get a musty smell if the trap dries out",
    "you might see a little frost on the nails in january",
    "you can turn the water off here if a pipe breaks",
    "to shut it off you turn this quarter turn",
    "to reset it hold the red button",
    "the way to test it is push the button and it should trip",
    "next time it rains look for a drip right here",
    "first thing you do when you move in is change the locks",
    "before you light a fire have it swept",
    "after a heavy rain that sump will run every ten minutes",
    "should that fail the carbon monoxide comes in the house",
    "unless somebody props it open it closes by itself",
    "with a slope like that the water would sit against the wall",
    "otherwise the bugs get in",
    "that'd be a fire hazard if it was still live",
    "that would leak if the flashing wasn't there",
    "a gap like that would let mice in",
    "it'll rust out in a couple of years",
    "it'll crack again by spring",
    "those'll have to come out someday",
    "a new one runs you about two thousand",
    "an electrician would want two hundred bucks for that",
    "a plumber can swap that in an hour",
]

_TOLD = [
    "you can see where it's rotted",
    "you can hear the fan bearing squeal",
    "you can see daylight through the roof deck",
    "if you look up there the flashing is rusted through",
    "when i flushed it the tub gurgled",
    "once i got up there i found two cracked rafters",
    "i found a nest in the dryer vent",
    "i saw a crack in the heat exchanger",
    "i've got a leak at the trap",
    "they painted over the soffit vents",
    "they didn't put a vapor barrier down",
    "they never strapped the water heater",
    "somebody cut the truss",
    "people have been standing on that condenser and it's dented",
    "this one's got a cracked heat exchanger",
    "every outlet in the garage is missing its cover",
    "every window on the north side is fogged",
    "most of the shingles are curled",
    "most of these windows are painted shut",
    "some of these shingles are cracked",
    "a couple of those balusters are loose",
    "a lot of these joists are notched",
    "a piece of the flashing is missing",
    "a branch is rubbing the roof",
    "anything plugged in on this counter trips the breaker",
    "nobody strapped that water heater",
    "the whole point of this gutter is gone it's rusted through",
    "that'd be the third leak i've found",
    "the damper's supposed to close it's stuck open",
    "usually i see a strap there's none here",
    "when it rains it comes in right here you can see the stain",
    "if that's original it's had a hard life the bottom is rusted out",
    "unlike the other one this one leaks",
    "i always check the trap and this one is leaking",
]


def _drafts(said: str, shipped: Packs) -> list[Draft]:
    """The drafts of a sentence between two plain statements."""
    lines = ("water heater is a forty gallon.", "flue is good.", f"{said}.", "okay floor drain is dry.")
    heard = listen(
        Narration("test", tuple(Line(8.0 * i, 8.0 * i + 8.0, text) for i, text in enumerate(lines))), shipped
    )
    return [draft for draft in heard.drafts if 16.0 <= draft.start < 24.0]


@pytest.mark.parametrize("said", _SET_ASIDE)
def test_what_is_not_of_this_house_now_gives_no_draft(shipped: Packs, said: str) -> None:
    assert not _drafts(said, shipped)


@pytest.mark.parametrize("said", _TOLD)
def test_what_is_truly_told_is_kept(shipped: Packs, said: str) -> None:
    assert any(draft.condition == "adverse" or draft.act == "doubted" for draft in _drafts(said, shipped))
