"""How a command answers: words or one JSON document on standard output, numbered problems on standard error."""

from __future__ import annotations

import functools
import json
import sys
import textwrap
from collections.abc import Callable, Iterable, Iterator
from contextlib import contextmanager
from typing import Any, TypeVar

import click

from witnessmark.problems import Problem, Refusal

__all__ = ["FALLS_SHORT", "WRONG_USE", "answer", "complain", "in_words", "json_option", "progress", "refusing"]

#: Exit status when the thing asked about falls short (loose ends open, verification failed).
FALLS_SHORT = 1
#: Exit status for wrong use or unreadable input.
WRONG_USE = 2

_Command = TypeVar("_Command", bound=Callable[..., Any])

json_option = click.option("--json", "as_json", is_flag=True, help="Print exactly one JSON document and nothing else.")


def answer(document: object) -> None:
    """Print one JSON document."""
    click.echo(json.dumps(document, ensure_ascii=False, indent=2, sort_keys=False))


def complain(problems: Iterable[Problem]) -> None:
    """Print problems to standard error."""
    for problem in problems:
        click.echo(str(problem), err=True)


def in_words(text: str, indent: str = "") -> str:
    """A paragraph folded to the width of a page."""
    return textwrap.fill(text, width=96, initial_indent=indent, subsequent_indent=indent)


def refusing(command: _Command) -> _Command:
    """Turn a refusal into numbered messages and exit status 2, with a JSON document where one was asked for."""

    @functools.wraps(command)
    def wrapped(*args: Any, **kwargs: Any) -> Any:  # noqa: ANN401 - passes through whatever click hands over
        try:
            return command(*args, **kwargs)
        except Refusal as refusal:
            complain(refusal.problems)
            if kwargs.get("as_json"):
                answer({"problems": [problem.as_json() for problem in refusal.problems]})
            sys.exit(WRONG_USE)

    return wrapped  # type: ignore[return-value]  # functools.wraps keeps the signature


@contextmanager
def progress(label: str, *, quiet: bool) -> Iterator[Callable[[int, int], None]]:
    """A line of progress on a terminal, nothing in a pipe. Yields ``tell(done, whole)``."""
    if quiet or not sys.stderr.isatty():
        yield lambda _done, _whole: None
        return
    with click.progressbar(length=1000, label=label, file=sys.stderr) as bar:
        told = 0

        def tell(done: int, whole: int) -> None:
            nonlocal told
            now = 1000 * done // max(whole, 1)
            if now > told:
                bar.update(now - told)
                told = now

        yield tell
