"""Limits of a house: what must hold for every edition and measure, and each mistake that is often made with them."""

import math
from decimal import Decimal

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from witnessmark.gauges import Gauge, evaluate, find, gauges
from witnessmark.gauges.building import chimney_needs, degrees_of, pitch_of, triangle_sphere
from witnessmark.gauges.building.checks import Check
from witnessmark.gauges.building.editions import IRC, held_to, named
from witnessmark.gauges.building.ledger import COLUMNS, SPACINGS, ledger_spacing
from witnessmark.problems import Refusal

FAMILY = [one for one in gauges().values() if one.family == "building"]
DATED = [one for one in FAMILY if {"edition", "built"} <= {each.name for each in one.inputs}]
FEW = settings(max_examples=60, deadline=None, database=None)
QUARTERS = st.integers(0, 400).map(lambda n: Decimal(n) / 16)


@pytest.mark.parametrize("one", DATED, ids=[one.name for one in DATED])
def test_every_edition_answers_and_says_since_when(one: Gauge) -> None:
    choices = next(each.asked.choices for each in one.inputs if each.name == "edition")
    for edition in (one for one in choices if isinstance(one, int)):
        answer = evaluate(one.name, {**one.example, "edition": str(edition)})
        assert isinstance(answer["required_when"], str)
        if any(each.name == "edition" for each in answer.also):
            assert answer["edition"] == named(edition)


@pytest.mark.parametrize("one", DATED, ids=[one.name for one in DATED])
def test_a_year_that_is_no_edition_is_refused_and_the_editions_are_listed(one: Gauge) -> None:
    with pytest.raises(Refusal) as caught:
        evaluate(one.name, {**one.example, "edition": "2010"})
    assert caught.value.problems[0].number == "WM005"
    assert "2009, 2012" in str(caught.value)


@pytest.mark.parametrize("one", DATED, ids=[one.name for one in DATED])
def test_an_old_house_is_not_judged_by_an_edition_that_did_not_exist(one: Gauge) -> None:
    given_ = {key: text for key, text in one.example.items() if key != "edition"}
    answer = evaluate(one.name, {**given_, "built": "1901"})
    assert answer.verdict is None or answer.verdict.outcome == "undecided"
    assert any("not held" in caution for caution in answer.cautions), answer.cautions
    if any(each.name == "required" for each in answer.also):
        assert answer["required"] is False


def test_no_words_speak_of_violation_or_of_a_rule_for_brackets_in_the_federal_code() -> None:
    for one in FAMILY:
        answer = evaluate(one.name, one.example)
        text = " ".join((answer.words, *answer.cautions, one.never, one.title, *map(str, answer.sources))).lower()
        assert "violation" not in text
    tip = find("range-anti-tip")
    assert not any("CFR" in str(source) for source in tip.sources)


def test_an_edition_from_the_year_built_says_that_adoption_lags() -> None:
    held = held_to(None, 2011)
    assert held.edition == 2009
    assert "lags" in held.cautions[0]
    assert held_to(2003, 2011).edition == 2003


@pytest.mark.parametrize("built", range(1995, 2030))
def test_the_edition_of_a_year_is_never_later_than_the_year(built: int) -> None:
    held = held_to(None, built)
    assert held.edition is None if built < 2000 else held.edition is not None and held.edition <= built
    assert held.edition is None or held.edition == max(one for one in IRC if one <= built)


@FEW
@given(st.lists(st.integers(90, 130), min_size=1, max_size=16))
def test_risers_in_sixteenths_are_judged_as_whole_numbers_would_be(sixteenths: list[int]) -> None:
    text = ", ".join(f"{n // 16} {n % 16}/16 in" for n in sixteenths)
    answer = evaluate("stair-flight", {"risers": text, "edition": "2018"})
    assert answer["riser_within"] == (max(sixteenths) <= 124)
    assert answer["riser_spread_within"] == (max(sixteenths) - min(sixteenths) <= 6)
    again = ", ".join(f"{n // 16} {n % 16}/16 in" for n in reversed(sixteenths))
    assert evaluate("stair-flight", {"risers": again, "edition": "2018"}).value == answer.value


def test_three_eighths_is_compared_exactly_where_floats_would_fail() -> None:
    assert 8.005 - 7.63 > 0.375  # what a float comparison would make of it
    assert evaluate("stair-flight", {"risers": "7.63 in, 8.005 in", "edition": "2018"})["riser_spread_within"]
    assert not evaluate("stair-flight", {"risers": "7.63 in, 8.0051 in", "edition": "2018"})["riser_spread_within"]


def test_a_stair_in_millimetres_is_judged_by_its_inches() -> None:
    assert evaluate("stair-flight", {"risers": "196.85 mm", "edition": "2018"})["riser_within"]
    assert not evaluate("stair-flight", {"risers": "196.9 mm", "edition": "2018"})["riser_within"]


