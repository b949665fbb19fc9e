"""Level surveys: invariances, the worked example, what a survey can and cannot tell, refusals."""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from witnessmark.gauges import Answer, evaluate
from witnessmark.gauges.movement import (
    Level,
    Point,
    angular_distortion,
    chords,
    fit,
    floor_contours,
    floor_deflection,
    floor_tilt,
    left_over,
    levels_changed,
    survey,
    worst,
)
from witnessmark.gauges.movement.asking import EXAMPLE
from witnessmark.problems import Refusal
from witnessmark.units import Quantity

#: x and y in feet, height in inches, all in hundredths or whole, so that exact arithmetic is in reach of the tests.
PLACE = st.tuples(st.integers(0, 8), st.integers(0, 8), st.integers(-200, 200))
PLACES = st.lists(PLACE, min_size=4, max_size=14, unique_by=lambda p: p[:2]).filter(
    lambda places: len({p[0] for p in places}) > 1 and len({p[1] for p in places}) > 1
)
GENTLE = settings(max_examples=40, deadline=None, database=None)


def levels(rows: list[tuple[Fraction, Fraction, Fraction]]) -> tuple[Level, ...]:
    def quantity(value: Fraction, unit: str) -> Quantity:
        return Quantity(Decimal(value.numerator) / Decimal(value.denominator), unit)

    return tuple(Level(quantity(x, "[ft_i]"), quantity(y, "[ft_i]"), quantity(z, "[in_i]")) for x, y, z in rows)


def rows(places: list[tuple[int, int, int]]) -> list[tuple[Fraction, Fraction, Fraction]]:
    return [(Fraction(4 * x), Fraction(4 * y), Fraction(z, 100)) for x, y, z in places]


def same(one: Answer, other: Answer) -> bool:
    """The same bending: ratio and, where one chord stands out, its length; to what floats can hold."""
    if one.value is None or other.value is None:
        return one.value is other.value
    return abs(one.value - other.value) < Decimal("1e-10")


@GENTLE
@given(PLACES, st.integers(-30, 30), st.integers(-30, 30), st.integers(-50, 50))
def test_adding_a_plane_changes_the_tilt_by_it_and_bends_nothing(
    places: list[tuple[int, int, int]], a: int, b: int, c: int
) -> None:
    plain = rows(places)
    leaning = [(x, y, z + Fraction(a, 100) * x + Fraction(b, 100) * y + Fraction(c, 100)) for x, y, z in plain]
    assert same(floor_deflection(levels(plain)), floor_deflection(levels(leaning)))
    assert same(angular_distortion(levels(plain)), angular_distortion(levels(leaning)))
    before, after = (fit(survey(levels(one)).points) for one in (plain, leaning))
    if not before.in_line:
        assert (after.a - before.a, after.b - before.b) == (Fraction(a, 100), Fraction(b, 100))


@GENTLE
@given(PLACES)
def test_turning_the_grid_keeps_the_bending_and_the_tilt(places: list[tuple[int, int, int]]) -> None:
    plain = rows(places)
    turned = [
        (x * Fraction(3, 5) - y * Fraction(4, 5), x * Fraction(4, 5) + y * Fraction(3, 5), z) for x, y, z in plain
    ]
    # A quarter of a foot beside the line: no place of a 4 ft grid stands near that bound, on either side.
    beside = Quantity(Decimal("0.25"), "[ft_i]")
    assert same(
        floor_deflection(levels(plain), beside=beside),
        floor_deflection(levels(turned), beside=beside),
    )
    tilts = floor_tilt(levels(plain)).value, floor_tilt(levels(turned)).value
    assert tilts[0] is not None
    assert tilts[1] is not None
    assert abs(tilts[0] - tilts[1]) < Decimal("1e-9")


@GENTLE
@given(PLACES, st.integers(1, 1008))
def test_the_order_of_the_places_does_not_matter(places: list[tuple[int, int, int]], seed: int) -> None:
    plain = rows(places)
    mixed = sorted(plain, key=lambda row: (hash(row) * seed) % 1009)
    for name in (floor_deflection, floor_tilt, angular_distortion):
        one, other = name(levels(plain)), name(levels(mixed))
        assert same(one, other)
        assert one.words == other.words
    one, other = floor_contours(levels(plain)), floor_contours(levels(mixed))
    assert one.value == other.value
    assert one["lines"] == other["lines"]


