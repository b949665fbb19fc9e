"""``witnessmark standing``: what is still on, what is in doubt, which duties are met."""

from __future__ import annotations

from datetime import datetime
from pathlib import Path

import click

from witnessmark.assembly import (
    law_as_json,
    law_in_words,
    open_job,
    read_packs,
    standing_as_json,
    standing_in_words,
    under_as_json,
    under_in_words,
    when,
    write_findings,
)
from witnessmark.assembly.messages import NO_SUCH_PACK_ID
from witnessmark.cli.output import FALLS_SHORT, answer, complain, in_words, json_option, refusing
from witnessmark.judging import standing as judge
from witnessmark.judging import under_each
from witnessmark.problems import Refusal

__all__ = ["standing"]


@click.command()
@click.argument("job", type=click.Path(path_type=Path))
@click.option(
    "--at", "moment", help="Where the visit stood at this moment, as 2026-10-14T10:30:00-07:00. Now unless said."
)
@click.option("--duties", is_flag=True, help="List every duty, also those that are met.")
@click.option("--write-up", is_flag=True, help="First draft a finding for every adverse thing not yet written up.")
@click.option("--drafts", is_flag=True, help="List the drafts that wait for a decision.")
@click.option(
    "--under",
    "laws",
    multiple=True,
    metavar="ID",
    help="Hold the visit against this rulebook as well. May be repeated.",
)
@click.option(
    "--law", "law", is_flag=True, help="Say what the law wants in the report: statements, departures, summary, the day."
)
@click.option("--paid", type=click.DateTime(["%Y-%m-%d"]), help="With --law: the day it was paid in full.")
@click.option(
    "--agreed", type=click.DateTime(["%Y-%m-%d"]), help="With --law: the day of delivery that the agreement names."
)
@json_option
@refusing
def standing(
    *,
    job: Path,
    moment: str | None,
    duties: bool,
    write_up: bool,
    drafts: bool,
    laws: tuple[str, ...],
    law: bool,
    paid: datetime | None,
    agreed: datetime | None,
    as_json: bool,
) -> None:
    """Say where the visit stands: what is running, which ends are loose, which duties are met, excused or open.

    Exit status 1 when something keeps the report from being issued.
    """
    opened = open_job(job)
    packs = read_packs()
    if write_up:
        drafted = write_findings(opened, packs)
        if not as_json:
            click.echo(
                f"{len(drafted)} findings are drafted; a person accepts them: witnessmark note {job} accepted of=all"
            )
    entries, problems = opened.entries()
    complain(problems)
    at: datetime | None = when(moment) if moment else None
    record = opened.record() if at is None else opened.record_at(at)
    stands = judge(record, packs, opened.job, at or opened.now())
    for name in laws:
        if name not in packs.rulebooks:
            raise Refusal(NO_SUCH_PACK_ID.at(repr(name), f"rulebooks: {', '.join(sorted(packs.rulebooks))}"))
    under = under_each(record, packs, opened.job, at or opened.now(), laws)
    wants = (
        law_as_json(
            record, packs, opened.job, at or opened.now(), paid=paid and paid.date(), agreed=agreed and agreed.date()
        )
        if law
        else {}
    )
    if as_json:
        more = ({"under": under_as_json(under)} if laws else {}) | ({"law": wants} if law else {})
        answer(standing_as_json(stands, record, packs) | more)
    else:
        for line in standing_in_words(stands, record, packs, duties=duties, drafts=drafts):
            click.echo(line)
        for line in (*under_in_words(under), *(law_in_words(wants) if law else ())):
            click.echo(in_words(line.strip(), line[: len(line) - len(line.lstrip())]) if line.strip() else line)
        if not entries:
            click.echo(f"Nothing is recorded yet. Begin with: witnessmark note {job} arrived")
    if stands.blocking or problems:
        raise SystemExit(FALLS_SHORT)
