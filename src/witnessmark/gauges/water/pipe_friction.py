"""What pressure running water loses in a pipe, and how fast it runs."""

from __future__ import annotations

import math
from decimal import Decimal
from typing import Annotated, Literal

from witnessmark.gauges.answer import Also, Answer, Outside, Step, Uncertainty, Verdict, rounded
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.gauge import gauge
from witnessmark.gauges.water.messages import AT_ODDS, NEEDS_A_FACT
from witnessmark.gauges.water.pipes import ROUGHNESS, Surface
from witnessmark.gauges.water.sources import HAZEN_WILLIAMS, PRACTICE, code
from witnessmark.problems import Refusal
from witnessmark.units import Quantity, say

__all__ = ["hazen_williams_psi", "pipe_friction", "pipe_velocity", "velocity_fps"]

#: The one constant used here, as in NFPA 13; 4.53 and 4.727 (in feet of water) are the same law rounded elsewhere.
_CONSTANT, _POWER, _BORE = 4.52, 1.852, 4.8704
#: gpm through a bore in inches to feet a second: 231 in3 a gallon, 60 s a minute, 12 in a foot.
_TO_FPS = 231 / (60 * 12 * 0.7853981633974483)
#: Above this the law reads low, and the noise is past what pipes are sized for.
_FASTEST = Decimal(10)
#: Uniform Plumbing Code 610.12.1 for copper, ft/s.
_GUIDES = {"cold": Decimal(8), "hot": Decimal(5)}

_FLOW = Asked(
    "flow through the pipe",
    "[gal_us]/min",
    lowest="0.1",
    highest="100",
    least="0",
    most="10000",
    how="into a bucket against a watch, or from fixture units",
    example="6gpm",
)
_DIAMETER = Asked(
    "INSIDE diameter of the pipe",
    "[in_i]",
    lowest="0.25",
    highest="12",
    least="0.05",
    most="240",
    how="from the kind and size by pipe-inside-diameter; never the nominal size",
    example="0.785in",
)


def velocity_fps(flow: float, inside: float) -> float:
    """Mean speed in ft/s of *flow* gpm through a bore of *inside* inches.

    >>> round(velocity_fps(6, 0.785), 2)
    3.98
    """
    return _TO_FPS * flow / inside**2


def hazen_williams_psi(flow: float, inside: float, c: float) -> float:
    """Loss in psi per foot for *flow* gpm, bore *inside* inches (not nominal) and roughness *c* (60 to 150).

    >>> round(100 * hazen_williams_psi(6, 0.785, 150), 2)
    3.79
    """
    return _CONSTANT * math.pow(flow, _POWER) / (math.pow(c, _POWER) * math.pow(inside, _BORE))


