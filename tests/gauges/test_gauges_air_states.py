"""States of the air against four independent libraries over whole ranges, and the laws that any of them keeps."""

import importlib
import math
from typing import Any

import psychrolib
import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from witnessmark.gauges import evaluate
from witnessmark.gauges.air import (
    dew_point_celsius,
    dew_point_magnus,
    humidity_from_bulbs,
    pressure_at,
    saturation_iso_13788,
    saturation_pressure,
    water_to_dry_air,
    wet_bulb_celsius,
)
from witnessmark.problems import Refusal

SEA = 101_325.0
TEMPERATURE, HUMIDITY = st.floats(-40, 60), st.floats(0.05, 1)
MODERATE = settings(max_examples=60, deadline=None)


@pytest.fixture(autouse=True)
def units_of_the_reference() -> None:
    """The library keeps one unit system for the whole process; other tests set the other one."""
    psychrolib.SetUnitSystem(psychrolib.SI)


@MODERATE
@given(st.floats(-100, 200))
def test_saturation_pressure_is_psychrolibs(celsius: float) -> None:
    """Same equations: equal to the last digits."""
    assert saturation_pressure(celsius) == pytest.approx(float(psychrolib.GetSatVapPres(celsius)), rel=1e-9)


@MODERATE
@given(TEMPERATURE, HUMIDITY)
def test_dew_point_is_psychrolibs(celsius: float, humidity: float) -> None:
    """psychrolib stops within 0.001 K, and is unsettled where ice and water meet."""
    mine = dew_point_celsius(celsius, humidity)
    assume(abs(mine) > 0.05)
    assert mine == pytest.approx(float(psychrolib.GetTDewPointFromRelHum(celsius, humidity)), abs=0.01)


@MODERATE
@given(TEMPERATURE, HUMIDITY, st.floats(-300, 3000))
def test_wet_bulb_is_psychrolibs(celsius: float, humidity: float, metres: float) -> None:
    """Around 0 °C a wet and an iced bulb can both stand; either library may give either, so that band is left out."""
    pressure = pressure_at(metres)
    mine = wet_bulb_celsius(celsius, humidity, pressure)
    theirs = float(psychrolib.GetTWetBulbFromRelHum(celsius, humidity, pressure))
    assume(abs(mine) > 0.05 and (mine > 0) == (theirs > 0))
    assert mine == pytest.approx(theirs, abs=0.01)


@MODERATE
@given(st.floats(-20, 60), HUMIDITY)
def test_coolprop_agrees(celsius: float, humidity: float) -> None:
    """A real gas: 0.1 K on the dew point, 0.15 K on the wet bulb away from 0 °C, 0.4 to 0.7 % more water."""
    humid = importlib.import_module("CoolProp.HumidAirProp").HAPropsSI
    state = ("T", celsius + 273.15, "P", SEA, "R", humidity)
    assert dew_point_celsius(celsius, humidity) == pytest.approx(humid("D", *state) - 273.15, abs=0.1)
    share = humid("W", *state) / water_to_dry_air(celsius, humidity, SEA)
    assert 1.002 < share < 1.009
    bulb = wet_bulb_celsius(celsius, humidity, SEA)
    if bulb > 0.5:
        assert bulb == pytest.approx(humid("B", *state) - 273.15, abs=0.15)


@settings(max_examples=12, deadline=None)
@given(st.floats(1, 45), st.floats(0.1, 1))
def test_metpy_agrees_above_freezing(celsius: float, humidity: float) -> None:
    """Bolton's formula: 0.15 K on the dew point (over water only); 0.8 K on the wet bulb, which it defines by parcels.

    The wet bulbs part most in hot, dry air: 0.73 K at 45 °C and 10 %, 0.26 K in ordinary rooms (measured).
    """
    dew = dew_point_celsius(celsius, humidity)
    assume(dew > 0.1)
    calc, units = importlib.import_module("metpy.calc"), importlib.import_module("metpy.units").units
    t, h = units.Quantity(celsius, "degC"), units.Quantity(humidity, "dimensionless")
    theirs = calc.dewpoint_from_relative_humidity(t, h)
    assert dew == pytest.approx(float(theirs.m_as("degC")), abs=0.15)
    bulb = calc.wet_bulb_temperature(units.Quantity(SEA, "Pa"), t, theirs)
    assert wet_bulb_celsius(celsius, humidity, SEA) == pytest.approx(float(bulb.m_as("degC")), abs=0.8)


@MODERATE
@given(st.floats(5, 45), st.floats(0.15, 0.95))
def test_pythermalcomfort_agrees_at_sea_level(celsius: float, humidity: float) -> None:
    """Its wet bulb is Stull's fit, good to -1 and +0.65 K; its dew point a Magnus form."""
    library: Any = importlib.import_module("pythermalcomfort.psychrometrics")
    bulb = wet_bulb_celsius(celsius, humidity, SEA)
    assume(bulb > 0)
    assert bulb == pytest.approx(float(library.wet_bulb_tmp(celsius, humidity * 100)), abs=1.05)


