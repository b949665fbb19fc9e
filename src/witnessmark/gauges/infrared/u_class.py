"""Which class of insulation a surface temperature fits: always a range, never one value."""

from __future__ import annotations

from decimal import Decimal
from typing import Annotated

from witnessmark.gauges.answer import Also, Answer, Outside, Step, Uncertainty, rounded
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.gauge import gauge
from witnessmark.gauges.infrared.inputs import RSI, Direction
from witnessmark.gauges.infrared.messages import NO_HEAT_FLOW
from witnessmark.gauges.infrared.sources import FIELD_ERROR, ISO_6946, ISO_9869_2, WALL_CLASSES
from witnessmark.gauges.infrared.wall import BTU_R, CLASSES, class_of, u_by_film, u_by_radiation, u_spread
from witnessmark.problems import Refusal
from witnessmark.units import Quantity

__all__ = ["infrared_u_class"]

#: Less than this between inside and outside, and the error of the difference is most of the answer.
_ENOUGH = 10
_MOST_R = 99.0
#: What data sheets of building cameras state; a better figure is for the inspector to give.
_A_CAMERA = Quantity(Decimal(2), "K{difference}")


def _air(what: str, how: str, example: str) -> Asked:
    return Asked(what, "Cel", lowest="-40", highest="55", least="-90", most="100", how=how, example=example)


