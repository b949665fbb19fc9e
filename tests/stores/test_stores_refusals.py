"""A full disk, a folder that may not be written, a writer that does not end: a numbered refusal, and nothing changes."""

import os
import resource
import subprocess
import sys
import tempfile
import threading
import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path

import pytest

from witnessmark.journal import Job
from witnessmark.problems import Refusal
from witnessmark.stores import (
    FolderJournal,
    LocalMedia,
    RealFileSystem,
    SqliteJournal,
    new_job_folder,
    read_job,
    verify_folder,
    write_job,
)
from witnessmark.stores.acceptance import sample_entries, sample_pen
from witnessmark.stores.locking import locked

ENTRIES = sample_entries(sample_pen(), 6)
JOB = Job(id=ENTRIES[0].job, address="1 Invented Lane", invented=True)
NOBODY = 65534


def numbers(act: Callable[[], object]) -> list[str]:
    with pytest.raises(Refusal) as refusal:
        act()
    return [problem.number for problem in refusal.value.problems]


def everything(folder: Path) -> dict[str, bytes]:
    return {str(path.relative_to(folder)): path.read_bytes() for path in sorted(folder.rglob("*")) if path.is_file()}


@pytest.fixture
def job() -> Iterator[Path]:
    """A job folder with three entries and a photo, in a place that everybody may reach."""
    with tempfile.TemporaryDirectory() as top:
        Path(top).chmod(0o755)
        folder = Path(top) / "job"
        new_job_folder(folder, JOB)
        FolderJournal(folder).append(ENTRIES[:3])
        SqliteJournal(folder / "journal.sqlite").append(ENTRIES[:3])
        LocalMedia(folder / "media").put(b"photo", ".jpg")
        yield folder


@contextmanager
def read_only(folder: Path) -> Iterator[None]:
    """Take away the right to write; as root, become somebody who has no rights of their own."""
    paths = [folder, *folder.rglob("*")]
    modes = [(path, path.stat().st_mode) for path in paths]
    for path in paths:
        path.chmod(0o555 if path.is_dir() else 0o444)
    root = os.geteuid() == 0
    if root:
        os.seteuid(NOBODY)
    try:
        yield
    finally:
        if root:
            os.seteuid(0)
        for path, mode in modes:
            path.chmod(mode)


def test_a_read_only_folder_can_be_read_and_is_not_changed(job: Path) -> None:
    before = everything(job)
    with read_only(job):
        journal, sqlite, media = FolderJournal(job), SqliteJournal(job / "journal.sqlite"), LocalMedia(job / "media")
        assert numbers(lambda: journal.append(ENTRIES)) == ["WM306"]
        assert numbers(lambda: sqlite.append(ENTRIES)) == ["WM306"]
        assert numbers(lambda: media.put(b"other", ".jpg")) == ["WM306"]
        assert numbers(lambda: write_job(job, JOB)) == ["WM306"]
        assert journal.read() == sqlite.read() == (ENTRIES[:3], [])
        assert journal.head("phone") == sqlite.head("phone") == (3, ENTRIES[2].hash)
        assert read_job(job) == JOB
        assert media.check() == []
        assert verify_folder(job).sound
    assert everything(job) == before
    assert FolderJournal(job).append(ENTRIES) == 3


def test_a_crashed_batch_is_read_where_nothing_may_be_written(job: Path) -> None:
    """The pending file of a crash is read in place of the part that did not reach the journal."""
    journal = job / "journal.jsonl"
    old = journal.read_bytes()
    seen = []

    class StopsDead(RealFileSystem):
        def append(self, path: Path, data: bytes) -> None:
            super().append(path, data[:700])
            raise KeyboardInterrupt  # the program dies: nothing is taken back

    with pytest.raises(KeyboardInterrupt):
        FolderJournal(job, StopsDead()).append(ENTRIES)
    assert len(journal.read_bytes()) == len(old) + 700
    with read_only(job):
        seen.append(FolderJournal(job).read())
        seen.append((FolderJournal(job).head("phone"), []))  # type: ignore[arg-type] # a tuple for the comparison below
        assert numbers(lambda: FolderJournal(job).append(ENTRIES)) == ["WM306"]
    assert seen == [(ENTRIES, []), ((6, ENTRIES[5].hash), [])]
    assert FolderJournal(job).append(ENTRIES) == 0
    assert FolderJournal(job).read() == (ENTRIES, [])


