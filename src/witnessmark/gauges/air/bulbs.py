"""Gauges of the psychrometer: wet bulb from humidity, humidity from wet bulb, and water per mass of air."""

from __future__ import annotations

from typing import Annotated

from witnessmark.gauges.air.inputs import AirTemperature, Altitude, Humidity, Pressure, air_state, pascals
from witnessmark.gauges.air.messages import BOILS, WET_ABOVE_DRY
from witnessmark.gauges.air.saturation import dew_point_celsius, saturation_pressure
from witnessmark.gauges.air.sources import HANDBOOK_AIR
from witnessmark.gauges.air.told import both, fahrenheit, from_hygrometer
from witnessmark.gauges.air.wetbulb import humidity_from_bulbs, water_to_dry_air, wet_bulb_celsius
from witnessmark.gauges.answer import Also, Answer, Step, Uncertainty, rounded
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.gauge import gauge
from witnessmark.problems import Refusal
from witnessmark.units import Quantity

__all__ = ["humidity_from_wet_bulb", "humidity_ratio", "wet_bulb"]

_HOLDS_AT = "Give pressure or altitude above about 300 m (1000 ft): the wet bulb and the humidity ratio hang on it."
#: Grains in a pound.
_GRAINS = 7000


@gauge(
    name="wet-bulb",
    family="air",
    title="Wet-bulb temperature of this air",
    unit="[degF]",
    gives="thermodynamic wet-bulb temperature; below freezing of an iced bulb",
    sources=(HANDBOOK_AIR,),
    error="about 1.5 °F for a hygrometer good to 3 % relative humidity; reputable formulas differ by 0.2 °F",
    never="the reading of an unventilated wet thermometer, which stands higher",
    cautions=(_HOLDS_AT,),
    example={"temperature": "75F", "humidity": "50%"},
)
def wet_bulb(
    temperature: AirTemperature, humidity: Humidity, pressure: Pressure = None, altitude: Altitude = None
) -> Answer:
    """Wet-bulb temperature from temperature, relative humidity and air pressure.

    Formula:
        find t* with W = [(2501 - 2.326 t*) Ws(t*) - 1.006 (t - t*)] / (2501 + 1.86 t - 4.186 t*)   over water,
        or W = [(2830 - 0.24 t*) Ws(t*) - 1.006 (t - t*)] / (2830 + 1.86 t - 2.1 t*)   below 0 °C, over ice

    Short formulas of temperature and humidity alone leave out the pressure and fail below freezing.

    >>> from witnessmark.units import parse_quantity as q
    >>> round(wet_bulb(q("75F"), q("50%")).value, 1)
    Decimal('62.6')
    """
    at, words = pascals(pressure, altitude)
    celsius, fraction = air_state(temperature, humidity, at)
    bulb = wet_bulb_celsius(celsius, fraction, at)
    return Answer(
        value=fahrenheit(bulb),
        unit="[degF]",
        words=f"{'A wet' if bulb >= 0 else 'An iced'} bulb in a stream of this air shows about {both(bulb)} {words}.",
        uncertainty=from_hygrometer(
            lambda t, h: wet_bulb_celsius(t, h, max(at, 1.001 * saturation_pressure(t))), celsius, fraction, 1.8, "°F"
        ),
        also=(
            Also("celsius", "the same in °C", rounded(bulb), "Cel"),
            Also("depression", "dry bulb less wet bulb", rounded(celsius - bulb), "K{difference}"),
            Also("pressure", "pressure computed with", rounded(at), "Pa"),
        ),
        steps=(
            Step("humidity ratio of the air", rounded(water_to_dry_air(celsius, fraction, at)), "1"),
            Step("wet bulb at which evaporation brings the air to that ratio", rounded(bulb), "Cel"),
        ),
    )


