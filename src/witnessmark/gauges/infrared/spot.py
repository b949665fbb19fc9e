"""How large a thing must be, at a distance, for a camera to measure it."""

from __future__ import annotations

import math
from decimal import Decimal
from typing import Annotated

from witnessmark.gauges.answer import Also, Answer, Uncertainty, rounded
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.gauge import gauge
from witnessmark.gauges.infrared.sources import GEOMETRY
from witnessmark.units import Quantity

__all__ = ["infrared_spot", "picture_width", "pixel_angle", "spot_by_ifov", "spot_by_ratio"]

_INCH = 0.0254
_ACROSS = 3
_THREE = "A thing is measured only where it covers 3 by 3 pixels; smaller, it is mixed with what lies beside it."

Distance = Annotated[
    Quantity,
    Asked(
        "distance from camera to surface",
        "m",
        lowest="0.1",
        highest="100",
        least="0.001",
        most="10000",
        how="by laser or tape, square to the surface; a slant makes the spot longer",
        example="10ft",
    ),
]
Target = Annotated[
    Quantity | None,
    Asked(
        "smallest width of the thing to be measured, if there is one",
        "mm",
        lowest="1",
        highest="10000",
        least="0.01",
        how="the narrow side: a stud, a pipe, a wire, a lug",
        example="2in",
    ),
]


def picture_width(metres: float, degrees: float) -> float:
    """Width in m of what a lens with a horizontal field of *degrees* takes in at *metres*: 2 d tan(field / 2).

    >>> round(picture_width(1, 25), 4)
    0.4434
    """
    return 2 * metres * math.tan(math.radians(degrees) / 2)


def pixel_angle(degrees: float, pixels: int) -> float:
    """Angle of one pixel in milliradians: field in radians / pixels across x 1000.

    >>> round(pixel_angle(25, 320), 3)
    1.364
    """
    return math.radians(degrees) / pixels * 1000


def _inches(metres: float) -> str:
    return f"{metres / _INCH:.2f} in ({metres * 1000:.1f} mm)"


def _fits(target: Quantity | None, spot: float, distance: float, what: str) -> tuple[str, tuple[Also, ...]]:
    """What to say of a thing of this width, and from how far it could be measured."""
    if target is None:
        return "", ()
    width = float(target.value) / 1000
    reach = distance * width / spot
    told = (
        f" A thing {_inches(width)} wide fills it."
        if width >= spot
        else f" A thing {_inches(width)} wide does not fill it; go to within {reach / 0.3048:.1f} ft ({reach:.2f} m)."
    )
    return told, (
        Also("fills", f"whether the thing fills {what}", width >= spot),
        Also("farthest", "farthest distance for a thing of this width", rounded(reach / 0.3048), "[ft_i]"),
    )


@gauge(
    name="infrared-spot",
    family="infrared",
    title="Smallest thing a camera can measure at a distance",
    unit="[in_i]",
    gives="side of the 3 by 3 pixel spot on a flat surface square to the camera",
    sources=(GEOMETRY,),
    error="a few percent: the field of view on a data sheet is a round figure, and lenses blur over a pixel",
    never="that a thing as small as one pixel was measured: one pixel only detects it",
    cautions=(_THREE,),
    example={"distance": "10ft", "field_of_view": "25deg", "pixels": "320"},
)
def infrared_spot(
    distance: Distance,
    field_of_view: Annotated[
        Quantity,
        Asked(
            "horizontal field of view of the lens",
            "deg",
            lowest="5",
            highest="90",
            least="0.1",
            most="170",
            how="from the data sheet of camera and lens, in degrees, the wider of the two figures",
            example="25deg",
        ),
    ],
    pixels: Annotated[
        int,
        Asked(
            "pixels of the detector along the same side",
            lowest="60",
            highest="2048",
            least="1",
            most="100000",
            how="of the detector, not of the screen and not of a picture made larger afterwards",
            example="320",
        ),
    ],
    target: Target = None,
) -> Answer:
    """Smallest thing that can be measured at a distance, from field of view and number of pixels.

    Formula:
        width = 2 d tan(field / 2);   pixel by tangent = width / N;   IFOV = field in radians / N
        pixel by angle = d x IFOV;   measurable spot = 3 pixels across and 3 down

    On a flat wall square to the camera the tangent is right for every pixel; the angle holds in the middle only and
    is smaller (9 % at 57 degrees). The answer takes the tangent. Traps: degrees taken for milliradians; one pixel taken
    for a measurement.

    >>> from witnessmark.units import parse_quantity as q
    >>> answer = infrared_spot(q("1m"), q("25deg"), 320)
    >>> round(answer["ifov"], 3), round(answer["spot_by_angle"], 2)
    (Decimal('1.364'), Decimal('4.09'))
    """
    metres, degrees = float(distance.value), float(field_of_view.value)
    width, angle = picture_width(metres, degrees), pixel_angle(degrees, pixels)
    pixel = width / pixels
    by_angle = metres * angle
    spot = _ACROSS * pixel
    told, more = _fits(target, spot, metres, "3 by 3 pixels")
    return Answer(
        value=rounded(spot / _INCH),
        words=f"At this distance the camera measures nothing narrower than about {_inches(spot)}: 3 pixels of "
        f"{pixel * 1000:.1f} mm, by the tangent." + told,
        uncertainty=Uncertainty("about 5 %: data sheets round, lenses blur", rounded(spot / _INCH * 0.05)),
        also=(
            Also("width", "width of the picture at this distance", rounded(width / 0.3048), "[ft_i]"),
            Also("pixel_by_tangent", "one pixel on the surface, by the tangent", rounded(pixel * 1000), "mm"),
            Also("pixel_by_angle", "one pixel on the surface, by the angle", rounded(by_angle), "mm"),
            Also("spot_by_tangent", "3 by 3 pixels, by the tangent", rounded(spot * 1000), "mm"),
            Also("spot_by_angle", "3 by 3 pixels, by the angle", rounded(_ACROSS * by_angle), "mm"),
            Also("ifov", "angle of one pixel in milliradians (millimetres in a metre)", rounded(angle), "mm/m"),
            *more,
        ),
    )


