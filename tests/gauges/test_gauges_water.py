"""Water: laws of nature hold, independent libraries agree, known mistakes are not made, every rule has both sides."""

import importlib
import math
from decimal import Decimal

import fluids
import numpy as np
import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from witnessmark.gauges import evaluate
from witnessmark.gauges.water import (
    CURVES,
    demand_gpm,
    hazen_williams_psi,
    hot_share,
    least_fall,
    velocity_fps,
)
from witnessmark.gauges.water.demand_curves import GAPS
from witnessmark.gauges.water.density import water_density
from witnessmark.gauges.water.expansion import acceptance
from witnessmark.gauges.water.supply_curve import flow_at_pressure, pressure_at_flow
from witnessmark.problems import Refusal

FEW = settings(max_examples=60, deadline=None, database=None)
GPM, INCH, FOOT, PSI = 6.30901964e-5, 0.0254, 0.3048, 6894.757293


@FEW
@given(st.floats(1, 15), st.floats(0.45, 1.1))
def test_friction_beside_darcy_and_weisbach(flow: float, inside: float) -> None:
    """Smooth pipe at 60 °F by `fluids`: Hazen-Williams with C 150 reads 0 to 12 % under it at 4 to 10 ft/s.

    The source gives 3 to 10 % under for house pipes; slower water in the smallest bore reaches 12 % (measured).
    """
    diameter, rate = inside * INCH, flow * GPM
    speed = rate / (math.pi * diameter**2 / 4)
    assume(1.2 < speed < 3.0)
    reynolds = fluids.Reynolds(V=speed, D=diameter, rho=999.0, mu=1.12e-3)
    factor = fluids.friction_factor(Re=reynolds, eD=0)
    theirs = factor * FOOT / diameter * 999.0 * speed**2 / 2 / PSI
    assert 0.87 < hazen_williams_psi(flow, inside, 150) / theirs < 1.01


@FEW
@given(st.floats(0.5, 40), st.floats(0.3, 3), st.floats(60, 150), st.floats(1.01, 3))
def test_friction_grows_with_flow_and_falls_with_bore_and_smoothness(q: float, d: float, c: float, more: float) -> None:
    loss = hazen_williams_psi(q, d, c)
    assert hazen_williams_psi(q * more, d, c) == pytest.approx(loss * more**1.852)
    assert hazen_williams_psi(q, d * more, c) < loss
    assert hazen_williams_psi(q, d, c * more) < loss
    assert velocity_fps(q * more, d) == pytest.approx(velocity_fps(q, d) * more)


@FEW
@given(st.floats(1, 99))
def test_density_is_coolprops(celsius: float) -> None:
    """Kell's formula and CoolProp's equation of state for water at one atmosphere differ by less than 0.02 kg/m3."""
    theirs = importlib.import_module("CoolProp.CoolProp").PropsSI("D", "T", celsius + 273.15, "P", 101_325, "Water")
    assert water_density(celsius) == pytest.approx(theirs, abs=0.03)


def test_the_density_with_two_digits_exchanged_is_not_ours() -> None:
    """A copy of Kell's formula in circulation has 16.897850e-3 in the divisor: 0.5 kg/m3 low at 60 °C."""
    t = 60.0
    top = water_density(t) * (1 + 16.879850e-3 * t)
    assert water_density(t) - top / (1 + 16.897850e-3 * t) == pytest.approx(0.53, abs=0.02)
    assert water_density(t) == pytest.approx(983.20, abs=0.01), "handbooks print 983.20 (recalled)"


def test_the_worked_example_of_a_tank() -> None:
    """2.0 gal of growth between 80 and 135 psi takes a tank of 5.44 gal (worked example, seen in a copy)."""
    assert 2.0 / acceptance(80, 80, 135) == pytest.approx(5.444, abs=0.001)


@FEW
@given(st.floats(20, 100), st.floats(5, 60), st.floats(10, 100))
def test_a_tank_is_sized_with_absolute_pressures(static: float, above: float, precharge: float) -> None:
    most = static + above
    right = acceptance(static, static, most)
    assert 0 < right < 1
    assert right < 1 - static / most, "gauge pressures would promise more than the tank takes"
    assert acceptance(precharge, static, most) <= right + 1e-12, "a charge equal to the static pressure takes the most"


def test_the_factory_charge_is_not_the_right_charge() -> None:
    given_ = {"volume": "50gal", "cold": "50F", "hot": "140F", "static": "80psi", "most": "135psi"}
    right, factory = (evaluate("expansion-tank", given_ | {"precharge": charge}).value for charge in ("80psi", "40psi"))
    assert right is not None
    assert factory is not None
    assert factory > right * Decimal("1.2")


