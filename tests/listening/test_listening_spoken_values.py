"""Numbers as inspectors say them and what becomes of them: phrases written by us (common practice, no source).

Conversions are plain arithmetic of the words; units are UCUM codes. The largest ratings for small conductors are those
of the National Electrical Code, 240.4(D).
"""

from __future__ import annotations

from decimal import Decimal
from typing import TYPE_CHECKING

import pytest

from witnessmark.listening import Draft
from witnessmark.listening.narration import Line
from witnessmark.listening.quantities import quantities
from witnessmark.listening.words import tokens, words
from witnessmark.units import known

if TYPE_CHECKING:
    from listening.conftest import Hear
    from witnessmark.packs.model import Packs

F, IN, FT, SLOPE, RV = "[degF]", "[in_i]", "[ft_i]", "[in_i]/[ft_i]", "[sft_i].[degF].h/[Btu_IT]"


def said(text: str) -> list[str]:
    """The compared words of what a recogniser wrote."""
    return [t.norm for t in tokens(words([Line(0.0, 1.0, text)]))]


TABLE: list[tuple[str, str, str | None]] = [
    # heights and lengths
    ("six feet one under that beam", "73", IN), ("seven foot two clear", "86", IN), ("six foot eight at the landing", "80", IN),
    ("five foot eleven and a half inches", "71.5", IN), ("eight foot four inches", "100", IN), ("six foot two joists", "6", FT),
    ("ten foot two by four", "10", FT), ("half an inch in four feet", "0.5", IN), ("a sixteenth of an inch", "0.0625", IN),
    ("seven thirty seconds of an inch", "0.21875", IN), ("an inch and five eighths", "1.625", IN), ("two and five eighths inches", "2.625", IN),
    ("five sixteenths", "0.3125", None), ("four and three quarters apart", "4.75", None), ("twenty some feet", "20", FT),
    ("one hundred feet", "100", FT), ("hundred feet", "100", FT), ("thirty yards", "30", "[yd_i]"), ("a foot of insulation", "1", FT),
    ("sixty ate inches", "68", IN), ("sixteen inches on center", "16", IN), ("three inches to the foot", "3", SLOPE),
    # thermal resistances, and what cameras are told by
    ("r value of thirteen", "13", RV), ("r value is about eleven", "11", RV), ("r value thirteen", "13", RV), ("thirteen r value", "13", RV),
    ("r-30 batts", "30", RV), ("R-13", "13", RV), ("r factor of nineteen", "19", RV), ("twenty mrad", "20", "mrad"),
    ("one point three milliradians", "1.3", "mrad"), ("fifty mk", "50", "mK"), ("50 mK", "50", "mK"), ("sixty five millikelvins", "65", "mK"),
    # times
    ("a minute and a half", "1.5", "min"), ("a minute and ten seconds", "70", "s"), ("two minutes and thirty seconds", "150", "s"),
    ("two minutes thirty seconds", "150", "s"), ("forty five seconds", "45", "s"), ("three minutes", "3", "min"), ("thirty odd years", "30", "a"),
    ("ten year old roof", "10", "a"), ("six months", "6", "mo"), ("twenty five milliseconds", "25", "ms"),
    # years
    ("20 13", "2013", None), ("19 98", "1998", None), ("two thousand seven ten years is all", "2007", None), ("twenty oh four", "2004", None),
    ("two thousand and nine on the back", "2009", None), ("late nineteen eighties", "1980", None), ("eighteen ninety five", "1895", None),
    ("two thousand twelve", "2012", None), ("nineteen oh six", "1906", None),
    # electricity
    ("three fifteen amp breakers", "3", None), ("four twenty amp circuits", "4", None), ("one fifty amp main", "150", "A"),
    ("one twenty five amp panel", "125", "A"), ("20 20 amp breakers", "20", None), ("one nineteen point six volts", "119.6", "V"),
    ("point zero three ohms", "0.03", "Ohm"), ("five milliamps", "5", "mA"), ("two oh eight volts", "208", "V"),
    # heat, gas, water, air
    ("a hundred and twenty thousand b t u", "120000", "[Btu_IT]/h"), ("seventy five thousand btu", "75000", "[Btu_IT]/h"),
    ("two and a half ton", "2.5", "12000.[Btu_IT]/h"), ("three point five tons", "3.5", "12000.[Btu_IT]/h"), ("one and a half horse", "1.5", "[HP]"),
    ("three quarter horsepower", "0.75", "[HP]"), ("one point two eight gallons", "1.28", "[gal_us]"), ("three gallons a minute", "3", "[gal_us]/min"),
    ("point three inches of water column", "0.3", "[in_i'H2O]"), ("minus four pascals", "-4", "Pa"), ("a buck twenty psi", "120", "[psi]"),
    ("ninety for degrees", "94", F), ("twenty to percent", "22", "%"), ("negative six degrees", "-6", F), ("eleven or twelve percent", "11", "%"),
    ("twelve hundred cfm", "1200", "[cft_i]/min"), ("two fifty cfh", "250", "[cft_i]/h"), ("four point two picocuries", "4.2", "pCi/L"),
    # counts
    ("one two three four in this row", "4", None), ("the outlets one two three", "3", None), ("two out of six", "2", None),
    ("three out of the eight", "3", None), ("one tube out of six", "1", None), ("half a dozen", "6", None), ("a pair of hangers", "2", None),
    ("all five of them", "5", None), ("two of the four burners", "2", None), ("sixteen twenty six at the rotten one", "16", None),
    # taken back
    ("seven percent no hang on seventeen", "17", "%"), ("two make it three", "3", None), ("six no seven amps", "7", "A"),
    ("twenty two scratch that thirty two inches", "32", IN), ("one eighteen no one eighty", "180", None), ("three no wait four inches", "4", IN),
]  # fmt: skip


