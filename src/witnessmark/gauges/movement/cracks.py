"""How bad a crack in a masonry wall is held to be."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal
from typing import Annotated, Literal

from witnessmark.gauges.answer import Also, Answer, Uncertainty
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.gauge import gauge
from witnessmark.gauges.movement.sources import BRE_251, BURLAND_1977
from witnessmark.units import Quantity

__all__ = ["CATEGORIES", "Category", "Repair", "crack_category", "width_category"]

Repair = Literal["none", "decorate", "fill", "open and patch", "replace parts of walls", "rebuild"]


@dataclass(frozen=True, slots=True)
class Category:
    """A damage category: its number, name, the repair that it takes, what it touches, and its widest crack in mm."""

    number: int
    name: str
    repair: Repair
    touches: Literal["appearance", "serviceability", "stability"]
    widest: Decimal | None
    signs: str


CATEGORIES = (
    Category(0, "negligible", "none", "appearance", Decimal("0.1"), "hairline cracks"),
    Category(1, "very slight", "decorate", "appearance", Decimal(1), "fine cracks, treated by decoration"),
    Category(2, "slight", "fill", "appearance", Decimal(5), "cracks easily filled; doors may stick slightly"),
    Category(3, "moderate", "open and patch", "serviceability", Decimal(15),
             "cracks opened up and patched; weathertightness often lost; doors and windows stick"),
    Category(4, "severe", "replace parts of walls", "serviceability", Decimal(25),
             "parts of walls replaced, above all over openings; floors slope, frames distort"),
    Category(5, "very severe", "rebuild", "stability", None,
             "partial or complete rebuilding; beams lose bearing, shoring needed, danger of instability"),
)  # fmt: skip
_SEVERAL = Decimal(3)


def width_category(millimetres: Decimal, *, several: bool = False) -> int:
    """Number of the category, 0 to 5, that the width of the widest crack guides to; exact at 1, 5, 15 and 25 mm.

    Hairline is less than 0.1 mm; the others hold up to and with their width. *several* cracks wider than 3 mm guide
    to category 3 even where none is wider than 5 mm. BRE Digest 251, table of categories.

    >>> width_category(Decimal("5.0")), width_category(Decimal("5.01")), width_category(Decimal(4), several=True)
    (2, 3, 3)
    """
    if millimetres < Decimal("0.1"):
        return 0
    number = next(
        (one.number for one in CATEGORIES[1:] if one.widest is not None and millimetres <= one.widest), 5
    )  # fmt: skip
    return max(number, 3) if several and millimetres > _SEVERAL else number


@gauge(
    name="crack-category",
    family="movement",
    title="Damage category of cracks in a masonry wall",
    unit="1",
    gives="damage category 0 (negligible) to 5 (very severe): by the repair it takes where that is given, else what "
          "the width guides to",
    sources=(BRE_251, BURLAND_1977),
    error="one category either way: width is a guide, and cracks are read at one moment",
    never="what caused a crack, whether it still moves, or that a narrow crack does no harm",
    cautions=(
        ("Width alone is never enough: how much it takes to repair decides, with where the crack is and how many "
        "there are."),
        "A crack may be old and filled, or new and growing: only readings over months tell which.",
        ("The categories are for visible damage to walls of brick, block or stone; they do not say what the cause is. "
        "From category 3 up, and for any crack that grows or is stepped, displaced or at a bearing, the wall is for a "
        "licensed structural engineer."),
    ),
    example={"width": "3mm", "repair": "fill"},
)  # fmt: skip
def crack_category(
    width: Annotated[
        Quantity,
        Asked(
            "width of the widest crack, square to it, at its widest",
            "mm",
            lowest="0",
            highest="100",
            least="0",
            most="1000",
            how="with a crack gauge or feeler, not across a spalled edge",
            example="3mm",
        ),
    ],
    repair: Annotated[
        Repair | None, Asked("what it takes to repair the damage, which decides the category", example="fill")
    ] = None,
    several_over_3_mm: Annotated[bool, Asked("several cracks are wider than 3 mm")] = False,
) -> Answer:
    """Damage category of visible cracks in a masonry wall.

    Rule:
        by ease of repair: none 0, decorate 1, fill 2, open and patch 3, replace parts of walls 4, rebuild 5
        width as a guide: < 0.1 mm 0; <= 1 mm 1; <= 5 mm 2; 5 to 15 mm (or several > 3 mm) 3; 15 to 25 mm 4; > 25 mm 5

    Boundaries are exact decimals; 5.0 mm is category 2 and 15.0 mm category 3. In 4 and 5 the number of cracks
    counts as well. Trap: category by width only.

    >>> from witnessmark.gauges import evaluate
    >>> evaluate("crack-category", {"width": "15mm"}).value, evaluate("crack-category", {"width": "1/4in"}).value
    (Decimal('3'), Decimal('3'))
    """
    guided = width_category(width.value, several=several_over_3_mm)
    decided = next((one.number for one in CATEGORIES if one.repair == repair), guided)
    category = CATEGORIES[decided]
    size = f"{float(width.value):.4g} mm"
    if repair is None:
        said = (
            f"A crack of {size} guides to category {decided}, {category.name}; the repair it takes must confirm it "
            "before the category is stated"
        )
    elif guided == decided:
        said = f"Category {decided}, {category.name}: the repair and the width of {size} agree"
    else:
        said = (
            f"Category {decided}, {category.name}, by the repair it takes; the width of {size} alone would guide to "
            f"{guided}"
        )
    return Answer(
        value=Decimal(decided),
        words=f"{said}.",
        uncertainty=Uncertainty("one category either way where only the width is known", Decimal(1))
        if repair is None
        else Uncertainty("as the repair was judged"),
        also=(
            Also("name", "name of the category", category.name),
            Also("touches", "what it touches", category.touches),
            Also("signs", "typical damage", category.signs),
            Also("by_width", "category that the width guides to", Decimal(guided), "1"),
            Also("confirmed", "the repair was given, so the category does not rest on width alone", repair is not None),
        ),
    )
