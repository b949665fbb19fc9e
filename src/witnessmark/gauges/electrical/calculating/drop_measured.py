"""What a voltage read with and without a load says about the way there."""

from __future__ import annotations

from decimal import Decimal
from typing import Annotated

from witnessmark.gauges.answer import Also, Answer, Step, Uncertainty, rounded
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.electrical.calculating.cautions import INFORMATIONAL, WORK_ON_IT
from witnessmark.gauges.electrical.calculating.drop_inputs import (
    ADVICE,
    ADVICE_BRANCH,
    ADVICE_TOTAL,
    CURRENT,
    NO_LOAD,
    NOT_ENFORCEABLE,
)
from witnessmark.gauges.gauge import gauge
from witnessmark.units import Quantity

__all__ = ["voltage_drop_measured"]

_RISE = (
    "The voltage rose under load: either the supply moved between the readings (read again, several times), or a "
    "neutral is loose or open upstream, which can burn out equipment: have a licensed electrician or the utility look "
    "at it soon."
)


@gauge(
    name="voltage-drop-measured",
    family="electrical",
    title="Voltage drop from readings without and with load",
    unit="%",
    gives="voltage lost under the load, in % of the voltage without it",
    sources=(ADVICE,),
    error="0.3 V of meter and supply noise is 0.25 % at 120 V: small loads give no usable answer",
    never="that wiring is sound, or where on the way the voltage is lost",
    cautions=(NOT_ENFORCEABLE, INFORMATIONAL, WORK_ON_IT),
    example={"no_load_voltage": "121.5V", "loaded_voltage": "117V", "load_current": "12A"},
)
def voltage_drop_measured(
    no_load_voltage: Annotated[Quantity, NO_LOAD],
    loaded_voltage: Annotated[
        Quantity,
        Asked(
            "voltage at the same outlet with the load running",
            "V",
            lowest="80",
            highest="260",
            least="0",
            most="1000",
            how="at the same outlet within seconds of the first reading, load steady",
            example="117V",
        ),
    ],
    load_current: Annotated[Quantity, CURRENT],
    at_current: Annotated[
        Quantity | None,
        Asked(
            "another current for which the drop is to be foretold",
            "A",
            lowest="1",
            highest="100",
            least="0.1",
            most="1000",
            how="such as 12 A, which is 80 % of a 15 A circuit",
            example="12A",
        ),
    ] = None,
) -> Answer:
    """Voltage drop and implied resistance from two voltages and the current of the load.

    Formula:
        drop % = (V0 - V1) / V0 * 100,  resistance of the whole path there and back R = (V0 - V1) / I,
        drop at another current = I' R / V0 * 100
    The resistance holds for all that lies upstream: wire, splices, breaker, service and transformer.

    >>> from witnessmark.units import parse_quantity as q
    >>> round(voltage_drop_measured(q("120V"), q("115V"), q("12.5A")).value, 2)
    Decimal('4.17')
    """
    lost = no_load_voltage.value - loaded_voltage.value
    percent = lost / no_load_voltage.value * 100
    ohms = lost / load_current.value
    value = rounded(float(percent))
    off = rounded(float(Decimal("0.3") / no_load_voltage.value * 100))
    foretold: tuple[Also, ...] = ()
    if at_current is not None:
        there = rounded(float(at_current.value * ohms / no_load_voltage.value * 100))
        foretold = (Also("percent_at_current", f"drop foretold at {at_current.value:f} A", there, "%"),)
    told = f"The voltage falls by {float(lost):.1f} V, {float(percent):.1f} %, under {load_current.value:f} A"
    return Answer(
        value=value,
        words=f"{told}; the way there and back has about {float(ohms):.2f} ohm."
        if lost >= 0
        else f"The voltage rises by {float(-lost):.1f} V under load, which wire alone cannot do.",
        uncertainty=Uncertainty("0.3 V of meter and supply noise", off),
        cautions=(_RISE,) if lost < 0 else (),
        also=(
            Also("volts", "voltage lost", rounded(float(lost)), "V"),
            Also("resistance", "implied resistance there and back, all upstream included", rounded(float(ohms)), "Ohm"),
            Also("above_branch_advice", "above the advice of 3 %", percent > ADVICE_BRANCH),
            Also("above_total_advice", "above the advice of 5 % in all", percent > ADVICE_TOTAL),
            *foretold,
        ),
        steps=(
            Step("voltage lost", rounded(float(lost)), "V"),
            Step("in percent of the voltage without load", value, "%"),
            Step("divided by the current: resistance", rounded(float(ohms)), "Ohm"),
        ),
    )
