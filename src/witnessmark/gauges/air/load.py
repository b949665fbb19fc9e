"""How much moisture a house adds to its air: the class of inside humidity."""

from __future__ import annotations

import math
from decimal import Decimal
from typing import Annotated

from witnessmark.gauges.air.inputs import Humidity, Insides, Outsides
from witnessmark.gauges.air.saturation import saturation_iso_13788, saturation_pressure, vapour_pressure
from witnessmark.gauges.air.sources import ISO_13788_CLASSES
from witnessmark.gauges.air.told import HUMIDITY_OFF
from witnessmark.gauges.answer import Also, Answer, Outside, Step, Table, Uncertainty, rounded
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.gauge import gauge
from witnessmark.units import Quantity

__all__ = ["class_of_excess", "humidity_class"]

#: Upper bounds of classes 1 to 4 in Pa at 0 °C and below; they fall in a line to nought at 20 °C outside.
BOUNDS = (270.0, 540.0, 810.0, 1080.0)
MEANT_FOR = {
    1: "unoccupied buildings and stores of dry goods",
    2: "offices and dwellings with normal use and good ventilation",
    3: "buildings of which the use is not known",
    4: "sports halls, kitchens and canteens",
    5: "laundries, breweries and swimming halls",
}
WARM = 20.0


def bounds_at(outside: float) -> tuple[float, ...]:
    """Upper bounds in Pa of classes 1 to 4 at an outside temperature in °C.

    >>> bounds_at(10)
    (135.0, 270.0, 405.0, 540.0)
    """
    share = min(1.0, max(0.0, (WARM - outside) / WARM))
    return tuple(bound * share for bound in BOUNDS)


def class_of_excess(excess: float, outside: float) -> int:
    """Class 1 to 5 of a vapour excess in Pa at an outside temperature in °C below 20.

    >>> class_of_excess(600, 0), class_of_excess(300, 10)
    (3, 3)
    """
    return 1 + sum(excess > bound for bound in bounds_at(outside))


@gauge(
    name="humidity-class",
    family="air",
    title="How much moisture the house adds to its air",
    unit="Pa",
    gives="vapour pressure inside less outside; the class 1 to 5 stands beside it",
    sources=(ISO_13788_CLASSES,),
    error="about 100 Pa for hygrometers good to 3 %: classes are 270 Pa wide in the cold and narrower when it is mild",
    never="the class of the house over a year: it is meant for monthly means",
    cautions=("The classes are meant for monthly means; cooking, a shower or an open window moves one reading.",),
    example={"inside": "68F", "humidity": "50%", "outside": "30F", "outside_humidity": "80%"},
)
def humidity_class(
    inside: Insides,
    humidity: Humidity,
    outside: Outsides,
    outside_humidity: Annotated[
        Quantity,
        Asked(
            "relative humidity of the outside air",
            "%",
            lowest="5",
            highest="100",
            least="0",
            most="100",
            how="in the shade; or of the nearest weather station",
            example="80%",
        ),
    ],
) -> Answer:
    """Vapour excess of the inside air and the humidity class that it falls in.

    Rule:
        excess = pv inside - pv outside; upper bounds of classes 1 to 4: 270, 540, 810, 1080 Pa at 0 °C outside and
        below, falling in a line to nought at 20 °C

    >>> from witnessmark.units import parse_quantity as q
    >>> humidity_class(q("20 Cel"), q("50%"), q("0 Cel"), q("80%"))["class"]
    Decimal('3')
    """  # fmt: skip
    warm, cold = float(inside.value), float(outside.value)
    within = vapour_pressure(warm, float(humidity.value) / 100)
    without = vapour_pressure(cold, float(outside_humidity.value) / 100)
    excess = within - without
    steps = (
        Step("vapour pressure inside", rounded(within), "Pa"),
        Step("vapour pressure outside", rounded(without), "Pa"),
        Step("inside less outside", rounded(excess), "Pa"),
    )
    off = rounded(math.hypot(HUMIDITY_OFF * saturation_pressure(warm), HUMIDITY_OFF * saturation_pressure(cold)))
    if cold >= WARM:
        why = "from 20 °C outside the classes have no width"
        return Answer(
            value=rounded(excess), unit="Pa",
            words="It is too warm outside to tell how much moisture the house adds: the classes end at 20 °C (68 °F).",
            outside_range=(Outside("outside", Quantity(outside.value, "Cel"), None, Decimal(20), why),), steps=steps,
        )  # fmt: skip
    number = class_of_excess(excess, cold)
    words = f"The inside air holds {excess:.0f} Pa more vapour than outside: class {number}, as meant for {MEANT_FOR[number]}."
    if excess < 0:
        words = f"The inside air holds {-excess:.0f} Pa less vapour than outside: the house adds nothing now (class 1)."
    upper = bounds_at(cold)
    if any(abs(excess - bound) < float(off) for bound in upper):
        words += " That is nearer to the edge of a class than the instruments are sure."
    edges = [Decimal(0), *(rounded(each) for each in upper)]
    table = tuple((Decimal(at), edges[at - 1], edges[at] if at < len(edges) else "", MEANT_FOR[at]) for at in MEANT_FOR)
    return Answer(
        value=rounded(excess),
        unit="Pa",
        words=words,
        uncertainty=Uncertainty(f"about {off:.0f} Pa either way", off),
        also=(
            Also("class", "humidity class", Decimal(number), "1"),
            Also("short_form", "the same excess by the standard's own formula of saturation", rounded(
                saturation_iso_13788(warm) * float(humidity.value) / 100
                - saturation_iso_13788(cold) * float(outside_humidity.value) / 100
            ), "Pa"),
        ),
        steps=steps,
        table=Table((("class", "1"), ("above", "Pa"), ("up to", "Pa"), ("meant for", "")), table),
    )  # fmt: skip
