"""Files as cameras, people and accidents make them: what each is said to be, and what is refused with which number."""

import hashlib
import io
import json
import struct
import tracemalloc
import zlib
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
from PIL import Image, ImageOps

from witnessmark.imaging import prepared, read_picture
from witnessmark.problems import Refusal


def exif_of(*, outer: dict[int, Any] | None = None, inner: dict[int, Any] | None = None) -> Image.Exif:
    exif = Image.Exif()
    exif[0x0131] = "a test"
    for tag, value in (outer or {}).items():
        exif[tag] = value
    times = exif.get_ifd(0x8769)
    for tag, value in (inner or {}).items():
        times[tag] = value
    return exif


def photo(
    path: Path, size: tuple[int, int] = (64, 48), kind: str = "JPEG", exif: Image.Exif | None = None, **options: Any
) -> Path:
    image = Image.linear_gradient("L").resize(size).convert("RGB")
    if exif is not None:
        options["exif"] = exif
    image.save(path, kind, **options)
    return path


def number(call: Callable[..., object], *args: object, **options: Any) -> str:
    with pytest.raises(Refusal) as refused:
        call(*args, **options)
    assert str(args[0]) in str(refused.value)
    return refused.value.problems[0].number


TAKEN = {0x9003: "2026:10:14 09:05:10", 0x9011: "-07:00"}


def test_a_photo_says_its_time_with_offset_its_size_and_hash(tmp_path: Path) -> None:
    path = photo(tmp_path / "p01.jpg", exif=exif_of(inner=TAKEN))
    seen = read_picture(path)
    assert (seen.sort, seen.mime, seen.name, seen.width, seen.height, seen.orientation) == (
        "photo",
        "image/jpeg",
        "p01.jpg",
        64,
        48,
        1,
    )
    assert seen.taken_at == "2026-10-14T09:05:10-07:00"
    assert seen.sha256 == hashlib.sha256(path.read_bytes()).hexdigest()
    assert seen.bytes == path.stat().st_size
    assert seen.problems == ()
    assert json.loads(json.dumps(seen.as_json()))["taken_at"] == seen.taken_at


@pytest.mark.parametrize(("kind", "mime"), [("JPEG", "image/jpeg"), ("PNG", "image/png"), ("WEBP", "image/webp")])
def test_the_content_decides_not_the_ending(tmp_path: Path, kind: str, mime: str) -> None:
    path = photo(tmp_path / "misnamed.txt", kind=kind, exif=exif_of(inner=TAKEN))
    seen = read_picture(path)
    assert (seen.mime, seen.sort, seen.taken_at) == (mime, "photo", "2026-10-14T09:05:10-07:00")


def test_a_clock_without_zone_takes_the_offset_given_and_no_other(tmp_path: Path) -> None:
    path = photo(tmp_path / "a.jpg", exif=exif_of(inner={0x9003: "2026:10:14 09:05:10"}))
    assert read_picture(path, default_offset="-07:00").taken_at == "2026-10-14T09:05:10-07:00"
    without = read_picture(path)
    assert without.taken_at is None
    assert [p.number for p in without.problems] == ["WM710"]


def test_the_offset_in_the_file_wins_over_the_one_given(tmp_path: Path) -> None:
    path = photo(tmp_path / "a.jpg", exif=exif_of(inner=TAKEN))
    assert read_picture(path, default_offset="+02:00").taken_at == "2026-10-14T09:05:10-07:00"


@pytest.mark.parametrize(
    "clock", ["2026:13:14 09:05:10", "0000:00:00 00:00:00", "    :  :     :  :  ", "yesterday", ""]
)
def test_an_impossible_time_is_no_time(tmp_path: Path, clock: str) -> None:
    seen = read_picture(photo(tmp_path / "a.jpg", exif=exif_of(inner={0x9003: clock})), default_offset="-07:00")
    assert seen.taken_at is None
    assert [p.number for p in seen.problems] == ["WM709"]


def test_the_time_of_the_last_change_is_not_when_it_was_taken(tmp_path: Path) -> None:
    seen = read_picture(photo(tmp_path / "a.jpg", exif=exif_of(outer={0x0132: "2026:10:14 09:05:10"})))
    assert seen.taken_at is None


