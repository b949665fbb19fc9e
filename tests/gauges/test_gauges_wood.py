"""Wood: how moisture content moves with air, meters and resistance; comparisons; the mistakes that must not be made."""

import statistics
from decimal import Decimal

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from witnessmark.gauges import evaluate
from witnessmark.gauges.wood import (
    contrast,
    corrected_for_temperature,
    decay_temperature,
    emc_fahrenheit_form,
    emc_percent,
    humidity_for_emc,
    moisture_by_fit,
    moisture_by_table,
    species_corrected,
)
from witnessmark.gauges.wood.sorption import COLDEST, HOTTEST
from witnessmark.problems import Refusal

MODERATE = settings(max_examples=80, deadline=None)
CELSIUS, HUMIDITY = st.floats(-1, 54), st.floats(0.05, 0.9)


@MODERATE
@given(CELSIUS, HUMIDITY)
def test_wood_takes_up_more_from_more_humid_air(celsius: float, humidity: float) -> None:
    assert emc_percent(celsius, humidity) < emc_percent(celsius, humidity + 0.01)


@MODERATE
@given(st.floats(10, 54), HUMIDITY)
def test_warm_wood_holds_less_at_one_humidity(celsius: float, humidity: float) -> None:
    assert emc_percent(celsius + 1, humidity) < emc_percent(celsius, humidity)


@MODERATE
@given(CELSIUS, HUMIDITY)
def test_both_published_forms_agree(celsius: float, humidity: float) -> None:
    """30 to 130 °F, 5 to 90 %: the two sets are separate fits to one table, 0.05 and 0.06 % off it at most."""
    assert emc_fahrenheit_form(1.8 * celsius + 32, humidity) == pytest.approx(emc_percent(celsius, humidity), abs=0.12)


@MODERATE
@given(CELSIUS, st.floats(0.02, 1))
def test_humidity_comes_back_from_moisture_content(celsius: float, humidity: float) -> None:
    back = humidity_for_emc(celsius, emc_percent(celsius, humidity))
    assert back == pytest.approx(humidity, abs=1e-9)


@MODERATE
@given(st.floats(COLDEST, HOTTEST), st.floats(0, 0.99))
def test_the_equation_rises_wherever_it_is_answered(celsius: float, humidity: float) -> None:
    assert 0 <= emc_percent(celsius, humidity) < emc_percent(celsius, humidity + 0.01) < 30


@pytest.mark.parametrize("temperature", ["-51 Cel", "271F"])
def test_where_the_equation_divides_by_nought_it_is_not_asked(temperature: str) -> None:
    for name, more in (("wood-emc", {"humidity": "50%"}), ("wood-air-humidity", {"moisture": "12%"})):
        with pytest.raises(Refusal) as refused:
            evaluate(name, {"temperature": temperature, **more})
        assert refused.value.problems[0].number == "WM013"


def test_the_formula_written_out_again() -> None:
    """Equation 4-5 as printed, term by term, apart from the code under test."""
    for t in (-1.0, 0.0, 20.0, 54.4):
        for h in (0.05, 0.5, 0.95):
            w, k = 349 + 1.29 * t + 0.0135 * t**2, 0.805 + 0.000736 * t - 0.00000273 * t**2
            k1, k2 = 6.27 - 0.00938 * t - 0.000303 * t**2, 1.91 + 0.0407 * t - 0.000293 * t**2
            top, bottom = k1 * k * h + 2 * k1 * k2 * k**2 * h**2, 1 + k1 * k * h + k1 * k2 * k**2 * h**2
            assert emc_percent(t, h) == pytest.approx(1800 / w * (k * h / (1 - k * h) + top / bottom))


@pytest.mark.parametrize(("humidity", "flagged"), [("90%", False), ("95%", False), ("96%", True), ("100%", True)])
def test_near_fibre_saturation_the_answer_says_so(humidity: str, flagged: bool) -> None:
    answer = evaluate("wood-emc", {"temperature": "70F", "humidity": humidity})
    assert ("saturation" in answer.words or bool(answer.outside_range)) == flagged


@MODERATE
@given(st.floats(8, 24), st.floats(-20, 60))
def test_cold_wood_reads_low_so_the_correction_adds(reading: float, celsius: float) -> None:
    change = corrected_for_temperature(reading, celsius) - reading
    if celsius < 22:
        assert change > 0
    if celsius > 24:
        assert change < 0


def test_temperature_comes_first_and_the_species_second() -> None:
    scale = corrected_for_temperature(15, 5)
    answer = evaluate(
        "wood-meter-correction",
        {
            "reading": "15%",
            "wood_temperature": "5 Cel",
            "species_a": "0.9",
            "species_b": "0.5",
            "species_source": "p. 9",
        },
    )
    assert answer.value == pytest.approx(Decimal(str(species_corrected(scale, 0.9, 0.5))), abs=Decimal("1e-8"))
    assert any("p. 9" in source.document for source in answer.sources)
    assert [step.what for step in answer.steps][1:] == [
        "corrected for the wood's temperature",
        "corrected for the species",
    ]


@pytest.mark.parametrize(
    "given_",
    [
        {"species_a": "0.9"}, {"species_a": "0.9", "species_b": "1"}, {"species_source": "p. 9"},
        {"species_b": "1", "species_source": "p. 9"},
    ],
)  # fmt: skip
def test_half_a_species_is_refused(given_: dict[str, str]) -> None:
    with pytest.raises(Refusal) as refused:
        evaluate("wood-meter-correction", {"reading": "15%", "wood_temperature": "5 Cel", **given_})
    assert refused.value.problems[0].number == "WM011"


