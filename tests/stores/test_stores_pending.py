"""Whatever lies in ``journal.pending`` and in the journal: the next writer gets through and no byte of a batch is lost."""

import json
import tempfile
from hashlib import sha256
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from witnessmark.journal import to_line
from witnessmark.problems import Refusal
from witnessmark.stores import FolderJournal
from witnessmark.stores.acceptance import sample_entries, sample_pen
from witnessmark.stores.pending import Pending, parse_pending

ENTRIES = sample_entries(sample_pen(), 6)
LINES = [to_line(entry) + b"\n" for entry in ENTRIES]
BATCH = b"".join(LINES[3:5])


@given(st.integers(0, 10**9), st.lists(st.sampled_from(LINES), min_size=1).map(b"".join))
def test_a_pending_batch_comes_back(at: int, batch: bytes) -> None:
    assert parse_pending(Pending(at, batch).encode()) == Pending(at, batch)


@given(st.data())
def test_no_part_of_one_passes_for_the_whole(data: st.DataObject) -> None:
    content = Pending(100, BATCH).encode()
    cut = data.draw(st.integers(0, len(content) - 1))
    assert parse_pending(content[:cut]) is None
    assert parse_pending(content[:cut] + bytes(len(content) - cut)) is None
    assert parse_pending(content[:cut] + bytes([content[cut] ^ 1]) + content[cut + 1 :]) != Pending(100, BATCH)


@given(st.binary(max_size=400))
def test_no_bytes_raise(data: bytes) -> None:
    assert parse_pending(data) is None


@pytest.mark.parametrize("head", [{"at": -1}, {"at": "0"}, {"at": True}, {"at": 1.0}, {}, [], None, 7])
def test_a_head_that_makes_no_sense(head: object) -> None:
    rest = {"size": len(BATCH), "sha256": sha256(BATCH).hexdigest()}
    whole = head | rest if isinstance(head, dict) else head
    assert parse_pending(json.dumps(whole).encode() + b"\n" + BATCH) is None


@settings(max_examples=80, deadline=None)
@given(
    journal=st.lists(st.sampled_from([*LINES[:3], BATCH, b"garbage\n"]), max_size=5).map(b"".join),
    end=st.sampled_from([b"", BATCH[:300], BATCH[:-1], bytes(50), LINES[2][:80], LINES[2][:-1]]),
    at=st.integers(0, 6),
    pending=st.one_of(st.just(b""), st.binary(max_size=60), st.sampled_from(["whole", "half"])),
)
def test_the_next_writer_gets_through(journal: bytes, end: bytes, at: int, pending: bytes | str) -> None:
    with tempfile.TemporaryDirectory() as top:
        folder = Path(top)
        (folder / "journal.jsonl").write_bytes(journal + end)
        offsets = [0, *(i + 1 for i, byte in enumerate(journal) if byte == 10), len(journal + end) + 5]
        content = Pending(offsets[min(at, len(offsets) - 1)], BATCH).encode()
        (folder / "journal.pending").write_bytes(
            content if pending == "whole" else content[:-40] if pending == "half" else bytes(pending)  # type: ignore[arg-type] # text is dealt with before
        )
        before = {entry.id for entry in FolderJournal(folder).read()[0]}
        store = FolderJournal(folder)
        store.append(ENTRIES[5:])
        after = {entry.id for entry in store.read()[0]}
        assert before | {ENTRIES[5].id} <= after
        assert not (folder / "journal.pending").exists()
        left = b"".join(path.read_bytes() for path in folder.glob("journal.*"))
        assert all(line in left for line in (journal + end).splitlines(keepends=True)), "no line was lost"
        if pending == "whole":
            assert all(line in left for line in LINES[3:5])
        if not isinstance(pending, str):
            assert pending in left


def test_a_folder_in_place_of_the_pending_file(tmp_path: Path) -> None:
    (tmp_path / "journal.pending").mkdir()
    with pytest.raises(Refusal) as refusal:
        FolderJournal(tmp_path).append(ENTRIES)
    assert [problem.number for problem in refusal.value.problems] == ["WM302"]
