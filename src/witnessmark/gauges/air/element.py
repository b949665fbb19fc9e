"""Which temperature factor a plane wall of a known U-value has."""

from __future__ import annotations

from decimal import Decimal
from typing import Annotated, Literal

from witnessmark.gauges.air.sources import ISO_13788
from witnessmark.gauges.answer import Also, Answer, Uncertainty, rounded
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.gauge import gauge
from witnessmark.units import Quantity, convert

__all__ = ["factor_of_u", "temperature_factor_of_element"]

#: Heat resistance between surface and room, m2 K/W: sheltered opaque parts for mould, and glazing, frames or heat loss.
RESISTANCES = {"0.25": Decimal("0.25"), "0.13": Decimal("0.13")}


def factor_of_u(transmittance: Decimal, resistance: Decimal) -> Decimal:
    """Temperature factor of a plane element from its U-value in W/(m2 K) and the surface resistance in m2 K/W.

    >>> factor_of_u(Decimal("1.0"), Decimal("0.25"))
    Decimal('0.750')
    """
    return 1 - transmittance * resistance


@gauge(
    name="temperature-factor-of-element",
    family="air",
    title="Temperature factor of a plane wall, roof or window of known U-value",
    unit="1",
    gives="temperature factor fRsi in the middle of the element, away from corners and studs",
    sources=(ISO_13788,),
    error="exact for a plane element in steady state; corners, studs and joints lie 0.1 to 0.3 lower",
    never="the factor of a corner, a stud or a joint, where condensation begins",
    cautions=("For mould behind furniture and in corners use 0.25 m²·K/W; 0.13 is for glazing, frames and heat loss.",),
    example={"transmittance": "0.3 W/(m2.K)"},
)
def temperature_factor_of_element(
    transmittance: Annotated[
        Quantity,
        Asked(
            "thermal transmittance (U-value) of the element; one over its R-value",
            "W/(m2.K)",
            lowest="0.05",
            highest="3.9",
            least="0",
            most="20",
            how="from the layers, or from the label of a window; worked out with the usual surface resistance of 0.13",
            example="0.3 W/(m2.K)",
        ),
    ],
    surface_resistance: Annotated[
        Literal["0.25", "0.13"], Asked("heat resistance between surface and room, in m²·K/W")
    ] = "0.25",
) -> Answer:
    """Temperature factor from a U-value, for both published surface resistances.

    Formula:
        fRsi = 1 - U Rsi

    >>> from witnessmark.units import parse_quantity as q
    >>> temperature_factor_of_element(q("1 W/(m2.K)")).value
    Decimal('0.75')
    """  # fmt: skip
    made = factor_of_u(transmittance.value, RESISTANCES[surface_resistance])
    other = next(each for each in RESISTANCES if each != surface_resistance)
    american = convert(transmittance, "[Btu_IT]/(h.[sft_i].[degF])").value
    words = f"In its middle this element keeps {made:.2f} of the difference between inside and outside."
    if made < 0:
        words = "No plane element passes this much heat: with that surface resistance the factor falls below nought."
    return Answer(
        value=rounded(float(made)),
        words=words,
        uncertainty=Uncertainty("corners, studs and joints lie 0.1 to 0.3 lower"),
        also=(
            Also("other", f"with the other surface resistance, {other} m²·K/W",
                 rounded(float(factor_of_u(transmittance.value, RESISTANCES[other]))), "1"),
            Also("u_american", "the U-value in Btu/(h·ft²·°F)", rounded(float(american)), "[Btu_IT]/(h.[sft_i].[degF])"),
        ),
    )  # fmt: skip
