"""Crash loop: step 1, 2, 3 … of writing fails, the store is opened again, and all of the batch is there or none.

The method is that of SQLite's testing page (https://www.sqlite.org/testing.html, sections 3.2 and 3.3): an injected
file system fails at one step, either once or, like a loss of power, from then on; and after a loss of power what was
not synced is there not at all, in half, whole, or as zeros (a file system may record the new size before the data),
with the names of the folder as last synced, as last seen, or with only the removals seen.

Long because the failing file system and the loops that run on it belong together.
"""

import errno
import itertools
import os
import shutil
from collections.abc import Callable, Iterable
from contextlib import AbstractContextManager, suppress
from dataclasses import dataclass
from pathlib import Path

import pytest

from witnessmark.journal import NO_PREVIOUS, Entry, Job, Pen, Saw, check_chains
from witnessmark.problems import Refusal
from witnessmark.stores import (
    FolderJournal,
    LocalMedia,
    RealFileSystem,
    new_job_folder,
    read_job,
    write_job,
)
from witnessmark.stores.acceptance import sample_entries, sample_pen


@pytest.fixture(autouse=True)
def _no_waiting_for_the_disk(monkeypatch: pytest.MonkeyPatch) -> None:
    # The loss of power is played, so nothing here depends on what is really on the disk, and syncing takes long.
    monkeypatch.setattr(os, "fsync", lambda _: None)


@dataclass(frozen=True)
class Loss:
    """What a loss of power leaves of what was not synced."""

    data: str  # none, half, all, zeros
    names: str  # synced, seen, or only the removals seen: folders keep no order of their own


LOSSES = [Loss(data, names) for data in ("none", "half", "all", "zeros") for names in ("synced", "seen", "removals")]


class DeadError(OSError):
    """The machine has stopped."""


