"""``witnessmark report``: the report as HTML, PDF and data; issuing it seals the record."""

from __future__ import annotations

import sys
import time
from datetime import datetime
from pathlib import Path

import click

from witnessmark.assembly import (
    LANGUAGES,
    default_key_path,
    issue_report,
    open_job,
    preview_report,
    read_packs,
    when,
    write_report,
)
from witnessmark.cli.output import FALLS_SHORT, answer, complain, json_option, progress, refusing
from witnessmark.problems import Problem

__all__ = ["report"]

#: Seconds between two looks at the job.
_PAUSE = 0.2


@click.command()
@click.argument("job", type=click.Path(path_type=Path))
@click.option("--out", type=click.Path(path_type=Path), help="Folder for the report; JOB/report unless said.")
@click.option("--date", "moment", help="Date of the report, as 2026-10-14T18:00:00-07:00. Now unless said.")
@click.option("--issue", is_flag=True, help="Issue it: refused while ends are loose; seals and signs the record.")
@click.option(
    "--key",
    type=click.Path(path_type=Path),
    help="Signing key (PEM), made when it does not exist. Unless said: $WITNESSMARK_KEY, else your configuration folder.",
)
@click.option(
    "--language",
    type=click.Choice(list(LANGUAGES)),
    default="en",
    show_default=True,
    help="Write a translation of it beside the report: our sentences and the packs' texts; words of people stay.",
)
@click.option("--why", help="Why an issued report is issued again.")
@click.option(
    "--preview",
    is_flag=True,
    help="Write a draft into JOB/preview, and again whenever the record changes, until Ctrl-C.",
)
@json_option
@refusing
def report(
    *,
    job: Path,
    out: Path | None,
    moment: str | None,
    issue: bool,
    key: Path | None,
    language: str,
    why: str | None,
    preview: bool,
    as_json: bool,
) -> None:
    """Write the report of JOB: index.html with its pictures, report.pdf and report.json.

    Without --issue it is a draft and says so on every page. With --issue the record is sealed: the root over all chains,
    the packs and the report's data are signed, and `witnessmark verify` can check them for as long as the folder exists.
    """
    if issue and language != "en":
        raise click.UsageError(
            "What is issued and sealed is the report in English. Issue it, then write the translation."
        )
    if preview and (issue or moment or as_json):
        raise click.UsageError(
            "A preview is a draft of this moment, told in words: without --issue, --date and --json."
        )
    opened = open_job(job)
    if preview:
        _preview(job, out, language)
        return
    packs = read_packs()
    with progress("Writing", quiet=as_json) as tell:
        at = when(moment) if moment else None
        if issue:
            made = issue_report(opened, packs, out=out, at=at, key=key or default_key_path(), why=why, tell=tell)
        else:
            made = write_report(opened, packs, out=out, at=at, language=language, tell=tell)
    complain(made.problems)
    if as_json:
        answer(made.as_json())
    else:
        click.echo(f"The report is in {made.html}")
        click.echo(f"and as a PDF in {made.pdf}")
        if made.draft:
            click.echo(
                f"It is a draft: {made.open_ends} loose ends keep it from being issued."
                if made.open_ends
                else "It is a draft: add --issue to issue it."
            )
        else:
            click.echo(f"Issued and sealed as edition {made.edition}.")
    if made.open_ends:
        raise SystemExit(FALLS_SHORT)


def _preview(job: Path, out: Path | None, language: str) -> None:
    def wait() -> bool:
        time.sleep(_PAUSE)
        return True

    def tell(done: int, whole: int) -> None:
        if sys.stderr.isatty():
            click.echo(f"\rPictures ready: {done} of {whole} ", nl=done == whole, err=True)

    told: tuple[Problem, ...] = ()
    try:
        for made in preview_report(job, read_packs(), wait=wait, out=out, language=language, tell=tell):
            complain(problem for problem in made.problems if problem not in told)
            told = made.problems
            if made.written:
                click.echo(
                    f"{datetime.now().astimezone():%H:%M:%S} written, loose ends: {made.open_ends}. {made.page}, {made.pdf}"
                )
    except KeyboardInterrupt:
        click.echo("The preview has ended; its last state stays.")
