"""Spoken quantities in a table: phrases written by us as inspectors and recognisers put them (common practice, no source).

The values of standard breakers, lumber and slopes are plain arithmetic of the words; units are UCUM codes.
"""

from __future__ import annotations

from decimal import Decimal

import pytest

from witnessmark.listening.narration import Line
from witnessmark.listening.numerals import short_year
from witnessmark.listening.quantities import quantities
from witnessmark.listening.words import tokens, words
from witnessmark.units import known

F, IN, FT, SLOPE = "[degF]", "[in_i]", "[ft_i]", "[in_i]/[ft_i]"
BTU, TON, GAL, GPM, PSI, WC = "[Btu_IT]/h", "12000.[Btu_IT]/h", "[gal_us]", "[gal_us]/min", "[psi]", "[in_i'H2O]"
CFM, CFH, PPM, RV, HP = "[cft_i]/min", "[cft_i]/h", "[ppm]", "[sft_i].[degF].h/[Btu_IT]", "[HP]"


def said(text: str) -> list[str]:
    """The compared words of what a recogniser wrote."""
    return [t.norm for t in tokens(words([Line(0.0, 1.0, text)]))]


TABLE: list[tuple[str, str, str | None]] = [
    # temperatures
    ("supply is a hundred and eighteen degrees", "118", F), ("one thirty six degrees at the tap", "136", F),
    ("two oh four degrees", "204", F), ("a hundred degrees", "100", F), ("hundred and five degrees", "105", F),
    ("one oh five degrees", "105", F), ("sixty eight degrees", "68", F), ("50 8 degrees", "58", F),
    ("118°F", "118", F), ("118f", "118", F), ("1 18 degrees", "118", F), ("minus five degrees", "-5", F),
    ("negative ten degrees", "-10", F), ("pushing ninety degrees", "90", F), ("twenty celsius", "20", "Cel"),
    ("seventy two point five degrees", "72.5", F), ("ninety eight point six degrees", "98.6", F),
    ("three fifty degrees in the oven", "350", F), ("forty or so degrees", "40", F), ("four hundred degrees f", "400", F),
    ("a degree or two", "1", F), ("zero degrees", "0", F),
    # lengths
    ("five and a half inches", "5.5", IN), ("three quarters of an inch", "0.75", IN), ("an eighth of an inch", "0.125", IN),
    ("half inch", "0.5", IN), ("half an inch", "0.5", IN), ("a half inch", "0.5", IN), ("a quarter inch", "0.25", IN),
    ("seven eighths of an inch", "0.875", IN), ("five eighths inch", "0.625", IN), ("three sixteenths of an inch", "0.1875", IN),
    ("eighth inch", "0.125", IN), ("an inch", "1", IN), ("an inch and a quarter", "1.25", IN), ("inch and a half", "1.5", IN),
    ("an inch and three quarters", "1.75", IN), ("a foot and a half", "1.5", FT), ("maybe a foot long", "1", FT),
    ("two feet and a half", "2.5", FT), ("a couple of inches", "2", IN), ("couple feet", "2", FT),
    ("half a dozen inches", "6", IN), ("twelve inches", "12", IN), ("six foot four inches", "76", IN), ("six foot ten", "82", IN),
    ("six feet and four inches", "76", IN), ("5'6\" tall", "66", IN), ("three quarter inch", "0.75", IN), ("3/4 inch", "0.75", IN),
    ("1 1/2 inch", "1.5", IN), ("1 and 1/2 inches", "1.5", IN), ("2-1/2 inches", "2.5", IN), ("a quarter of an inch", "0.25", IN),
    ("seven and a quarter inches", "7.25", IN), ("seven and three quarter inches", "7.75", IN), ("one and three eighths inch", "1.375", IN),
    ("sixteen on center", "16", IN), ("twenty four on center", "24", IN), ("24 inches on center", "24", IN),
    ("sixteen inches o c", "16", IN), ("nineteen point two on center", "19.2", IN), ("thirty some feet", "30", FT),
    ("a hundred and twenty feet", "120", FT), ("twelve hundred feet", "1200", FT), ("four inches up", "4", IN),
    ("just under nine feet", "9", FT), ("two hundred microns", "200", "um"), ("six mil plastic", "6", "[mil_i]"),
    ("6 mil", "6", "[mil_i]"), ("thirty eight inches wide", "38", IN), ("two yards", "2", "[yd_i]"), ("fourteen inches", "14", IN),
    ("14in", "14", IN), ("10 ft", "10", FT), ("three and a half feet", "3.5", FT), ("ten millimeters", "10", None),
    # slopes and resistances
    ("a five twelve", "5", SLOPE), ("it is a six twelve", "6", SLOPE), ("eight in twelve", "8", SLOPE), ("four over twelve", "4", SLOPE),
    ("6/12 pitch", "6", SLOPE), ("pitch is four twelve", "4", SLOPE), ("a six and twelve pitch", "6", SLOPE), ("a twelve twelve", "12", SLOPE),
    ("quarter inch per foot", "0.25", SLOPE), ("a quarter inch a foot", "0.25", SLOPE), ("an eighth inch per foot", "0.125", SLOPE),
    ("half inch to the foot", "0.5", SLOPE), ("one inch per foot", "1", SLOPE), ("two percent slope", "2", "%"), ("one in twelve", "1", SLOPE),
    ("r thirteen", "13", RV), ("r thirty eight", "38", RV), ("R 19", "19", RV), ("about r eleven", "11", RV),
    # pressures
    ("sixty two psi", "62", PSI), ("sixty two p s i", "62", PSI), ("62psi", "62", PSI), ("fifty five pounds of pressure", "55", PSI),
    ("eighty pounds per square inch", "80", PSI), ("three and a half inches of water column", "3.5", WC),
    ("seven inches water column", "7", WC), ("point four inches w c", "0.4", WC), ("one point two inches of water", "1.2", WC),
    ("eleven inches of water column", "11", WC), ("negative five pascals", "-5", "Pa"), ("minus three point two pascals", "-3.2", "Pa"),
    # air, gas, heat
    ("four hundred cfm", "400", CFM), ("four hundred c f m", "400", CFM), ("twelve hundred cfm", "1200", CFM),
    ("fifty cubic feet per minute", "50", CFM), ("two fifty cfh", "250", CFH), ("two hundred fifty cubic feet per hour", "250", CFH),
    ("forty thousand btu", "40000", BTU), ("a hundred thousand btu", "100000", BTU), ("eighty thousand b t u", "80000", BTU),
    ("thirty six thousand btus an hour", "36000", BTU), ("seventy five thousand btuh", "75000", BTU), ("three ton", "3", TON),
    ("three and a half ton", "3.5", TON), ("two and a half tons", "2.5", TON), ("a five ton unit", "5", TON),
    ("nine parts per million", "9", PPM), ("zero ppm", "0", PPM), ("thirty five p p m", "35", PPM), ("zero parts", "0", PPM),
    ("four point one picocuries per liter", "4.1", "pCi/L"), ("half horse", "0.5", HP), ("one horsepower", "1", HP),
    ("three quarter horse", "0.75", HP),
    # water
    ("fifty gallon", "50", GAL), ("a forty gallon tank", "40", GAL), ("50 gal", "50", GAL), ("thirty two gallons", "32", GAL),
    ("two point five gallons per minute", "2.5", GPM), ("seven gallons a minute", "7", GPM), ("five gpm", "5", GPM),
    ("a gallon and a half", "1.5", GAL), ("one point six gallon", "1.6", GAL), ("seven and a half a minute", "7.5", GPM),
    # electricity
    ("a hundred and twenty volts", "120", "V"), ("1 20 volts", "120", "V"), ("120v", "120", "V"), ("two forty volts", "240", "V"),
    ("one twenty one point four volts", "121.4", "V"), ("two oh eight volts", "208", "V"), ("hundred amp panel", "100", "A"),
    ("two hundred amp main", "200", "A"), ("a twenty amp breaker", "20", "A"), ("twenty amp", "20", "A"), ("15a breaker", "15", "A"),
    ("one fifty amp service", "150", "A"), ("one twenty five amp", "125", "A"), ("six milliamps", "6", "mA"), ("five ohms", "5", "Ohm"),
    ("point two ohms", "0.2", "Ohm"), ("half an ohm", "0.5", "Ohm"), ("fifteen hundred watts", "1500", "W"), ("five kilowatt", "5", "kW"),
    ("two twenty amp breakers", "2", None), ("one thirty amp breaker", "30", "A"), ("two 30 amp breakers", "2", None),
    # moisture and the like
    ("nineteen percent", "19", "%"), ("nine per cent", "9", "%"), ("9%", "9", "%"), ("a hundred percent", "100", "%"),
    ("pinned at forty percent", "40", "%"), ("about thirty percent", "30", "%"), ("fourteen point five percent", "14.5", "%"),
    ("eighty five decibels", "85", "dB"),
    # areas, times and ages
    ("four hundred square feet", "400", "[sft_i]"), ("twelve fifty square feet", "1250", "[sft_i]"), ("2,400 sq ft", "2400", "[sft_i]"),
    ("about fifteen years old", "15", "a"), ("thirty years", "30", "a"), ("twenty five milliseconds", "25", "ms"),
    ("ten minutes", "10", "min"), ("half an hour", "0.5", "h"), ("two hours", "2", "h"),
    # years
    ("nineteen seventy eight", "1978", None), ("twenty twelve", "2012", None), ("two thousand eight", "2008", None),
    ("two thousand and six", "2006", None), ("twenty oh six", "2006", None), ("nineteen oh five", "1905", None),
    ("twenty twenty one", "2021", None), ("2 thousand 8", "2008", None), ("1994", "1994", None), ("nineteen hundred", "1900", None),
    ("oh eight twenty fifteen", "2015", None), ("eighteen ninety", "1890", None),
    # bare numbers, lots and counts
    ("six of the eight", "6", None), ("two of them", "2", None), ("all three of 'em", "3", None), ("a dozen shingles", "12", None),
    ("half a dozen nails", "6", None), ("two dozen nails", "24", None), ("a couple of shingles", "2", None), ("two to three", "2", None),
    ("a couple hundred", "200", None), ("point four", "0.4", None), ("twelve hundred", "1200", None), ("two by six", "2", None),
]  # fmt: skip


