"""What carbon monoxide in flue gas would read without the air that dilutes it."""

from __future__ import annotations

from decimal import Decimal
from typing import Annotated, Literal

from witnessmark.gauges.answer import Also, Answer, Outside, Step, Uncertainty, rounded
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.fuel.cautions import LICENSED, MONOXIDE, RELIGHT
from witnessmark.gauges.fuel.messages import NEITHER_GIVEN, NOT_FLUE_GAS
from witnessmark.gauges.fuel.sources import AIR_FREE
from witnessmark.gauges.gauge import gauge
from witnessmark.problems import Refusal
from witnessmark.units import Quantity

__all__ = ["ULTIMATE", "air_free_by_dioxide", "air_free_by_oxygen", "carbon_monoxide_air_free"]

#: Carbon dioxide in dry flue gas without excess air, in % (recalled; the fuel's own figure may be given instead).
ULTIMATE = {"natural gas": 12.2, "propane": 14.0, "fuel oil": 15.6}
_AIR = 20.9
_MOST_FOR_USE, _MOST_AT_ALL = 15, 20
_LEAST_DIOXIDE, _LEAST_DIOXIDE_FOR_USE = Decimal("0.5"), Decimal("3.4")
_OXYGEN_ERROR = 0.3


def air_free_by_oxygen(ppm: float, oxygen: float) -> float:
    """Air-free carbon monoxide in ppm from the reading and oxygen in % of dry flue gas, 0 to below 20.9.

    >>> round(air_free_by_oxygen(87, 5), 1)
    114.4
    """
    return ppm * (_AIR / (_AIR - oxygen))


def air_free_by_dioxide(ppm: float, dioxide: float, ultimate: float) -> float:
    """Air-free carbon monoxide in ppm from the reading, carbon dioxide and the fuel's ultimate carbon dioxide, in %.

    >>> air_free_by_dioxide(100, 6.1, 12.2)
    200.0
    """
    return ppm * ultimate / dioxide


@gauge(
    name="carbon-monoxide-air-free",
    family="fuel",
    title="Carbon monoxide in flue gas, reckoned without excess air",
    unit="[ppm]",
    gives="air-free carbon monoxide",
    sources=(AIR_FREE,),
    error="an oxygen sensor is within about 0.3 %, which weighs more the more air is in the sample",
    never="what people breathe: it is a figure for flue gas, not for a room",
    cautions=(
        MONOXIDE, RELIGHT, LICENSED,
        "Sample inside the flue ahead of the draft hood, after five minutes of burning; 20.9 % is the oxygen of fresh air.",
    ),
    example={"measured": "87ppm", "oxygen": "5%"},
)  # fmt: skip
def carbon_monoxide_air_free(
    measured: Annotated[
        Quantity,
        Asked(
            "carbon monoxide as measured in the flue", "[ppm]", lowest="0", highest="10000", least="0", most="1000000",
            how="with a combustion analyser, steady for a minute", example="87ppm",
        ),
    ],
    oxygen: Annotated[
        Quantity | None,
        Asked(
            "oxygen in the same sample", "%", lowest="0", highest="15", least="0", most="21",
            how="from the same analyser; above 15 % the sample is mostly air", example="5%",
        ),
    ] = None,
    dioxide: Annotated[
        Quantity | None,
        Asked(
            "carbon dioxide in the same sample, instead of oxygen", "%", lowest="3.4", highest="12", least="0",
            most="20", how="from an analyser that measures it (most reckon it from oxygen)", example="8%",
        ),
    ] = None,
    fuel: Annotated[
        Literal["natural gas", "propane", "fuel oil"], Asked("fuel, for its ultimate carbon dioxide")
    ] = "natural gas",
    ultimate: Annotated[
        Quantity | None,
        Asked(
            "ultimate carbon dioxide of the fuel, where it is known", "%", lowest="11", highest="16", least="5",
            most="25", how="from the analyser's fuel table", example="11.9%",
        ),
    ] = None,
) -> Answer:  # fmt: skip
    """Air-free carbon monoxide, from oxygen or from carbon dioxide in the same sample.

    Formula:
        CO air-free = CO x 20.9 / (20.9 - O2)
        CO air-free = CO x ultimate CO2 / CO2

    Traps: 20.9 and not 21.0; close to 20.9 % oxygen the factor blows up, so beyond 15 % the answer is flagged and
    from 20 % on refused.

    >>> from witnessmark.units import parse_quantity as q
    >>> carbon_monoxide_air_free(q("100ppm"), oxygen=q("10.45%")).value
    Decimal('200')
    """
    ppm = float(measured.value)
    most = float(ultimate.value) if ultimate is not None else ULTIMATE[fuel]
    if oxygen is not None:
        if oxygen.value >= _MOST_AT_ALL:
            raise Refusal(NOT_FLUE_GAS.at("oxygen", f"{oxygen.value} %"))
        value, factor = air_free_by_oxygen(ppm, float(oxygen.value)), _AIR / (_AIR - float(oxygen.value))
        off = value * _OXYGEN_ERROR / (_AIR - float(oxygen.value))
        doubtful = oxygen.value > _MOST_FOR_USE
        how = f"at {oxygen.value} % oxygen"
    elif dioxide is not None:
        if dioxide.value < _LEAST_DIOXIDE:
            raise Refusal(NOT_FLUE_GAS.at("dioxide", f"{dioxide.value} %"))
        value, factor = air_free_by_dioxide(ppm, float(dioxide.value), most), most / float(dioxide.value)
        off = value * _OXYGEN_ERROR / float(dioxide.value)
        doubtful = dioxide.value < _LEAST_DIOXIDE_FOR_USE
        how = f"at {dioxide.value} % carbon dioxide"
    else:
        raise Refusal(NEITHER_GIVEN.at("oxygen or dioxide", "from the same sample as the carbon monoxide"))
    words = f"{measured.value} ppm {how} is about {value:,.0f} ppm air-free."
    if doubtful:
        words += " The sample is mostly air: have it taken again ahead of the draft hood before it is used."
    odd: tuple[Outside, ...] = ()
    if dioxide is not None and oxygen is None and factor < 1:
        odd = (Outside("dioxide", dioxide, None, rounded(most), "more carbon dioxide than the fuel can give"),)
        words += " That is more carbon dioxide than this fuel gives: the fuel or the reading is another."
    return Answer(
        value=rounded(value),
        unit="[ppm]",
        words=words,
        uncertainty=Uncertainty("from 0.3 % in oxygen or carbon dioxide; the monoxide sensor's own error comes on top",
                                rounded(off)),
        outside_range=odd,
        also=(Also("factor", "air-free over measured", rounded(factor), "1"),),
        steps=(Step("factor for the air in the sample", rounded(factor), "1"),
               Step("measured times factor", rounded(value), "[ppm]")),
    )  # fmt: skip
