"""The inputs that the gauges of air share, each asked for in the same words."""

from __future__ import annotations

from typing import Annotated, TypeAlias

from witnessmark.gauges.air.messages import BOILS
from witnessmark.gauges.air.pressure import STANDARD_PRESSURE, pressure_at
from witnessmark.gauges.air.saturation import vapour_pressure
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.messages import CANNOT_BE
from witnessmark.problems import Refusal
from witnessmark.units import Quantity

__all__ = [
    "AirTemperature", "Altitude", "Humidity", "Insides", "Outsides", "Pressure", "SurfaceTemperature", "air_state",
    "pascals",
]  # fmt: skip

AirTemperature: TypeAlias = Annotated[
    Quantity,
    Asked(
        "temperature of the air", "Cel", lowest="-40", highest="60", least="-80", most="120",
        how="with a thermo-hygrometer, after it has stood in the room for a quarter of an hour", example="70F",
    ),
]  # fmt: skip
Humidity: TypeAlias = Annotated[
    Quantity,
    Asked(
        "relative humidity of the air", "%", lowest="2", highest="100", least="0", most="100",
        how="on the same instrument at the same moment, away from people, vents and sun", example="50%",
    ),
]  # fmt: skip
SurfaceTemperature: TypeAlias = Annotated[
    Quantity,
    Asked(
        "temperature of the surface", "Cel", lowest="-40", highest="60", least="-80", most="120",
        how="with a contact probe held until it stands still, or an infrared thermometer set to the surface; shiny "
        "surfaces read falsely", example="55F",
    ),
]  # fmt: skip
Insides: TypeAlias = Annotated[
    Quantity,
    Asked(
        "temperature of the inside air", "Cel", lowest="5", highest="35", least="-40", most="60",
        how="in the middle of the room, out of the sun and away from heaters", example="68F",
    ),
]  # fmt: skip
Outsides: TypeAlias = Annotated[
    Quantity,
    Asked(
        "temperature of the outside air", "Cel", lowest="-40", highest="35", least="-80", most="60",
        how="in the shade, away from the wall; it should have been steady for some hours", example="23F",
    ),
]  # fmt: skip
Pressure: TypeAlias = Annotated[
    Quantity | None,
    Asked(
        "pressure of the air at the place, not reduced to sea level", "kPa", lowest="60", highest="110", least="20",
        most="120", how="on a barometer at the place; a weather report gives it reduced to sea level, which is another",
        example="29.9 inHg",
    ),
]  # fmt: skip
Altitude: TypeAlias = Annotated[
    Quantity | None,
    Asked(
        "height above sea level, where the pressure was not measured", "m", lowest="-500", highest="5000",
        least="-1000", most="9000", how="from a map", example="5280 ft",
    ),
]  # fmt: skip


def pascals(pressure: Quantity | None, altitude: Quantity | None) -> tuple[float, str]:
    """The pressure to compute with in Pa, and the words for where it comes from. Refuses both at once (WM006).

    >>> pascals(None, None)
    (101325.0, 'at sea-level pressure')
    """
    if pressure is not None and altitude is not None:
        raise Refusal(
            CANNOT_BE.at("pressure and altitude", "give the one or the other: two pressures cannot both hold")
        )
    if pressure is not None:
        return float(pressure.value) * 1000, "at the pressure given"
    if altitude is not None:
        return pressure_at(float(altitude.value)), f"at {float(altitude.value):.0f} m above sea level"
    return STANDARD_PRESSURE, "at sea-level pressure"


def air_state(temperature: Quantity, humidity: Quantity, pressure: float) -> tuple[float, float]:
    """Temperature in °C and humidity as a fraction, of air that can exist at *pressure* Pa. Refuses air that boils.

    >>> from witnessmark.units import parse_quantity as q
    >>> air_state(q("20 Cel"), q("50%"), 101325)
    (20.0, 0.5)
    """
    celsius, fraction = float(temperature.value), float(humidity.value) / 100
    vapour = vapour_pressure(celsius, fraction)
    if vapour >= pressure:
        raise Refusal(BOILS.at("temperature and humidity", f"{vapour:.0f} Pa of vapour in {pressure:.0f} Pa of air"))
    return celsius, fraction
