"""Which moisture content a resistance between two pins stands for."""

from __future__ import annotations

from decimal import Decimal
from typing import Annotated

from witnessmark.gauges.answer import Also, Answer, Outside, Uncertainty, rounded
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.gauge import gauge
from witnessmark.gauges.wood.meter import FIT, TABLE, corrected_for_temperature, moisture_by_fit, moisture_by_table
from witnessmark.units import Quantity

__all__ = ["wood_resistance"]


@gauge(
    name="wood-resistance",
    family="wood",
    title="Moisture content from the resistance between two pins",
    unit="%",
    gives="moisture content of Douglas-fir between the pins, in % of its oven-dry mass",
    sources=(FIT, TABLE),
    error="about 1 % between the published table and fit and the pins; species move it by 1 to 3 % more",
    never="the moisture of another species or material without its own curve",
    cautions=("Gigohms need an instrument made for them and dry, clean insulation between the pins.",),
    example={"resistance": "120 megohm"},
)
def wood_resistance(
    resistance: Annotated[
        Quantity,
        Asked(
            "resistance between the two pins",
            "MOhm",
            lowest="0.46",
            highest="22400",
            least="0.001",
            most="1000000",
            how="insulated pins in line with the grain, with an instrument that reads gigohms",
            example="120 megohm",
        ),
    ],
    wood_temperature: Annotated[
        Quantity | None,
        Asked(
            "temperature of the wood itself; leave out near 24 °C (75 °F)",
            "Cel",
            lowest="-20",
            highest="60",
            least="-60",
            most="90",
            how="with a contact probe on the wood",
            example="75F",
        ),
    ] = None,
) -> Answer:
    """Moisture content of Douglas-fir from resistance: the logarithmic fit, with the table beside it.

    Formula:
        log10 MC = 2.99 - 2.113 log10(log10 R), R in ohms, wood at 23 to 25 °C;
        beside it a printed table of 7 to 25 % at 80 °F (27 °C), read between its rows on log R

    Away from 24 °C the result is corrected as a meter's reading is (wood-meter-correction).

    >>> from witnessmark.units import parse_quantity as q
    >>> round(wood_resistance(q("120 megohm")).value, 1)
    Decimal('11.8')
    """  # fmt: skip
    megohms = float(resistance.value)
    fit, table = moisture_by_fit(megohms), moisture_by_table(megohms)
    value = fit if wood_temperature is None else corrected_for_temperature(fit, float(wood_temperature.value))
    outside: tuple[Outside, ...] = ()
    if not 7 <= value <= 25:  # noqa: PLR2004 - ends of the table
        why = "the table ends at 7 and 25 %; beyond, resistance tells dry from wet but not how much"
        outside = (Outside("moisture content", Quantity(rounded(value), "%"), Decimal(7), Decimal(25), why),)
    also = [Also("fit", "by the fit, not corrected for temperature", rounded(fit), "%")]
    words = f"This resistance stands for about {value:.1f} % moisture content in Douglas-fir."
    if table is not None:
        also.append(Also("table", "by the table at 27 °C (80 °F)", rounded(table), "%"))
        before = "" if wood_temperature is None else f", the fit {fit:.1f} %, before the wood's temperature"
        words += f" The printed table gives {table:.1f} %{before}."
    return Answer(
        value=rounded(value),
        words=words,
        uncertainty=Uncertainty("about 1 % for Douglas-fir; 1 to 3 % more for another species", Decimal(1)),
        outside_range=outside,
        also=tuple(also),
    )
