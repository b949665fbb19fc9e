"""Electrical requirements by edition: which editions are possible, what they ask, and that nothing contradicts itself."""

from itertools import pairwise
from typing import get_args

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from witnessmark.gauges import evaluate
from witnessmark.gauges.electrical.editions import BEFORE, EDITIONS, in_force
from witnessmark.gauges.electrical.protection.afci_rules import Room
from witnessmark.gauges.electrical.protection.gfci_rules import RULES, Outlet, Place, Serves, gfci_found
from witnessmark.problems import Refusal

#: Editions in which an outlet that was asked about ceases to be covered: balconies in 1978 (direct grade access).
LAPSES = {("outdoors", 1978)}


def test_every_edition_exists_and_no_other_is_taken() -> None:
    # Rule of the standard's publication, recalled: every three years since 1975.
    assert [later - one for one, later in pairwise(EDITIONS[9:])] == [3] * (len(EDITIONS) - 10)
    for year in set(range(1940, 2030)) - set(EDITIONS):
        with pytest.raises(Refusal) as refused:
            in_force(year, None, None)
        assert refused.value.problems[0].number == "WM050"
        assert "1971" in str(refused.value)


@pytest.mark.parametrize(
    ("year", "says"), [(1973, "1 January 1973"), (1974, "1 January 1974"), (1977, "1975 and 1978")]
)
def test_a_date_inside_an_edition_is_told_when_it_is_taken_for_one(year: int, says: str) -> None:
    with pytest.raises(Refusal) as refused:
        evaluate("gfci-required", {"place": "outdoors", "edition": str(year)})
    assert says in str(refused.value)


@given(st.integers(1600, 2200), st.integers(0, 60))
def test_the_year_built_is_not_the_edition_in_force(built: int, lag: int) -> None:
    possible = in_force(None, built, None).possible
    assert possible
    assert all(one <= built for one in possible)
    assert list(possible) == sorted(possible)
    narrowed = in_force(None, built, built - lag).possible
    assert 1 <= len(narrowed) <= 2
    assert max(narrowed) <= built - lag or narrowed == (BEFORE,)


@pytest.mark.parametrize(
    "given_years",
    [{"edition": 1999, "built": 1990}, {"built": 1980, "adopted": 1985}, {"edition": 1999, "adopted": 1990}],
)
def test_years_that_cannot_stand_together_are_refused(given_years: dict[str, int]) -> None:
    with pytest.raises(Refusal) as refused:
        evaluate("gfci-required", {"place": "bathroom", **given_years})
    assert refused.value.problems[0].number == "WM051"


def test_an_edition_is_issued_the_year_before_its_own() -> None:
    assert in_force(1999, 1998, None).possible == (1999,)


def test_without_edition_or_year_only_first_editions_are_told() -> None:
    answer = evaluate("gfci-required", {"place": "garage"})
    assert "first required by the 1978 edition" in answer.words
    assert "required" not in {one.name for one in answer.also}
    assert answer.verdict is None


@settings(max_examples=300, deadline=None)
@given(
    st.sampled_from(get_args(Place)),
    st.sampled_from(get_args(Serves)),
    st.sampled_from(("receptacle", "hard-wired", "lighting outlet")),
    st.sampled_from((None, True, False)),
    st.booleans(),
    st.booleans(),
    st.booleans(),
)
def test_once_required_stays_required_but_for_the_lapses_that_are_known(  # noqa: PLR0917 - drawn in this order
    place: Place, serves: Serves, outlet: str, finished: bool | None, accessible: bool, dedicated: bool, grade: bool
) -> None:
    seen = Outlet(
        place, serves, outlet, finished=finished, accessible=accessible, dedicated=dedicated, grade_access=grade  # type: ignore[arg-type]  # one of the three words
    )  # fmt: skip
    before = False
    for edition in EDITIONS:
        now = gfci_found(seen, edition, 9999).required
        if before and not now:
            excepted = (place, edition) in LAPSES or serves == "snow melting or deicing"
            assert excepted, f"{seen} lapses in {edition}"
        before = now is True


