"""``witnessmark listen``: a timed narration to drafts."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import click

from witnessmark.assembly import hear, hear_into, open_job, read_packs
from witnessmark.cli.output import answer, complain, json_option, refusing

__all__ = ["listen"]


def _clock(seconds: float) -> str:
    minutes, rest = divmod(int(seconds), 60)
    return f"{minutes:3d}:{rest:02d}"


@click.command()
@click.argument("file", type=click.Path(path_type=Path))
@click.option("--job", type=click.Path(path_type=Path), help="Put the drafts into the journal of this job.")
@click.option("--place", help="Where the narration begins, in the words of the trade (kitchen, attic).")
@click.option("--began", help="When the recording began, as 2026-10-14T09:04:00-07:00. Needed with --job.")
@click.option(
    "--device", default="recorder", show_default=True, help="Which device recorded; each keeps its own chain."
)
@json_option
@refusing
def listen(*, file: Path, job: Path | None, place: str | None, began: str | None, device: str, as_json: bool) -> None:
    """Read a timed narration and propose drafts, each resting on quoted words and their times.

    FILE is WebVTT, SRT, JSON lines with "t" and "text", or plain lines that begin with [m:ss]. Nothing counts until a
    person accepts it. What was teaching, a what-if, a question or taken back is set aside and shown, never dropped.
    """
    packs = read_packs()
    if job is None:
        heard = hear(file, packs, place=place)
        written = 0
    else:
        heard, entries, problems = hear_into(open_job(job), packs, file, began=began, place=place, device=device)
        complain(problems)
        written = len(entries)
    complain(heard.problems)
    told: dict[str, Any] = heard.as_json()
    if as_json:
        answer(told)
        return
    for draft in told["drafts"]:
        value = f" {draft['value']} {draft['unit'] or ''}".rstrip() if draft["value"] is not None else ""
        said = draft["what"] or draft["attribute"] or draft["quantity"] or ""
        state = f" ({draft['condition']})" if draft["condition"] else ""
        click.echo(f"{_clock(draft['start'])}  {draft['act']:<11}{draft['label'] or '?'}: {said}{value}{state}")
        click.echo(f"          “{draft['text']}”")
    for row in told["set_aside"]:
        click.echo(f"{_clock(row['start'])}  set aside as {row['reason']}: “{row['text']}”")
    standing = told["standing"]
    for name, rows in (("Still on", standing["still_on"]), ("Make sure", standing["make_sure"])):
        click.echo(
            f"{name}: " + ("; ".join(f"{row['label']} ({_clock(row['start']).strip()})" for row in rows) or "nothing")
        )
    if job is not None:
        click.echo(
            f"{written} drafts are in the journal. A person accepts them: witnessmark note {job} accepted of=all"
        )
