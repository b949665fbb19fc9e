"""How well a wall keeps its inner surface warm: the temperature factor, from readings, and what it must be."""

from __future__ import annotations

import math
from decimal import Decimal
from typing import Annotated, Literal

from witnessmark.gauges.air.inputs import Humidity, Insides, Outsides, SurfaceTemperature
from witnessmark.gauges.air.messages import HUMIDITY_NEEDED, NO_DIFFERENCE
from witnessmark.gauges.air.saturation import dew_point_celsius
from witnessmark.gauges.air.sources import BRE, DIN_4108, ISO_10211, ISO_13788
from witnessmark.gauges.air.surfaces import SURFACE_OFF
from witnessmark.gauges.air.told import HUMIDITY_OFF, KELVINS_OFF, both, fahrenheit, kelvins
from witnessmark.gauges.answer import Also, Answer, Outside, Source, Step, Table, Uncertainty, Verdict, rounded
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.gauge import gauge
from witnessmark.problems import Refusal
from witnessmark.units import Quantity

__all__ = [
    "factor_of_surface",
    "surface_for_humidity",
    "temperature_factor",
    "temperature_factor_minimum",
]  # fmt: skip

#: Below this difference the errors of two thermometers are more than a tenth of what is divided by; common practice.
LEAST_DIFFERENCE = 10.0
#: Criteria that are fixed factors, with who publishes them.
FIXED: dict[str, tuple[str, Source]] = {
    "DIN 4108-2": ("0.70", DIN_4108),
    "BRE dwellings": ("0.75", BRE),
    "BRE offices": ("0.50", BRE),
    "BRE pools": ("0.90", BRE),
}
Criterion = Literal[
    "none", "DIN 4108-2", "BRE dwellings", "BRE offices", "BRE pools", "mould at 80 %", "condensation at 100 %"
]
_SNAPSHOT = (
    "One set of readings gives an indication only: the wall must have been in a steady state, without sun, for hours.",
    (
        "The design value for mould is meant with a surface resistance of 0.25 m²·K/W (furniture, corners); an open wall "
        "seen in passing is nearer to 0.13 and looks better than the criterion means."
    ),
)


def factor_of_surface(surface: float, inside: float, outside: float) -> float:
    """Temperature factor: surface less outside over inside less outside; any one unit of temperature, inside not outside.

    >>> round(factor_of_surface(12.6, 20, -5), 3), round(factor_of_surface(61, 68, 32), 3)
    (0.704, 0.806)
    """
    return (surface - outside) / (inside - outside)


def surface_for_humidity(celsius: float, humidity: float, at_surface: float) -> float:
    """Temperature in °C of the surface at which room air stands at *at_surface* (0 to 1); NaN where air is too dry.

    >>> round(surface_for_humidity(20, 0.5, 0.8), 2)
    12.63
    """
    return dew_point_celsius(celsius, humidity / at_surface)


def _needed(criterion: str, humidity: Quantity | None, inside: float, outside: float) -> tuple[float, Source] | None:
    if criterion == "none":
        return None
    if criterion in FIXED:
        least, source = FIXED[criterion]
        return float(least), source
    if humidity is None:
        raise Refusal(HUMIDITY_NEEDED.at("humidity", f"criterion {criterion!r}"))
    share = 0.8 if criterion == "mould at 80 %" else 1.0
    coldest = surface_for_humidity(inside, float(humidity.value) / 100, share)
    return (-math.inf if math.isnan(coldest) else factor_of_surface(coldest, inside, outside)), ISO_13788


def _criteria(humidity: Quantity | None, inside: float, outside: float) -> Table:
    rows: list[tuple[Decimal | str, ...]] = [(name, Decimal(least), str(who)) for name, (least, who) in FIXED.items()]
    if humidity is not None and float(humidity.value) > 0:
        for name in ("mould at 80 %", "condensation at 100 %"):
            found = _needed(name, humidity, inside, outside)
            if found is not None and math.isfinite(found[0]):
                rows.append((name, rounded(found[0]), str(found[1])))
    return Table((("criterion", ""), ("least factor", "1"), ("source", "")), tuple(rows))


