"""Hoods, dryers, ventilation and the heat of moving air: editions at their edges, air against a reference library."""

import math
from decimal import Decimal
from typing import Any

import psychrolib
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from witnessmark.gauges import Answer, evaluate
from witnessmark.gauges.fuel import (
    area_rate,
    enthalpy,
    expected_split,
    humidity_ratio,
    metric_rate,
    normalized_leakage,
    saturation_psi,
    table_2010,
    table_2013,
)
from witnessmark.gauges.fuel.moist_air import pressure_at
from witnessmark.problems import Refusal

_FEW = settings(max_examples=60, deadline=None, database=None)
#: ASHRAE 62.2 Table 4.1a as printed in a copy: each band of 500 ft2, bedrooms 1 to 5.
PRINTED = (
    (30, 38, 45, 53, 60), (45, 53, 60, 68, 75), (60, 68, 75, 83, 90), (75, 83, 90, 98, 105), (90, 98, 105, 113, 120),
    (105, 113, 120, 128, 135), (120, 128, 135, 143, 150), (135, 143, 150, 158, 165), (150, 158, 165, 173, 180),
    (165, 173, 180, 188, 195),
)  # fmt: skip


@pytest.fixture(autouse=True)
def _inch_pound() -> None:
    """The library keeps one unit system for the whole process; other tests may have set the other."""
    psychrolib.SetUnitSystem(psychrolib.IP)


def refused(name: str, **given: Any) -> str:
    with pytest.raises(Refusal) as raised:
        evaluate(name, given)
    return raised.value.problems[0].number


def outcome(answer: Answer) -> str:
    assert answer.verdict is not None
    return answer.verdict.outcome


@_FEW
@given(st.floats(-40, 140))
def test_saturation_is_psychrolibs(fahrenheit: float) -> None:
    assert saturation_psi(fahrenheit) == pytest.approx(psychrolib.GetSatVapPres(fahrenheit), rel=1e-4)


@_FEW
@given(st.floats(33, 130), st.floats(0, 1), st.floats(0, 10_000))
def test_moisture_and_enthalpy_are_psychrolibs(dry: float, share: float, altitude: float) -> None:
    """psychrolib clips at 1e-7; the two agree to 1e-4 wherever air holds moisture at all."""
    pressure = psychrolib.GetStandardAtmPressure(altitude)
    assert pressure_at(altitude) == pytest.approx(pressure, rel=1e-4)
    wet = 32.5 + share * (dry - 32.5)
    ours = humidity_ratio(dry, wet, pressure)
    if ours < 1e-5:
        return
    assert ours == pytest.approx(psychrolib.GetHumRatioFromTWetBulb(dry, wet, pressure), rel=1e-3, abs=1e-6)
    assert enthalpy(dry, ours) == pytest.approx(psychrolib.GetMoistAirEnthalpy(dry, ours), rel=1e-6)


@pytest.mark.parametrize(
    ("dry", "wet", "percent"), [(75, 63, 51.6), (80, 67, 51.1), (70, 58, 48.3), (72, 60, 49.7), (78, 65, 49.9)]
)
def test_humidity_of_the_states_that_cooling_is_judged_by(dry: float, wet: float, percent: float) -> None:
    """Computed with psychrolib 2.5.0."""
    ratio = humidity_ratio(dry, wet)
    vapour = ratio / (0.621945 + ratio) * 14.696
    assert vapour / saturation_psi(dry) * 100 == pytest.approx(percent, abs=0.1)


def test_heat_keeps_its_sign_and_thin_air_carries_less() -> None:
    cooling = evaluate("air-heat", {"airflow": "1000 cfm", "entering": "75F", "leaving": "55F"})
    heating = evaluate("air-heat", {"airflow": "1000 cfm", "entering": "55F", "leaving": "75F"})
    assert cooling.value == -(heating.value or 0)
    high = evaluate("air-heat", {"airflow": "1000 cfm", "entering": "75F", "leaving": "55F", "altitude": "5280ft"})
    assert float(high.value or 0) / float(cooling.value or 1) == pytest.approx(0.823, abs=0.003)