@GENTLE
@given(PLACES, st.integers(2, 9))
def test_scaling_lengths_and_heights_alike_keeps_every_ratio(places: list[tuple[int, int, int]], by: int) -> None:
    plain = rows(places)
    larger = [(x * by, y * by, z * by) for x, y, z in plain]
    wide = Quantity(Decimal("0.25"), "[ft_i]"), Quantity(Decimal("0.25") * by, "[ft_i]")
    assert same(floor_deflection(levels(plain), beside=wide[0]), floor_deflection(levels(larger), beside=wide[1]))
    assert same(floor_tilt(levels(plain)), floor_tilt(levels(larger)))


def test_metres_and_millimetres_give_what_feet_and_inches_give() -> None:
    feet = "0ft,0ft,0in; 10ft,0ft,-1in; 20ft,0ft,0.5in; 0ft,20ft,1in; 20ft,20ft,0in"
    metric = "0m,0m,0mm; 3.048m,0m,-25.4mm; 6.096m,0m,12.7mm; 0m,6.096m,25.4mm; 6.096m,6.096m,0mm"
    for name in ("floor-tilt", "floor-deflection", "angular-distortion"):
        one, other = evaluate(name, {"readings": feet}), evaluate(name, {"readings": metric})
        assert one.value == other.value
        assert one["places"] == other["places"]


@pytest.mark.parametrize(
    ("row", "want"),
    [
        (0, (-0.1433, -0.0700, 0.1033, 0.0767)),  # C-PF4
        (1, (0.0567, -0.0700, 0.0033, 0.0767)),  # C-PF5
        (2, (0.0567, 0.1300, 0.0033, -0.2233)),  # C-PF6
    ],
)
def test_residuals_of_the_worked_example(row: int, want: tuple[float, ...]) -> None:
    """Worked example of a plane fit (arithmetic): residuals of its three rows, to four places."""
    table = evaluate("floor-tilt", {"readings": EXAMPLE}).table
    assert table is not None
    have = [float(line[4]) for line in table.rows[4 * row : 4 * row + 4]]
    assert have == pytest.approx(want, abs=0.00005)


def test_bending_is_found_on_a_diagonal_that_rows_and_columns_do_not_show() -> None:
    """Commonly wrong: only rows and columns looked at."""
    readings = "0ft,0ft,0in; 20ft,20ft,0in; 10ft,10ft,-1in; 20ft,0ft,0in; 0ft,20ft,0in"
    answer = evaluate("floor-deflection", {"readings": readings})
    assert answer["shape"] == "sag"
    assert {answer["at"]} == {"(10, 10) ft"}
    assert float(str(answer["length"])) == pytest.approx(28.2842712, abs=1e-6)


def test_bending_is_found_on_a_line_askew_to_the_grid() -> None:
    readings = "0ft,0ft,0in; 10ft,5ft,1in; 20ft,10ft,0in; 0ft,10ft,0in; 20ft,0ft,0in"
    answer = evaluate("floor-deflection", {"readings": readings, "beside": "0.5ft"})
    assert answer["at"] == "(10, 5) ft"
    assert answer["shape"] == "hog"


def test_a_place_beside_the_line_counts_within_the_tolerance_only() -> None:
    readings = "0ft,0ft,0in; 10ft,0.8ft,1in; 20ft,0ft,0in; 0ft,30ft,0in"
    near = evaluate("floor-deflection", {"readings": readings, "beside": "1ft"})
    far = evaluate("floor-deflection", {"readings": readings, "beside": "0.5ft"})
    assert near.value is not None
    assert far.value is None
    assert "cannot be told" in far.words


def test_a_long_line_surely_beyond_decides_over_a_short_one_in_doubt() -> None:
    """A short chord may have the worst ratio and be all reading error; a long one beyond the limit still decides."""
    readings = "0ft,0in; 1ft,0.1in; 2ft,0in; 15ft,-2in; 30ft,0in"
    answer = evaluate("level-profile", {"readings": readings, "criterion": "Texas Section 2009"})
    assert answer.verdict is not None
    assert answer.verdict.outcome == "beyond"


