"""How much outdoor air a whole house needs by fan, by document and edition."""

from __future__ import annotations

import math
from decimal import ROUND_HALF_UP, Decimal
from typing import Annotated, Literal

from witnessmark.gauges.answer import Also, Answer, Limit, Outside, Step, Uncertainty
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.fuel.cautions import FINDING, LOCAL
from witnessmark.gauges.fuel.editions import RESIDENTIAL, VENTILATION, checked_edition, since, standing
from witnessmark.gauges.fuel.sources import IRC_VENTILATION, VENTILATION_2010, VENTILATION_2013
from witnessmark.gauges.gauge import gauge
from witnessmark.units import Quantity

__all__ = ["area_rate", "metric_rate", "table_2010", "table_2013", "whole_house_ventilation"]

_NEW, _REQUIRED_FROM, _EQUATION_FROM = 2013, 2012, 2018
_BANDS_2010 = (1500, 3000, 4500, 6000, 7500)
_MOST_AREA, _MOST_BEDROOMS = 5000, 5


def area_rate(square_feet: Decimal, bedrooms: int, share: Decimal) -> Decimal:
    """Outdoor air in cfm: share x floor area in ft2 + 7.5 x (bedrooms + 1), bedrooms at least 1.

    *share* is 0.01 through ASHRAE 62.2-2010 and in the International Residential Code, 0.03 from 62.2-2013 on.

    >>> area_rate(Decimal(3500), 3, Decimal("0.01"))
    Decimal('65.00')
    """
    return share * square_feet + Decimal("7.5") * (max(bedrooms, 1) + 1)


def metric_rate(square_metres: float, bedrooms: int) -> float:
    """Outdoor air in L/s by the metric equation of ASHRAE 62.2-2013: 0.15 A + 3.5 (bedrooms + 1), A in m2.

    It rounds otherwise than the equation in feet: 75 cfm are 35.4 L/s, the metric equation gives 34.9.

    >>> round(metric_rate(139.35, 3), 1)
    34.9
    """
    return 0.15 * square_metres + 3.5 * (max(bedrooms, 1) + 1)


def table_2013(square_feet: Decimal, bedrooms: int) -> Decimal | None:
    """Cfm by Table 4.1a of ASHRAE 62.2-2013: the top of each band of 500 ft2, rounded half up; None beyond the table.

    >>> table_2013(Decimal(1000), 2), table_2013(Decimal(1001), 2)
    (Decimal('53'), Decimal('68'))
    """
    if square_feet > _MOST_AREA or bedrooms > _MOST_BEDROOMS:
        return None
    top = Decimal(500 * max(math.ceil(square_feet / 500), 1))
    return area_rate(top, bedrooms, Decimal("0.03")).quantize(Decimal(1), ROUND_HALF_UP)