def test_bulbs_that_cannot_occur_together_are_refused() -> None:
    heat = {"airflow": "1000 cfm", "entering": "75F", "leaving": "55F"}
    assert refused("air-heat", **heat, entering_wet="76F", leaving_wet="54F") == "WM044"
    assert refused("air-heat", **heat, entering_wet="35F", leaving_wet="54F") == "WM044"
    assert refused("air-heat", **heat, entering_wet="65F") == "WM046"
    assert refused("cooling-split", return_dry="70F", return_wet="71F") == "WM044"
    assert refused("cooling-split", return_dry="110F", return_wet="40F") == "WM044"


@_FEW
@given(st.floats(70, 84), st.floats(54, 70), st.floats(0.5, 5))
def test_wetter_air_lowers_the_split_by_about_eight_tenths_a_degree(dry: float, wet: float, more: float) -> None:
    fall = (expected_split(dry, wet) - expected_split(dry, wet + more)) / more
    assert 0.6 < fall < 0.9
    assert expected_split(dry + more, wet) > expected_split(dry, wet)


def test_cooling_is_a_check_of_plausibility_and_not_below_65() -> None:
    answer = evaluate("cooling-split", {"return_dry": "75F", "return_wet": "63F", "supply": "50F", "outdoors": "60F"})
    assert answer.verdict is None
    assert "too cold outdoors" in answer.words
    assert [one.what for one in answer.outside_range] == ["outdoors"]
    assert any("memory" in caution for caution in answer.cautions)
    assert "higher than expected" in answer.words


@pytest.mark.parametrize(
    ("supply", "expected"), [("118F", "within"), ("134F", "close"), ("140F", "beyond"), ("95F", "beyond")]
)
def test_rise_against_the_plate(supply: str, expected: str) -> None:
    plate = {"return_air": "68F", "plate_low": "35F", "plate_high": "65F"}
    assert outcome(evaluate("heating-temperature-rise", {"supply": supply, **plate})) == expected


def test_rise_gives_the_airflow_back_and_refuses_a_plate_read_crosswise() -> None:
    answer = evaluate("heating-temperature-rise", {"supply": "118F", "return_air": "68F", "output": "54000 Btu/h"})
    assert answer["airflow"] == 1000
    assert "not heating" in evaluate("heating-temperature-rise", {"supply": "60F", "return_air": "68F"}).words
    assert (
        refused("heating-temperature-rise", supply="118F", return_air="68F", plate_low="65F", plate_high="35F")
        == "WM047"
    )


def test_hood_by_edition_and_appliance() -> None:
    def hood(edition: str, **more: str) -> Answer:
        return evaluate("range-hood-make-up-air", {"exhaust": "900 cfm", "edition": edition, **more})

    assert [hood(year)["required"] for year in ("2006", "2009", "2015", "2018", "2024")] == [
        False,
        True,
        True,
        True,
        True,
    ]
    assert hood("2015", burner="none")["required"] is True
    assert hood("2018", burner="none")["required"] is False
    assert hood("2015").verdict is None
    assert outcome(hood("2015", make_up="0 cfm")) == "beyond"
    assert outcome(hood("2015", make_up="700 cfm")) == "undecided"
    assert outcome(hood("2015", make_up="900 cfm")) == "within"
    assert "recommended today" in hood("2015", built="1994").words
    assert "Not yet required" in hood("2006").words
    assert hood("2006")["first_edition"] == 2009


def test_a_year_that_is_no_edition_is_refused_with_the_list() -> None:
    with pytest.raises(Refusal) as raised:
        evaluate("range-hood-make-up-air", {"exhaust": "900 cfm", "edition": "2014"})
    problem = raised.value.problems[0]
    assert problem.number == "WM045"
    assert "2012, 2015, 2018" in problem.detail
    assert refused("dryer-duct-length", edition="2010") == "WM045"
    house = {"area": "2000 sq ft", "bedrooms": "3"}
    assert refused("whole-house-ventilation", **house, document="62.2", edition="2012") == "WM045"
    assert refused("whole-house-ventilation", **house, document="residential code", edition="2013") == "WM045"


def test_dryer_edges_are_exact_to_the_inch() -> None:
    bends = {"edition": "2018", "fittings": "6 in smooth 90, 1; 8 in smooth 90, 1"}
    assert outcome(evaluate("dryer-duct-length", {**bends, "length": "31ft 8in"})) == "within"
    assert outcome(evaluate("dryer-duct-length", {**bends, "length": "31ft 8 1/16in"})) == "beyond"


