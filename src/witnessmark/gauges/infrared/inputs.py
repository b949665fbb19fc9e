"""What several infrared gauges ask for in the same words."""

from __future__ import annotations

from decimal import Decimal
from typing import Annotated, Literal

from witnessmark.gauges.asked import Asked
from witnessmark.units import Quantity

__all__ = ["RSI", "Direction", "Emissivity", "InBand", "Reading", "Reflected"]

#: Surface resistance inside in m2K/W by the direction in which heat flows: ISO 6946.
RSI = {"horizontal": Decimal("0.13"), "up": Decimal("0.10"), "down": Decimal("0.17")}

Reading = Annotated[
    Quantity,
    Asked(
        "apparent temperature: what the camera shows with emissivity set to 1",
        "Cel",
        lowest="-40",
        highest="350",
        least="-100",
        most="1500",
        how="with the camera at emissivity 1.00, in focus, at a slant of less than 50°, the spot covering 3 by 3 pixels",
        example="86F",
    ),
]
Emissivity = Annotated[
    Decimal,
    Asked(
        "emissivity of the surface",
        "1",
        lowest="0.5",
        highest="1",
        least="0.01",
        most="1",
        how="from a table for the material as a range, or by tape on the surface; bare metal cannot be measured so",
        example="0.95",
    ),
]
Reflected = Annotated[
    Quantity,
    Asked(
        "reflected apparent temperature: what the surface mirrors, which is not the air temperature",
        "Cel",
        lowest="-80",
        highest="150",
        least="-150",
        most="1500",
        how="read crumpled and flattened foil, shiny side out, held in the plane of the surface, at emissivity 1.00",
        example="68F",
    ),
]
InBand = Annotated[
    Literal["7.5-14 um", "8-14 um", "graybody"],
    Asked("the band of wavelengths on the camera's data sheet, or graybody for the plain fourth-power law"),
]
Direction = Annotated[
    Literal["horizontal", "up", "down"],
    Asked("direction of the heat: horizontal through a wall, up through a ceiling, down through a floor"),
]