@pytest.mark.parametrize(("text", "value", "unit"), TABLE)
def test_a_number_as_it_is_said(text: str, value: str, unit: str | None) -> None:
    found = quantities(said(text))
    assert found, text
    assert (found[0].value, found[0].unit) == (Decimal(value), unit)
    assert unit is None or known(unit)


def test_the_list_is_wide() -> None:
    assert len({text for text, _, _ in TABLE}) >= 80


def heard(hear: Hear, shipped: Packs, *lines: str) -> list[Draft]:
    return list(hear(*lines, using=shipped).drafts)


@pytest.mark.parametrize(
    ("lines", "value"),
    [
        (("the fridge", "forty one"), "41"), (("freezer three",), "3"), (("kitchen faucet", "hot got to one twenty two"), "122"),
        (("tub", "a hundred and nineteen at the tap"), "119"), (("furnace is running", "supply one twelve return sixty nine"), "112"),
        (("okay registers", "den ninety seven"), "97"), (("it's thirty eight outside",), "38"), (("hall's seventy one now",), "71"),
        (("the boiler is at one sixty five",), "165"), (("shower runs", "it got up to one sixteen"), "116"),
    ],
)  # fmt: skip
def test_a_bare_temperature_is_a_reading(hear: Hear, shipped: Packs, lines: tuple[str, ...], value: str) -> None:
    readings = [d for d in heard(hear, shipped, *lines) if d.act == "read"]
    assert [(d.value, d.unit) for d in readings][:1] == [(Decimal(value), F)], readings


@pytest.mark.parametrize(
    "lines",
    [("bedroom two", "is next"), ("smoke alarms five",), ("unit four is ours",), ("thermostat is back to sixty four",), ("zone two is the den",),
     ("outlets on a twenty",)],
)  # fmt: skip
def test_what_is_no_temperature(hear: Hear, shipped: Packs, lines: tuple[str, ...]) -> None:
    assert not [d for d in heard(hear, shipped, *lines) if d.unit == F]


@pytest.mark.parametrize(
    ("lines", "value", "unit"),
    [
        (("furnace room", "twenty amp breaker on fourteen gauge wire"), "20", "A"), (("panel", "slot six is a thirty on number twelve"), "30", "A"),
        (("panel cover is off", "forty amp breaker on number ten"), "40", "A"),
        (("the condenser", "plate says max breaker twenty five", "it's on a forty"), "40", "A"),
    ],
)  # fmt: skip
def test_a_breaker_too_large_for_its_wire_or_plate_is_a_fault(
    hear: Hear, shipped: Packs, lines: tuple[str, ...], value: str, unit: str
) -> None:
    faults = [d for d in heard(hear, shipped, *lines) if d.condition == "adverse"]
    assert (faults[-1].value, faults[-1].unit) == (Decimal(value), unit)
    assert faults[-1].condition_id in {"service-panel.over-fused", "air-conditioner.breaker-too-large"}


@pytest.mark.parametrize(
    "line",
    [
        "fifteen amp breaker on number fourteen",
        "thirty amp breaker on number ten wire",
        "twenty amp breaker on twelve gauge",
    ],
)
def test_a_breaker_that_fits_its_wire_is_no_fault(hear: Hear, shipped: Packs, line: str) -> None:
    assert not [d for d in heard(hear, shipped, "okay the panel", line) if d.condition == "adverse"]