@FEW
@given(QUARTERS, QUARTERS, QUARTERS)
def test_an_escape_opening_keeps_all_four_and_never_the_product(width: Decimal, height: Decimal, sill: Decimal) -> None:
    answer = evaluate(
        "egress-opening", {"width": f"{width} in", "height": f"{height} in", "sill": f"{sill} in", "edition": "2018"}
    )
    # 5.7 sq ft is 820.8 sq in: whole sixteenths squared are compared as integers here
    w, h = int(width * 16), int(height * 16)
    area = w * h * 10 >= 8208 * 256
    assert answer["area_within"] == area
    assert answer["within"] == (area and w >= 320 and h >= 384 and sill <= 44)


@FEW
@given(QUARTERS, QUARTERS, st.sampled_from(IRC))
def test_a_wider_opening_never_falls_short_where_a_smaller_one_did_not(
    width: Decimal, height: Decimal, edition: int
) -> None:
    one = {"width": f"{width} in", "height": f"{height} in", "edition": str(edition)}
    more = {**one, "width": f"{width + 1} in"}
    assert bool(evaluate("egress-opening", more)["within"]) >= bool(evaluate("egress-opening", one)["within"])


@pytest.mark.parametrize("missing", ["width", "bottom", "top", "away"])
def test_a_large_pane_is_free_when_one_of_four_fails_even_if_another_was_not_measured(missing: str) -> None:
    full = {
        "place": "large pane",
        "width": "40 in",
        "height": "40 in",
        "bottom": "10 in",
        "top": "60 in",
        "away": "20 in",
    }
    assert evaluate("safety-glazing", {**full, "edition": "2018"})["required"]
    part = {key: text for key, text in full.items() if key != missing}
    with pytest.raises(Refusal) as caught:
        evaluate("safety-glazing", {**part, "edition": "2018"})
    assert caught.value.problems[0].number == "WM070"
    settled = {**part, ("top" if missing == "bottom" else "bottom"): "30 in"}
    assert evaluate("safety-glazing", {**settled, "edition": "2018"})["required"] is False


def test_a_rule_that_was_dropped_says_until_when() -> None:
    stair = {"place": "beside stairs", "away": "30 in", "bottom": "50 in"}
    then = evaluate("safety-glazing", {**stair, "built": "2007"})
    assert then["required"] is True
    assert then["required_today"] is False
    assert then["required_when"] == "by IRC 2000 through IRC 2009 only"
    rail = evaluate("handrail", {"risers": "3", "grip": "none", "edition": "2018"})
    assert rail["required_when"] == "by IRC 2000 only"
    assert "recommended" not in rail.words


def test_a_rule_of_the_oldest_edition_is_not_called_the_first() -> None:
    answer = evaluate("guard", {"drop": "48 in", "built": "1988"})
    assert "first required" not in answer.words
    assert answer["first_edition"] == "IRC 2000 or earlier"
    assert "not held here" in str(answer["required_when"])


def test_each_glazing_place_has_its_own_rule() -> None:
    pane = {"width": "20 in", "height": "20 in", "bottom": "6 in", "top": "26 in", "away": "10 in", "edition": "2018"}
    found = {
        place: evaluate("safety-glazing", {**pane, "place": place})["required"]
        for place in (
            "in a door",
            "beside a door",
            "large pane",
            "at a tub or shower",
            "beside stairs",
            "in a guard or railing",
        )
    }
    assert found == {
        "in a door": True, "beside a door": True, "large pane": False, "at a tub or shower": True, "beside stairs": True,
        "in a guard or railing": True,
    }  # fmt: skip


@FEW
@given(st.decimals(1, 18, places=2), st.sampled_from(sorted(SPACINGS)))
def test_a_ledger_span_takes_the_next_larger_column(span: Decimal, fastener: str) -> None:
    column = next(at for at, head in enumerate(COLUMNS) if head >= span)
    assert ledger_spacing(fastener, span) == SPACINGS[fastener][column]


def test_ledger_spacing_never_grows_with_the_span_and_bolts_are_never_closer_than_lags() -> None:
    for spacings in SPACINGS.values():
        assert list(spacings) == sorted(spacings, reverse=True)
    assert all(a >= b for a, b in zip(SPACINGS["1/2 in bolt"], SPACINGS["1/2 in lag screw"], strict=True))


def test_a_ledger_table_answers_nothing_beyond_its_spans() -> None:
    answer = evaluate("deck-ledger-fasteners", {"fastener": "1/2 in bolt", "joist_span": "19 ft", "edition": "2018"})
    assert answer.value is None
    assert [one.what for one in answer.outside_range] == ["joist_span"]
    assert "design" in answer.words