@gauge(
    name="humidity-from-wet-bulb",
    family="air",
    title="Relative humidity from a wet and a dry bulb",
    unit="%",
    gives="relative humidity of the air",
    sources=(HANDBOOK_AIR,),
    error="half a degree on the wet bulb is 4 to 5 % humidity at room temperature, more in the cold",
    never="the humidity of air that was not moving over the wick",
    cautions=(_HOLDS_AT, "Below freezing the wick must carry ice; a wick of supercooled water reads higher."),
    example={"dry_bulb": "75F", "wet_bulb": "62.5F"},
)
def humidity_from_wet_bulb(
    dry_bulb: AirTemperature,
    wet_bulb: Annotated[
        Quantity,
        Asked(
            "temperature of the wet bulb",
            "Cel",
            lowest="-30",
            highest="50",
            least="-80",
            most="120",
            how="with a clean wick wetted with distilled water and air moving over it at 3 m/s or more",
            example="62.5F",
        ),
    ],
    pressure: Pressure = None,
    altitude: Altitude = None,
) -> Answer:
    """Relative humidity from a psychrometer.

    Formula:
        W = [(2501 - 2.326 t*) Ws(t*) - 1.006 (t - t*)] / (2501 + 1.86 t - 4.186 t*)   (2830, 0.24, 2.1 over ice),
        RH = p W / [(0.621945 + W) pws(t)]

    A wet bulb above the dry bulb is refused (WM015), and so is one colder than perfectly dry air could make it.

    >>> from witnessmark.units import parse_quantity as q
    >>> round(humidity_from_wet_bulb(q("20 Cel"), q("13.783 Cel")).value, 1)
    Decimal('50.0')
    """  # fmt: skip
    at, words = pascals(pressure, altitude)
    dry, wet = float(dry_bulb.value), float(wet_bulb.value)
    if wet > dry:
        raise Refusal(WET_ABOVE_DRY.at("wet_bulb", f"wet bulb {both(wet)}, dry bulb {both(dry)}"))
    if saturation_pressure(wet) >= at:
        raise Refusal(BOILS.at("wet_bulb", f"{saturation_pressure(wet):.0f} Pa of vapour in {at:.0f} Pa of air"))
    fraction = humidity_from_bulbs(dry, wet, at)
    if fraction < 0:
        raise Refusal(WET_ABOVE_DRY.at("wet_bulb", f"wet bulb {both(wet)}: colder than dry air at {both(dry)} allows"))
    off = max(abs(humidity_from_bulbs(dry, wet - 0.25, at) - fraction), 0.01) * 100
    dew = dew_point_celsius(dry, fraction)
    also = [Also("pressure", "pressure computed with", rounded(at), "Pa")]
    if dew == dew:  # noqa: PLR0124 - NaN where there is no dew point
        also.append(Also("dew_point", "dew point of the air", rounded(dew), "Cel"))
    return Answer(
        value=rounded(fraction * 100),
        words=f"These bulbs stand for about {fraction * 100:.0f} % relative humidity {words}.",
        uncertainty=Uncertainty(f"about {off:.0f} % for 0.25 K on the wet bulb", rounded(off)),
        also=tuple(also),
    )


@gauge(
    name="humidity-ratio",
    family="air",
    title="Water vapour in this air, per mass of dry air",
    unit="[gr]/[lb_av]",
    gives="humidity ratio: mass of water vapour per mass of dry air",
    sources=(HANDBOOK_AIR,),
    error="0.45 % low at sea level because air is taken as an ideal gas; the hygrometer adds several percent",
    never="how much water is in the walls and furnishings",
    cautions=(_HOLDS_AT,),
    example={"temperature": "75F", "humidity": "50%"},
)
def humidity_ratio(
    temperature: AirTemperature, humidity: Humidity, pressure: Pressure = None, altitude: Altitude = None
) -> Answer:
    """Humidity ratio from temperature, relative humidity and air pressure: compares air of two rooms whatever their heat.

    Formula:
        W = 0.621945 pw / (p - pw),   pw = RH pws(t)

    >>> from witnessmark.units import parse_quantity as q
    >>> round(humidity_ratio(q("75F"), q("50%")).value, 1)
    Decimal('64.6')
    """
    at, words = pascals(pressure, altitude)
    celsius, fraction = air_state(temperature, humidity, at)
    ratio = water_to_dry_air(celsius, fraction, at)
    return Answer(
        value=rounded(ratio * _GRAINS),
        unit="[gr]/[lb_av]",
        words=f"Each pound of dry air carries about {ratio * _GRAINS:.1f} grains of water ({ratio * 1000:.2f} g/kg) {words}.",
        uncertainty=from_hygrometer(
            lambda t, h: water_to_dry_air(t, h, max(at, 1.001 * saturation_pressure(t))), celsius, fraction, _GRAINS,
            "grains per pound",
        ),
        also=(
            Also("grams_per_kilogram", "the same in g/kg of dry air", rounded(ratio * 1000), "g/kg"),
            Also("pressure", "pressure computed with", rounded(at), "Pa"),
        ),
        steps=(
            Step("saturation pressure", rounded(saturation_pressure(celsius)), "Pa"),
            Step("vapour pressure", rounded(saturation_pressure(celsius) * fraction), "Pa"),
            Step("ratio of the masses", rounded(ratio), "1"),
        ),
    )  # fmt: skip
