"""Speed of knowing what holds: every view of a long visit, and where it stands, beside a named baseline.

Run with ``make bench``, or this file alone:
``pytest benchmarks/bench_views.py -o addopts= --import-mode=importlib -s``.

The baseline of the views is the fold of the same entries: a phone that can fold a visit can also view it. Judging is
held against all views of the same visit, on 1,500 entries with the shipped packs and the Washington rulebook.
"""

from __future__ import annotations

import sys
import time
from collections.abc import Callable
from functools import cache

import pytest
from pytest_benchmark.fixture import BenchmarkFixture

from visit_builder import START, build_visit
from witnessmark import packs, views
from witnessmark.journal.entry import Entry
from witnessmark.journal.fold import Record, fold
from witnessmark.journal.job import Job
from witnessmark.judging import draft_findings, standing
from witnessmark.packs.model import Packs

VISIT, SMALL, LARGE = 1_500, 5_000, 100_000
JOB = Job("job", rulebook="us.wa.308-408c", date="2026-02-03", year_built=1962, attached_garage=True)


@cache
def visit(n: int) -> list[Entry]:
    return build_visit(n, seed=1)


@cache
def record(n: int) -> Record:
    return fold(visit(n))


@cache
def shipped() -> Packs:
    return packs.read()


def all_views(of: Record, rows: Packs) -> views.Timeline:
    home, settled, found = views.house(of), views.decisions(of), views.findings_on(of)
    views.readings(of, home)
    views.media(of)
    views.doubts(of, home, settled)
    views.adverse(of, settled, found)
    views.looks(of, rows, home)
    return views.timeline(of, home, views.running(of, home))


def shortest(rounds: int, work: Callable[[], object]) -> float:
    """The shortest of some rounds, in seconds: other programs share the machine."""
    best = float("inf")
    for _ in range(rounds):
        start = time.perf_counter()
        work()
        best = min(best, time.perf_counter() - start)
    return best


def measure(
    benchmark: BenchmarkFixture, work: Callable[[], object], baseline: Callable[[], object], rounds: int
) -> None:
    """Measure the work, and print its ratio to the baseline measured in alternation with it."""
    benchmark.pedantic(work, rounds=rounds, warmup_rounds=1)  # type: ignore[no-untyped-call] # not typed there
    pairs = [(shortest(1, work), shortest(1, baseline)) for _ in range(rounds)]
    mine, other = min(pair[0] for pair in pairs), min(pair[1] for pair in pairs)
    benchmark.extra_info["ratio to baseline"] = round(mine / other, 2)
    sys.stdout.write(
        f"\n{benchmark.name}: {mine * 1000:.1f} ms, baseline {other * 1000:.1f} ms, ratio {mine / other:.2f}\n"
    )


@pytest.mark.parametrize("n", [SMALL, LARGE])
def test_all_views_against_fold(benchmark: BenchmarkFixture, n: int) -> None:
    assert len(all_views(record(n), shipped()).events) == len(record(n).facts)
    rounds = 7 if n == SMALL else 3
    measure(benchmark, lambda: all_views(record(n), shipped()), lambda: fold(visit(n)), rounds)


def test_views_stay_linear(benchmark: BenchmarkFixture) -> None:
    """The ratio printed is time an entry at the large size to that at the small one; 1 is linear."""
    small = shortest(7, lambda: all_views(record(SMALL), shipped())) / SMALL
    large = shortest(3, lambda: all_views(record(LARGE), shipped())) / LARGE
    benchmark.pedantic(lambda: all_views(record(SMALL), shipped()), rounds=1)  # type: ignore[no-untyped-call] # not typed there
    benchmark.extra_info["ratio per entry"] = round(large / small, 2)
    sys.stdout.write(
        f"\n{benchmark.name}: {small * 1e6:.2f} and {large * 1e6:.2f} µs an entry, ratio {large / small:.2f}\n"
    )


def test_standing_against_all_views(benchmark: BenchmarkFixture) -> None:
    stand = standing(record(VISIT), shipped(), JOB, START)
    assert stand.duties
    measure(
        benchmark,
        lambda: standing(record(VISIT), shipped(), JOB, START),
        lambda: all_views(record(VISIT), shipped()),
        9,
    )


def test_drafting_against_standing(benchmark: BenchmarkFixture) -> None:
    stand = standing(record(VISIT), shipped(), JOB, START)
    assert draft_findings(record(VISIT), shipped(), stand)
    measure(
        benchmark,
        lambda: draft_findings(record(VISIT), shipped(), stand),
        lambda: standing(record(VISIT), shipped(), JOB, START),
        9,
    )
