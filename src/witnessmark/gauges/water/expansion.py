"""How much water grows when it is heated, and what tank takes it up."""

from __future__ import annotations

from decimal import Decimal
from typing import Annotated

from witnessmark.gauges.answer import Also, Answer, Source, Step, rounded
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.gauge import gauge
from witnessmark.gauges.water.cautions import RELIEF, STORED
from witnessmark.gauges.water.density import celsius, water_density
from witnessmark.gauges.water.messages import PRESSURES_AT_ODDS, TEMPERATURES_AT_ODDS
from witnessmark.gauges.water.sources import KELL, PRACTICE
from witnessmark.problems import Refusal
from witnessmark.units import Quantity, say

__all__ = ["ATMOSPHERE", "DESIGN_MOST", "RELIEF_SETTING", "acceptance", "expansion_tank", "growth", "water_expansion"]

#: psi, as tank makers and the trade round it.
ATMOSPHERE = Decimal("14.7")
#: Relief setting of most tanks, and the design pressure a tenth below it, so that the valve does not weep (psi).
RELIEF_SETTING, DESIGN_MOST = Decimal(150), Decimal(135)
_DEFAULT_MOST = Quantity(DESIGN_MOST, "[psi]")
_DEFAULT_AIR = Quantity(ATMOSPHERE, "[psi]")


def growth(cold: float, hot: float) -> float:
    """Share by which water grows from *cold* to *hot* °F (32 to 212), 0.0168 for 50 to 140.

    >>> round(growth(50, 140), 4)
    0.0168
    """
    return water_density(celsius(cold)) / water_density(celsius(hot)) - 1


def acceptance(precharge: float, static: float, most: float, atmosphere: float = 14.7) -> float:
    """Share of a tank's volume that takes up water between *static* and *most* (gauge psi), charged to *precharge*.

    In ABSOLUTE pressures: precharge/max(precharge, static) - precharge/most. At precharge = static that is
    1 - static/most. Below it water stands in the tank already; above it the tank takes none until its charge is reached.

    >>> round(acceptance(80, 80, 135), 4)
    0.3674
    """
    air, at_rest, top = (one + atmosphere for one in (precharge, static, most))
    return max(0.0, air / max(air, at_rest) - air / top)


def _volume(what: str, example: str) -> Asked:
    return Asked(what, "[gal_us]", lowest="1", highest="500", least="0", most="100000", how="as printed on the plate",
                 example=example)  # fmt: skip


def _temperature(what: str, example: str) -> Asked:
    return Asked(what, "[degF]", lowest="32", highest="212", least="32", most="212", how="probe in running water",
                 example=example)  # fmt: skip


def _pressure(what: str, how: str, example: str) -> Asked:
    return Asked(what, "[psi]", lowest="0", highest="200", least="0", most="1000", how=how, example=example)


def _growing(cold: Quantity, hot: Quantity) -> float:
    if hot.value < cold.value:
        raise Refusal(TEMPERATURES_AT_ODDS.at("cold, hot", f"hot {hot.value:.1f} °F is below cold {cold.value:.1f} °F"))
    return growth(float(cold.value), float(hot.value))


@gauge(
    name="water-expansion",
    family="water",
    title="Growth of water when it is heated",
    unit="[gal_us]",
    gives="growth of the volume",
    sources=(KELL,),
    error="under a hundredth of the growth; the tank and its pipes stretch a little and take up some of it",
    never="that a system has somewhere to put the water",
    cautions=(STORED, RELIEF),
    example={"volume": "50gal", "cold": "50F", "hot": "140F"},
)
def water_expansion(
    volume: Annotated[Quantity, _volume("water that is heated", "50gal")],
    cold: Annotated[Quantity, _temperature("temperature before heating", "50F")],
    hot: Annotated[Quantity, _temperature("temperature after heating", "140F")],
) -> Answer:
    """How much a volume of water grows between two temperatures.

    Formula:
        growth = volume * (density(cold)/density(hot) - 1), density of water after Kell 1975

    Below about 39 °F water shrinks as it warms, so a small rise there can give a growth just under nought.

    >>> from witnessmark.gauges import evaluate
    >>> round(evaluate("water-expansion", {"volume": "40gal", "cold": "40F", "hot": "140F"}).value, 3)
    Decimal('0.682')
    """
    share = _growing(cold, hot)
    value = rounded(float(volume.value) * share)
    return Answer(
        value=value,
        words=f"{say(volume)} grow by {value:.2f} gal ({100 * share:.2f} %).",
        also=(Also("share", "growth in % of the volume", rounded(100 * share), "%"),),
        steps=(
            Step("density cold", rounded(water_density(celsius(float(cold.value)))), "kg/m3"),
            Step("density hot", rounded(water_density(celsius(float(hot.value)))), "kg/m3"),
        ),
    )


