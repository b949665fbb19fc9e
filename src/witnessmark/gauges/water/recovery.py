"""How much water a heater can warm in an hour."""

from __future__ import annotations

from decimal import Decimal
from typing import Annotated

from witnessmark.gauges.answer import Also, Answer, Source, Step, rounded
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.gauge import gauge
from witnessmark.gauges.water.cautions import RELIEF, SCALD
from witnessmark.units import Quantity, convert, say

__all__ = ["WEIGHT", "heater_recovery", "recovery_gph"]

#: Pounds in a gallon of water, as the trade rounds it; Btu to warm it by one degree Fahrenheit.
WEIGHT = 8.33


def recovery_gph(btu_per_hour: float, efficiency: float, rise: float) -> float:
    """Gallons an hour warmed by *rise* °F (above 0) from an input in Btu/h at an *efficiency* of 0 to 1.

    >>> round(recovery_gph(40000, 0.80, 90), 2)
    42.68
    """
    return btu_per_hour * efficiency / (WEIGHT * rise)


@gauge(
    name="heater-recovery",
    family="water",
    title="Water that a heater warms in an hour",
    unit="[gal_us]/h",
    gives="water warmed in an hour by the rise given",
    sources=(Source("heat balance of a heater", "", "8.33 lb a gallon, 1 Btu a pound and degree F", "calculated"),),
    error="as good as the efficiency; scale in a tank and a burned-out element lower it much more than the formula knows",
    never="that a household will have enough hot water, or that the heater works",
    cautions=(
        "A two-element electric heater runs one element at a time: its input is one element's.",
        RELIEF,
        SCALD,
    ),
    example={"input_power": "40000Btu/h", "efficiency": "80%", "rise": "90F", "tank": "50gal"},
)
def heater_recovery(
    input_power: Annotated[
        Quantity,
        Asked(
            "input on the rating plate",
            "[Btu_IT]/h",
            lowest="1000",
            highest="400000",
            least="0",
            most="10000000",
            how="as printed: Btu/h for gas, W or kW for electric",
            example="40000Btu/h",
        ),
    ],
    efficiency: Annotated[
        Quantity,
        Asked(
            "recovery efficiency",
            "%",
            lowest="50",
            highest="100",
            least="1",
            most="600",
            how="gas tanks 76 to 80 %, condensing 90 to 98 %, electric elements 98 %: common practice, no source",
            example="80%",
        ),
    ],
    rise: Annotated[
        Quantity,
        Asked(
            "rise of temperature from cold to hot",
            "[degF]{difference}",
            lowest="10",
            highest="150",
            least="0.1",
            most="180",
            how="set-point less the cold water's temperature",
            example="90F",
        ),
    ],
    tank: Annotated[
        Quantity | None,
        Asked(
            "volume of the tank, for the time to warm it through",
            "[gal_us]",
            lowest="1",
            highest="200",
            least="0",
            example="50gal",
        ),
    ] = None,
) -> Answer:
    """How many gallons an hour a heater warms, from its input, its efficiency and the rise.

    Formula:
        gal/h = Btu/h * efficiency / (8.33 * rise in degrees F); 1 kW = 3412 Btu/h

    Input is not output: 40,000 Btu/h on the plate of a gas heater puts 32,000 into the water at 80 %. A heat pump has more
    than 100 %.

    >>> from witnessmark.gauges import evaluate
    >>> round(evaluate("heater-recovery", {"input_power": "4.5kW", "efficiency": "98%", "rise": "90F"}).value, 2)
    Decimal('20.07')
    """  # fmt: skip
    value = recovery_gph(float(input_power.value), float(efficiency.value) / 100, float(rise.value))
    words = f"The heater warms about {value:.0f} gallons an hour by {rise.value:.0f} °F."
    also = [Also("metric", "the same", convert(Quantity(rounded(value), "[gal_us]/h"), "L/h").value, "L/h")]
    if tank is not None and value > 0:
        minutes = rounded(60 * float(tank.value) / value)
        also.append(Also("minutes", "time to warm the whole tank", minutes, "min"))
        words += f" A cold tank of {say(tank)} takes about {minutes:.0f} minutes."
    return Answer(
        value=rounded(value),
        words=words,
        also=tuple(also),
        steps=(
            Step("input", input_power.value, "[Btu_IT]/h"),
            Step("into the water", rounded(float(input_power.value * efficiency.value / Decimal(100))), "[Btu_IT]/h"),
            Step("to warm a gallon", rounded(WEIGHT * float(rise.value)), "[Btu_IT]"),
        ),
    )
