"""``witnessmark demo``: the invented demo job, built from its raw inputs."""

from __future__ import annotations

from pathlib import Path

import click

from witnessmark.cli.output import answer, json_option, refusing
from witnessmark.demo.run import run_demo

__all__ = ["demo"]


@click.command()
@click.argument("folder", required=False, type=click.Path(path_type=Path), default=Path("demo-job"))
@click.option("--replace", is_flag=True, help="Replace an earlier demo job in that folder.")
@json_option
@refusing
def demo(*, folder: Path, replace: bool, as_json: bool) -> None:
    """Build the invented demo job in FOLDER and say where its report is.

    A visit of two and a half hours to a house that does not exist: a timed narration, photos, thermal frames and a table
    of readings go in, through the same code every other command uses; the standing, the settled record and the sealed
    report come out.
    """
    tell = (lambda _line: None) if as_json else click.echo
    result = run_demo(folder, replace=replace, tell=tell)
    if as_json:
        answer(result)
