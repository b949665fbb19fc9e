"""Whatever happened to a journal file: each bad line is told with its number, and every good entry comes back."""

import io
import os
import tracemalloc
from dataclasses import replace
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from witnessmark.journal import Entry, to_line, with_hash
from witnessmark.problems import Refusal
from witnessmark.stores import FolderJournal, MemoryJournal, SqliteJournal, journal_file
from witnessmark.stores.acceptance import sample_entries, sample_pen
from witnessmark.stores.lines import LONGEST_LINE, MOST_PROBLEMS, read_lines

ENTRIES = sample_entries(sample_pen(), 6)
LINES = [to_line(entry) for entry in ENTRIES]


def journal(folder: Path, *lines: bytes) -> FolderJournal:
    (folder / "journal.jsonl").write_bytes(b"".join(line + b"\n" for line in lines))
    return FolderJournal(folder)


def told(store: FolderJournal) -> list[tuple[str, str]]:
    """Number and line of every problem."""
    return [(problem.number, problem.where.rsplit("/", 1)[1]) for problem in store.read()[1]]


def test_a_bad_byte(tmp_path: Path) -> None:
    store = journal(tmp_path, LINES[0], LINES[1].replace(b"scorched", b"sc\xf6rched"), LINES[2])
    assert told(store) == [("WM201", "journal.jsonl line 2")]
    assert store.read()[0] == [ENTRIES[0], ENTRIES[2]]


def test_latin_1(tmp_path: Path) -> None:
    line = to_line(with_hash(replace(ENTRIES[1], place="k\u00fcche", hash=""))).decode().encode("latin-1")
    store = journal(tmp_path, LINES[0], line, LINES[2])
    assert told(store) == [("WM201", "journal.jsonl line 2")]


def test_a_truncated_line_in_the_middle(tmp_path: Path) -> None:
    store = journal(tmp_path, LINES[0], LINES[1][:100], *LINES[2:])
    assert told(store) == [("WM201", "journal.jsonl line 2")]
    assert store.read()[0] == [ENTRIES[0], *ENTRIES[2:]]


def test_a_wrong_hash(tmp_path: Path) -> None:
    store = journal(tmp_path, LINES[0], LINES[1].replace(b"scorched", b"spotless"), LINES[2])
    assert told(store) == [("WM205", "journal.jsonl line 2")]
    assert store.read()[0] == [ENTRIES[0], ENTRIES[2]]


def test_an_entry_twice(tmp_path: Path) -> None:
    store = journal(tmp_path, *LINES, LINES[2])
    assert told(store) == [("WM314", "journal.jsonl line 7")]
    assert store.read()[0] == ENTRIES
    assert store.append(ENTRIES) == 0


def test_an_id_for_two_entries(tmp_path: Path) -> None:
    other = with_hash(replace(ENTRIES[2], by="somebody else", hash=""))
    store = journal(tmp_path, *LINES, to_line(other))
    assert told(store) == [("WM315", "journal.jsonl line 7")]
    assert store.read()[0] == ENTRIES
    assert store.read()[1][0].entries == (ENTRIES[2].id,)


def test_an_act_of_a_newer_release(tmp_path: Path) -> None:
    newer = to_line(ENTRIES[2]).replace(b'"act":"took"', b'"act":"flew"')
    from hashlib import sha256  # only this test makes a line by hand

    own = sha256(newer.replace(b'"hash":"%b",' % ENTRIES[2].hash.encode(), b"")).hexdigest()
    store = journal(tmp_path, *LINES[:2], newer.replace(ENTRIES[2].hash.encode(), own.encode()))
    assert told(store) == [("WM207", "journal.jsonl line 3")]
    assert [entry.act for entry in store.read()[0]] == ["placed", "saw", "flew"]


def test_a_blank_line(tmp_path: Path) -> None:
    store = journal(tmp_path, LINES[0], b"", b"  ", LINES[1])
    assert told(store) == [("WM313", "journal.jsonl line 2"), ("WM313", "journal.jsonl line 3")]
    assert store.read()[0] == ENTRIES[:2]


def test_an_empty_file(tmp_path: Path) -> None:
    store = journal(tmp_path)
    assert told(store) == [("WM316", "journal.jsonl")]
    assert store.append(ENTRIES) == 6
    assert store.read() == (ENTRIES, [])


def test_no_file_yet_is_no_problem(tmp_path: Path) -> None:
    assert FolderJournal(tmp_path).read() == ([], [])
    assert list(tmp_path.iterdir()) == [], "reading leaves nothing behind"


