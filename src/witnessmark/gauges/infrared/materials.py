"""Which emissivities are published for building materials, list by list; long waves, about 20 to 40 °C."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal

from witnessmark.gauges.answer import Source

__all__ = ["LISTS_DIFFER", "MATERIALS", "Material", "range_of"]

_HAND = Source("Emissivity table in the manual of a handheld infrared instrument", "", "", "seen in a copy")
_MEASURED = Source("Chen and Chen, emissivity of building materials measured", "2016", "", "seen in a copy")
_MAKER = Source("Emissivity table of an instrument maker", "", "", "seen in a copy")
_SURVEY = Source("Emissivity table of a thermal survey firm", "", "", "seen in a copy")
_CHARTS = Source("Emissivity charts for infrared thermometers", "", "", "seen in a copy")

#: How far lists differ for one material: 0.05 to 0.1. A material with one value only is taken this far either way.
LISTS_DIFFER = Decimal("0.05")
_LEAST, _MOST = Decimal("0.01"), Decimal("0.99")


@dataclass(frozen=True, slots=True)
class Material:
    """A material with its published emissivities: lowest, highest, and the list that says so."""

    rows: tuple[tuple[str, str, Source], ...]
    note: str = ""

    @property
    def metal(self) -> bool:
        """Whether some list puts it below 0.5, where a camera reads mostly reflection."""
        return any(Decimal(low) < Decimal("0.5") for low, _, _ in self.rows)


MATERIALS: dict[str, Material] = {
    "aluminum foil": Material((("0.09", "0.09", _SURVEY),)),
    "aluminum oxidized": Material((("0.2", "0.3", _MAKER),)),
    "aluminum polished": Material((("0.05", "0.05", _SURVEY),)),
    "aluminum sheet": Material((("0.02", "0.04", _MAKER),)),
    "asphalt or tar paper": Material((("0.93", "0.93", _CHARTS),)),
    "brick": Material((("0.93", "0.93", _HAND), ("0.944", "0.944", _MEASURED), ("0.93", "0.93", _MAKER))),
    "brick, mortar or plaster": Material((("0.93", "0.93", _MAKER),)),
    "chipboard": Material((("0.98", "0.98", _SURVEY),)),
    "concrete": Material((("0.92", "0.92", _HAND), ("0.93", "0.93", _MAKER))),
    "copper oxidized": Material((("0.76", "0.76", _MAKER),)),
    "copper polished": Material((("0.03", "0.03", _MAKER),)),
    "electrical tape": Material((("0.97", "0.97", _SURVEY),)),
    "fiberboard": Material((("0.85", "0.85", _SURVEY),)),
    "glass": Material((("0.911", "0.911", _MEASURED), ("0.94", "0.94", _MAKER)), "Glass also mirrors the room."),
    "gypsum board": Material((("0.90", "0.90", _SURVEY), ("0.90", "0.90", _MAKER))),
    "ice": Material((("0.97", "0.97", _MAKER),)),
    "masking tape": Material((("0.92", "0.92", _SURVEY),)),
    "paint": Material(
        (("0.92", "0.96", _MAKER), ("0.95", "0.95", _MAKER), ("0.84", "0.84", _SURVEY)),
        "Color as seen says nothing of the long waves: white oil paint 0.95 by one list, white plastic paint 0.84 by "
        "another. Paint with metal flakes is another matter.",
    ),
    "plastic (PVC, PE, PP)": Material((("0.91", "0.94", _SURVEY), ("0.94", "0.94", _MAKER))),
    "plywood": Material((("0.83", "0.83", _SURVEY),)),
    "water": Material((("0.95", "0.95", _HAND), ("0.96", "0.96", _MAKER))),
    "wood": Material((("0.90", "0.90", _SURVEY), ("0.902", "0.902", _MEASURED), ("0.94", "0.94", _MAKER))),
}


def range_of(material: str) -> tuple[Decimal, Decimal, bool]:
    """Lowest and highest published emissivity, and whether one value only was widened by what lists differ.

    >>> range_of("glass")
    (Decimal('0.911'), Decimal('0.94'), False)
    >>> range_of("plywood")
    (Decimal('0.78'), Decimal('0.88'), True)
    """
    rows = MATERIALS[material].rows
    low, high = min(Decimal(row[0]) for row in rows), max(Decimal(row[1]) for row in rows)
    if low != high:
        return low, high, False
    return max(_LEAST, low - LISTS_DIFFER), min(_MOST, high + LISTS_DIFFER), True
