"""Samples from recordings: every form of WAV keeps its times, other forms come through a decoder, no sound is refused."""

import math
import shutil
import struct
import sys
import wave
from collections.abc import Callable
from itertools import pairwise
from pathlib import Path
from typing import Any

import numpy as np
import numpy.typing as npt
import pytest
import scipy.signal

from witnessmark.problems import Refusal
from witnessmark.speech.messages import BROKEN
from witnessmark.speech.sound import RATE, form_of, is_sound, open_sound
from witnessmark.speech.survey import LONGEST, Survey, pieces, survey

Samples = npt.NDArray[np.float64]


def write(path: Path, samples: Samples, rate: int = RATE, width: int = 2, channels: int = 1) -> Path:
    """Samples of -1 to 1 as WAV; a second channel stays silent."""
    top = 2.0 ** (8 * width - 1) - 1
    whole = (samples * top).round().astype(np.int64)
    frames = np.zeros((len(whole), channels), np.int64)
    frames[:, 0] = whole
    flat = frames.reshape(-1)
    data = bytes((flat + 128).astype(np.uint8)) if width == 1 else b"".join(
        int(v).to_bytes(width, "little", signed=True) for v in flat
    )  # fmt: skip
    with wave.open(str(path), "wb") as file:
        file.setnchannels(channels)
        file.setsampwidth(width)
        file.setframerate(rate)
        file.writeframes(data)
    return path


def read(path: Path) -> Samples:
    return np.concatenate(list(open_sound(path).blocks())).astype(np.float64) / 32_768


def tone(seconds: float, hertz: float, rate: int, loud: float = 0.5) -> Samples:
    return loud * np.sin(2 * np.pi * hertz * np.arange(int(seconds * rate)) / rate)


@pytest.mark.parametrize("width", [1, 2, 3, 4])
def test_every_width_of_sample_gives_the_same_sound(tmp_path: Path, width: int) -> None:
    heard = read(write(tmp_path / "a.wav", tone(0.5, 440, RATE), width=width))
    assert np.abs(heard - tone(0.5, 440, RATE)).max() < (0.01 if width == 1 else 0.0001)


