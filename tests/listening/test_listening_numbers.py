"""Spoken numbers, quantities and spelled plates, as inspectors say them (common practice, no source)."""

from __future__ import annotations

from decimal import Decimal
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from witnessmark.listening.numerals import numeral
from witnessmark.listening.plates import spelled
from witnessmark.listening.quantities import quantities
from witnessmark.listening.words import phrase
from witnessmark.units import known


@pytest.mark.parametrize(
    ("said", "value"),
    [
        ("a hundred and eighteen", "118"), ("one thirty six", "136"), ("one hundred fifty", "150"), ("a hundred", "100"),
        ("sixty two", "62"), ("nineteen sixty eight", "1968"), ("twenty twelve", "2012"), ("two thousand eight", "2008"),
        ("nineteen oh five", "1905"), ("two oh eight", "208"), ("forty thousand", "40000"), ("fifteen hundred", "1500"),
        ("five and a half", "5.5"), ("five and three quarters", "5.75"), ("seven and three quarters", "7.75"),
        ("an eighth", "0.125"), ("three eighths", "0.375"), ("a quarter", "0.25"), ("half", "0.5"), ("three point five", "3.5"),
        ("one point two five", "1.25"), ("zero point oh five", "0.05"), ("50 8", "58"), ("5 1/2", "5.5"), ("1/8", "0.125"),
        ("3,000", "3000"), ("twelve", "12"), ("one and a half", "1.5"), ("two hundred and six", "206"),
    ],
)  # fmt: skip
def test_a_number_is_read(said: str, value: str) -> None:
    words = phrase(said)
    found = numeral(words, 0)
    assert found is not None
    assert (found.value, found.end) == (Decimal(value), len(words))


@pytest.mark.parametrize("said", ["the third window", "window", "and", "oh my", "12345678901234"])
def test_what_is_no_number(said: str) -> None:
    assert numeral(phrase(said), 0) is None


@pytest.mark.parametrize(
    ("said", "value", "unit"),
    [
        ("got a hundred and eighteen degrees at the supply", "118", "[degF]"), ("was sixty two psi", "62", "[psi]"),
        ("reads nineteen percent", "19", "%"), ("about an eighth of an inch wide", "0.125", "[in_i]"),
        ("five and a half inches apart", "5.5", "[in_i]"), ("half an inch", "0.5", "[in_i]"), ("fifty gallon", "50", "[gal_us]"),
        ("two hundred amp main", "200", "A"), ("two forty volts", "240", "V"), ("six foot four inches", "76", "[in_i]"),
        ("six foot ten", "82", "[in_i]"), ("three parts per million", "3", "[ppm]"), ("118°F", "118", "[degF]"),
        ("9%", "9", "%"), ("5'6\" tall", "66", "[in_i]"), ("sixteen on center", "16", "[in_i]"),
        ("it is a six twelve", "6", "[in_i]/[ft_i]"), ("6/12 pitch", "6", "[in_i]/[ft_i]"), ("three ton", "3", "12000.[Btu_IT]/h"),
        ("four hundred square feet", "400", "[sft_i]"), ("two point five gallons per minute", "2.5", "[gal_us]/min"),
    ],
)  # fmt: skip
def test_a_quantity_is_read(said: str, value: str, unit: str) -> None:
    found = quantities(phrase(said))
    assert (found[0].value, found[0].unit) == (Decimal(value), unit)
    assert known(unit)


def test_a_number_put_right_in_passing_keeps_what_was_taken_back() -> None:
    (found,) = quantities(phrase("meter says twenty three percent no twenty six percent"))
    assert (found.value, found.unit) == (Decimal(26), "%")
    assert found.retracted is not None
    (other,) = quantities(phrase("two no three of the posts"))
    assert (other.value, other.form) == (Decimal(3), "count")


def test_ranges_pairs_and_counts() -> None:
    (ranged,) = quantities(phrase("three to four inches"))
    assert (ranged.value, ranged.high, ranged.unit) == (Decimal(3), Decimal(4), "[in_i]")
    pair, spacing = quantities(phrase("two by six sixteen on center"))
    assert (pair.form, pair.value, pair.second) == ("pair", Decimal(2), Decimal(6))
    assert (spacing.value, spacing.unit) == (Decimal(16), "[in_i]")
    (count,) = quantities(phrase("six of the eight outlets"))
    assert (count.form, count.value, count.second) == ("count", Decimal(6), Decimal(8))


@pytest.mark.parametrize(
    "said", ["this one is fine", "that one", "half the nails are missing", "in a minute", "one has a crack"]
)
def test_a_number_word_that_counts_nothing(said: str) -> None:
    assert quantities(phrase(said)) == []


@pytest.mark.parametrize(
    ("said", "text"),
    [
        ("m i five oh three s six f b n serial", "MI503S6FBN"), ("number is cue jay three six four one nine two two", "QJ3641922"),
        ("n m eighty oh seven five serial", "NM80075"), ("four seven double one k nine two made in", "4711K92"),
        ("alpha bravo one two three", "AB123"), ("CB 4 4 0 dash X", "CB440-X"), ("77A0912", "77A0912"),
        ("number triple nine dash four", "999-4"),
    ],
)  # fmt: skip
def test_a_plate_is_spelled(said: str, text: str) -> None:
    found = spelled(phrase(said), 0)
    assert found is not None
    assert found[2] == text


@pytest.mark.parametrize("said", ["is on the side", "number", "are you there", "a b c", ""])
def test_what_spells_nothing(said: str) -> None:
    assert spelled(phrase(said), 0) is None


WORDS = st.sampled_from(
    [
        "a",
        "an",
        "the",
        "and",
        "of",
        "half",
        "one",
        "two",
        "three",
        "twelve",
        "twenty",
        "thirty",
        "hundred",
        "thousand",
        "point",
        "oh",
        "no",
        "wait",
        "inch",
        "inches",
        "feet",
        "foot",
        "psi",
        "percent",
        "degrees",
        "by",
        "to",
        "or",
        "quarter",
        "eighth",
        "eighths",
        "5",
        "50",
        "8",
        "1/2",
        "5/0",
        "3.5",
        "2012",
        "x",
        "on",
        "center",
        "each",
    ]
)


@given(st.lists(WORDS, max_size=12))
def test_any_run_of_number_words_is_read_in_order(words: list[str]) -> None:
    found = quantities(words)
    assert all(a.end <= b.start for a, b in pairwise(found))
    assert all(0 <= q.start < q.end <= len(words) and q.value.is_finite() for q in found)
    assert all(q.unit is None or known(q.unit) for q in found)
