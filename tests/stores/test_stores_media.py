"""Media in a folder: what a person finds there in twenty years, and what becomes of a file that was altered."""

from hashlib import sha256
from pathlib import Path

import pytest

from witnessmark.problems import Refusal
from witnessmark.stores import LocalMedia

PHOTO = b"\xff\xd8\xff\xe0 photo"
DIGEST = sha256(PHOTO).hexdigest()


def test_a_file_lies_under_its_hash_with_its_suffix(tmp_path: Path) -> None:
    media = LocalMedia(tmp_path / "media")
    media.put(PHOTO, ".JPG")
    assert media.path(DIGEST) == tmp_path / "media" / DIGEST[:2] / f"{DIGEST}.jpg"
    assert [path.name for path in media.everything()] == [f"{DIGEST}.jpg"], "nothing else is left in the folder"


def test_the_first_suffix_holds(tmp_path: Path) -> None:
    media = LocalMedia(tmp_path / "media")
    media.put(PHOTO, ".jpg")
    media.put(PHOTO, ".jpeg")
    media.put(PHOTO)
    assert [path.name for path in media.everything()] == [f"{DIGEST}.jpg"]


def test_an_altered_file_is_told_and_kept_beside_the_original(tmp_path: Path) -> None:
    media = LocalMedia(tmp_path / "media")
    media.put(PHOTO, ".jpg")
    path = media.path(DIGEST)
    assert path is not None
    for number, edited in enumerate((b"turned by a viewer", b"turned again"), 1):
        path.write_bytes(edited)
        problems = media.check()
        assert [problem.number for problem in problems] == ["WM331"]
        assert problems[0].where == str(path)
        assert sha256(edited).hexdigest() in problems[0].detail
        assert media.put(PHOTO, ".jpg") == DIGEST
        assert path.read_bytes() == PHOTO
        assert path.with_name(f"{DIGEST}.altered-{number}.jpg").read_bytes() == edited
        assert media.check() == []
        assert list(media.hashes()) == [DIGEST]


def test_an_emptied_and_a_lengthened_file_are_altered(tmp_path: Path) -> None:
    media = LocalMedia(tmp_path / "media")
    path = media.path(media.put(PHOTO, ".jpg"))
    assert path is not None
    for content in (b"", PHOTO + b"\0"):
        path.write_bytes(content)
        assert [problem.number for problem in media.check([DIGEST])] == ["WM331"]


def test_a_file_larger_than_any_buffer(tmp_path: Path) -> None:
    big = tmp_path / "walk.mp4"
    big.write_bytes(bytes(range(256)) * 40_000)
    media = LocalMedia(tmp_path / "media")
    digest = media.put_file(big)
    assert digest == sha256(big.read_bytes()).hexdigest()
    assert media.check() == []


def test_strange_files_are_no_media(tmp_path: Path) -> None:
    media = LocalMedia(tmp_path / "media")
    media.put(PHOTO, ".jpg")
    (tmp_path / "media" / DIGEST[:2] / "Thumbs.db").write_bytes(b"x")
    (tmp_path / "media" / "zz").mkdir()
    (tmp_path / "media" / "zz" / f"{DIGEST}.jpg").write_bytes(PHOTO)
    (tmp_path / "media" / DIGEST[:2] / f"{DIGEST.upper()}.jpg").write_bytes(PHOTO)
    assert list(media.hashes()) == [DIGEST]
    assert media.check() == []


def test_no_media_folder_can_be_made(tmp_path: Path) -> None:
    (tmp_path / "media").write_bytes(b"a file")
    media = LocalMedia(tmp_path / "media")
    assert media.path(DIGEST) is None
    for folder in (tmp_path / "media", tmp_path / "nowhere" / "media"):
        with pytest.raises(Refusal) as refusal:
            LocalMedia(folder).put(PHOTO, ".jpg")
        assert [problem.number for problem in refusal.value.problems] == ["WM301"]
    assert (tmp_path / "media").read_bytes() == b"a file"
