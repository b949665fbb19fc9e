"""The journal of a job in one SQLite file, for a server that keeps many.

SQLite keeps a batch whole or not at all: a transaction in write-ahead mode (``journal_mode = WAL``) that is synced
before it counts (``synchronous = FULL``). Readers do not wait for writers. Each line is kept as it would stand in
``journal.jsonl``; the other columns are only there to find it. A damaged line counts as not kept, so that a sound copy
of the entry can be brought in again.
"""

from __future__ import annotations

import sqlite3
from collections.abc import Iterator, Sequence
from contextlib import closing, contextmanager
from pathlib import Path
from typing import Final

from witnessmark.journal.codec import from_line
from witnessmark.journal.entry import NO_PREVIOUS, Entry
from witnessmark.problems import Message, Problem, Refusal
from witnessmark.stores import messages
from witnessmark.stores.admission import admit
from witnessmark.stores.lines import LONGEST_LINE, Reader
from witnessmark.stores.locking import PATIENCE

__all__ = ["SqliteJournal"]

#: Marks the file as ours in its header ("WMjl").
_APPLICATION: Final = 0x574D6A6C
_FORM: Final = 1

_TABLES: Final = (
    """CREATE TABLE entries (
        seq INTEGER PRIMARY KEY, id TEXT NOT NULL, device TEXT NOT NULL, n INTEGER NOT NULL, line BLOB NOT NULL
    )""",
    "CREATE INDEX entries_by_id ON entries (id)",
    "CREATE INDEX entries_by_position ON entries (device, n)",
    f"PRAGMA application_id = {_APPLICATION}",
    f"PRAGMA user_version = {_FORM}",
)

_MESSAGES: Final = {
    sqlite3.SQLITE_FULL: messages.DISK_FULL,
    sqlite3.SQLITE_BUSY: messages.BUSY,
    sqlite3.SQLITE_LOCKED: messages.BUSY,
    sqlite3.SQLITE_READONLY: messages.NO_PERMISSION,
    sqlite3.SQLITE_PERM: messages.NO_PERMISSION,
    sqlite3.SQLITE_CANTOPEN: messages.NO_PERMISSION,
    sqlite3.SQLITE_IOERR: messages.CANNOT_WRITE,
    sqlite3.SQLITE_NOTADB: messages.NOT_A_DATABASE,
    sqlite3.SQLITE_CORRUPT: messages.NOT_A_DATABASE,
}