def test_files_that_may_not_be_read(job: Path) -> None:
    (job / "journal.jsonl").chmod(0)
    (job / "job.toml").chmod(0)
    root = os.geteuid() == 0
    if root:
        os.seteuid(NOBODY)
    try:
        assert numbers(FolderJournal(job).read) == ["WM303"]
        assert numbers(lambda: read_job(job)) == ["WM303"]
        assert [problem.number for problem in verify_folder(job).problems] == ["WM303", "WM303"]
    finally:
        if root:
            os.seteuid(0)


FULL = """
import resource, sys
from pathlib import Path
from witnessmark.problems import Refusal
from witnessmark.stores import FolderJournal, LocalMedia, SqliteJournal
from witnessmark.stores.acceptance import sample_entries, sample_pen
folder, sort, limit = Path(sys.argv[1]), sys.argv[2], int(sys.argv[3])
resource.setrlimit(resource.RLIMIT_FSIZE, (limit, limit))
store = {"folder": lambda: FolderJournal(folder), "sqlite": lambda: SqliteJournal(folder / "journal.sqlite")}
try:
    if sort == "media":
        LocalMedia(folder / "media").put(b"x" * 400_000, ".bin")
    else:
        journal = store[sort]()
        journal.append(sample_entries(sample_pen("desk"), 400))
except Refusal as refusal:
    print(*[problem.number for problem in refusal.problems])
else:
    print("kept")
"""


@pytest.mark.parametrize("sort", ["folder", "sqlite", "media"])
def test_no_file_may_grow(job: Path, sort: str) -> None:
    """A limit on the size of files stands for a full disk: it needs no rights and no device of its own."""
    before = everything(job)
    for limit in (0, 1000, 5000, 20_000, 80_000):
        result = subprocess.run(
            [sys.executable, "-c", FULL, str(job), sort, str(limit)], capture_output=True, text=True, check=True
        )
        # SQLite tells such a limit as an input or output error.
        assert result.stdout.split() == (["WM304"] if sort == "sqlite" else ["WM305"]), result.stdout + result.stderr
        if sort != "sqlite":
            assert everything(job) == before
        assert FolderJournal(job).read() == (ENTRIES[:3], [])
        assert SqliteJournal(job / "journal.sqlite").read() == (ENTRIES[:3], [])
        assert LocalMedia(job / "media").check() == []
    assert FolderJournal(job).append(ENTRIES) == 3
    assert SqliteJournal(job / "journal.sqlite").append(ENTRIES) == 3


@pytest.fixture
def small_disk(tmp_path: Path) -> Iterator[Path]:
    if os.geteuid() != 0:
        pytest.skip("mounting a small disk needs root; the limit on file sizes above needs nothing")
    place = tmp_path / "disk"
    place.mkdir()
    mount = subprocess.run(
        ["mount", "-t", "tmpfs", "-o", "size=200k", "tmpfs", str(place)], capture_output=True, check=False
    )
    if mount.returncode:
        pytest.skip("mounting is not allowed here; the limit on file sizes above needs nothing")
    try:
        yield place
    finally:
        subprocess.run(["umount", str(place)], check=True)