@gauge(
    name="spot-by-ifov",
    family="infrared",
    title="Smallest thing a camera can measure, from its IFOV",
    unit="[in_i]",
    gives="side of the 3 by 3 pixel spot",
    sources=(GEOMETRY,),
    error="a few percent in the middle of the picture; more toward the edge of a wide lens",
    never="that a thing as small as one pixel was measured: one pixel only detects it",
    cautions=(_THREE,),
    example={"distance": "10ft", "ifov": "1.36 mm/m"},
)
def spot_by_ifov(
    distance: Distance,
    ifov: Annotated[
        Quantity,
        Asked(
            "IFOV, the angle of one pixel: milliradians, which are millimetres in a metre",
            "mm/m",
            lowest="0.1",
            highest="20",
            least="0.001",
            most="500",
            how="from the data sheet, in mrad (never degrees: one degree is 17.5 mrad)",
            example="1.36 mm/m",
        ),
    ],
    target: Target = None,
) -> Answer:
    """Smallest thing that can be measured at a distance, from the IFOV on the data sheet.

    Formula:
        pixel = distance x IFOV (milliradians are millimetres in a metre);   measurable spot = 3 pixels across

    >>> from witnessmark.units import parse_quantity as q
    >>> round(spot_by_ifov(q("10m"), q("0.682 mm/m"))["spot"], 2)
    Decimal('20.46')
    """
    metres, angle = float(distance.value), float(ifov.value)
    spot = _ACROSS * metres * angle / 1000
    told, more = _fits(target, spot, metres, "3 by 3 pixels")
    return Answer(
        value=rounded(spot / _INCH),
        words=f"At this distance the camera measures nothing narrower than about {_inches(spot)}." + told,
        uncertainty=Uncertainty("about 5 % in the middle of the picture", rounded(spot / _INCH * 0.05)),
        also=(
            Also("pixel", "one pixel on the surface", rounded(metres * angle), "mm"),
            Also("spot", "3 by 3 pixels", rounded(spot * 1000), "mm"),
            *more,
        ),
    )


@gauge(
    name="spot-by-ratio",
    family="infrared",
    title="Spot of an infrared thermometer at a distance",
    unit="[in_i]",
    gives="diameter of the spot that the instrument averages over",
    sources=(GEOMETRY,),
    error="the stated spot holds about nine tenths of the energy: the true one is wider",
    never="that only the dot of the laser is measured: the laser only aims",
    cautions=("Let the thing be twice as wide as the spot, and do not measure nearer than the instrument states.",),
    example={"distance": "10ft", "ratio": "12"},
)
def spot_by_ratio(
    distance: Distance,
    ratio: Annotated[
        Decimal,
        Asked(
            "distance-to-spot ratio D:S, the first number",
            "1",
            lowest="1",
            highest="120",
            least="0.1",
            most="10000",
            how="printed on the instrument, as 12:1",
            example="12",
        ),
    ],
    target: Target = None,
) -> Answer:
    """Diameter of the spot that an infrared thermometer reads at a distance.

    Formula:
        spot = distance / ratio (distance-to-spot D:S)

    >>> from witnessmark.units import parse_quantity as q
    >>> spot_by_ratio(q("3m"), Decimal(12))["spot"]
    Decimal('250')
    """
    metres = float(distance.value)
    spot = metres / float(ratio)
    told, more = _fits(target, spot, metres, "the spot")
    return Answer(
        value=rounded(spot / _INCH),
        words=f"The instrument averages over a spot about {_inches(spot)} wide." + told,
        uncertainty=Uncertainty("the true spot is wider; about a tenth", rounded(spot / _INCH * 0.1)),
        also=(Also("spot", "diameter of the spot", rounded(spot * 1000), "mm"), *more),
    )
