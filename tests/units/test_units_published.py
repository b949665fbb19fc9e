"""Conversions against NIST Special Publication 811 (2008 edition), Appendix B.8 and B.9.

Factors in bold there are exact; the others are printed to seven figures and are compared to their last digit. The
values were entered from memory of the printed tables and agree with the definitions (inch, pound, gallon, standard
gravity) to which Appendix B traces them.
"""

from decimal import Decimal

import pytest

from witnessmark.units import Quantity, convert, dimension

EXACT = [
    ("[in_i]", "cm", "2.54"),
    ("[ft_i]", "m", "0.3048"),
    ("[yd_i]", "m", "0.9144"),
    ("[mi_i]", "m", "1609.344"),
    ("[mil_i]", "m", "0.0000254"),
    ("[sin_i]", "m2", "0.00064516"),
    ("[sft_i]", "m2", "0.09290304"),
    ("[cin_i]", "L", "0.016387064"),
    ("[cft_i]", "m3", "0.028316846592"),
    ("[gal_us]", "L", "3.785411784"),
    ("[gal_us]", "[cin_i]", "231"),
    ("[lb_av]", "kg", "0.45359237"),
    ("[lbf_av]", "N", "4.4482216152605"),
    ("atm", "Pa", "101325"),
    ("bar", "kPa", "100"),
    ("[Btu_IT]", "J", "1055.05585262"),
    ("Ci", "Bq", "37000000000"),
    ("kW.h", "J", "3600000"),
    ("h", "s", "3600"),
    ("[mi_i]/h", "m/s", "0.44704"),
]
ROUNDED = [
    ("[psi]", "kPa", "6.894757"),
    ("[in_i'H2O]", "Pa", "249.0889"),
    ("[in_i'Hg]", "Pa", "3386.389"),
    ("m[Hg]", "kPa", "133.3224"),
    ("[lbf_av]/[sft_i]", "Pa", "47.88026"),
    ("[lbf_av]/[ft_i]", "N/m", "14.59390"),
    ("[gal_us]/min", "L/s", "0.06309020"),
    ("[cft_i]/min", "L/s", "0.4719474"),
    ("[Btu_IT]/h", "W", "0.2930711"),
    ("12000.[Btu_IT]/h", "W", "3516.853"),
    ("[HP]", "W", "745.6999"),
    ("[sft_i].[degF].h/[Btu_IT]", "m2.K/W", "0.1761102"),
    ("[ft_i]/min", "m/s", "0.00508"),
    ("[gr]/[gal_us]", "mg/L", "17.11806"),
    ("pCi/L", "Bq/m3", "37"),
]
TEMPERATURES = [
    ("32", "[degF]", "Cel", "0"),
    ("212", "[degF]", "Cel", "100"),
    ("-40", "[degF]", "Cel", "-40"),
    ("0", "Cel", "K", "273.15"),
    ("68", "[degF]", "K", "293.15"),
    ("0", "[degF]", "[degR]", "459.67"),
    ("48.889", "Cel", "[degF]", "120.0002"),
    ("9", "[degF]{difference}", "Cel{difference}", "5"),
    ("10", "K{difference}", "[degF]{difference}", "18"),
]


@pytest.mark.parametrize(("unit", "into", "factor"), EXACT)
def test_exact_factors_are_exact(unit: str, into: str, factor: str) -> None:
    assert convert(Quantity(Decimal(1), unit), into).value == Decimal(factor)


@pytest.mark.parametrize(("unit", "into", "factor"), ROUNDED)
def test_rounded_factors_agree_to_the_last_printed_digit(unit: str, into: str, factor: str) -> None:
    printed = Decimal(factor)
    assert convert(Quantity(Decimal(1), unit), into).value.quantize(printed) == printed


@pytest.mark.parametrize(("value", "unit", "into", "expected"), TEMPERATURES)
def test_temperatures_move_their_zero_and_differences_do_not(value: str, unit: str, into: str, expected: str) -> None:
    assert convert(Quantity(Decimal(value), unit), into).value == Decimal(expected)


@pytest.mark.parametrize(
    ("unit", "name"),
    [
        ("[psi]", "pressure"),
        ("[gal_us]/min", "volume flow"),
        ("%", "ratio"),
        ("Cel", "temperature"),
        ("Cel{difference}", "temperature difference"),
        ("V.A", "power"),
        ("V.A/[sft_i]", "power per area"),
        ("m4", "m4"),
        ("W/(m2.K)", "thermal transmittance"),
    ],
)
def test_dimensions(unit: str, name: str) -> None:
    assert dimension(unit) == name
