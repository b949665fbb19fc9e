"""Several programs on one job at once, and programs that are killed: whole batches, whole chains, nothing acknowledged lost."""

import random
import signal
import subprocess
import sys
import time
from pathlib import Path

import pytest

from witnessmark.journal import JournalStore, check_chains
from witnessmark.stores import FolderJournal, LocalMedia, SqliteJournal

WRITER = """
import sys
from pathlib import Path
from witnessmark.journal import Pen, Saw
from witnessmark.stores import FolderJournal, SqliteJournal, record
sort, folder, device, worker, batches = sys.argv[1:]
store = FolderJournal(Path(folder)) if sort == "folder" else SqliteJournal(Path(folder) / "journal.sqlite")
for batch in range(int(batches)):
    def make(n, prev):
        pen = Pen("5f0c1f4e-3f5a-4c67-9d3e-2b8f6a1c0d11", "inspector", device, n, prev)
        return [pen.write(Saw(what="x" * 50 * i), component=f"{worker}/{batch}") for i in range(5)]
    record(store, device, make)
    print(f"{worker}/{batch}", flush=True)
"""

MEDIA_WRITER = """
import os, sys
from pathlib import Path
from witnessmark.stores import LocalMedia
media = LocalMedia(Path(sys.argv[1]) / "media")
while True:
    print(media.put(os.urandom(300_000), ".jpg"), flush=True)
"""


def opened(sort: str, folder: Path) -> JournalStore:
    return FolderJournal(folder) if sort == "folder" else SqliteJournal(folder / "journal.sqlite")


def start(sort: str, folder: Path, device: str, worker: str, batches: int) -> subprocess.Popen[str]:
    return subprocess.Popen(
        [sys.executable, "-c", WRITER, sort, str(folder), device, worker, str(batches)],
        stdout=subprocess.PIPE,
        text=True,
    )


def whole_batches(store: JournalStore) -> list[str]:
    """The batches in order, each checked to be whole and in one piece."""
    entries, problems = store.read()
    assert not problems, [str(problem) for problem in problems]
    assert not check_chains(entries)
    names = [entry.component or "" for entry in entries]
    batches = names[::5]
    assert names == [name for name in batches for _ in range(5)]
    assert len(set(batches)) == len(batches)
    return batches


@pytest.mark.parametrize("devices", ["one", "each its own"])
@pytest.mark.parametrize("sort", ["folder", "sqlite"])
def test_programs_writing_at_once_interleave_whole_batches(sort: str, devices: str, tmp_path: Path) -> None:
    writers = [start(sort, tmp_path, "phone" if devices == "one" else f"phone-{i}", str(i), 12) for i in range(3)]
    seen = 0
    while any(writer.poll() is None for writer in writers):
        entries, problems = opened(sort, tmp_path).read()  # a reader sees whole batches at every moment
        assert not problems
        assert len(entries) % 5 == 0
        assert len(entries) >= seen
        seen = len(entries)
    said = [line for writer in writers for line in writer.communicate()[0].split()]
    assert [writer.returncode for writer in writers] == [0, 0, 0]
    assert sorted(whole_batches(opened(sort, tmp_path))) == sorted(said)
    assert len(said) == 36


@pytest.mark.parametrize("sort", ["folder", "sqlite"])
def test_killed_writers_lose_nothing_they_acknowledged(sort: str, tmp_path: Path) -> None:
    """Killed at moments spread over the whole course of a batch; each next program goes on where it stood."""
    moments = random.Random(7)  # noqa: S311 - only spreads the kills
    said: list[str] = []
    for turn in range(8):
        writer = start(sort, tmp_path, "phone", str(turn), 100_000)
        assert writer.stdout is not None
        said += [writer.stdout.readline().strip() for _ in range(moments.randint(1, 5))]
        time.sleep(moments.uniform(0, 0.02))
        writer.send_signal(signal.SIGKILL)
        said += writer.communicate()[0].split()
        kept = whole_batches(opened(sort, tmp_path))
        assert set(said) <= set(kept)
        assert len(set(kept) - set(said)) <= turn + 1, "at most the one batch that was kept but not yet acknowledged"
    assert len(said) == len(set(said)) >= 8


KILLED_AT_CALL = """
import os, signal, sys
call, left, when = sys.argv.pop(1), int(sys.argv.pop(1)), sys.argv.pop(1)
real = getattr(os, call)
def dying(*arguments, **named):
    global left
    left -= 1
    if left == 0 and when == "before":
        os.kill(os.getpid(), signal.SIGKILL)
    if left == 0 and when == "half":
        real(arguments[0], arguments[1][: len(arguments[1]) // 2])
        os.kill(os.getpid(), signal.SIGKILL)
    return real(*arguments, **named)
setattr(os, call, dying)
"""


@pytest.mark.parametrize(
    ("call", "when"), [("write", "before"), ("write", "half"), ("fsync", "before"), ("unlink", "before")]
)
def test_killed_at_each_call_to_the_system(call: str, when: str, tmp_path: Path) -> None:
    """The folder store, killed at the first, second … call of each sort, through a first and a second batch."""
    for count in range(1, {"write": 5, "fsync": 8, "unlink": 3}[call]):
        folder = tmp_path / str(count)
        folder.mkdir()
        result = subprocess.run(
            [
                sys.executable,
                "-c",
                KILLED_AT_CALL + WRITER,
                call,
                str(count),
                when,
                "folder",
                str(folder),
                "phone",
                "w",
                "2",
            ],
            capture_output=True,
            text=True,
            check=False,
        )
        assert result.returncode == -signal.SIGKILL, result.stderr
        said = result.stdout.split()
        kept = whole_batches(FolderJournal(folder))
        assert kept[: len(said)] == said
        assert len(kept) <= len(said) + 1
        again = start("folder", folder, "phone", "again", 1)
        assert again.communicate()[0].split() == ["again/0"]
        assert whole_batches(FolderJournal(folder)) == [*kept, "again/0"]


def test_a_killed_media_writer_leaves_no_half_file(tmp_path: Path) -> None:
    moments = random.Random(11)  # noqa: S311 - only spreads the kills
    said = []
    for _ in range(5):
        writer = subprocess.Popen(
            [sys.executable, "-c", MEDIA_WRITER, str(tmp_path)], stdout=subprocess.PIPE, text=True
        )
        assert writer.stdout is not None
        said.append(writer.stdout.readline().strip())
        time.sleep(moments.uniform(0, 0.05))
        writer.send_signal(signal.SIGKILL)
        said += writer.communicate()[0].split()
    media = LocalMedia(tmp_path / "media")
    assert set(said) <= set(media.hashes())
    assert media.check() == []
