"""Infrared: invariances, round trips, independent quadrature, mistakes not made, each source on its own."""

import math
from decimal import Decimal

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from scipy import constants, integrate

from witnessmark.gauges import evaluate
from witnessmark.gauges.infrared.counts import Curve, air_transmission
from witnessmark.gauges.infrared.planck import band_radiance, band_temperature
from witnessmark.gauges.infrared.surface import Form, apparent_kelvin, emissivity_from, object_kelvin
from witnessmark.gauges.infrared.wall import surface_temperature, u_by_film, u_by_radiation
from witnessmark.problems import Refusal

FEW = settings(max_examples=60, deadline=None, database=None)
FORMS: tuple[Form, ...] = ("graybody", "7.5-14 um", "8-14 um")
KELVIN = st.floats(240, 380)


@FEW
@given(st.floats(230, 420), st.sampled_from([(7.5, 14.0), (8.0, 14.0), (3.0, 5.0)]))
def test_the_planck_integral_is_scipys_quadrature(kelvins: float, band: tuple[float, float]) -> None:
    h, c, k = constants.h, constants.c, constants.k

    def spectral(metres: float) -> float:
        return float(2 * h * c**2 / metres**5 / math.expm1(h * c / (metres * k * kelvins)))

    theirs, _ = integrate.quad(spectral, band[0] * 1e-6, band[1] * 1e-6, epsabs=0, epsrel=1e-11)
    ours = band_radiance(kelvins, *band)
    assert ours == pytest.approx(theirs, rel=1e-9)
    back = band_temperature(ours, *band)
    assert back == pytest.approx(kelvins, abs=1e-6)


@FEW
@given(KELVIN, st.floats(0.1, 1), KELVIN, st.sampled_from(FORMS))
def test_forward_and_back(surface: float, e: float, reflected: float, form: Form) -> None:
    seen = apparent_kelvin(surface, e, reflected, form)
    assert seen is not None
    assert object_kelvin(seen, e, reflected, form) == pytest.approx(surface, abs=1e-5)
    assert min(surface, reflected) - 1e-6 <= seen <= max(surface, reflected) + 1e-6


@FEW
@given(KELVIN, KELVIN, st.sampled_from(FORMS), st.floats(0.05, 1))
def test_a_black_body_and_an_even_scene_need_no_correction(at: float, reflected: float, form: Form, e: float) -> None:
    assert object_kelvin(at, 1.0, reflected, form) == pytest.approx(at, abs=1e-6)
    assert object_kelvin(at, e, at, form) == pytest.approx(at, abs=1e-6)


@FEW
@given(KELVIN, KELVIN, st.floats(0.2, 0.9), st.floats(0.01, 0.1), st.sampled_from(FORMS))
def test_the_duller_the_surface_the_smaller_the_correction(
    at: float, tr: float, e: float, more: float, form: Form
) -> None:
    assume(abs(at - tr) > 0.5)
    far, near = object_kelvin(at, e, tr, form), object_kelvin(at, e + more, tr, form)
    if far is not None and near is not None:
        assert abs(far - at) > abs(near - at)


@FEW
@given(st.floats(278, 310), st.floats(-9, 9), st.floats(0.85, 1))
def test_in_buildings_the_graybody_form_is_enough(at: float, apart: float, e: float) -> None:
    """Within 10 K of the reflected temperature and e at least 0.85 the forms differ by less than 0.01 K."""
    one, other = (object_kelvin(at, e, at + apart, form) for form in ("graybody", "7.5-14 um"))
    assert one is not None
    assert other is not None
    assert abs(one - other) < 0.012


def test_temperatures_in_celsius_in_the_fourth_power_would_be_wrong() -> None:
    """M 9.7: 30 °C, 0.95, 20 °C is 30.50 °C; with °C in the fourth power it would be 30.37 °C."""
    wrong = ((30**4 - 0.05 * 20**4) / 0.95) ** 0.25
    right = object_kelvin(303.15, 0.95, 293.15)
    assert right is not None
    assert abs(right - 273.15 - wrong) > 0.1


def test_emissivity_is_not_applied_twice() -> None:
    """A reading taken at 0.95 and to be taken at 0.95 stays what it is; the mistake is shown beside it."""
    same = {"reading": "85F", "emissivity_set": "0.95", "reflected_set": "68F", "emissivity": "0.95",
            "reflected_temperature": "68F"}  # fmt: skip
    answer = evaluate("infrared-recorrection", same)
    assert answer.value is not None
    assert float(answer.value) == pytest.approx(85, abs=1e-6)
    twice = answer["twice_applied"]
    assert isinstance(twice, Decimal)
    assert float(twice) > 85.5


