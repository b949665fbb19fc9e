"""How humid the air is right at a cold surface, and how far the surface is from condensation."""

from __future__ import annotations

import math

from witnessmark.gauges.air.inputs import AirTemperature, Humidity, SurfaceTemperature
from witnessmark.gauges.air.saturation import dew_point_celsius, saturation_pressure, vapour_pressure
from witnessmark.gauges.air.sources import HANDBOOK_AIR, ISO_13788
from witnessmark.gauges.air.told import HUMIDITY_OFF, both, fahrenheit, kelvins
from witnessmark.gauges.answer import Also, Answer, Step, Uncertainty, rounded
from witnessmark.gauges.gauge import gauge

__all__ = ["condensation_margin", "surface_humidity", "surface_humidity_percent"]

#: Above this share of saturation at a surface mould can grow in time (ISO 13788); at saturation water condenses.
MOULD_FROM = 80
#: What a contact or infrared thermometer is off by on a surface, K; common practice.
SURFACE_OFF = 1.0


def surface_humidity_percent(celsius: float, humidity: float, surface: float) -> float:
    """Relative humidity in % of room air (*celsius* °C, humidity 0 to 1) cooled to a *surface* in °C; above 100 it condenses.

    >>> round(surface_humidity_percent(20, 0.5, 12.6), 2), round(surface_humidity_percent(20, 0.5, 5), 1)
    (80.15, 134.0)
    """
    return 100 * vapour_pressure(celsius, humidity) / saturation_pressure(surface)


@gauge(
    name="surface-humidity",
    family="air",
    title="Relative humidity of room air right at a surface",
    unit="%",
    gives="relative humidity at the surface; more than 100 % means that water condenses there",
    sources=(ISO_13788, HANDBOOK_AIR),
    error="about 7 % of the value for 1 K on the surface, with 3 % relative humidity on the air",
    never="that mould is or is not growing: that takes weeks, and one reading is a moment",
    cautions=("The criterion of 80 % for mould is a monthly mean; one reading is a moment.",),
    example={"temperature": "70F", "humidity": "50%", "surface": "57F"},
)
def surface_humidity(temperature: AirTemperature, humidity: Humidity, surface: SurfaceTemperature) -> Answer:
    """Relative humidity at a surface, from the air of the room and the temperature of the surface.

    Formula:
        RHs = RH pws(T) / pws(Ts);  beyond 100 % the answer says condensing and keeps the number

    >>> from witnessmark.units import parse_quantity as q
    >>> round(surface_humidity(q("20 Cel"), q("50%"), q("12.6 Cel")).value, 2)
    Decimal('80.15')
    """
    celsius, fraction, cold = float(temperature.value), float(humidity.value) / 100, float(surface.value)
    percent = surface_humidity_percent(celsius, fraction, cold)
    off = percent * math.hypot(
        saturation_pressure(cold) / saturation_pressure(cold - SURFACE_OFF) - 1,
        HUMIDITY_OFF / max(fraction, HUMIDITY_OFF),
    )
    state = "condensing" if percent > 100 else "humid enough for mould" if percent >= MOULD_FROM else "drier"  # noqa: PLR2004 - saturation
    said = {
        "condensing": "more than the air can hold there, so water condenses on it",
        "humid enough for mould": "humid enough for mould, if it lasts for weeks",
        "drier": "below the 80 % from which mould can grow in time",
    }[state]
    near = (
        " That is nearer to a limit than the instruments are sure."
        if min(abs(percent - MOULD_FROM), abs(percent - 100)) < off
        else ""
    )
    frost = " as frost" if cold < 0 and state == "condensing" else ""
    return Answer(
        value=rounded(percent),
        words=f"At this surface the room air would stand at {percent:.0f} % relative humidity: {said}{frost}.{near}",
        uncertainty=Uncertainty(
            f"about {off:.0f} % either way, for 1 K on the surface and 3 % on the air", rounded(off)
        ),
        also=(
            Also("condensing", "water condenses on the surface", percent > 100),  # noqa: PLR2004 - saturation
            Also("state", "what that humidity means", state),
        ),
        steps=(
            Step("vapour pressure of the room air", rounded(vapour_pressure(celsius, fraction)), "Pa"),
            Step("saturation pressure at the surface", rounded(saturation_pressure(cold)), "Pa"),
            Step("their ratio", rounded(percent), "%"),
        ),
    )


@gauge(
    name="condensation-margin",
    family="air",
    title="How far a surface is from condensation",
    unit="[degF]{difference}",
    gives="surface temperature less dew point of the air; nought or less means condensation",
    sources=(HANDBOOK_AIR,),
    error="about 3 °F: the dew point and the surface both count",
    never="that a surface stays dry at night, in another season or behind furniture",
    cautions=("Colder nights, more people and closed doors take the margin away.",),
    example={"temperature": "70F", "humidity": "50%", "surface": "57F"},
)
def condensation_margin(temperature: AirTemperature, humidity: Humidity, surface: SurfaceTemperature) -> Answer:
    """Margin between a surface and the dew point of the air in front of it.

    Formula:
        margin = Ts - Td(T, RH)

    >>> from witnessmark.units import parse_quantity as q
    >>> round(condensation_margin(q("20 Cel"), q("50%"), q("15 Cel"))["kelvins"], 2)
    Decimal('5.73')
    """
    celsius, fraction, cold = float(temperature.value), float(humidity.value) / 100, float(surface.value)
    dew = dew_point_celsius(celsius, fraction)
    if math.isnan(dew):
        return Answer(words="Air this dry has no dew point that a surface in a house could reach.")
    margin = cold - dew
    drier = fraction - HUMIDITY_OFF if fraction > 2 * HUMIDITY_OFF else fraction + HUMIDITY_OFF
    off = math.hypot(SURFACE_OFF, dew_point_celsius(celsius, drier) - dew)
    if margin > 0:
        words = f"The surface is {kelvins(margin)} warmer than the dew point of the air, {both(dew)}."
    else:
        words = f"The surface is {kelvins(-margin)} colder than the dew point of the air, {both(dew)}: it condenses."
    if abs(margin) < off:
        words += " That is nearer than the instruments are sure."
    return Answer(
        value=rounded(margin * 1.8),
        words=words,
        uncertainty=Uncertainty(
            f"about {kelvins(off)} either way, for 1 K on the surface and 3 % on the air", rounded(off * 1.8)
        ),
        also=(
            Also("kelvins", "the margin in K", rounded(margin), "K{difference}"),
            Also("dew_point", "dew point of the air", fahrenheit(dew), "[degF]"),
            Also("condensing", "water condenses on the surface", margin <= 0),
        ),
        steps=(
            Step("surface temperature", rounded(cold), "Cel"),
            Step("dew point of the air", rounded(dew), "Cel"),
            Step("surface less dew point", rounded(margin), "K{difference}"),
        ),
    )
