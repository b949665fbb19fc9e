"""The whole way with a real model: a synthetic voice reads an invented narration, and it comes out as drafts.

The voice is eSpeak NG, the model Whisper tiny.en; neither is close to a person or to the best there is, so that what
must be heard here is little: words of the trade said clearly, at the times at which they were said.
"""

import json
import re
import subprocess
import sys
import wave
from itertools import pairwise
from pathlib import Path

import numpy as np
import pytest

from speech.spoken_aloud import narrate, needs_model, needs_voice
from witnessmark import packs
from witnessmark.listening import listen, read_narration
from witnessmark.problems import Refusal
from witnessmark.speech import Recognizer, Transcript, open_model, transcribe_file

#: The model is loaded once, by one worker.
pytestmark = pytest.mark.xdist_group("speech")

SAID = (
    (1.0, "I am in the kitchen."),
    (4.0, "The sink is leaking at the drain."),
    (9.0, "The handrail is loose."),
    (13.0, "Water pressure is sixty two p s i."),
    (75.0, "The garage door is damaged."),
    (80.0, "I turned the oven on."),
)


@pytest.fixture(scope="module")
def tiny() -> Recognizer:
    needs_voice()
    return open_model(needs_model(), threads=2)


@pytest.fixture(scope="module")
def recording(tmp_path_factory: pytest.TempPathFactory) -> Path:
    needs_voice()
    return narrate(tmp_path_factory.mktemp("spoken") / "visit.wav", SAID)


@pytest.fixture(scope="module")
def transcript(tiny: Recognizer, recording: Path) -> Transcript:
    tiny.longest = 60.0  # two pieces, so that the offset of the second one is tried as well
    return transcribe_file(recording, recognizer=tiny)


@pytest.mark.parametrize(
    ("word", "second"),
    [("kitchen", 1.0), ("sink", 4.0), ("handrail", 9.0), ("pressure", 13.0), ("garage", 75.0), ("oven", 80.0)],
)
def test_a_word_is_heard_when_it_was_said(transcript: Transcript, word: str, second: float) -> None:
    at = [w.start for s in transcript.segments for w in s.words if re.sub(r"\W", "", w.text.lower()) == word]
    assert len(at) == 1, [line.text for line in transcript.lines]
    assert second - 0.3 <= at[0] <= second + 2.5


def test_each_statement_is_a_line_of_its_own(transcript: Transcript) -> None:
    starts = [line.start for line in transcript.lines]
    for second, _ in SAID:
        assert any(abs(start - second) < 0.7 for start in starts), starts


def test_words_carry_probabilities_and_lie_in_order(transcript: Transcript) -> None:
    words = [word for segment in transcript.segments for word in segment.words]
    assert all(word.probability is not None and 0 < word.probability <= 1 for word in words)
    assert all(a.start <= b.start and a.start <= a.end for a, b in pairwise(words))
    assert words[-1].end <= transcript.seconds


def test_the_transcript_is_what_listening_reads(transcript: Transcript, tmp_path: Path) -> None:
    path = tmp_path / "visit.jsonl"
    transcript.write(path)
    narration = read_narration(path)
    assert narration.problems == ()
    assert [line.text for line in narration.lines] == [line.text for line in transcript.lines]
    assert [line.start for line in narration.lines] == [line.start for line in transcript.lines]
    first = json.loads(path.read_text(encoding="utf-8").splitlines()[0])
    assert first["made"]["model_sha256"] == transcript.digest
    assert first["words"][0]["start"] == first["t"]
    heard = listen(narration, packs.read())
    kinds = {(draft.act, draft.kind) for draft in heard.drafts}
    assert {("saw", "sink"), ("saw", "garage-door"), ("ran", "range")} <= kinds
    assert any(draft.act == "read" and draft.unit == "[psi]" for draft in heard.drafts)
    assert [row.draft.kind for row in heard.still_on] == ["range"]


def test_terms_are_taken(tiny: Recognizer, recording: Path) -> None:
    with_terms = open_model(tiny.model, 2, ("handrail", "water heater"))
    assert transcribe_file(recording, recognizer=with_terms, terms=("handrail", "water heater")).segments


RATE = 16_000
TIME = np.arange(20 * RATE) / RATE
SOUNDS = {
    "a fan": np.convolve(np.random.default_rng(1).normal(0, 0.5, 20 * RATE), np.ones(40) / 40, "same"),
    "a hum": 0.2 * np.sin(2 * np.pi * 120 * TIME),
    "noise": np.random.default_rng(2).normal(0, 0.1, 20 * RATE),
    "chords": 0.1 * np.sin(2 * np.pi * np.outer((220, 277, 330), TIME) + np.cos(31 * TIME) / 3).sum(axis=0),
}


def tune() -> np.ndarray:
    """Plucked notes, four a second."""
    rng = np.random.default_rng(1)
    sound = np.zeros(20 * RATE)
    for start in range(0, len(sound), RATE // 4):
        at = np.arange(RATE // 4) / RATE
        note = float(rng.choice([262, 294, 330, 392, 440])) * float(rng.choice([0.5, 1, 2]))
        sound[start : start + RATE // 4] = (
            np.exp(-6 * at) * sum(np.sin(2 * np.pi * note * k * at) / k for k in (1, 2, 3)) / 5
        )
    return sound


@pytest.mark.parametrize("name", [*SOUNDS, "a tune"])
def test_machines_and_music_give_no_words(tiny: Recognizer, tmp_path: Path, name: str) -> None:
    sound = tune() if name == "a tune" else SOUNDS[name]
    path = tmp_path / "a.wav"
    with wave.open(str(path), "wb") as file:
        file.setnchannels(1)
        file.setsampwidth(2)
        file.setframerate(RATE)
        file.writeframes((sound.clip(-1, 1) * 32_767).astype("<i2").tobytes())
    with pytest.raises(Refusal) as caught:
        transcribe_file(path, recognizer=tiny)
    assert caught.value.problems[0].number in {"WM644", "WM645"}
    assert [p.name for p in tmp_path.iterdir()] == ["a.wav"]


#: Python tells an audit hook of every socket that it opens and every name that it looks up.
WATCHED = """
import sys
def watch(event, args):
    if event.startswith("socket.") and event not in {"socket.gethostname", "socket.__new__"} or event == "urllib.Request":
        print("NETWORK", event, args, file=sys.stderr)
        raise OSError("the network was asked for")
sys.addaudithook(watch)
from pathlib import Path
from witnessmark.speech import transcribe_file
print(len(transcribe_file(Path(sys.argv[1]), threads=2).segments))
"""


def test_the_network_is_never_asked_for(recording: Path) -> None:
    """What Python does is watched here; the libraries' own compiled code is given nothing but paths of this machine."""
    needs_model()
    done = subprocess.run(
        [sys.executable, "-c", WATCHED, str(recording)], capture_output=True, text=True, check=False, timeout=120
    )
    assert "NETWORK" not in done.stderr
    assert done.returncode == 0, done.stderr
    assert int(done.stdout) > 0


def test_the_watch_bites() -> None:
    asked = WATCHED.partition("from pathlib")[0] + "import socket; socket.create_connection(('127.0.0.1', 9))"
    done = subprocess.run([sys.executable, "-c", asked], capture_output=True, text=True, check=False, timeout=60)
    assert done.returncode != 0
    assert "NETWORK socket" in done.stderr
