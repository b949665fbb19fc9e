"""From which humidity mould grows at a temperature, and how long it takes in air that stays as it is."""

from __future__ import annotations

from typing import Annotated

from witnessmark.gauges.air.mould import CLASSES, Growth, critical_humidity, first_growth_days, grows, highest_index
from witnessmark.gauges.air.mould_series import VISIBLE, SensitivityName
from witnessmark.gauges.air.sources import HUKKA, OJANEN
from witnessmark.gauges.air.told import both
from witnessmark.gauges.answer import Also, Answer, Uncertainty, rounded
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.gauge import gauge
from witnessmark.units import Quantity

__all__ = ["days_to", "mould_critical_humidity", "mould_days"]

_YEARS = 2
_DAY = 24
_SURFACE = Asked(
    "temperature of the surface", "Cel", lowest="-30", highest="50", least="-60", most="80",
    how="with a contact probe, or an infrared thermometer set to the surface", example="68F",
)  # fmt: skip
_CLASS = Asked("class of the material: " + "; ".join(f"{name}: {of.such}" for name, of in CLASSES.items()))


def days_to(index: float, celsius: float, humidity: float, sensitivity: str) -> float | None:
    """Days until the mould index reaches *index* in steady air; None where it does not within two years.

    >>> round(days_to(1, 20, 90, "very sensitive"), 1), days_to(3, 20, 85, "sensitive")
    (29.5, None)
    """
    of = CLASSES[sensitivity]
    if not grows(celsius, humidity, of) or highest_index(celsius, humidity, of) <= index:
        return None
    growth = Growth()
    for hour in range(1, _YEARS * 365 * _DAY + 1):
        growth = growth.after(1, celsius, humidity, of)
        if growth.index >= index:
            return hour / _DAY
    return None


@gauge(
    name="mould-critical-humidity",
    family="air",
    title="Humidity at a surface from which mould grows",
    unit="%",
    gives="relative humidity at the surface from which mould grows on the material at that temperature",
    sources=(HUKKA, OJANEN),
    error="about 5 % relative humidity; kinds of mould and dirt differ",
    never="that a surface below it stays clean: earlier growth and wetting by water are left out",
    cautions=("It is the humidity at the surface; room air meets it at a colder surface.",),
    example={"temperature": "50F", "sensitivity": "sensitive"},
)
def mould_critical_humidity(
    temperature: Annotated[Quantity, _SURFACE], sensitivity: Annotated[SensitivityName, _CLASS] = "sensitive"
) -> Answer:
    """Critical humidity of mould growth at a temperature.

    Formula:
        RHcrit = max(-0.00267 T^3 + 0.160 T^2 - 3.13 T + 100, RHmin) for 0 to 20 °C (T in °C), RHmin above;
        RHmin 80 % for the two sensitive classes, 85 % for the two resistant ones

    >>> from witnessmark.units import parse_quantity as q
    >>> round(mould_critical_humidity(q("5 Cel")).value, 3)
    Decimal('88.016')
    """
    celsius, least = float(temperature.value), CLASSES[sensitivity].least
    value = critical_humidity(celsius, least)
    words = f"At {both(celsius)} mould grows on {sensitivity} material from about {value:.0f} % at the surface."
    if celsius <= 0 or celsius >= 50:  # noqa: PLR2004 - the range of the model
        words = f"At {both(celsius)} mould does not grow in this model, however humid the surface is."
    return Answer(
        value=rounded(value),
        words=words,
        uncertainty=Uncertainty("about 5 % relative humidity"),
        also=(
            Also("material_floor", "lowest humidity at which the material moulds at all", rounded(least), "%"),
            Also("grows", "mould grows at this temperature at all", 0 < celsius < 50),  # noqa: PLR2004 - as above
        ),
    )


@gauge(
    name="mould-days",
    family="air",
    title="How long a surface in steady air takes to grow mould",
    unit="d",
    gives="days until first growth (index 1) on a clean surface whose temperature and humidity stay as they are",
    sources=(HUKKA, OJANEN),
    error="a factor of two either way: materials within a class differ, and no surface stays as it is",
    never="how old growth is that was found, or that there is none yet",
    cautions=("Wetting by water, dirt and earlier growth make it faster.",),
    example={"temperature": "68F", "humidity": "90%", "sensitivity": "very sensitive"},
)
def mould_days(
    temperature: Annotated[Quantity, _SURFACE],
    humidity: Annotated[
        Quantity,
        Asked(
            "relative humidity at the surface",
            "%",
            lowest="0",
            highest="100",
            least="0",
            most="100",
            how="computed from the room's air and the temperature of the surface: see surface-humidity",
            example="90%",
        ),
    ],
    sensitivity: Annotated[SensitivityName, _CLASS],
) -> Answer:
    """Days to first and to visible growth in steady air.

    Formula:
        the mould index (see mould-index) from nought, hour by hour, until it passes 1 and 3

    >>> from witnessmark.units import parse_quantity as q
    >>> round(mould_days(q("20 Cel"), q("90%"), "very sensitive").value)
    29
    """  # fmt: skip
    celsius, percent, of = float(temperature.value), float(humidity.value), CLASSES[sensitivity]
    if not grows(celsius, percent, of):
        return Answer(
            words=f"At {both(celsius)} and {percent:.0f} % mould does not grow on {sensitivity} material in this model.",
            also=(Also("grows", "mould grows at all", value=False),),
        )
    most = highest_index(celsius, percent, of)
    first, visible = (days_to(index, celsius, percent, sensitivity) for index in (1, VISIBLE))
    words = "In steady air like this the model gives first growth, under a microscope, after "
    words += f"about {first:.0f} days" if first is not None else "more than two years"
    if first is None and most <= 1:
        words = f"In steady air like this the model ends at an index of {most:.1f}: growth does not even begin to show"
    if visible is not None:
        words += f", and growth that the eye can see after about {visible:.0f} days"
    elif first is not None:
        words += " and none that the eye can see" + (" within two years" if most > VISIBLE else "")
    also = [
        Also("grows", "mould grows at all", value=True),
        Also("highest_index", "index that it tends to", rounded(most), "1"),
        Also("first_growth_by_the_closed_form", "days to index 1 where nothing slows it",
             rounded(first_growth_days(celsius, percent, of)), "d"),
    ]  # fmt: skip
    if visible is not None:
        also.append(Also("visible_days", "days until index 3, growth that the eye can see", rounded(visible), "d"))
    return Answer(
        value=None if first is None else rounded(first),
        unit="" if first is None else "d",
        words=words + ".",
        uncertainty=Uncertainty("a factor of two either way", None if first is None else rounded(first / 2)),
        also=tuple(also),
    )
