"""Receptacles along walls and counters against a slow search, and the edges of every rule of spacing."""

from decimal import Decimal

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from witnessmark.gauges import evaluate
from witnessmark.gauges.electrical import island_receptacles, least_wall_receptacles, working_space_measures
from witnessmark.gauges.electrical.spacing.sketch import Piece, farthest, feet, laid, least_number, spaces
from witnessmark.problems import Refusal

Parts = list[tuple[int, bool]]
LENGTHS = st.lists(st.tuples(st.integers(0, 240), st.booleans()), min_size=1, max_size=6)


def line(parts: Parts) -> tuple[Piece, ...]:
    return laid([("door" if breaks else "wall", Decimal(length), breaks) for length, breaks in parts], running=False)


@settings(deadline=None)
@given(LENGTHS, st.lists(st.integers(0, 400), max_size=5), st.booleans())
def test_the_farthest_point_is_that_of_a_search_in_every_half_inch(parts: Parts, at: list[int], closed: bool) -> None:
    pieces = line(parts)
    whole = int(pieces[-1].end)
    if whole == 0:
        return
    places = sorted({one % (whole + 1) for one in at})
    for space in spaces(pieces, [Decimal(one) for one in places], closed=closed):
        found = farthest(space)
        if found is None:
            continue
        halves = range(int(space.start * 2), int(space.end * 2) + 1)

        def reach(half: int, stand: tuple[Decimal, ...] = space.receptacles, ring: bool = space.ring) -> Decimal:
            gaps = [abs(Decimal(half) / 2 - one) for one in stand]
            return min(min(gap, whole - gap) if ring else gap for gap in gaps)

        slow = max(reach(half) for half in halves)
        assert found.distance == slow
        assert 0 <= found.place <= whole


@given(LENGTHS)
def test_spaces_cover_what_does_not_break_and_nothing_else(parts: Parts) -> None:
    for closed in (False, True):
        covered = sum(one.length for one in spaces(line(parts), [], closed=closed))
        assert covered == sum(length for length, breaks in parts if not breaks)


@given(LENGTHS, st.integers(0, 5))
def test_a_closed_room_may_be_begun_at_any_corner(parts: Parts, turn: int) -> None:
    turned = parts[turn % len(parts) :] + parts[: turn % len(parts)]
    lengths = [sorted(one.length for one in spaces(line(each), [], closed=True)) for each in (parts, turned)]
    assert lengths[0] == lengths[1]


@given(st.integers(24, 5000))
def test_the_fewest_suffice_and_one_less_does_not(length: int) -> None:
    least = least_number(Decimal(length), Decimal(72), Decimal(24))
    assert least * 144 >= length > (least - 1) * 144
    if least:
        step = Decimal(length) / least
        at = [step * one + step / 2 for one in range(least)]
        (space,) = spaces(line([(length, False)]), at)
        far = farthest(space)
        assert far
        assert far.distance <= Decimal(72) + Decimal("1e-20")


def test_a_fraction_of_an_inch_decides_exactly() -> None:
    assert least_wall_receptacles("12") == 1
    assert least_number(Decimal(144) + Decimal(1) / 16, Decimal(72), Decimal(24)) == 2
    at_limit = evaluate("receptacle-spacing-wall", {"pieces": "wall,12ft", "receptacles": "6ft", "edition": "2017"})
    past = evaluate("receptacle-spacing-wall", {"pieces": "wall,12ft 1/8in", "receptacles": "6ft", "edition": "2017"})
    assert [one.verdict and one.verdict.outcome for one in (at_limit, past)] == ["within", "beyond"]


def test_corners_join_and_doors_part() -> None:
    around = evaluate("receptacle-spacing-wall", {"pieces": "wall,5ft;wall,5ft", "receptacles": "4ft"})
    assert (around["wall_spaces"], around.value) == (Decimal(1), Decimal(6))
    across = evaluate("receptacle-spacing-wall", {"pieces": "wall,5ft;door,3ft;wall,5ft", "receptacles": "4ft"})
    assert (across["wall_spaces"], across["beyond"], across.value) == (Decimal(2), Decimal(1), None)
    assert "No receptacle stands in the wall space from 8 ft to 13 ft" in across.words


@pytest.mark.parametrize("kind", ["window", "fixed glass panel", "railing or bar"])
def test_what_a_person_can_stand_a_lamp_before_counts_as_wall(kind: str) -> None:
    assert evaluate("receptacle-spacing-wall", {"pieces": f"wall,5ft;{kind},4ft;wall,5ft"})["wall_spaces"] == 1


@pytest.mark.parametrize(
    "kind", ["door", "sliding glass door", "open passage", "fireplace", "fixed cabinet without counter"]
)
def test_what_breaks_the_floor_line_parts_the_wall(kind: str) -> None:
    assert evaluate("receptacle-spacing-wall", {"pieces": f"wall,5ft;{kind},4ft;wall,5ft"})["wall_spaces"] == 2


def test_receptacles_off_the_floor_line_do_not_count_and_say_why() -> None:
    rows = "at,off_wall,height;3ft,18in,;4ft,18.1in,;5ft,,66in;6ft,,67in"
    answer = evaluate("receptacle-spacing-wall", {"pieces": "wall,10ft", "receptacles": rows})
    assert answer["counted"] == 2
    assert "Receptacle 2" in answer.cautions[0]
    assert "Receptacle 4" in answer.cautions[1]


