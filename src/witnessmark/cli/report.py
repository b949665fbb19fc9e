"""``witnessmark report``: the report as HTML, PDF and data; issuing it seals the record."""

from __future__ import annotations

from pathlib import Path

import click

from witnessmark.assembly import LANGUAGES, default_key_path, issue_report, open_job, read_packs, when, write_report
from witnessmark.cli.output import FALLS_SHORT, answer, complain, json_option, progress, refusing

__all__ = ["report"]


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
    opened = open_job(job)
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
