"""A report that is written again and again while somebody works on it: a process beside this one that remembers.

The typesetter keeps what it laid out before, so that after a small change only little is laid out anew. That memory grows
with every change, so the process is replaced by a fresh one once it holds too much; the fresh one is warmed at once.
"""

from __future__ import annotations

import multiprocessing
import signal
import sys
from contextlib import suppress
from dataclasses import dataclass
from multiprocessing.connection import Connection
from pathlib import Path
from types import TracebackType
from typing import Final, Self

from witnessmark.problems import Problem, Refusal
from witnessmark.report.html import write_html
from witnessmark.report.letter import Letter
from witnessmark.report.messages import NO_PREVIEW
from witnessmark.report.pdf import begin_pdf, write_pdf
from witnessmark.report.pictures import Progress, prepare

__all__ = ["MOST_MEMORY", "Preview"]

#: Bytes that the process may hold before a fresh one takes its place. A first report takes about 500 MB, each small change
#: about 30 MB more.
MOST_MEMORY: Final = 1 << 30
#: Seconds in which the process must have ended after it was told to.
_PATIENCE = 5.0


@dataclass(frozen=True, slots=True)
class _Done:
    """What the process answers: problems met, whether it was refused, and the memory it holds, in bytes."""

    problems: tuple[Problem, ...]
    refused: bool
    memory: int


class _Worker:
    """The other process and the pipe to it."""

    def __init__(self, folder: Path) -> None:
        # A fresh interpreter: a copy of this one would share its locks and threads.
        context = multiprocessing.get_context("spawn")
        self.pipe, theirs = context.Pipe()
        self.process = context.Process(target=_work, args=(theirs, folder), daemon=True)
        self.process.start()
        theirs.close()
        self.busy = False

    def send(self, letter: Letter) -> None:
        """Give it a letter to write."""
        self.pipe.send(letter)
        self.busy = True

    def answer(self, progress: Progress | None = None) -> _Done:
        """Wait until it is done."""
        while True:
            said = self.pipe.recv()
            if isinstance(said, _Done):
                self.busy = False
                return said
            if progress is not None:
                progress(*said)

    def end(self) -> int | None:
        """End it; returns the status it ended with."""
        self.pipe.close()  # which tells it to end
        if self.busy:
            self.process.terminate()  # it is in the middle of a letter that nobody waits for
        self.process.join(_PATIENCE)
        if self.process.is_alive():
            self.process.kill()
            self.process.join()
        status = self.process.exitcode
        self.process.close()
        return status


class Preview:
    """Writes page and PDF of a letter into *folder*, quickly from the second time on.

    Not for several threads at once. Use it in a ``with`` statement, or ``close`` it.

    Args:
        folder: where ``index.html``, ``report.json``, ``report.pdf`` and ``pictures/`` go.
        most_memory: bytes the process may hold before it is replaced.
    """

    def __init__(self, folder: Path, *, most_memory: int = MOST_MEMORY) -> None:
        self._folder, self._most_memory = folder, most_memory
        self._worker: _Worker | None = None

    def render(self, letter: Letter, *, progress: Progress | None = None) -> tuple[Problem, ...]:
        """Write the letter; returns what could not be shown.

        Raises:
            Refusal: the numbers of the report (WM808, WM809); WM838 when the process ended in the middle, twice.
        """
        try:
            done = self._answer(letter, progress)
        except (OSError, EOFError):
            # It was ended from outside, perhaps for want of memory: a fresh one does the same work from its beginning.
            self.close()
            try:
                done = self._answer(letter, progress)
            except (OSError, EOFError) as error:
                detail = f"{type(error).__name__}, the process ended twice, with {self.close()}"
                raise Refusal(NO_PREVIEW.at(str(self._folder), detail)) from error
        if done.memory > self._most_memory:
            self.close()
            self._worker = _Worker(self._folder)
            self._worker.send(letter)
        if done.refused:
            raise Refusal(*done.problems)
        return done.problems

    def _answer(self, letter: Letter, progress: Progress | None) -> _Done:
        worker = self._worker
        if worker is None:
            worker = self._worker = _Worker(self._folder)
        elif worker.busy:
            worker.answer()  # it was being warmed
        worker.send(letter)
        return worker.answer(progress)

    @property
    def process(self) -> int | None:
        """The number of the process at work; None when there is none."""
        return None if self._worker is None else self._worker.process.pid

    def close(self) -> int | None:
        """End the process; the files stay. Returns the status it ended with, None when there was none."""
        worker, self._worker = self._worker, None
        return None if worker is None else worker.end()

    def __enter__(self) -> Self:
        return self

    def __exit__(
        self, _kind: type[BaseException] | None, _error: BaseException | None, _trace: TracebackType | None
    ) -> None:
        self.close()


def _work(pipe: Connection, folder: Path) -> None:
    """The other process: one letter after another, until nobody is there any more."""
    signal.signal(signal.SIGINT, signal.SIG_IGN)  # whoever began it ends it, by closing the pipe
    while True:
        try:
            letter = pipe.recv()
        except (EOFError, OSError):
            return
        try:
            problems, refused = _write(letter, folder, pipe), False
        except Refusal as refusal:
            problems, refused = refusal.problems, True
        with suppress(OSError):
            pipe.send(_Done(problems, refused, _memory()))


def _write(letter: Letter, folder: Path, pipe: Connection) -> tuple[Problem, ...]:
    def tell(done: int, whole: int) -> None:
        with suppress(OSError):
            pipe.send((done, whole))

    begun = begin_pdf(letter)
    ready = prepare(letter, folder / "pictures", progress=tell)
    met = write_html(letter, folder, prepared=ready)
    met += write_pdf(letter, folder / "report.pdf", prepared=ready, begun=begun)
    return tuple(dict.fromkeys(met))


def _memory() -> int:
    """The memory this process holds, in bytes; 0 where the system does not say."""
    try:
        pages = int(Path("/proc/self/statm").read_text(encoding="ascii").split()[1])
    except (OSError, ValueError, IndexError):
        return _peak()
    import resource

    return pages * resource.getpagesize()


def _peak() -> int:
    """The most it ever held, where only that is known (macOS)."""
    if sys.platform == "win32":
        return 0
    import resource

    used = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss
    return used if sys.platform == "darwin" else used * 1024
