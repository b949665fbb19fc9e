"""At which temperature the moisture in this air begins to condense."""

from __future__ import annotations

import math
from typing import Annotated, Literal

from witnessmark.gauges.air.inputs import AirTemperature, Humidity
from witnessmark.gauges.air.saturation import (
    dew_point_celsius,
    dew_point_magnus,
    saturation_pressure,
    vapour_pressure,
)  # fmt: skip
from witnessmark.gauges.air.sources import HANDBOOK_AIR, INSTRUMENT_GUIDE
from witnessmark.gauges.air.told import both, fahrenheit, from_hygrometer
from witnessmark.gauges.answer import Also, Answer, Step, rounded
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.gauge import gauge

__all__ = ["dew_point"]


@gauge(
    name="dew-point",
    family="air",
    title="Temperature at which this air begins to condense",
    unit="[degF]",
    gives="dew point of the air; below freezing the frost point, over ice",
    sources=(HANDBOOK_AIR, INSTRUMENT_GUIDE),
    error="about 2 °F (1 K) for a hygrometer good to 3 % relative humidity",
    never="that a surface is wet or dry: measure the surface too",
    cautions=("Air behind a wall, in a closet or behind furniture has a humidity of its own.",),
    example={"temperature": "70F", "humidity": "50%"},
)
def dew_point(
    temperature: AirTemperature,
    humidity: Humidity,
    humidity_over: Annotated[
        Literal["ice", "water"],
        Asked(
            "below freezing only: whether the instrument's humidity is meant over ice or over supercooled water",
            how="see the instrument's sheet; weather instruments and most electronic sensors read over water",
        ),
    ] = "ice",
) -> Answer:
    """Dew point of air from its temperature and relative humidity.

    Formula:
        find Td with pws(Td) = RH pws(T); ln pws = c0/T + c1 + c2 T + c3 T^2 + c4 T^3 + c5 T^4 + c6 ln T  (Hyland-Wexler,
        T in kelvins, one set of c over water, one over ice)

    Below 0.01 °C saturation is over ice. A Magnus formula over water gives a lower figure there (0.36 K at 0 °C and
    80 %); it stands in ``also`` and is not the answer.

    >>> from witnessmark.units import parse_quantity as q
    >>> round(dew_point(q("75F"), q("50%")).value, 1)
    Decimal('55.1')
    """
    celsius, fraction = float(temperature.value), float(humidity.value) / 100
    if humidity_over == "water" and celsius < 0:
        fraction *= saturation_pressure(celsius, "water") / saturation_pressure(celsius)
    vapour = vapour_pressure(celsius, fraction)
    dew = dew_point_celsius(celsius, fraction)
    if math.isnan(dew):
        return Answer(words="Air this dry has no dew point that could be told: no surface in a house is cold enough.")
    frost = dew < 0
    also = [
        Also("celsius", "the same in °C", rounded(dew), "Cel"),
        Also("over", "saturation over", "ice" if frost else "water"),
        Also("vapour_pressure", "pressure of the water vapour", rounded(vapour), "Pa"),
        Also("magnus", "by the Magnus form over water (17.62, 243.12 °C), as many meters compute it",
             rounded(dew_point_magnus(celsius, float(humidity.value) / 100)), "Cel"),
    ]  # fmt: skip
    name = "frost point (over ice)" if frost else "dew point (over water)"
    words = f"Moisture from this air settles on anything colder than about {both(dew)}: its {name}."
    if frost:
        words += " It settles as frost."
    return Answer(
        value=fahrenheit(dew),
        unit="[degF]",
        words=words,
        uncertainty=from_hygrometer(dew_point_celsius, celsius, fraction, 1.8, "°F"),
        also=tuple(also),
        steps=(
            Step("saturation pressure at the air's temperature", rounded(saturation_pressure(celsius)), "Pa"),
            Step("pressure of the water vapour in the air", rounded(vapour), "Pa"),
            Step("temperature at which that pressure saturates", rounded(dew), "Cel"),
        ),
    )
