"""Surfaces: humidity and margin agree with each other; the factor keeps its limits; criteria are chosen by name."""

from decimal import Decimal

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from witnessmark.gauges import Answer, evaluate
from witnessmark.gauges.air import factor_of_surface, surface_for_humidity, surface_humidity_percent
from witnessmark.problems import Refusal

MODERATE = settings(max_examples=60, deadline=None)


@MODERATE
@given(st.floats(5, 35), st.floats(0.1, 1), st.floats(-10, 35))
def test_condensing_by_humidity_and_by_margin_is_the_same(celsius: float, humidity: float, surface: float) -> None:
    dew = surface_for_humidity(celsius, humidity, 1)
    percent = surface_humidity_percent(celsius, humidity, surface)
    if abs(surface - dew) > 1e-3:
        assert (percent > 100) == (surface < dew)


@MODERATE
@given(st.floats(10, 30), st.floats(0.2, 0.9), st.floats(0.7, 1))
def test_the_coldest_surface_stands_at_the_humidity_asked_for(celsius: float, humidity: float, share: float) -> None:
    surface = surface_for_humidity(celsius, humidity, share)
    assert surface_humidity_percent(celsius, humidity, surface) == pytest.approx(100 * share, abs=0.1)


@MODERATE
@given(st.floats(15, 25), st.floats(-20, 5), st.floats(0, 1))
def test_the_factor_does_not_hang_on_the_unit(inside: float, outside: float, share: float) -> None:
    surface = outside + share * (inside - outside)
    american = factor_of_surface(*(1.8 * t + 32 for t in (surface, inside, outside)))
    assert factor_of_surface(surface, inside, outside) == pytest.approx(share)
    assert american == pytest.approx(share)


def factor(**given_: str) -> Answer:
    return evaluate("temperature-factor", {"inside": "20 Cel", "outside": "-5 Cel", **given_})


@pytest.mark.parametrize(
    ("surface", "more", "outcome"),
    [
        ("17 Cel", {"criterion": "DIN 4108-2"}, "within"),
        ("8 Cel", {"criterion": "DIN 4108-2"}, "beyond"),
        ("12.6 Cel", {"criterion": "DIN 4108-2"}, "close"),
        ("12.6 Cel", {"criterion": "BRE offices"}, "within"),
        ("12.6 Cel", {"criterion": "BRE pools"}, "beyond"),
        ("17 Cel", {"criterion": "mould at 80 %", "humidity": "50%"}, "within"),
        ("11 Cel", {"criterion": "mould at 80 %", "humidity": "50%"}, "beyond"),
        ("12 Cel", {"criterion": "condensation at 100 %", "humidity": "50%"}, "within"),
        ("22 Cel", {"criterion": "DIN 4108-2"}, "undecided"),
    ],
)
def test_each_criterion_is_held_by_name(surface: str, more: dict[str, str], outcome: str) -> None:
    answer = factor(surface=surface, **more)
    assert answer.verdict is not None
    assert answer.verdict.outcome == outcome


def test_without_a_criterion_there_is_no_verdict_and_one_set_is_an_indication() -> None:
    answer = factor(surface="15 Cel")
    assert answer.verdict is None
    assert answer["indicative"] is True
    assert answer.table is not None
    assert [row[0] for row in answer.table.rows] == ["DIN 4108-2", "BRE dwellings", "BRE offices", "BRE pools"]
    assert any("0.25" in caution for caution in answer.cautions)


def test_refusals_of_the_factor() -> None:
    for given_, number in (
        ({"surface": "12 Cel", "criterion": "mould at 80 %"}, "WM017"),
        ({"surface": "12 Cel", "outside": "20 Cel"}, "WM018"),
        ({"surface": "12 Cel", "criterion": "my own"}, "WM005"),
    ):
        with pytest.raises(Refusal) as refused:
            factor(**given_)
        assert refused.value.problems[0].number == number
    with pytest.raises(Refusal):
        evaluate("temperature-factor-minimum", {"inside": "20 Cel", "outside": "20 Cel", "humidity": "50%"})


@pytest.mark.parametrize(
    ("outside", "humidity", "words"),
    [
        ("-5 Cel", "90%", "already past"),
        ("15 Cel", "30%", "nothing is asked"),
        ("-5 Cel", "0%", "no surface of a house"),
    ],
)
def test_the_ends_of_the_least_factor_are_told_in_words(outside: str, humidity: str, words: str) -> None:
    answer = evaluate("temperature-factor-minimum", {"inside": "20 Cel", "outside": outside, "humidity": humidity})
    assert words in answer.words


@pytest.mark.parametrize(
    ("surface", "state"), [("40F", "condensing"), ("55F", "humid enough for mould"), ("66F", "drier")]
)
def test_surface_humidity_says_what_it_means(surface: str, state: str) -> None:
    answer = evaluate("surface-humidity", {"temperature": "70F", "humidity": "50%", "surface": surface})
    assert answer["state"] == state
    assert (answer.value is not None and answer.value > 100) == (state == "condensing")


def test_class_falls_to_nothing_in_warm_weather() -> None:
    given_ = {"inside": "24 Cel", "humidity": "60%", "outside_humidity": "50%"}
    warm = evaluate("humidity-class", {**given_, "outside": "21 Cel"})
    assert [one.what for one in warm.outside_range] == ["outside"]
    assert evaluate("humidity-class", {**given_, "outside": "-5 Cel"})["class"] == Decimal(5)
    damp_outside = evaluate("humidity-class", {**given_, "humidity": "20%", "outside": "15 Cel"})
    assert "adds nothing" in damp_outside.words