@pytest.mark.parametrize("edition", ["2000", "2006"])
def test_a_ledger_is_not_held_against_a_table_that_came_later(edition: str) -> None:
    answer = evaluate(
        "deck-ledger-fasteners",
        {"fastener": "1/2 in bolt", "joist_span": "12 ft", "spacing": "48 in", "edition": edition},
    )
    assert answer.verdict is not None
    assert answer.verdict.outcome == "undecided"
    assert answer["first_edition"] == "IRC 2009"
    assert answer["within_today"] is False


@FEW
@given(st.floats(4, 12), st.floats(6, 14), st.floats(0, 4))
def test_the_ball_in_the_triangle_touches_all_three_sides(riser: float, tread: float, gap: float) -> None:
    # Independent: distance from the ball's centre to the rail line by the formula point-to-line.
    ball = triangle_sphere(riser, tread, gap)
    radius, long = ball / 2, math.hypot(riser, tread)
    # the nosing line joins (0, riser) and (tread, 0) with tread and riser as axes; the rail lies gap beyond it
    to_rail = (riser * tread - riser * radius - tread * radius) / long + gap
    assert math.isclose(to_rail, radius, rel_tol=1e-9)


def test_a_usual_stair_leaves_less_than_six_inches_with_the_rail_on_the_nosings() -> None:
    answer = evaluate(
        "guard-openings",
        {"riser": "7 3/4 in", "tread": "10 in", "place": "triangle under the rail", "edition": "2018"},
    )
    assert answer["within"]
    assert not evaluate(
        "guard-openings",
        {
            "riser": "7 3/4 in",
            "tread": "10 in",
            "rail_gap": "2 in",
            "place": "triangle under the rail",
            "edition": "2018",
        },
    )["within"]


@FEW
@given(st.decimals(0, 24, places=2), st.decimals(0, 60, places=2))
def test_a_chimney_needs_three_feet_and_clears_every_point_within_ten_feet_level(
    pitch: Decimal, ridge: Decimal
) -> None:
    need = chimney_needs(pitch, ridge)
    assert need >= 36
    # Independent: walk the roof in half feet out to ten feet, up to the ridge and down the other side.
    for half in range(21):
        d = Decimal(half) / 2
        roof = pitch * (d if d <= ridge else max(Decimal(0), ridge - (d - ridge)))
        assert need >= roof + 24
    assert need <= max(Decimal(36), pitch * 10 + 24)


def test_the_chimney_formula_turns_at_one_and_a_fifth_in_twelve() -> None:
    assert chimney_needs(Decimal("1.2"), Decimal(10)) == 36
    assert chimney_needs(Decimal("1.21"), Decimal(10)) > 36


@FEW
@given(st.floats(0, 48))
def test_pitch_and_angle_are_each_others_inverse(pitch: float) -> None:
    assert math.isclose(pitch_of(degrees_of(pitch)), pitch, rel_tol=1e-9, abs_tol=1e-9)


def test_slope_and_angle_given_together_are_refused() -> None:
    for given_ in ({}, {"slope": "4:12", "angle": "20 deg"}):
        with pytest.raises(Refusal) as caught:
            evaluate("roof-slope", given_)
        assert caught.value.problems[0].number == "WM071"


def test_percent_and_pitch_are_the_same_slope() -> None:
    assert evaluate("roof-slope", {"slope": "33.3333333333%"})["angle"] == pytest.approx(
        Decimal("18.4349"), abs=Decimal("0.0001")
    )


@pytest.mark.parametrize("edition", IRC)
@pytest.mark.parametrize("zone", [1, 5, 6, 8])
def test_one_third_hundredth_is_earned_as_the_edition_says(edition: int, zone: int) -> None:
    split = {"above_eaves": "6 ft", "below_ridge": "1 ft"}
    half = {"high": "288 sq in", "low": "300 sq in", **split}  # exactly 50 % of 576: both shares accept it
    given_ = {"area": "1200 sq ft", "edition": str(edition), "climate_zone": str(zone), **half}
    bare, with_retarder = (
        evaluate("attic-ventilation", given_),
        evaluate("attic-ventilation", {**given_, "vapor_retarder": "yes"}),
    )
    assert with_retarder["ratio"] == "1/300"
    assert bare["ratio"] == ("1/150" if edition >= 2012 and zone >= 6 else "1/300")
    alone = {"area": "1200 sq ft", "edition": str(edition), "climate_zone": str(zone), "vapor_retarder": "yes"}
    assert evaluate("attic-ventilation", alone)["ratio"] == ("1/150" if edition >= 2012 else "1/300")


def test_ground_that_falls_towards_the_house_is_said() -> None:
    answer = evaluate("grading", {"fall": "-2 in", "run": "5 ft", "edition": "2018"})
    assert "towards the house" in answer.words
    assert not answer["within"]
    beyond = evaluate("grading", {"fall": "8 in", "run": "15 ft", "edition": "2018"})
    assert [one.what for one in beyond.outside_range] == ["run"]


