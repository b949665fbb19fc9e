"""What load a new dwelling counts with by the optional method."""

from __future__ import annotations

from collections.abc import Sequence
from decimal import Decimal
from typing import Annotated

from witnessmark.gauges.answer import Also, Answer, Step, rounded
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.electrical.calculating.cautions import INFORMATIONAL
from witnessmark.gauges.electrical.calculating.dwelling_standard import standard_load
from witnessmark.gauges.electrical.calculating.loads import (
    AREA,
    HEATING,
    LAUNDRY,
    LINE_TO_LINE,
    LOADS,
    SERVICE,
    SMALL_APPLIANCE,
    Load,
    lighting,
    of_kind,
    volt_amperes,
)
from witnessmark.gauges.electrical.calculating.outcome import against_service, service_for, whole_amperes
from witnessmark.gauges.electrical.editions import nec
from witnessmark.gauges.gauge import gauge
from witnessmark.units import Quantity

__all__ = ["after_demand", "climate_load", "dwelling_load_new", "general_load"]

OPTIONAL = nec("2005 to 2023", "220.82; examples D2(a), D2(b) and D2(c) of annex D", "seen in a copy")
_HVAC = HEATING | {"cooling"}
_FOUR = 4


def general_load(area: Decimal, small_appliance: int, laundry: int, loads: Sequence[Load]) -> Decimal:
    """General load in VA: lighting, circuits, and the plates of everything but heating and cooling.

    *area* in square feet. NEC 220.82(B). Here a range counts with its plate, not with Table 220.55.

    >>> general_load(Decimal(1500), 2, 1, ())
    Decimal('9000')
    """
    return lighting(area, small_appliance, laundry) + sum(
        (volt_amperes(load) for load in loads if load.kind not in _HVAC), Decimal(0)
    )


def after_demand(general: Decimal, in_full: int) -> Decimal:
    """What of a general load counts, in VA: the first *in_full* VA whole, 40 % of the rest.

    10,000 VA in 220.82, 8000 VA in 220.83: the two are often confused.

    >>> after_demand(Decimal(29_700), 10_000), after_demand(Decimal(27_200), 8_000)
    (Decimal('17880.0'), Decimal('15680.0'))
    """
    return min(general, Decimal(in_full)) + max(general - in_full, Decimal(0)) * Decimal("0.4")


def climate_load(loads: Sequence[Load], *, interlocked: bool = False) -> tuple[Decimal, str]:
    """The largest of the heating and cooling selections in VA, and which one: NEC 220.82(C).

    >>> from witnessmark.units import Quantity
    >>> climate_load((Load("heat", "room heat", power=Quantity(Decimal(1800), "V.A"), count=5),))
    (Decimal('3600.0'), 'room heat, four or more controls, at 40 %')
    """
    rooms = sum(load.count for load in loads if load.kind == "room heat")
    room = of_kind(loads, ("room heat",)) * (Decimal("0.4") if rooms >= _FOUR else Decimal("0.65"))
    pump, backup = of_kind(loads, ("heat pump",)), of_kind(loads, ("backup heat",)) * Decimal("0.65")
    both = max(pump, backup) if interlocked else pump + backup
    choices = (
        (of_kind(loads, ("cooling",)), "cooling in full"),
        (both, "heat pump in full with 65 % of its backup heat"),
        (of_kind(loads, ("central heat",)) * Decimal("0.65"), "central electric heat at 65 %"),
        (room, "room heat, four or more controls, at 40 %" if rooms >= _FOUR else "room heat, up to three, at 65 %"),
        (of_kind(loads, ("storage heat",)), "storage heat in full"),
    )
    most = max(choices, key=lambda one: one[0])
    return most if most[0] else (Decimal(0), "no electric heating or cooling")


@gauge(
    name="dwelling-load-new",
    family="electrical",
    title="Load of a dwelling by the optional method (220.82)",
    unit="A",
    gives="calculated load of a 120/240 V service by the optional method",
    sources=(OPTIONAL,),
    error="none in the arithmetic; every plate not read is a load left out",
    never="that a service is large enough or too small for this household",
    cautions=(INFORMATIONAL, "Only for one dwelling with a service or feeder of 100 A or more."),
    example={
        "area": "1500sq ft",
        "loads": "range, range, 12kW; water heater, water heater, 2.5kW; dryer, dryer, 5kW; heat, room heat, 1.8kW,,,5",
    },
)
def dwelling_load_new(
    area: Annotated[Quantity, AREA],
    loads: Annotated[tuple[Load, ...], LOADS],
    small_appliance_circuits: Annotated[int, SMALL_APPLIANCE] = 2,
    laundry_circuits: Annotated[int, LAUNDRY] = 1,
    *,
    backup_interlocked: Annotated[
        bool,
        Asked(
            "whether the heat pump cannot run together with its backup heat",
            how="from its wiring diagram",
            example="no",
        ),
    ] = False,
    service: Annotated[Quantity | None, SERVICE] = None,
) -> Answer:
    """Load of one dwelling by the optional method, with the neutral by the standard rules.

    Rule:
        general load: 3 VA/ft2 + 1500 VA a circuit + PLATES of all appliances, range included: 10,000 VA in full, 40 %
        of the rest; plus the LARGEST of: cooling 100 %; heat pump 100 % + 65 % of backup heat; central heat 65 %;
        room heat 65 % (to three controls) or 40 % (four and more); storage heat 100 %
    Known traps: heat and cooling added; the 8 kVA of existing dwellings used here; Table 220.55 used for the range.

    >>> from witnessmark.gauges import evaluate
    >>> house = {"area": "1500sq ft", "loads": "range, range, 12kW; heat, central heat, 10kW"}
    >>> evaluate("dwelling-load-new", house)["total"]
    Decimal('20900')
    """
    general = general_load(area.value, small_appliance_circuits, laundry_circuits, loads)
    demand = after_demand(general, 10_000)
    climate, which = climate_load(loads, interlocked=backup_interlocked)
    total = demand + climate
    amperes = total / LINE_TO_LINE
    standard = standard_load(area.value, small_appliance_circuits, laundry_circuits, loads)
    size = service_for(amperes)
    sized = () if size is None else (Also("service", "smallest standard service for it", Decimal(size), "A"),)
    return Answer(
        value=rounded(float(amperes)),
        words=f"The dwelling counts with {whole_amperes(amperes)} A ({float(total):,.0f} VA) by the optional method."
        + ("" if size is None else f" The smallest standard service for that is {size} A."),
        verdict=against_service(amperes, service, OPTIONAL),
        also=(
            Also("total", "calculated load", rounded(float(total)), "V.A"),
            Also("general", "general load before its demand factor", rounded(float(general)), "V.A"),
            Also("general_demand", "general load after it", rounded(float(demand)), "V.A"),
            Also("climate", f"heating or cooling: {which}", rounded(float(climate)), "V.A"),
            Also("amperes", "rounded to whole amperes", whole_amperes(amperes), "A"),
            *sized,
            Also(
                "neutral_total", "balanced load of the neutral (220.61)", rounded(float(standard.neutral_total)), "V.A"
            ),
            Also("neutral", "neutral", rounded(float(standard.neutral)), "A"),
        ),
        steps=(
            Step("general load: lighting, circuits and plates", rounded(float(general)), "V.A"),
            Step("10,000 VA in full, 40 % of the rest", rounded(float(demand)), "V.A"),
            Step(which, rounded(float(climate)), "V.A"),
            Step("calculated load", rounded(float(total)), "V.A"),
            Step("over 240 V", rounded(float(amperes)), "A"),
        ),
    )
