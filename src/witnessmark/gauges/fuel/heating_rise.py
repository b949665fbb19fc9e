"""Whether a furnace warms its air within the range on its plate."""

from __future__ import annotations

from decimal import Decimal
from typing import Annotated

from witnessmark.gauges.answer import Also, Answer, Limit, Source, Uncertainty, rounded
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.fuel.cautions import GAS, LICENSED, MONOXIDE, RELIGHT
from witnessmark.gauges.fuel.messages import LIMITS_CROSSED
from witnessmark.gauges.fuel.moist_air import SEA_LEVEL, pressure_at
from witnessmark.gauges.fuel.sources import COMMON
from witnessmark.gauges.gauge import gauge
from witnessmark.problems import Refusal
from witnessmark.units import Quantity

__all__ = ["heating_temperature_rise"]

_PLATE = Source("Rating plate of the furnace", "", "temperature rise", "common practice, no source")


@gauge(
    name="heating-temperature-rise",
    family="fuel",
    title="Temperature rise of a furnace against its plate",
    unit="[degF]{difference}",
    gives="supply less return temperature",
    sources=(COMMON,),
    error="two thermometers side by side differ by about 1 °F; radiant heat adds 10 °F and more near the heat exchanger",
    never="that a heat exchanger is whole or that a burner is adjusted",
    cautions=(GAS, MONOXIDE, RELIGHT, LICENSED, "After 15 minutes of steady burning, all registers open, filter in."),
    example={"supply": "122F", "return_air": "68F", "plate_low": "35F", "plate_high": "65F"},
)
def heating_temperature_rise(
    supply: Annotated[
        Quantity,
        Asked("supply air", "[degF]", lowest="60", highest="200", least="-40", most="400",
              how="in the supply trunk out of sight of the heat exchanger, or the nearest register", example="122F"),
    ],
    return_air: Annotated[
        Quantity,
        Asked("return air", "[degF]", lowest="40", highest="90", least="-40", most="200", how="at the return, near the unit",
              example="68F"),
    ],
    plate_low: Annotated[
        Quantity | None,
        Asked("least rise on the plate", "[degF]{difference}", lowest="10", highest="80", least="0", how="from the plate",
              example="35F"),
    ] = None,
    plate_high: Annotated[
        Quantity | None,
        Asked("greatest rise on the plate", "[degF]{difference}", lowest="20", highest="120", least="0",
              how="from the plate", example="65F"),
    ] = None,
    *,
    output: Annotated[
        Quantity | None,
        Asked("output rating, for the airflow that follows", "[Btu_IT]/h", lowest="10000", highest="200000", least="1",
              how="from the plate: output, not input", example="76000 Btu/h"),
    ] = None,
    altitude: Annotated[
        Quantity | None,
        Asked("height above the sea, for the airflow", "[ft_i]", lowest="-300", highest="12000", least="-1500",
              most="30000", how="from a map", example="5280ft"),
    ] = None,
) -> Answer:  # fmt: skip
    """Temperature rise of a furnace, held against its plate, and the airflow that its output implies.

    Formula:
        rise = supply - return;  airflow in cfm = output / (1.08 x rise), 1.08 less with altitude

    >>> from witnessmark.units import parse_quantity as q
    >>> heating_temperature_rise(q("122F"), q("68F"), q("35F"), q("65F")).verdict.outcome
    'within'
    """
    if plate_low is not None and plate_high is not None and plate_low.value > plate_high.value:
        raise Refusal(LIMITS_CROSSED.at("plate_low", f"{plate_low.value} and {plate_high.value} °F"))
    rise = supply.value - return_air.value
    words = f"The air is warmed by {rise:.0f} °F."
    if rise <= 0:
        words = "The supply is no warmer than the return: the furnace was not heating when this was read."
    also: list[Also] = []
    if output is not None and rise > 0:
        thin = 1.0 if altitude is None else pressure_at(float(altitude.value)) / SEA_LEVEL
        flow = rounded(float(output.value) / (1.08 * thin * float(rise)))
        also.append(Also("airflow", "airflow that its output implies", flow, "[cft_i]/min"))
        words += f" At its full output that is about {flow:,.0f} cfm."
    sure = Uncertainty("about 2 °F from the two thermometers", Decimal(2))
    answer = Answer(value=rise, unit="[degF]{difference}", words=words, uncertainty=sure, also=tuple(also))
    if plate_low is None and plate_high is None:
        return answer
    if plate_high is not None and rise > plate_high.value:
        answer = Answer(value=rise, unit="[degF]{difference}", uncertainty=sure, also=tuple(also),
                        words=words + " More than the plate: too little air, or too much gas.")  # fmt: skip
    elif plate_low is not None and rise < plate_low.value:
        answer = Answer(value=rise, unit="[degF]{difference}", uncertainty=sure, also=tuple(also),
                        words=words + " Less than the plate: too much air, or too little gas; it may condense.")  # fmt: skip
    return answer.against(Limit(_PLATE, plate_low, plate_high, "Temperature rise against the plate"))
