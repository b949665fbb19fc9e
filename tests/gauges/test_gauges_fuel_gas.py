"""Gas pipe and gas demand: the equations against other libraries, the tables against the equations, each trap."""

from decimal import Decimal
from typing import Any

import fluids
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.optimize import brentq

from witnessmark.gauges import evaluate
from witnessmark.gauges.fuel import INSIDE_DIAMETERS, high_pressure_cfh, low_pressure_cfh, spitzglass_cfh
from witnessmark.gauges.fuel.gas_tables import TABLES, looked_up
from witnessmark.problems import Refusal

_FEW = settings(max_examples=40, deadline=None, database=None)
_INCH, _FOOT, _WATER, _PSI = 0.0254, 0.3048, 249.089, 6894.757
_BIG = [size for size in INSIDE_DIAMETERS if size not in {"1/4", "3/8"}]


def pipe(segments: str, supply: str = "7 inwc", **more: Any) -> Any:
    return evaluate("gas-pipe-capacity", {"segments": segments, "supply_pressure": supply, **more})


@_FEW
@given(st.floats(0.4, 4), st.floats(5, 500), st.floats(0.1, 10), st.floats(1.01, 2))
def test_wider_shorter_or_more_drop_carries_more(d: float, length: float, drop: float, more: float) -> None:
    base = low_pressure_cfh(d, length, drop)
    assert low_pressure_cfh(d * more, length, drop) > base
    assert low_pressure_cfh(d, length * more, drop) < base
    assert low_pressure_cfh(d, length, drop * more) > base
    assert low_pressure_cfh(d, length * more, drop * more) == pytest.approx(base)


@_FEW
@given(st.floats(0.4, 4), st.floats(5, 500), st.floats(0.1, 10))
def test_the_equation_undone_gives_the_diameter_back(d: float, length: float, drop: float) -> None:
    flow = low_pressure_cfh(d, length, drop)
    found = brentq(lambda inside: low_pressure_cfh(inside, length, drop) - flow, 0.1, 10)
    assert found == pytest.approx(d)


@pytest.mark.parametrize("size", _BIG)
@pytest.mark.parametrize("length", [10, 60, 200])
def test_spitzglass_is_the_one_that_fluids_has(size: str, length: float) -> None:
    """fluids writes its constants in SI and takes absolute pressures; the two agree to 3 % (its own rounding, and 60 °F)."""
    d = float(INSIDE_DIAMETERS[size])
    start = 101_325 + 7 * _WATER
    si = fluids.compressible.Spitzglass_low(
        SG=0.6, Tavg=288.706, L=length * _FOOT, D=d * _INCH, P1=start, P2=start - 0.5 * _WATER, Zavg=1, E=1
    )
    assert si * 3600 / _FOOT**3 == pytest.approx(spitzglass_cfh(d, length, 0.5), rel=0.03)


@pytest.mark.parametrize("size", _BIG)
@pytest.mark.parametrize(("supply", "drop"), [(0.25, 0.018), (3.0, 2.0), (10.0, 1.0)])
def test_the_code_equation_lies_near_isothermal_flow_in_steel_pipe(size: str, supply: float, drop: float) -> None:
    """fluids: isothermal flow, Darcy factor, steel of 0.045 mm roughness. The equation is a fit: from 10 % below to 7 %
    above over sizes and pressures, so 11 % is asked.
    """
    d, length = float(INSIDE_DIAMETERS[size]) * _INCH, 60 * _FOOT
    start = 101_325 + supply * _PSI
    density_standard, viscosity = 0.6 * 1.2254, 1.2e-5
    density = density_standard * (start - drop * _PSI / 2) / 101_325
    mass = 0.01
    for _ in range(30):
        speed = mass / density / (3.14159265 / 4 * d**2)
        factor = fluids.friction_factor(Re=density * speed * d / viscosity, eD=0.045e-3 / d)
        mass = fluids.isothermal_gas(rho=density, fd=factor, P1=start, P2=start - drop * _PSI, L=length, D=d)
    flow = mass / density_standard * 3600 / _FOOT**3
    ours = (
        low_pressure_cfh(d / _INCH, 60, drop * _PSI / _WATER)
        if supply < 1.5
        else high_pressure_cfh(d / _INCH, 60, supply, drop)
    )
    assert ours == pytest.approx(flow, rel=0.11)


def test_spitzglass_reads_low_against_the_equation_by_a_quarter_to_a_third() -> None:
    lows = [1 - spitzglass_cfh(0.622, length, 0.5) / low_pressure_cfh(0.622, length, 0.5) for length in (10, 100)]
    assert lows == pytest.approx([0.31, 0.24], abs=0.01)


