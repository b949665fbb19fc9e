"""The representative number of the law: every rule that is held, and its way of counting."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from witnessmark.gauges import evaluate
from witnessmark.gauges.sampling.law_rules import COMPONENTS, JURISDICTIONS, RULES
from witnessmark.gauges.sampling.representative import Place, needed_at, representative_number, still_to_test
from witnessmark.problems import Refusal

FEW = settings(max_examples=60, deadline=None, database=None)


@st.composite
def places(draw: st.DrawFn) -> tuple[Place, ...]:
    made = []
    for name in draw(st.lists(st.sampled_from("abcdefgh"), min_size=1, max_size=6, unique=True)):
        there = draw(st.integers(0, 8))
        tested = draw(st.integers(0, there))
        made.append(Place(name, there, tested, draw(st.integers(0, there - tested))))
    return tuple(made)


@pytest.mark.parametrize(("jurisdiction", "component"), list(RULES))
def test_every_rule_names_its_law_and_answers(jurisdiction: str, component: str) -> None:
    rule = RULES[jurisdiction, component]
    assert jurisdiction in JURISDICTIONS
    assert component in COMPONENTS
    assert rule.source.document
    given_ = {"jurisdiction": jurisdiction, "component": component}
    none = evaluate("representative-number", {**given_, "places": "north,3,0\nsouth,2,0"})
    every = evaluate("representative-number", {**given_, "places": "north,3,3\nsouth,2,2"})
    assert none.sources == (rule.source,)
    assert none.verdict is not None
    assert every.verdict is not None
    if rule.count == "sample":
        assert (none.value, none.verdict.outcome, every.verdict.outcome) == (None, "undecided", "undecided")
        assert none["short"] == "north, south"
    else:
        assert none.value == (5 if rule.count == "each" else 2)
        assert (none.verdict.outcome, every.verdict.outcome) == ("beyond", "within")


@FEW
@given(places())
def test_tests_in_one_place_never_make_up_for_another(rows: tuple[Place, ...]) -> None:
    for count in ("per room", "per side", "each"):
        missing = still_to_test(rows, count)
        assert missing == sum(still_to_test((row,), count) for row in rows)
        assert (missing == 0) == all(row.tested >= needed_at(row, count) for row in rows)
    assert still_to_test(rows, "per room") <= still_to_test(rows, "each")


@FEW
@given(places())
def test_rows_of_one_place_are_added_up(rows: tuple[Place, ...]) -> None:
    split = tuple(
        part
        for row in rows
        for part in (Place(row.place, row.there, row.tested, row.out_of_reach), Place(row.place.upper(), 0, 0))
    )
    whole, parted = (representative_number("Florida", "windows", each) for each in (rows, split))
    assert (whole.value, whole.words, whole.table) == (parted.value, parted.words, parted.table)


def test_a_rule_that_was_not_read_is_not_taken_for_no_rule() -> None:
    answer = evaluate(
        "representative-number", {"jurisdiction": "Texas", "component": "cabinets", "places": "kitchen,9,0"}
    )
    assert answer.value is None
    assert answer.verdict is not None
    assert answer.verdict.outcome == "undecided"
    assert "does not mean" in answer.words


def test_no_chance_is_claimed_for_a_sample_of_the_law() -> None:
    """M 9.20: one in each room is no random draw."""
    answer = evaluate(
        "representative-number", {"jurisdiction": "Florida", "component": "receptacles", "places": "kitchen,6,1"}
    )
    told = " ".join((answer.words, *(one.what for one in answer.also)))
    assert "chance" not in told
    assert "%" not in told


@pytest.mark.parametrize("cells", ["kitchen,3,5", "kitchen,3,0,5", "kitchen,3,2,2"])
def test_more_than_there_are_is_refused(cells: str) -> None:
    with pytest.raises(Refusal) as caught:
        evaluate("representative-number", {"jurisdiction": "Florida", "component": "windows", "places": cells})
    assert caught.value.problems[0].number == "WM025"


def test_none_supposed_bad_is_refused_and_all_but_the_bad_ones_are_certain() -> None:
    with pytest.raises(Refusal) as caught:
        evaluate("number-to-test", {"there": "20", "bad": "0"})
    assert caught.value.problems[0].number == "WM026"
    assert evaluate("number-to-test", {"there": "20", "bad": "3", "chance": "100%"}).value == 18
