"""How high the pressure leaps when running water is stopped."""

from __future__ import annotations

import math
from typing import Annotated

from witnessmark.gauges.answer import Also, Answer, Step, rounded
from witnessmark.gauges.asked import Asked
from witnessmark.gauges.gauge import gauge
from witnessmark.gauges.water.messages import NEEDS_A_FACT
from witnessmark.gauges.water.pipes import STIFFNESS, Material
from witnessmark.gauges.water.sources import JOUKOWSKY
from witnessmark.problems import Refusal
from witnessmark.units import Quantity, say

__all__ = ["hammer_psi", "slow_closure", "water_hammer", "wave_speed"]

#: Bulk modulus (Pa) and density (kg/m3) of water near 20 °C.
_BULK, _DENSITY = 2.19e9, 998.0
_PSI, _FOOT = 6894.757293168, 0.3048


def wave_speed(inside: float, wall: float, stiffness: float) -> float:
    """Speed in m/s of a pressure wave in water in a pipe: *inside* and *wall* alike, *stiffness* of the pipe in GPa.

    >>> round(wave_speed(0.785, 0.045, 117))
    1286
    """
    return math.sqrt(_BULK / _DENSITY / (1 + _BULK * inside / (stiffness * 1e9 * wall)))


def hammer_psi(speed: float, velocity: float) -> float:
    """Rise in psi when water at *velocity* ft/s is stopped at once; *speed* of the wave in m/s (Joukowsky).

    >>> round(hammer_psi(1285, 1), 1)
    56.7
    """
    return _DENSITY * speed * velocity * _FOOT / _PSI


def slow_closure(speed: float, length: float) -> float:
    """Seconds after which a closure counts as slow: the wave's way there and back over *length* ft at *speed* m/s.

    >>> round(slow_closure(1285, 50), 4)
    0.0237
    """
    return 2 * length * _FOOT / speed


@gauge(
    name="water-hammer",
    family="water",
    title="Rise of pressure when running water is stopped",
    unit="[psi]",
    gives="rise of pressure above that before the stop",
    sources=(JOUKOWSKY,),
    error="a few per cent for metal; stiffness of plastics changes with heat and with the speed of loading, a fifth or so",
    never="that a pipe will burst or hold, or that hammer is heard in this house",
    cautions=(
        "Hammer loosens joints and hangers with time; banging pipes are a thing to tell a licensed plumber.",
        "Air or an arrestor near the valve lowers the rise; its absence cannot be told from a number.",
    ),
    example={"material": "copper", "inside_diameter": "0.785in", "wall": "0.045in", "velocity": "8[ft_i]/s"},
)
def water_hammer(
    inside_diameter: Annotated[
        Quantity,
        Asked(
            "inside diameter of the pipe",
            "[in_i]",
            lowest="0.25",
            highest="12",
            least="0.05",
            most="240",
            how="from the kind and size by pipe-inside-diameter",
            example="0.785in",
        ),
    ],
    *,
    wall: Annotated[
        Quantity,
        Asked(
            "wall of the pipe",
            "[in_i]",
            lowest="0.02",
            highest="0.5",
            least="0.001",
            most="10",
            how="from the kind and size by pipe-inside-diameter",
            example="0.045in",
        ),
    ],
    velocity: Annotated[
        Quantity,
        Asked(
            "speed of the water before it is stopped",
            "[ft_i]/s",
            lowest="0",
            highest="20",
            least="0",
            most="100",
            how="from the flow by pipe-velocity",
            example="8[ft_i]/s",
        ),
    ],
    material: Annotated[Material | None, Asked("what the pipe is made of")] = None,
    stiffness: Annotated[
        Quantity | None,
        Asked(
            "Young's modulus of another material",
            "GPa",
            lowest="0.2",
            highest="220",
            least="0.01",
            most="1000",
            example="117GPa",
        ),
    ] = None,
    length: Annotated[
        Quantity | None,
        Asked(
            "length of pipe back to the main or to a large vessel",
            "[ft_i]",
            lowest="1",
            highest="2000",
            least="0.01",
            example="50ft",
        ),
    ] = None,
    closing_time: Annotated[
        Quantity | None,
        Asked(
            "time the valve takes to close",
            "s",
            lowest="0",
            highest="60",
            least="0",
            example="0.05s",
            how="solenoid valves of washers close in some hundredths of a second",
        ),
    ] = None,
    static: Annotated[
        Quantity | None,
        Asked("pressure before the stop", "[psi]", lowest="0", highest="200", least="0", most="1000", example="60psi"),
    ] = None,
) -> Answer:
    """Rise of pressure when running water is stopped, quickly or slowly, with the give of the pipe's wall.

    Formula:
        a = sqrt((K/rho) / (1 + K D/(E t))), K = 2.19 GPa, rho = 998 kg/m3
        rise = rho a v; closed more slowly than 2 L/a: less in proportion, rho a v (2 L/a)/t

    The rule of thumb of 60 psi for each ft/s holds for metal only: PEX gives about 16.

    >>> from witnessmark.gauges import evaluate
    >>> round(evaluate("water-hammer", {"material": "copper", "inside_diameter": "0.785in", "wall": "0.045in",
    ...     "velocity": "8[ft_i]/s"}).value)
    454
    """  # fmt: skip
    if material is None and stiffness is None:
        raise Refusal(
            NEEDS_A_FACT.at("water-hammer: material or stiffness", "what the pipe is made of, or its modulus")
        )
    modulus = float(stiffness.value) if stiffness is not None else STIFFNESS[material or "copper"]
    speed = wave_speed(float(inside_diameter.value), float(wall.value), modulus)
    quick = hammer_psi(speed, float(velocity.value))
    rise, told = quick, "at once"
    also = [
        Also("wave_speed", "speed of the pressure wave", rounded(speed), "m/s"),
        Also("per_foot_a_second", "rise for each ft/s stopped", rounded(hammer_psi(speed, 1)), "[psi]"),
        Also("at_once", "rise when stopped at once", rounded(quick), "[psi]"),
    ]
    steps = [
        Step("speed of the wave", rounded(speed), "m/s"),
        Step("rise when stopped at once", rounded(quick), "[psi]"),
    ]
    if length is not None:
        there_and_back = slow_closure(speed, float(length.value))
        also.append(Also("slow_from", "closing time from which the rise is less", rounded(there_and_back), "s"))
        if closing_time is not None and float(closing_time.value) > there_and_back:
            rise = quick * there_and_back / float(closing_time.value)
            told = f"in {say(closing_time)}, slower than the {there_and_back:.3f} s of the wave's way,"
            steps.append(Step("share left by slow closing", rounded(there_and_back / float(closing_time.value)), "1"))
    words = f"Water at {say(velocity)} stopped {told} raises the pressure by {rise:.0f} psi."
    if static is not None:
        peak = static.value + rounded(rise)
        also.append(Also("peak", "pressure at the peak", peak, "[psi]"))
        words += f" It peaks near {peak:.0f} psi."
    return Answer(value=rounded(rise), words=words, also=tuple(also), steps=tuple(steps))
