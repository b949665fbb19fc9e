"""What is written becomes the quantity it states, or a refusal that shows the right form."""

from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from witnessmark.problems import Refusal
from witnessmark.units import Quantity, convert, dimension, exact, known, parse_quantity, say
from witnessmark.units.names import NAMES


@pytest.mark.parametrize(
    ("text", "value", "unit"),
    [
        ("118F", "118", "[degF]"),
        ("118 °F", "118", "[degF]"),
        ("118 degrees F", "118", "[degF]"),
        ("47.8C", "47.8", "Cel"),
        ("-4F", "-4", "[degF]"),
        ("−4 °C", "-4", "Cel"),
        ("18 °F difference", "18", "[degF]{difference}"),
        ("62psi", "62", "[psi]"),
        ("5 3/4in", "5.75", "[in_i]"),
        ('5 3/4"', "5.75", "[in_i]"),
        ("5-3/4 in.", "5.75", "[in_i]"),
        ("5¾″", "5.75", "[in_i]"),
        ("6'8\"", "80", "[in_i]"),
        ("6’ 8 1/2”", "80.5", "[in_i]"),
        ("6'-8\"", "80", "[in_i]"),
        ("6ft 8in", "80", "[in_i]"),
        ("6 feet and 8 inches", "80", "[in_i]"),
        ("6'", "6", "[ft_i]"),
        ("1/8in", "0.125", "[in_i]"),
        ("19%", "19", "%"),
        ("50gal", "50", "[gal_us]"),
        ("3ppm", "3", "[ppm]"),
        ("150A", "150", "A"),
        ("240V", "240", "V"),
        ("15min", "15", "min"),
        ("1h 30min", "90", "min"),
        ("2 1/2 gal/min", "2.5", "[gal_us]/min"),
        ("2.5 gpm", "2.5", "[gal_us]/min"),
        ("1,850 sq ft", "1850", "[sft_i]"),
        (".5 in w.c.", "0.5", "[in_i'H2O]"),
        ("5 in 12", "5", "[in_i]/[ft_i]"),
        ("5:12", "5", "[in_i]/[ft_i]"),
        ("5/12 pitch", "5", "[in_i]/[ft_i]"),
        ("4.0 pCi/L", "4.0", "pCi/L"),
        ("30 [psi]", "30", "[psi]"),
        ("500 MΩ", "500", "MOhm"),
        ("5 mΩ", "5", "mOhm"),
        ("5 mA", "5", "mA"),
    ],
)
def test_what_inspectors_write(text: str, value: str, unit: str) -> None:
    assert parse_quantity(text) == Quantity(Decimal(value), unit)


@pytest.mark.parametrize(
    ("text", "number"),
    [
        ("", "WM101"),
        ("F", "WM101"),
        ("warm", "WM101"),
        ("1/0 in", "WM101"),
        ("٣ in", "WM101"),
        ("nan F", "WM101"),
        ("9" * 100 + "F", "WM101"),
        ("118", "WM102"),
        ("5/12", "WM102"),
        ("118 furlongs", "WM103"),
        ("47,8C", "WM103"),
        ("1e9999999999 in", "WM103"),
        ("5 in in", "WM103"),
    ],
)
def test_what_cannot_be_read_is_refused_with_the_right_form(text: str, number: str) -> None:
    with pytest.raises(Refusal) as refused:
        parse_quantity(text)
    assert refused.value.problems[0].number == number
    assert "118F" in str(refused.value)


def test_a_near_miss_is_offered_the_unit_meant() -> None:
    with pytest.raises(Refusal, match="did you mean psi"):
        parse_quantity("62 psj")


def test_units_of_other_dimensions_are_refused() -> None:
    for unit, into in [("[psi]", "Cel"), ("Cel", "Cel{difference}"), ("[gal_us]", "[gal_us]/min"), ("A", "V")]:
        with pytest.raises(Refusal) as refused:
            convert(Quantity(Decimal(1), unit), into)
        assert refused.value.problems[0].number == "WM104"
    with pytest.raises(Refusal) as unknown:
        convert(Quantity(Decimal(1), "smoot"), "smoot")
    assert unknown.value.problems[0].number == "WM103"


@pytest.mark.parametrize(
    ("value", "unit", "printed"),
    [
        ("118", "[degF]", "118 °F"),
        ("62", "[psi]", "62 psi"),
        ("5.75", "[in_i]", "5 3/4 in"),
        ("-0.5", "[in_i]", "-1/2 in"),
        ("0.0625", "[in_i]", "1/16 in"),
        ("80", "[in_i]", "80 in"),
        ("0.3", "[in_i]", "0.3 in"),
        ("19", "%", "19 %"),
        ("2.50", "[gal_us]/min", "2.50 gal/min"),
        ("36000", "[Btu_IT]/h", "36,000 Btu/h"),
        ("30", "deg", "30°"),
        ("5", "[in_i]/[ft_i]", "5 in 12"),
        ("4", "1", "4"),
        ("47.77777777777777777777777777777778", "Cel", "47.7778 °C"),
        ("1E+3", "W", "1000 W"),
        ("7", "smoot", "7 smoot"),
    ],
)
def test_printing(value: str, unit: str, printed: str) -> None:
    assert say(Quantity(Decimal(value), unit)) == printed


numbers = st.decimals(min_value=-99_999, max_value=99_999, places=4, allow_nan=False, allow_infinity=False)


@given(numbers, st.sampled_from(sorted(NAMES.keys() - {"1"})))
def test_what_is_printed_reads_back(value: Decimal, unit: str) -> None:
    assert parse_quantity(say(Quantity(value, unit))) == Quantity(value, unit)


@given(numbers, st.sampled_from(sorted(NAMES)), st.sampled_from(sorted(NAMES)))
def test_there_and_back_is_the_same_to_thirty_digits(value: Decimal, unit: str, into: str) -> None:
    quantity = Quantity(value, unit)
    if dimension(unit) != dimension(into):
        with pytest.raises(Refusal):
            convert(quantity, into)
        return
    there = convert(quantity, into)
    assert abs(exact(there, unit) - exact(quantity, unit)) <= (abs(exact(quantity, unit)) + 1000) * 10**-30


@given(st.text(max_size=90))
def test_any_text_is_read_or_refused(text: str) -> None:
    try:
        quantity = parse_quantity(text)
    except Refusal:
        return
    assert known(quantity.unit)
    assert say(quantity)


@given(st.text(alphabet="[]()./0123456789abcdefgGhHikmnstuAVWK%{}'_+-", max_size=30))
def test_any_code_is_known_or_not(code: str) -> None:
    if known(code):
        assert dimension(code)