@pytest.mark.parametrize("sort", ["folder", "sqlite"])
def test_a_full_disk(small_disk: Path, sort: str) -> None:
    """A real disk fills up: every batch is kept whole or refused, and after making room writing goes on."""
    (small_disk / "job").mkdir()
    store = FolderJournal(small_disk / "job") if sort == "folder" else SqliteJournal(small_disk / "job" / "j.sqlite")
    filler = small_disk / "filler"
    filler.write_bytes(b"x" * 60_000)
    kept = sample_entries(sample_pen(), 3)
    store.append(kept)

    def fill() -> None:
        for _ in range(200):
            batch = sample_entries(sample_pen("phone", len(kept), kept[-1].hash), 10)
            store.append(batch)
            kept.extend(batch)

    assert numbers(fill) == ["WM305"]
    assert store.read() == (kept, [])
    filler.unlink()
    batch = sample_entries(sample_pen("phone", len(kept), kept[-1].hash), 10)
    assert store.append(batch) == 10
    assert store.read() == (kept + batch, [])


def test_a_writer_that_does_not_end(job: Path) -> None:
    before = everything(job)
    with locked(job / "journal.lock", alone=True):
        started = time.monotonic()
        assert numbers(lambda: FolderJournal(job, wait=0.05).append(ENTRIES)) == ["WM307"]
        assert numbers(FolderJournal(job, wait=0.05).read) == ["WM307"]
        assert time.monotonic() - started < 5
    assert everything(job) == before
    assert FolderJournal(job, wait=0.05).append(ENTRIES) == 3


def test_a_writer_waits_for_another(job: Path) -> None:
    begun = threading.Event()

    def hold() -> None:
        with locked(job / "journal.lock", alone=True):
            begun.set()
            time.sleep(0.2)

    holder = threading.Thread(target=hold)
    holder.start()
    begun.wait()
    assert FolderJournal(job).append(ENTRIES) == 3
    holder.join()


def test_readers_hold_the_lock_together(job: Path) -> None:
    with locked(job / "journal.lock", alone=False):
        assert FolderJournal(job, wait=0.05).read() == (ENTRIES[:3], [])
        assert numbers(lambda: FolderJournal(job, wait=0.05).append(ENTRIES)) == ["WM307"]


def test_a_drive_without_locks(job: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    import errno
    import fcntl  # only this test plays such a drive

    def flock(handle: int, operation: int) -> None:
        del handle, operation
        raise OSError(errno.ENOLCK, "No locks available")

    monkeypatch.setattr(fcntl, "flock", flock)
    assert numbers(lambda: FolderJournal(job).append(ENTRIES)) == ["WM308"]
    assert FolderJournal(job).read() == (ENTRIES[:3], [])


def test_a_locked_database(job: Path) -> None:
    import sqlite3  # only this test holds a database

    path = job / "journal.sqlite"
    db = sqlite3.connect(path, isolation_level=None)
    db.execute("BEGIN IMMEDIATE")
    assert numbers(lambda: SqliteJournal(path, wait=0.05).append(ENTRIES)) == ["WM307"]
    assert SqliteJournal(path, wait=0.05).read() == (ENTRIES[:3], []), "readers do not wait for writers"
    db.execute("ROLLBACK")
    db.close()


def test_a_new_job_goes_into_no_other_folder(tmp_path: Path, job: Path) -> None:
    before = everything(job)
    assert numbers(lambda: new_job_folder(job, JOB)) == ["WM344"]
    assert everything(job) == before
    (tmp_path / "file").write_bytes(b"x")
    assert numbers(lambda: new_job_folder(tmp_path / "file", JOB)) == ["WM344"]
    (tmp_path / "empty").mkdir()
    new_job_folder(tmp_path / "empty", JOB)
    assert read_job(tmp_path / "empty") == JOB


def test_facts_that_are_not_there(tmp_path: Path) -> None:
    assert numbers(lambda: read_job(tmp_path)) == ["WM340"]
    assert numbers(lambda: read_job(tmp_path / "nowhere")) == ["WM301"]
    (tmp_path / "job.toml").mkdir()
    assert numbers(lambda: read_job(tmp_path)) == ["WM302"]
    assert numbers(lambda: write_job(tmp_path, JOB)) == ["WM302"]


def test_limits_of_this_test_do_not_leak() -> None:
    assert resource.getrlimit(resource.RLIMIT_FSIZE)[0] == resource.RLIM_INFINITY
