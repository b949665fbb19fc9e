"""What moisture content wood comes to in air of a given temperature and humidity."""

from __future__ import annotations

from decimal import Decimal
from typing import Annotated

from witnessmark.gauges.answer import Answer, Source, Uncertainty, rounded
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.gauge import gauge
from witnessmark.units import Quantity

__all__ = ["emc_percent", "wood_emc"]

HANDBOOK = Source("Wood Handbook, FPL-GTR-282", "2021", "chapter 4, equation 4-5 and Table 4-2", "seen in a copy")


def emc_percent(celsius: float, humidity: float) -> float:
    """Equilibrium moisture content in % of wood in air at *celsius* °C and relative *humidity* 0 to 1 (a fraction).

    Hailwood-Horrobin fit of the Wood Handbook, FPL-GTR-282, equation 4-5, metric coefficients; valid -1 to 132 °C.

    >>> round(emc_percent(20, 0.5), 2)
    9.27
    """
    w = 349 + 1.29 * celsius + 0.0135 * celsius**2
    k = 0.805 + 0.000736 * celsius - 0.00000273 * celsius**2
    k1 = 6.27 - 0.00938 * celsius - 0.000303 * celsius**2
    k2 = 1.91 + 0.0407 * celsius - 0.000293 * celsius**2
    kh = k * humidity
    return 1800 / w * (kh / (1 - kh) + (k1 * kh + 2 * k1 * k2 * kh**2) / (1 + k1 * kh + k1 * k2 * kh**2))


@gauge(
    name="wood-emc",
    family="wood",
    title="Moisture content that wood comes to in this air",
    unit="%",
    gives="moisture content of wood in balance with the air, in % of its oven-dry mass",
    sources=(HANDBOOK,),
    error="about 1 % moisture content either way: the equation is a fit to old data on one species",
    never="what a particular board holds now, or that it is dry enough to cover",
    cautions=("Wood takes days to weeks to come into balance; a wall cavity has air of its own.",),
    example={"temperature": "70F", "humidity": "50%"},
)
def wood_emc(
    temperature: Annotated[
        Quantity,
        Asked(
            "temperature of the air",
            "Cel",
            lowest="-1.2",
            highest="132.3",
            least="-80",
            most="150",
            how="with a thermo-hygrometer, after it has stood in the room for a quarter of an hour",
            example="70F",
        ),
    ],
    humidity: Annotated[
        Quantity,
        Asked(
            "relative humidity of the air",
            "%",
            lowest="5",
            highest="95",
            least="0",
            most="100",
            how="on the same instrument, away from people, vents and sun",
            example="50%",
        ),
    ],
) -> Answer:
    """Equilibrium moisture content of wood from the temperature and relative humidity of the air.

    Formula:
        M = 1800/W * [Kh/(1 - Kh) + (K1 Kh + 2 K1 K2 K^2 h^2) / (1 + K1 Kh + K1 K2 K^2 h^2)]
        with h the relative humidity as a fraction, T in degrees Celsius and
        W = 349 + 1.29 T + 0.0135 T^2,             K = 0.805 + 0.000736 T - 0.00000273 T^2,
        K1 = 6.27 - 0.00938 T - 0.000303 T^2,      K2 = 1.91 + 0.0407 T - 0.000293 T^2

    >>> from witnessmark.units import parse_quantity as q
    >>> round(wood_emc(q("70F"), q("50%")).value, 1)
    Decimal('9.2')
    """  # fmt: skip
    value = rounded(emc_percent(float(temperature.value), float(humidity.value) / 100))
    return Answer(
        value=value,
        words=f"Wood left in this air comes to about {value:.1f} % moisture content.",
        uncertainty=Uncertainty("about 1 % moisture content either way", Decimal(1)),
    )
