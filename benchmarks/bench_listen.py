"""How fast is a narration heard? Held against plain tokenising of the same words with a regular expression.

Run with ``pytest benchmarks/bench_listen.py -p benchmark``. The ratio to the baseline says what the understanding
costs; the targets are 30 000 words in under 3 s and one sentence in under 30 ms.
"""

from __future__ import annotations

import re
from dataclasses import replace
from pathlib import Path

import pytest
from pytest_benchmark.fixture import BenchmarkFixture

from witnessmark import packs
from witnessmark.listening import Line, Narration, listen, read_narration
from witnessmark.packs.model import Packs

NARRATIONS = Path(__file__).resolve().parents[1] / "tests" / "listening" / "narrations"
WORDS = 30_000
WORD = re.compile(r"[A-Za-z0-9']+")


@pytest.fixture(scope="module")
def shipped() -> Packs:
    return packs.read()


@pytest.fixture(scope="module")
def long_visit() -> Narration:
    """The stored narrations one after another, and again, until there are 30 000 words."""
    lines: list[Line] = []
    said, offset = 0, 0.0
    stored = [read_narration(path) for path in sorted(NARRATIONS.glob("*.jsonl"))]
    while True:
        for narration in stored:
            for line in narration.lines:
                lines.append(Line(line.start + offset, line.end + offset, line.text))
                said += len(line.text.split())
                if said >= WORDS:
                    return Narration("long", tuple(lines))
            offset = lines[-1].end + 1.0


SENTENCE = Narration(
    "one", (Line(0.0, 4.0, "the handrail is loose and the gap between the balusters is five and a half inches"),)
)  # fmt: skip


def test_baseline_plain_tokenising(benchmark: BenchmarkFixture, long_visit: Narration) -> None:
    found = benchmark(lambda: [WORD.findall(line.text.lower()) for line in long_visit.lines])
    assert sum(map(len, found)) >= WORDS


def test_thirty_thousand_words(benchmark: BenchmarkFixture, long_visit: Narration, shipped: Packs) -> None:
    heard = benchmark.pedantic(listen, args=(long_visit, shipped), rounds=3, warmup_rounds=1)  # type: ignore[no-untyped-call]  # the plugin leaves it untyped
    assert len(heard.drafts) > 1000


def test_one_sentence(benchmark: BenchmarkFixture, shipped: Packs) -> None:
    heard = benchmark(listen, SENTENCE, shipped)
    assert heard.drafts


def test_first_sentence_with_new_packs(benchmark: BenchmarkFixture) -> None:
    """The lexicon is built again for packs not listened with before."""
    heard = benchmark.pedantic(lambda one: listen(SENTENCE, one), setup=lambda: ((_copy(packs.read()),), {}), rounds=5)  # type: ignore[no-untyped-call]  # as above
    assert heard.drafts


def _copy(shipped: Packs) -> Packs:
    return replace(shipped)