def test_a_running_tape_gives_what_single_lengths_give() -> None:
    single = {"pieces": "wall,5ft;door,3ft;wall,60in", "receptacles": "1ft;10ft"}
    running = {"pieces": "wall,5ft;door,8ft;wall,13ft", "receptacles": "1ft;10ft", "running": "yes"}
    answers = [evaluate("receptacle-spacing-wall", one) for one in (single, running)]
    assert answers[0] == answers[1]


@pytest.mark.parametrize(
    "sketch",
    [
        {"pieces": "wall,5ft;door,3ft", "running": "yes"},
        {"pieces": "wall,0ft"},
        {"pieces": "wall,5ft", "receptacles": "6ft"},
    ],
)
def test_a_sketch_that_cannot_be_is_refused(sketch: dict[str, str]) -> None:
    with pytest.raises(Refusal) as refused:
        evaluate("receptacle-spacing-wall", sketch)
    assert refused.value.problems[0].number == "WM053"


def test_a_counter_is_parted_by_its_sink_unless_counter_runs_behind() -> None:
    shallow = {"pieces": "kind,length,behind,corner;counter,20in,,;sink,30in,11.9in,no;counter,20in,,"}
    deep = {"pieces": "kind,length,behind,corner;counter,20in,,;sink,30in,12in,no;counter,20in,,"}
    corner = {"pieces": "kind,length,behind,corner;counter,20in,,;sink,30in,17in,yes;counter,20in,,"}
    found = [evaluate("receptacle-spacing-counter", one)["counter_spaces"] for one in (shallow, deep, corner)]
    assert found == [2, 1, 2]


@pytest.mark.parametrize(
    ("edition", "receptacles", "outcome"),
    [
        ("1968", "", "within"),
        ("1971", "20in", "within"),
        ("1971", "", "beyond"),
        ("1990", "20in", "beyond"),
        ("1990", "20in;60in", "within"),
    ],
)
def test_counters_by_edition(edition: str, receptacles: str, outcome: str) -> None:
    given_counter = {
        "pieces": "counter,80in",
        "edition": edition,
        **({"receptacles": receptacles} if receptacles else {}),
    }
    verdict = evaluate("receptacle-spacing-counter", given_counter).verdict
    assert verdict
    assert verdict.outcome == outcome


@given(st.integers(6, 400), st.integers(6, 400))
def test_more_island_never_needs_fewer_by_area_and_none_from_2023(long: int, short: int) -> None:
    wide = [island_receptacles(2020, Decimal(long + more), Decimal(short)) for more in (0, 60)]
    assert wide[0] <= wide[1]
    assert island_receptacles(2023, Decimal(long), Decimal(short)) == 0


@pytest.mark.parametrize(("area", "count"), [("9", 1), ("9.01", 2), ("27", 2), ("27.01", 3), ("45", 3), ("30", 3)])
def test_islands_by_area_to_the_hundredth(area: str, count: int) -> None:
    # 2020 edition, 210.52(C)(2): the first 9 ft2 or fraction, every further 18 ft2 or fraction; 30 ft2 gives three.
    answer = evaluate(
        "receptacle-island",
        {"shape": "island", "long": "5ft", "short": "5ft", "area": f"{area} sq ft", "edition": "2020"},
    )
    assert answer.value == count


def test_island_counts_that_differ_by_edition_are_a_range() -> None:
    answer = evaluate(
        "receptacle-island", {"shape": "island", "long": "8ft", "short": "4ft", "built": "2022", "found": "1"}
    )
    assert answer.value is None
    assert "1 to 3" in answer.words
    assert answer.verdict
    assert answer.verdict.outcome == "undecided"
    with pytest.raises(Refusal) as refused:
        evaluate("receptacle-island", {"shape": "island", "long": "8ft", "short": "4ft", "from_wall": "9ft"})
    assert refused.value.problems[0].number == "WM054"


def test_working_space_takes_the_larger_of_rule_and_equipment() -> None:
    depth, width, height, *_ = working_space_measures(equipment_width=Decimal(52), equipment_height=Decimal(90))
    assert (depth.needed, width.needed, height.needed) == (Decimal(36), Decimal(52), Decimal(90))


@pytest.mark.parametrize(
    ("given_space", "outcome"),
    [
        ({"edition": "2017", "depth": "35in"}, "beyond"),
        ({"edition": "1984", "depth": "35in"}, "undecided"),
        ({"edition": "2017", "depth": "36in"}, "undecided"),
        (
            {"edition": "2017", "depth": "3ft", "width": "30in", "height": "6.5ft", "above": "6ft", "handle": "6ft",
             "door_angle": "90deg", "room": "other"},
            "within",
        ),
    ],
)  # fmt: skip
def test_working_space_is_judged_only_where_an_edition_is_given(given_space: dict[str, str], outcome: str) -> None:
    verdict = evaluate("working-space", given_space).verdict
    assert verdict
    assert verdict.outcome == outcome
    assert evaluate("working-space", {"depth": "35in"}).verdict is None


@given(st.decimals(0, 5000, places=3))
def test_feet_and_inches_say_what_was_measured(inches: Decimal) -> None:
    text = feet(inches)
    total = Decimal(0)
    words = text.split()
    for figure, unit in zip(words[::2], words[1::2], strict=True):
        total += Decimal(figure) * (12 if unit == "ft" else 1)
    assert abs(total - inches) <= Decimal("0.05")
