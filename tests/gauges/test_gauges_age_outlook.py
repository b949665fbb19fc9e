"""The outlook of a house: drawn numbers against exact laws, equal everywhere, and slow houses cut short."""

import math
from decimal import Decimal

import numpy as np
import pytest
from scipy import stats

from witnessmark.gauges import Answer, evaluate
from witnessmark.gauges.age.replacements import RUNS, exact_firsts, runs_for, simulated
from witnessmark.gauges.age.weibull import Law, fitted


def outlook(parts: str, **more: str) -> Answer:
    return evaluate("house-outlook", {"parts": parts, **more})


def test_alike_parts_give_the_binomial_law() -> None:
    # Exact: scipy.stats.binom; and drawn, where lives are so long that no part fails twice in the horizon.
    law, age, years = fitted(25, 35), 20.0, 5
    chance = law.next_years(age, years)
    exact = exact_firsts([chance] * 12)
    assert exact == pytest.approx(list(stats.binom.pmf(range(13), 12, chance)), abs=1e-12)
    (drawn,) = simulated([(law, age)] * 12, [years])
    assert abs(drawn.mean - 12 * chance) < 4 * drawn.error
    assert drawn.error == pytest.approx(math.sqrt(12 * chance * (1 - chance) / RUNS), rel=0.05)
    for bound, share in ((drawn.low, 0.1), (drawn.high, 0.9)):
        assert abs(bound - stats.binom.ppf(share, 12, chance)) <= 1


def test_unlike_parts_give_the_poisson_binomial_law() -> None:
    chances = [0.05, 0.3, 0.7, 0.9]
    exact = exact_firsts(chances)
    # By its generating function, evaluated at the roots of unity (numpy.fft), a way of its own.
    roots = np.exp(2j * np.pi * np.arange(5) / 5)
    values = np.prod([[1 - p + p * root for p in chances] for root in roots], axis=1)
    assert exact == pytest.approx(list(np.real(np.fft.fft(values)) / 5), abs=1e-12)
    assert sum(exact) == pytest.approx(1)


def test_renewed_parts_follow_the_renewal_equation() -> None:
    # m(t) = F(t) + integral of m(t - x) dF(x), solved on a grid with scipy's law, for a part that is new.
    law = fitted(4, 8)
    other = stats.weibull_min(law.shape, scale=law.scale)
    steps, horizon = 2000, 20
    cdf = other.cdf(np.linspace(0, horizon, steps + 1))
    falls = np.diff(cdf)
    renewals = np.zeros(steps + 1)
    for index in range(1, steps + 1):
        # A life that ends within a step counts with the mean of m at both of its sides; in the first none ends.
        earlier = renewals[:index][::-1]
        middle = (earlier + np.append(earlier[0], earlier[:-1])) / 2
        renewals[index] = cdf[index] + float(np.dot(middle, falls[:index]))
    (drawn,) = simulated([(law, 0.0)], [horizon])
    assert abs(drawn.mean - renewals[-1]) < 4 * drawn.error


def test_firsts_in_the_answer_are_the_sum_of_the_chances() -> None:
    answer = outlook("roof, 14yr, 15yr, 25yr; heater, 9yr, 8yr, 15yr, 2", horizons="10")
    chances = [fitted(15, 25).next_years(14, 10), *[fitted(8, 15).next_years(9, 10)] * 2]
    assert float(Decimal(str(answer["first_10"]))) == pytest.approx(sum(chances), rel=1e-9)
    assert float(Decimal(str(answer["none_10"]))) == pytest.approx(100 * math.prod(1 - c for c in chances), abs=1e-5)
    assert answer.table
    assert [row[0] for row in answer.table.rows] == ["roof", "heater"]


def test_equal_questions_give_equal_answers_and_known_ones() -> None:
    one = outlook("roof, 14yr, 15yr, 25yr; furnace, 12yr, 15yr, 25yr", horizons="5,10")
    two = outlook("roof, 14yr, 15yr, 25yr; furnace, 12yr, 15yr, 25yr", horizons="10,5,5")
    assert one == two
    # Written down from the first run: another machine must draw the same (Mersenne twister, fixed seed).
    assert (one["expected_5"], one["expected_10"]) == (Decimal("0.5575"), Decimal("1.2882"))


def test_longer_horizons_and_older_parts_need_no_fewer() -> None:
    young = outlook("roof, 2yr, 15yr, 25yr; heater, 1yr, 8yr, 15yr")
    old = outlook("roof, 20yr, 15yr, 25yr; heater, 12yr, 8yr, 15yr")
    for name in ("expected", "first", "low", "high"):
        for answer in (young, old):
            values = [Decimal(str(answer[f"{name}_{years}"])) for years in (5, 10, 20)]
            assert values == sorted(values)
        assert Decimal(str(old[f"{name}_5"])) >= Decimal(str(young[f"{name}_5"]))


def test_doubt_about_the_lives_is_shown_beside_the_band() -> None:
    answer = outlook("roof, 5yr, 15yr, 25yr", horizons="10")
    shorter, same, longer = (Decimal(str(answer[f"first_10{end}"])) for end in ("_shorter", "", "_longer"))
    assert shorter > same > longer


def test_houses_of_short_lives_are_drawn_less_often_and_it_is_said() -> None:
    assert runs_for([(Law(2.0, 15.0), 5.0)], 10) == RUNS
    assert runs_for([(Law(2.0, 0.5), 5.0)] * 40, 60) == 500
    answer = outlook("lamp, 0yr, 0.5yr, 1yr, 20", horizons="30")
    assert answer["runs"] == 500
    assert answer.uncertainty
    assert "500 houses" in answer.uncertainty.words


def test_no_parts_need_nothing() -> None:
    assert outlook("").value == 0
