"""Every store passes the one suite that is shipped with them."""

from collections.abc import Callable
from pathlib import Path

import pytest

from witnessmark.stores import FolderJournal, LocalMedia, MemoryJournal, MemoryMedia, SqliteJournal
from witnessmark.stores.acceptance import JOURNAL_CHECKS, MEDIA_CHECKS, JournalOpener, MediaOpener


def in_memory(folder: Path) -> JournalOpener:
    del folder
    store = MemoryJournal()
    return lambda: store


def in_a_folder(folder: Path) -> JournalOpener:
    return lambda: FolderJournal(folder)


def in_sqlite(folder: Path) -> JournalOpener:
    return lambda: SqliteJournal(folder / "journal.sqlite")


def media_in_memory(folder: Path) -> MediaOpener:
    del folder
    store = MemoryMedia()
    return lambda: store


def media_in_a_folder(folder: Path) -> MediaOpener:
    return lambda: LocalMedia(folder / "media")


@pytest.mark.parametrize("check", JOURNAL_CHECKS, ids=lambda check: check.__name__)
@pytest.mark.parametrize("place", [in_memory, in_a_folder, in_sqlite], ids=lambda place: place.__name__)
def test_journals(
    check: Callable[[JournalOpener], None], place: Callable[[Path], JournalOpener], tmp_path: Path
) -> None:
    check(place(tmp_path))


@pytest.mark.parametrize("check", MEDIA_CHECKS, ids=lambda check: check.__name__)
@pytest.mark.parametrize("place", [media_in_memory, media_in_a_folder], ids=lambda place: place.__name__)
def test_media(check: Callable[[MediaOpener], None], place: Callable[[Path], MediaOpener], tmp_path: Path) -> None:
    check(place(tmp_path))
