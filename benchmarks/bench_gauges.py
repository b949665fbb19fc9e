"""Speed of a long series: equilibrium moisture content and dew point of a million readings, beside named libraries.

Run with ``make bench``, or this file alone:
``pytest benchmarks/bench_gauges.py -o addopts= --import-mode=importlib -s``.

The baselines compute dew points only, the harder half: psychrolib over the array where Numba is installed (it compiles
itself then), else one by one on a part of the readings and scaled up; and MetPy over the whole array.
"""

from __future__ import annotations

import sys
import time
import warnings
from collections.abc import Callable

import numpy as np
import psychrolib
import pytest
from pytest_benchmark.fixture import BenchmarkFixture

from witnessmark.gauges.air.saturation import dew_point_celsius
from witnessmark.gauges.arrays import dew_point, equilibrium_moisture_content
from witnessmark.gauges.wood.sorption import emc_percent

READINGS = 1_000_000
#: Readings that a loop in Python is timed on.
PART = 20_000
_DRAWN = np.random.default_rng(20)
CELSIUS = _DRAWN.uniform(-20, 40, READINGS)
HUMIDITY = _DRAWN.uniform(0.05, 1, READINGS)


def shortest(rounds: int, work: Callable[[], object]) -> float:
    """The shortest of some rounds, in seconds: other programs share the machine."""
    best = float("inf")
    for _ in range(rounds):
        start = time.perf_counter()
        work()
        best = min(best, time.perf_counter() - start)
    return best


def both() -> None:
    equilibrium_moisture_content(CELSIUS, HUMIDITY)
    dew_point(CELSIUS, HUMIDITY)


def told(benchmark: BenchmarkFixture, mine: float, baseline: str, other: float) -> None:
    benchmark.extra_info[f"ratio to {baseline}"] = round(mine / other, 4)
    sys.stdout.write(
        f"\n{benchmark.name}: {mine * 1000:.1f} ms, {baseline} {other * 1000:.1f} ms, ratio {mine / other:.4f}"
        f" ({other / mine:.1f} times as fast)\n"
    )


def of_metpy() -> None:
    from metpy.calc import dewpoint_from_relative_humidity
    from metpy.units import units

    dewpoint_from_relative_humidity(units.Quantity(CELSIUS, "degC"), units.Quantity(HUMIDITY, "dimensionless"))


def of_psychrolib() -> float:
    """Seconds for all dew points: over the array where Numba is there, else one by one on a part, scaled up."""
    psychrolib.SetUnitSystem(psychrolib.SI)
    if psychrolib.has_numba:
        psychrolib.GetTDewPointFromRelHum(CELSIUS[:10], HUMIDITY[:10])  # compiles
        return shortest(3, lambda: psychrolib.GetTDewPointFromRelHum(CELSIUS, HUMIDITY))
    pairs = list(zip(CELSIUS[:PART].tolist(), HUMIDITY[:PART].tolist(), strict=True))
    part = shortest(3, lambda: [psychrolib.GetTDewPointFromRelHum(t, h) for t, h in pairs])
    return part * READINGS / PART


def test_both_gauges_against_metpy(benchmark: BenchmarkFixture) -> None:
    """A million of each against MetPy's dew points alone (its formula is closed: no iteration, over water only)."""
    benchmark.pedantic(both, rounds=7, warmup_rounds=1)  # type: ignore[no-untyped-call] # not typed there
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        of_metpy()
        told(benchmark, shortest(7, both), "MetPy's dew points", shortest(7, of_metpy))


def test_both_gauges_against_psychrolib(benchmark: BenchmarkFixture) -> None:
    """A million of each against psychrolib's dew points alone, as fast as it offers them here."""
    benchmark.pedantic(both, rounds=7, warmup_rounds=1)  # type: ignore[no-untyped-call] # not typed there
    kind = "compiled by Numba" if psychrolib.has_numba else "one by one"
    told(benchmark, shortest(7, both), f"psychrolib's dew points {kind}", of_psychrolib())


@pytest.mark.parametrize(
    ("name", "array", "scalar"),
    [("emc", equilibrium_moisture_content, emc_percent), ("dew point", dew_point, dew_point_celsius)],
    ids=["emc", "dew-point"],
)
def test_array_against_scalar(
    benchmark: BenchmarkFixture,
    name: str,
    array: Callable[[object, object], object],
    scalar: Callable[[float, float], float],
) -> None:
    """One gauge over the array against the scalar code one by one, timed on a part and scaled up."""
    del name
    benchmark.pedantic(lambda: array(CELSIUS, HUMIDITY), rounds=7, warmup_rounds=1)  # type: ignore[no-untyped-call] # not typed there
    pairs = list(zip(CELSIUS[:PART].tolist(), HUMIDITY[:PART].tolist(), strict=True))
    one_by_one = shortest(3, lambda: [scalar(t, h) for t, h in pairs]) * READINGS / PART
    told(benchmark, shortest(7, lambda: array(CELSIUS, HUMIDITY)), "one by one", one_by_one)