@FEW
@given(st.floats(100, 160), st.floats(0.1, 10))
def test_hotter_water_burns_sooner(fahrenheit: float, more: float) -> None:
    def seconds(at: float) -> Decimal | None:
        return evaluate("scald-time", {"temperature": f"{at:.3f}F"}).value

    first, later = seconds(fahrenheit), seconds(min(fahrenheit + more, 165))
    if first is not None and later is not None:
        assert later <= first


def test_henriques_integral_at_the_waters_temperature_is_not_used() -> None:
    """P = 3.1e98 1/s, dE/R = 75,000 K: 0.19 s at 60 °C where 5 s were seen, 4.5 h at 44 °C where 6 h were seen."""
    rows = [1 / (3.1e98 * math.exp(-75_000 / (celsius + 273.15))) for celsius in (60, 44)]
    assert rows[0] == pytest.approx(0.19, abs=0.02)
    assert rows[1] / 3600 == pytest.approx(4.5, abs=0.3)
    value = evaluate("scald-time", {"temperature": "60Cel"}).value
    assert value is not None
    assert float(value) > 20 * rows[0]
    assert evaluate("scald-time", {"temperature": "44Cel"}).value is None, (
        "cooler than the tables begin: no time is given"
    )


@FEW
@given(st.floats(113, 155))
def test_the_shortest_table_answers_and_each_is_shown(fahrenheit: float) -> None:
    answer = evaluate("scald-time", {"temperature": f"{fahrenheit:.3f}F"})
    shown = [one.value for one in answer.also if one.unit == "s"]
    assert answer.value is not None
    assert shown
    assert all(isinstance(seconds, Decimal) and answer.value <= seconds + Decimal("1e-6") for seconds in shown)


def test_scald_time_between_rows_goes_by_its_logarithm() -> None:
    """135 °F lies between 130 °F (30 s) and 140 °F (6 s) of CPSC 5098: the geometric mean, not 18 s."""
    cpsc = evaluate("scald-time", {"temperature": "135F"})["cpsc"]
    assert isinstance(cpsc, Decimal)
    assert float(cpsc) == pytest.approx(math.sqrt(30 * 6), rel=1e-6)


@FEW
@given(st.sampled_from(sorted(CURVES)), st.floats(1, 6000), st.floats(1, 2))
def test_demand_grows_and_ends_with_its_curve(curve: str, units: float, more: float) -> None:
    ends = CURVES[curve][0][0], CURVES[curve][-1][0]
    first, second = (demand_gpm(Decimal(repr(u)), curve) for u in (units, units * more))
    gap = GAPS.get(curve, (Decimal(0), Decimal(0)))
    inside = ends[0] <= Decimal(repr(units)) <= ends[1] and not gap[0] < Decimal(repr(units)) < gap[1]
    assert (first is None) == (not inside)
    if first is not None and second is not None:
        assert second >= first
    if first is not None:
        across, up = ([float(point[axis]) for point in CURVES[curve]] for axis in (0, 1))
        theirs = np.interp(units, across, up)
        assert float(first) == pytest.approx(float(theirs)), "NumPy draws the same straight lines"


@FEW
@given(st.integers(5, 1000))
def test_flush_valves_ask_for_no_less_than_tanks_of_the_same_code(units: int) -> None:
    for code in ("IPC E103.3(3)", "NSPC B.5.4"):
        tanks, valves = (demand_gpm(Decimal(units), f"{code}, {form}") for form in ("tanks", "flush valves"))
        assert tanks is None or valves is None or valves >= tanks


def test_the_two_demand_curves_are_never_mixed() -> None:
    answer = evaluate("water-demand", {"units": "10", "curve": "NSPC B.5.4, tanks"})
    assert answer.value == Decimal(8)
    assert answer["by_1"] == Decimal("14.60"), "the other code's curve stands beside it, by its own name"
    with pytest.raises(Refusal) as refused:
        evaluate("water-demand", {"fixtures": "bathtub", "curve": "NSPC B.5.4, flush valves"})
    assert refused.value.problems[0].number == "WM035"


def test_no_line_is_drawn_over_rows_that_were_not_read() -> None:
    """Between 14 and 120 units the copy of NSPC B.5.4 breaks off; the chord there is a fifth below the curve."""
    answer = evaluate("water-demand", {"units": "50", "curve": "NSPC B.5.4, tanks"})
    assert answer.value is None
    assert answer.outside_range
    assert (answer["at_least"], answer["at_most"]) == (Decimal("10.5"), Decimal(49))
    beyond = evaluate("water-demand", {"units": "6000"})
    assert beyond.value is None
    assert "not in the printed curve" in beyond.words


def test_flow_that_runs_on_is_added_after_the_curve() -> None:
    alone, hose = (evaluate("water-demand", {"units": "10"} | more) for more in ({}, {"steady_flow": "5gpm"}))
    assert alone.value is not None
    assert hose.value == alone.value + 5