@gauge(
    name="infrared-u-class",
    family="infrared",
    title="Class of insulation that a surface temperature fits",
    gives="words: the range of R and U that the reading allows, and the class or classes in it",
    sources=(ISO_6946, ISO_9869_2, FIELD_ERROR, WALL_CLASSES),
    error="half a kelvin of surface temperature may be more than half of the answer; field studies were off by 0 to 30 %",
    never="an R-value or U-value of the wall, or that insulation is present or missing without opening or other evidence",
    cautions=(
        "A snapshot holds only in steady state: no sun, no change of heating, for many hours before.",
        "Do not open walls to find out: report what was seen and refer to an insulation contractor.",
    ),
    example={"inside_temperature": "70F", "surface_temperature": "62F", "outside_temperature": "20F"},
)
def infrared_u_class(
    inside_temperature: Annotated[Quantity, _air("air inside", "4 in off the wall, shaded from heaters", "70F")],
    surface_temperature: Annotated[
        Quantity, _air("inside surface of the wall", "by camera, corrected, away from studs and corners", "62F")
    ],
    outside_temperature: Annotated[Quantity, _air("air outside", "in the shade, off the wall", "20F")],
    *,
    heat_flow: Direction = "horizontal",
    surface_error: Annotated[
        Quantity,
        Asked(
            "how far the surface temperature may be off",
            "K{difference}",
            lowest="0.1",
            highest="5",
            least="0",
            most="50",
            how="2 K for a camera by itself; 0.5 K where air and surface were read with the same probe",
            example="1F",
        ),
    ] = _A_CAMERA,
    emissivity: Annotated[
        Decimal,
        Asked(
            "emissivity of the surface",
            "1",
            lowest="0.5",
            highest="1",
            least="0.01",
            most="1",
            how="about 0.9 for paint, paper and plaster",
            example="0.9",
        ),
    ] = Decimal("0.9"),
    reflected_temperature: Annotated[
        Quantity | None, _air("reflected temperature", "crumpled foil on the wall; left out, the air inside", "70F")
    ] = None,
) -> Answer:
    """Class of insulation from inside air, inside surface and outside air, as a range with its errors.

    Formula:
        by film:      U = (Ti - Tsi) / (Rsi (Ti - Te)),   Rsi 0.13 horizontal, 0.10 up, 0.17 down (ISO 6946)
        by radiation: q = 4 e sigma Tm^3 (Tref - Tsi) + 2.5 (Ti - Tsi),   U = q / (Ti - Te)
        errors of surface (2 K unless given), air (0.5 K) and method (30 %) join as the root of their squares

    Traps: one figure reported from a contrast of 1 K; Rsi in other units; a survey with less than 10 K between in and
    out.

    >>> from witnessmark.units import parse_quantity as q
    >>> answer = infrared_u_class(q("20Cel"), q("19.22Cel"), q("0Cel"))
    >>> answer["class"], round(answer["lowest_r"]), round(answer["highest_r"])
    ('insulated or some insulation', 5, 99)
    """
    inside, surface, outside = (float(t.value) for t in (inside_temperature, surface_temperature, outside_temperature))
    told = f"inside {inside:.1f} °C, surface {surface:.1f} °C, outside {outside:.1f} °C"
    if inside == outside or (inside - surface) / (inside - outside) <= 0:
        raise Refusal(NO_HEAT_FLOW.at("surface_temperature", told))
    if (surface - outside) / (inside - outside) <= 0:
        raise Refusal(NO_HEAT_FLOW.at("surface_temperature", f"{told}: the surface lies beyond the air outside"))
    rsi = float(RSI[heat_flow])
    reflected = inside if reflected_temperature is None else float(reflected_temperature.value)
    spread = u_spread(inside, surface, outside, rsi, surface_off=float(surface_error.value), air_off=0.5)
    radiative = u_by_radiation(inside, surface, outside, emissivity=float(emissivity), reflected=reflected)
    low, high = min(spread.low, max(radiative, 0.0)), max(spread.high, radiative)
    names = [name for _, name in CLASSES]
    best, worst = names.index(class_of(low)), names.index(class_of(high))
    classes = names[best : worst + 1]
    most_r = min(_MOST_R, BTU_R / low) if low > 0 else _MOST_R
    least_r = min(_MOST_R, BTU_R / high)
    up_to = f"R-{most_r:.0f}" if most_r < _MOST_R else "any R"
    words = f"The reading fits a wall from about R-{least_r:.0f} to {up_to} (U {low:.2f} to {high:.2f} W/(m²·K)): "
    words += f"{classes[0]}." if len(classes) == 1 else f"it cannot tell {' from '.join(classes)}."
    weak = abs(inside - outside) < _ENOUGH
    if weak:
        words += " Inside and outside differ by less than 18 °F (10 K): too little to go by."
    shifted = u_by_film(inside, surface - 0.5, outside, rsi)
    return Answer(
        words=words,
        uncertainty=Uncertainty(
            f"of U: {spread.by_surface:.2f} by the surface ({float(surface_error.value):.1f} K), {spread.by_air:.2f} by the air, {spread.by_method:.2f} by "
            f"the method; half a kelvin of surface temperature alone moves it by {abs(shifted / spread.middle - 1):.0%}"
        ),
        outside_range=(
            (Outside("value", Quantity(rounded(abs(inside - outside)), "K{difference}"), Decimal(_ENOUGH), None,
                     "too little difference between inside and outside"),) if weak else ()
        ),
        also=(
            Also("class", "class, or classes that the reading cannot tell apart", " or ".join(classes)),
            Also("decided", "whether the whole range lies in one class", len(classes) == 1 and not weak),
            Also("lowest_u", "least U", rounded(low), "W/(m2.K)"),
            Also("highest_u", "most U", rounded(high), "W/(m2.K)"),
            Also("lowest_r", "least R", rounded(least_r), "[sft_i].[degF].h/[Btu_IT]"),
            Also("highest_r", "most R, cut off at 99", rounded(most_r), "[sft_i].[degF].h/[Btu_IT]"),
        ),
        steps=(
            Step("air inside less surface", rounded(inside - surface), "K{difference}"),
            Step("inside less outside", rounded(inside - outside), "K{difference}"),
            Step("surface resistance inside", RSI[heat_flow], "m2.K/W"),
            Step("U by film, middle of the range and not a result", rounded(spread.middle), "W/(m2.K)"),
            Step("U by radiation and convection, likewise", rounded(radiative), "W/(m2.K)"),
            Step("U by film with the surface half a kelvin colder", rounded(shifted), "W/(m2.K)"),
        ),
    )  # fmt: skip