def test_line_ends_changed_by_another_program(tmp_path: Path) -> None:
    store = journal(tmp_path, b"\xef\xbb\xbf" + LINES[0] + b"\r", *(line + b"\r" for line in LINES[1:]))
    assert told(store) == [("WM318", "journal.jsonl line 1"), ("WM318", "journal.jsonl line 1")]
    assert store.read()[0] == ENTRIES
    more = sample_entries(sample_pen("phone", 6, ENTRIES[-1].hash), 1)
    assert store.append(more) == 1
    assert store.read()[0] == ENTRIES + more


def test_another_encoding_altogether(tmp_path: Path) -> None:
    (tmp_path / "journal.jsonl").write_bytes(b"\n".join(LINES).decode().encode("utf-16"))
    entries, problems = FolderJournal(tmp_path).read()
    assert entries == []
    assert problems


@pytest.mark.parametrize("cut", [1, 2, 100, len(LINES[5]) - 1])
def test_a_torn_last_line_is_moved_by_the_next_writer(tmp_path: Path, cut: int) -> None:
    whole = b"".join(line + b"\n" for line in LINES)
    (tmp_path / "journal.jsonl").write_bytes(whole[: -1 - cut])
    store = FolderJournal(tmp_path)
    assert told(store) == [("WM310", "journal.jsonl line 6")]
    assert store.read()[0] == ENTRIES[:5]
    assert (tmp_path / "journal.jsonl").read_bytes() == whole[: -1 - cut], "reading changes nothing"
    assert store.head("phone") == (5, ENTRIES[4].hash)
    assert store.append(ENTRIES) == 1
    assert store.read() == (ENTRIES, [])
    assert [problem.number for problem in store.set_aside] == ["WM311"]
    (torn,) = tmp_path.glob("journal.torn-*.jsonl")
    assert torn.name in str(store.set_aside[0])
    assert torn.read_bytes() == LINES[5][:-cut]


def test_a_last_line_without_its_newline_is_an_entry(tmp_path: Path) -> None:
    (tmp_path / "journal.jsonl").write_bytes(b"\n".join(LINES[:3]))
    store = FolderJournal(tmp_path)
    assert store.read() == (ENTRIES[:3], [])
    assert store.head("phone") == (3, ENTRIES[2].hash)
    assert store.append(ENTRIES[3:]) == 3
    assert store.read() == (ENTRIES, [])
    assert list(tmp_path.glob("journal.torn-*")) == []


def test_many_torn_ends_are_all_kept(tmp_path: Path) -> None:
    for number in range(4):
        with (tmp_path / "journal.jsonl").open("ab") as file:
            file.write(b"torn %d" % number)
        FolderJournal(tmp_path).append(ENTRIES[number : number + 1])
    assert FolderJournal(tmp_path).read() == (ENTRIES[:4], [])
    torn = sorted(path.read_bytes() for path in tmp_path.glob("journal.torn-*"))
    assert torn == [b"torn 0", b"torn 1", b"torn 2", b"torn 3"]


def test_another_object_sees_what_was_mended(tmp_path: Path) -> None:
    """An object that has seen the torn end must not go on reading from the middle of the next line."""
    store = journal(tmp_path, *LINES[:2])
    with (tmp_path / "journal.jsonl").open("ab") as file:
        file.write(LINES[2][:50])
    assert store.head("phone") == (2, ENTRIES[1].hash)
    FolderJournal(tmp_path).append(ENTRIES[2:5])
    assert store.head("phone") == (5, ENTRIES[4].hash)
    assert store.append(ENTRIES) == 1


def test_a_sound_copy_of_a_damaged_entry_can_be_brought_in(tmp_path: Path) -> None:
    store = journal(tmp_path, LINES[0], LINES[1].replace(b"scorched", b"spotless"), LINES[2])
    assert store.append(ENTRIES[:3]) == 1
    assert [entry.id for entry in store.read()[0]] == [ENTRIES[0].id, ENTRIES[2].id, ENTRIES[1].id]


def test_a_folder_in_place_of_the_file(tmp_path: Path) -> None:
    (tmp_path / "journal.jsonl").mkdir()
    store = FolderJournal(tmp_path)
    for act in (store.read, lambda: store.head("phone"), lambda: store.append(ENTRIES)):
        with pytest.raises(Refusal) as refusal:
            act()
        assert [problem.number for problem in refusal.value.problems] == ["WM302"]


