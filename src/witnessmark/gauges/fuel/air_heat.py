"""How much heat moving air gives up or takes on between two places."""

from __future__ import annotations

from decimal import Decimal
from typing import Annotated

from witnessmark.gauges.answer import Also, Answer, Step, Uncertainty, rounded
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.fuel.messages import IMPOSSIBLE_AIR, NEITHER_GIVEN
from witnessmark.gauges.fuel.moist_air import SEA_LEVEL, enthalpy, humidity_ratio, pressure_at
from witnessmark.gauges.fuel.sources import ENTHALPY
from witnessmark.gauges.gauge import gauge
from witnessmark.problems import Refusal
from witnessmark.units import Quantity

__all__ = ["air_heat", "heat_of"]


def heat_of(dry: Quantity, wet: Quantity, pressure: float, where: str) -> float:
    """Heat of air in Btu a pound from its bulbs in °F; refuses bulbs that cannot occur together (WM044).

    >>> round(heat_of(Quantity(Decimal(60), "[degF]"), Quantity(Decimal(57), "[degF]"), 14.696, "supply"), 2)
    24.41
    """
    ratio = humidity_ratio(float(dry.value), float(wet.value), pressure)
    if wet.value > dry.value or ratio < 0:
        raise Refusal(IMPOSSIBLE_AIR.at(where, f"dry bulb {dry.value} °F, wet bulb {wet.value} °F"))
    return enthalpy(float(dry.value), ratio)


def _dry(what: str) -> Asked:
    return Asked(
        f"dry-bulb temperature of the {what} air", "[degF]", lowest="32", highest="140", least="-60", most="200",
        how="in the duct near the unit, out of sight of coil and burner", example="80F",
    )  # fmt: skip


def _wet(what: str) -> Asked:
    return Asked(
        f"wet-bulb temperature of the {what} air", "[degF]", lowest="32", highest="95", least="-60", most="200",
        how="with a wetted wick in moving air, or from a hygrometer that shows it", example="67F",
    )  # fmt: skip


@gauge(
    name="air-heat",
    family="fuel",
    title="Heat that moving air gives up or takes on",
    unit="[Btu_IT]/h",
    gives="sensible heat; with both wet bulbs also total heat",
    sources=(ENTHALPY,),
    error="airflow is seldom known within 10 %, and half a degree of wet bulb is 5 % of the total",
    never="a capacity to hold against a plate: plates are rated at stated temperatures and airflow",
    cautions=("Do not open panels or ducts to measure; use grilles and ports that are there.",),
    example={"airflow": "1200 cfm", "entering": "80F", "leaving": "60F", "entering_wet": "67F", "leaving_wet": "57F"},
)
def air_heat(
    airflow: Annotated[
        Quantity,
        Asked("airflow", "[cft_i]/min", lowest="10", highest="5000", least="0", how="by flow hood, or 350 to 400 cfm a "
              "ton as an estimate", example="1200 cfm"),
    ],
    entering: Annotated[Quantity, _dry("entering")],
    leaving: Annotated[Quantity, _dry("leaving")],
    *,
    entering_wet: Annotated[Quantity | None, _wet("entering")] = None,
    leaving_wet: Annotated[Quantity | None, _wet("leaving")] = None,
    altitude: Annotated[
        Quantity | None,
        Asked("height above the sea", "[ft_i]", lowest="-300", highest="12000", least="-1500", most="30000",
              how="from a map; left out: sea level", example="5280ft"),
    ] = None,
) -> Answer:  # fmt: skip
    """Sensible and total heat of moving air between two states.

    Formula:
        sensible = 1.08 x cfm x (t1 - t2);  total = 4.5 x cfm x (h1 - h2)   Btu/h, °F, Btu/lb
        at an altitude both constants fall with the pressure

    Positive is heat given up (cooling), negative heat taken on.

    >>> from witnessmark.units import parse_quantity as q
    >>> air_heat(q("1200 cfm"), q("80F"), q("60F")).value
    Decimal('25920')
    """  # fmt: skip
    pressure = SEA_LEVEL if altitude is None else pressure_at(float(altitude.value))
    thin, flow = pressure / SEA_LEVEL, float(airflow.value)
    sensible = rounded(1.08 * thin * flow * float(entering.value - leaving.value))
    word = "given up" if sensible >= 0 else "taken on"
    words = f"{abs(sensible):,.0f} Btu/h of sensible heat {word}."
    also: list[Also] = []
    steps = [
        Step("constant for sensible heat", rounded(1.08 * thin), "1"),
        Step("entering less leaving", entering.value - leaving.value, "[degF]{difference}"),
    ]
    if (entering_wet is None) != (leaving_wet is None):
        raise Refusal(NEITHER_GIVEN.at("entering_wet and leaving_wet", "total heat needs both wet bulbs"))
    if entering_wet is not None and leaving_wet is not None:
        first = heat_of(entering, entering_wet, pressure, "entering_wet")
        second = heat_of(leaving, leaving_wet, pressure, "leaving_wet")
        total = rounded(4.5 * thin * flow * (first - second))
        also.append(Also("total", "total heat", total, "[Btu_IT]/h"))
        also.append(Also("enthalpy_difference", "difference of heat in a pound of air", rounded(first - second),
                         "[Btu_IT]/[lb_av]"))  # fmt: skip
        words += f" {abs(total):,.0f} Btu/h in all {'given up' if total >= 0 else 'taken on'}."
        if total > 0 and 0 <= sensible <= total:
            also.append(Also("sensible_share", "sensible share of the total", rounded(float(sensible / total)), "1"))
    return Answer(
        value=sensible,
        unit="[Btu_IT]/h",
        words=words,
        uncertainty=Uncertainty("about 10 %, as airflow is seldom known better", abs(sensible) * Decimal("0.1")),
        also=tuple(also),
        steps=tuple(steps),
    )