@pytest.mark.parametrize("key", TABLES)
def test_the_printed_tables_run_by_the_square_root_and_start_below_the_equation(key: tuple[int, str]) -> None:
    sizes = _BIG
    for length, row in TABLES[key].items():
        for size, printed in zip(sizes, row, strict=True):
            by_root = TABLES[key][10][sizes.index(size)] * (10 / length) ** 0.5
            # the 80 ft row of 402.4(7) as printed stands 2 % above the others for the three small sizes
            assert printed == pytest.approx(by_root, rel=0.025)
            if length == 10:
                assert printed < high_pressure_cfh(float(INSIDE_DIAMETERS[size]), length, key[0], float(key[1]))


def test_a_length_between_rows_takes_the_longer_and_beyond_the_last_is_flagged() -> None:
    assert looked_up((2, "1"), "1/2", Decimal("50.01")) == (Decimal(615), 60, False)
    assert looked_up((2, "1"), "1/4", Decimal(10)) is None
    far = pipe("0 cfh, 120ft, 1/2", "2psi")
    assert far["capacity"] < 502
    assert [one.what for one in far.outside_range] == ["length"]


def test_two_and_five_pounds_take_the_table_unless_told_otherwise() -> None:
    assert pipe("0 cfh, 10ft, 1/2", "2psi")["capacity"] == 1510
    assert pipe("0 cfh, 10ft, 1/2", "5psi")["capacity"] == 3190
    assert pipe("0 cfh, 10ft, 1/2", "2psi", method="equation")["capacity"] > 1510
    assert pipe("0 cfh, 10ft, 1/2", "2psi", gas="propane")["rule"] == "high-pressure equation"
    assert pipe("0 cfh, 10ft, 1/4", "2psi")["rule"] == "table"
    assert pipe("0 cfh, 10ft, 1/2", "1.5psi")["rule"] == "high-pressure equation"
    assert pipe("0 cfh, 10ft, 1/2", "1.49psi")["rule"] == "low-pressure equation"


def test_one_length_for_every_segment_and_the_margin_of_each() -> None:
    answer = pipe("180 cfh, 60ft, 3/4, , trunk; 38 cfh, 20ft, 1/2, , heater")
    assert answer["longest"] == 60
    assert answer["short"] == 1
    assert answer["closest"] == "trunk"
    assert answer.table is not None
    capacities = [row[3] for row in answer.table.rows]
    assert capacities == pytest.approx([Decimal("137.4"), Decimal("65.7")], abs=Decimal("0.1"))
    assert answer.verdict.outcome == "beyond"
    close = pipe("138 cfh, 60ft, 3/4")
    assert close.verdict.outcome == "close"


def test_an_inside_diameter_goes_before_the_size_and_one_of_them_is_needed() -> None:
    assert pipe("0 cfh, 10ft, , 0.622in")["capacity"] == pipe("0 cfh, 10ft, 1/2")["capacity"]
    assert pipe("0 cfh, 10ft, , 0.5in")["capacity"] < pipe("0 cfh, 10ft, 1/2")["capacity"]
    with pytest.raises(Refusal) as raised:
        pipe("10 cfh, 10ft")
    assert raised.value.problems[0].number == "WM046"
    with pytest.raises(Refusal) as raised:
        pipe("10 cfh, 10ft, 5/8")
    assert raised.value.problems[0].number == "WM005"


def test_spitzglass_says_what_it_is_and_where_it_ends() -> None:
    answer = pipe("0 cfh, 10ft, 1/2", "2psi", method="Spitzglass")
    assert [one.what for one in answer.outside_range] == ["supply_pressure"]
    assert any("not the code's table" in caution for caution in answer.cautions)


def test_demand_and_the_meter_agree_on_the_same_gas() -> None:
    demand = evaluate("gas-demand", {"appliances": "100000 Btu/h", "heating_value": "1035 [Btu_IT]/[cft_i]"})
    seconds = 3600 / float(demand.value or 0)
    clocked = evaluate(
        "gas-meter-input",
        {
            "dial": "1 cu ft",
            "time": f"{seconds:.9f}s",
            "heating_value": "1035 [Btu_IT]/[cft_i]",
            "plate": "100000 Btu/h",
        },
    )
    assert float(clocked.value or 0) == pytest.approx(100_000, rel=1e-6)
    assert float(clocked["of_plate"]) == pytest.approx(100, rel=1e-6)
    two = evaluate("gas-meter-input", {"dial": "1 cu ft", "time": "36s", "meter_pressure": "2psi"})
    assert float(two.value or 0) == pytest.approx(100_000 * 16.7 / 14.7)


def test_no_appliance_and_no_segment_is_refused() -> None:
    for name, inputs in (
        ("gas-demand", {"appliances": ()}),
        ("gas-pipe-capacity", {"segments": (), "supply_pressure": "7inwc"}),
    ):
        with pytest.raises(Refusal) as raised:
            evaluate(name, inputs)
        assert raised.value.problems[0].number == "WM003"
