"""How far a corrected temperature moves over the published emissivities of a material."""

from __future__ import annotations

from decimal import Decimal
from typing import Annotated

from witnessmark.gauges.answer import Also, Answer, Outside, Table, Uncertainty
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.gauge import gauge
from witnessmark.gauges.infrared.correction import METAL, corrected
from witnessmark.gauges.infrared.degrees import difference, fahrenheit, kelvin, said, said_difference
from witnessmark.gauges.infrared.inputs import InBand
from witnessmark.gauges.infrared.materials import LISTS_DIFFER, MATERIALS, range_of
from witnessmark.gauges.infrared.sources import CODATA, GRAYBODY
from witnessmark.units import Quantity

__all__ = ["infrared_material"]


@gauge(
    name="infrared-material",
    family="infrared",
    title="Emissivity of a material, and what its spread does to a reading",
    unit="[degF]{difference}",
    gives="how far the corrected temperature moves over the published emissivities",
    sources=(GRAYBODY, CODATA),
    error="lists differ by 0.05 to 0.1 for one material; dirt, wetness, slant and age move it further",
    never="the emissivity of the surface in front of the camera, or that bare metal can be read at all",
    example={"material": "wood", "reading": "86F", "reflected_temperature": "68F"},
)
def infrared_material(
    material: Annotated[str, Asked("the material that faces the camera", choices=tuple(MATERIALS), example="wood")],
    reading: Annotated[
        Quantity | None,
        Asked(
            "apparent temperature: what the camera shows with emissivity set to 1",
            "Cel",
            lowest="-40",
            highest="350",
            least="-100",
            most="1500",
            how="with the camera at emissivity 1.00, in focus, the spot covering 3 by 3 pixels",
            example="86F",
        ),
    ] = None,
    reflected_temperature: Annotated[
        Quantity | None,
        Asked(
            "reflected apparent temperature",
            "Cel",
            lowest="-80",
            highest="150",
            least="-150",
            most="1500",
            how="read crumpled and flattened foil held in the plane of the surface, at emissivity 1.00",
            example="68F",
        ),
    ] = None,
    band: InBand = "7.5-14 um",
) -> Answer:
    """Published emissivities of a material as a range, and the corrected temperature at both ends of it.

    Rule:
        the range runs from the lowest to the highest published value; where only one is published, it
        is taken 0.05 either way, which is how far lists differ; the correction is that of infrared-correction

    >>> from witnessmark.units import parse_quantity as q
    >>> answer = infrared_material("glass", q("50Cel"), q("20Cel"))
    >>> answer["lowest_emissivity"], answer["highest_emissivity"], round(answer.value, 1)
    (Decimal('0.911'), Decimal('0.94'), Decimal('1.6'))
    """
    listed = MATERIALS[material]
    low, high, widened = range_of(material)
    sources = tuple(dict.fromkeys(row[2] for row in listed.rows))
    also = [
        Also("lowest_emissivity", "lowest published emissivity", low, "1"),
        Also("highest_emissivity", "highest published emissivity", high, "1"),
        Also("reliable", "whether a camera can read it", not listed.metal),
    ]
    words = f"Published emissivities of {material} run from {low:f} to {high:f}"
    words += f" (one value only, widened by {LISTS_DIFFER} as lists differ)." if widened else "."
    value = uncertainty = None
    if reading is not None and reflected_temperature is not None:
        apparent, reflected = kelvin(reading), kelvin(reflected_temperature)
        ends = [corrected(apparent, float(e), reflected, band, "reading") for e in (low, high)]
        cold, hot = min(ends), max(ends)
        value = difference(hot - cold)
        words += f" The surface lies between {said(cold)} and {said(hot)}, {said_difference(hot - cold)} apart."
        uncertainty = Uncertainty(f"the spread itself, {said_difference(hot - cold)}; the camera's error comes on top")
        also += [
            Also("lowest_temperature", "surface at one end of the range", fahrenheit(cold), "[degF]"),
            Also("highest_temperature", "surface at the other end", fahrenheit(hot), "[degF]"),
        ]
    outside: tuple[Outside, ...] = ()
    if listed.metal:
        words += " " + METAL
        outside = (Outside("material", Quantity(low, "1"), Decimal("0.5"), None, METAL),)
    return Answer(
        value=value,
        words=words,
        uncertainty=uncertainty,
        sources=(GRAYBODY, CODATA, *sources),
        cautions=tuple(filter(None, (listed.note, METAL if listed.metal else ""))),
        outside_range=outside,
        also=tuple(also),
        table=Table(
            (("lowest", "1"), ("highest", "1"), ("list", "")),
            tuple((Decimal(row[0]), Decimal(row[1]), str(row[2])) for row in listed.rows),
        ),
    )