@pytest.mark.parametrize(
    ("lines", "value"),
    [
        (("the deck", "both posts are rotted"), 2), (("windows", "two of them are cracked"), 2), (("joist hangers", "three loose"), 3),
        (("deck joist hangers four rusted",), 4), (("outlets in here", "the other two are loose"), 2), (("grout is missing", "in three spots"), 3),
        (("two of the hinge", "screws are missing on the door"), 2), (("the ceiling", "two tiles are cracked"), 2),
    ],
)  # fmt: skip
def test_how_many_are_wrong(hear: Hear, shipped: Packs, lines: tuple[str, ...], value: int) -> None:
    faults = [d for d in heard(hear, shipped, *lines) if d.condition == "adverse"]
    assert faults
    assert faults[-1].value == Decimal(value), faults


@pytest.mark.parametrize(
    ("lines", "value"),
    [(("hose bibs", "i ran both"), 2), (("windows i tried", "four of the nine"), 4), (("kitchen sink works", "i filled both bowls"), 2), (("outlets in the den", "i tested all six"), 6)],
)  # fmt: skip
def test_how_many_were_operated(hear: Hear, shipped: Packs, lines: tuple[str, ...], value: int) -> None:
    ran = [d for d in heard(hear, shipped, *lines) if d.act == "ran"]
    assert [d.value for d in ran][-1:] == [Decimal(value)]


@pytest.mark.parametrize(
    ("lines", "value"),
    [
        (("the boiler", "there's three zone valves"), 3), (("foundation vents", "there are six of them"), 6), (("outlets", "i count five"), 5),
        (("the chimney.", "three flues."), 3), (("piers", "one two three four five in this row"), 5),
    ],
)  # fmt: skip
def test_a_number_of_things_describes_them(hear: Hear, shipped: Packs, lines: tuple[str, ...], value: int) -> None:
    found = [d for d in heard(hear, shipped, *lines) if d.attribute == "number"]
    assert [(d.act, d.value, d.unit) for d in found] == [("identified", Decimal(value), "1")]


def test_a_size_told_after_a_fault_belongs_to_it(hear: Hear, shipped: Packs) -> None:
    drafts = heard(hear, shipped, "bedroom ceiling has a stain.", "about two feet across.")
    assert [(d.act, d.condition, d.value, d.unit) for d in drafts] == [("saw", "adverse", Decimal(2), FT)]


def test_how_cold_it_was_says_why_nothing_was_run(hear: Hear, shipped: Packs) -> None:
    drafts = heard(hear, shipped, "air conditioner.", "i won't run it.", "it's forty four out.")
    assert [(d.act, d.value, d.unit) for d in drafts if d.act in {"skipped", "read"}] == [("skipped", Decimal(44), F)]


def test_a_fault_counted_anew_is_put_right(hear: Hear, shipped: Packs) -> None:
    drafts = heard(hear, shipped, "crawl space.", "three of the posts are leaning.", "no it's two that are leaning.")
    assert [d.value for d in drafts if d.condition == "adverse"] == [Decimal(2)]


def test_a_reading_put_right_after_hang_on(hear: Hear, shipped: Packs) -> None:
    drafts = heard(hear, shipped, "bathroom floor meter reads nine percent.", "no, hang on.", "Nineteen.")
    assert [d.value for d in drafts if d.act == "read"] == [Decimal(19)]


@pytest.mark.parametrize(
    ("lines", "value"),
    [(("water heater", "made in", "oh eight"), 2008), (("the furnace", "sticker says twenty fourteen"), 2014), (("smoke alarm", "it says two thousand eleven on the back"), 2011),
     (("the air handler", "serial two one zero six five five so two thousand six"), 2006)],
)  # fmt: skip
def test_a_year_of_make(hear: Hear, shipped: Packs, lines: tuple[str, ...], value: int) -> None:
    assert [d.value for d in heard(hear, shipped, *lines) if d.attribute == "made"] == [Decimal(value)]


def test_inches_of_water_that_stand_are_a_depth(hear: Hear, shipped: Packs) -> None:
    drafts = heard(hear, shipped, "in the crawl space", "there's two inches of water along the wall")
    assert {d.unit for d in drafts if d.value == Decimal(2)} == {IN}


def test_what_a_meter_pegs_at_is_its_reading(hear: Hear, shipped: Packs) -> None:
    drafts = heard(hear, shipped, "the floor by the tub.", "meter pegs at forty.")
    assert [(d.value, d.unit) for d in drafts if d.act == "read"] == [(Decimal(40), "%")]
