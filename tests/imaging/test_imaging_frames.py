"""Thermal frames: what is read from them, what is refused, how they are drawn; and the demo's frames against ISO 6946."""

import io
import json
from collections.abc import Callable
from itertools import pairwise
from pathlib import Path
from typing import Literal

import pytest
from PIL import Image

import witnessmark
from witnessmark.imaging import COLOURS, Frame, describe, frame_picture, prepared, read_frame, read_picture
from witnessmark.imaging.frame_picture import LEAST_RANGE, scale_of
from witnessmark.problems import Refusal

VISIT = Path(witnessmark.__file__).parent / "demo" / "visit"


def tiff(
    path: Path, values: list[int], size: tuple[int, int], description: str | None = None, mode: str = "I;16"
) -> Path:
    order: Literal["big", "little"] = "big" if mode == "I;16B" else "little"
    data = b"".join(value.to_bytes(2, order) for value in values)
    info = {270: description} if description is not None else {}
    Image.frombytes(mode, size, data).save(path, "TIFF", tiffinfo=info)
    return path


def refused(call: Callable[..., object], *args: object) -> str:
    with pytest.raises(Refusal) as caught:
        call(*args)
    return caught.value.problems[0].number


@pytest.mark.parametrize("mode", ["I;16", "I;16B"])
def test_values_are_kelvin_times_a_hundred_in_either_byte_order(tmp_path: Path, mode: str) -> None:
    # 0 °C is 273.15 K (ITS-90, definition of the Celsius scale), so 20 °C is stored as 29315.
    frame = read_frame(tiff(tmp_path / "t.tif", [29315, 27315, 31015, 29315, 29415, 29515], (3, 2), mode=mode))
    assert (frame.width, frame.height) == (3, 2)
    assert frame.spot(0, 0) == 20.0
    assert (frame.coldest.x, frame.coldest.y, frame.coldest.celsius) == (1, 0, 0.0)
    assert (frame.warmest.x, frame.warmest.y, frame.warmest.celsius) == (2, 0, 37.0)
    assert frame.median == 20.5


def test_the_description_gives_what_the_camera_was_set_to(tmp_path: Path) -> None:
    stated = {
        "emissivity": 0.95,
        "reflected_c": 20.4,
        "distance_m": 2.6,
        "taken_at": "2026-10-14T10:42:00-07:00",
        "invented": True,
    }
    path = tiff(tmp_path / "t.tif", [29315] * 4, (2, 2), json.dumps(stated))
    frame = read_frame(path)
    assert (frame.emissivity, frame.reflected, frame.distance, frame.invented) == (0.95, 20.4, 2.6, True)
    seen = read_picture(path)
    assert (seen.sort, seen.mime, seen.taken_at, seen.problems) == ("thermal", "image/tiff", stated["taken_at"], ())


@pytest.mark.parametrize(
    "text",
    [
        '{"emissivity": 1.2}',
        '{"emissivity": true}',
        '{"taken_at": "2026-10-14 10:42"}',
        '{"distance_m": -1}',
        "{",
        "{" * 9,
        '{"invented": "yes"}',
    ],
)
def test_what_cannot_be_used_is_named_and_the_temperatures_stay(tmp_path: Path, text: str) -> None:
    frame = read_frame(tiff(tmp_path / "t.tif", [29315] * 4, (2, 2), text))
    assert [p.number for p in frame.problems] == ["WM714"]
    assert frame.median == 20.0


def test_plain_words_in_the_description_are_no_problem(tmp_path: Path) -> None:
    assert read_frame(tiff(tmp_path / "t.tif", [29315] * 4, (2, 2), "north wall")).problems == ()


def test_other_pictures_are_no_frames(tmp_path: Path) -> None:
    Image.new("RGB", (8, 8)).save(tmp_path / "a.tif")
    Image.new("L", (8, 8)).save(tmp_path / "b.tif")
    Image.new("F", (8, 8)).save(tmp_path / "c.tif")
    Image.new("RGB", (8, 8)).save(tmp_path / "d.jpg")
    for name in ("a.tif", "b.tif", "c.tif", "d.jpg"):
        assert refused(read_frame, tmp_path / name) == "WM712"
    pages = [Image.new("I;16", (8, 8), 29315) for _ in range(2)]
    pages[0].save(tmp_path / "e.tif", save_all=True, append_images=pages[1:])
    assert refused(read_frame, tmp_path / "e.tif") == "WM708"
    assert refused(prepared, tiff(tmp_path / "f.tif", [29315] * 4, (2, 2))) == "WM712"


@pytest.mark.parametrize("value", [2000, 200, 0, 14000])
def test_another_scale_is_not_taken_for_temperatures(tmp_path: Path, value: int) -> None:
    assert refused(read_frame, tiff(tmp_path / "t.tif", [value] * 16, (4, 4))) == "WM713"