@gauge(
    name="temperature-factor",
    family="air",
    title="Temperature factor fRsi of a surface",
    unit="1",
    gives="surface less outside temperature over inside less outside temperature, fRsi",
    sources=(ISO_10211, ISO_13788),
    error="0.05 to 0.1 for good thermometers at 20 K difference; more with sun, wind or heating that comes and goes",
    never="the thermal quality of the wall, or a proof that a criterion is met",
    cautions=_SNAPSHOT,
    example={"inside": "68F", "outside": "23F", "surface": "55F", "criterion": "DIN 4108-2"},
)
def temperature_factor(
    inside: Insides,
    outside: Outsides,
    surface: SurfaceTemperature,
    humidity: Annotated[
        Quantity | None,
        Asked(
            "relative humidity of the inside air",
            "%",
            lowest="2",
            highest="100",
            least="0",
            most="100",
            how="in the middle of the room",
            example="50%",
        ),
    ] = None,
    criterion: Annotated[
        Criterion,
        Asked("what the factor is held against: a published least factor, or a humidity at the surface"),
    ] = "none",
) -> Answer:
    """Temperature factor of an inner surface from three temperatures, held against a criterion where one is chosen.

    Formula:
        fRsi = (Tsi - Te) / (Ti - Te);  for a humidity criterion the least factor is that of the surface at which the room
        air stands at 80 % (mould) or 100 % (condensation)

    >>> from witnessmark.units import parse_quantity as q
    >>> round(temperature_factor(q("20 Cel"), q("-5 Cel"), q("12.6 Cel")).value, 3)
    Decimal('0.704')
    """  # fmt: skip
    warm, cold, wall = float(inside.value), float(outside.value), float(surface.value)
    difference = warm - cold
    if inside.value == outside.value or abs(difference) < 1e-6:  # noqa: PLR2004 - nothing to divide by
        raise Refusal(NO_DIFFERENCE.at("inside and outside", f"both about {both(warm)}"))
    factor = factor_of_surface(wall, warm, cold)
    off = math.hypot(SURFACE_OFF, (1 - factor) * KELVINS_OFF, factor * KELVINS_OFF) / abs(difference)
    outside_range: list[Outside] = []
    if difference < LEAST_DIFFERENCE:
        why = "below 10 K between inside and outside the thermometers' errors alone are more than a tenth"
        given = Quantity(rounded(difference), "K{difference}")
        outside_range.append(Outside("inside less outside", given, Decimal(10), None, why))
    if not 0 <= factor <= 1:
        why = "the surface is warmer or colder than both airs: sun, a heater, wet plaster or a reading gone wrong"
        outside_range.append(Outside("factor", Quantity(rounded(factor), "1"), Decimal(0), Decimal(1), why))
    needed = _needed(criterion, humidity, warm, cold)
    words = f"The surface keeps {factor:.2f} of the difference between inside and outside, {kelvins(difference)}."
    verdict = None
    if needed is not None:
        least, source = needed
        told = (
            f"{criterion} asks for at least {least:.2f}" if least > 0 else f"{criterion} asks for nothing in this air"
        )
        if outside_range:
            outcome, ending = "undecided", "the readings do not allow a comparison"
        elif abs(factor - least) < off:
            outcome, ending = "close", "the readings are nearer to it than they are sure"
        elif factor >= least:
            outcome, ending = "within", "these readings lie above it"
        else:
            outcome, ending = "beyond", "these readings lie below it"
        verdict = Verdict(outcome, f"{told}; {ending}.", source)  # type: ignore[arg-type]  # one of four words, just above
        words += f" {told[:1].upper()}{told[1:]}; {ending}."
    return Answer(
        value=rounded(factor),
        words=words,
        uncertainty=Uncertainty(
            f"about {off:.2f} either way, for 1 K on the surface and 0.5 K on the airs", rounded(off)
        ),
        outside_range=tuple(outside_range),
        verdict=verdict,
        also=(
            Also("difference", "inside less outside", rounded(difference), "K{difference}"),
            Also("indicative", "one set of readings: an indication only", value=True),
        ),
        steps=(
            Step("surface less outside", rounded(wall - cold), "K{difference}"),
            Step("inside less outside", rounded(difference), "K{difference}"),
            Step("their ratio", rounded(factor), "1"),
        ),
        table=_criteria(humidity, warm, cold),
    )