def test_shiny_metal_is_said_to_be_unreliable() -> None:
    shiny = evaluate(
        "infrared-material", {"material": "aluminum foil", "reading": "72F", "reflected_temperature": "68F"}
    )
    assert shiny["reliable"] is False
    assert evaluate("infrared-material", {"material": "wood", "reading": "72F", "reflected_temperature": "68F"})[
        "reliable"
    ]


@FEW
@given(st.floats(270, 330), st.floats(270, 330), st.floats(0.2, 0.98))
def test_tape_gives_back_the_emissivity(surface: float, reflected: float, e: float) -> None:
    assume(abs(surface - reflected) > 2)
    seen = apparent_kelvin(surface, e, reflected)
    assert seen is not None
    assert emissivity_from(seen, surface, reflected) == pytest.approx(e, abs=1e-6)


@FEW
@given(st.floats(250, 400))
def test_counts_go_back_to_their_temperature(kelvins: float) -> None:
    curve = Curve(r1=21106.77, r2=0.012545258, b=1501, f=1, o=-7340)
    counts = curve.counts(kelvins)
    assert counts is not None
    assert curve.kelvins(counts) == pytest.approx(kelvins, abs=1e-6)


@FEW
@given(st.floats(0, 50), st.floats(-10, 40), st.floats(0.05, 1), st.floats(1.01, 3))
def test_more_air_lets_less_through(metres: float, celsius: float, humidity: float, more: float) -> None:
    assert 0 < air_transmission(metres * more, celsius, humidity) <= air_transmission(metres, celsius, humidity) <= 1


@FEW
@given(st.floats(15, 25), st.floats(-20, 5), st.floats(0.1, 2.5))
def test_u_value_and_surface_temperature_are_inverse(inside: float, outside: float, u: float) -> None:
    surface = surface_temperature(inside, outside, u, 0.13)
    assert u_by_film(inside, surface, outside, 0.13) == pytest.approx(u, rel=1e-9)
    assert u_by_radiation(inside, surface, outside, emissivity=0.9, reflected=inside) == pytest.approx(u, rel=0.12)


def test_one_pixel_is_not_a_measurement_and_degrees_are_not_milliradians() -> None:
    """M 9.8: 25° over 320 pixels is 1.364 mrad; the measurable spot is three pixels wide."""
    answer = evaluate("infrared-spot", {"distance": "1m", "field_of_view": "25deg", "pixels": "320"})
    pixel, spot = answer["pixel_by_angle"], answer["spot_by_angle"]
    assert isinstance(pixel, Decimal)
    assert isinstance(spot, Decimal)
    assert float(spot) == pytest.approx(3 * float(pixel))
    assert float(pixel) == pytest.approx(1.364, abs=0.001)


def test_one_source_met_does_not_make_up_for_another() -> None:
    answer = evaluate("infrared-scan-conditions", {
        "inside_temperature": "20Cel", "outside_temperature": "8Cel", "hours_held": "4h", "hours_since_sun": "12h",
        "wind": "4m/s", "dry_hours": "24h", "wall": "light frame",
    })  # fmt: skip
    assert (answer["ashrae_101"], answer["astm_c1060"], answer["en_13187_practice"]) == ("met", "met", "not met")


def test_a_five_degree_survey_is_near_the_noise() -> None:
    poor = {"u_without": "0.6W/(m2.K)", "u_with": "0.3W/(m2.K)", "noise": "0.1K"}
    near = evaluate("insulation-contrast", {**poor, "temperature_difference": "5K difference"})
    clear = evaluate("insulation-contrast", {**poor, "temperature_difference": "20K difference"})
    assert near["against_noise"] != clear["against_noise"]


@pytest.mark.parametrize(
    ("name", "given_"),
    [
        ("infrared-correction", {"reading": "86F", "emissivity": "0", "reflected_temperature": "68F"}),
        ("infrared-correction", {"reading": "86F", "emissivity": "1.2", "reflected_temperature": "68F"}),
        ("infrared-material", {"material": "velvet", "reading": "86F", "reflected_temperature": "68F"}),
        ("infrared-spot", {"distance": "1m", "field_of_view": "25", "pixels": "320"}),
    ],
)
def test_what_cannot_be_is_refused(name: str, given_: dict[str, str]) -> None:
    with pytest.raises(Refusal):
        evaluate(name, given_)