@pytest.mark.parametrize("rate", [8_000, 11_025, 22_050, 32_000, 44_100, 48_000, 96_000])
def test_a_click_stays_where_it_was(tmp_path: Path, rate: int) -> None:
    """Also beyond the first block of ten seconds."""
    sound = np.zeros(rate * 23)
    for second in (1.0, 9.9, 10.05, 21.5):
        at = int(second * rate)
        sound[at : at + max(2, rate // 4000)] = 0.9
    heard = read(write(tmp_path / "a.wav", sound, rate))
    assert abs(len(heard) - 23 * RATE) <= 1
    for second in (1.0, 9.9, 10.05, 21.5):
        near = heard[int((second - 0.02) * RATE) : int((second + 0.02) * RATE)]
        late = (int(np.argmax(near)) / RATE) - 0.02
        assert abs(late) < 0.0005


@pytest.mark.parametrize("rate", [22_050, 44_100, 48_000])
def test_resampling_agrees_with_a_reference_library(tmp_path: Path, rate: int) -> None:
    """scipy.signal.resample_poly on speech-like noise below 6 kHz."""
    noise = np.random.default_rng(5).normal(0, 0.1, rate * 12)
    low = scipy.signal.sosfiltfilt(scipy.signal.butter(8, 6_000, fs=rate, output="sos"), noise)
    up, down = RATE // math.gcd(RATE, rate), rate // math.gcd(RATE, rate)
    reference = scipy.signal.resample_poly(low, up, down)
    heard = read(write(tmp_path / "a.wav", low, rate))
    count = min(len(heard), len(reference)) - 100
    error = heard[100:count] - reference[100:count]
    assert np.sqrt((error**2).mean()) < 0.05 * np.sqrt((reference[100:count] ** 2).mean())


def test_what_lies_above_the_new_band_does_not_come_back_as_another_tone(tmp_path: Path) -> None:
    heard = read(write(tmp_path / "a.wav", tone(1, 11_000, 48_000), 48_000))
    assert np.abs(heard[500:-500]).max() < 0.005


def test_two_channels_become_one(tmp_path: Path) -> None:
    heard = read(write(tmp_path / "a.wav", tone(0.5, 440, RATE), channels=2))
    assert np.abs(heard).max() == pytest.approx(0.25, abs=0.001)


def encode(path: Path, samples: Samples, codec: str) -> Path:
    """The same sound in another form, written by PyAV."""
    av = pytest.importorskip("av", reason="PyAV comes with the speech extra and is not installed here")
    rate = 48_000
    with av.open(str(path), "w") as container:
        stream: Any = container.add_stream(codec, rate=rate)
        stream.layout = "mono"
        resampler = av.audio.resampler.AudioResampler(
            format=stream.format, layout="mono", rate=rate, frame_size=getattr(stream, "frame_size", 0) or 1024
        )
        frame = av.AudioFrame.from_ndarray(
            (samples * 32_767).astype(np.int16).reshape(1, -1), format="s16", layout="mono"
        )
        frame.sample_rate = rate
        for part in [*resampler.resample(frame), *resampler.resample(None)]:
            container.mux(stream.encode(part))
        container.mux(stream.encode(None))
    return path


#: PyAV comes with the development extra; ffmpeg is tried too where it is on the path.
@pytest.fixture(params=["PyAV", "ffmpeg"] if shutil.which("ffmpeg") else ["PyAV"])
def decoder(request: pytest.FixtureRequest, monkeypatch: pytest.MonkeyPatch) -> str:
    if request.param == "PyAV":
        monkeypatch.setattr("shutil.which", lambda _: None)
    return str(request.param)


@pytest.mark.parametrize(
    ("name", "codec", "form"),
    [("a.m4a", "aac", "MP4"), ("a.mp3", "mp3", "MP3"), ("a.flac", "flac", "FLAC"), ("a.ogg", "libopus", "Ogg"),
     ("a.webm", "libopus", "WebM"), ("a.aiff", "pcm_s16be", "AIFF"), ("a.mkv", "pcm_s16le", "WebM")],
)  # fmt: skip
def test_other_forms_come_through_a_decoder(decoder: str, tmp_path: Path, name: str, codec: str, form: str) -> None:
    sound = np.zeros(48_000 * 3)
    sound[48_000 : 48_000 + 24_000] = tone(0.5, 440, 48_000)
    path = encode(tmp_path / name, sound, codec)
    opened = open_sound(path)
    assert opened.by == decoder
    assert form_of(path) == opened.form == form
    heard = np.concatenate(list(opened.blocks())).astype(np.float64) / 32_768
    assert len(heard) / RATE == pytest.approx(3, abs=0.1)
    loud = np.flatnonzero(np.abs(heard) > 0.25)
    assert loud[0] / RATE == pytest.approx(1.0, abs=0.04)
    assert loud[-1] / RATE == pytest.approx(1.5, abs=0.04)


def refused(run: Callable[[], object]) -> str:
    with pytest.raises(Refusal) as caught:
        run()
    return caught.value.problems[0].number


PLAYLIST = b"#EXTM3U\n#EXTINF:10,\nhttp://127.0.0.1:9/secret.ts\n"


@pytest.mark.parametrize(
    ("name", "data", "number"),
    [
        ("empty.wav", b"", "WM640"),
        ("text.mp3", b"this is a note, not a recording\n" * 20, "WM640"),
        ("playlist.mp3", PLAYLIST, "WM640"),
        ("picture.m4a", b"\x89PNG\r\n\x1a\n" + bytes(100), "WM640"),
        ("web.wav", b"RIFF\x00\x00\x00\x00WEBPVP8 " + bytes(50), "WM640"),
    ],
)
def test_no_sound_is_refused(tmp_path: Path, name: str, data: bytes, number: str) -> None:
    path = tmp_path / name
    path.write_bytes(data)
    assert not is_sound(path)
    assert refused(lambda: open_sound(path)) == number


def test_what_is_not_there_or_is_a_folder_is_refused(tmp_path: Path) -> None:
    assert refused(lambda: open_sound(tmp_path / "none.wav")) == "WM654"
    assert refused(lambda: open_sound(tmp_path)) == "WM654"
    assert not is_sound(tmp_path / "none.wav")
    assert not is_sound(Path("bad\0name"))


@pytest.mark.parametrize("head", [b"ID3\x04\x00", b"OggS\x00\x02", b"fLaC\x00\x00", b"\x00\x00\x00\x18ftypM4A ", b"caff\x00\x01",
                                  b"\x1aE\xdf\xa3", b"FORM\x00\x00\x10\x00AIFF", b"RIFF\x24\x00\x00\x00WAVEfmt "])  # fmt: skip
def test_what_only_begins_like_sound_is_refused_when_it_is_read(tmp_path: Path, head: bytes) -> None:
    path = tmp_path / "a.bin"
    path.write_bytes(head + np.random.default_rng(1).bytes(3000))
    assert refused(lambda: survey(open_sound(path))) in {"WM647", "WM641"}


def test_without_a_decoder_only_wav_is_read(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    path = tmp_path / "a.mp3"
    path.write_bytes(b"ID3" + bytes(200))
    monkeypatch.setattr("shutil.which", lambda _: None)
    monkeypatch.setitem(sys.modules, "av", None)
    assert refused(lambda: open_sound(path)) == "WM646"
    assert open_sound(write(tmp_path / "b.wav", tone(1, 440, RATE))).by == "standard library"


def test_without_the_extra_it_is_told_what_to_install(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    path = write(tmp_path / "b.wav", tone(1, 440, RATE))
    monkeypatch.setitem(sys.modules, "numpy", None)
    assert refused(lambda: open_sound(path)) == "WM655"


def test_a_recording_that_breaks_off_is_told_with_the_time(tmp_path: Path) -> None:
    path = write(tmp_path / "a.wav", tone(4, 440, RATE))
    data = path.read_bytes()
    path.write_bytes(data[: len(data) // 2])
    found = survey(open_sound(path))
    assert found.seconds == pytest.approx(2, abs=0.01)
    assert [p.message for p in found.problems] == [BROKEN]
    assert "2.0 s" in found.problems[0].detail


def test_a_recorder_that_did_not_know_the_length_is_believed(tmp_path: Path) -> None:
    path = write(tmp_path / "a.wav", tone(2, 440, RATE))
    data = bytearray(path.read_bytes())
    data[4:8] = data[40:44] = struct.pack("<I", 0xFFFF_FFFF)
    path.write_bytes(data)
    found = survey(open_sound(path))
    assert found.seconds == pytest.approx(2, abs=0.01)
    assert found.problems == ()


@pytest.mark.parametrize(
    ("sound", "number"),
    [(np.zeros(RATE * 3), "WM643"), (tone(3, 100, RATE, 0.0005), "WM643"), (tone(0.2, 440, RATE), "WM641")],
)
def test_silence_and_scraps_are_refused(tmp_path: Path, sound: Samples, number: str) -> None:
    assert refused(lambda: survey(open_sound(write(tmp_path / "a.wav", sound)))) == number


def test_a_recording_longer_than_a_day_on_site_is_refused(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    assert LONGEST == 12 * 3600
    monkeypatch.setattr("witnessmark.speech.survey.LONGEST", 30)
    assert survey(open_sound(write(tmp_path / "a.wav", tone(30, 440, 8000), 8000))).seconds == 30
    assert refused(lambda: survey(open_sound(write(tmp_path / "b.wav", tone(31, 440, 8000), 8000)))) == "WM642"


def fake_survey(loud: Samples) -> Survey:
    return Survey(len(loud) * RATE // 50, loud.astype(np.float32))


def test_pieces_meet_and_are_cut_where_it_is_quiet() -> None:
    rng = np.random.default_rng(3)
    loud = rng.uniform(0.05, 0.2, 50 * 600)
    pauses = [50 * at for at in range(20, 600, 23)]
    for pause in pauses:
        loud[pause : pause + 30] = 0.001
    cuts = list(pieces(fake_survey(loud), 60))
    assert cuts[0][0] == 0
    assert cuts[-1][1] == len(loud) * RATE // 50
    assert all(a[1] == b[0] for a, b in pairwise(cuts))
    assert all(0 < end - start <= 60 * RATE for start, end in cuts)
    assert all(loud[end * 50 // RATE] < 0.01 for _, end in cuts[:-1])


def test_a_recording_without_a_pause_is_cut_all_the_same() -> None:
    cuts = list(pieces(fake_survey(np.full(50 * 400, 0.1)), 60))
    assert all(30 * RATE <= end - start <= 60 * RATE for start, end in cuts[:-1])