@MODERATE
@given(st.floats(-20, 40))
def test_the_standards_short_form_stays_near(celsius: float) -> None:
    assert saturation_iso_13788(celsius) == pytest.approx(saturation_pressure(celsius), rel=0.006)


@MODERATE
@given(TEMPERATURE, st.floats(0.05, 0.99), st.floats(-300, 3000))
def test_dew_point_wet_bulb_and_dry_bulb_stand_in_order(celsius: float, humidity: float, metres: float) -> None:
    dew, bulb = dew_point_celsius(celsius, humidity), wet_bulb_celsius(celsius, humidity, pressure_at(metres))
    assert dew <= bulb + 0.02
    assert bulb <= celsius + 1e-6


@MODERATE
@given(TEMPERATURE, st.floats(0.05, 0.98))
def test_more_humid_air_has_a_higher_dew_point(celsius: float, humidity: float) -> None:
    assert dew_point_celsius(celsius, humidity) < dew_point_celsius(celsius, humidity + 0.01)


@MODERATE
@given(TEMPERATURE)
def test_saturated_air_is_at_its_dew_point_and_wet_bulb(celsius: float) -> None:
    assert dew_point_celsius(celsius, 1) == pytest.approx(celsius, abs=2e-5)
    assert wet_bulb_celsius(celsius, 1, SEA) == pytest.approx(celsius, abs=0.02)


@MODERATE
@given(TEMPERATURE, HUMIDITY, st.floats(-300, 3000))
def test_humidity_comes_back_from_both_bulbs(celsius: float, humidity: float, metres: float) -> None:
    pressure = pressure_at(metres)
    bulb = wet_bulb_celsius(celsius, humidity, pressure)
    assert humidity_from_bulbs(celsius, bulb, pressure) == pytest.approx(humidity, abs=1e-4)


def test_magnus_below_freezing_is_not_the_frost_point() -> None:
    assert dew_point_celsius(0, 0.8) - dew_point_magnus(0, 0.8) == pytest.approx(0.36, abs=0.01)
    assert dew_point_magnus(25, 0.5) == pytest.approx(dew_point_celsius(25, 0.5), abs=0.05)


def test_over_ice_and_over_water_are_said() -> None:
    warm, cold = (evaluate("dew-point", {"temperature": t, "humidity": "50%"}) for t in ("70F", "20F"))
    assert (warm["over"], cold["over"]) == ("water", "ice")
    assert "frost" in cold.words
    weather = evaluate("dew-point", {"temperature": "20F", "humidity": "50%", "humidity_over": "water"})
    assert weather.value is not None
    assert cold.value is not None
    assert weather.value > cold.value


def test_dry_air_has_no_dew_point_and_no_number() -> None:
    assert math.isnan(dew_point_celsius(20, 0))
    for name, more in (("dew-point", {}), ("condensation-margin", {"surface": "50F"})):
        assert evaluate(name, {"temperature": "70F", "humidity": "0%", **more}).value is None


@pytest.mark.parametrize(
    ("name", "given_", "number"),
    [
        ("humidity-from-wet-bulb", {"dry_bulb": "70F", "wet_bulb": "71F"}, "WM015"),
        ("humidity-from-wet-bulb", {"dry_bulb": "75F", "wet_bulb": "20F"}, "WM015"),
        ("humidity-from-wet-bulb", {"dry_bulb": "100 Cel", "wet_bulb": "90 Cel", "pressure": "30 kPa"}, "WM019"),
        ("wet-bulb", {"temperature": "100 Cel", "humidity": "100%", "pressure": "60 kPa"}, "WM019"),
        ("wet-bulb", {"temperature": "70F", "humidity": "50%", "pressure": "90 kPa", "altitude": "10 m"}, "WM006"),
        ("dew-point", {"temperature": "70F", "humidity": "101%"}, "WM006"),
    ],
)
def test_what_cannot_be_is_refused(name: str, given_: dict[str, str], number: str) -> None:
    with pytest.raises(Refusal) as refused:
        evaluate(name, given_)
    assert refused.value.problems[0].number == number


def test_altitude_moves_the_wet_bulb_and_not_the_dew_point() -> None:
    ground, hill = (wet_bulb_celsius(25, 0.5, pressure_at(z)) for z in (0, 1600))
    assert ground - hill > 0.4
    at_pressure = evaluate("wet-bulb", {"temperature": "25 Cel", "humidity": "50%", "pressure": "83.523 kPa"})
    at_height = evaluate("wet-bulb", {"temperature": "25 Cel", "humidity": "50%", "altitude": "1600 m"})
    assert at_pressure.value == pytest.approx(at_height.value)
