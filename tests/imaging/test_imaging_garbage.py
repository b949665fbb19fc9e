"""Whatever a file holds, the answer is a picture or a numbered refusal."""

import io
from collections.abc import Callable
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from PIL import Image

from witnessmark.imaging import prepared, read_frame, read_picture
from witnessmark.imaging.formats import mime_of
from witnessmark.problems import Refusal


def _sample(kind: str) -> bytes:
    out = io.BytesIO()
    if kind == "TIFF":
        Image.new("I;16", (24, 16), 29315).save(
            out, kind, compression="tiff_adobe_deflate", tiffinfo={270: '{"emissivity": 0.95}'}
        )
        return out.getvalue()
    exif = Image.Exif()
    exif[0x0112] = 6
    exif.get_ifd(0x8769)[0x9003] = "2026:10:14 09:05:10"
    exif.get_ifd(0x8825)[1] = "N"
    Image.linear_gradient("L").resize((40, 30)).convert("RGB").save(out, kind, exif=exif)
    return out.getvalue()


SAMPLES = {kind: _sample(kind) for kind in ("JPEG", "PNG", "WEBP", "TIFF")}
HEADS = [
    b"\xff\xd8\xff", b"\x89PNG\r\n\x1a\n", b"RIFF....WEBPVP8 ", b"II*\x00", b"MM\x00*", b"\x00\x00\x00\x18ftypheic", b"%PDF-", b"",
]  # fmt: skip


def _only_refusals(path: Path) -> None:
    readers: tuple[Callable[[Path], object], ...] = (read_picture, read_frame, prepared)
    for reader in readers:
        numbers: list[str] = []
        try:
            reader(path)
        except Refusal as refusal:
            numbers = [problem.number for problem in refusal.problems]
        assert all(number.startswith("WM7") for number in numbers)


@settings(max_examples=150, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(
    kind=st.sampled_from(sorted(SAMPLES)),
    changes=st.lists(st.tuples(st.integers(0, 5000), st.integers(0, 255)), min_size=1, max_size=12),
)
def test_altered_bytes(tmp_path: Path, kind: str, changes: list[tuple[int, int]]) -> None:
    data = bytearray(SAMPLES[kind])
    for place, value in changes:
        data[place % len(data)] = value
    path = tmp_path / "altered"
    path.write_bytes(data)
    _only_refusals(path)


@settings(max_examples=80, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(kind=st.sampled_from(sorted(SAMPLES)), cut=st.integers(1, 5000), more=st.binary(max_size=40))
def test_cut_and_continued_with_other_bytes(tmp_path: Path, kind: str, cut: int, more: bytes) -> None:
    data = SAMPLES[kind]
    path = tmp_path / "cut"
    path.write_bytes(data[: cut % len(data)] + more)
    _only_refusals(path)


@settings(max_examples=80, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(head=st.sampled_from(HEADS), tail=st.binary(max_size=200))
def test_a_known_beginning_and_then_anything(tmp_path: Path, head: bytes, tail: bytes) -> None:
    path = tmp_path / "anything"
    path.write_bytes(head + tail)
    _only_refusals(path)


@given(st.binary(max_size=64))
def test_any_beginning_has_a_kind_or_none(head: bytes) -> None:
    assert mime_of(head) is None or "/" in str(mime_of(head))


@pytest.mark.parametrize("name", ["a\0b", "x" * 5000])
def test_names_no_file_can_have(tmp_path: Path, name: str) -> None:
    with pytest.raises(Refusal) as refused:
        read_picture(tmp_path / name)
    assert refused.value.problems[0].number == "WM703"
