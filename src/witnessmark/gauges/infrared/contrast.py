"""How much a patch without insulation stands out, held against the noise of the camera."""

from __future__ import annotations

from decimal import Decimal
from typing import Annotated

from witnessmark.gauges.answer import Also, Answer, Uncertainty, rounded
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.gauge import gauge
from witnessmark.gauges.infrared.degrees import difference, said_difference
from witnessmark.gauges.infrared.inputs import RSI, Direction
from witnessmark.gauges.infrared.sources import ISO_6946, NOISE
from witnessmark.units import Quantity

__all__ = ["insulation_contrast", "surface_contrast"]

#: Times the noise from which a patch stands out; below it a picture shows little (common practice, no source).
_CLEAR = 5
_TENTH_OF_A_KELVIN = Quantity(Decimal("0.1"), "K{difference}")


def surface_contrast(u_worse: float, u_better: float, rsi: float, apart: float) -> float:
    """Difference in K between two patches of a surface: (U1 - U2) Rsi dT, U in W/(m2K), Rsi in m2K/W, dT in K.

    >>> round(surface_contrast(0.6, 0.3, 0.13, 10), 2)
    0.39
    """
    return (u_worse - u_better) * rsi * apart


def _u(what: str, example: str) -> Asked:
    return Asked(
        what, "W/(m2.K)", lowest="0.05", highest="6", least="0.001", most="50", example=example,
        how="from the construction: about 0.35 for an insulated frame wall, 1.5 for an empty one",
    )  # fmt: skip


@gauge(
    name="insulation-contrast",
    family="infrared",
    title="Contrast that missing insulation gives, against the camera's noise",
    unit="[degF]{difference}",
    gives="difference of surface temperature between the two patches",
    sources=(ISO_6946, NOISE),
    error="steady state only: sun, wind or changed heating within hours make contrasts larger than this one",
    never="that insulation is present where no contrast was seen, or missing where one was",
    example={"u_without": "1.5 W/(m2.K)", "u_with": "0.35 W/(m2.K)", "temperature_difference": "18F", "noise": "0.05K"},
)
def insulation_contrast(
    u_without: Annotated[Quantity, _u("U-value of the patch without insulation", "1.5 W/(m2.K)")],
    u_with: Annotated[Quantity, _u("U-value of the wall beside it", "0.35 W/(m2.K)")],
    temperature_difference: Annotated[
        Quantity,
        Asked(
            "difference between inside and outside",
            "K{difference}",
            lowest="0",
            highest="60",
            least="0",
            most="150",
            how="air inside and air outside, held for hours",
            example="18F",
        ),
    ],
    noise: Annotated[
        Quantity,
        Asked(
            "noise of the camera (NETD)",
            "K{difference}",
            lowest="0.01",
            highest="0.5",
            least="0.001",
            most="10",
            how="from the data sheet: 50 mK is typed 0.05K",
            example="0.05K",
        ),
    ] = _TENTH_OF_A_KELVIN,
    heat_flow: Direction = "horizontal",
) -> Answer:
    """Contrast of surface temperature inside between a patch without insulation and the wall beside it.

    Formula:
        contrast = (U1 - U2) x Rsi x (Ti - Te);   Rsi 0.13 horizontal, 0.10 up, 0.17 down (ISO 6946)

    With U 0.6 against 0.3 and 5 K the contrast is 0.2 K: close to the noise of many cameras.

    >>> from witnessmark.units import parse_quantity as q
    >>> answer = insulation_contrast(q("0.6 W/(m2.K)"), q("0.3 W/(m2.K)"), q("5K"), q("0.1K"))
    >>> round(answer["contrast_si"], 3), answer["against_noise"]
    (Decimal('0.195'), 'near the noise')
    """
    rsi, apart, netd = float(RSI[heat_flow]), float(temperature_difference.value), float(noise.value)
    contrast = surface_contrast(float(u_without.value), float(u_with.value), rsi, apart)
    times = abs(contrast) / netd
    # The ratio is rounded first, so that 5 times the noise as worked out by hand is not 4.999 times.
    stands = (
        "below the noise" if round(times, 9) < 1 else "near the noise" if round(times, 9) < _CLEAR else "clear of it"
    )
    told = {
        "below the noise": "less than the camera's noise: it cannot show",
        "near the noise": f"{times:.1f} times the camera's noise: easily missed, and nothing seen means nothing",
        "clear of it": f"{times:.0f} times the camera's noise: it should show in steady state",
    }[stands]
    each = abs(float(u_without.value) - float(u_with.value)) * rsi
    needed = () if each == 0 else (
        Also("difference_needed", "difference inside to outside for five times the noise",
             difference(_CLEAR * netd / each), "[degF]{difference}"),
    )  # fmt: skip
    return Answer(
        value=difference(contrast),
        words=f"The patch differs by about {said_difference(abs(contrast))}, {told}.",
        uncertainty=Uncertainty("a third either way: Rsi and both U-values are design figures",
                                difference(abs(contrast) / 3)),
        also=(
            Also("contrast_si", "contrast", rounded(contrast), "K{difference}"),
            Also("times_noise", "contrast by noise", rounded(times), "1"),
            Also("against_noise", "where the contrast lies", stands),
            *needed,
        ),
    )  # fmt: skip
