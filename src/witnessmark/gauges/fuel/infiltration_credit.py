"""How much leakage counts toward a house's outdoor air."""

from __future__ import annotations

from decimal import Decimal
from typing import Annotated

from witnessmark.gauges.answer import Also, Answer, Step, Uncertainty, rounded
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.fuel.cautions import LOCAL
from witnessmark.gauges.fuel.sources import VENTILATION_2013
from witnessmark.gauges.gauge import gauge
from witnessmark.units import Quantity

__all__ = ["infiltration_cfm", "infiltration_credit", "normalized_leakage"]

_REFERENCE_HEIGHT = 8.2
_AREA_PER_CFM50 = 0.055
_MOST_NEW = Decimal(2) / 3


def normalized_leakage(cfm50: float, square_feet: float, height: float) -> float:
    """Normalized leakage from airflow at 50 Pa in cfm, floor area in ft2 and height in ft, all above nought.

    NL = 1000 (ELA/A) (H/8.2)^0.4 with ELA in ft2 and ELA in in2 = 0.055 CFM50 (recalled).

    >>> round(normalized_leakage(1500, 2000, 8.2), 4)
    0.2865
    """
    return float(1000 * (_AREA_PER_CFM50 * cfm50 / 144 / square_feet) * (height / _REFERENCE_HEIGHT) ** 0.4)


def infiltration_cfm(leakage: float, weather: float, square_feet: float) -> float:
    """Average infiltration in cfm: NL x wsf x A / 7.3 (A in ft2; 1.44 in place of 7.3 for m2 and L/s).

    >>> round(infiltration_cfm(0.28646, 0.5, 2000), 1)
    39.2
    """
    return leakage * weather * square_feet / 7.3


@gauge(
    name="infiltration-credit",
    family="fuel",
    title="Leakage that counts toward a house's outdoor air",
    unit="[cft_i]/min",
    gives="yearly average of the air that leaks in, as the standard credits it",
    sources=(VENTILATION_2013,),
    error="an average over a year; on a still mild day a house takes in a fraction of it",
    never="that enough air leaks in on any given day, or that appliances have air to burn",
    cautions=(LOCAL, "A leakage area from one point at 50 Pa is an estimate; the standard asks for a test at several."),
    example={"airflow": "1500 cfm", "area": "2000 sq ft", "height": "8.2ft", "weather": "0.5", "required": "90 cfm"},
)
def infiltration_credit(
    airflow: Annotated[
        Quantity,
        Asked(
            "airflow at 50 Pa", "[cft_i]/min", lowest="50", highest="10000", least="1",
            how="from a blower door report", example="1500 cfm",
        ),
    ],
    area: Annotated[
        Quantity,
        Asked("floor area", "[sft_i]", lowest="100", highest="10000", least="1", how="conditioned", example="2000 sq ft"),
    ],
    height: Annotated[
        Quantity,
        Asked(
            "height from the lowest to the highest point of the heated space", "[ft_i]", lowest="7", highest="40",
            least="1", how="grade floor to the highest ceiling", example="17ft",
        ),
    ],
    weather: Annotated[
        Decimal,
        Asked(
            "weather and shielding factor of the place", lowest="0.2", highest="1.5", least="0", most="3",
            how="from the standard's list for the nearest station", example="0.5",
        ),
    ],
    required: Annotated[
        Quantity | None,
        Asked(
            "total outdoor air that the house needs", "[cft_i]/min", lowest="0", highest="500", least="0",
            how="from whole-house-ventilation, 2013 or later", example="90 cfm",
        ),
    ] = None,
    *,
    exterior_share: Annotated[
        Decimal,
        Asked(
            "share of the envelope that faces outdoors, for an attached house", lowest="0", highest="1", least="0",
            most="1", how="1 for a detached house", example="1",
        ),
    ] = Decimal(1),
    new: Annotated[bool, Asked("new construction: the credit is then at most two thirds of the need")] = False,
) -> Answer:  # fmt: skip
    """Infiltration credited by ASHRAE 62.2 from a blower door test, and what a fan must still bring.

    Formula:
        NL = 1000 (ELA/A) (H/8.2)^0.4;  ELA in2 = 0.055 CFM50;  Qinf = NL wsf A / 7.3;  Qfan = Qtot - Qinf x share

    >>> from witnessmark.units import parse_quantity as q
    >>> answer = infiltration_credit(q("1500 cfm"), q("2000 sq ft"), q("8.2ft"), Decimal("0.5"), q("90 cfm"))
    >>> round(answer.value, 1), round(answer["fan"], 1)
    (Decimal('39.2'), Decimal('50.8'))
    """
    leakage = normalized_leakage(float(airflow.value), float(area.value), float(height.value))
    value = rounded(infiltration_cfm(leakage, float(weather), float(area.value)))
    words = f"About {value:.0f} cfm leaks in on a yearly average (normalized leakage {leakage:.3f})."
    also = [Also("normalized_leakage", "normalized leakage", rounded(leakage), "1")]
    if required is not None:
        credit = value * exterior_share
        if new:
            credit = min(credit, required.value * _MOST_NEW)
        fan = max(required.value - credit, Decimal(0))
        words += f" Of {required.value:.0f} cfm needed a fan brings the other {fan:.0f}."
        also += [Also("credit", "credited", credit, "[cft_i]/min"), Also("fan", "left for a fan", fan, "[cft_i]/min")]
    return Answer(
        value=value,
        unit="[cft_i]/min",
        words=words,
        uncertainty=Uncertainty("about 20 %: one point at 50 Pa and a yearly average", value * Decimal("0.2")),
        also=tuple(also),
        steps=(
            Step("leakage area, 0.055 x airflow at 50 Pa", rounded(_AREA_PER_CFM50 * float(airflow.value)), "[sin_i]"),
            Step("normalized leakage", rounded(leakage), "1"),
            Step("NL x weather factor x area / 7.3", value, "[cft_i]/min"),
        ),
    )
