"""What a thermal resistance or transmittance is in the other systems of units."""

from __future__ import annotations

from decimal import Decimal
from typing import Annotated

from witnessmark.gauges.answer import Also, Answer, Source, Uncertainty, rounded
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.gauge import gauge
from witnessmark.gauges.infrared.messages import ONE_OF_TWO
from witnessmark.problems import Refusal
from witnessmark.units import Quantity, convert

__all__ = ["r_and_u"]

_FACTORS = Source("NIST Special Publication 811", "2008", "Appendix B", "memory")
_R_US, _R_SI = "[sft_i].[degF].h/[Btu_IT]", "m2.K/W"
_U_US, _U_SI = "[Btu_IT]/(h.[sft_i].[degF])", "W/(m2.K)"


@gauge(
    name="r-and-u",
    family="infrared",
    title="R-value and U-value in both systems of units",
    unit=_R_US,
    gives="thermal resistance R in h ft2 °F/Btu",
    sources=(_FACTORS,),
    error="none but rounding",
    never="the resistance of a wall from that of its insulation: studs, gaps and films change it",
    example={"resistance": "13 r-value"},
)
def r_and_u(
    resistance: Annotated[
        Quantity | None,
        Asked(
            "thermal resistance R",
            _R_US,
            lowest="0.1",
            highest="100",
            least="0.001",
            most="10000",
            how="from the label, in h ft² °F/Btu (R-value) or m²K/W (RSI)",
            example="13 r-value",
        ),
    ] = None,
    transmittance: Annotated[
        Quantity | None,
        Asked(
            "thermal transmittance U",
            _U_SI,
            lowest="0.05",
            highest="10",
            least="0.0001",
            most="1000",
            how="from the label or a calculation",
            example="0.44 W/(m2.K)",
        ),
    ] = None,
) -> Answer:
    """Resistance and transmittance in US customary and SI units.

    Formula:
        R = 1 / U;   1 m2K/W = 5.678263 h ft2 °F/Btu

    >>> from witnessmark.units import parse_quantity as q
    >>> answer = r_and_u(q("13 r-value"))
    >>> round(answer["r_si"], 2), round(answer["u_si"], 3)
    (Decimal('2.29'), Decimal('0.437'))
    """
    if (resistance is None) == (transmittance is None):
        given = "neither" if resistance is None else "both"
        raise Refusal(ONE_OF_TWO.at("resistance, transmittance", f"{given} given"))
    if resistance is not None:
        r_si = convert(resistance, _R_SI).value
    else:
        assert transmittance is not None  # noqa: S101 - one of the two is there, looked at just above
        r_si = 1 / transmittance.value
    r_us, u_si = convert(Quantity(r_si, _R_SI), _R_US).value, 1 / r_si
    u_us = convert(Quantity(u_si, _U_SI), _U_US).value
    return Answer(
        value=rounded(float(r_us)),
        words=f"R-{r_us:.1f} is RSI {r_si:.2f} m²·K/W, and U {u_si:.3f} W/(m²·K) or {u_us:.4f} Btu/(h·ft²·°F).",
        uncertainty=Uncertainty("rounding only", Decimal(0)),
        also=(
            Also("r_si", "R in m2K/W", rounded(float(r_si)), _R_SI),
            Also("u_si", "U in W/(m2K)", rounded(float(u_si)), _U_SI),
            Also("u_us", "U in Btu/(h ft2 °F)", rounded(float(u_us)), _U_US),
        ),
    )
