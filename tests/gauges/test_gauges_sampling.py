"""Sampling: SciPy's hypergeometric distribution, edges, bounds turned round, and the law's own way of counting."""

from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy import stats

from witnessmark.gauges import evaluate
from witnessmark.gauges.sampling.chance import (
    bound_among_many,
    bound_among_so_many,
    chance_among_many,
    chance_of_none,
    smallest_among_many,
    smallest_number,
)
from witnessmark.problems import Refusal

FEW = settings(max_examples=80, deadline=None, database=None)


@st.composite
def cases(draw: st.DrawFn) -> tuple[int, int, int]:
    there = draw(st.integers(1, 300))
    return there, draw(st.integers(0, there)), draw(st.integers(0, there))


@FEW
@given(cases())
def test_the_chance_of_finding_none_is_scipys(case: tuple[int, int, int]) -> None:
    there, bad, tested = case
    assert float(chance_of_none(there, bad, tested)) == pytest.approx(
        float(stats.hypergeom(there, bad, tested).pmf(0)), rel=1e-9, abs=1e-12
    )


@FEW
@given(cases())
def test_more_tests_and_more_bad_ones_find_sooner(case: tuple[int, int, int]) -> None:
    there, bad, tested = case
    none = chance_of_none(there, bad, tested)
    if tested < there:
        assert chance_of_none(there, bad, tested + 1) <= none
    if bad < there:
        assert chance_of_none(there, bad + 1, tested) <= none
    assert chance_of_none(there, 0, tested) == 1
    assert (chance_of_none(there, bad, there) == 0) == (bad > 0)


@FEW
@given(st.integers(1, 150), st.data(), st.sampled_from([Fraction(9, 10), Fraction(19, 20), Fraction(1, 2)]))
def test_the_smallest_number_is_the_smallest(there: int, data: st.DataObject, wanted: Fraction) -> None:
    bad = data.draw(st.integers(1, there))
    needed = smallest_number(there, bad, wanted)
    assert 1 - chance_of_none(there, bad, needed) >= wanted
    assert needed == 0 or 1 - chance_of_none(there, bad, needed - 1) < wanted


@FEW
@given(st.integers(1, 150), st.data())
def test_the_bound_after_none_found_is_the_last_plausible(there: int, data: st.DataObject) -> None:
    tested = data.draw(st.integers(0, there))
    bound = bound_among_so_many(there, tested, Fraction(19, 20))
    assert chance_of_none(there, bound, tested) > Fraction(1, 20)
    assert bound == there - tested or chance_of_none(there, bound + 1, tested) <= Fraction(1, 20)


@FEW
@given(st.floats(0.001, 0.5), st.integers(1, 400))
def test_the_binomial_is_scipys_and_its_bound_turns_it_round(share: float, tested: int) -> None:
    assert chance_among_many(share, tested) == pytest.approx(float(1 - stats.binom(tested, share).pmf(0)), abs=1e-12)
    bound = bound_among_many(tested, 0.95)
    assert chance_among_many(bound, tested) == pytest.approx(0.95, abs=1e-9)
    assert bound == pytest.approx(float(stats.beta(1, tested).ppf(0.95)), rel=1e-9), (
        "Clopper and Pearson 1934, none found"
    )


@FEW
@given(st.floats(0.01, 0.5), st.floats(0.5, 0.99))
def test_the_smallest_among_many(share: float, wanted: float) -> None:
    needed = smallest_among_many(share, wanted)
    assert chance_among_many(share, needed) >= wanted - 1e-12
    assert needed <= 1 or chance_among_many(share, needed - 1) < wanted + 1e-12


def test_the_binomial_for_a_small_house_would_be_wrong() -> None:
    """M 9.20: 20 there, 2 bad, 5 tested: 0.447 without putting back, 0.410 as if from very many."""
    assert 1 - float(chance_of_none(20, 2, 5)) - chance_among_many(0.1, 5) > 0.03


def test_one_in_each_room_is_counted_by_the_poorest_room_and_not_as_a_percentage() -> None:
    """M 9.20: 10 of 12 tested is 83 %, and a room without any is still short of the rule."""
    rooms = "place,there,tested\nkitchen,5,5\nliving room,5,5\nbedroom,2,0"
    answer = evaluate("representative-number", {"jurisdiction": "Florida", "component": "receptacles", "places": rooms})
    assert answer.verdict is not None
    assert answer.verdict.outcome == "beyond"
    assert "bedroom" in answer.words
    assert not any("%" in also.unit for also in answer.also)


@pytest.mark.parametrize("name", ["chance-of-finding", "chance-of-finding-in-many", "number-to-test", "none-found"])
def test_every_chance_says_that_it_is_a_best_case(name: str) -> None:
    from witnessmark.gauges import find

    answer = evaluate(name, find(name).example)
    assert any("random" in caution for caution in answer.cautions)


@pytest.mark.parametrize(
    ("name", "given_"),
    [
        ("chance-of-finding", {"there": "10", "bad": "11", "tested": "5"}),
        ("chance-of-finding", {"there": "10", "bad": "1", "tested": "11"}),
        ("none-found", {"there": "ten", "tested": "1"}),
        ("representative-number", {"jurisdiction": "Florida", "component": "receptacles", "places": "kitchen,3,5"}),
        ("representative-number", {"jurisdiction": "Atlantis", "component": "receptacles", "places": "kitchen,3,3"}),
    ],
)
def test_what_cannot_be_is_refused(name: str, given_: dict[str, str]) -> None:
    with pytest.raises(Refusal):
        evaluate(name, given_)
