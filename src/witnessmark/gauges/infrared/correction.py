"""What temperature a surface has, when the camera read it as if it reflected nothing."""

from __future__ import annotations

import math

from witnessmark.gauges.answer import Also, Answer, Step, Uncertainty, rounded
from witnessmark.gauges.gauge import gauge
from witnessmark.gauges.infrared.degrees import difference, fahrenheit, kelvin, said, said_difference
from witnessmark.gauges.infrared.inputs import Emissivity, InBand, Reading, Reflected
from witnessmark.gauges.infrared.messages import READINGS_CONTRADICT
from witnessmark.gauges.infrared.sources import CODATA, DATA_SHEETS, GRAYBODY
from witnessmark.gauges.infrared.surface import FORMS, Form, object_kelvin
from witnessmark.problems import Refusal

__all__ = ["METAL", "corrected", "infrared_correction", "off_by"]

METAL = "Below emissivity 0.5 the camera reads mostly what the surface mirrors: the figure is not a measurement."
#: How far emissivity tables differ from each other, and how far a building camera may be off (K, share of reading).
_EMISSIVITY_OFF, _CAMERA_OFF, _CAMERA_SHARE = 0.05, 2.0, 0.02


def corrected(apparent: float, emissivity: float, reflected: float, form: Form, where: str) -> float:
    """Surface temperature in K; refuses readings that contradict each other (WM020).

    >>> round(corrected(303.15, 0.95, 293.15, "graybody", "a wall") - 273.15, 2)
    30.5
    """
    surface = object_kelvin(apparent, emissivity, reflected, form)
    if surface is None:
        told = f"read {said(apparent)}, reflected {said(reflected)}, emissivity {emissivity:g}"
        raise Refusal(READINGS_CONTRADICT.at(where, told))
    return surface


def off_by(apparent: float, emissivity: float, reflected: float, form: Form) -> tuple[float, float]:
    """How far a corrected temperature may be off in K: by emissivity 0.05 either way, and by the camera (2 K or 2 %).

    >>> [round(part, 2) for part in off_by(303.15, 0.95, 293.15, "graybody")]
    [0.55, 2.11]
    """
    ends = [
        object_kelvin(apparent, end, reflected, form)
        for end in (max(0.01, emissivity - _EMISSIVITY_OFF), min(1.0, emissivity + _EMISSIVITY_OFF))
    ]
    known = [end for end in ends if end is not None]
    middle = object_kelvin(apparent, emissivity, reflected, form)
    spread = max((abs(end - middle) for end in known), default=0.0) if middle is not None else 0.0
    camera = max(_CAMERA_OFF, _CAMERA_SHARE * abs(apparent - 273.15))
    return spread, camera / emissivity


@gauge(
    name="infrared-correction",
    family="infrared",
    title="Surface temperature from an infrared reading",
    unit="[degF]",
    gives="temperature of the surface, corrected for emissivity and for what it reflects",
    sources=(GRAYBODY, CODATA, DATA_SHEETS),
    error="the camera's own 2 °C or 2 %, and what 0.05 of emissivity makes: small while surface and surroundings agree",
    never="that a surface is wet, uninsulated or defective: a temperature by itself has no cause",
    cautions=(
        "Correct a reading once: if the camera was set to another emissivity than 1, use infrared-recorrection.",
    ),
    example={"reading": "86F", "emissivity": "0.95", "reflected_temperature": "68F"},
)
def infrared_correction(
    reading: Reading, emissivity: Emissivity, reflected_temperature: Reflected, band: InBand = "7.5-14 um"
) -> Answer:
    """Temperature of a surface from a reading that was taken with the camera at emissivity 1.

    Formula:
        gray body: T^4 = (Tapp^4 - (1 - e) Tref^4) / e, in kelvin
        in a band: W(T) = (W(Tapp) - (1 - e) W(Tref)) / e, W the radiance of a black body within the band (Planck)

    Within 10 °C of the surroundings and with e of 0.85 or more the forms differ by less than 0.01 °C. Traps: degrees
    instead of kelvin in the fourth power; air temperature taken for reflected temperature; metal.

    >>> from decimal import Decimal
    >>> from witnessmark.units import parse_quantity as q
    >>> round(infrared_correction(q("86F"), Decimal("0.95"), q("68F")).value, 1)
    Decimal('86.9')
    """
    apparent, reflected, e = kelvin(reading), kelvin(reflected_temperature), float(emissivity)
    surface = corrected(apparent, e, reflected, band, "reading")
    others = {form: object_kelvin(apparent, e, reflected, form) for form in FORMS}
    known = {form: value for form, value in others.items() if value is not None}
    forms = max(abs(value - surface) for value in known.values())
    by_emissivity, camera = off_by(apparent, e, reflected, band)
    total = math.sqrt(by_emissivity**2 + camera**2)
    low = e < 0.5  # noqa: PLR2004 - the limit that the gauge states for emissivity
    moved = f"{said_difference(abs(surface - apparent))} {'above' if surface >= apparent else 'below'} the reading"
    words = f"The surface is at about {said(surface)}, {moved}."
    if low:
        words = f"No measurement: at emissivity {e:g} the figure of {said(surface)} is mostly reflection."
    return Answer(
        value=fahrenheit(surface),
        words=words,
        uncertainty=Uncertainty(
            f"{said_difference(by_emissivity)} for 0.05 of emissivity, {said_difference(camera)} for the camera, "
            f"{said_difference(forms)} between the forms of the law",
            difference(total),
        ),
        cautions=(METAL,) if low else (),
        also=(
            Also("correction", "surface less reading", difference(surface - apparent), "[degF]{difference}"),
            *(
                Also(f"by_{form.replace('-', '_to_').replace('.', '_').replace(' ', '_')}", f"surface by {form}",
                     fahrenheit(value), "[degF]")
                for form, value in known.items()
            ),
        ),
        steps=(
            Step("reading in kelvin", rounded(apparent), "K"),
            Step("reflected in kelvin", rounded(reflected), "K"),
            Step("surface in kelvin", rounded(surface), "K"),
        ),
    )  # fmt: skip
