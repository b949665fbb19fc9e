"""How well and how fast does the packaged small model hear a narration? A synthetic voice reads; the words are known.

Run with ``pytest benchmarks/bench_speech.py -o python_files='bench_*.py' -o addopts= -s``. The voice is a plain formant
synthesizer (eSpeak NG) that reads caption by caption, so the word error rate is that of an unnatural voice: it tells
engines and settings apart, and says little of a person. The baseline of speed is reading the same samples.
"""

from __future__ import annotations

import json
import shutil
import sys
import time
from pathlib import Path

import pytest
from pytest_benchmark.fixture import BenchmarkFixture

import listening.conftest as scoring
from speech.spoken_aloud import narrate, needs_model, needs_voice
from witnessmark import packs
from witnessmark.listening.words import phrase
from witnessmark.speech import Recognizer, find_model, open_model, transcribe_file
from witnessmark.speech.sound import open_sound
from witnessmark.speech.survey import survey

NARRATIONS = ("attic_and_old_wiring", "kitchen_and_baths")


def word_errors(said: str, heard: str) -> float:
    """Substitutions, insertions and deletions for each word said (Levenshtein distance over words)."""
    reference, found = phrase(said), phrase(heard)
    row = list(range(len(found) + 1))
    for i, word in enumerate(reference, 1):
        before, row = row, [i] + [0] * len(found)
        for j, other in enumerate(found, 1):
            row[j] = min(before[j] + 1, row[j - 1] + 1, before[j - 1] + (word != other))
    return row[-1] / len(reference)


@pytest.fixture(scope="module")
def engine() -> Recognizer:
    needs_model()
    return open_model(find_model(), threads=2)


@pytest.fixture(scope="module")
def spoken(tmp_path_factory: pytest.TempPathFactory) -> dict[str, Path]:
    needs_voice()
    folder = tmp_path_factory.mktemp("spoken")
    made = {}
    for name in NARRATIONS:
        rows = [json.loads(line) for line in (scoring.NARRATIONS / f"{name}.jsonl").read_text("utf-8").splitlines()]
        made[name] = narrate(folder / f"{name}.wav", [(row["t"], row["text"]) for row in rows])
    return made


@pytest.mark.parametrize("name", NARRATIONS)
def test_words_and_drafts(
    engine: Recognizer, spoken: dict[str, Path], tmp_path: Path, monkeypatch: pytest.MonkeyPatch, name: str
) -> None:
    """Printed: word error rate, real-time factor, and the drafts from speech beside those from the written captions."""
    shipped = packs.read()
    written = scoring.score(name, shipped)
    begun = time.perf_counter()
    transcript = transcribe_file(spoken[name], recognizer=engine)
    took = time.perf_counter() - begun
    said = " ".join(
        json.loads(line)["text"] for line in (scoring.NARRATIONS / f"{name}.jsonl").read_text("utf-8").splitlines()
    )
    heard = " ".join(line.text for line in transcript.lines)
    transcript.write(tmp_path / f"{name}.jsonl")
    shutil.copy(scoring.NARRATIONS / f"{name}.gold.json", tmp_path)
    monkeypatch.setattr(scoring, "NARRATIONS", tmp_path)
    by_ear = scoring.score(name, shipped)
    sys.stdout.write(
        f"\n{name}: {transcript.engine}, {transcript.model}; word error rate {word_errors(said, heard):.3f}, "
        f"real-time factor {took / transcript.seconds:.3f} ({transcript.seconds:.0f} s); F of the drafts {by_ear.f():.2f} "
        f"by ear, {written.f():.2f} from the captions\n"
    )
    assert transcript.lines


def test_baseline_reading_the_samples(benchmark: BenchmarkFixture, spoken: dict[str, Path]) -> None:
    found = benchmark.pedantic(lambda: survey(open_sound(spoken[NARRATIONS[0]])), rounds=3)  # type: ignore[no-untyped-call]  # the plugin leaves it untyped
    assert found.seconds > 100


def test_recognising_the_words(benchmark: BenchmarkFixture, spoken: dict[str, Path], engine: Recognizer) -> None:
    heard = benchmark.pedantic(lambda: transcribe_file(spoken[NARRATIONS[0]], recognizer=engine), rounds=2)  # type: ignore[no-untyped-call]  # as above
    assert heard.segments
