"""Speed of the journal: folding, reading and checking visits, each beside a named baseline in the same run.

Run with ``make bench``, or this file alone:
``pytest benchmarks/bench_fold.py -o addopts= --import-mode=importlib -s``.

The baseline of the fold is a plain sort of the same entries by (instant, id), which any order-independent reading
must at least do. The baseline of reading is ``json.loads`` of the same lines, which checks nothing.
"""

from __future__ import annotations

import json
import sys
import time
from collections.abc import Callable
from functools import cache
from operator import itemgetter

import pytest
from pytest_benchmark.fixture import BenchmarkFixture

from visit_builder import build_visit
from witnessmark.journal.chain import check_chains
from witnessmark.journal.entry import Entry
from witnessmark.journal.fold import fold
from witnessmark.journal.lines import read_lines, write_lines
from witnessmark.journal.moment import since_epoch

SMALL, LARGE = 5_000, 100_000


@cache
def visit(n: int) -> list[Entry]:
    return build_visit(n, seed=1)


def plain_sort(n: int) -> None:
    sorted(((since_epoch(entry.at), entry.id, entry) for entry in visit(n)), key=itemgetter(0, 1))


def best_of(rounds: int, work: Callable[[], object]) -> float:
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
    pairs = [(best_of(1, work), best_of(1, baseline)) for _ in range(rounds)]
    mine, other = min(pair[0] for pair in pairs), min(pair[1] for pair in pairs)
    benchmark.extra_info["ratio to baseline"] = round(mine / other, 2)
    sys.stdout.write(
        f"\n{benchmark.name}: {mine * 1000:.1f} ms, baseline {other * 1000:.1f} ms, ratio {mine / other:.1f}\n"
    )


@pytest.mark.parametrize("n", [SMALL, LARGE])
def test_fold_against_plain_sort(benchmark: BenchmarkFixture, n: int) -> None:
    assert len(fold(visit(n)).entries) == n
    measure(benchmark, lambda: fold(visit(n)), lambda: plain_sort(n), 9 if n == SMALL else 4)


def test_read_and_check_against_json_alone(benchmark: BenchmarkFixture) -> None:
    stored = write_lines(visit(SMALL))
    lines = stored.splitlines()
    assert read_lines(stored, "journal.jsonl") == (visit(SMALL), [])
    measure(benchmark, lambda: read_lines(stored, "journal.jsonl"), lambda: [json.loads(line) for line in lines], 7)


def test_check_chains_against_json_alone(benchmark: BenchmarkFixture) -> None:
    lines = write_lines(visit(SMALL)).splitlines()
    assert check_chains(visit(SMALL)) == []
    measure(benchmark, lambda: check_chains(visit(SMALL)), lambda: [json.loads(line) for line in lines], 5)