def test_fixtures_are_added_up_with_their_counts() -> None:
    answer = evaluate("water-demand", {"fixtures": "bathtub, 2; kitchen sink; lavatory, 3"})
    assert answer["units"] == Decimal("2.8") + Decimal("1.4") + Decimal("2.1")
    assert len(answer.steps) == 3


@FEW
@given(st.floats(101, 180), st.floats(33, 80), st.floats(0.01, 0.99))
def test_mixing_keeps_the_heat(hot: float, cold: float, share: float) -> None:
    mixed = share * hot + (1 - share) * cold
    assert hot_share(hot, cold, mixed) == pytest.approx(share, abs=1e-9)


@FEW
@given(st.floats(40, 120), st.floats(0.05, 0.9), st.floats(1, 20), st.floats(0.1, 1.5))
def test_the_supply_curve_goes_through_what_was_read_and_back(
    static: float, part: float, flow: float, share: float
) -> None:
    residual = static * (1 - part)
    assert pressure_at_flow(static, residual, flow, flow) == pytest.approx(residual)
    left = pressure_at_flow(static, residual, flow, flow * share)
    if left < static:
        assert flow_at_pressure(static, residual, flow, left) == pytest.approx(flow * share, rel=1e-6)


@FEW
@given(st.decimals(Decimal("1.25"), 12, places=2), st.sampled_from(["IPC", "IRC", "UPC"]))
def test_larger_drains_may_fall_less(diameter: Decimal, law: str) -> None:
    assert least_fall(diameter + 1, law) <= least_fall(diameter, law)
    assert least_fall(diameter, "UPC") >= least_fall(diameter, "IPC")


@pytest.mark.parametrize(
    ("fall", "outcome"), [("1.5in", "within"), ("1 7/16in", "beyond"), ("0in", "beyond"), ("-1in", "beyond")]
)
def test_a_drain_is_held_exactly_at_its_limit(fall: str, outcome: str) -> None:
    verdict = evaluate("drain-slope", {"diameter": "2in", "law": "IPC", "fall": fall, "run": "6ft"}).verdict
    assert verdict
    assert verdict.outcome == outcome


def test_a_drain_that_rises_says_so() -> None:
    assert "rises" in evaluate("drain-slope", {"diameter": "2in", "fall": "-1in", "run": "6ft"}).words


def test_slow_closing_takes_the_blow_off_water_hammer() -> None:
    """Closing within 2L/a is sudden (0.0237 s for 50 ft of copper); twice as slow halves the blow."""
    pipe = {"material": "copper", "inside_diameter": "0.785in", "wall": "0.045in", "velocity": "8fps", "length": "50ft"}
    sudden, at, slow = (
        evaluate("water-hammer", pipe | {"closing_time": t}).value for t in ("0.01s", "0.0237s", "0.0474s")
    )
    assert sudden is not None
    assert at is not None
    assert slow is not None
    assert float(at) == pytest.approx(float(sudden), rel=0.01)
    assert float(slow) == pytest.approx(float(sudden) / 2, rel=0.02)


@pytest.mark.parametrize(
    ("name", "given_", "number"),
    [
        ("hot-water-share", {"hot": "50F", "cold": "120F", "mixed": "105F"}, "WM033"),
        ("residual-pressure", {"static": "40psi", "residual": "60psi"}, "WM032"),
        ("trap-arm", {"size": "5"}, "WM005"),
        ("flow-by-bucket", {"volume": "0gal", "time": "10s"}, "WM006"),
        ("drain-slope", {"diameter": "2 psi"}, "WM004"),
        ("static-pressure", {"pressure": "62"}, "WM102"),
    ],
)
def test_what_cannot_be_is_refused(name: str, given_: dict[str, str], number: str) -> None:
    with pytest.raises(Refusal) as refused:
        evaluate(name, given_)
    assert refused.value.problems[0].number == number


def test_flow_by_bucket_says_how_unsure_it_is() -> None:
    quick, slow = (evaluate("flow-by-bucket", {"volume": "1gal", "time": t}) for t in ("4s", "40s"))
    assert quick.uncertainty is not None
    assert slow.uncertainty is not None
    assert quick.uncertainty.plus_minus is not None
    assert slow.uncertainty.plus_minus is not None
    assert quick.uncertainty.plus_minus > slow.uncertainty.plus_minus


def test_no_law_asks_for_a_figure_of_flow_or_drainage() -> None:
    words = evaluate("functional-flow", {"running": "2", "seen": "steady", "law": "Texas", "flow": "1.8gpm"}).words
    assert "no law found asks for a figure" in words
    words = evaluate(
        "functional-drainage", {"together": "2", "emptied": "yes", "overflowed": "no", "time": "75s"}
    ).words
    assert "no law found gives a time" in words
