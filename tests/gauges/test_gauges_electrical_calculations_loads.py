"""Dwelling loads: the rules of each method branch by branch, and what must hold whatever the house."""

from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from witnessmark.gauges import Answer, evaluate
from witnessmark.gauges.electrical.calculating.dwelling_new import after_demand
from witnessmark.gauges.electrical.calculating.loads import demand_of_lighting
from witnessmark.gauges.electrical.calculating.neutral import paired
from witnessmark.gauges.electrical.calculating.ranges import cooking_demand
from witnessmark.problems import Refusal

KILOWATTS = st.lists(st.decimals("0.5", 27, places=1), min_size=1, max_size=4)


def standard(loads: str, **more: str) -> Answer:
    return evaluate("dwelling-load-standard", {"area": "1500sq ft", "loads": loads, **more})


def new(loads: str, **more: str) -> Answer:
    return evaluate("dwelling-load-new", {"area": "1500sq ft", "loads": loads, **more})


def existing(loads: str, **more: str) -> Answer:
    return evaluate("dwelling-load-existing", {"area": "1500sq ft", "loads": loads, **more})


def test_lighting_has_three_bands() -> None:
    # NEC Table 220.42: 3000 at 100 %, to 120,000 at 35 %, rest at 25 %.
    for total, demand in ((2000, 2000), (3000, 3000), (120_000, 43_950), (130_000, 46_450)):
        assert demand_of_lighting(Decimal(total)) == demand


@given(KILOWATTS)
def test_cooking_counts_for_no_more_than_its_plates_and_grows_with_them(ratings: list[Decimal]) -> None:
    demand = cooking_demand(ratings)
    assert 0 < demand <= max(sum(ratings), 8 * len(ratings))
    assert cooking_demand([*ratings, Decimal(12)]) >= demand
    assert cooking_demand(list(reversed(ratings))) == demand


def test_cooking_by_each_column_and_note() -> None:
    # NEC Table 220.55 (memory): column C 1 to 5; A and B in percent; note 2 mean of unequal ones, none below 12.
    for number, kilowatts in ((1, 8), (2, 11), (3, 14), (4, 17), (5, 20), (6, 21), (10, 25)):
        assert cooking_demand([Decimal(12)] * number) == kilowatts
    assert cooking_demand([Decimal(3)]) == Decimal("2.4")
    assert cooking_demand([Decimal(8)]) == Decimal("6.4")
    assert cooking_demand([Decimal(1)]) == 1
    assert cooking_demand([Decimal(14), Decimal(18)]) == 11 * Decimal("1.2")  # mean 16, 4 over: 20 %
    assert cooking_demand([Decimal(10), Decimal(16)]) == 11 * Decimal("1.1")  # mean of 12 and 16: 14, 2 over


def test_four_fastened_appliances_count_with_three_quarters() -> None:
    three = "heater, water heater, 4kW; dishwasher, appliance, 1kW; compactor, appliance, 1kW"
    base = standard("nothing, other, 0W")
    assert standard(three)["total"] == Decimal(str(base["total"])) + 6000
    four = three + "; hot tap, appliance, 2kW"
    assert standard(four)["total"] == Decimal(str(base["total"])) + 6000
    assert standard("alike, appliance, 2kW,,,4")["total"] == Decimal(str(base["total"])) + 6000


def test_only_the_larger_of_heating_and_cooling_counts() -> None:
    heat = "furnace, central heat, 10kW"
    base = Decimal(str(standard("nothing, other, 0W")["total"]))
    assert standard(heat)["total"] == base + 10_000
    assert standard(heat + "; cooler, cooling, 4kW")["total"] == base + 10_000
    # Cooling of 12 kW goes before heat, and is then the largest motor: a quarter more.
    assert standard(heat + "; cooler, cooling, 12kW")["total"] == base + 15_000
    pump = "pump, heat pump, 6kW; backup, backup heat, 10kW"
    assert standard(pump)["total"] == base + 16_000 + 1_500


def test_a_dryer_counts_with_five_kilowatts_at_least() -> None:
    base = Decimal(str(standard("nothing, other, 0W")["total"]))
    assert standard("dryer, dryer, 4kW")["total"] == base + 5000
    assert standard("dryer, dryer, 6kW")["total"] == base + 6000


def test_the_service_found_is_held_against_the_load() -> None:
    load = "range, range, 12kW; dryer, dryer, 5.5kW"
    for service, outcome in (("60A", "beyond"), ("78A", "within"), ("100A", "within")):
        verdict = standard(load, service=service).verdict
        assert verdict
        assert verdict.outcome == outcome
        assert "informational" in verdict.words
    assert standard(load).verdict is None


