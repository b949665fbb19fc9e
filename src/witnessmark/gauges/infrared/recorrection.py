"""What temperature a surface has, when the camera had other settings than are right."""

from __future__ import annotations

import math
from decimal import Decimal
from typing import Annotated

from witnessmark.gauges.answer import Also, Answer, Step, Uncertainty, rounded
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.gauge import gauge
from witnessmark.gauges.infrared.correction import METAL, corrected, off_by
from witnessmark.gauges.infrared.degrees import difference, fahrenheit, kelvin, said, said_difference
from witnessmark.gauges.infrared.inputs import Emissivity, InBand, Reflected
from witnessmark.gauges.infrared.messages import READINGS_CONTRADICT
from witnessmark.gauges.infrared.sources import CODATA, DATA_SHEETS, GRAYBODY
from witnessmark.gauges.infrared.surface import apparent_kelvin, object_kelvin
from witnessmark.problems import Refusal
from witnessmark.units import Quantity

__all__ = ["infrared_recorrection"]


@gauge(
    name="infrared-recorrection",
    family="infrared",
    title="Surface temperature from a reading taken at other camera settings",
    unit="[degF]",
    gives="temperature of the surface with the right emissivity and reflected temperature",
    sources=(GRAYBODY, CODATA, DATA_SHEETS),
    error="the camera's own 2 °C or 2 %, and what 0.05 of emissivity makes",
    never="that a surface is wet, uninsulated or defective: a temperature by itself has no cause",
    example={
        "reading": "85F",
        "emissivity_set": "0.95",
        "reflected_set": "68F",
        "emissivity": "0.85",
        "reflected_temperature": "75F",
    },
)
def infrared_recorrection(
    reading: Annotated[
        Quantity,
        Asked(
            "temperature that the camera showed with the settings it had",
            "Cel",
            lowest="-40",
            highest="350",
            least="-100",
            most="1500",
            how="from the picture, with the settings stored in it",
            example="85F",
        ),
    ],
    emissivity_set: Annotated[
        Decimal,
        Asked(
            "emissivity that the camera was set to",
            "1",
            lowest="0.5",
            highest="1",
            least="0.01",
            most="1",
            how="from the picture's data; most cameras come set to 0.95",
            example="0.95",
        ),
    ],
    reflected_set: Annotated[
        Quantity,
        Asked(
            "reflected temperature that the camera was set to",
            "Cel",
            lowest="-80",
            highest="150",
            least="-150",
            most="1500",
            how="from the picture's data; most cameras come set to 20 °C (68 °F)",
            example="68F",
        ),
    ],
    *,
    emissivity: Emissivity,
    reflected_temperature: Reflected,
    band: InBand = "7.5-14 um",
) -> Answer:
    """Temperature of a surface from a reading taken at other settings: undone first, then corrected once.

    Formula:
        W(Tapp) = e0 W(T0) + (1 - e0) W(Tref0)        undo the settings e0, Tref0 of the reading T0
        W(T) = (W(Tapp) - (1 - e) W(Tref)) / e        correct once with the right e, Tref

    Trap: to correct T0 as if it were Tapp applies emissivity twice; ``twice_applied`` shows what that would give.

    >>> from decimal import Decimal
    >>> from witnessmark.units import parse_quantity as q
    >>> e, t = Decimal("0.9"), q("20Cel")
    >>> infrared_recorrection(q("86F"), e, t, emissivity=e, reflected_temperature=t).value
    Decimal('86')
    """
    shown, before, now = kelvin(reading), kelvin(reflected_set), kelvin(reflected_temperature)
    e0, e = float(emissivity_set), float(emissivity)
    apparent = apparent_kelvin(shown, e0, before, band)
    if apparent is None:
        raise Refusal(READINGS_CONTRADICT.at("reading", said(shown)))
    surface = corrected(apparent, e, now, band, "reading")
    twice = object_kelvin(shown, e, now, band)
    by_emissivity, camera = off_by(apparent, e, now, band)
    low = e < 0.5  # noqa: PLR2004 - the limit that the gauge states for emissivity
    return Answer(
        value=fahrenheit(surface),
        words=(
            f"No measurement: at emissivity {e:g} the figure of {said(surface)} is mostly reflection."
            if low
            else f"With the right settings the surface is at about {said(surface)}; the camera showed {said(shown)}."
        ),
        uncertainty=Uncertainty(
            f"{said_difference(by_emissivity)} for 0.05 of emissivity, {said_difference(camera)} for the camera",
            difference(math.hypot(by_emissivity, camera)),
        ),
        cautions=(METAL,) if low else (),
        also=(
            Also("apparent", "what the camera would have shown at emissivity 1", fahrenheit(apparent), "[degF]"),
            Also("change", "surface less what was shown", difference(surface - shown), "[degF]{difference}"),
            *(
                ()
                if twice is None or e0 == 1
                else (Also("twice_applied", "wrong: emissivity applied twice", fahrenheit(twice), "[degF]"),)
            ),
        ),
        steps=(
            Step("what was shown, in kelvin", rounded(shown), "K"),
            Step("undone to emissivity 1", rounded(apparent), "K"),
            Step("corrected once", rounded(surface), "K"),
        ),
    )