@pytest.mark.parametrize("there", ["nothing", "a file"])
def test_no_job_folder(tmp_path: Path, there: str) -> None:
    folder = tmp_path / "job"
    if there == "a file":
        folder.write_bytes(b"x")
    store = FolderJournal(folder)
    for act in (store.read, lambda: store.head("phone"), lambda: store.append(ENTRIES)):
        with pytest.raises(Refusal) as refusal:
            act()
        assert [problem.number for problem in refusal.value.problems] == ["WM301"]


def test_a_line_that_is_too_long_is_passed_over(tmp_path: Path) -> None:
    store = journal(tmp_path, LINES[0], b"x" * (LONGEST_LINE + 1), LINES[1], b"y" * (3 * LONGEST_LINE + 7), LINES[2])
    assert told(store) == [("WM312", "journal.jsonl line 2"), ("WM312", "journal.jsonl line 4")]
    assert store.read()[0] == ENTRIES[:3]


def test_two_hundred_megabytes_in_one_line(tmp_path: Path) -> None:
    """Memory stays bounded, the good entries around it come back, and the next writer loses nothing of it."""
    with (tmp_path / "journal.jsonl").open("wb") as file:
        file.write(LINES[0] + b"\n")
        file.seek(200_000_000, os.SEEK_CUR)  # a hole, read as zeros
        file.write(b"\n" + LINES[1] + b"\n")
    tracemalloc.start()
    entries, problems = FolderJournal(tmp_path).read()
    _, peak = tracemalloc.get_traced_memory()
    tracemalloc.stop()
    assert entries == ENTRIES[:2]
    assert [problem.number for problem in problems] == ["WM312"]
    assert peak < 10 * LONGEST_LINE


def test_a_huge_torn_end(tmp_path: Path) -> None:
    with (tmp_path / "journal.jsonl").open("wb") as file:
        file.write(LINES[0] + b"\n")
        file.truncate(20_000_000)
    store = FolderJournal(tmp_path)
    assert told(store) == [("WM312", "journal.jsonl line 2")]
    assert store.append(ENTRIES[1:2]) == 1
    assert store.read() == (ENTRIES[:2], [])
    (torn,) = tmp_path.glob("journal.torn-*")
    assert torn.stat().st_size == 20_000_000 - len(LINES[0]) - 1


def test_a_flood_of_bad_lines_is_counted_not_listed(tmp_path: Path) -> None:
    store = journal(tmp_path, LINES[0], *([b"garbage"] * 5000), LINES[1])
    entries, problems = store.read()
    assert entries == ENTRIES[:2]
    assert len(problems) == MOST_PROBLEMS + 1
    assert problems[-1].number == "WM317"
    assert "5,000 times WM201" in str(problems[-1])


@given(
    st.lists(st.sampled_from([*LINES, b"", b"garbage", b"\xff", LINES[0][:40], b"{}", b"null", b"[" * 5000])),
    st.binary(),
)
def test_any_mixture_gives_every_good_entry(lines: list[bytes], end: bytes) -> None:
    data = b"".join(line + b"\n" for line in lines) + end
    result = read_lines(io.BytesIO(data), "mixture", len(data))
    wanted = list(dict.fromkeys(line for line in lines if line in LINES))
    assert [to_line(entry) for entry in result.entries] == wanted
    assert result.size == len(data)
    assert result.whole == data.rfind(b"\n") + 1
    assert len(result.problems) >= bool(len(lines) - len(wanted))


@given(st.binary(max_size=300), st.integers(0, 5))
def test_no_bytes_raise(data: bytes, cut: int) -> None:
    read_lines(io.BytesIO(data), "bytes", max(0, len(data) - cut), LINES[0] + b"\n")


def test_memory_tells_newer_acts_too() -> None:
    store = MemoryJournal()
    store.append(ENTRIES)
    assert store.read() == (ENTRIES, [])


def damaged_sqlite(path: Path, statement: str, *values: object) -> SqliteJournal:
    import sqlite3  # only this damages a database

    store = SqliteJournal(path)
    store.append(ENTRIES)
    db = sqlite3.connect(path)
    db.execute(statement, values)
    db.commit()
    db.close()
    return store