def test_a_pixel_without_reading_is_none_and_does_not_count(tmp_path: Path) -> None:
    frame = read_frame(tiff(tmp_path / "t.tif", [0] + [29315] * 15, (4, 4)))
    assert frame.spot(0, 0) is None
    assert frame.coldest.celsius == 20.0
    with Image.open(io.BytesIO(frame_picture(frame))) as drawn:
        assert drawn.getpixel((30, 30)) == (255, 255, 255)


@pytest.mark.parametrize(("x", "y"), [(-1, 0), (0, -1), (4, 0), (0, 4)])
def test_a_spot_outside_is_refused(tmp_path: Path, x: int, y: int) -> None:
    frame = read_frame(tiff(tmp_path / "t.tif", [29315] * 16, (4, 4)))
    assert refused(frame.spot, x, y) == "WM715"


def test_too_large_a_frame_is_refused(tmp_path: Path) -> None:
    Image.new("I;16", (2500, 2000), 29315).save(tmp_path / "t.tif", compression="tiff_adobe_deflate")
    assert refused(read_frame, tmp_path / "t.tif") == "WM707"


def _lightness(colour: tuple[int, int, int]) -> float:
    """CIE 1976 lightness of an sRGB colour (IEC 61966-2-1; CIE 15:2018)."""
    linear = [c / 12.92 if c <= 0.04045 else ((c + 0.055) / 1.055) ** 2.4 for c in (v / 255 for v in colour)]
    y = sum(share * value for share, value in zip((0.2126, 0.7152, 0.0722), linear, strict=True))
    return 116 * y ** (1 / 3) - 16 if y > (6 / 29) ** 3 else y * (29 / 3) ** 3


def test_the_palette_grows_lighter_in_even_steps() -> None:
    light = [_lightness(colour) for colour in COLOURS]
    assert all(b > a for a, b in pairwise(light[::4]))  # finer steps drown in the rounding to 8 bits
    slope = (light[-1] - light[0]) / 255
    assert max(abs(value - light[0] - slope * i) for i, value in enumerate(light)) < 3.0


def test_the_palette_is_the_published_one() -> None:
    # viridis, CC0 1.0, as listed in matplotlib 3.10 (_cm_listed.py), rounded to 8 bits.
    assert [COLOURS[i] for i in (0, 64, 128, 192, 255)] == [
        (68, 1, 84),
        (59, 82, 139),
        (33, 145, 140),
        (94, 201, 98),
        (253, 231, 37),
    ]


def test_a_frame_without_contrast_is_not_stretched_to_its_noise(tmp_path: Path) -> None:
    frame = read_frame(tiff(tmp_path / "t.tif", [29315, 29320] * 8, (4, 4)))
    low, high = scale_of(frame)
    assert high - low == pytest.approx(LEAST_RANGE)
    with Image.open(io.BytesIO(frame_picture(frame))) as drawn:
        # Two neighbouring pixels 0.05 K apart, each drawn 220 pixels wide.
        one, other = (drawn.crop((x, 600, x + 1, 601)).tobytes() for x in (134, 354))
        assert one != other
        assert max(abs(a - b) for a, b in zip(one, other, strict=True)) <= 8


def test_the_sentence_gives_both_units_and_places(tmp_path: Path) -> None:
    frame = read_frame(tiff(tmp_path / "t.tif", [29315] * 8 + [30315], (3, 3)))
    words = describe(frame)
    # 30 °C is 86 °F: the definition of the Fahrenheit scale by NIST SP 811, appendix B.9.
    assert "86.0 °F (30.0 °C), lower right" in words
    assert "68.0 °F (20.0 °C), upper left" in words


# The layers of the invented wall, inside to outside, as resistances in m²·K/W by ISO 6946:2017, 6.7.1 (R = Σ d/λ) with
# the surface resistances of its table 7; the conductivities are those of ISO 10456:2007, table 3.
_INNER, _OUTER = 0.13, 0.04
_BOARDS = 0.012 / 0.25 + 0.012 / 0.13 + 0.012 / 0.12
_INSULATED, _EMPTY = 0.088 / 0.040, 0.088 / 0.55
_INSIDE, _OUTSIDE = 20.6, 11.1


def _surface(cavity: float) -> float:
    whole = _INNER + _BOARDS + cavity + _OUTER
    return _INSIDE - _INNER / whole * (_INSIDE - _OUTSIDE)


def _mean(frame: Frame, columns: range, rows: range = range(50, 60)) -> float:
    return sum(frame.spot(x, y) or 0.0 for x in columns for y in rows) / (len(columns) * len(rows))


def _column(metres: float) -> int:
    """The pixel column that looks at this place along the wall: 160 columns see 0.02 m to 2.42 m."""
    return round((metres - 0.02) / 2.40 * 159)