@pytest.mark.parametrize("offset", ["-7:00", "PDT", "+15:00", "-07:60", "", "-07:00\n"])
def test_an_offset_that_is_none_is_refused(tmp_path: Path, offset: str) -> None:
    with pytest.raises(Refusal) as refused:
        read_picture(photo(tmp_path / "a.jpg"), default_offset=offset)
    assert refused.value.problems[0].number == "WM711"


@pytest.mark.parametrize(
    ("orientation", "wide", "high"), [(1, 64, 48), (3, 64, 48), (6, 48, 64), (8, 48, 64), (99, 64, 48)]
)
def test_width_and_height_are_those_of_the_upright_picture(
    tmp_path: Path, orientation: int, wide: int, high: int
) -> None:
    path = photo(tmp_path / "a.jpg", exif=exif_of(outer={0x0112: orientation}, inner=TAKEN))
    seen = read_picture(path)
    assert (seen.width, seen.height) == (wide, high)
    with Image.open(io.BytesIO(prepared(path))) as shown:
        assert shown.size == (wide, high)


@pytest.mark.parametrize("orientation", range(1, 9))
def test_the_shown_copy_is_turned_as_pillow_turns_it(tmp_path: Path, orientation: int) -> None:
    corner = Image.new("RGB", (64, 48), "white")
    corner.paste("black", (0, 0, 24, 16))
    path = tmp_path / "a.png"
    corner.save(path, exif=exif_of(outer={0x0112: orientation}))
    with Image.open(path) as original, Image.open(io.BytesIO(prepared(path))) as shown:
        expected = ImageOps.exif_transpose(original).convert("L")
        assert shown.size == expected.size
        differences = [abs(a - b) for a, b in zip(shown.convert("L").tobytes(), expected.tobytes(), strict=True)]
        assert sum(differences) / len(differences) < 4


def test_what_is_no_picture_is_refused_each_with_its_number(tmp_path: Path) -> None:
    (tmp_path / "empty.jpg").touch()
    (tmp_path / "letter.jpg").write_text("Dear client,")
    (tmp_path / "moving.gif").write_bytes(b"GIF89a" + bytes(40))
    (tmp_path / "phone.jpg").write_bytes(b"\x00\x00\x00\x18ftypheic" + bytes(40))
    assert number(read_picture, tmp_path / "empty.jpg") == "WM701"
    assert number(read_picture, tmp_path) == "WM702"
    assert number(read_picture, tmp_path / "nothing.jpg") == "WM703"
    assert number(read_picture, tmp_path / "letter.jpg") == "WM704"
    assert number(read_picture, tmp_path / "moving.gif") == "WM704"
    assert number(read_picture, tmp_path / "phone.jpg") == "WM706", "it begins as HEIF and is none"


@pytest.mark.parametrize("kind", ["JPEG", "PNG", "WEBP"])
@pytest.mark.parametrize("share", [0.3, 0.6, 0.9])
def test_a_picture_cut_short_is_refused(tmp_path: Path, kind: str, share: float) -> None:
    whole = photo(tmp_path / "whole", size=(400, 300), kind=kind).read_bytes()
    (tmp_path / "cut").write_bytes(whole[: int(len(whole) * share)])
    assert number(read_picture, tmp_path / "cut") == "WM706"
    assert number(prepared, tmp_path / "cut") == "WM706"


