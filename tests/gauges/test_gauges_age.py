"""Ages, listed lives and chances: against calendars, SciPy and exact laws, and every refusal."""

import datetime as dt
import math
from decimal import Decimal

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from scipy import stats

from witnessmark.gauges import Answer, evaluate
from witnessmark.gauges.age.calendar_age import made_between, months_between, years_between
from witnessmark.gauges.age.life_range import SOURCE_NAMES, statements
from witnessmark.gauges.age.lives_table import COMPONENTS, LIVES, PUBLISHED
from witnessmark.gauges.age.weibull import Law, fitted, scale_for_mean
from witnessmark.problems import Refusal

DATES = st.dates(dt.date(1900, 1, 1), dt.date(2100, 1, 1))
LAWS = st.builds(Law, st.floats(0.5, 10), st.floats(1, 100), st.floats(0, 20))


def scipy_law(law: Law) -> stats.rv_continuous:
    return stats.weibull_min(law.shape, loc=law.delay, scale=law.scale)


def aged(**given: str) -> Answer:
    return evaluate("part-age", {"today": "2024-06-03", **given})


def refused(name: str, given: dict[str, str], number: str) -> None:
    with pytest.raises(Refusal, match=number):
        evaluate(name, given)


@given(LAWS, st.floats(0, 150), st.floats(0, 50))
def test_survival_and_chances_are_those_of_scipy(law: Law, age: float, ahead: float) -> None:
    # scipy.stats.weibull_min; its survivals, divided, lose digits where few are left, so only above 1e-200.
    other = scipy_law(law)
    assert law.survival(age) == pytest.approx(other.sf(age), rel=1e-9, abs=1e-300)
    assume(other.sf(age + ahead) > 1e-200)
    assert law.next_years(age, ahead) == pytest.approx(1 - other.sf(age + ahead) / other.sf(age), rel=1e-7, abs=1e-12)


@given(LAWS)
def test_mean_median_and_quantiles_are_those_of_scipy(law: Law) -> None:
    other = scipy_law(law)
    assert law.mean() == pytest.approx(other.mean(), rel=1e-9)
    assert law.median() == pytest.approx(other.median(), rel=1e-9)
    for share in (0.01, 0.2, 0.8, 0.999):
        assert law.quantile(share) == pytest.approx(other.ppf(share), rel=1e-9)


@given(st.floats(1, 80), st.floats(1.05, 5), st.floats(0.01, 0.45), st.floats(0.55, 0.99))
def test_a_fitted_law_goes_through_its_two_ages(low: float, times: float, first: float, second: float) -> None:
    law = fitted(low, low * times, first, second)
    other = scipy_law(law)
    assert other.cdf(low) == pytest.approx(first, rel=1e-8)
    assert other.cdf(low * times) == pytest.approx(second, rel=1e-8)


@given(st.floats(0.5, 10), st.floats(1, 100), st.floats(0, 0.9))
def test_scale_and_mean_go_back_and_forth(shape: float, mean: float, early: float) -> None:
    delay = mean * early
    assert Law(shape, scale_for_mean(mean, shape, delay), delay).mean() == pytest.approx(mean, rel=1e-9)


@given(st.floats(1.01, 10), st.floats(1, 100), st.floats(0, 60), st.floats(0.5, 60))
def test_ageing_parts_fail_the_sooner_the_older_they_are(shape: float, scale: float, age: float, older: float) -> None:
    law = Law(shape, scale)
    assert law.next_years(age + older, 5) >= law.next_years(age, 5) - 1e-12
    assert law.next_years(age, 6) >= law.next_years(age, 5) - 1e-12
    fresh = Law(1 / shape, scale)
    assert fresh.next_years(age + older, 5) <= fresh.next_years(age, 5) + 1e-12


@given(st.floats(0, 100), st.floats(1, 100))
def test_a_shape_of_one_does_not_remember(age: float, scale: float) -> None:
    assert Law(1.0, scale).next_years(age, 5) == pytest.approx(1 - math.exp(-5 / scale), rel=1e-9)


def test_nothing_fails_before_its_delay_and_far_hazards_do_not_overflow() -> None:
    late = Law(2.0, 10.0, 15.0)
    assert late.survival(15) == 1
    assert late.next_years(5, 10) == 0
    steep = Law(100.0, 1.0)
    assert steep.next_years(5000, 1) == 1
    assert steep.next_years(5000, 0) == 0
    assert steep.life_from(5000, 0.5) >= 0