def test_lines_and_neutral_follow_the_legs() -> None:
    even = standard("tool, other, 2400W, , 120V")
    assert even["line_a"] == even["line_b"]
    on_a = standard("tool, other, 2400W, , 120V, , A")
    assert Decimal(str(on_a["line_a"])) - Decimal(str(on_a["line_b"])) == 20
    assert Decimal(str(on_a["neutral"])) == Decimal("41.25")  # 5100 VA over 240 V, and 20 A
    assert paired([], []) == 0
    assert paired([Decimal(5)], []) == 5


def test_the_neutral_beyond_200_amperes_counts_with_seventy_percent() -> None:
    # 220.61(B): 5100 / 240 = 21.25 A and 208.75 A on one leg are 230 A; 200 + .7 * 30 = 221.
    answer = standard("studio, other, , 208.75A, 120V, , A")
    assert answer["neutral"] == 221


@pytest.mark.parametrize(
    ("loads", "climate"),
    [
        ("c, cooling, 5kW", 5000),
        ("p, heat pump, 5kW", 5000),
        ("p, heat pump, 5kW; b, backup heat, 10kW", 11_500),
        ("f, central heat, 10kW", 6500),
        ("r, room heat, 1kW,,,3", 1950),
        ("r, room heat, 1kW,,,4", 1600),
        ("s, storage heat, 5kW", 5000),
        ("f, central heat, 10kW; c, cooling, 5kW", 6500),
        ("x, other, 1kW", 0),
    ],
)
def test_heating_and_cooling_of_the_optional_method(loads: str, climate: int) -> None:
    # NEC 220.82(C)(1) to (6); memory of the text, three of them worked in annex D.
    assert new(loads)["climate"] == climate


def test_interlocked_backup_heat_does_not_add_up() -> None:
    pump = "p, heat pump, 5kW; b, backup heat, 10kW"
    assert new(pump, backup_interlocked="yes")["climate"] == 6500


@given(st.decimals(0, 100_000, places=0), st.decimals(0, 20_000, places=0))
def test_demand_grows_and_existing_is_always_1200_lighter(general: Decimal, more: Decimal) -> None:
    assert after_demand(general, 8000) <= after_demand(general + more, 8000)
    assert after_demand(general, 10_000) - after_demand(general, 8_000) <= 1200
    assert general < 10_000 or after_demand(general, 10_000) - after_demand(general, 8_000) == 1200


def test_new_heating_or_cooling_in_an_existing_house_counts_in_full() -> None:
    # 220.83(B): 27,200 of other load gives 15,680; cooling of 5 kW in full.
    other = "range, range, 12kW; dishwasher, appliance, 1.2kW; dryer, dryer, 5kW"
    added = existing(other + "; cooler, cooling, 5kW,,,,,yes")
    assert added["rule"] == "(B)"
    assert added["total"] == 20_680
    stays = existing(other + "; cooler, cooling, 5kW")
    assert stays["rule"] == "(A)"
    assert stays["total"] == 17_680
    assert any("does not say" in caution for caution in stays.cautions)
    assert existing(other + "; cooler, cooling, 5kW", new_heating_or_cooling="yes")["total"] == 20_680
    both = existing(other + "; cooler, cooling, 5kW; furnace, central heat, 10kW")
    assert Decimal(str(both["both_counted"])) - Decimal(str(both["total"])) == 2000


def test_measured_demand_takes_power_or_current_and_not_both() -> None:
    power = evaluate("dwelling-load-measured", {"demand": "9.6kW", "new_load": "0W"})
    current = evaluate("dwelling-load-measured", {"demand_current": "40A", "new_load": "0W"})
    assert power.value == current.value == 50
    for inputs in ({"new_load": "0W"}, {"new_load": "0W", "demand": "1kW", "demand_current": "4A"}):
        with pytest.raises(Refusal, match="WM059"):
            evaluate("dwelling-load-measured", inputs)
    short = evaluate("dwelling-load-measured", {"demand": "9.6kW", "new_load": "0W", "record": "thirty days"})
    assert "thirty days" in short.cautions[0]


@pytest.mark.parametrize("name", ["dwelling-load-standard", "dwelling-load-new", "dwelling-load-existing"])
def test_a_load_without_rating_is_refused_and_never_nought(name: str) -> None:
    with pytest.raises(Refusal, match="WM058"):
        evaluate(name, {"area": "1500sq ft", "loads": "pump, motor"})


def test_steps_lead_to_the_total() -> None:
    answer = standard("range, range, 12kW; dryer, dryer, 5.5kW; well pump, motor, 1200W")
    told = {step.what: step.value for step in answer.steps}
    assert told["calculated load"] == answer["total"] == 5100 + 8000 + 5500 + 1200 + 300
    assert told["25 % of the largest motor"] == 300
    assert all(step.value for step in answer.steps)
