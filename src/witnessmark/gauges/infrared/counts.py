"""What temperature the raw counts of a radiometric picture stand for."""

from __future__ import annotations

import math
from dataclasses import dataclass
from decimal import Decimal
from typing import Annotated

from witnessmark.gauges.answer import Also, Answer, Step, Uncertainty, rounded
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.gauge import gauge
from witnessmark.gauges.infrared.degrees import difference, fahrenheit, kelvin, said
from witnessmark.gauges.infrared.inputs import Emissivity, Reflected
from witnessmark.gauges.infrared.messages import OFF_THE_CURVE
from witnessmark.gauges.infrared.sources import COUNTS, DATA_SHEETS, TRANSMISSION
from witnessmark.problems import Refusal
from witnessmark.units import Quantity

__all__ = ["Curve", "air_transmission", "infrared_counts"]


@dataclass(frozen=True, slots=True)
class Curve:
    """The calibration of one camera: counts = R1 / (R2 (exp(B / T) - F)) - O, with T in kelvin.

    >>> constants = Curve(r1=21106.77, r2=0.012545258, b=1501, f=1, o=-7340)
    >>> round(constants.kelvins(18109) - 273.15, 3)
    23.624
    """

    r1: float
    r2: float
    b: float
    f: float
    o: float

    def counts(self, kelvins: float) -> float | None:
        """Counts of a black body at *kelvins*; None where the curve has no value."""
        below = math.exp(min(self.b / kelvins, 700.0)) - self.f
        return None if below <= 0 else self.r1 / (self.r2 * below) - self.o

    def kelvins(self, counts: float) -> float | None:
        """Temperature in K of a black body that gives *counts*; None where the curve has none."""
        raised = self.r2 * (counts + self.o)
        inside = self.r1 / raised + self.f if raised > 0 else 0.0
        return self.b / math.log(inside) if inside > 1 else None


def air_transmission(metres: float, celsius: float, humidity: float) -> float:
    """Share of the radiation that *metres* of air at *celsius* °C and relative *humidity* 0 to 1 let through.

    w = h exp(1.5587 + 0.06939 t - 0.00027816 t^2 + 0.00000068455 t^3), h as a fraction, t in °C;
    tau = X exp(-sqrt(d) (a1 + b1 sqrt(w))) + (1 - X) exp(-sqrt(d) (a2 + b2 sqrt(w))) with X = 1.9,
    a1 = 0.006569, b1 = -0.002276, a2 = 0.01262, b2 = -0.00667 (Minkina and Dudzik 2009).

    >>> round(air_transmission(0.5, 20, 0.5), 6)
    0.995722
    """
    water = math.sqrt(
        humidity * math.exp(1.5587 + 0.06939 * celsius - 0.00027816 * celsius**2 + 0.00000068455 * celsius**3)
    )
    path = math.sqrt(metres)
    through = 1.9 * math.exp(-path * (0.006569 - 0.002276 * water)) - 0.9 * math.exp(
        -path * (0.01262 - 0.00667 * water)
    )
    return min(max(through, 0.01), 1.0)


def _constant(what: str, low: str, high: str, example: str, least: str = "") -> Asked:
    return Asked(
        what, "1", lowest=low, highest=high, least=least or None, example=example,
        how="from the picture's own data; each camera and each range has its own",
    )  # fmt: skip


