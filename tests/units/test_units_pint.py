"""Units beside an independent library: pint 0.24 and later, over ranges of every dimension that the gauges meet."""

from __future__ import annotations

from decimal import Decimal
from typing import Any

import pint
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from witnessmark.units import Quantity, convert, parse_quantity

REGISTRY: Any = pint.UnitRegistry()
#: UCUM code and pint's name; units in one row measure the same.
SAME: tuple[tuple[tuple[str, str], ...], ...] = (
    (("[in_i]", "inch"), ("[ft_i]", "foot"), ("mm", "millimeter"), ("m", "meter"), ("[yd_i]", "yard"), ("[mi_i]", "mile")),
    (("[sft_i]", "foot**2"), ("[sin_i]", "inch**2"), ("m2", "meter**2")),
    (("[gal_us]", "gallon"), ("L", "liter"), ("[cft_i]", "foot**3"), ("[qt_us]", "quart"), ("[cin_i]", "inch**3")),
    (("[psi]", "psi"), ("kPa", "kilopascal"), ("bar", "bar"), ("Pa", "pascal")),
    (("[gal_us]/min", "gallon/minute"), ("L/s", "liter/second"), ("m3/h", "meter**3/hour"), ("[cft_i]/min", "foot**3/minute")),
    (("[Btu_IT]/h", "Btu_it/hour"), ("W", "watt"), ("kW", "kilowatt"), ("[HP]", "horsepower")),
    (("[lb_av]", "pound"), ("kg", "kilogram"), ("[oz_av]", "ounce"), ("[gr]", "grain")),
    (("s", "second"), ("min", "minute"), ("h", "hour"), ("d", "day"), ("a", "year")),
    (("[mi_i]/h", "mile/hour"), ("m/s", "meter/second"), ("[ft_i]/min", "foot/minute"), ("[ft_i]/s", "foot/second")),
    (("[lbf_av]/[sft_i]", "force_pound/foot**2"), ("Pa", "pascal"), ("[psi]", "psi")),
    (("deg", "degree"), ("rad", "radian"), ("mrad", "milliradian")),
    (("%", "percent"), ("[ppm]", "ppm"), ("1", "dimensionless")),
    (("W/(m2.K)", "watt/meter**2/kelvin"), ("[Btu_IT]/(h.[sft_i].[degF])", "Btu_it/hour/foot**2/delta_degF")),
    (("m2.K/W", "meter**2*kelvin/watt"), ("[sft_i].[degF].h/[Btu_IT]", "foot**2*delta_degF*hour/Btu_it")),
    (("Bq/m3", "becquerel/meter**3"), ("pCi/L", "picocurie/liter")),
)  # fmt: skip
#: Columns of water and mercury are left out: pint takes them at 39 or 60 °F, UCUM by convention.
CLOSE = 1e-9
PAIRS = [(one, other) for row in SAME for one in row for other in row if one != other]


@pytest.mark.parametrize(("one", "other"), PAIRS, ids=[f"{a[0]} to {b[0]}" for a, b in PAIRS])
def test_a_unit_is_pints(one: tuple[str, str], other: tuple[str, str]) -> None:
    theirs = REGISTRY.Quantity(1.0, one[1]).to(other[1]).magnitude
    ours = convert(Quantity(Decimal(1), one[0]), other[0]).value
    assert float(ours) == pytest.approx(theirs, rel=CLOSE)


@settings(max_examples=60, deadline=None)
@given(st.decimals(-100, 500, places=3))
def test_temperatures_are_pints(value: Decimal) -> None:
    for code, name in (("[degF]", "degF"), ("Cel", "degC"), ("K", "kelvin")):
        for wanted, called in (("[degF]", "degF"), ("Cel", "degC"), ("K", "kelvin")):
            theirs = REGISTRY.Quantity(float(value), name).to(called).magnitude
            assert float(convert(Quantity(value, code), wanted).value) == pytest.approx(theirs, abs=1e-9)


@pytest.mark.parametrize(
    ("typed", "value", "name"),
    [
        ("118F", 118, "degF"), ("47.8C", 47.8, "degC"), ("62psi", 62, "psi"), ("5 3/4in", 5.75, "inch"),
        ("6'8\"", 80, "inch"), ("1/8in", 0.125, "inch"), ("19%", 19, "percent"), ("2 1/2 gal/min", 2.5, "gallon/minute"),
    ],
)  # fmt: skip
def test_what_an_inspector_types_is_what_pint_calls_it(typed: str, value: float, name: str) -> None:
    codes = dict((*((n, c) for row in SAME for c, n in row), ("degF", "[degF]"), ("degC", "Cel")))
    read = parse_quantity(typed)
    assert (float(read.value), read.unit) == (value, codes[name])
