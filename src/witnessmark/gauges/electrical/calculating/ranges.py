"""What household cooking equipment counts with in a service calculation."""

from __future__ import annotations

from collections.abc import Sequence
from decimal import ROUND_HALF_UP, Decimal
from typing import Annotated

from witnessmark.gauges.answer import Also, Answer, Outside, rounded
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.electrical.calculating.cautions import INFORMATIONAL
from witnessmark.gauges.electrical.editions import nec
from witnessmark.gauges.gauge import gauge
from witnessmark.units import Quantity

__all__ = ["cooking_demand", "range_demand"]

#: NEC Table 220.55 for 1 to 5 appliances: column A and B in percent, column C in kW.
_A, _B, _C = (80, 75, 70, 66, 62), (80, 65, 55, 50, 45), (8, 11, 14, 17, 20)
# Beyond five, column C goes on with 15 kW and 1 kW for each appliance, up to 40 of them.
_SMALL, _MEDIUM, _LARGE = Decimal("1.75"), Decimal("3.5"), Decimal("8.75")
_TWELVE = Decimal(12)
_MOST, _MOST_C = 5, 40


def _column_c(ratings: Sequence[Decimal]) -> Decimal:
    if not ratings:
        return Decimal(0)
    number = len(ratings)
    table = Decimal(_C[number - 1] if number <= _MOST else number + 15)
    mean = sum((max(one, _TWELVE) for one in ratings), Decimal(0)) / number
    over = (mean - _TWELVE).quantize(Decimal(1), ROUND_HALF_UP)
    return table * (1 + over * Decimal("0.05"))


def _by_percent(ratings: Sequence[Decimal], column: tuple[int, ...]) -> Decimal:
    return sum(ratings, Decimal(0)) * column[min(len(ratings), _MOST) - 1] / 100 if ratings else Decimal(0)


def cooking_demand(kilowatts: Sequence[Decimal]) -> Decimal:
    """Demand in kW of cooking appliances rated in kW, one number each.

    Column C: 8 kW for one to 12 kW, 5 % more for each kW or major fraction (0.5 and up) over 12, to 27; unequal ones
    by their mean, none below 12. Note 3: those to 8.75 kW may count by percent of their sum, those below 3.5 apart.
    The smaller result counts; 1.75 kW and less count in full. More than five count in the percent columns as five
    (a little too much). Source: NEC Table 220.55 with notes 1 to 3.

    >>> cooking_demand([Decimal("14.5")]), cooking_demand([Decimal(4), Decimal(4), Decimal("5.1")])
    (Decimal('9.20'), Decimal('7.205'))
    """
    tiny = [one for one in kilowatts if one <= _SMALL]
    rest = [one for one in kilowatts if one > _SMALL]
    small = [one for one in rest if one < _MEDIUM]
    medium = [one for one in rest if _MEDIUM <= one <= _LARGE]
    large = [one for one in rest if one > _LARGE]
    parted = _by_percent(small, _A) + _by_percent(medium, _B) + _column_c(large)
    return sum(tiny, Decimal(0)) + min(parted, _column_c(rest))


@gauge(
    name="range-demand",
    family="electrical",
    title="Cooking equipment in a service calculation",
    unit="kW",
    gives="load that counts for the cooking equipment by the standard method",
    sources=(nec("1984 to 2023", "Table 220.55, notes 1 to 3 (to 2002 Table 220-19)", "memory"),),
    error="none in the table; ratings from plates",
    never="what the range itself draws, or the size of its branch circuit (note 4 and 210.19)",
    cautions=(INFORMATIONAL, "The optional method (220.82) counts the plate rating instead."),
    example={"ratings": "14.5kW"},
)
def range_demand(
    ratings: Annotated[
        tuple[Quantity, ...],
        Asked(
            "rating of each household range, oven and cooktop",
            "kW",
            lowest="0",
            highest="27",
            least="0",
            most="100",
            how="from its plate",
            example="12kW",
        ),
    ],
) -> Answer:
    """Demand load of household cooking equipment.

    Rule:
        one to 12 kW: 8 kW (column C); over 12 to 27 kW: 5 % more for each kW or major fraction (0.5 counts) over 12;
        two 11, three 14, four 17, five 20 kW; 3.5 to 8.75 kW: 80, 65, 55, 50, 45 % of the sum; less: 80, 75, 70, 66, 62 %

    >>> from witnessmark.units import parse_quantity as q
    >>> range_demand((q("16kW"),)).value
    Decimal('9.6')
    """
    kilowatts = [one.value for one in ratings]
    value = rounded(float(cooking_demand(kilowatts)))
    many = len(kilowatts) > _MOST_C
    return Answer(
        value=value,
        words=f"The cooking equipment, {float(sum(kilowatts)):.4g} kW on its plates, counts with {float(value):.4g} kW.",
        outside_range=(
            (Outside("ratings", Quantity(Decimal(len(kilowatts)), "1"), Decimal(1), Decimal(_MOST_C), "too many"),)
            if many
            else ()
        ),
        also=(
            Also("connected", "sum of the plates", rounded(float(sum(kilowatts))), "kW"),
            Also("neutral", "of it on the neutral, 70 % (220.61)", rounded(float(value) * 0.7), "kW"),
        ),
    )