@given(LAWS, st.floats(0, 40), st.floats(1e-6, 1))
def test_the_rest_of_a_life_is_the_conditional_quantile(law: Law, age: float, chance: float) -> None:
    assume(law.survival(age) > 1e-6)
    rest = law.life_from(age, chance)
    assert law.survival(age + rest) == pytest.approx(chance * law.survival(age), rel=1e-6) or rest == 0


def test_exactly_one_law_is_asked_for() -> None:
    base = {"age": "10yr", "ahead": "5yr"}
    for more in (
        {},
        {"scale": "15yr"},
        {"shape": "2"},
        {"shape": "2", "scale": "15yr", "mean_life": "15yr"},
        {"parameters": "gas boiler", "shape": "2"},
        {"parameters": "gas boiler", "scale": "2yr"},
    ):
        refused("failure-chance", {**base, **more}, "WM063")
    refused("failure-chance", {**base, "shape": "2", "mean_life": "10yr", "delay": "10yr"}, "WM064")
    refused("life-fit", {"life_low": "20yr", "life_high": "10yr"}, "WM064")
    refused("life-fit", {"life_low": "20yr", "life_high": "20yr"}, "WM064")
    refused("life-fit", {"life_low": "20yr", "life_high": "30yr", "low_share": "90%"}, "WM064")
    refused("life-fit", {"life_low": "20yr", "life_high": "20.01yr"}, "WM065")


def test_a_part_past_nearly_all_lives_is_said_to_be_unlike_them() -> None:
    answer = evaluate("failure-chance", {"age": "60yr", "ahead": "5yr", "parameters": "air-source heat pump"})
    assert any("not like the others" in caution for caution in answer.cautions)


def test_every_answer_about_life_says_that_law_and_client_decide() -> None:
    for name, given_ in (
        ("life-range", {"component": "toilet"}),
        ("life-fit", {"life_low": "20yr", "life_high": "30yr"}),
        ("failure-chance-by-range", {"age": "5yr", "ahead": "5yr", "life_low": "20yr", "life_high": "30yr"}),
        ("remaining-life", {"age": "5yr", "life_low": "20yr"}),
        ("house-outlook", {"parts": "roof, 5yr, 15yr, 25yr"}),
    ):
        assert any("client has asked for it" in caution for caution in evaluate(name, given_).cautions)


@pytest.mark.parametrize(
    ("made", "today", "months"),
    [
        ("2009-04-17", "2024-04-16", 179), ("2009-04-17", "2024-04-17", 180), ("2020-02-29", "2021-02-28", 11),
        ("2020-02-29", "2021-03-01", 12), ("2023-01-31", "2023-02-28", 0), ("2023-01-31", "2023-03-01", 1),
        ("2024-06-03", "2024-06-03", 0),
    ],
)  # fmt: skip
def test_months_are_full_on_the_same_day(made: str, today: str, months: int) -> None:
    assert months_between(dt.date.fromisoformat(made), dt.date.fromisoformat(today)) == months
    assert aged(made=made, today=today)["least_months"] == months


@given(DATES, DATES)
def test_years_agree_with_months_and_days(one: dt.date, other: dt.date) -> None:
    then, now = sorted((one, other))
    years = years_between(then, now)
    assert int(years) == months_between(then, now) // 12
    # Against the mean Gregorian year of 365.2425 days, from which the calendar strays by up to two days and a half.
    assert abs(float(years) * 365.2425 - (now - then).days) < 2.5


@given(DATES, DATES)
def test_a_year_alone_encloses_every_day_of_it(made: dt.date, today: dt.date) -> None:
    assume(made.year < today.year)
    exact = evaluate("part-age", {"made": made, "today": today}).value
    year = evaluate("part-age", {"year": made.year, "today": today})
    assert exact is not None
    assert year.value is not None
    assert year.uncertainty
    assert year.uncertainty.plus_minus
    assert abs(exact - year.value) <= year.uncertainty.plus_minus + Decimal("1e-9")
    assert year["least_months"] <= months_between(made, today) <= year["most_months"]  # type: ignore[operator]  # numbers


@given(st.integers(1900, 2100), st.integers(1, 53))
def test_weeks_are_those_of_the_calendar(year: int, week: int) -> None:
    has_53 = dt.date(year, 12, 28).isocalendar().week == 53
    if week == 53 and not has_53:
        with pytest.raises(Refusal, match="WM061"):
            made_between(None, year, week=week)
        return
    span = made_between(None, year, week=week)
    assert span.first.isocalendar()[:2] == span.last.isocalendar()[:2] == (year, week)
    assert (span.last - span.first).days == 6