def huge_png(side: int) -> bytes:
    def chunk(name: bytes, data: bytes) -> bytes:
        return struct.pack(">I", len(data)) + name + data + struct.pack(">I", zlib.crc32(name + data))

    header = struct.pack(">IIBBBBB", side, side, 1, 0, 0, 0, 0)
    packed = zlib.compressobj(9)
    row = bytes(side // 8 + 1)
    data = b"".join(packed.compress(row) for _ in range(side)) + packed.flush()
    return b"\x89PNG\r\n\x1a\n" + chunk(b"IHDR", header) + chunk(b"IDAT", data) + chunk(b"IEND", b"")


def test_forty_thousand_pixels_a_side_are_refused_before_any_is_decoded(tmp_path: Path) -> None:
    path = tmp_path / "huge.png"
    path.write_bytes(huge_png(40_000))
    tracemalloc.start()
    assert number(read_picture, path) == "WM707"
    assert number(prepared, path) == "WM707"
    peak = tracemalloc.get_traced_memory()[1]
    tracemalloc.stop()
    assert peak < 5_000_000


def test_a_jpeg_header_that_claims_sixty_thousand_a_side_is_refused(tmp_path: Path) -> None:
    data = bytearray(photo(tmp_path / "a.jpg").read_bytes())
    frame = data.index(b"\xff\xc0")
    data[frame + 5 : frame + 9] = struct.pack(">HH", 60_000, 60_000)
    (tmp_path / "b.jpg").write_bytes(data)
    assert number(read_picture, tmp_path / "b.jpg") == "WM707"


@pytest.mark.parametrize("kind", ["PNG", "WEBP"])
def test_a_sequence_of_pictures_is_refused(tmp_path: Path, kind: str) -> None:
    frames = [Image.new("RGB", (32, 32), colour) for colour in ("red", "green", "blue")]
    frames[0].save(tmp_path / "a", kind, save_all=True, append_images=frames[1:], duration=80)
    assert number(read_picture, tmp_path / "a") == "WM708"


def test_videos_and_documents_are_kept_but_say_no_time(tmp_path: Path) -> None:
    for name, head, sort, mime in (
        ("a", b"\x00\x00\x00\x18ftypmp42", "video", "video/mp4"),
        ("b", b"\x00\x00\x00\x14ftypqt  ", "video", "video/quicktime"),
        ("c", b"\x1aE\xdf\xa3\x9fB\x86\x81\x01webm", "video", "video/webm"),
        ("d", b"%PDF-1.7\n", "document", "application/pdf"),
    ):
        (tmp_path / name).write_bytes(head + bytes(100))
        seen = read_picture(tmp_path / name)
        assert (seen.sort, seen.mime, seen.width, seen.height) == (sort, mime, None, None)
        assert [p.number for p in seen.problems] == ["WM709"]


def test_a_shown_copy_is_small_upright_and_without_place_or_owner(tmp_path: Path) -> None:
    exif = exif_of(outer={0x010F: "Maker", 0x013B: "Owner of the phone"}, inner=TAKEN)
    gps = exif.get_ifd(0x8825)
    gps[1], gps[2] = "N", (47.0, 36.0, 0.0)
    path = photo(tmp_path / "a.jpg", size=(4032, 3024), exif=exif, comment=b"secret words")
    assert b"Owner of the phone" in path.read_bytes()
    data = prepared(path, 1000)
    with Image.open(io.BytesIO(data)) as shown:
        assert shown.format == "JPEG"
        assert 1000 >= shown.width > 500
        assert abs(shown.width / shown.height - 4 / 3) < 0.01
        assert not shown.getexif()
    assert b"Exif" not in data
    assert b"Owner" not in data
    assert b"secret" not in data


@pytest.mark.parametrize("mode", ["1", "L", "LA", "P", "RGB", "RGBA", "I;16"])
def test_every_mode_of_png_can_be_shown(tmp_path: Path, mode: str) -> None:
    base = Image.new("I;16", (40, 30), 60000) if mode == "I;16" else Image.new("RGB", (40, 30), "white").convert(mode)
    base.save(tmp_path / "a.png")
    with Image.open(io.BytesIO(prepared(tmp_path / "a.png"))) as shown:
        assert shown.size == (40, 30)
        assert min(shown.convert("L").tobytes()) > 200


def test_what_is_see_through_lies_on_white(tmp_path: Path) -> None:
    Image.new("RGBA", (20, 20), (255, 0, 0, 0)).save(tmp_path / "a.png")
    with Image.open(io.BytesIO(prepared(tmp_path / "a.png"))) as shown:
        assert shown.getpixel((10, 10)) == (255, 255, 255)


def test_a_length_out_of_range_is_a_programmer_s_error(tmp_path: Path) -> None:
    with pytest.raises(ValueError, match="longest"):
        prepared(photo(tmp_path / "a.jpg"), 3)


def test_the_original_is_never_touched(tmp_path: Path) -> None:
    path = photo(tmp_path / "a.jpg", exif=exif_of(outer={0x0112: 6}, inner=TAKEN))
    before = path.read_bytes()
    read_picture(path)
    prepared(path)
    assert path.read_bytes() == before
