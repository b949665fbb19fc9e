"""What emissivity a surface has, by a tape of known emissivity stuck on it."""

from __future__ import annotations

from decimal import Decimal
from typing import Annotated

from witnessmark.gauges.answer import Also, Answer, Outside, Uncertainty, rounded
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.gauge import gauge
from witnessmark.gauges.infrared.correction import corrected
from witnessmark.gauges.infrared.degrees import fahrenheit, kelvin, said, said_difference
from witnessmark.gauges.infrared.inputs import InBand, Reading, Reflected
from witnessmark.gauges.infrared.messages import READINGS_CONTRADICT
from witnessmark.gauges.infrared.sources import GRAYBODY, REFERENCE_EMITTER
from witnessmark.gauges.infrared.surface import emissivity_from
from witnessmark.problems import Refusal
from witnessmark.units import Quantity

__all__ = ["emissivity_by_tape"]

#: Below this difference between surface and surroundings the camera's own error swamps the result.
_ENOUGH = 10.0


@gauge(
    name="emissivity-by-tape",
    family="infrared",
    title="Emissivity of a surface by tape of known emissivity",
    unit="1",
    gives="emissivity of the surface beside the tape",
    sources=(REFERENCE_EMITTER, GRAYBODY),
    error="half a degree between the two readings moves it by half a degree over the difference to the surroundings",
    never="the emissivity of the same material elsewhere, dirty, wet or at another slant",
    example={"tape_reading": "120F", "reading": "112F", "reflected_temperature": "70F"},
)
def emissivity_by_tape(
    tape_reading: Annotated[
        Quantity,
        Asked(
            "what the camera shows of the tape, with emissivity set to 1",
            "Cel",
            lowest="-40",
            highest="150",
            least="-100",
            most="1500",
            how="after the tape has taken on the surface's temperature; the surface 18 °F (10 °C) off the surroundings",
            example="120F",
        ),
    ],
    reading: Reading,
    reflected_temperature: Reflected,
    tape_emissivity: Annotated[
        Decimal,
        Asked(
            "emissivity of the tape",
            "1",
            lowest="0.85",
            highest="1",
            least="0.5",
            most="1",
            how="electrical tape about 0.97, masking tape about 0.92",
            example="0.97",
        ),
    ] = Decimal("0.97"),
    band: InBand = "7.5-14 um",
) -> Answer:
    """Emissivity from two readings side by side, of tape whose emissivity is known and of the bare surface.

    Formula:
        surface temperature T from the tape; e = (W(Tapp) - W(Tref)) / (W(T) - W(Tref)), W as T^4 or in the band

    >>> from witnessmark.units import parse_quantity as q
    >>> round(emissivity_by_tape(q("120F"), q("112F"), q("70F")).value, 2)
    Decimal('0.80')
    """
    reflected, shown = kelvin(reflected_temperature), kelvin(reading)
    surface = corrected(kelvin(tape_reading), float(tape_emissivity), reflected, band, "tape_reading")
    found = emissivity_from(shown, surface, reflected, band)
    if found is None or not 0 < found <= 1.05:  # noqa: PLR2004 - a few hundredths above 1 are the camera's error
        told = f"tape gives {said(surface)}, reading {said(shown)}, reflected {said(reflected)}"
        raise Refusal(READINGS_CONTRADICT.at("reading", told))
    apart = abs(surface - reflected)
    off = 0.5 / apart
    near = apart < _ENOUGH
    words = f"The surface beside the tape has an emissivity of about {min(found, 1):.2f} at {said(surface)}."
    if found > 1:
        words += f" The readings give {found:.2f}; what is above 1 is the camera's own error."
    if near:
        words += f" Surface and surroundings are only {said_difference(apart)} apart: the figure is weak."
    return Answer(
        value=rounded(min(found, 1.0)),
        words=words,
        uncertainty=Uncertainty(f"{off:.2f} for half a degree between the two readings", rounded(off)),
        outside_range=(
            (Outside("value", Quantity(rounded(apart), "K{difference}"), Decimal(10), None,
                     "surface and surroundings too close to each other"),) if near else ()
        ),
        also=(Also("surface_temperature", "temperature of the surface, from the tape", fahrenheit(surface), "[degF]"),),
    )  # fmt: skip