def test_places_in_one_line_tell_the_slope_along_it_only() -> None:
    answer = evaluate("floor-tilt", {"readings": "0ft,0ft,0in; 10ft,10ft,-1in; 20ft,20ft,-2in"})
    assert answer["in_line"] is True
    assert answer["bearing"] == 45
    assert any("one line" in caution for caution in answer.cautions)
    with pytest.raises(Refusal, match="WM081"):
        evaluate("floor-contours", {"readings": "0ft,0ft,0in; 10ft,10ft,-1in; 20ft,20ft,-2in"})


def test_the_bearing_is_toward_which_the_floor_falls_clockwise_from_north() -> None:
    south = {"readings": "0ft,0ft,-1in; 10ft,0ft,-1in; 0ft,10ft,0in; 10ft,10ft,0in"}
    assert evaluate("floor-tilt", south)["bearing"] == 180
    assert evaluate("floor-tilt", {**south, "north": "30deg"})["bearing"] == 210
    level = evaluate("floor-tilt", {"readings": "0ft,0ft,0in; 10ft,0ft,0in; 0ft,10ft,0in"})
    assert level.value == 0
    assert not [one for one in level.also if one.name == "bearing"]


def test_the_closing_error_is_spread_between_the_returns_to_the_first_place() -> None:
    readings = "0ft,0ft,0in; 10ft,0ft,0.1in; 20ft,0ft,0.2in; 0ft,0ft,0.3in; 0ft,10ft,0.2in; 0ft,0ft,0.1in"
    one = survey(tuple(_levels(readings)))
    assert [point.height for point in one.points] == [0, 0, 0, 0]
    assert one.closing == Fraction(1, 10)
    assert one.returns == 2


def _levels(text: str) -> list[Level]:
    from witnessmark.units import parse_quantity

    cells = [line.split(",") for line in text.split(";")]
    made = [[parse_quantity(cell.strip()) for cell in line] for line in cells]
    return [Level(x, y, reading) for x, y, reading in made]


def test_a_covering_is_taken_off_the_reading_where_it_lies_also_on_a_staff() -> None:
    carpet = "0ft,0ft,0in; 10ft,0ft,0.5in,0.5in; 20ft,0ft,0in; 0ft,10ft,0in"
    assert evaluate("floor-deflection", {"readings": carpet})["deflection"] == 0
    staff = "0ft,0ft,0in; 10ft,0ft,-0.5in,0.5in; 20ft,0ft,0in; 0ft,10ft,0in"
    assert evaluate("floor-deflection", {"readings": staff, "reads": "staff"})["deflection"] == 0


def test_places_read_twice_are_averaged_and_their_difference_is_told() -> None:
    answer = evaluate("floor-tilt", {"readings": "0ft,0ft,0in; 10ft,0ft,1in; 10ft,0ft,1.2in; 0ft,10ft,0in"})
    assert answer["places"] == 3
    assert answer["spread"] == Decimal("0.2")


def test_every_survey_says_that_it_is_a_shape_and_no_movement() -> None:
    """The Texas Section guidelines say so of one survey; slab flatness bounds what can be inferred."""
    for name in ("floor-tilt", "floor-deflection", "floor-contours", "angular-distortion"):
        said = " ".join(evaluate(name, {"readings": EXAMPLE}).cautions)
        assert "does not show that the floor moved" in said
        assert "3/4 in in 10 ft" in said
        assert "specialised equipment" in said


def test_too_few_places_are_refused() -> None:
    for name in ("floor-deflection", "floor-contours", "angular-distortion"):
        with pytest.raises(Refusal, match="WM080"):
            evaluate(name, {"readings": "0ft,0ft,0in; 10ft,0ft,1in; 0ft,0ft,0in"})
    with pytest.raises(Refusal, match="WM080"):
        evaluate("floor-tilt", {"readings": ""})


