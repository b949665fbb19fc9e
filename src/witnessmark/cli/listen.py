"""``witnessmark listen``: a timed narration to drafts."""

from __future__ import annotations

from decimal import Decimal
from pathlib import Path
from typing import Any

import click

from witnessmark.assembly import (
    AUDIO_TIMES,
    ENGINES,
    SETTING,
    Speech,
    at_address,
    hear,
    hear_into,
    open_job,
    read_packs,
    read_talk,
    write_transcript,
)
from witnessmark.cli.output import answer, complain, json_option, progress, refusing
from witnessmark.listening import Draft
from witnessmark.problems import Refusal
from witnessmark.units import Quantity, say

__all__ = ["listen"]


def _clock(seconds: float) -> str:
    minutes, rest = divmod(int(seconds), 60)
    return f"{minutes:3d}:{rest:02d}"


def _said(draft: Draft) -> str:
    """What a draft says, the value once, as it is printed in a report."""
    said = draft.what or draft.attribute or draft.quantity or ""
    if draft.value is None:
        return said
    bare = str(draft.value)
    plain = not isinstance(draft.value, Decimal) or draft.attribute == "made"  # a year has no unit beside it
    value = bare if plain else say(Quantity(Decimal(bare), draft.unit or "1"))
    return f"{said.removesuffix(f' {bare}')} {value}"


def _guess(row: dict[str, Any]) -> str:
    return f"“{row['heard']}” {row['why']}"


@click.command()
@click.argument("file", type=click.Path(path_type=Path))
@click.option("--job", type=click.Path(path_type=Path), help="Put the drafts into the journal of this job.")
@click.option("--place", help="Where the narration begins, in the words of the trade (kitchen, attic).")
@click.option("--began", help="When the recording began, as 2026-10-14T09:04:00-07:00. Needed with --job.")
@click.option(
    "--device", default="recorder", show_default=True, help="Which device recorded; each keeps its own chain."
)
@click.option("--model", type=click.Path(path_type=Path), help=f"Folder of a speech model. Unless said: ${SETTING}.")
@click.option("--engine", type=click.Choice(sorted(ENGINES)), help="What runs the model; its files decide unless said.")
@click.option("--threads", type=click.IntRange(0, 256), default=0, help="How many the engine may use; 0: it chooses.")
@click.option("--transcript", type=click.Path(path_type=Path), help="Write the words of a recording here, with times.")
@click.option("--endpoint", help="Ask a language model on this machine too: http://127.0.0.1:8080/v1. Off unless said.")
@click.option("--endpoint-model", default="", help="The name of that model, as its server knows it.")
@click.option(
    "--endpoint-anywhere", is_flag=True, help="Let --endpoint be a public address: what was said leaves this machine."
)
@json_option
@refusing
def listen(
    *,
    file: Path,
    job: Path | None,
    place: str | None,
    began: str | None,
    device: str,
    model: Path | None,
    engine: str | None,
    threads: int,
    transcript: Path | None,
    endpoint: str | None,
    endpoint_model: str,
    endpoint_anywhere: bool,
    as_json: bool,
) -> None:
    """Read a timed narration, or a recording, and propose drafts, each resting on quoted words and their times.

    FILE is WebVTT, SRT, JSON lines with "t" and "text", plain lines that begin with [m:ss], or sound. Sound is
    recognised on this machine and sent nowhere; a run that was stopped goes on where it ended. Nothing counts until a
    person accepts it. What was teaching, a what-if, a question or taken back is set aside and shown, never dropped.
    """
    server = at_address(endpoint, endpoint_model, anywhere=endpoint_anywhere) if endpoint else None
    opened = open_job(job) if job is not None else None
    if opened is not None and began is None:
        raise Refusal(AUDIO_TIMES.at(str(file)))  # before an hour of recognising, not after it
    packs = read_packs()
    with progress("Listening", quiet=as_json) as tell:
        talk = read_talk(file, Speech(model, engine, threads), tell=tell)
    if transcript is not None and talk.transcript is not None:
        write_transcript(talk, transcript)
    with progress("Asking", quiet=as_json or server is None) as tell:
        heard = hear(talk, packs, place=place, endpoint=server, tell=tell)
    written = 0
    if opened is not None:
        heard, entries, problems = hear_into(
            opened, packs, file, began=began, talk=talk, heard=heard, place=place, device=device
        )
        complain(problems)
        written = len(entries)
    complain(heard.problems)
    told: dict[str, Any] = heard.as_json()
    if as_json:
        answer(told)
        return
    guesses = told["misheard"]
    for number, draft in enumerate(told["drafts"]):
        state = f" ({draft['condition']})" if draft["condition"] else ""
        click.echo(
            f"{_clock(draft['start'])}  {draft['act']:<11}{draft['label'] or '?'}: {_said(heard.drafts[number])}{state}"
        )
        click.echo(f"          “{draft['text']}”")
        for row in guesses:
            if row["draft"] == number:
                click.echo(f"          perhaps misheard: {_guess(row)}")
    for row in guesses:
        if row["draft"] is None:
            click.echo(f"{_clock(row['start'])}  perhaps misheard: {_guess(row)}")
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
