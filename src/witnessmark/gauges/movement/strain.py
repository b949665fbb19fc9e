"""What damage a tensile strain in a wall is expected to do."""

from __future__ import annotations

from decimal import Decimal
from typing import Annotated

from witnessmark.gauges.answer import Also, Answer
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.gauge import gauge
from witnessmark.gauges.movement.cracks import CATEGORIES
from witnessmark.gauges.movement.sources import BOSCARDIN, CRITICAL_STRAIN
from witnessmark.units import Quantity

__all__ = ["strain_category", "tensile_strain_category"]

#: Upper bounds in %, inclusive, of categories 0 to 3. One copy of the table prints 0.0075 for the second.
_BOUNDS = (Decimal("0.05"), Decimal("0.075"), Decimal("0.15"), Decimal("0.3"))
_CRITICAL = Decimal("0.03")
_SEVERE = 4


def strain_category(percent: Decimal) -> int:
    """Least damage category, 0 to 4, that a limiting tensile strain in % goes with; 4 stands for 4 or 5.

    Boscardin and Cording 1989; a strain on a boundary counts with the lower category (the source does not say).

    >>> strain_category(Decimal("0.05")), strain_category(Decimal("0.06")), strain_category(Decimal("0.31"))
    (0, 1, 4)
    """
    return next((number for number, bound in enumerate(_BOUNDS) if percent <= bound), _SEVERE)


@gauge(
    name="tensile-strain-category",
    family="movement",
    title="Damage category that a tensile strain in a wall goes with",
    unit="1",
    gives="damage category 0 to 4 for a limiting tensile strain; 4 stands for 4 or 5",
    sources=(BOSCARDIN, CRITICAL_STRAIN),
    error="half a category at the boundaries; strains are estimates from deflections",
    never="that a wall has cracked, or will not",
    cautions=(
        "Cracks in brickwork were first seen at about 0.03 % average strain, below the end of category 0.",
        "Computing strain from movements is engineering work; what it means is for a licensed structural engineer.",
    ),
    example={"strain": "0.06%"},
)
def tensile_strain_category(
    strain: Annotated[
        Quantity,
        Asked(
            "limiting tensile strain in the wall",
            "%",
            lowest="0",
            highest="2",
            least="0",
            most="100",
            how="from an engineer's computation, or change of a gauge length between two studs",
            example="0.06%",
        ),
    ],
) -> Answer:
    """Damage category that goes with a limiting tensile strain.

    Rule:
        0 to 0.05 % category 0; to 0.075 % 1; to 0.15 % 2; to 0.3 % 3; above 0.3 % 4 or 5

    >>> from witnessmark.gauges import evaluate
    >>> evaluate("tensile-strain-category", {"strain": "0.1%"}).value
    Decimal('2')
    """
    number = strain_category(strain.value)
    name = "severe to very severe" if number == _SEVERE else CATEGORIES[number].name
    which = "4 or 5" if number == _SEVERE else str(number)
    return Answer(
        value=Decimal(number),
        words=f"A tensile strain of {float(strain.value):.4g} % goes with category {which}, {name}.",
        also=(
            Also("name", "name of the category", name),
            Also("cracks_begin", "at or above the strain at which cracks were first seen (0.03 %)",
                 strain.value >= _CRITICAL),
        ),
    )  # fmt: skip
