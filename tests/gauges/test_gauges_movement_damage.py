"""Cracks, strains, leans and bending of walls: order, boundaries, proportions."""

from __future__ import annotations

from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from witnessmark.gauges import evaluate
from witnessmark.gauges.movement import relative_deflection_limit, strain_category, width_category

WIDTH = st.decimals(0, 60, places=3)


@given(WIDTH, WIDTH, st.booleans())
def test_a_wider_crack_never_guides_to_a_lower_category(a: Decimal, b: Decimal, several: bool) -> None:
    assert width_category(min(a, b), several=several) <= width_category(max(a, b), several=several)


@given(st.decimals(0, 2, places=4), st.decimals(0, 2, places=4))
def test_a_larger_strain_never_goes_with_a_lower_category(a: Decimal, b: Decimal) -> None:
    assert strain_category(min(a, b)) <= strain_category(max(a, b))


@given(st.decimals(1, 5, places=3))
def test_hogging_is_allowed_half_of_sagging(proportion: Decimal) -> None:
    """Burland and Wroth 1974, which of the two is sag and which hog recalled."""
    assert relative_deflection_limit(proportion, "hog") * 2 == relative_deflection_limit(proportion, "sag")


@pytest.mark.parametrize("millimetres", ["0.1", "1", "5", "15", "25"])
def test_boundaries_hold_exactly_in_any_unit(millimetres: str) -> None:
    """BRE Digest 251; a boundary typed in inches is exact as well (25.4 mm to the inch)."""
    at, inch = Decimal(millimetres), Decimal("25.4")
    above = evaluate("crack-category", {"width": f"{at + Decimal('0.001')}mm"}).value
    here = evaluate("crack-category", {"width": f"{at}mm"}).value
    assert here is not None
    assert above is not None
    assert above == here + (0 if at == Decimal("0.1") else 1)
    assert evaluate("crack-category", {"width": f"{at / 10}cm"}).value == here
    assert evaluate("crack-category", {"width": "1in"}).value == width_category(inch)


def test_the_words_say_that_width_alone_decides_nothing() -> None:
    """Commonly wrong: the category by width only."""
    answer = evaluate("crack-category", {"width": "20mm"})
    assert "must confirm it" in answer.words
    assert any("Width alone is never enough" in caution for caution in answer.cautions)
    differing = evaluate("crack-category", {"width": "20mm", "repair": "fill"})
    assert differing.value == 2
    assert "alone would guide to 4" in differing.words


def test_a_wall_of_proportions_that_no_limit_covers_gets_no_verdict() -> None:
    answer = evaluate("wall-deflection", {"deflection": "1in", "length": "60ft", "height": "8ft", "shape": "hog"})
    assert answer.verdict is None
    assert [one.what for one in answer.outside_range] == ["length over height"]
    assert "No limit is published" in answer.words


@given(st.decimals("0.01", 20, places=2), st.decimals(2, 60, places=1))
def test_a_lean_is_the_same_in_inches_and_millimetres(offset: Decimal, length: Decimal) -> None:
    inches = evaluate("out-of-plumb", {"offset": f"{offset}in", "length": f"{length}ft"})
    metric = evaluate(
        "out-of-plumb", {"offset": f"{offset * Decimal('25.4')}mm", "length": f"{length * Decimal('304.8')}mm"}
    )
    assert inches.value == metric.value
    assert inches["band"] == metric["band"]


def test_a_floor_joist_limit_is_told_apart_from_the_limit_of_a_foundation() -> None:
    said = " ".join(evaluate("deflection-allowance", {"length": "30ft"}).cautions)
    assert "live load" in said
