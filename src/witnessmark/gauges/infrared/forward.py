"""What a camera at emissivity 1 would read of a surface whose temperature is known."""

from __future__ import annotations

from typing import Annotated

from witnessmark.gauges.answer import Also, Answer, Uncertainty
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.gauge import gauge
from witnessmark.gauges.infrared.degrees import difference, fahrenheit, kelvin, said, said_difference
from witnessmark.gauges.infrared.inputs import Emissivity, InBand, Reflected
from witnessmark.gauges.infrared.messages import READINGS_CONTRADICT
from witnessmark.gauges.infrared.sources import CODATA, GRAYBODY
from witnessmark.gauges.infrared.surface import apparent_kelvin
from witnessmark.problems import Refusal
from witnessmark.units import Quantity

__all__ = ["infrared_apparent"]


@gauge(
    name="infrared-apparent",
    family="infrared",
    title="What the camera would show of a surface at a known temperature",
    unit="[degF]",
    gives="apparent temperature, as a camera set to emissivity 1 shows it",
    sources=(GRAYBODY, CODATA),
    error="the camera's own error comes on top; emissivity off by 0.05 moves it by a twentieth of the difference",
    never="the temperature of the surface: this is what the camera shows of it",
    example={"surface_temperature": "53.6F", "emissivity": "0.93", "reflected_temperature": "69.8F"},
)
def infrared_apparent(
    surface_temperature: Annotated[
        Quantity,
        Asked(
            "temperature of the surface",
            "Cel",
            lowest="-40",
            highest="350",
            least="-100",
            most="1500",
            how="with a contact probe pressed on with paste, or on tape of known emissivity",
            example="53.6F",
        ),
    ],
    emissivity: Emissivity,
    reflected_temperature: Reflected,
    band: InBand = "7.5-14 um",
) -> Answer:
    """Apparent temperature of a surface at a known temperature: to foresee whether a fault would show.

    Formula:
        gray body: Tapp^4 = e T^4 + (1 - e) Tref^4, in kelvin; in a band the radiance of the band stands for T^4

    >>> from decimal import Decimal
    >>> from witnessmark.units import parse_quantity as q
    >>> round(infrared_apparent(q("12Cel"), Decimal("0.93"), q("21Cel"), "graybody").value, 1)
    Decimal('54.8')
    """
    surface, reflected, e = kelvin(surface_temperature), kelvin(reflected_temperature), float(emissivity)
    shown = apparent_kelvin(surface, e, reflected, band)
    if shown is None:
        raise Refusal(READINGS_CONTRADICT.at("surface_temperature", said(surface)))
    return Answer(
        value=fahrenheit(shown),
        words=f"A camera at emissivity 1 shows about {said(shown)} for a surface at {said(surface)}.",
        uncertainty=Uncertainty(
            f"emissivity off by 0.05 moves it by {said_difference(abs(surface - reflected) / 20)}",
            difference(abs(surface - reflected) / 20),
        ),
        also=(Also("correction", "surface less reading", difference(surface - shown), "[degF]{difference}"),),
    )
