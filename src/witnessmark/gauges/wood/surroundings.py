"""Whether wood is wetter than the air around it explains."""

from __future__ import annotations

import math
from decimal import Decimal
from typing import Annotated

from witnessmark.gauges.answer import Also, Answer, Step, Uncertainty, rounded
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.gauge import gauge
from witnessmark.gauges.wood.equilibrium import HANDBOOK, AirHumidity, AirTemperature, in_the_equation, near_saturation
from witnessmark.gauges.wood.sorption import emc_percent
from witnessmark.units import Quantity

__all__ = ["wood_against_air"]

#: What the equation is good to, % moisture content.
EQUATION_OFF = 1.0


@gauge(
    name="wood-against-air",
    family="wood",
    title="Is this wood wetter than the air around it explains?",
    unit="%",
    gives="moisture content of the wood less that which it would come to in this air",
    sources=(HANDBOOK,),
    error="about 2.5 % moisture content: the meter, the hygrometer and the equation together",
    never="where the water comes from, or that dry wood has always been dry",
    cautions=(
        "Wood follows the air of past weeks, not of the hour: after a change of weather or season it lags behind.",
        "Measure the air that the wood stands in (crawl space, attic, cavity), not that of another room.",
    ),
    example={"moisture": "19%", "temperature": "65F", "humidity": "55%"},
)
def wood_against_air(
    moisture: Annotated[
        Quantity,
        Asked(
            "moisture content of the wood, corrected for species and temperature",
            "%",
            lowest="6",
            highest="25",
            least="0",
            most="300",
            how="see wood-meter-correction",
            example="19%",
        ),
    ],
    temperature: AirTemperature,
    humidity: AirHumidity,
    meter_error: Annotated[
        Quantity,
        Asked(
            "how far the meter may be off, in % moisture content",
            "%",
            lowest="0.5",
            highest="5",
            least="0",
            most="20",
            how="from its sheet; 2 % is usual for pins in wood",
            example="2%",
        ),
    ] = Quantity(Decimal(2), "%"),  # noqa: B008 - a frozen value
    humidity_error: Annotated[
        Quantity,
        Asked(
            "how far the hygrometer may be off, in % relative humidity",
            "%",
            lowest="1",
            highest="10",
            least="0",
            most="30",
            how="from its sheet; 3 % is usual",
            example="3%",
        ),
    ] = Quantity(Decimal(3), "%"),  # noqa: B008 - a frozen value
) -> Answer:
    """A reading of wood held against the moisture content that the air around it would give.

    Formula:
        difference = MC - EMC(T, RH);  its uncertainty is the root of the sum of squares of the meter's error, of 1 % for
        the equation, and of what the hygrometer's error changes in EMC. Wetter or drier only beyond that uncertainty.

    >>> from witnessmark.units import parse_quantity as q
    >>> wood_against_air(q("19%"), q("65F"), q("55%"))["state"]
    'wetter than the air explains'
    """  # fmt: skip
    celsius, fraction = in_the_equation(temperature), float(humidity.value) / 100
    balance = emc_percent(celsius, fraction)
    step = float(humidity_error.value) / 100
    changed = max(
        abs(emc_percent(celsius, min(fraction + step, 1.0)) - balance),
        abs(emc_percent(celsius, max(fraction - step, 0.0)) - balance),
    )
    off = math.hypot(float(meter_error.value), EQUATION_OFF, changed)
    difference = float(moisture.value) - balance
    lead = f"Wood in this air comes to about {balance:.1f} %; this wood is at {moisture.value:.1f} %."
    if difference > off:
        state = "wetter than the air explains"
        words = f"{lead} It is {difference:.1f} % wetter than the air explains: look for another source of water."
    elif difference < -off:
        state = "drier than the air explains"
        words = (
            f"{lead} It is {-difference:.1f} % drier: the air was drier in past weeks, or reading and air do not match."
        )
    else:
        state = "as the air explains"
        words = f"{lead} The difference is within what the instruments are sure of: the air alone can explain it."
    return Answer(
        value=rounded(difference),
        words=words,
        uncertainty=Uncertainty(f"about {off:.1f} % moisture content either way", rounded(off)),
        outside_range=near_saturation(rounded(balance)),
        also=(
            Also("state", "the wood against its air", state),
            Also("balance", "moisture content that wood comes to in this air", rounded(balance), "%"),
        ),
        steps=(
            Step("moisture content in balance with the air", rounded(balance), "%"),
            Step("reading less that", rounded(difference), "%"),
            Step("what the hygrometer's error changes", rounded(changed), "%"),
            Step("uncertainty of meter, equation and hygrometer together", rounded(off), "%"),
        ),
    )