def table_2010(square_feet: Decimal, bedrooms: int) -> Decimal:
    """Cfm by International Residential Code Table M1507.3.3(1), which is ASHRAE 62.2-2010 Table 4.1a.

    Bedrooms 0-1, 2-3, 4-5, 6-7 and more; bands end at 1500, 3000, 4500, 6000, 7500 ft2, each end in the lower band.

    >>> table_2010(Decimal(2000), 3)
    Decimal('60')
    """
    band = next((at for at, top in enumerate(_BANDS_2010) if square_feet <= top), len(_BANDS_2010))
    return Decimal(30 + 15 * band + 15 * min(bedrooms // 2, 4))


@gauge(
    name="whole-house-ventilation",
    family="fuel",
    title="Outdoor air that a whole house needs by fan",
    unit="[cft_i]/min",
    gives="continuous outdoor air for the whole house",
    sources=(VENTILATION_2013, VENTILATION_2010, IRC_VENTILATION),
    error="none in the rule; editions differ by a factor of two for the same house",
    never="that the air indoors is good, or that a fan moves what its label says",
    cautions=(LOCAL, FINDING),
    example={"area": "2000 sq ft", "bedrooms": "3", "document": "62.2", "edition": "2016", "measured": "70 cfm"},
)
def whole_house_ventilation(
    area: Annotated[
        Quantity,
        Asked(
            "conditioned floor area", "[sft_i]", lowest="100", highest="10000", least="1",
            how="all storeys, basement where it is heated", example="2000 sq ft",
        ),
    ],
    bedrooms: Annotated[
        int,
        Asked("bedrooms", lowest="0", highest="12", least="0", most="100", how="a studio counts as one", example="3"),
    ],
    document: Annotated[Literal["62.2", "residential code"], Asked("ASHRAE 62.2, or International Residential Code")],
    edition: Annotated[
        int,
        Asked("edition adopted where and when it was built", lowest="2000", highest="2024", example="2016"),
    ],
    *,
    by: Annotated[Literal["equation", "table"], Asked("by equation (real area) or table (bands of area)")] = "equation",
    measured: Annotated[
        Quantity | None,
        Asked(
            "outdoor airflow measured", "[cft_i]/min", lowest="0", highest="500", least="0",
            how="with a flow hood or flow box at the grille", example="70 cfm",
        ),
    ] = None,
    built: Annotated[int | None, Asked("year the house was built", lowest="1700", highest="2100", example="1994")] = None,
) -> Answer:  # fmt: skip
    """Outdoor air for a whole house by equation or table, document and edition.

    Formula:
        62.2 through 2010, residential code: 0.01 A + 7.5 (Nbr + 1)
        62.2 from 2013: 0.03 A + 7.5 (Nbr + 1)      A in ft2, Nbr bedrooms, not less than one; result in cfm
        62.2-2013 Table 4.1a: the same at the top of each band of 500 ft2, so it asks for more inside a band
        residential code: from 2012, Table M1507.3.3(1); the equation from 2018 (recalled)

    >>> from witnessmark.units import parse_quantity as q
    >>> whole_house_ventilation(q("2000 sq ft"), 3, "62.2", 2016).value
    Decimal('90.00')
    """  # fmt: skip
    residential = document == "residential code"
    name = "International Residential Code" if residential else "ASHRAE 62.2"
    checked_edition(edition, RESIDENTIAL if residential else VENTILATION, name)
    notes = ["A house without bedrooms counts as one with one."] if bedrooms == 0 else []
    if residential and edition < _REQUIRED_FROM:
        return Answer(
            words=f"The {edition} edition does not yet ask for whole-house ventilation by fan; first in the 2012 edition, "
            "for houses that leak less than 5 air changes at 50 Pa. Recommended today.",
            sources=(IRC_VENTILATION,),
            also=since(required=False, first=_REQUIRED_FROM),
        )
    new = not residential and edition >= _NEW
    share = Decimal("0.03" if new else "0.01")
    source = IRC_VENTILATION if residential else VENTILATION_2013 if new else VENTILATION_2010
    equation = area_rate(area.value, bedrooms, share)
    table = table_2013(area.value, bedrooms) if new else table_2010(area.value, bedrooms)
    used, outside = (equation, ()) if by == "equation" else _by_table(table, equation, area)
    if by == "equation" and residential and edition < _EQUATION_FROM:
        notes.append("The residential code prints the equation from 2018 on; before, the table alone.")
    words = f"{name} {edition}, by {by}: about {used:.0f} cfm of outdoor air all the time."
    if by == "table" and table is None:
        words = f"The table ends at 5000 square feet and 5 bedrooms; by equation about {used:.0f} cfm."
    also = [
        Also("equation", "by equation", equation, "[cft_i]/min"),
        *([Also("table", "by table", table, "[cft_i]/min")] if table is not None else []),
        *since(required=True, first=_REQUIRED_FROM if residential else VENTILATION[0]),
    ]
    verdict = None
    if measured is not None:
        held = Answer(value=measured.value, unit="[cft_i]/min").against(
            Limit(source, lowest=Quantity(used, "[cft_i]/min"), words="Measured airflow against the need")
        )
        verdict = held.verdict
        also.append(Also("margin", "measured beyond the need (negative: short)", measured.value - used, "[cft_i]/min"))
        words += f" Measured: {measured.value:.0f} cfm."
    return Answer(
        value=used,
        unit="[cft_i]/min",
        words=words + standing(edition, built),
        uncertainty=Uncertainty("none in the rule; a flow hood is within about 10 %"),
        outside_range=outside,
        verdict=verdict,
        sources=(source,),
        cautions=tuple(notes),
        also=tuple(also),
        steps=(
            Step("share of floor area", share * area.value, "[cft_i]/min"),
            Step("7.5 for each bedroom and one more", equation - share * area.value, "[cft_i]/min"),
        ),
    )


def _by_table(table: Decimal | None, equation: Decimal, area: Quantity) -> tuple[Decimal, tuple[Outside, ...]]:
    if table is not None:
        return table, ()
    return equation, (Outside("area", area, None, Decimal(_MOST_AREA), "the table ends at 5000 ft2 and 5 bedrooms"),)
