"""A long recording: exact times over its pieces, and a run that was stopped goes on where it ended."""

import os
import signal
import subprocess
import sys
import time
from pathlib import Path

import pytest

from speech.scripted_engine import Scripted, counting_wav
from witnessmark.problems import Refusal
from witnessmark.speech import Transcript, transcribe_file

SECONDS = 75


@pytest.fixture
def recording(tmp_path: Path) -> Path:
    return counting_wav(tmp_path / "visit.wav", SECONDS)


def whole(recording: Path) -> Transcript:
    return transcribe_file(recording, recognizer=Scripted())


def test_times_are_exact_over_all_pieces(recording: Path) -> None:
    told: list[tuple[int, int]] = []
    transcript = transcribe_file(recording, recognizer=Scripted(), tell=lambda *at: told.append(at))
    words = [word for segment in transcript.segments for word in segment.words]
    assert [word.text for word in words] == [f"p{n}" for n in range(SECONDS)]
    assert [word.start for word in words] == [pytest.approx(n + 0.25, abs=0.001) for n in range(SECONDS)]
    assert len(told) > 7
    assert told == sorted(told)
    assert told[-1] == (SECONDS * 1000, SECONDS * 1000)


def partials(recording: Path) -> list[Path]:
    return list(recording.parent.glob("*.partial.jsonl"))


@pytest.mark.parametrize("after", [0, 1, 3, 7])
def test_a_stopped_run_is_taken_up(recording: Path, after: int) -> None:
    with pytest.raises(KeyboardInterrupt):
        transcribe_file(recording, recognizer=Scripted(stop_after=after))
    assert len(partials(recording)) == (1 if after else 0)
    second = Scripted()
    transcript = transcribe_file(recording, recognizer=second)
    uninterrupted = Scripted()
    assert transcript.segments == transcribe_file(recording, recognizer=uninterrupted).segments
    assert second.asked == uninterrupted.asked - after
    assert (transcript.taken_up > 0) == bool(after)
    assert partials(recording) == []


def test_work_of_another_model_setting_or_recording_is_not_taken_up(recording: Path) -> None:
    with pytest.raises(KeyboardInterrupt):
        transcribe_file(recording, recognizer=Scripted(stop_after=3))
    assert transcribe_file(recording, recognizer=Scripted(digest="1" * 64)).taken_up == 0
    assert transcribe_file(recording, recognizer=Scripted(), terms=("flue",)).taken_up == 0
    other = counting_wav(recording.with_name("other.wav"), SECONDS - 1).replace(recording)
    assert transcribe_file(other, recognizer=Scripted()).taken_up == 0
    assert len(partials(recording)) == 1  # the stopped run's own file is still there


@pytest.mark.parametrize("text", ["", "{", "[]\n", "null\nnull\n", '{"form": 1}\n{"from": "x"}\n', "\x00\x01"])
def test_a_damaged_file_of_work_is_ignored(recording: Path, text: str) -> None:
    with pytest.raises(KeyboardInterrupt):
        transcribe_file(recording, recognizer=Scripted(stop_after=2))
    (file,) = partials(recording)
    first = file.read_text(encoding="utf-8").splitlines()[0]
    for damaged in (text, first + "\n" + text, first + '\n{"from": 0, "to": 1, "segments": [{"words": 3}]}'):
        file.write_text(damaged, encoding="utf-8")
        again = Scripted(stop_after=1)
        with pytest.raises(KeyboardInterrupt):
            transcribe_file(recording, recognizer=again)
    assert [word.text for s in transcribe_file(recording, recognizer=Scripted()).segments for word in s.words] == [
        f"p{n}" for n in range(SECONDS)
    ]


def test_a_folder_that_cannot_be_written_costs_only_the_resuming(recording: Path, tmp_path: Path) -> None:
    transcript = transcribe_file(recording, recognizer=Scripted(), partial=tmp_path / "not there")
    assert [p.number for p in transcript.problems] == ["WM653"]
    assert transcript.segments == whole(recording).segments


PROGRAM = """
import sys, time
sys.path.insert(0, sys.argv[2])
from pathlib import Path
from speech.scripted_engine import Scripted
from witnessmark.speech import transcribe_file

class Slow(Scripted):
    def transcribe(self, pcm16k):
        heard = list(super().transcribe(pcm16k))
        time.sleep(0.3)
        return iter(heard)

transcribe_file(Path(sys.argv[1]), recognizer=Slow(), tell=lambda *_: print("piece", flush=True))
"""


@pytest.mark.skipif(not hasattr(signal, "SIGKILL"), reason="this system has no kill that cannot be caught")
def test_a_killed_process_loses_one_piece_at_most(recording: Path) -> None:
    command = [sys.executable, "-c", PROGRAM, str(recording), str(Path(__file__).parents[1])]
    with subprocess.Popen(command, stdout=subprocess.PIPE, text=True, env=os.environ) as running:
        assert running.stdout is not None
        for _ in range(3):
            assert running.stdout.readline() == "piece\n"
        time.sleep(0.1)
        running.kill()
    second = Scripted()
    transcript = transcribe_file(recording, recognizer=second)
    uninterrupted = Scripted()
    assert transcript.segments == transcribe_file(recording, recognizer=uninterrupted).segments
    assert uninterrupted.asked - second.asked >= 3
    assert [p.name for p in recording.parent.iterdir() if p.suffix != ".wav"] == []


def test_guesses_are_not_kept(recording: Path) -> None:
    with pytest.raises(Refusal) as caught:
        transcribe_file(recording, recognizer=Scripted(sure=0.2))
    assert caught.value.problems[0].number == "WM645"
    assert transcribe_file(recording, recognizer=Scripted(sure=None)).segments


def test_long_silence_is_passed_over(tmp_path: Path) -> None:
    import wave

    path = counting_wav(tmp_path / "a.wav", 5)
    with wave.open(str(path), "rb") as file:
        said = file.readframes(file.getnframes())
    with wave.open(str(path), "wb") as file:
        file.setnchannels(1)
        file.setsampwidth(2)
        file.setframerate(16_000)
        file.writeframes(said + bytes(2 * 16_000 * 120) + said)
    engine = Scripted()
    transcript = transcribe_file(path, recognizer=engine)
    words = [word for segment in transcript.segments for word in segment.words]
    assert [round(word.start, 2) for word in words] == [n + 0.25 for n in [0, 1, 2, 3, 4, 125, 126, 127, 128, 129]]
    assert engine.asked <= 4
