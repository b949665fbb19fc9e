"""How mould grows and fades on a surface through time: the mould index, computed hour by hour.

Hukka and Viitanen (1999), with the sensitivity classes of Ojanen et al. (2010); the index runs from 0 (nothing) over
1 (first growth under a microscope) and 3 (visible) to 6 (covered).
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace

__all__ = [
    "CLASSES", "Growth", "Sensitivity", "course", "critical_humidity", "first_growth_days", "grows", "highest_index",
    "highest_index_of",
    "index_after",
]  # fmt: skip

#: The polynomial of the critical humidity holds up to here, °C; above it the floor of the material does.
POLYNOMIAL_TO = 20.0
WARMEST = 50.0
#: Hours of dryness in which the index falls, rests, and falls again, and how fast an hour.
FALLS_FOR, RESTS_UNTIL = 6.0, 24.0
FAST, SLOW = 0.032 / 24, 0.016 / 24
_HOURS_A_WEEK = 168


@dataclass(frozen=True, slots=True)
class Sensitivity:
    """How readily a material moulds: rates below and from index 1, the three coefficients of the highest index, floor."""

    slow: float
    fast: float
    a: float
    b: float
    c: float
    least: float
    such: str


CLASSES = {
    "very sensitive": Sensitivity(1, 2, 1, 7, 2, 80, "untreated pine sapwood"),
    "sensitive": Sensitivity(0.578, 0.386, 0.3, 6, 1, 80, "glued boards, spruce, paper-faced board"),
    "medium resistant": Sensitivity(0.072, 0.097, 0, 5, 1.5, 85, "concrete, mineral wool, lightweight block"),
    "resistant": Sensitivity(0.033, 0.014, 0, 3, 1, 85, "smooth polyurethane, glass"),
}


def critical_humidity(celsius: float, least: float = 80) -> float:
    """Relative humidity in % from which mould grows at *celsius* °C; never below *least* of the material; 100 in frost.

    >>> round(critical_humidity(5), 3), critical_humidity(10, 85), critical_humidity(-2)
    (88.016, 85, 100)
    """
    if celsius < 0:
        return 100
    if celsius > POLYNOMIAL_TO:
        return least
    return max(100 + celsius * (-3.13 + celsius * (0.160 - 0.00267 * celsius)), least)


def highest_index(celsius: float, humidity: float, of: Sensitivity) -> float:
    """The index that growth tends to in steady air of *humidity* % at or above the critical one.

    >>> round(highest_index(20, 90, CLASSES["very sensitive"]), 3)
    3.995
    """
    critical = critical_humidity(celsius, of.least)
    x = (critical - humidity) / (critical - 100)
    return max(of.a + of.b * x - of.c * x**2, 0.0)


def highest_index_of(celsius: float, humidity: float, sensitivity: str) -> float:
    """The same for a class by its name.

    >>> round(highest_index_of(20, 100, "resistant"), 3)
    2.0
    """
    return highest_index(celsius, humidity, CLASSES[sensitivity])


def grows(celsius: float, humidity: float, of: Sensitivity) -> bool:
    """Whether mould grows at all at this temperature (°C) and humidity (%).

    >>> grows(20, 79, CLASSES["sensitive"])
    False
    """
    critical = critical_humidity(celsius, of.least)
    return 0 < celsius < WARMEST and critical <= humidity and critical < 100  # noqa: PLR2004 - saturation


def _weeks(celsius: float, humidity: float) -> float:
    """Weeks to index 1 on the most sensitive wood (pine, sawn: W = SQ = 0)."""
    return math.exp(-0.68 * math.log(celsius) - 13.9 * math.log(humidity) + 66.02)


def first_growth_days(celsius: float, humidity: float, of: Sensitivity) -> float:
    """Days of steady air until index 1, by the closed form; growth slowing near the highest index is left out.

    >>> round(first_growth_days(20, 90, CLASSES["very sensitive"]), 1)
    29.4
    """
    return 7 * _weeks(celsius, humidity) / of.slow


@dataclass(frozen=True, slots=True)
class Growth:
    """Where the index stands, and how many hours it has been too dry or cold to grow."""

    index: float = 0.0
    dry: float = 0.0

    def after(self, hours: float, celsius: float, humidity: float, of: Sensitivity, decline: float = 1.0) -> Growth:
        """The index after *hours* (at most about one: the step is explicit) of air at *celsius* °C and *humidity* %.

        *decline* (0 to 1) is the factor of the material on the fall in dry hours; growth does not feel it.

        >>> round(Growth().after(1, 20, 90, CLASSES["very sensitive"]).index, 7)
        0.0014164
        """
        if grows(celsius, humidity, of):
            rate = (of.slow if self.index < 1 else of.fast) / (_HOURS_A_WEEK * _weeks(celsius, humidity))
            rate *= max(1 - math.exp(2.3 * (self.index - highest_index(celsius, humidity, of))), 0.0)
            return Growth(self.index + rate * hours)
        dry = self.dry + hours
        fallen = decline * (_fallen(dry) - _fallen(self.dry))
        return replace(self, index=max(self.index - fallen, 0.0), dry=dry)


def _fallen(dry: float) -> float:
    """How far the index has fallen after *dry* hours: fast for 6, resting until 24, slowly from then on."""
    return FAST * min(dry, FALLS_FOR) + SLOW * max(dry - RESTS_UNTIL, 0.0)


def course(
    phases: Iterable[Sequence[float]], of: Sensitivity, decline: float = 1.0, start: Growth | None = None
) -> Iterator[Growth]:
    """The growth after every phase of (hours, °C, %), computed in steps of an hour or less.

    >>> [round(each.index, 3) for each in course([(168, 20, 90), (168, 20, 90)], CLASSES["very sensitive"])]
    [0.238, 0.476]
    """
    growth = start or Growth()
    for hours, celsius, humidity in phases:
        steps = max(math.ceil(hours - 1e-9), 1)
        for _ in range(steps):
            growth = growth.after(hours / steps, celsius, humidity, of, decline)
        yield growth


def index_after(phases: Sequence[Sequence[float]], sensitivity: str, decline: float = 1.0, repeat: int = 1) -> float:
    """The index at the end of phases of (hours, °C, relative humidity in %), gone through *repeat* times from nought.

    >>> round(index_after([(12, 20, 97), (12, 20, 60)], "sensitive", repeat=7), 3)
    0.139
    """
    growth = Growth()
    for _ in range(repeat):
        for growth in course(phases, CLASSES[sensitivity], decline, growth):  # noqa: B007, B020 - the last one is kept
            pass
    return growth.index