@gauge(
    name="temperature-factor-minimum",
    family="air",
    title="Least temperature factor for this air, so that a surface stays below a humidity",
    unit="1",
    gives="least temperature factor fRsi at which the surface stays below the humidity asked for",
    sources=(ISO_13788,),
    error="about 0.04 for 3 % on the humidity of the room air at 25 K difference",
    never="that a wall with this factor stays free of mould: the room's humidity moves with its use",
    cautions=("The standard takes monthly means of both airs; with today's readings the result is for today's air.",),
    example={"inside": "68F", "outside": "23F", "humidity": "50%"},
)
def temperature_factor_minimum(
    inside: Insides,
    outside: Outsides,
    humidity: Humidity,
    surface_humidity: Annotated[
        Quantity,
        Asked(
            "humidity at the surface not to be passed: 80 % for mould, 100 % for condensation",
            "%",
            lowest="60",
            highest="100",
            least="1",
            most="100",
            example="80%",
        ),
    ] = Quantity(Decimal(80), "%"),  # noqa: B008 - a frozen value
) -> Answer:
    """Least temperature factor for given air inside and outside, and the coldest surface that goes with it.

    Formula:
        Tsi,min from pws(Tsi,min) = RH pws(Ti) / RHs;   fRsi,min = (Tsi,min - Te) / (Ti - Te)

    >>> from witnessmark.units import parse_quantity as q
    >>> round(temperature_factor_minimum(q("20 Cel"), q("-5 Cel"), q("50%")).value, 3)
    Decimal('0.705')
    """  # fmt: skip
    warm, cold = float(inside.value), float(outside.value)
    if abs(warm - cold) < 1e-6:  # noqa: PLR2004 - nothing to divide by
        raise Refusal(NO_DIFFERENCE.at("inside and outside", f"both about {both(warm)}"))
    coldest = surface_for_humidity(warm, float(humidity.value) / 100, float(surface_humidity.value) / 100)
    if math.isnan(coldest):
        return Answer(words="Air this dry reaches that humidity at no surface of a house.")
    least = factor_of_surface(coldest, warm, cold)
    outside_range: tuple[Outside, ...] = ()
    if warm <= cold:
        why = "the factor is meant for heated rooms, warmer than outside"
        given = Quantity(rounded(warm - cold), "K{difference}")
        outside_range = (Outside("inside less outside", given, Decimal(0), None, why),)
    words = (
        f"With this air no surface should be colder than {both(coldest)}, a temperature factor of at least {least:.3f}."
    )
    if least > 1:
        words = f"The air in the room is already past that humidity: surfaces would have to be at {both(coldest)}."
    elif least <= 0 and not outside_range:
        words = (
            f"No surface gets as cold as {both(coldest)} when it is {both(cold)} outside: nothing is asked of the wall."
        )
    moister = surface_for_humidity(
        warm, float(humidity.value) / 100 + HUMIDITY_OFF, float(surface_humidity.value) / 100
    )
    off = abs(factor_of_surface(moister, warm, cold) - least)
    return Answer(
        value=rounded(least),
        words=words,
        uncertainty=Uncertainty(f"about {off:.2f} either way, for 3 % on the humidity", rounded(off)),
        outside_range=outside_range,
        also=(
            Also("coldest_surface", "coldest surface that stays below that humidity", fahrenheit(coldest), "[degF]"),
            Also("coldest_surface_celsius", "the same in °C", rounded(coldest), "Cel"),
            *(Also(name.lower().replace(" ", "_").replace("-", "_"), f"fixed by {who}", Decimal(factor), "1")
              for name, (factor, who) in FIXED.items()),
        ),
        steps=(
            Step("coldest surface", rounded(coldest), "Cel"),
            Step("coldest surface less outside", rounded(coldest - cold), "K{difference}"),
            Step("inside less outside", rounded(warm - cold), "K{difference}"),
            Step("their ratio", rounded(least), "1"),
        ),
    )  # fmt: skip
