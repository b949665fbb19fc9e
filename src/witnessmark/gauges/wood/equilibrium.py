"""What moisture content wood comes to in air of a given temperature and humidity, and the other way round."""

from __future__ import annotations

from decimal import Decimal
from typing import Annotated, TypeAlias

from witnessmark.gauges.answer import Also, Answer, Outside, Source, Step, Uncertainty, rounded
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.gauge import gauge
from witnessmark.gauges.wood.messages import BEYOND_THE_EQUATION
from witnessmark.gauges.wood.sorption import COLDEST, HOTTEST, emc_fahrenheit_form, emc_percent, humidity_for_emc
from witnessmark.problems import Refusal
from witnessmark.units import Quantity, say

__all__ = [
    "AirHumidity",
    "AirTemperature",
    "emc_percent",
    "in_the_equation",
    "near_saturation",
    "wood_air_humidity",
    "wood_emc",
]

HANDBOOK = Source("Wood Handbook, FPL-GTR-282", "2021", "chapter 4, equation 4-5 and Table 4-2", "seen in a copy")
HISTORIC = Source("FPL-GTR-229", "2014", "on the historic data behind Table 4-2", "seen in a copy")
#: From here on wood nears fibre saturation (26 to 32 % by species): the equation gives a number, not a reading.
NEAR_SATURATION = Decimal(25)

AirTemperature: TypeAlias = Annotated[
    Quantity,
    Asked(
        "temperature of the air", "Cel", lowest="-1.2", highest="132.3", least="-80", most="150",
        how="with a thermo-hygrometer, after it has stood in the room for a quarter of an hour", example="70F",
    ),
]  # fmt: skip
AirHumidity: TypeAlias = Annotated[
    Quantity,
    Asked(
        "relative humidity of the air", "%", lowest="5", highest="95", least="0", most="100",
        how="on the same instrument, away from people, vents and sun", example="50%",
    ),
]  # fmt: skip


def in_the_equation(temperature: Quantity) -> float:
    """The temperature in °C where the equation gives a number; refuses it where it does not (WM013).

    >>> in_the_equation(Quantity(Decimal(20), "Cel"))
    20.0
    """
    celsius = float(temperature.value)
    if not COLDEST <= celsius <= HOTTEST:
        raise Refusal(BEYOND_THE_EQUATION.at("temperature", say(temperature)))
    return celsius


def near_saturation(percent: Decimal) -> tuple[Outside, ...]:
    """The remark that a moisture content lies where wood nears fibre saturation, where it does.

    >>> near_saturation(Decimal(20))
    ()
    """
    if percent <= NEAR_SATURATION:
        return ()
    why = "towards fibre saturation, 26 to 32 % by species, the equation is not a measure of what wood takes up"
    return (Outside("moisture content", Quantity(percent, "%"), None, NEAR_SATURATION, why),)


@gauge(
    name="wood-emc",
    family="wood",
    title="Moisture content that wood comes to in this air",
    unit="%",
    gives="moisture content of wood in balance with the air, in % of its oven-dry mass",
    sources=(HANDBOOK, HISTORIC),
    error="about 1 % moisture content either way: the equation is a fit to old data on one species",
    never="what a particular board holds now, or that it is dry enough to cover",
    cautions=("Wood takes days to weeks to come into balance; a wall cavity has air of its own.",),
    example={"temperature": "70F", "humidity": "50%"},
)
def wood_emc(temperature: AirTemperature, humidity: AirHumidity) -> Answer:
    """Equilibrium moisture content of wood from the temperature and relative humidity of the air.

    Formula:
        M = 1800/W * [Kh/(1 - Kh) + (K1 Kh + 2 K1 K2 K^2 h^2) / (1 + K1 Kh + K1 K2 K^2 h^2)]
        with h the relative humidity as a fraction, T in degrees Celsius and
        W = 349 + 1.29 T + 0.0135 T^2,             K = 0.805 + 0.000736 T - 0.00000273 T^2,
        K1 = 6.27 - 0.00938 T - 0.000303 T^2,      K2 = 1.91 + 0.0407 T - 0.000293 T^2

    The coefficients printed for °F belong to °F; what they give stands in ``also`` to compare.

    >>> from witnessmark.units import parse_quantity as q
    >>> round(wood_emc(q("70F"), q("50%")).value, 1)
    Decimal('9.2')
    """
    celsius, fraction = in_the_equation(temperature), float(humidity.value) / 100
    value = rounded(emc_percent(celsius, fraction))
    words = f"Wood left in this air comes to about {value:.1f} % moisture content."
    if value > NEAR_SATURATION:
        words += " That is where wood nears saturation; take it as very damp, not as a number."
    return Answer(
        value=value,
        words=words,
        uncertainty=Uncertainty("about 1 % moisture content either way", Decimal(1)),
        outside_range=near_saturation(value),
        also=(
            Also(
                "fahrenheit_form",
                "by the coefficients published for °F, to compare",
                rounded(emc_fahrenheit_form(celsius * 1.8 + 32, fraction)),
                "%",
            ),
        ),
        steps=(
            Step("temperature in °C", rounded(celsius), "Cel"),
            Step("humidity as a fraction", rounded(fraction), "1"),
            Step("equation", value, "%"),
        ),
    )


@gauge(
    name="wood-air-humidity",
    family="wood",
    title="Air humidity that a moisture content of wood stands for",
    unit="%",
    gives="relative humidity of air in which wood would come to this moisture content",
    sources=(HANDBOOK,),
    error="about 5 % relative humidity for 1 % moisture content",
    never="the humidity of the room: wood remembers weeks, and a meter reads one spot",
    cautions=("The reading must be of wood, corrected for species and temperature.",),
    example={"temperature": "60F", "moisture": "16%"},
)
def wood_air_humidity(
    temperature: AirTemperature,
    moisture: Annotated[
        Quantity,
        Asked(
            "moisture content of the wood",
            "%",
            lowest="4",
            highest="25",
            least="0",
            most="300",
            how="with a pin meter along the grain, corrected for species and wood temperature",
            example="16%",
        ),
    ],
) -> Answer:
    """Relative humidity that holds wood at a moisture content: what the air in a closed crawl space or wall must be like.

    Formula:
        find h with M(T, h) = moisture content, M as in wood-emc; it rises with h, so there is one

    >>> from witnessmark.units import parse_quantity as q
    >>> round(wood_air_humidity(q("20 Cel"), q("12%")).value)
    65
    """  # fmt: skip
    celsius, percent = in_the_equation(temperature), float(moisture.value)
    found = humidity_for_emc(celsius, percent)
    if found is None:
        most = emc_percent(celsius, 1)
        return Answer(
            words=f"No air holds wood at {percent:.1f} %: even saturated air gives about {most:.0f} %. "
            "The wood has taken up liquid water, or is still drying from the sawmill.",
            also=(Also("liquid_water", "more than air alone explains", value=True),),
        )
    other = humidity_for_emc(celsius, max(percent - 1, 0))
    off = rounded(100 * abs(found - other)) if other is not None else None
    return Answer(
        value=rounded(100 * found),
        words=f"Wood stays at {percent:.1f} % in air of about {100 * found:.0f} % relative humidity.",
        uncertainty=Uncertainty("for 1 % moisture content either way", off),
        also=(Also("liquid_water", "more than air alone explains", value=False),),
    )