@gauge(
    name="infrared-counts",
    family="infrared",
    title="Surface temperature from the raw counts of a radiometric picture",
    unit="[degF]",
    gives="temperature of the surface, with emissivity, reflection, air and a window taken into account",
    sources=(COUNTS, TRANSMISSION, DATA_SHEETS),
    error="the camera's own 2 °C or 2 %; the air adds little below 10 m",
    never="that a surface is wet, uninsulated or defective: a temperature by itself has no cause",
    example={
        "counts": "18109",
        "emissivity": "0.95",
        "reflected_temperature": "20Cel",
        "air_temperature": "20Cel",
        "humidity": "50%",
        "distance": "1m",
        "planck_r1": "21106.77",
        "planck_r2": "0.012545258",
        "planck_b": "1501",
        "planck_f": "1",
        "planck_o": "-7340",
    },
)
def infrared_counts(
    counts: Annotated[
        Decimal, Asked("raw counts of the pixel", "1", lowest="0", highest="65535", how="16 bits; mind the byte order")
    ],
    emissivity: Emissivity,
    reflected_temperature: Reflected,
    *,
    air_temperature: Annotated[
        Quantity,
        Asked(
            "temperature of the air between camera and surface",
            "Cel",
            lowest="-40",
            highest="60",
            least="-80",
            most="100",
            how="with a thermo-hygrometer in the shade",
            example="68F",
        ),
    ],
    humidity: Annotated[
        Quantity,
        Asked(
            "relative humidity of that air",
            "%",
            lowest="0",
            highest="100",
            least="0",
            most="100",
            how="on the same instrument",
            example="50%",
        ),
    ],
    distance: Annotated[
        Quantity,
        Asked(
            "distance from camera to surface",
            "m",
            lowest="0",
            highest="100",
            least="0",
            most="10000",
            how="paced or by laser",
            example="1m",
        ),
    ],
    planck_r1: Annotated[Decimal, _constant("constant R1", "10000", "30000", "21106.77")],
    planck_r2: Annotated[Decimal, _constant("constant R2", "0.005", "0.06", "0.012545258")],
    planck_b: Annotated[Decimal, _constant("constant B in kelvin", "1200", "1700", "1501")],
    planck_f: Annotated[Decimal, _constant("constant F", "0.5", "3", "1")],
    planck_o: Annotated[Decimal, _constant("constant O in counts", "-10000", "0", "-7340")],
    window_transmission: Annotated[
        Quantity | None,
        Asked(
            "transmission of an infrared window half way, if there is one",
            "%",
            lowest="50",
            highest="100",
            least="1",
            most="100",
            how="from the window's own sheet; glass and acrylic let nothing through",
            example="96%",
        ),
    ] = None,
) -> Answer:
    """Temperature of a surface from raw counts by the calibration constants that the picture carries.

    Formula:
        S(T) = R1 / (R2 (exp(B / T) - F)) - O,   T = B / ln(R1 / (R2 (S + O)) + F)
        with tau over half the path, and half way a window of transmission w (1 without one) at the temperature of the air:
        S = S_read/(e tau w tau) - (1 - e)/e S_refl - (1 - tau)/(e tau) S_air
            - (1 - w)/(e tau w) S_air - (1 - tau)/(e tau w tau) S_air

    The transmission of air falls with the root of the distance, so two halves are not the whole. The published form takes
    two halves; the whole path at once differs by some hundredths of a degree and is shown beside it.

    >>> from decimal import Decimal as D
    >>> from witnessmark.units import parse_quantity as q
    >>> t = q("20Cel")
    >>> r = infrared_counts(
    ...     D(18109), D(1), t, air_temperature=t, humidity=q("50%"), distance=q("0m"), planck_r1=D("21106.77"),
    ...     planck_r2=D("0.012545258"), planck_b=D(1501), planck_f=D(1), planck_o=D(-7340))
    >>> round(r.value, 2)
    Decimal('74.52')
    """
    curve = Curve(float(planck_r1), float(planck_r2), float(planck_b), float(planck_f), float(planck_o))
    e, read = float(emissivity), float(counts)
    reflected, air = curve.counts(kelvin(reflected_temperature)), curve.counts(kelvin(air_temperature))
    celsius, share = float(air_temperature.value), float(humidity.value) / 100
    metres = float(distance.value)
    if reflected is None or air is None:
        raise Refusal(OFF_THE_CURVE.at("reflected_temperature or air_temperature", "the curve has no value there"))
    tau = air_transmission(metres / 2, celsius, share)
    w = 1.0 if window_transmission is None else float(window_transmission.value) / 100
    signal = (
        read / (e * tau * w * tau)
        - (1 - e) / e * reflected
        - ((1 - tau) / (e * tau) + (1 - w) / (e * tau * w) + (1 - tau) / (e * tau * w * tau)) * air
    )
    whole = air_transmission(metres, celsius, share)
    at_once = curve.kelvins(read / (e * whole) - (1 - e) / e * reflected - (1 - whole) / (e * whole) * air)
    surface, plain = curve.kelvins(signal), curve.kelvins(read)
    if surface is None:
        raise Refusal(OFF_THE_CURVE.at("counts", f"{counts} with O {planck_o}; own signal {signal:.0f}"))
    camera = max(2.0, 0.02 * abs(surface - 273.15)) / e
    return Answer(
        value=fahrenheit(surface),
        words=f"The surface is at about {said(surface)}.",
        uncertainty=Uncertainty(
            f"the camera's 2 °C or 2 %, divided by emissivity {e:g}; emissivity itself comes on top", difference(camera)
        ),
        also=(
            Also("air_transmission", "transmission of the air over half the path", rounded(tau), "1"),
            *(() if at_once is None or w < 1 else (
                Also("by_whole_path", "with the air taken over the whole path at once", fahrenheit(at_once), "[degF]"),)),
            *(() if plain is None else (Also("apparent", "as read, at emissivity 1 and no air", fahrenheit(plain),
                                             "[degF]"),)),
        ),
        steps=(
            Step("counts as read", counts, "1"),
            Step("counts of the reflected temperature", rounded(reflected), "1"),
            Step("counts of the air", rounded(air), "1"),
            Step("counts of the surface's own radiation", rounded(signal), "1"),
            Step("surface in kelvin", rounded(surface), "K"),
        ),
    )  # fmt: skip
