"""One visit held against every law there is, beside the same visit's plain standing; and the situations of the packs.

Aim: a visit of 1,500 entries against all rulebooks in under 0.3 s; `packs check` in under 3 s.
"""

from __future__ import annotations

import sys
import time
from collections.abc import Callable

from pytest_benchmark.fixture import BenchmarkFixture

from visit_builder import START, build_visit
from witnessmark.assembly.situations import run_situations
from witnessmark.journal.fold import fold
from witnessmark.journal.job import Job
from witnessmark.judging import standing, under_each
from witnessmark.packs import check, read

JOB = Job("job", rulebook="us.wa.308-408c", date="2026-02-03", year_built=1962)


def _timed(act: Callable[[], object]) -> float:
    best = float("inf")
    for _ in range(3):
        begun = time.perf_counter()
        act()
        best = min(best, time.perf_counter() - begun)
    return best


def _say(what: str, benchmark: BenchmarkFixture, alone: float) -> None:
    assert benchmark.stats is not None
    least = benchmark.stats.stats.min
    sys.stdout.write(f"\n{what}: {1000 * least:.0f} ms, a standing {1000 * alone:.0f} ms, ratio {least / alone:.2f}\n")


def test_a_visit_against_every_law(benchmark: BenchmarkFixture) -> None:
    record, packs = fold(build_visit(1500)), read()
    names = tuple(packs.rulebooks)
    alone = _timed(lambda: standing(record, packs, JOB, START))
    benchmark(lambda: under_each(record, packs, JOB, START, names))
    _say(f"{len(names)} laws", benchmark, alone)


def test_every_situation(benchmark: BenchmarkFixture) -> None:
    packs = read()
    record = fold(build_visit(1500))
    alone = _timed(lambda: standing(record, packs, JOB, START))
    tried, problems = benchmark(run_situations)
    assert problems == []
    assert check() == []
    _say(f"{tried} situations", benchmark, alone)
