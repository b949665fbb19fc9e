"""A recording in a job: kept with its words, drafted from once, and refused early where it cannot be used."""

from __future__ import annotations

import hashlib
import json
import subprocess
import sys
from datetime import datetime
from pathlib import Path

import pytest

from witnessmark.assembly import Talk, hear, hear_into, new_job, read_packs, read_talk, write_transcript
from witnessmark.assembly.jobs import OpenJob
from witnessmark.journal.acts import Ran, Took
from witnessmark.journal.job import Job
from witnessmark.listening import Line, Narration
from witnessmark.packs.model import Packs
from witnessmark.problems import Refusal
from witnessmark.speech import Segment, Transcript, Word

BEGAN = "2026-10-14T09:00:00-07:00"


@pytest.fixture(scope="module")
def packs() -> Packs:
    return read_packs()


@pytest.fixture
def job(tmp_path: Path) -> OpenJob:
    now = datetime.fromisoformat("2026-10-14T12:00:00-07:00")
    return new_job(tmp_path / "job", Job("0199e000-0000-7000-8000-000000000001", date="2026-10-14"), lambda: now)


@pytest.fixture
def recording(tmp_path: Path) -> Path:
    file = tmp_path / "visit.wav"
    file.write_bytes(b"RIFF\x24\0\0\0WAVEfmt not really sound")
    return file


def talk_of(file: Path) -> Talk:
    """What an engine would have heard in the file."""
    words = tuple(
        Word(text, 1.0 + 0.4 * n, 1.3 + 0.4 * n, 0.9)
        for n, text in enumerate(
            ["Okay,", "kitchen.", "I", "turned", "the", "oven", "on.", "The", "sink", "faucet", "drips."]
        )
    )
    digest = hashlib.sha256(file.read_bytes()).hexdigest()
    transcript = Transcript(file.name, digest, 8.0, "test", "test", "0" * 64, (Segment.of(words),))
    lines = tuple(Line(row.start, row.end, row.text) for row in transcript.lines)
    return Talk(Narration(file.name, lines), transcript)


def test_the_recording_is_kept_with_its_words(job: OpenJob, packs: Packs, recording: Path) -> None:
    hear_into(job, packs, recording, began=BEGAN, talk=talk_of(recording))
    record = job.record()
    (took,) = [fact for fact in record.facts if isinstance(fact.body, Took)]
    sound, words = took.media
    kept = job.media.path(sound)
    assert kept is not None
    assert kept.read_bytes() == recording.read_bytes()
    transcript = job.media.path(words)
    assert transcript is not None
    first = json.loads(transcript.read_text(encoding="utf-8").splitlines()[0])
    assert first["made"]["sha256"] == sound, "the words say which recording they come from"
    (oven,) = [fact for fact in record.drafts if isinstance(fact.body, Ran)]
    assert oven.source.file == "visit.wav"
    assert oven.at.startswith("2026-10-14T09:00:0")


def test_it_is_kept_once(job: OpenJob, packs: Packs, recording: Path) -> None:
    for device in ("recorder", "other"):
        hear_into(job, packs, recording, began=BEGAN, talk=talk_of(recording), device=device)
    assert len([fact for fact in job.record().facts if isinstance(fact.body, Took)]) == 1


def test_a_transcript_is_written_and_heard_again_alike(packs: Packs, recording: Path, tmp_path: Path) -> None:
    talk = talk_of(recording)
    write_transcript(talk, tmp_path / "words.jsonl")
    again = read_talk(tmp_path / "words.jsonl")
    assert again.transcript is None
    assert [d.as_json() for d in hear(again, packs).drafts] == [d.as_json() for d in hear(talk, packs).drafts]
    with pytest.raises(Refusal) as refused:
        write_transcript(talk, tmp_path / "nowhere" / "words.jsonl")
    assert refused.value.problems[0].number == "WM919"


def test_a_recording_for_a_job_needs_its_beginning_before_it_is_heard(job: OpenJob, recording: Path) -> None:
    command = [sys.executable, "-m", "witnessmark", "listen", str(recording), "--job", str(job.folder)]
    told = subprocess.run(command, capture_output=True, text=True, check=False)
    assert told.returncode == 2
    assert "WM911" in told.stderr
    assert job.record().entries == {}


def test_an_endpoint_beyond_this_network_is_refused_before_anything_is_sent(tmp_path: Path) -> None:
    file = tmp_path / "talk.jsonl"
    file.write_text('{"t": 1, "text": "the oven is on"}\n', encoding="utf-8")
    command = [sys.executable, "-m", "witnessmark", "listen", str(file), "--endpoint-model", "m", "--endpoint"]
    for address, number in (("http://93.184.215.14/v1", "WM661"), ("ftp://127.0.0.1/v1", "WM660")):
        told = subprocess.run([*command, address], capture_output=True, text=True, check=False)
        assert told.returncode == 2
        assert number in told.stderr