def test_dryer_before_the_table_every_bend_counts_by_its_angle() -> None:
    smooth = {"fittings": "10 in smooth 90, 2"}
    assert evaluate("dryer-duct-length", {**smooth, "edition": "2006"}).value == 15
    assert evaluate("dryer-duct-length", {**smooth, "edition": "2009"}).value == 22
    assert evaluate("dryer-duct-length", {**smooth, "edition": "2012"}).value == 32
    assert evaluate("dryer-duct-length", {"edition": "2012", "fittings": "4 in mitred 90, 9"}).value == 0
    assert refused("dryer-duct-length", length="10ft") == "WM046"
    long = evaluate("dryer-duct-length", {"edition": "2018", "transition": "8ft 1in"})
    assert long["transition_long"] is True
    half = evaluate("dryer-duct-length", {"code": "uniform mechanical", "fittings": "4 in mitred 45, 3"})
    assert half.value == 14
    assert any("45-degree" in caution for caution in half.cautions)


def test_the_printed_ventilation_table_is_the_top_of_each_band() -> None:
    for band, row in enumerate(PRINTED, 1):
        for bedrooms, printed in enumerate(row, 1):
            assert table_2013(Decimal(500 * band), bedrooms) == printed
            assert table_2013(Decimal(500 * band - 499), bedrooms) == printed
    assert table_2013(Decimal(5001), 3) is None
    assert table_2013(Decimal(900), 6) is None


@_FEW
@given(st.integers(300, 5000), st.integers(0, 5))
def test_the_table_never_asks_for_less_than_the_equation_less_its_rounding(area: int, bedrooms: int) -> None:
    table = table_2013(Decimal(area), bedrooms)
    assert table is not None
    assert table >= area_rate(Decimal(area), bedrooms, Decimal("0.03")) - Decimal("0.5")
    assert table_2010(Decimal(area), bedrooms) <= table_2010(Decimal(area + 1500), bedrooms)


def test_feet_and_metres_agree_but_for_their_rounding() -> None:
    for area, bedrooms in ((1000, 2), (2500, 3), (4000, 5)):
        feet = float(area_rate(Decimal(area), bedrooms, Decimal("0.03")))
        assert metric_rate(area * 0.09290304, bedrooms) == pytest.approx(feet * 0.4719474, rel=0.02)


def test_ventilation_beyond_its_table_falls_back_on_the_equation_and_says_so() -> None:
    answer = evaluate(
        "whole-house-ventilation",
        {"area": "6000 sq ft", "bedrooms": "4", "document": "62.2", "edition": "2016", "by": "table"},
    )
    assert answer.outside_range
    assert answer.value == Decimal("217.5")
    early = evaluate(
        "whole-house-ventilation",
        {"area": "2000 sq ft", "bedrooms": "3", "document": "residential code", "edition": "2009"},
    )
    assert early.value is None
    assert early["required"] is False


def test_infiltration_credit_is_capped_when_new_and_shared_when_attached() -> None:
    given = {"airflow": "6000 cfm", "area": "2000 sq ft", "height": "17ft", "weather": "0.6", "required": "90 cfm"}
    assert evaluate("infiltration-credit", given)["fan"] == 0
    new = evaluate("infiltration-credit", {**given, "new": "yes"})
    assert float(new["fan"]) == pytest.approx(30)
    half = evaluate("infiltration-credit", {**given, "airflow": "1500 cfm", "exterior_share": "0.5"})
    assert float(half["credit"]) == pytest.approx(float(half.value or 0) / 2)
    assert math.isclose(normalized_leakage(3000, 2000, 8.2), 2 * normalized_leakage(1500, 2000, 8.2))


@pytest.mark.parametrize(("measured", "expected"), [("60 cfm", "within"), ("48 cfm", "close"), ("30 cfm", "beyond")])
def test_a_fan_is_judged_by_what_it_moves_not_by_its_label(measured: str, expected: str) -> None:
    answer = evaluate("fan-airflow", {"room": "bathroom", "measured": measured, "label": "110 cfm"})
    assert outcome(answer) == expected
    unmeasured = evaluate("fan-airflow", {"room": "bathroom", "label": "110 cfm"})
    assert unmeasured.verdict is None
    assert "no measurement" in unmeasured.words
