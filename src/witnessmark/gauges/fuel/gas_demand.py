"""How much gas appliances ask for, from their plates or from the meter."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal
from typing import Annotated, Literal

from witnessmark.gauges.answer import Also, Answer, Step, Table, Uncertainty, rounded
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.fuel.cautions import GAS, LICENSED, RELIGHT
from witnessmark.gauges.fuel.sources import COMMON, PIPE_EQUATIONS
from witnessmark.gauges.gauge import gauge
from witnessmark.gauges.messages import MISSING_INPUT
from witnessmark.problems import Refusal
from witnessmark.units import Quantity

__all__ = ["HEATING_VALUES", "Load", "gas_demand", "gas_meter_input"]

#: Heat of a cubic foot of gas in Btu where the supplier's own figure is not known.
HEATING_VALUES = {"natural gas": Decimal(1000), "propane": Decimal(2500)}
_PER_HOUR = 3600
_ATMOSPHERE = Decimal("14.7")

_HEAT = Asked(
    "heat of a cubic foot of gas, where the supplier states it", "[Btu_IT]/[cft_i]", lowest="500", highest="3300",
    least="100", most="4000", how="from the gas bill or the supplier", example="1035 [Btu_IT]/[cft_i]",
)  # fmt: skip


@dataclass(frozen=True, slots=True)
class Load:
    """One gas appliance."""

    input: Annotated[
        Quantity,
        Asked(
            "input rating", "[Btu_IT]/h", lowest="0", highest="400000", least="0", how="from the rating plate",
            example="40000 Btu/h",
        ),
    ]  # fmt: skip
    name: Annotated[str | None, Asked("what it is called")] = None


@gauge(
    name="gas-demand",
    family="fuel",
    title="Gas that appliances ask for",
    unit="[cft_i]/h",
    gives="cubic feet of gas an hour with all of them burning",
    sources=(PIPE_EQUATIONS, COMMON),
    error="gas differs by about 5 % in heat from place to place and day to day",
    never="what an appliance burns: that is clocked at the meter",
    cautions=(GAS, RELIGHT),
    example={"appliances": "40000 Btu/h, water heater; 100000 Btu/h, furnace"},
)
def gas_demand(
    appliances: Annotated[tuple[Load, ...], Asked("appliances on the pipe", how="all beyond the same point")],
    gas: Annotated[Literal["natural gas", "propane"], Asked("gas supplied")] = "natural gas",
    heating_value: Annotated[Quantity | None, _HEAT] = None,
) -> Answer:
    """Cubic feet of gas an hour for appliances that burn together, from the inputs on their plates.

    Formula:
        demand = input in Btu/h / heating value in Btu/ft3; 1000 natural gas, 2500 propane where none is stated

    >>> from witnessmark.units import parse_quantity as q
    >>> gas_demand((Load(q("100000 Btu/h")), Load(q("40000 Btu/h")))).value
    Decimal('140')
    """
    if not appliances:
        raise Refusal(MISSING_INPUT.at("appliances", "one appliance at least, such as: 40000 Btu/h"))
    heat = heating_value.value if heating_value is not None else HEATING_VALUES[gas]
    total = sum((one.input.value for one in appliances), Decimal(0))
    rows = tuple(
        (one.name or f"appliance {at}", one.input.value, rounded(float(one.input.value / heat)))
        for at, one in enumerate(appliances, 1)
    )
    value = rounded(float(total / heat))
    given = "as stated" if heating_value is not None else "the usual figure"
    return Answer(
        value=value,
        unit="[cft_i]/h",
        words=f"{total:,.0f} Btu/h in all is {value:,.1f} cubic feet an hour at {heat:,.0f} Btu ({given}).",
        uncertainty=Uncertainty("about 5 %, from the heat of the gas", value * Decimal("0.05")),
        also=(Also("total_input", "inputs together", total, "[Btu_IT]/h"),),
        steps=(Step("inputs together", total, "[Btu_IT]/h"), Step("heat of a cubic foot", heat, "[Btu_IT]/[cft_i]")),
        table=Table((("appliance", ""), ("input", "[Btu_IT]/h"), ("demand", "[cft_i]/h")), rows),
    )


@gauge(
    name="gas-meter-input",
    family="fuel",
    title="What an appliance burns, clocked at the meter",
    unit="[Btu_IT]/h",
    gives="heat that the gas passing the meter brings in an hour",
    sources=(COMMON,),
    error="about 2 % from the stopwatch, 5 % from the heat of the gas",
    never="that the appliance is adjusted as it should be, or that piping is tight",
    cautions=(
        GAS,
        RELIGHT,
        LICENSED,
        "One appliance burns, all others are off by their normal controls, pilots noted.",
    ),
    example={"dial": "2 cu ft", "time": "72s", "plate": "100000 Btu/h"},
)
def gas_meter_input(
    dial: Annotated[
        Quantity,
        Asked(
            "gas for one turn of the dial that was watched", "[cft_i]", lowest="0.25", highest="10", least="0.01",
            most="1000", how="printed in the dial: 1/2, 1 or 2 cubic feet", example="2 cu ft",
        ),
    ],
    time: Annotated[
        Quantity,
        Asked(
            "time for the turns counted", "s", lowest="10", highest="3600", least="1", most="86400",
            how="at least one whole turn and half a minute", example="72s",
        ),
    ],
    *,
    turns: Annotated[int, Asked("whole turns counted", lowest="1", highest="100", least="1", most="10000")] = 1,
    plate: Annotated[
        Quantity | None,
        Asked(
            "input on the appliance's plate", "[Btu_IT]/h", lowest="1000", highest="400000", least="1",
            how="from the rating plate", example="100000 Btu/h",
        ),
    ] = None,
    gas: Annotated[Literal["natural gas", "propane"], Asked("gas supplied")] = "natural gas",
    heating_value: Annotated[Quantity | None, _HEAT] = None,
    meter_pressure: Annotated[
        Quantity | None,
        Asked(
            "pressure at the meter above the atmosphere, where it is 1 psi or more", "[psi]", lowest="0", highest="10",
            least="0", most="100", how="marked at the meter; left out for a house service", example="2psi",
        ),
    ] = None,
) -> Answer:  # fmt: skip
    """Heat input clocked at the meter: cubic feet an hour times the heat of the gas.

    Formula:
        input = 3600 x dial x turns / seconds x heating value x (14.7 + p)/14.7     p psi at the meter, if any

    >>> from witnessmark.units import parse_quantity as q
    >>> gas_meter_input(q("2 cu ft"), q("72s")).value
    Decimal('100000')
    """
    heat = heating_value.value if heating_value is not None else HEATING_VALUES[gas]
    factor = 1 if meter_pressure is None else (_ATMOSPHERE + meter_pressure.value) / _ATMOSPHERE
    flow = rounded(float(dial.value * turns * _PER_HOUR / time.value * factor))
    value = rounded(float(flow * heat))
    words = f"The meter passes {flow:,.1f} cubic feet an hour, about {value:,.0f} Btu/h."
    also = [Also("flow", "gas passing", flow, "[cft_i]/h")]
    if plate is not None:
        share = rounded(float(value / plate.value * 100))
        also.append(Also("of_plate", "of the plate's input", share, "%"))
        words += f" That is {share:.0f} % of the plate."
    return Answer(
        value=value,
        unit="[Btu_IT]/h",
        words=words,
        uncertainty=Uncertainty("about 5 %, from the heat of the gas and the stopwatch", value * Decimal("0.05")),
        also=tuple(also),
        steps=(Step("cubic feet an hour", flow, "[cft_i]/h"), Step("heat of a cubic foot", heat, "[Btu_IT]/[cft_i]")),
    )