_STUDS = [n * 16 * 0.0254 for n in range(1, 6)]
_MIDDLES = [(n + 0.5) * 16 * 0.0254 for n in range(1, 5)]


@pytest.mark.parametrize(
    ("metres", "cavity"),
    [(_MIDDLES[0], _INSULATED), (_MIDDLES[1], _INSULATED), (_MIDDLES[2], _EMPTY), (_MIDDLES[3], _INSULATED)],
)
def test_bays_of_the_demo_wall_have_the_surface_temperature_of_iso_6946(metres: float, cavity: float) -> None:
    # In the middle of a bay heat flows straight through; the drift of the camera and the pull of the studs stay below 0.15 K.
    frame = read_frame(VISIT / "thermal" / "t01.tif")
    middle = _column(metres)
    assert _mean(frame, range(middle - 3, middle + 4)) == pytest.approx(_surface(cavity), abs=0.15)


def test_studs_of_the_demo_wall_are_colder_than_the_bays_between_them() -> None:
    frame = read_frame(VISIT / "thermal" / "t01.tif")
    below = range(85, 108)  # under the gap, all bays are insulated
    for stud, bay in zip(_STUDS[:4], _MIDDLES, strict=True):
        at_stud, at_bay = (_mean(frame, range(_column(x) - 1, _column(x) + 2), below) for x in (stud, bay))
        assert 0.1 < at_bay - at_stud < 0.6


def test_the_dry_stain_shows_no_contrast_and_the_warm_breaker_does() -> None:
    ceiling, panel = (read_frame(VISIT / "thermal" / f"{name}.tif") for name in ("t03", "t04"))
    assert ceiling.warmest.celsius - ceiling.coldest.celsius < 1.0
    assert panel.warmest.celsius - panel.median > 10
    others = panel.spot(118, 20)
    assert others is not None
    assert others - panel.median < 2


def test_the_noise_of_the_demo_frames_is_that_of_the_camera_they_pretend_to_be() -> None:
    # NETD 50 mK and 15 mK of column noise; neighbours in a column differ only by noise where the wall is even.
    frame = read_frame(VISIT / "thermal" / "t01.tif")
    middle = _column(_MIDDLES[0])
    steps = [
        (frame.spot(x, y + 1) or 0.0) - (frame.spot(x, y) or 0.0)
        for x in range(middle - 5, middle + 6)
        for y in range(10, 105)
    ]
    spread = (sum(step**2 for step in steps) / len(steps) / 2) ** 0.5
    assert 0.045 < spread < 0.056


ROLL = {
    "photos": {
        "p01": "09:04:42", "p02": "09:06:44", "p03": "09:09:34", "p04": "09:10:24", "p05": "09:13:28", "p06": "09:14:24",
        "p07": "09:15:48", "p08": "09:16:44", "p09": "09:19:14", "p10": "09:20:06", "p11": "09:21:44", "p12": "09:28:10",
        "p13": "09:30:44", "p14": "09:32:52", "p15": "09:39:54", "p16": "09:46:12", "p17": "09:44:28", "p18": "09:51:22",
        "p19": "09:52:34", "p20": "09:55:18", "p21": "09:57:24", "p22": "10:02:22", "p23": "10:16:18", "p24": "10:21:04",
        "p25": "10:22:14", "p26": "10:31:04", "p27": "10:33:44", "p28": "10:46:06", "p29": "10:49:20", "p30": "10:52:40",
        "p31": "10:56:34", "p32": "11:00:02", "p33": "11:06:12", "p34": "11:08:04", "p35": "11:10:12", "p36": "11:16:00",
    },
    "thermal": {"t01": "10:42:44", "t02": "10:43:24", "t03": "10:16:32", "t04": "11:01:22"},
}  # fmt: skip


@pytest.mark.parametrize("folder", sorted(ROLL))
def test_the_demo_pictures_are_there_timed_marked_as_invented_and_without_place(folder: str) -> None:
    files = {path.stem: path for path in (VISIT / folder).iterdir() if path.suffix in {".jpg", ".tif"}}
    assert sorted(files) == sorted(ROLL[folder])
    for stem, clock in ROLL[folder].items():
        seen = read_picture(files[stem])
        assert (stem, seen.taken_at) == (stem, f"2026-10-14T{clock}-07:00")
        assert seen.problems == ()
        assert seen.bytes <= 120_000
        with Image.open(files[stem]) as image:
            exif = image.getexif()
            assert "nvented" in exif[270] or '"invented": true' in exif[270]
            assert exif[305] == "Witnessmark demo renderer"
            assert not exif.get_ifd(0x8825)
    assert sum(path.stat().st_size for path in files.values()) <= 4_500_000
