"""``witnessmark verify``: re-hash everything and say exactly what does not match."""

from __future__ import annotations

from pathlib import Path

import click

from witnessmark.assembly import read_packs, verify_job
from witnessmark.cli.output import FALLS_SHORT, answer, complain, json_option, progress, refusing

__all__ = ["verify"]


@click.command()
@click.argument("job", type=click.Path(path_type=Path))
@json_option
@refusing
def verify(*, job: Path, as_json: bool) -> None:
    """Re-hash journal, chains, media, seals and packs of JOB, and name exactly what does not match.

    Exit status 1 when anything does not.
    """
    with progress("Verifying", quiet=as_json) as tell:
        result = verify_job(job, read_packs(), tell)
    complain(result.problems)
    if as_json:
        answer(result.as_json())
    else:
        for line in result.in_words():
            click.echo(line)
    if result.problems:
        raise SystemExit(FALLS_SHORT)
