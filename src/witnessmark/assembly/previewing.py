"""A draft of the report that is written again whenever its job changes, while somebody works on it."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from pathlib import Path

from witnessmark.assembly.issuing import Tell, present_letter
from witnessmark.assembly.jobs import open_job
from witnessmark.packs.model import Packs
from witnessmark.problems import Problem, Refusal
from witnessmark.report.preview import Preview

__all__ = ["Previewed", "preview_report"]

#: What a job's report depends on.
_READ = ("job.toml", "journal*.jsonl")


@dataclass(frozen=True, slots=True)
class Previewed:
    """One writing of the preview: where it lies, how many ends are open, and problems met; not ``written`` where it was refused."""

    page: Path
    pdf: Path
    written: bool
    open_ends: int
    problems: tuple[Problem, ...]


def preview_report(
    folder: Path,
    packs: Packs,
    *,
    wait: Callable[[], bool],
    out: Path | None = None,
    language: str = "en",
    tell: Tell | None = None,
) -> Iterator[Previewed]:
    """Write the draft, and again after every change to record or facts.

    What is refused on the way (a line that another program is still writing) is told, and the last good preview stays.

    Args:
        folder: the job.
        packs: what it is judged by.
        wait: called between two looks at the job; False ends it.
        out: where it goes; JOB/preview unless said, so that an issued report is not touched.
        language: of our own sentences.
        tell: told how many pictures are ready.
    """
    home = out or folder / "preview"
    seen: object = None
    with Preview(home) as preview:
        while True:
            state = _state(folder)
            if state != seen:
                seen = state
                yield _once(preview, folder, home, packs, language=language, tell=tell)
            if not wait():
                return


def _once(preview: Preview, folder: Path, home: Path, packs: Packs, *, language: str, tell: Tell | None) -> Previewed:
    page, pdf = home / "index.html", home / "report.pdf"
    try:
        letter, problems = present_letter(open_job(folder), packs, language=language)
        met = preview.render(letter, progress=tell)
    except Refusal as refusal:
        return Previewed(page, pdf, written=False, open_ends=0, problems=refusal.problems)
    every = tuple(dict.fromkeys((*problems, *letter.problems, *met)))
    return Previewed(page, pdf, written=True, open_ends=len(letter.open_ends), problems=every)


def _state(folder: Path) -> tuple[tuple[str, int, int], ...]:
    """Sizes and times of the files that the report is made from."""
    rows = []
    for pattern in _READ:
        for path in sorted(folder.glob(pattern)):
            about = path.stat()
            rows.append((path.name, about.st_size, about.st_mtime_ns))
    return tuple(rows)