@pytest.mark.parametrize("built", range(1960, 2026))
def test_smoke_alarm_duties_only_grow(built: int) -> None:
    names = [one.name for one in evaluate("smoke-alarms", {"built": str(built)}).also if one.name.endswith("_required")]
    then, later = (evaluate("smoke-alarms", {"built": str(year)}) for year in (built, built + 1))
    assert all(bool(later[name]) >= bool(then[name]) for name in names)
    assert len(names) == 8


def test_an_alarm_known_by_year_alone_is_left_open_in_its_tenth_year() -> None:
    assert evaluate("alarm-age", {"made_year": "2014", "inspected": "2024-06-01"})["past"] == "undecided"
    assert evaluate("alarm-age", {"made_on": "2014-06-01", "inspected": "2024-06-01"})["past"] == "yes"
    assert evaluate("alarm-age", {"made_on": "2014-06-02", "inspected": "2024-06-01"})["past"] == "no"
    co = {"made_year": "2018", "inspected": "2024-06-01", "kind": "carbon monoxide"}
    assert evaluate("alarm-age", co)["past"] == "undecided"
    assert evaluate("alarm-age", {**co, "marked_life": "5"})["past"] == "yes"


@pytest.mark.parametrize(
    ("given_", "number"),
    [
        ({"made_year": "2026", "inspected": "2024-06-01"}, "WM072"),
        ({"made_on": "2024-06-02", "inspected": "2024-06-01"}, "WM072"),
        ({"inspected": "2024-06-01"}, "WM071"),
        ({"inspected": "2024-06-01", "made_year": "2013", "made_on": "2013-01-01"}, "WM071"),
    ],
)
def test_an_alarm_date_that_cannot_be_is_refused(given_: dict[str, str], number: str) -> None:
    with pytest.raises(Refusal) as caught:
        evaluate("alarm-age", given_)
    assert caught.value.problems[0].number == number


@pytest.mark.parametrize(
    ("name", "given_"),
    [
        ("guard-openings", {}),
        ("guard-openings", {"riser": "7 in"}),
        ("garage-separation", {"part": "wall to the house", "board": "gypsum"}),
        ("garage-house-door", {"door": "solid wood"}),
        ("deck-ledger-edges", {}),
        ("smoke-alarm-distance", {"sensor": "ionization"}),
        ("attic-vent-openings", {}),
        ("safety-glazing", {"place": "beside stairs"}),
    ],
)
def test_a_rule_without_the_measure_it_needs_is_refused(name: str, given_: dict[str, str]) -> None:
    with pytest.raises(Refusal) as caught:
        evaluate(name, given_)
    assert caught.value.problems[0].number == "WM070"


def test_a_closer_is_not_asked_of_a_door_before_its_edition_but_recommended() -> None:
    answer = evaluate("garage-house-door", {"door": "20-minute label", "self_closing": "no", "built": "2007"})
    assert answer.verdict is not None
    assert answer.verdict.outcome == "within"
    assert "recommended today" in answer.words
    assert answer["within_today"] is False
    doubtful = evaluate("garage-house-door", {"door": "20-minute label", "self_closing": "no", "edition": "2012"})
    assert any("both ways" in caution for caution in doubtful.cautions)


def test_a_garage_opener_is_judged_by_its_own_year() -> None:
    old = evaluate("garage-door-opener", {"made": "1985", "reverses": "no", "beam": "none"})
    assert "not yet required" in old.words
    assert old["short_of_its_year"] is False
    new = evaluate("garage-door-opener", {"made": "1998", "reverses": "yes", "beam": "none"})
    assert new["short_of_its_year"] is True


def test_a_stair_older_than_its_code_is_told_both_ways() -> None:
    answer = evaluate("stair-flight", {"risers": "8 in", "treads": "9 1/2 in", "built": "1993"})
    assert answer.verdict is not None
    assert answer.verdict.outcome == "within"
    assert "IRC 2024 would ask more" in answer.words
    assert "CABO" in answer.words


def test_a_value_a_tape_cannot_place_asks_for_a_second_measurement() -> None:
    near = Check("x", "x", Decimal("7.72"), "[in_i]", "", highest=Decimal("7.75"))
    far = Check("x", "x", Decimal("7.5"), "[in_i]", "", highest=Decimal("7.75"))
    assert near.near
    assert not far.near
    answer = evaluate("stair-headroom", {"heights": "80.03 in", "edition": "2018"})
    assert any("measure again" in caution for caution in answer.cautions)


def test_a_check_at_its_open_limit_is_beyond_it_though_off_by_nothing() -> None:
    at = Check("x", "ball", Decimal(4), "[in_i]", "", below=Decimal(4))
    assert not at.within
    assert at.off == 0
    assert "not below it" in str(at)