@pytest.mark.parametrize(("text", "value", "unit"), TABLE)
def test_a_phrase_of_the_table(text: str, value: str, unit: str | None) -> None:
    found = quantities(said(text))
    assert found, text
    if unit is None:
        assert found[0].value == Decimal(value)
        return
    hit = [q for q in found if (q.value, q.unit) == (Decimal(value), unit)]
    assert hit, found
    assert known(unit)


def test_the_table_is_long_enough() -> None:
    assert len({text for text, _, _ in TABLE}) >= 150


@pytest.mark.parametrize(
    ("text", "value", "unit"),
    [
        ("two no three feet", "3", FT), ("sixteen no wait twenty four on center", "24", IN), ("thirty sorry forty gallons", "40", GAL),
        ("twenty percent make that twenty six percent", "26", "%"), ("fifty five i mean sixty five psi", "65", PSI),
        ("two sorry forty volts", "40", "V"), ("six inches actually eight inches", "8", IN), ("ten or rather twelve feet", "12", FT),
        ("nine no scratch that eleven inches", "9", None), ("five scratch that six inches", "6", IN), ("two no three no four feet", "4", FT),
    ],
)  # fmt: skip
def test_a_number_taken_back(text: str, value: str, unit: str | None) -> None:
    found = quantities(said(text))[0]
    assert found.value == Decimal(value)
    if unit:
        assert found.unit == unit
        assert found.retracted is not None


