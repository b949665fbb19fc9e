"""Pictures for pages: small, upright, and stripped of what a camera writes beside them."""

from dataclasses import replace
from io import BytesIO
from pathlib import Path

import pytest
from PIL import ExifTags, Image, ImageCms, ImageFont

from report.small_visit import given, letter_of
from witnessmark.problems import Refusal
from witnessmark.report import Letter, prepare
from witnessmark.report.glyphs import FONTS, REPLACEMENT, covered, fitting
from witnessmark.report.pictures import LONG_SIDE

XMP = b'<x:xmpmeta xmlns:x="adobe:ns:meta/"><exif:GPSLatitude>47,36N</exif:GPSLatitude></x:xmpmeta>'


def photo(path: Path, size: tuple[int, int], orientation: int = 1, **extra: object) -> Path:
    """A photo as a telephone writes it: red above, blue below, with its place, its owner and its orientation."""
    image = Image.new("RGB", size, (200, 40, 40))
    image.paste((40, 40, 200), (0, size[1] // 2, size[0], size[1]))
    exif = Image.Exif()
    exif[ExifTags.Base.Orientation] = orientation
    exif[ExifTags.Base.Artist] = "Somebody Private"
    gps = exif.get_ifd(ExifTags.IFD.GPSInfo)
    gps[ExifTags.GPS.GPSLatitudeRef] = "N"
    gps[ExifTags.GPS.GPSLatitude] = (47.0, 36.0, 0.0)
    image.save(path, "JPEG", exif=exif, xmp=XMP, comment=b"Somebody Private", **extra)
    return path


def letter_with(tmp_path: Path, path: Path) -> Letter:
    letter = letter_of(given(tmp_path / "media"))
    return replace(letter, pictures=(replace(letter.pictures[0], path=path),))


def prepared(tmp_path: Path, path: Path) -> Path:
    made = prepare(letter_with(tmp_path, path), tmp_path / "pictures")
    assert made.problems == ()
    ((name, width, height),) = made.files.values()
    file = made.folder / name
    with Image.open(file) as image:
        assert image.format == "JPEG"
        assert image.size == (width, height)
    return file


def test_place_owner_and_comments_are_gone(tmp_path: Path) -> None:
    source = photo(tmp_path / "a.jpg", (400, 300))
    before = source.read_bytes()
    assert b"GPSLatitude" in before
    assert b"Somebody Private" in before
    after = prepared(tmp_path, source).read_bytes()
    for private in (b"Exif", b"GPS", b"adobe", b"Somebody"):
        assert private not in after
    assert source.read_bytes() == before


@pytest.mark.parametrize(
    ("size", "expected"),
    [
        ((4032, 3024), (1008, 756)),  # the usual 12 megapixels, halved twice while decoding
        ((4000, 3000), (1000, 750)),
        ((8064, 6048), (1008, 756)),
        ((3264, 2448), (816, 612)),
        ((1024, 1024), (1024, 1024)),
        ((1025, 10), (513, 5)),
        ((1, 1), (1, 1)),
        ((9000, 9), (563, 1)),
    ],
)
def test_sizes_are_whole_number_scales_and_never_more_than_the_limit(
    tmp_path: Path, size: tuple[int, int], expected: tuple[int, int]
) -> None:
    with Image.open(prepared(tmp_path, photo(tmp_path / "a.jpg", size))) as image:
        assert image.size == expected
        assert max(image.size) <= LONG_SIDE


@pytest.mark.parametrize("orientation", range(1, 9))
def test_pictures_stand_upright(tmp_path: Path, orientation: int) -> None:
    # Exif 2.3, tag 0x0112: which side of the stored rows is the top; the check is Pillow's own full decode.
    from PIL import ImageOps

    source = photo(tmp_path / "a.jpg", (2048, 1024), orientation)
    with Image.open(source) as full, Image.open(prepared(tmp_path, source)) as small:
        upright = ImageOps.exif_transpose(full)
        assert small.size == (upright.width // 2, upright.height // 2)
        for x, y in ((0.25, 0.1), (0.25, 0.9), (0.1, 0.25), (0.9, 0.25)):
            want = upright.getpixel((int(x * upright.width), int(y * upright.height)))
            have = small.getpixel((int(x * small.width), int(y * small.height)))
            assert isinstance(want, tuple)
            assert isinstance(have, tuple)
            assert all(abs(a - b) < 12 for a, b in zip(want, have, strict=True))


def test_a_colour_profile_stays(tmp_path: Path) -> None:
    profile = ImageCms.ImageCmsProfile(ImageCms.createProfile("sRGB")).tobytes()
    file = prepared(tmp_path, photo(tmp_path / "a.jpg", (200, 100), icc_profile=profile))
    with Image.open(file) as image:
        assert image.info["icc_profile"] == profile


@pytest.mark.parametrize("mode", ["RGBA", "P", "L", "1", "LA"])
def test_other_kinds_of_png_are_laid_over_white(tmp_path: Path, mode: str) -> None:
    path = tmp_path / "a.png"
    Image.new(mode, (300, 200)).save(path)
    with Image.open(prepared(tmp_path, path)) as image:
        assert image.mode in {"RGB", "L"}


def test_a_cmyk_photo_becomes_rgb(tmp_path: Path) -> None:
    path = tmp_path / "a.jpg"
    Image.new("CMYK", (300, 200)).save(path, "JPEG")
    with Image.open(prepared(tmp_path, path)) as image:
        assert image.mode == "RGB"


def garbage() -> list[bytes]:
    whole = BytesIO()
    Image.effect_noise((300, 200), 60).save(whole, "JPEG")
    grey = BytesIO()
    Image.new("I;16", (30, 20)).save(grey, "PNG")
    jpeg = whole.getvalue()
    return [
        b"",
        b"\xff\xd8",
        b"GIF89a",
        jpeg[: len(jpeg) // 2],
        jpeg[:30] + b"\0" * 200,
        grey.getvalue(),
        b"\x89PNG\r\n\x1a\n",
    ]


@pytest.mark.parametrize("data", garbage())
def test_garbage_becomes_a_problem_and_leaves_no_file(tmp_path: Path, data: bytes) -> None:
    path = tmp_path / "a.jpg"
    path.write_bytes(data)
    made = prepare(letter_with(tmp_path, path), tmp_path / "pictures")
    assert [problem.number for problem in made.problems] == ["WM803"]
    assert made.files == {}
    assert list((tmp_path / "pictures").iterdir()) == []


def test_a_file_that_vanished_becomes_a_problem(tmp_path: Path) -> None:
    made = prepare(letter_with(tmp_path, tmp_path / "gone.jpg"), tmp_path / "pictures")
    assert [problem.number for problem in made.problems] == ["WM803"]


def test_what_was_prepared_is_kept_and_what_others_left_is_made_again(tmp_path: Path) -> None:
    file = prepared(tmp_path, photo(tmp_path / "a.jpg", (2048, 1024)))
    good, written = file.read_bytes(), file.stat().st_mtime_ns
    assert prepared(tmp_path, tmp_path / "a.jpg").stat().st_mtime_ns == written
    photo(file, (50, 50))  # somebody else's file under that name
    assert prepared(tmp_path, tmp_path / "a.jpg").read_bytes() == good


def test_progress_counts_up_to_the_whole(tmp_path: Path) -> None:
    told: list[tuple[int, int]] = []
    prepare(
        letter_of(given(tmp_path / "media")), tmp_path / "p", progress=lambda done, whole: told.append((done, whole))
    )
    assert told == [(1, 3), (2, 3), (3, 3)]


def test_a_folder_that_cannot_be_made_is_refused(tmp_path: Path) -> None:
    (tmp_path / "p").write_text("in the way")
    with pytest.raises(Refusal, match="WM809"):
        prepare(letter_of(given(tmp_path / "media")), tmp_path / "p")


@pytest.mark.parametrize("font", sorted(path.name for path in FONTS.iterdir() if path.suffix in {".otf", ".ttf"}))
def test_the_fonts_hold_the_signs_their_tables_say(font: str) -> None:
    # The check is FreeType's own reading of the file: a sign the font lacks is drawn as its .notdef.
    held = covered(FONTS / font)
    face = ImageFont.truetype(str(FONTS / font), 24)

    def drawn(sign: str) -> bytes:
        return bytes(face.getmask(sign)) + repr(face.getbbox(sign)).encode()

    nothing = drawn("\U000ffffd")  # a private code point that no font here holds
    assert 0xFFFFD not in held
    for point in (
        *range(0x21, 0x7F),
        *range(0xA1, 0xAD),
        *range(0xAE, 0x180),
        0x2019,
        0x201C,
        0x20AC,
        0x2212,
        0x05D0,
        0x0645,
        0x4E00,
        0x1F44D,
    ):
        assert (point in held) == (drawn(chr(point)) != nothing), f"U+{point:04X}"


def test_signs_that_no_font_holds_are_replaced_and_named() -> None:
    assert fitting("plain") == ("plain", ())
    assert fitting("naïve “½” − 5′ 3″ 120 °F") == ("naïve “½” − 5′ 3″ 120 °F", ())
    assert fitting("נועה مارين Żółć Ωμέγα Привет") == ("נועה مارين Żółć Ωμέγα Привет", ())
    text, lost = fitting("渋谷 👍🏽 ok")
    assert text == f"{REPLACEMENT}{REPLACEMENT} {REPLACEMENT} ok"
    assert lost == ("渋", "谷", "👍", "🏽")
    assert fitting("a\ufe0fb") == ("ab", ())
    assert fitting("a\u3000b") == ("a b", ())


def test_a_webp_is_shown_like_any_other_picture(tmp_path: Path) -> None:
    image = Image.new("RGB", (2400, 1600), (200, 40, 40))
    image.save(tmp_path / "photo.webp", "WEBP", exif=b"Exif\0\0MM\0*\0\0\0\x08\0\0")
    made = prepared(tmp_path, tmp_path / "photo.webp")
    with Image.open(made) as shown:
        assert shown.format == "JPEG"
        assert shown.size == (800, 534)
        assert not shown.getexif()