def test_ages_are_said_as_they_are_known() -> None:
    assert aged(made="2009-04-17").words == "Made on 2009-04-17: 15 years 1 month old."
    assert aged(year="2009").words == "Made in 2009: between 14 years 5 months and 15 years 5 months old."
    assert aged(year="2009", month="4").words.startswith("Made in April 2009: between 15 years 1 month and")
    assert aged(year="2024").words == "Made in 2024: between less than a month and 5 months old."
    assert aged(year="2023", month="12").value is not None


def test_dates_that_cannot_be_are_refused() -> None:
    refused("part-age", {"made": "2024-06-04", "today": "2024-06-03"}, "WM060")
    refused("part-age", {"year": "2025", "today": "2024-06-03"}, "WM060")
    for given_ in (
        {}, {"made": "2009-04-17", "year": "2009"}, {"year": "2009", "month": "4", "week": "17"},
        {"week": "17"}, {"made": "2009-04-17", "week": "17"},
    ):  # fmt: skip
        refused("part-age", {"today": "2024-06-03", **given_}, "WM062")


@pytest.mark.parametrize("component", COMPONENTS)
def test_no_listed_life_becomes_one_number_without_a_chosen_source(component: str) -> None:
    answer = evaluate("life-range", {"component": component})
    assert answer.value is None
    assert answer.table
    assert len(answer.table.rows) == len(LIVES[component])
    assert len(answer.sources) == len({life.source for life in LIVES[component]})
    for life in LIVES[component]:
        assert life.source in PUBLISHED
        assert 0 < life.low <= (life.high or life.low) <= 100


def test_a_chosen_source_gives_its_own_number_and_shows_the_others() -> None:
    one = evaluate("life-range", {"component": "disposer", "source": "capital needs report"})
    assert one.value == 20
    assert [also.value for also in one.also if also.name.startswith("other")] == ["5 to 7 years", "12 years"]
    assert evaluate("life-range", {"component": "disposer", "source": "lender tables"}).value is None
    refused("life-range", {"component": "disposer", "source": "north-south list"}, "WM066")
    refused("life-range", {"component": "flux capacitor"}, "WM005")


def test_climate_parts_the_source_that_parts_it() -> None:
    given_ = {"component": "asphalt shingle roof", "source": "north-south list"}
    assert evaluate("life-range", {**given_, "climate": "north"})["lowest"] == 20
    assert evaluate("life-range", {**given_, "climate": "south"})["lowest"] == 10
    assert len(statements("asphalt shingle roof", "south")) == 4
    assert set(SOURCE_NAMES.values()) == set(PUBLISHED)


@pytest.mark.parametrize(("age", "where"), [("2yr", "below"), ("11yr", "within"), ("30yr", "past")])
def test_where_an_age_lies_among_the_lives(age: str, where: str) -> None:
    answer = evaluate("life-range", {"component": "storage water heater", "age": age})
    assert str(answer["age_lies"]).startswith(where)


def test_nothing_lies_past_a_life_with_no_end() -> None:
    assert evaluate("life-range", {"component": "toilet", "age": "99yr"})["age_lies"] == "within the span"
    assert (
        "years and more" in evaluate("life-range", {"component": "electrical panel", "source": "lender tables"}).words
    )


def test_bookkeeping_never_falls_below_nought_and_says_what_it_is() -> None:
    answer = evaluate("remaining-life", {"age": "12yr", "life_low": "10yr", "life_high": "15yr"})
    assert (answer.value, answer["least"]) == (Decimal(3), Decimal(0))
    past = evaluate("remaining-life", {"age": "20yr", "life_low": "10yr", "life_high": "15yr"})
    assert past.value == 0
    assert "no defect" in past.words
    assert any("not a prediction" in caution for caution in past.cautions)
    refused("remaining-life", {"age": "12yr", "life_low": "15yr", "life_high": "10yr"}, "WM064")


@settings(max_examples=20, deadline=None)
@given(st.floats(0, 40), st.floats(1, 15))
def test_named_laws_are_wired_to_the_same_formula(age: float, ahead: float) -> None:
    got = evaluate("failure-chance", {"age": f"{age:.3f}yr", "ahead": f"{ahead:.3f}yr", "parameters": "gas boiler"})
    same = evaluate(
        "failure-chance-by-range",
        {"age": f"{age:.3f}yr", "ahead": f"{ahead:.3f}yr", "life_low": "20yr", "life_high": "30yr"},
    )
    assert got.value == same.value