@pytest.mark.parametrize(
    ("text", "low", "high", "unit"),
    [
        ("ten to twelve inches", "10", "12", IN), ("between ten and twelve inches", "10", "12", IN), ("two or three feet", "2", "3", FT),
        ("thirty five to sixty five degrees", "35", "65", F), ("ten to twelve", "10", "12", None), ("four or five", "4", "5", None),
        ("ten inches to twelve inches", "10", "12", IN), ("fifteen to twenty years", "15", "20", "a"),
    ],
)  # fmt: skip
def test_a_range(text: str, low: str, high: str, unit: str | None) -> None:
    (found,) = quantities(said(text))
    assert (found.value, found.high, found.unit) == (Decimal(low), Decimal(high), unit)


@pytest.mark.parametrize(
    ("text", "sizes"),
    [
        ("two by six sixteen on center", (2, 6, None)), ("two by ten", (2, 10, None)), ("2 x 6", (2, 6, None)), ("2x6", (2, 6, None)),
        ("two by twelves", (2, 12, None)), ("sixteen by twenty five by one", (16, 25, 1)), ("4x4", (4, 4, None)), ("twenty by twenty four", (20, 24, None)),
        ("two by twelve", (2, 12, None)),
    ],
)  # fmt: skip
def test_sizes(text: str, sizes: tuple[int, int, int | None]) -> None:
    found = quantities(said(text))[0]
    assert found.form == "pair"
    assert [found.value, found.second, found.third] == [None if size is None else Decimal(size) for size in sizes]


@pytest.mark.parametrize(
    "text",
    ["about ten feet", "around ten feet", "ten feet or so", "pushing ten feet", "just under ten feet", "close to ten feet",
     "right at ten feet", "right around ten feet", "ten feet give or take", "call it ten feet", "maybe ten feet", "ten feet maybe"],
)  # fmt: skip
def test_a_rough_number_says_so(text: str) -> None:
    (found,) = quantities(said(text))
    assert (found.value, found.about) == (Decimal(10), True)


@pytest.mark.parametrize(
    ("text", "inches"), [("beam at six four", 76), ("headroom is six two", 74), ("it is only seven six", 90)]
)
def test_a_height_said_as_two_numbers(text: str, inches: int) -> None:
    (found,) = quantities(said(text))
    assert (found.value, found.unit) == (Decimal(inches), IN)


def test_a_plain_number_is_not_rough() -> None:
    assert not quantities(said("it is ten feet"))[0].about


@pytest.mark.parametrize(
    "text",
    ["the third one", "the second window", "this one is fine", "every other one", "half the nails are missing", "in a minute",
     "quarter round", "a few of them", "per foot", "the inch side", "first thing", "a couple"],
)  # fmt: skip
def test_what_counts_nothing(text: str) -> None:
    assert [q for q in quantities(said(text)) if q.form != "bare" or text != "a couple"] == []


@pytest.mark.parametrize(
    ("text", "year"),
    [("oh nine", 2009), ("eighty six", 1986), ("'94", 1994), ("twelve", 2012), ("oh 8", 2008), ("ninety", 1990), ("twenty one", 2021)],
)  # fmt: skip
def test_a_year_by_its_last_digits(text: str, year: int) -> None:
    assert short_year(said(text), 0) == (len(said(text)), year)


@pytest.mark.parametrize("text", ["five places", "the attic", "oh", ""])
def test_no_year_by_its_last_digits(text: str) -> None:
    assert short_year(said(text), 0) is None
