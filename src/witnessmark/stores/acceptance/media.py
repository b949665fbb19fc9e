"""What every media store must do."""

from __future__ import annotations

import tempfile
from collections.abc import Callable
from concurrent.futures import ThreadPoolExecutor
from hashlib import sha256
from pathlib import Path
from typing import Final

from witnessmark.journal.ports import MediaStore
from witnessmark.stores import messages
from witnessmark.stores.acceptance.samples import expect, refused

__all__ = ["MEDIA_CHECKS", "MediaOpener"]

MediaOpener = Callable[[], MediaStore]


def _lies(store: MediaStore, digest: str, data: bytes) -> Path:
    path = store.path(digest)
    if path is None:
        raise AssertionError("expected the file to lie somewhere")
    expect(path.read_bytes() == data, "expected the file to hold what was kept")
    return path


def no_media_at_first(opener: MediaOpener) -> None:
    """A new place holds nothing, and looking does not change that."""
    for _ in range(2):
        expect(list(opener().hashes()) == [], "expected no media")
        expect(opener().check() == [], "expected nothing wrong")
        expect(opener().path("ab" * 32) is None, "expected no path")


def keeps_bytes_under_their_hash(opener: MediaOpener) -> None:
    """Bytes of any size come back under their SHA-256, once, with the suffix of their type."""
    store = opener()
    for data in (b"", b"\xff\xd8\xff\xe0 a picture", bytes(range(256)) * 12_000):
        digest = store.put(data, ".JPG")
        expect(digest == sha256(data).hexdigest(), "expected the SHA-256")
        expect(store.put(data, ".jpg") == digest, "expected the same hash again")
        expect(_lies(opener(), digest, data).suffix == ".jpg", "expected the suffix of the type")
    expect(len(list(opener().hashes())) == 3, "expected each file once")  # noqa: PLR2004 - as many as were put
    expect(list(opener().hashes()) == sorted(opener().hashes()), "expected the hashes in order")
    expect(opener().check() == [], "expected nothing wrong")


def keeps_a_copy_of_a_file(opener: MediaOpener) -> None:
    """A file is copied; what happens to the original later does not matter."""
    with tempfile.TemporaryDirectory() as folder:
        original = Path(folder) / "voice note.WAV"
        original.write_bytes(b"RIFF" * 500_000)
        digest = opener().put_file(original)
        original.write_bytes(b"changed")
        expect(_lies(opener(), digest, b"RIFF" * 500_000).suffix == ".wav", "expected the suffix of the type")
        expect(opener().put(b"RIFF" * 500_000) == digest, "expected the same hash for the same bytes")
        expect(list(opener().hashes()) == [digest], "expected one file")


def odd_suffixes_do_no_harm(opener: MediaOpener) -> None:
    """A suffix that is no plain one is left out, and leads nowhere."""
    store = opener()
    for number, suffix in enumerate(("/../../x", ".tar.gz/..", "..", ".\x00", ". jpg", "." + "x" * 300, "jpeg", "")):
        data = f"file {number}".encode()
        path = _lies(store, store.put(data, suffix), data)
        expect(path.suffix in ("", ".jpeg"), f"expected a plain suffix, got {path.suffix!r}")
    expect(opener().check() == [], "expected nothing wrong")


def refuses_what_is_no_file(opener: MediaOpener) -> None:
    """What cannot be read is refused with its number, and nothing is kept."""
    with tempfile.TemporaryDirectory() as folder:
        refused(lambda: opener().put_file(Path(folder) / "not there.jpg"), messages.MEDIA_SOURCE)
        refused(lambda: opener().put_file(Path(folder)), messages.NOT_A_FILE)
    expect(list(opener().hashes()) == [], "expected nothing to be kept")


def says_what_is_missing(opener: MediaOpener) -> None:
    """A hash under which nothing lies, and a word that is no hash, are told; kept files are not."""
    store = opener()
    digest = store.put(b"here", ".txt")
    problems = store.check([digest, "ab" * 32, "../../etc", digest])
    numbers = [problem.number for problem in problems]
    expect(sorted(numbers) == ["WM330", "WM335"], f"expected WM330 and WM335, got {numbers}")
    expect("ab" * 32 in problems[0].where + problems[0].detail, "expected the problem to name the hash")
    expect(store.path("../../etc") is None, "expected no path for what is no hash")


def many_may_keep_the_same_file(opener: MediaOpener) -> None:
    """Threads that keep the same files at once keep each once."""
    data = [bytes([number]) * 100_000 for number in range(4)]
    with ThreadPoolExecutor(4) as pool:
        digests = list(pool.map(lambda number: opener().put(data[number % 4], ".bin"), range(16)))
    expect(sorted(set(digests)) == list(opener().hashes()), "expected each file once")
    expect(opener().check() == [], "expected nothing wrong")


#: What a media store must do.
MEDIA_CHECKS: Final[tuple[Callable[[MediaOpener], None], ...]] = (
    no_media_at_first,
    keeps_bytes_under_their_hash,
    keeps_a_copy_of_a_file,
    odd_suffixes_do_no_harm,
    refuses_what_is_no_file,
    says_what_is_missing,
    many_may_keep_the_same_file,
)