@gauge(
    name="expansion-tank",
    family="water",
    title="Size of an expansion tank for a water heater",
    unit="[gal_us]",
    gives="least total volume of the tank",
    sources=(
        Source("Boyle's law in absolute pressures", "", "", "calculated"),
        KELL,
        Source("design a tenth below the relief valve's setting", "", "", "seen in a copy"),
        PRACTICE,
    ),
    error="a few per cent from temperatures and gauges; the tank's own charge, which leaks away, matters far more",
    never="that a tank in place still holds its charge or is sized well enough by its maker",
    cautions=(
        "The charge is set to the static pressure of the house before water is let in; the 40 psi of the carton is not it.",
        RELIEF, STORED,
    ),
    example={"volume": "50gal", "cold": "50F", "hot": "140F", "static": "80psi"},
)  # fmt: skip
def expansion_tank(
    volume: Annotated[Quantity, _volume("water that is heated", "50gal")],
    *,
    cold: Annotated[Quantity, _temperature("temperature of the cold water", "50F")],
    hot: Annotated[Quantity, _temperature("temperature of the hot water", "140F")],
    static: Annotated[Quantity, _pressure("static pressure of the house", "gauge, all water off", "80psi")],
    precharge: Annotated[
        Quantity | None,
        _pressure(
            "charge of air in the tank; left out: as it should be, the static pressure",
            "as written on the tank; checking it means draining the tank, which is a plumber's work",
            "80psi",
        ),
    ] = None,
    most: Annotated[
        Quantity,
        _pressure("most pressure to be allowed", "135 psi, a tenth below the usual relief valve of 150 psi", "135psi"),
    ] = _DEFAULT_MOST,
    atmosphere: Annotated[
        Quantity,
        Asked(
            "pressure of the air outside",
            "[psi]",
            lowest="10",
            highest="15.5",
            least="5",
            most="16",
            how="14.7 psi near the sea, 12.2 at 5000 ft",
            example="14.7psi",
        ),
    ] = _DEFAULT_AIR,
) -> Answer:
    """What size of expansion tank takes up the growth of the water in a closed system.

    Formula:
        tank = growth / acceptance
        acceptance = (P0/max(P0, Ps)) - P0/Pm in ABSOLUTE pressures (gauge + 14.7), P0 the tank's charge, Ps static,
        Pm most; with P0 = Ps that is 1 - Ps/Pm

    Gauge pressures in place of absolute ones, and a charge left at 40 psi, are the usual mistakes.

    >>> from witnessmark.gauges import evaluate
    >>> round(evaluate("expansion-tank", {"volume": "50gal", "cold": "50F", "hot": "140F", "static": "80psi"}).value, 2)
    Decimal('2.28')
    """  # fmt: skip
    charge = static if precharge is None else precharge
    if most.value <= static.value:
        detail = f"most {say(most)} is not above static {say(static)}"
        raise Refusal(PRESSURES_AT_ODDS.at("most", detail))
    if most.value <= charge.value:
        detail = f"most {say(most)} is not above the charge of {say(charge)}"
        raise Refusal(PRESSURES_AT_ODDS.at("precharge", detail))
    grows = max(0.0, float(volume.value) * _growing(cold, hot))
    share = acceptance(float(charge.value), float(static.value), float(most.value), float(atmosphere.value))
    size = rounded(grows / share)
    right = acceptance(float(static.value), float(static.value), float(most.value), float(atmosphere.value))
    words = f"The water grows by {grows:.2f} gal; a tank of at least {size:.1f} gal takes it up below {say(most)}."
    cautions: tuple[str, ...] = ()
    if charge.value != static.value:
        words += f" Charged to the static pressure, {grows / right:.1f} gal would do."
        cautions = (f"The charge of {say(charge)} is not the static pressure of {say(static)}.",)
    if most.value >= RELIEF_SETTING:
        cautions += (
            "At or above 150 psi the relief valve of most tanks drips or opens before the expansion tank is full.",
        )
    return Answer(
        value=size,
        words=words,
        cautions=cautions,
        also=(
            Also("growth", "growth of the water", rounded(grows), "[gal_us]"),
            Also("acceptance", "share of the tank that takes up water", rounded(share), "1"),
            Also("right_charge", "size with the charge at the static pressure", rounded(grows / right), "[gal_us]"),
            Also("relief_setting", "relief valve of most tanks", RELIEF_SETTING, "[psi]"),
        ),
        steps=(
            Step("growth", rounded(grows), "[gal_us]"),
            Step("charge, absolute", charge.value + atmosphere.value, "[psi]"),
            Step("static, absolute", static.value + atmosphere.value, "[psi]"),
            Step("most, absolute", most.value + atmosphere.value, "[psi]"),
            Step("acceptance", rounded(share), "1"),
        ),
    )