@gauge(
    name="pipe-friction",
    family="water",
    title="Pressure lost along a pipe",
    unit="[psi]",
    gives="pressure lost over the length; from a range of roughness: the greater loss",
    sources=(HAZEN_WILLIAMS,),
    error="reads 3 to 10 % low in smooth pipe under an inch against the Darcy-Weisbach law; made for water near 60 °F",
    never="the state of a pipe inside, or that a supply is enough",
    cautions=(
        "C of new pipe on old galvanised pipe makes the loss look two to five times too small.",
        "Count fittings and valves as added length; a meter, softener or regulator loses more than its pipe.",
    ),
    example={"flow": "6gpm", "inside_diameter": "0.785in", "length": "100ft", "roughness": "150"},
)
def pipe_friction(
    flow: Annotated[Quantity, _FLOW],
    inside_diameter: Annotated[Quantity, _DIAMETER],
    length: Annotated[
        Quantity,
        Asked(
            "length of the pipe, with the equivalent length of its fittings",
            "[ft_i]",
            lowest="0",
            highest="2000",
            least="0",
            most="100000",
            how="along the pipe, or as the rooms lie",
            example="100ft",
        ),
    ],
    roughness: Annotated[
        Decimal | None,
        Asked("C of Hazen and Williams", lowest="40", highest="160", least="10", most="200", example="150"),
    ] = None,
    surface: Annotated[Surface | None, Asked("what the pipe is like inside, for a range of C")] = None,
) -> Answer:
    """Pressure that water loses along a pipe by friction, after Hazen and Williams.

    Formula:
        psi per foot = 4.52 Q^1.852 / (C^1.852 d^4.8704), Q in gpm, d the INSIDE diameter in inches

    The nominal diameter is the usual mistake: 1/2 in PEX taken as 0.5 in hides a fifth of the loss. The second is the C
    of new pipe on an old one; name the surface instead of C, and the answer gives the range of published values.

    >>> from witnessmark.gauges import evaluate
    >>> round(evaluate("pipe-friction", {"flow": "4gpm", "inside_diameter": "0.545in", "length": "100ft",
    ...     "roughness": "150"}).value, 2)
    Decimal('10.57')
    """  # fmt: skip
    if roughness is None and surface is None:
        raise Refusal(NEEDS_A_FACT.at("pipe-friction: roughness or surface", "C, or what the pipe is like inside"))
    if roughness is not None and surface is not None:
        raise Refusal(AT_ODDS.at("roughness, surface", "give C or the surface, not both"))
    rough, smooth = ROUGHNESS[surface] if surface is not None else (roughness or Decimal(1),) * 2
    q, d, feet = float(flow.value), float(inside_diameter.value), float(length.value)
    most = rounded(hazen_williams_psi(q, d, float(rough)) * feet)
    least = rounded(hazen_williams_psi(q, d, float(smooth)) * feet)
    fps = rounded(velocity_fps(q, d))
    fast = (Outside("velocity", Quantity(fps, "[ft_i]/s"), None, _FASTEST, "the law reads low above this"),)
    if surface is None:
        words = f"{say(flow)} loses {most:.1f} psi on the way, at {fps:.1f} ft/s."
    else:
        words = (
            f"{say(flow)} loses {least:.1f} to {most:.1f} psi on the way, at {fps:.1f} ft/s: published C of "
            f"{surface} runs from {rough} to {smooth}."
        )
    return Answer(
        value=most,
        words=words,
        uncertainty=None if surface is None else Uncertainty("from the range of published C", most - least),
        outside_range=fast if fps > _FASTEST else (),
        sources=(HAZEN_WILLIAMS,) if surface is None else (HAZEN_WILLIAMS, PRACTICE),
        also=(
            Also("per_100_ft", "loss over 100 ft", rounded(100 * hazen_williams_psi(q, d, float(rough))), "[psi]"),
            Also("least", "loss with the smoothest published surface", least, "[psi]"),
            Also("velocity", "mean speed of the water", fps, "[ft_i]/s"),
        ),
        steps=(
            Step("C", rough, "1"),
            Step("inside diameter", inside_diameter.value, "[in_i]"),
            Step("loss over 1 ft", rounded(hazen_williams_psi(q, d, float(rough))), "[psi]"),
            Step("length", length.value, "[ft_i]"),
        ),
    )


@gauge(
    name="pipe-velocity",
    family="water",
    title="How fast water runs in a pipe",
    unit="[ft_i]/s",
    gives="mean speed of the water",
    sources=(code("UPC", "2018", "610.12.1", "memory"),),
    error="as good as the flow and the inside diameter; a bore one tenth narrower runs a quarter faster",
    never="that a copper pipe is worn through, or will be",
    cautions=("The guides are for copper and its long life; other pipe has its maker's.",),
    example={"flow": "6gpm", "inside_diameter": "0.785in", "water": "cold"},
)
def pipe_velocity(
    flow: Annotated[Quantity, _FLOW],
    inside_diameter: Annotated[Quantity, _DIAMETER],
    water: Annotated[Literal["cold", "hot"] | None, Asked("which guide for copper to hold it against")] = None,
) -> Answer:
    """Mean speed of water in a pipe, held against the guides for copper.

    Formula:
        v = 0.4085 Q / d^2, Q in gpm, d the INSIDE diameter in inches, v in ft/s

    Rule:
        copper: at most 8 ft/s cold, 5 ft/s hot

    >>> from witnessmark.gauges import evaluate
    >>> round(evaluate("pipe-velocity", {"flow": "5gpm", "inside_diameter": "0.475in"}).value, 2)
    Decimal('9.05')
    """
    value = rounded(velocity_fps(float(flow.value), float(inside_diameter.value)))
    verdict, told = None, ""
    if water is not None:
        guide = _GUIDES[water]
        beyond = value > guide
        told = f" The guide for {water} water in copper is {guide} ft/s."
        source = code("UPC", "2018", "610.12.1", "memory")
        verdict = Verdict("beyond" if beyond else "within", f"{guide} ft/s for {water} water in copper", source)
    return Answer(
        value=value,
        words=f"The water runs at {value:.1f} ft/s.{told}",
        verdict=verdict,
        also=(
            Also("guide_cold", "guide for cold water in copper", _GUIDES["cold"], "[ft_i]/s"),
            Also("guide_hot", "guide for hot water in copper", _GUIDES["hot"], "[ft_i]/s"),
        ),
    )