@MODERATE
@given(st.floats(0.46, 22_400))
def test_fit_and_table_of_resistance_agree(megohms: float) -> None:
    table = moisture_by_table(megohms)
    assert table is not None
    assert moisture_by_fit(megohms) == pytest.approx(table, abs=0.4)


@MODERATE
@given(st.floats(0.01, 100_000))
def test_less_resistance_is_more_water(megohms: float) -> None:
    assert moisture_by_fit(megohms * 0.9) > moisture_by_fit(megohms)


def test_resistance_follows_the_woods_temperature() -> None:
    cold, warm = (
        evaluate("wood-resistance", {"resistance": "33 megohm", "wood_temperature": t}).value for t in ("30F", "110F")
    )
    assert cold is not None
    assert warm is not None
    assert cold > 14 > warm


@pytest.mark.parametrize(
    ("moisture", "humidity", "state"),
    [
        ("19%", "55%", "wetter than the air explains"),
        ("11%", "55%", "as the air explains"),
        ("6%", "80%", "drier than the air explains"),
    ],
)
def test_wood_is_held_against_its_air(moisture: str, humidity: str, state: str) -> None:
    given_ = {"moisture": moisture, "temperature": "65F", "humidity": humidity}
    assert evaluate("wood-against-air", given_)["state"] == state


def test_poorer_instruments_decide_less() -> None:
    given_ = {"moisture": "13%", "temperature": "65F", "humidity": "55%"}
    assert evaluate("wood-against-air", {**given_, "meter_error": "1%"})["state"] == "wetter than the air explains"
    assert evaluate("wood-against-air", {**given_, "meter_error": "4%"})["state"] == "as the air explains"
    poor = evaluate("wood-against-air", {**given_, "humidity_error": "10%"})
    good = evaluate("wood-against-air", {**given_, "humidity_error": "1%"})
    assert poor.uncertainty is not None
    assert good.uncertainty is not None
    assert (poor.uncertainty.plus_minus or 0) > (good.uncertainty.plus_minus or 0)


def test_air_alone_does_not_explain_more_than_saturation() -> None:
    answer = evaluate("wood-air-humidity", {"temperature": "60F", "moisture": "40%"})
    assert answer.value is None
    assert answer["liquid_water"] is True


READINGS = st.lists(st.decimals(0, 60, places=1), min_size=3, max_size=15)


@MODERATE
@given(st.decimals(0, 99, places=1), READINGS, st.decimals("0.1", 5, places=1))
def test_contrast_is_free_of_order_and_shift(suspect: Decimal, dry: list[Decimal], step: Decimal) -> None:
    here = contrast(suspect, dry, step)
    assert contrast(suspect, dry[::-1], step).z == here.z
    assert contrast(suspect + 7, [each + 7 for each in dry], step).z == here.z
    assert here.spread >= step


def test_one_damp_reference_does_not_hide_the_spot() -> None:
    """Mean and standard deviation of these dry spots would give z = 1.1; median and median deviation tell it apart."""
    dry = [Decimal(each) for each in ("10", "11", "11.5", "12", "40")]
    plain = (Decimal(30) - statistics.mean(dry)) / statistics.stdev(dry)
    assert plain < 2
    assert contrast(Decimal(30), dry, Decimal("0.5")).z > Decimal("3.5")


@pytest.mark.parametrize(
    ("suspect", "dry", "state"),
    [
        ("28%", "11%,11%,11%", "apart from the dry spots"),
        ("12%", "11%,11%,11%", "like the dry spots"),
        ("12.5%", "11%,11%,11%", "doubtful"),
        ("11.4%", "11%,12%,11.5%", "like the dry spots"),
    ],
)
def test_equal_dry_spots_are_given_the_meters_resolution(suspect: str, dry: str, state: str) -> None:
    assert evaluate("moisture-contrast", {"suspect": suspect, "dry": dry})["state"] == state


def test_a_spot_drier_than_the_dry_ones_is_told() -> None:
    assert "may not be dry" in evaluate("moisture-contrast", {"suspect": "5%", "dry": "11%,12%,11.5%"}).words


@pytest.mark.parametrize("dry", ["11%", "11%,12%"])
def test_fewer_than_three_dry_spots_are_refused(dry: str) -> None:
    with pytest.raises(Refusal) as refused:
        evaluate("moisture-contrast", {"suspect": "28%", "dry": dry})
    assert refused.value.problems[0].number == "WM012"


@pytest.mark.parametrize(
    ("moisture", "words"),
    [
        ("10%", "usually holds indoors"), ("17%", "wetter than usual indoors"), ("19.5%", "lumber sold as dry"),
        ("24%", "already there may spread"), ("30%", "spores can begin"), ("35%", "above fibre saturation"),
    ],
)  # fmt: skip
def test_each_threshold_has_its_words(moisture: str, words: str) -> None:
    assert words in evaluate("wood-moisture", {"moisture": moisture}).words


@MODERATE
@given(st.floats(-40, 60))
def test_decay_has_a_window_of_temperature(celsius: float) -> None:
    state = decay_temperature(celsius)
    assert (state == "goes on") == (10 <= celsius <= 35)
    assert (state == "stopped") == (celsius <= 2 or celsius >= 38)