@pytest.mark.parametrize(
    ("statement", "value", "number"),
    [
        ("UPDATE entries SET line = ? WHERE seq = 3", b"garbage", "WM201"),
        ("UPDATE entries SET line = ? WHERE seq = 3", LINES[2][:80], "WM201"),
        ("UPDATE entries SET line = ? WHERE seq = 3", LINES[2].replace(b"p1.jpg", b"p2.jpg"), "WM205"),
        ("UPDATE entries SET line = ? WHERE seq = 3", "text \u20ac", "WM201"),
        ("UPDATE entries SET line = ? WHERE seq = 3", 7, "WM204"),
        ("UPDATE entries SET line = ? WHERE seq = 3", b"", "WM313"),
        ("UPDATE entries SET line = CAST(? AS TEXT) WHERE seq = 3", b"\xff\xfe", "WM201"),
        ("UPDATE entries SET line = ? WHERE seq = 3", b"x" * (LONGEST_LINE + 1), "WM312"),
    ],
)
def test_a_damaged_row(tmp_path: Path, statement: str, value: object, number: str) -> None:
    store = damaged_sqlite(tmp_path / "journal.sqlite", statement, value)
    entries, problems = store.read()
    assert [problem.number for problem in problems] == [number]
    assert "line 3" in problems[0].where
    assert entries == [*ENTRIES[:2], *ENTRIES[3:]]
    assert store.append(ENTRIES) == 1, "a sound copy can be brought in"
    assert store.read()[0] == [*ENTRIES[:2], *ENTRIES[3:], ENTRIES[2]]


def test_the_last_row_of_a_device_is_damaged(tmp_path: Path) -> None:
    store = damaged_sqlite(tmp_path / "journal.sqlite", "UPDATE entries SET line = ? WHERE seq = 6", b"x")
    assert store.head("phone") == (5, ENTRIES[4].hash)


@pytest.mark.parametrize(
    ("content", "number"),
    [
        (b"plain text, no database at all, but long enough to be one" * 20, "WM350"),
        (b"SQLite format 3\0garbage" * 90, "WM350"),
    ],
)
def test_no_database(tmp_path: Path, content: bytes, number: str) -> None:
    path = tmp_path / "journal.sqlite"
    path.write_bytes(content)
    store = SqliteJournal(path)
    for act in (store.read, lambda: store.head("phone"), lambda: store.append(ENTRIES)):
        with pytest.raises(Refusal) as refusal:
            act()
        assert [problem.number for problem in refusal.value.problems] == [number]
    assert path.read_bytes() == content


@pytest.mark.parametrize(
    ("statement", "number"), [("CREATE TABLE others (x)", "WM350"), ("PRAGMA user_version = 3", "WM350")]
)
def test_another_programs_database(tmp_path: Path, statement: str, number: str) -> None:
    import sqlite3  # only this makes one

    path = tmp_path / "journal.sqlite"
    db = sqlite3.connect(path)
    db.execute(statement)
    db.commit()
    db.close()
    for act in (SqliteJournal(path).read, lambda: SqliteJournal(path).append(ENTRIES)):
        with pytest.raises(Refusal) as refusal:
            act()
        assert [problem.number for problem in refusal.value.problems] == [number]


def test_a_database_of_a_newer_release(tmp_path: Path) -> None:
    store = damaged_sqlite(tmp_path / "journal.sqlite", "PRAGMA user_version = 2")
    for act in (store.read, lambda: store.append(ENTRIES)):
        with pytest.raises(Refusal) as refusal:
            act()
        assert [problem.number for problem in refusal.value.problems] == ["WM351"]


def test_a_database_in_no_folder(tmp_path: Path) -> None:
    (tmp_path / "folder").mkdir()
    for path, number in ((tmp_path / "not there" / "j.sqlite", "WM301"), (tmp_path / "folder", "WM302")):
        for act in (SqliteJournal(path).read, lambda path=path: SqliteJournal(path).append(ENTRIES)):
            with pytest.raises(Refusal) as refusal:
                act()
            assert [problem.number for problem in refusal.value.problems] == [number]


def test_every_entry_is_of_one_kind_of_line(tmp_path: Path) -> None:
    """What one store wrote another reads: the line is the same everywhere."""
    FolderJournal(tmp_path).append(ENTRIES)
    assert (tmp_path / "journal.jsonl").read_bytes() == b"".join(line + b"\n" for line in LINES)
    entries: list[Entry] = FolderJournal(tmp_path).read()[0]
    store = SqliteJournal(tmp_path / "journal.sqlite")
    store.append(entries)
    assert store.read() == (ENTRIES, [])


def test_a_journal_begun_after_the_look_is_no_empty_journal(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """The first writer makes the file between a reader's look at the folder and its reading."""
    look = journal_file.view_of

    def look_then_begun(folder: Path, wait: float) -> journal_file.View:
        view = look(folder, wait)
        (folder / journal_file.JOURNAL).touch()
        return view

    monkeypatch.setattr(journal_file, "view_of", look_then_begun)
    assert journal_file.read_journal(tmp_path) is None
