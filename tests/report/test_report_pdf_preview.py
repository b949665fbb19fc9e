"""The preview: the same files as the report, from a process that remembers, is replaced and may end."""

from __future__ import annotations

import os
import signal
from dataclasses import replace
from pathlib import Path

import pytest

from report.small_visit import given, letter_of
from witnessmark.problems import Refusal
from witnessmark.report import Letter, prepare, write_html, write_pdf
from witnessmark.report.preview import Preview


@pytest.fixture
def letter(tmp_path: Path) -> Letter:
    return letter_of(given(tmp_path / "media"))


def changed(letter: Letter, words: str) -> Letter:
    """The letter with one finding changed."""
    first, *others = letter.stakes
    finding, *more = first.findings
    finding = replace(finding, seen=f"{finding.seen} {words}")
    return replace(letter, stakes=(replace(first, findings=(finding, *more)), *others))


def files(folder: Path) -> dict[str, bytes]:
    return {str(path.relative_to(folder)): path.read_bytes() for path in folder.rglob("*") if path.is_file()}


def plainly(letter: Letter, folder: Path) -> dict[str, bytes]:
    """What the report's own writers make."""
    ready = prepare(letter, folder / "pictures")
    write_html(letter, folder, prepared=ready)
    write_pdf(letter, folder / "report.pdf", prepared=ready)
    return files(folder)


def test_it_writes_the_very_files_of_the_report_also_after_a_change(letter: Letter, tmp_path: Path) -> None:
    told: list[tuple[int, int]] = []
    with Preview(tmp_path / "preview") as preview:
        for number, shown in enumerate((letter, changed(letter, "More."), letter, changed(letter, "Other."))):
            assert preview.render(shown, progress=lambda done, whole: told.append((done, whole))) == ()
            assert files(tmp_path / "preview") == plainly(shown, tmp_path / f"plain-{number}")
    assert told[:3] == [(1, 3), (2, 3), (3, 3)]


def test_a_process_that_holds_too_much_is_replaced_by_a_warm_one(letter: Letter, tmp_path: Path) -> None:
    with Preview(tmp_path / "preview", most_memory=1) as preview:
        preview.render(letter)
        first = preview._worker
        assert first is not None
        assert first.busy
        preview.render(changed(letter, "More."))
        assert preview._worker is not first
        assert b"More." in (tmp_path / "preview" / "index.html").read_bytes()


def test_a_process_that_ends_is_replaced_and_nothing_is_lost(letter: Letter, tmp_path: Path) -> None:
    with Preview(tmp_path / "preview") as preview:
        preview.render(letter)
        first = preview._worker
        assert first is not None
        ended: list[int | None] = []

        def end_it(_done: int, _whole: int) -> None:
            if not ended:
                ended.append(first.process.pid)
                assert first.process.pid is not None
                os.kill(first.process.pid, signal.SIGKILL)

        more = changed(letter, "More.")
        assert preview.render(more, progress=end_it) == ()
        assert len(ended) == 1
        assert preview._worker is not first
        assert files(tmp_path / "preview") == plainly(more, tmp_path / "plain")


def test_one_that_ends_between_two_letters_is_replaced(letter: Letter, tmp_path: Path) -> None:
    with Preview(tmp_path / "preview") as preview:
        preview.render(letter)
        assert preview._worker is not None
        preview._worker.process.kill()
        preview._worker.process.join()
        assert preview.render(changed(letter, "More.")) == ()
        assert b"More." in (tmp_path / "preview" / "index.html").read_bytes()


def test_one_that_ends_again_and_again_is_told(letter: Letter, tmp_path: Path) -> None:
    with Preview(tmp_path / "preview") as preview:

        def end_it(_done: int, _whole: int) -> None:
            assert preview._worker is not None
            preview._worker.process.kill()

        with pytest.raises(Refusal, match=r"WM838.*-9"):
            preview.render(letter, progress=end_it)
        assert preview.render(letter) == ()


def test_a_refusal_comes_through_and_the_process_goes_on(letter: Letter, tmp_path: Path) -> None:
    wall = tmp_path / "wall"
    wall.write_text("in the way")
    with Preview(wall) as preview:
        with pytest.raises(Refusal, match="WM809"):
            preview.render(letter)
        wall.unlink()
        assert preview.render(letter) == ()


def test_what_could_not_be_shown_is_told(letter: Letter, tmp_path: Path) -> None:
    letter.pictures[0].path.write_bytes(b"no picture")
    with Preview(tmp_path / "preview") as preview:
        assert {problem.number for problem in preview.render(letter)} == {"WM803"}


def test_nothing_is_started_before_it_is_needed_and_nothing_is_left(letter: Letter, tmp_path: Path) -> None:
    import multiprocessing

    preview = Preview(tmp_path / "preview")
    assert multiprocessing.active_children() == []
    preview.render(letter)
    assert len(multiprocessing.active_children()) == 1
    preview.close()
    preview.close()
    assert multiprocessing.active_children() == []