class FailingFileSystem:
    """The real file system, except that step *fail_at* fails: once (no *loss*), or for ever with the loss given.

    Knows what was synced: the content of each file, and the names in each folder.
    """

    def __init__(self, fail_at: int, loss: Loss | None, number: int = errno.EIO) -> None:
        self.steps = 0
        self._real = RealFileSystem()
        self._fail_at = fail_at
        self._loss = loss
        self._number = number
        self._synced: dict[Path, bytes] = {}
        self._undo: list[tuple[Path, bool, Callable[[], None]]] = []  # folder, whether a removal, how
        self.dead = False

    @property
    def failed(self) -> bool:
        return self.steps >= self._fail_at

    def _step(self) -> bool:
        """Count a step; True when it is the one that fails."""
        if self.dead:
            raise DeadError(errno.EIO, "the machine has stopped")
        self.steps += 1
        return self.steps == self._fail_at

    def _fail(self) -> None:
        if self._loss is not None:
            self.dead = True
        raise OSError(self._number, "injected")

    def _touch(self, path: Path) -> None:
        """Remember what is durable of a file before its content changes."""
        if not path.exists():
            self._synced[path] = b""
            self._undo.append((path.parent, False, lambda: path.unlink(missing_ok=True)))
        else:
            self._synced.setdefault(path, path.read_bytes())

    def lock(self, path: Path, *, wait: float) -> AbstractContextManager[None]:
        if self._step():
            self._fail()
        return self._real.lock(path, wait=wait)

    def make_folder(self, path: Path) -> None:
        if self._step():
            self._fail()
        if not path.exists():
            self._undo.append((path.parent, False, lambda: shutil.rmtree(path)))
        self._real.make_folder(path)

    def write(self, path: Path, chunks: Iterable[bytes]) -> None:
        failing = self._step()
        self._touch(path)
        data = b"".join(chunks)
        self._real.write(path, [data[: len(data) // 2]] if failing else [data])
        if failing:
            self._fail()

    def append(self, path: Path, data: bytes) -> None:
        failing = self._step()
        self._touch(path)
        self._real.append(path, data[: len(data) // 2] if failing else data)
        if failing:
            self._fail()

    def truncate(self, path: Path, size: int) -> None:
        if self._step():
            self._fail()
        self._touch(path)
        self._real.truncate(path, size)

    def sync(self, path: Path) -> None:
        if self._step():
            self._fail()
        self._real.sync(path)
        self._synced.pop(path, None)

    def sync_folder(self, path: Path) -> None:
        if self._step():
            self._fail()
        self._real.sync_folder(path)
        self._undo = [step for step in self._undo if step[0] != path]

    def rename(self, old: Path, new: Path) -> None:
        if self._step():
            self._fail()
        before = new.read_bytes() if new.exists() else None

        def undo() -> None:
            new.rename(old)
            if before is not None:
                new.write_bytes(before)

        self._undo.append((new.parent, False, undo))
        if old in self._synced:
            self._synced[new] = self._synced.pop(old)
        self._real.rename(old, new)

    def remove(self, path: Path) -> None:
        if self._step():
            self._fail()
        if path.exists():
            content = path.read_bytes()

            def undo() -> None:
                path.write_bytes(content)

            self._undo.append((path.parent, True, undo))
        self._synced.pop(path, None)
        self._real.remove(path)

    def lose_power(self) -> None:
        """Leave on the disk what the loss of power leaves."""
        assert self._loss is not None
        for path, durable in self._synced.items():
            seen = path.read_bytes()
            if self._loss.data == "none":
                path.write_bytes(durable)
            elif seen.startswith(durable) and self._loss.data != "all":
                lost = len(seen) - len(durable)
                path.write_bytes(
                    seen[: len(durable) + lost // 2] if self._loss.data == "half" else durable + bytes(lost)
                )
        if self._loss.names != "seen":
            for _, removal, undo in reversed(self._undo):
                if self._loss.names == "synced" or not removal:
                    undo()


def loop(loss: Loss | None, run: Callable[[FailingFileSystem, int], None], most: int = 60) -> int:
    """Run with step 1, 2, 3 … failing until a run needs fewer steps; give the number of steps."""
    for fail_at in itertools.count(1):
        assert fail_at < most, "the loop does not come to an end"
        files = FailingFileSystem(fail_at, loss)
        run(files, fail_at)
        if not files.failed:
            return fail_at - 1
    raise AssertionError


def next_batch(entries: list[Entry], size: int = 3) -> list[Entry]:
    last = entries[-1] if entries else None
    return sample_entries(sample_pen("phone", len(entries), last.hash if last else NO_PREVIOUS), size)


def check(folder: Path, before: list[Entry], batch: list[Entry], *, refused: bool) -> None:
    """All of the batch or none; the rest as it was; readers and writers agree; writing goes on."""
    read_only, problems = FolderJournal(folder).read()
    assert not problems
    assert read_only in (before, before + batch)
    if not refused:
        assert read_only == before + batch
    store = FolderJournal(folder)
    assert store.head("phone") == ((read_only[-1].n, read_only[-1].hash) if read_only else (0, NO_PREVIOUS))
    more = next_batch(read_only)
    assert store.append(more) == len(more)
    assert FolderJournal(folder).read() == (read_only + more, [])
    assert store.read() == (read_only + more, [])
    assert not check_chains(read_only + more)
    assert not (folder / "journal.pending").exists()


@pytest.mark.parametrize("earlier", [0, 2], ids=["first batch", "later batch"])
@pytest.mark.parametrize("loss", [None, *LOSSES], ids=str)
def test_a_batch_is_kept_whole_or_not_at_all(loss: Loss | None, earlier: int, tmp_path: Path) -> None:
    kept_at_crash = set()

    def run(files: FailingFileSystem, fail_at: int) -> None:
        folder = tmp_path / str(fail_at)
        folder.mkdir()
        before: list[Entry] = []
        for _ in range(earlier):
            before += next_batch(before)
            FolderJournal(folder).append(before)
        journal = folder / "journal.jsonl"
        bytes_before = journal.read_bytes() if before else b""
        batch = next_batch(before)
        store = FolderJournal(folder, files)
        try:
            store.append(batch)
        except Refusal:
            refused = True
        else:
            refused = False
        if loss is None and refused:
            # The drive failed once: the step was taken back at once, to the byte, and the same object goes on.
            assert (journal.read_bytes() if journal.exists() else b"") == bytes_before
            assert FolderJournal(folder).read()[0] == before
            assert store.append(batch) == len(batch)
            assert store.read() == (before + batch, [])
            return
        if loss is not None:
            files.lose_power()  # also after a run without failure: what was kept must outlast it
            kept_at_crash.add(len(FolderJournal(folder).read()[0]) - len(before))
        check(folder, before, batch, refused=refused)

    steps = loop(loss, run)
    assert steps >= 7
    if loss is not None:
        assert kept_at_crash == {0, 3}, "some crash should have come too early, and some late enough"


@pytest.mark.parametrize("earlier", [0, 1], ids=["first batch", "later batch"])
@pytest.mark.parametrize("loss", LOSSES, ids=str)
def test_a_crash_while_mending_a_crash(loss: Loss, earlier: int, tmp_path: Path) -> None:
    """Every step of the mending fails too, after every sort of crash that leaves something to mend."""
    mended = 0
    for first in range(1, 9):
        made = tmp_path / f"made-{first}"
        made.mkdir()
        before = next_batch([]) if earlier else []
        FolderJournal(made).append(before)
        batch = next_batch(before)
        files = FailingFileSystem(first, loss)
        refused = False
        try:
            FolderJournal(made, files).append(batch)
        except Refusal:
            refused = True
        if loss is not None:
            files.lose_power()
        held = FolderJournal(made).read()[0]

        def run(
            files: FailingFileSystem, fail_at: int, made: Path = made, held: list[Entry] = held, first: int = first
        ) -> None:
            folder = tmp_path / f"mend-{first}-{fail_at}"
            shutil.copytree(made, folder)
            more = next_batch(held)
            refused = False
            try:
                FolderJournal(folder, files).append(more)
            except Refusal:
                refused = True
            files.lose_power()
            check(folder, held, more, refused=refused)

        mended += loop(loss, run) > 8
        check(made, before, batch, refused=refused)
    assert mended, "some crash should have left something to mend"


@pytest.mark.parametrize("loss", [None, *LOSSES], ids=str)
def test_a_torn_end_survives_every_crash(loss: Loss | None, tmp_path: Path) -> None:
    """What another program left unfinished is moved away and never lost, whatever step fails."""

    def run(files: FailingFileSystem, fail_at: int) -> None:
        folder = tmp_path / str(fail_at)
        folder.mkdir()
        before = next_batch([])
        FolderJournal(folder).append(before)
        with (folder / "journal.jsonl").open("ab") as journal:
            journal.write(b'{"act":"saw","at":"2026-03')
        batch = next_batch(before)
        with suppress(Refusal):
            FolderJournal(folder, files).append(batch)
        if loss is not None:
            files.lose_power()
        store = FolderJournal(folder)
        store.append(batch)
        assert store.read() == (before + batch, [])
        torn = [path.read_bytes() for path in folder.glob("journal.torn-*.jsonl")]
        assert b'{"act":"saw","at":"2026-03' in torn

    assert loop(loss, run) >= 11


@pytest.mark.parametrize("loss", [None, *LOSSES], ids=str)
def test_media_are_kept_whole_or_not_at_all(loss: Loss | None, tmp_path: Path) -> None:
    old, new = b"old picture" * 1000, b"new picture" * 3000

    def run(files: FailingFileSystem, fail_at: int) -> None:
        folder = tmp_path / str(fail_at)
        folder.mkdir()
        kept = LocalMedia(folder / "media").put(old, ".jpg") if fail_at % 2 else None
        try:
            digest = LocalMedia(folder / "media", files).put(new, ".jpg")
        except Refusal:
            digest = None
        if loss is not None:
            files.lose_power()
        media = LocalMedia(folder / "media")
        assert media.check() == []
        if digest is not None:
            assert media.path(digest) is not None
        if loss is None:
            assert [path for path in media.everything() if ".incoming-" in path.name] == []
        again = media.put(new, ".jpg")
        assert sorted(media.hashes()) == sorted({again, kept or again})
        assert media.check() == []

    assert loop(loss, run) >= 6


@pytest.mark.parametrize("loss", [None, *LOSSES], ids=str)
def test_facts_are_replaced_in_one_step(loss: Loss | None, tmp_path: Path) -> None:
    old = Job(id="5f0c1f4e-3f5a-4c67-9d3e-2b8f6a1c0d11", address="1 Invented Lane", invented=True)
    new = Job(id=old.id, address="2 Invented Lane", client="A. Client", invented=True)

    def run(files: FailingFileSystem, fail_at: int) -> None:
        folder = tmp_path / str(fail_at) / "jobs" / "one"
        new_job_folder(folder, old)
        refused = False
        try:
            write_job(folder, new, files)
        except Refusal:
            refused = True
        if loss is not None:
            files.lose_power()
        assert read_job(folder) in ((old, new) if refused else (new,))
        write_job(folder, new)
        assert read_job(folder) == new

    assert loop(loss, run) == 4


@pytest.mark.parametrize("loss", [None, *LOSSES], ids=str)
def test_a_new_job_folder_can_be_made_after_a_crash(loss: Loss | None, tmp_path: Path) -> None:
    job = Job(id="5f0c1f4e-3f5a-4c67-9d3e-2b8f6a1c0d11", invented=True)

    def run(files: FailingFileSystem, fail_at: int) -> None:
        top = tmp_path / str(fail_at)
        top.mkdir()
        folder = top / "jobs" / "one"
        refused = False
        try:
            new_job_folder(folder, job, files)
        except Refusal:
            refused = True
        if loss is not None:
            files.lose_power()
        if not (folder / "job.toml").exists():
            assert refused
            new_job_folder(folder, job)
        assert read_job(folder) == job

    assert loop(loss, run) >= 8


def test_the_loop_bites(tmp_path: Path) -> None:
    """A store that appends without a pending file fails the same check."""

    class Careless:
        def __init__(self, folder: Path, files: FailingFileSystem) -> None:
            self.path, self.files = folder / "journal.jsonl", files

        def append(self, lines: bytes) -> None:
            self.files.append(self.path, lines)
            self.files.sync(self.path)

    from witnessmark.journal import to_line  # only this check writes lines itself

    torn = 0
    for fail_at, loss in itertools.product((1, 2), LOSSES):
        folder = tmp_path / f"{fail_at}-{loss.data}-{loss.names}"
        folder.mkdir()
        before = next_batch([])
        FolderJournal(folder).append(before)
        batch = next_batch(before)
        files = FailingFileSystem(fail_at, loss)
        with pytest.raises(OSError, match="injected"):
            Careless(folder, files).append(b"".join(to_line(entry) + b"\n" for entry in batch))
        files.lose_power()
        torn += len(FolderJournal(folder).read()[0]) not in (3, 6) or bool(FolderJournal(folder).read()[1])
    assert torn >= 2


def test_an_unsure_end_is_said(tmp_path: Path) -> None:
    """When the drive fails again while a batch is taken back, the refusal says that the batch may still come."""
    before = next_batch([])
    FolderJournal(tmp_path).append(before)
    batch = next_batch(before)
    files = FailingFileSystem(5, Loss("all", "seen"))  # the append itself, and everything after it
    with pytest.raises(Refusal) as refusal:
        FolderJournal(tmp_path, files).append(batch)
    assert [problem.number for problem in refusal.value.problems] == ["WM309", "WM304"]
    assert FolderJournal(tmp_path).append(batch) == 0, "the batch was completed, so writing it again adds nothing"
    assert FolderJournal(tmp_path).read() == (before + batch, [])


def test_pens_go_on_after_a_refusal(tmp_path: Path) -> None:
    store = FolderJournal(tmp_path, FailingFileSystem(5, None, errno.ENOSPC))
    pen = Pen("5f0c1f4e-3f5a-4c67-9d3e-2b8f6a1c0d11", "inspector", "phone", *store.head("phone"))
    with pytest.raises(Refusal) as refusal:
        store.append([pen.write(Saw(what="soot"))])
    assert [problem.number for problem in refusal.value.problems] == ["WM305"]
    pen = Pen(pen.job, "inspector", "phone", *store.head("phone"))
    assert store.append([pen.write(Saw(what="soot"))]) == 1
