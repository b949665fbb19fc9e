"""Whether an existing dwelling's calculated load leaves room for another one."""

from __future__ import annotations

from decimal import Decimal
from typing import Annotated

from witnessmark.gauges.answer import Also, Answer, Step, rounded
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.electrical.calculating.cautions import INFORMATIONAL
from witnessmark.gauges.electrical.calculating.dwelling_new import after_demand, general_load
from witnessmark.gauges.electrical.calculating.loads import (
    AREA,
    HEATING,
    LAUNDRY,
    LINE_TO_LINE,
    LOADS,
    SERVICE,
    SMALL_APPLIANCE,
    Load,
    of_kind,
)
from witnessmark.gauges.electrical.calculating.outcome import against_service, whole_amperes
from witnessmark.gauges.electrical.editions import nec
from witnessmark.gauges.gauge import gauge
from witnessmark.units import Quantity

__all__ = ["dwelling_load_existing"]

EXISTING = nec("2005 to 2023", "220.83(A) and (B)", "seen in a copy")
_UNSAID = (
    "220.83(A) does not say how heating and cooling that stay as they are count; here the larger of the two counts "
    "among the other loads. Some read it as both."
)


@gauge(
    name="dwelling-load-existing",
    family="electrical",
    title="Load of an existing dwelling with something added (220.83)",
    unit="A",
    gives="calculated load of the existing dwelling with the loads to be added",
    sources=(EXISTING,),
    error="none in the arithmetic; every plate not read is a load left out",
    never="that a service is large enough or too small for this household",
    cautions=(INFORMATIONAL, "This is for adding loads to an existing service, not for sizing a new one."),
    example={
        "area": "1500sq ft",
        "loads": "range, range, 12kW; dishwasher, appliance, 1.2kW; dryer, dryer, 5kW; car, vehicle charger, 9.6kW,,,,,yes",
        "service": "100A",
    },
)
def dwelling_load_existing(
    area: Annotated[Quantity, AREA],
    loads: Annotated[tuple[Load, ...], LOADS],
    small_appliance_circuits: Annotated[int, SMALL_APPLIANCE] = 2,
    laundry_circuits: Annotated[int, LAUNDRY] = 1,
    *,
    service: Annotated[Quantity | None, SERVICE] = None,
    new_heating_or_cooling: Annotated[
        bool | None,
        Asked("whether heating or cooling is added or enlarged; left out, told by the rows marked new", example="no"),
    ] = None,
) -> Answer:
    """Load of an existing dwelling by 220.83, with the loads to be added.

    Rule:
        (A) no heating or cooling added: 8000 VA in full, 40 % of the rest, of all load, old and new
        (B) heating or cooling added: the larger of heating and cooling in full; of all other load 8000 VA in full and
        40 % of the rest
    Known trap: the threshold is 8 kVA here and 10 kVA in 220.82.

    >>> from witnessmark.gauges import evaluate
    >>> from witnessmark.gauges.gauge import of
    >>> evaluate("dwelling-load-existing", of(dwelling_load_existing).example)["total"]
    Decimal('19520')
    """
    climate_kinds = HEATING | {"cooling"}
    added = new_heating_or_cooling
    if added is None:
        added = any(load.new and load.kind in climate_kinds for load in loads)
    general = general_load(area.value, small_appliance_circuits, laundry_circuits, loads)
    heat, cool = of_kind(loads, HEATING), of_kind(loads, ("cooling", "heat pump"))
    climate = max(heat, cool)
    both = of_kind(loads, climate_kinds)

    def counted(share: Decimal) -> Decimal:
        return share + after_demand(general, 8_000) if added else after_demand(general + share, 8_000)

    total = counted(climate)
    amperes = total / LINE_TO_LINE
    coming = sum((_alone(load) for load in loads if load.new), Decimal(0))
    rule = "(B)" if added else "(A)"
    return Answer(
        value=rounded(float(amperes)),
        words=f"With what is to be added the dwelling counts with {whole_amperes(amperes)} A ({float(total):,.0f} VA) by "
        f"220.83{rule}.",
        verdict=against_service(amperes, service, EXISTING),
        cautions=(_UNSAID,) if climate and not added else (),
        also=(
            Also("total", "calculated load", rounded(float(total)), "V.A"),
            Also("rule", "part of 220.83", rule),
            Also("general", "other load before its demand factor", rounded(float(general)), "V.A"),
            Also("climate", "larger of heating and cooling", rounded(float(climate)), "V.A"),
            Also("added", "plates of what is to be added", rounded(float(coming)), "V.A"),
            Also("both_counted", "load if heating and cooling both counted", rounded(float(counted(both))), "V.A"),
        ),
        steps=(
            Step("lighting, circuits and plates", rounded(float(general)), "V.A"),
            Step("larger of heating and cooling", rounded(float(climate)), "V.A"),
            Step(f"calculated load by 220.83{rule}", rounded(float(total)), "V.A"),
            Step("over 240 V", rounded(float(amperes)), "A"),
        ),
    )


def _alone(load: Load) -> Decimal:
    return of_kind((load,), (load.kind,))