def test_two_surveys_show_a_change_of_shape_whatever_the_datum() -> None:
    first = "0ft,0ft,0in; 20ft,0ft,0in; 0ft,20ft,0in; 20ft,20ft,0in"
    raised = "0ft,0ft,5in; 20ft,0ft,5in; 0ft,20ft,5in; 20ft,20ft,4in"
    answer = evaluate("levels-changed", {"first": first, "second": raised})
    assert answer.value == 1
    assert answer["beyond_error"] is True
    assert answer["fallen_most"] == "(20, 20) ft"
    same_again = evaluate(
        "levels-changed", {"first": first, "second": first.replace("20ft,20ft,0in", "20ft,20ft,0.1in")}
    )
    assert same_again["beyond_error"] is False
    assert "no more than the readings" in same_again.words


def test_a_plane_of_change_is_a_change_of_tilt_and_no_change_of_bending() -> None:
    grid = [(x, y) for x in (0, 10, 20) for y in (0, 10, 20)]
    first = "; ".join(f"{x}ft,{y}ft,{(x * y) % 7 / 10}in" for x, y in grid)
    second = "; ".join(f"{x}ft,{y}ft,{(x * y) % 7 / 10 - x / 10}in" for x, y in grid)
    answer = evaluate("levels-changed", {"first": first, "second": second})
    assert float(str(answer["tilt_change"])) == pytest.approx(100 / 120, abs=1e-9)
    assert float(str(answer["bending_change"])) == pytest.approx(0, abs=1e-9)
    assert answer["toward"] == 90


def test_surveys_are_paired_by_name_where_the_tape_differs() -> None:
    first = "x,y,reading,name; 0ft,0ft,0in,door; 20ft,0ft,0in,hearth"
    second = "x,y,reading,name; 0.2ft,0ft,0in,door; 19.8ft,0ft,-1in,hearth"
    assert evaluate("levels-changed", {"first": first, "second": second}).value == 1


def test_surveys_that_cannot_be_compared_are_refused() -> None:
    first = {"first": "0ft,0ft,0in; 20ft,0ft,0in"}
    with pytest.raises(Refusal, match="WM082"):
        evaluate("levels-changed", {**first, "second": "0ft,0ft,0in; 21ft,0ft,0in"})
    with pytest.raises(Refusal, match="WM084"):
        evaluate("levels-changed", {**first, "second": "0ft,0ft,0in; 20ft,0ft,0in", "first_on": "2026-01-02",
                                    "second_on": "2026-01-02"})  # fmt: skip


def test_a_rate_is_told_only_with_both_days() -> None:
    both = {"first": "0ft,0ft,0in; 20ft,0ft,0in", "second": "0ft,0ft,0in; 20ft,0ft,-1in"}
    with pytest.raises(KeyError):
        evaluate("levels-changed", both)["rate"]
    dated = evaluate("levels-changed", {**both, "first_on": "2024-01-01", "second_on": "2026-01-01"})
    assert float(str(dated["rate"])) == pytest.approx(0.5, abs=0.001)


def test_the_worst_chord_is_the_longest_of_those_alike() -> None:
    line = tuple(
        Point(Fraction(s), Fraction(0), Fraction(z, 10)) for s, z in ((0, 0), (10, -6), (20, -10), (30, -13), (40, -12))
    )
    first = worst(chords(line, left_over(line, fit(line)), 0.0), line)[0]
    assert first.length == 40
    assert first.deflection == pytest.approx(-0.4)


@pytest.mark.parametrize("gauge", ["floor-tilt", "floor-deflection", "angular-distortion", "out-of-plumb"])
def test_a_criterion_that_is_none_is_refused(gauge: str) -> None:
    given = {"offset": "1in", "length": "8ft"} if gauge == "out-of-plumb" else {"readings": EXAMPLE}
    with pytest.raises(Refusal, match="WM005"):
        evaluate(gauge, {**given, "criterion": "a number of my own"})


def test_changes_of_the_gauge_itself_answer_the_same_from_values_as_from_text() -> None:
    first, second = _levels("0ft,0ft,0in; 9ft,0ft,0in"), _levels("0ft,0ft,0in; 9ft,0ft,-1in")
    assert levels_changed(tuple(first), tuple(second)).value == 1
