"""What load a dwelling counts with by the standard method, line by line as in the code's own examples."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal
from typing import Annotated

from witnessmark.gauges.answer import Also, Answer, Step, rounded
from witnessmark.gauges.electrical.calculating.cautions import INFORMATIONAL
from witnessmark.gauges.electrical.calculating.loads import (
    AREA,
    COOKING,
    FASTENED,
    HEATING,
    LAUNDRY,
    LINE_TO_LINE,
    LOADS,
    MOTORS,
    SERVICE,
    SMALL_APPLIANCE,
    Load,
    demand_of_lighting,
    lighting,
    of_kind,
    volt_amperes,
)
from witnessmark.gauges.electrical.calculating.neutral import legs, neutral_amperes, neutral_volt_amperes
from witnessmark.gauges.electrical.calculating.outcome import against_service, service_for, whole_amperes
from witnessmark.gauges.electrical.calculating.ranges import cooking_demand
from witnessmark.gauges.electrical.editions import nec
from witnessmark.gauges.gauge import gauge
from witnessmark.units import Quantity

__all__ = ["STANDARD", "Standard", "dwelling_load_standard", "standard_load"]

STANDARD = nec("2005 to 2020", "article 220 part III; examples D1(a) and D1(b) of annex D", "seen in a copy")
_NUMBERS = (
    "Sections bear the numbers of 2005 to 2020; 2023 counts the same by 220.41 and 220.45, and a vehicle charger with "
    "7200 VA at least (220.57)."
)
_DRYER = Decimal(5000)
_FOUR = 4


@dataclass(frozen=True, slots=True)
class Standard:
    """The standard method done: steps in VA, amperes of both lines and the neutral, VA in all and on the neutral."""

    steps: tuple[Step, ...]
    line_a: Decimal
    line_b: Decimal
    neutral: Decimal
    total: Decimal
    neutral_total: Decimal


def standard_load(area: Decimal, small_appliance: int, laundry: int, loads: Sequence[Load]) -> Standard:
    """The standard method of NEC article 220 part III; *area* in square feet. Refuses loads without rating (WM058).

    >>> standard_load(Decimal(1500), 2, 1, ()).total
    Decimal('5100.00')
    """
    base = lighting(area, small_appliance, laundry)
    lights = demand_of_lighting(base)
    ovens = [
        volt_amperes(load) / load.count / 1000 for load in loads if load.kind in COOKING for _ in range(load.count)
    ]
    cooking = cooking_demand(ovens) * 1000
    fastened = sum(load.count for load in loads if load.kind in FASTENED)
    factor = Decimal("0.75") if fastened >= _FOUR else Decimal(1)
    heat, cool = of_kind(loads, HEATING), of_kind(loads, ("cooling", "heat pump"))
    dropped = frozenset({"cooling"}) if heat > cool else HEATING - {"heat pump"}
    counted = [load for load in loads if load.kind not in dropped]

    def share(load: Load) -> Decimal:
        if load.kind == "dryer":
            return max(volt_amperes(load), _DRYER * load.count)
        return volt_amperes(load) * (factor if load.kind in FASTENED else 1)

    apart = [load for load in counted if load.kind not in COOKING]
    evenly = sum((share(load) for load in apart if load.leg is None), Decimal(0)) + lights + cooking
    on_a, on_b = legs(apart, share)
    line_a, line_b = evenly / LINE_TO_LINE + on_a, evenly / LINE_TO_LINE + on_b
    motor = max((volt_amperes(load) / load.count for load in apart if load.kind in MOTORS), default=Decimal(0)) / 4
    total = evenly + sum((share(load) for load in apart if load.leg is not None), Decimal(0)) + motor
    on_neutral = neutral_volt_amperes(apart, share, lights, cooking)
    steps: tuple[Step, ...] = (
        _step("lighting, 3 VA a square foot", 3 * area),
        _step("with small-appliance and laundry circuits, 1500 VA each", base),
        _step("of it 3000 VA in full, 35 % to 120,000, 25 % beyond", lights),
        _step("cooking by Table 220.55", cooking),
        _step("dryer, 5000 VA at least", of_kind(apart, ("dryer",), share)),
        _step(f"{fastened} appliances fastened in place at {factor * 100:.0f} %", of_kind(apart, FASTENED, share)),
        _step("heating" if heat > cool else "cooling", max(heat, cool)),
        _step("other loads in full", of_kind(apart, ("motor", "other", "vehicle charger"), share)),
        _step("25 % of the largest motor", motor),
        _step("calculated load", total),
        Step("line A", rounded(float(line_a)), "A"),
        Step("line B", rounded(float(line_b)), "A"),
        _step("balanced load of the neutral", on_neutral),
    )
    steps = tuple(one for one in steps if one.value)
    return Standard(steps, line_a, line_b, neutral_amperes(apart, share, on_neutral), total, on_neutral)


def _step(what: str, value: Decimal) -> Step:
    return Step(what, rounded(float(value)), "V.A")


@gauge(
    name="dwelling-load-standard",
    family="electrical",
    title="Load of a dwelling by the standard method",
    unit="A",
    gives="calculated load of the more heavily loaded line of a 120/240 V service",
    sources=(STANDARD, nec("2005 to 2020", "220.12, 220.42, 220.52 to 220.61", "memory")),
    error="none in the arithmetic; every plate not read is a load left out",
    never="that a service is large enough or too small for this household",
    cautions=(
        INFORMATIONAL,
        _NUMBERS,
    ),
    example={"area": "1500sq ft", "loads": "range, range, 12kW; dryer, dryer, 5.5kW"},
)
def dwelling_load_standard(
    area: Annotated[Quantity, AREA],
    loads: Annotated[tuple[Load, ...], LOADS],
    small_appliance_circuits: Annotated[int, SMALL_APPLIANCE] = 2,
    laundry_circuits: Annotated[int, LAUNDRY] = 1,
    service: Annotated[Quantity | None, SERVICE] = None,
) -> Answer:
    """Load of one dwelling by the standard method, with the neutral.

    Rule:
        lighting 3 VA/ft2 + 1500 VA for each small-appliance circuit and the laundry: 3000 in full, then 35 %, then 25 %
        + cooking by Table 220.55 + dryer (5000 VA or plate) + appliances fastened in place (75 % of four or more)
        + the larger of heating and cooling (220.60) + 25 % of the largest motor; all over 240 V.
        neutral: lighting, 70 % of cooking and dryer, loads between line and neutral; beyond 200 A 70 % (220.61)
    Known traps: heat and cooling added together; the range's plate in place of the table.

    >>> from witnessmark.gauges import evaluate
    >>> house = {"area": "1500sq ft", "loads": "range, range, 12kW; dryer, dryer, 5.5kW"}
    >>> evaluate("dwelling-load-standard", house).value
    Decimal('77.5')
    """
    done = standard_load(area.value, small_appliance_circuits, laundry_circuits, loads)
    most = max(done.line_a, done.line_b)
    size = service_for(most)
    sized = () if size is None else (Also("service", "smallest standard service for it", Decimal(size), "A"),)
    told = "" if size is None else f" The smallest standard service for that is {size} A."
    return Answer(
        value=rounded(float(most)),
        words=f"The dwelling counts with {whole_amperes(most)} A ({float(done.total):,.0f} VA) by the standard method."
        + told,
        verdict=against_service(most, service, STANDARD),
        also=(
            Also("total", "calculated load", rounded(float(done.total)), "V.A"),
            Also("amperes", "rounded to whole amperes", whole_amperes(most), "A"),
            *sized,
            Also("line_a", "line A", rounded(float(done.line_a)), "A"),
            Also("line_b", "line B", rounded(float(done.line_b)), "A"),
            Also("neutral_total", "balanced load of the neutral", rounded(float(done.neutral_total)), "V.A"),
            Also("neutral", "neutral", rounded(float(done.neutral)), "A"),
            Also("lighting_circuits_15", "15 A circuits for lighting and outlets", _circuits(area, 15)),
            Also("lighting_circuits_20", "20 A circuits for lighting and outlets", _circuits(area, 20)),
        ),
        steps=done.steps,
    )


def _circuits(area: Quantity, rating: int) -> Decimal:
    return Decimal(math.ceil(3 * area.value / (120 * rating)))