def test_each_rule_can_be_the_one_that_asks() -> None:
    """No line of the rules is dead: for each there is an outlet and an edition for which it decides."""
    near = (None, "kitchen sink", "wet bar sink", "laundry or utility sink", "other sink", "tub or shower", "pool")
    decided = set()
    for place in get_args(Place):
        for serves in ("general use", "counter", *get_args(Serves)[2:]):
            for outlet, volts in (
                ("receptacle", 120),
                ("receptacle", 240),
                ("lighting outlet", 120),
                ("hard-wired", 240),
            ):
                for by in near:
                    seen = Outlet(place, serves, outlet, by, by and 60, finished=False, volts=volts)  # type: ignore[arg-type]  # words from the lists above
                    decided |= {gfci_found(seen, edition, 9999).rule for edition in EDITIONS}
    assert [rule for rule, _ in RULES if rule not in decided] == []


def test_what_would_decide_is_named_when_a_fact_is_lacking() -> None:
    answer = evaluate("gfci-required", {"place": "kitchen", "serves": "counter", "edition": "1990"})
    assert "distance to the kitchen sink" in answer.words
    assert answer["perhaps_from"] == 1987
    assert "finished" in evaluate("gfci-required", {"place": "basement", "edition": "1990"}).words


def test_a_verdict_stands_only_where_what_was_found_is_given() -> None:
    old = {"place": "bathroom", "edition": "1971"}
    outcomes = [
        evaluate("gfci-required", {**old, "protected": "no"}).verdict,
        evaluate("gfci-required", {**old, "edition": "1975", "protected": "no"}).verdict,
        evaluate("gfci-required", {**old, "edition": "1975", "protected": "yes"}).verdict,
        evaluate("gfci-required", {"place": "bathroom", "built": "1980", "protected": "no"}).verdict,
    ]
    assert [one.outcome if one else None for one in outcomes] == ["within", "beyond", "within", "undecided"]
    assert evaluate("gfci-required", old).verdict is None


def test_contradicting_facts_are_refused() -> None:
    for given_facts in (
        {"place": "bathroom", "distance": "5ft"},
        {"place": "bathroom", "replaced": "yes", "outlet": "hard-wired"},
    ):
        with pytest.raises(Refusal) as refused:
            evaluate("gfci-required", given_facts)
        assert refused.value.problems[0].number == "WM054"
    with pytest.raises(Refusal) as refused:
        evaluate("afci-required", {"room": "bedroom", "added": "4ft"})
    assert refused.value.problems[0].number == "WM054"


@pytest.mark.parametrize("room", get_args(Room))
def test_arc_fault_protection_never_goes_away_and_never_reaches_240_volts(room: Room) -> None:
    found = [
        evaluate("afci-required", {"room": room, "edition": str(one), "built": "2100"})["required"] for one in EDITIONS
    ]
    assert found == sorted(found, key=bool)
    high = [
        evaluate("afci-required", {"room": room, "edition": str(one), "voltage": "240V"})["required"]
        for one in EDITIONS
    ]
    assert not any(high)


@pytest.mark.parametrize(
    ("given_facts", "required"),
    [
        ({"edition": "2014", "added": "73in", "adds_outlets": "no"}, True),
        ({"edition": "2014", "added": "72in", "adds_outlets": "no"}, False),
        ({"edition": "2014", "added": "1ft", "adds_outlets": "yes"}, True),
        ({"edition": "2014"}, "depends"),
        ({"edition": "2011"}, True),
    ],
)
def test_an_extension_of_six_feet_without_an_outlet_is_excepted_from_2014(
    given_facts: dict[str, str], required: bool | str
) -> None:
    answer = evaluate("afci-required", {"room": "den", "work": "extension or change of a circuit", **given_facts})
    assert answer["required"] == required


def test_replaced_receptacles_bind_from_2014_inside_the_2011_edition() -> None:
    work = {"room": "den", "work": "receptacle replaced", "edition": "2011"}
    assert evaluate("afci-required", {**work, "built": "2013"})["required"] is False
    assert evaluate("afci-required", {**work, "built": "2014"})["required"] is True
    assert evaluate("afci-required", work)["required"] == "depends"


def test_a_locking_or_large_receptacle_needs_no_shutters() -> None:
    at = {"area": "garage", "height": "18in", "edition": "2023"}
    assert evaluate("tamper-resistant-required", at)["required"] is True
    assert evaluate("tamper-resistant-required", {**at, "locking": "yes"})["required"] is False
    assert evaluate("tamper-resistant-required", {**at, "amperes": "30A"})["required"] is False
    assert evaluate("tamper-resistant-required", {**at, "area": "attic or crawl space"})["required"] is True
    assert (
        evaluate("tamper-resistant-required", {**at, "area": "attic or crawl space", "edition": "2017"})["required"]
        is False
    )