class SqliteJournal:
    """Keeps the entries of one job in one SQLite file. Safe to use from several threads and processes at once.

    Args:
        path: the file; made with the first entry, its folder must exist.
        wait: seconds to wait for another writer.
    """

    def __init__(self, path: Path, *, wait: float = PATIENCE) -> None:
        self.path = path
        self._wait = wait

    def append(self, entries: Sequence[Entry], *, forks: bool = False) -> int:
        """Keep all of the entries or none; see ``JournalStore.append`` and ``admission.admit``."""
        with self._refusing(), closing(self._connect("rwc")) as db:
            db.execute("PRAGMA journal_mode = WAL")
            db.execute("PRAGMA synchronous = FULL")
            db.execute("BEGIN IMMEDIATE")
            try:
                if not self._known(db):
                    for statement in _TABLES:
                        db.execute(statement)
                admitted = admit(entries, _KeptRows(db), str(self.path), forks=forks)
                db.executemany(
                    "INSERT INTO entries (id, device, n, line) VALUES (?, ?, ?, ?)",
                    [(one.entry.id, one.entry.device, one.entry.n, one.line) for one in admitted],
                )
                db.execute("COMMIT")
            except BaseException:
                if db.in_transaction:
                    db.execute("ROLLBACK")
                raise
            return len(admitted)

    def read(self) -> tuple[list[Entry], list[Problem]]:
        """All good entries in the order they came, and what is wrong with the rest."""
        reader = Reader(str(self.path))
        with self._reading() as db:
            if db is not None:
                # A row that is too long is not loaded.
                query = "SELECT seq, length(line), iif(length(line) <= ?, line, NULL) FROM entries ORDER BY seq"
                rows = db.execute(query, (LONGEST_LINE,))
                for seq, length, line in rows:
                    if length > LONGEST_LINE:
                        where = f"{self.path} line {seq}"
                        reader.problem(messages.LINE_TOO_LONG.at(where, f"{length:,} bytes"))
                    else:
                        reader.take(_bytes(line), seq)
        result = reader.done()
        return result.entries, result.problems + result.unread

    def head(self, device: str) -> tuple[int, str]:
        """Count and hash of the device's last entry; ``(0, NO_PREVIOUS)`` when it has none."""
        with self._reading() as db:
            if db is not None:
                query = "SELECT line FROM entries WHERE device = ? ORDER BY n DESC, seq"
                for entry in _sound(db.execute(query, (device,))):
                    return entry.n, entry.hash
        return 0, NO_PREVIOUS

    def _connect(self, mode: str) -> sqlite3.Connection:
        uri = f"{self.path.absolute().as_uri()}?mode={mode}"
        db = sqlite3.connect(uri, timeout=self._wait, isolation_level=None, uri=True)
        db.text_factory = bytes  # a damaged row may hold text that is not UTF-8
        return db

    @contextmanager
    def _reading(self) -> Iterator[sqlite3.Connection | None]:
        """A connection to read with; None while nothing was ever kept."""
        with self._refusing():
            if self.path.is_dir():
                raise Refusal(messages.NOT_A_FILE.at(str(self.path)))
            if not self.path.exists():
                if not self.path.parent.is_dir():
                    raise Refusal(messages.NO_FOLDER.at(str(self.path.parent)))
                yield None
                return
            with closing(self._connect_to_read()) as db:
                db.execute("BEGIN")
                yield db if self._known(db) else None

    def _connect_to_read(self) -> sqlite3.Connection:
        """Where nothing may be written SQLite cannot share the file, and need not: nobody else writes either."""
        try:
            db = self._connect("rw")
            try:
                db.execute("SELECT count(*) FROM sqlite_master")
            except BaseException:
                db.close()
                raise
        except sqlite3.OperationalError as error:
            waiting = self.path.with_name(self.path.name + "-wal")
            if _primary(error) not in {sqlite3.SQLITE_CANTOPEN, sqlite3.SQLITE_READONLY}:
                raise
            if waiting.exists() and waiting.stat().st_size:
                raise  # entries wait there that only a writer can bring in: an older state must not pass as the whole
            return self._connect("ro&immutable=1")
        return db

    def _known(self, db: sqlite3.Connection) -> bool:
        """Whether the file holds our tables already; an empty file does not. Refuses every other file."""
        (application,) = db.execute("PRAGMA application_id").fetchone()
        (form,) = db.execute("PRAGMA user_version").fetchone()
        (tables,) = db.execute("SELECT count(*) FROM sqlite_master").fetchone()
        if tables == application == form == 0:
            return False
        if application != _APPLICATION:
            raise Refusal(messages.NOT_A_DATABASE.at(str(self.path), "it is another program's SQLite database"))
        if form > _FORM:
            raise Refusal(messages.NEWER_DATABASE.at(str(self.path), f"form {form}, known up to {_FORM}"))
        return True

    @contextmanager
    def _refusing(self) -> Iterator[None]:
        try:
            yield
        except sqlite3.Error as error:
            raise Refusal(self._message(error).at(str(self.path), str(error))) from error

    def _message(self, error: sqlite3.Error) -> Message:
        if self.path.is_dir():
            return messages.NOT_A_FILE
        if not self.path.parent.is_dir():
            return messages.NO_FOLDER
        return _MESSAGES.get(_primary(error), messages.DATABASE_FAILED)


class _KeptRows:
    """``admission.Kept`` by looking into the table; the caller holds the write transaction."""

    def __init__(self, db: sqlite3.Connection) -> None:
        self._db = db

    def job(self) -> str | None:
        return next((entry.job for entry in _sound(self._db.execute("SELECT line FROM entries ORDER BY seq"))), None)

    def hash_of(self, entry_id: str) -> str | None:
        rows = self._db.execute("SELECT line FROM entries WHERE id = ? ORDER BY seq", (entry_id,))
        return next((entry.hash for entry in _sound(rows) if entry.id == entry_id), None)

    def at_position(self, device: str, n: int) -> str | None:
        rows = self._db.execute("SELECT line FROM entries WHERE device = ? AND n = ? ORDER BY seq", (device, n))
        return next((entry.id for entry in _sound(rows) if (entry.device, entry.n) == (device, n)), None)


def _sound(rows: sqlite3.Cursor) -> Iterator[Entry]:
    for (line,) in rows:
        entry = from_line(_bytes(line), "row")
        if not isinstance(entry, Problem):
            yield entry


def _bytes(line: object) -> bytes:
    """A line as it was stored; a number, which only a damaged row holds, as its digits."""
    return line if isinstance(line, bytes) else str(line).encode()


def _primary(error: sqlite3.Error) -> int:
    """SQLite's primary result code: the low byte of the extended one."""
    return getattr(error, "sqlite_errorcode", sqlite3.SQLITE_ERROR) & 0xFF
